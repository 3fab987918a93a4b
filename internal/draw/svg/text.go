package svg

import (
	"math"
	"strconv"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// text draws a line in thousandths of an em: one path of all its letters, or,
// in pages that stamp labels many times, each letter as a <use> of its outline.
func (d *drawing) text(t *page.Text) {
	f, err := d.faces.Open(t.Face)
	if err != nil {
		d.fail("%v", err)
		return
	}
	if t.Size <= 0 {
		return
	}
	if d.whole {
		d.b = append(d.b, "<path"...)
	} else {
		d.b = append(d.b, "<g"...)
	}
	d.block(t.Block)
	d.attr("fill", colour(t.Colour))
	d.b = append(d.b, ` transform="translate(`...)
	d.pair(micro(t.At.X), micro(t.At.Y))
	d.b = append(d.b, ')')
	if turn := math.Mod(t.Turn, 360); turn != 0 {
		d.b = append(d.b, " rotate("...)
		d.float(turn)
		d.b = append(d.b, ')')
	}
	d.b = append(d.b, " scale("...)
	d.float(t.Size.MM() / 1000)
	if d.whole {
		d.b = append(d.b, `)" d="`...)
		d.letters(f, t, d.ink)
		d.b = append(d.b, `"/>`...)
		return
	}
	d.b = append(d.b, `)">`...)
	d.letters(f, t, d.stamp)
	d.b = append(d.b, "</g>"...)
}

// letters gives each letter of a line and where it stands, in 1/1000 em.
func (d *drawing) letters(f *face.Face, t *page.Text, draw func(f *face.Face, r rune, x float64)) {
	for _, g := range t.Segs {
		x := float64(g.X) / float64(t.Size) * 1000
		for _, r := range g.S {
			if !f.Has(r) {
				d.fail("%s has no letter %q", t.Face, r)
				return
			}
			draw(f, r, x)
			x += float64(f.Advance(r))
		}
	}
}

// stamp refers to the outline of a letter.
func (d *drawing) stamp(f *face.Face, r rune, x float64) {
	id := d.glyph(f, r)
	if id == "" {
		return
	}
	d.b = append(d.b, `<use href="#`...)
	d.b = append(append(d.b, id...), '"')
	if at := math.Round(x*10) / 10; at != 0 {
		d.b = append(d.b, ` x="`...)
		d.b = append(strconv.AppendFloat(d.b, at, 'f', -1, 64), '"')
	}
	d.b = append(d.b, "/>"...)
}

// glyph defines the outline of a letter and gives its id; "" for a letter
// without ink.
func (d *drawing) glyph(f *face.Face, r rune) string {
	o := f.Outline(r)
	if len(o.Ops) == 0 {
		return ""
	}
	id := strings.ReplaceAll(string(f.Owner(r).Name), "_", "-") + "-" + strconv.FormatInt(int64(r), 16)
	d.define(id, func() {
		p := page.Path{Ops: o.Ops, Pts: make([]page.Point, len(o.Pts))}
		for i, v := range o.Pts { // an em is 1000 picture units
			p.Pts[i] = page.Point{X: thousandths(v.X), Y: thousandths(v.Y)}
		}
		d.b = append(d.b, `<path id="`+id+`" d="`...)
		d.data(&p)
		d.b = append(d.b, `"/>`...)
	})
	return id
}

// thousandths gives a place in a letter in picture units of 1/1000 em,
// rounded to a tenth: 0.0004 mm at 4 mm type.
func thousandths(v float64) unit.Length {
	return unit.Length(math.Round(v*10_000)) * 100 * unit.Micrometre
}
