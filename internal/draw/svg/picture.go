package svg

import (
	"encoding/base64"
	"strconv"

	"jarmark/internal/draw/page"
)

// picture places an image; the same one on many labels is written once, inside
// the file, at one unit a pixel.
func (d *drawing) picture(p *page.Picture) {
	m := p.Image
	if m == nil || m.W < 1 || m.H < 1 || len(m.Data) == 0 {
		d.fail("an empty picture")
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
	d.b = append(d.b, "<g"...)
	d.block(p.Block)
	d.b = append(d.b, ` transform="translate(`...)
	d.pair(micro(p.At.X), micro(p.At.Y))
	d.b = append(d.b, ") scale("...)
	d.float(p.At.W.MM() / float64(m.W))
	d.b = append(d.b, ' ')
	d.float(p.At.H.MM() / float64(m.H))
	d.b = append(d.b, `)"><use href="#`+id+`"/></g>`...)
}
