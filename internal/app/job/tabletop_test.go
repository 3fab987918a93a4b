package job_test

import (
	"image"
	"image/color"
	"image/draw"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	paint "jarmark/internal/draw/png"
	"jarmark/internal/kit/unit"
)

// tabletop is a picture in the making: labels on warm grey.
type tabletop struct {
	t   *testing.T
	env *job.Env
	img *image.RGBA
	dpi float64
}

var grey = page.Colour{R: 0xe8, G: 0xe6, B: 0xdf}

func newTable(t *testing.T, env *job.Env, w, h unit.Length, px int) *tabletop {
	dpi := float64(px) / w.MM() * 25.4
	img := image.NewRGBA(image.Rect(0, 0, px, int(h.MM()/25.4*dpi)))
	draw.Draw(img, img.Bounds(), image.NewUniform(color.RGBA{grey.R, grey.G, grey.B, 255}), image.Point{}, draw.Src)
	return &tabletop{t, env, img, dpi}
}

func (p *tabletop) px(l unit.Length) int { return int(l.MM()/25.4*p.dpi + 0.5) }

// put lays paper down, cut to a mask, on a soft shadow.
func (p *tabletop) put(paper image.Image, cut *image.Alpha, at image.Point) {
	for i := range 6 {
		for _, by := range []image.Point{{X: i}, {X: -i}, {Y: i + 2}} {
			draw.DrawMask(p.img, cut.Bounds().Add(at).Add(by), image.NewUniform(color.RGBA{A: 5}), image.Point{}, cut, image.Point{}, draw.Over)
		}
	}
	draw.DrawMask(p.img, cut.Bounds().Add(at), paper, image.Point{}, cut, image.Point{}, draw.Over)
}

// alone draws a label on white.
func (p *tabletop) alone(f *page.Frame) *image.RGBA {
	doc := &page.Doc{Pages: []page.Page{{W: f.W, H: f.H, Places: []page.Placement{{Frame: f}}}}}
	img, err := paint.Page(doc, 0, p.env.Faces, p.dpi)
	if err != nil {
		p.t.Fatal(err)
	}
	return img
}

// lay puts a label down, cut out, with its upper left corner at a place.
func (p *tabletop) lay(f *page.Frame, x, y unit.Length) {
	if !drawn() {
		return
	}
	shape := *f.Outline()
	shape.Fill, shape.EvenOdd = &page.Colour{}, true
	dark := p.alone(&page.Frame{W: f.W, H: f.H, Items: []page.Item{&shape}})
	cut := image.NewAlpha(dark.Bounds())
	for i := range cut.Pix {
		cut.Pix[i] = 255 - dark.Pix[4*i]
	}
	p.put(p.alone(f), cut, image.Pt(p.px(x), p.px(y)))
}

// write sets a line of type centred on x, its baseline at y.
func (p *tabletop) write(s string, face page.Face, pt float64, x, y unit.Length) {
	if !drawn() {
		return
	}
	fc := p.env.Faces.Face(face)
	size := unit.Points(pt)
	w := fc.Width(s, size)
	fr := &page.Frame{W: w + 2*mm, H: size * 3 / 2, Items: []page.Item{
		&page.Path{Bleed: true, Fill: &grey, Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
			Pts: []page.Point{{X: -mm, Y: -mm}, {X: w + 3*mm, Y: -mm}, {X: w + 3*mm, Y: size * 2}, {X: -mm, Y: size * 2}}},
		&page.Text{Face: face, Size: size, At: page.Point{X: mm, Y: size}, Segs: []page.Seg{{S: s}}, Colour: page.Colour{R: 0x4a, G: 0x45, B: 0x3d}},
	}}
	img := p.alone(fr)
	draw.Draw(p.img, img.Bounds().Add(image.Pt(p.px(x-w/2-mm), p.px(y-size))), img, image.Point{}, draw.Src)
}
