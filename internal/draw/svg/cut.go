package svg

import (
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// cutLine is thin and of a colour no label has, for a machine to find.
var cutLine = page.Colour{R: 255, B: 255}

// cutLines draws the outline of every label, the hole of a tag too, in a layer
// of its own above all.
func (d *drawing) cutLines(places []page.Placement) {
	d.b = append(d.b, `<g id="cut-lines">`...)
	for _, pl := range places {
		line := pl.Frame.Outline()
		line.Stroke, line.Width = &cutLine, 100*unit.Micrometre
		for i, at := range line.Pts {
			if pl.Turn == 90 {
				at.X, at.Y = pl.Frame.H-at.Y, at.X
			}
			line.Pts[i] = page.Point{X: pl.At.X + at.X, Y: pl.At.Y + at.Y}
		}
		d.path(line)
	}
	d.b = append(d.b, "</g>"...)
}

// A cutting machine finds the printed page by black corners: as far from the edge as
// most printers reach, and bold enough for its eye (common practice, no source).
const (
	cornerInset = 9 * unit.Millimetre / 2
	cornerArm   = 8 * unit.Millimetre
	cornerWidth = unit.Millimetre / 2
)

// register draws the black corners of a page in a layer of their own; one that would
// lie on a label is left out.
func (d *drawing) register(p *page.Page) {
	black := page.Colour{}
	d.b = append(d.b, `<g id="registration-marks">`...)
	for i := range 4 {
		at, x, y := page.Point{X: cornerInset, Y: cornerInset}, cornerArm, cornerArm
		if i%2 == 1 {
			at.X, x = p.W-cornerInset, -x
		}
		if i >= 2 {
			at.Y, y = p.H-cornerInset, -y
		}
		mark := &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo}, Pts: []page.Point{{X: at.X + x, Y: at.Y}, at, {X: at.X, Y: at.Y + y}}, Stroke: &black, Width: cornerWidth}
		if 2*(cornerInset+cornerArm) < min(p.W, p.H) && !slices.ContainsFunc(p.Places, func(pl page.Placement) bool { return mark.EdgeIn(reach(pl)) }) {
			d.path(mark)
		}
	}
	d.b = append(d.b, "</g>"...)
}

// reach is where a placed label lies with its bleed.
func reach(pl page.Placement) page.Rect {
	r := page.Rect{X: pl.At.X, Y: pl.At.Y, W: pl.Frame.W, H: pl.Frame.H}
	if pl.Turn == 90 {
		r.W, r.H = r.H, r.W
	}
	return r.Grow(pl.Frame.Bleed, pl.Frame.Bleed)
}
