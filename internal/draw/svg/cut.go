package svg

import "jarmark/internal/draw/page"

// cutLines draws the outline of every label in a layer of its own above all, and
// register the black corners of the page in another.
func (d *drawing) cutLines(p *page.Page) { d.layer("cut-lines", p.CutLines()) }
func (d *drawing) register(p *page.Page) { d.layer("registration-marks", p.Corners()) }

func (d *drawing) layer(id string, paths []*page.Path) {
	d.b = append(append(append(d.b, `<g id="`...), id...), `">`...)
	for _, p := range paths {
		d.path(p)
	}
	d.b = append(d.b, "</g>"...)
}
