package svg

import (
	"encoding/base64"
	"strconv"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// picture places an image; the same one on many labels is written once, inside
// the file, at one unit a pixel.
func (d *drawing) picture(p *page.Picture) {
	m := p.Image
	if m.Broken() {
		d.fail("an empty picture")
		return
	}
	if len(m.Art) > 0 {
		d.art(p)
		return
	}
	id := "i" + hash(string(m.Data))
	d.define(id, func() {
		kind := "png"
		if m.JPEG {
			kind = "jpeg"
		}
		d.b = append(d.b, `<image id="`+id+`" width="`+strconv.Itoa(m.W)+`" height="`+strconv.Itoa(m.H)+`" preserveAspectRatio="none" href="data:image/`+kind+`;base64,`...)
		d.b = base64.StdEncoding.AppendEncode(d.b, m.Data)
		d.b = append(d.b, `"/>`...)
	})
	d.placed(p, id, p.At.W.MM()/float64(m.W), p.At.H.MM()/float64(m.H))
}

// placed draws what is defined once in the box of a picture.
func (d *drawing) placed(p *page.Picture, id string, across, down float64) {
	d.b = append(d.b, "<g"...)
	d.block(p.Block)
	d.into(p.At, p.Turn, across, down)
	d.b = append(d.b, `)"><use href="#`+id+`"/></g>`...)
}

// art draws a drawing of the maker's, cut off at its box.
func (d *drawing) art(p *page.Picture) {
	m := p.Image
	w, h := unit.Length(m.W)*page.ArtUnit, unit.Length(m.H)*page.ArtUnit
	clip := d.clipPath(&page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close}, Pts: []page.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}}})
	outer := d.b
	d.b = nil
	for _, path := range m.Art {
		d.path(path)
	}
	content := string(d.b)
	d.b = outer
	id := "a" + hash(clip+content)
	d.define(id, func() {
		d.b = append(d.b, `<g id="`+id+`" clip-path="url(#`+clip+`)">`+content+"</g>"...)
	})
	d.placed(p, id, float64(p.At.W)/float64(w), float64(p.At.H)/float64(h))
}
