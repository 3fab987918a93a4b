package png

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"jarmark/internal/page"
	"jarmark/internal/unit"
)

// kappa places the control points of a quarter circle drawn as a cubic.
const kappa = 0.5522847498307936

// outline is the cut edge of a label in frame coordinates.
func outline(f *page.Frame) *page.Path {
	switch f.Shape {
	case page.Ellipse:
		return roundRect(f.W, f.H, f.W/2, f.H/2)
	case page.TagShape:
		return tag(f)
	}
	r := min(f.Corner, f.W/2, f.H/2)
	return roundRect(f.W, f.H, max(r, 0), max(r, 0))
}

func roundRect(w, h, rx, ry unit.Length) *page.Path {
	kx := unit.Length(math.Round(float64(rx) * (1 - kappa)))
	ky := unit.Length(math.Round(float64(ry) * (1 - kappa)))
	p := &page.Path{}
	add := func(op page.Op, pts ...page.Point) {
		p.Ops, p.Pts = append(p.Ops, op), append(p.Pts, pts...)
	}
	add(page.MoveTo, page.Point{X: rx})
	add(page.LineTo, page.Point{X: w - rx})
	add(page.CubicTo, page.Point{X: w - kx}, page.Point{X: w, Y: ky}, page.Point{X: w, Y: ry})
	add(page.LineTo, page.Point{X: w, Y: h - ry})
	add(page.CubicTo, page.Point{X: w, Y: h - ky}, page.Point{X: w - kx, Y: h}, page.Point{X: w - rx, Y: h})
	add(page.LineTo, page.Point{X: rx, Y: h})
	add(page.CubicTo, page.Point{X: kx, Y: h}, page.Point{Y: h - ky}, page.Point{Y: h - ry})
	add(page.LineTo, page.Point{Y: ry})
	add(page.CubicTo, page.Point{Y: ky}, page.Point{X: kx}, page.Point{X: rx})
	add(page.Close)
	return p
}

// tag is a hang tag: top corners cut at 18 % of its width, 12.7 % of its
// height, for a picture only; the sheet knows the true die.
func tag(f *page.Frame) *page.Path {
	x := unit.Length(float64(f.W) * 0.18)
	y := min(unit.Length(float64(f.H)*0.127), unit.Length(float64(x)*1.25))
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{{X: x}, {X: f.W - x}, {X: f.W, Y: y}, {X: f.W, Y: f.H}, {Y: f.H}, {Y: y}},
	}
}

// trim paints white over everything outside the outline.
func (c *canvas) trim(f *page.Frame, at affine) {
	mask := c.mask(f, at)
	if mask == nil {
		return
	}
	for i := range mask.Pix {
		mask.Pix[i] = 255 - mask.Pix[i]
	}
	draw.DrawMask(c.img, c.img.Bounds(), image.White, image.Point{}, mask, image.Point{}, draw.Over)
}

// mask is the coverage of the label's outline; nil for a plain rectangle that
// fills the picture.
func (c *canvas) mask(f *page.Frame, at affine) *image.Alpha {
	if f.Shape != page.Ellipse && f.Shape != page.TagShape && f.Corner <= 0 {
		return nil
	}
	lines, err := flatten(outline(f), at)
	if err != nil {
		return nil
	}
	mask := image.NewAlpha(c.img.Bounds())
	if r, ok := c.cover(lines); ok {
		c.ras.Draw(mask, r, image.NewUniform(color.Alpha{A: 255}), image.Point{})
	}
	return mask
}
