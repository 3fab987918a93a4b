package png

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/vector"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// affine maps (x, y) to (a·x + c·y + e, b·x + d·y + f).
type affine struct{ a, b, c, d, e, f float64 }

func scaling(s float64) affine        { return affine{a: s, d: s} }
func translation(x, y float64) affine { return affine{a: 1, d: 1, e: x, f: y} }

func (m affine) apply(x, y float64) (float64, float64) {
	return m.a*x + m.c*y + m.e, m.b*x + m.d*y + m.f
}

// mul gives "n first, then m".
func (m affine) mul(n affine) affine {
	e, f := m.apply(n.e, n.f)
	return affine{
		a: m.a*n.a + m.c*n.b, b: m.b*n.a + m.d*n.b,
		c: m.a*n.c + m.c*n.d, d: m.b*n.c + m.d*n.d,
		e: e, f: f,
	}
}

// scale is how much lengths grow under m.
func (m affine) scale() float64 { return math.Sqrt(math.Abs(m.a*m.d - m.b*m.c)) }

type canvas struct {
	img   *image.RGBA
	dot   float64 // pixels per nanometre
	faces *face.Set
	clip  image.Rectangle
	ras   vector.Rasterizer
	wild  bool // contours may cross themselves: the maker's drawing, not ours
}

func newCanvas(w, h unit.Length, dpi float64, fs *face.Set) (*canvas, error) {
	if !(dpi >= 1 && dpi <= 4800) {
		return nil, fmt.Errorf("png: %g dpi is not a resolution from 1 to 4800", dpi)
	}
	if w <= 0 || h <= 0 {
		return nil, fmt.Errorf("png: size %g mm x %g mm is not a size", w.MM(), h.MM())
	}
	dot := dpi / float64(unit.Inch)
	if float64(w)*dot*float64(h)*dot > maxPixels {
		return nil, fmt.Errorf("png: %g mm x %g mm at %g dpi is over %d million pixels", w.MM(), h.MM(), dpi, maxPixels/1_000_000)
	}
	img := image.NewRGBA(image.Rect(0, 0, pixels(w, dot), pixels(h, dot)))
	return &canvas{img: img, dot: dot, faces: fs, clip: img.Bounds()}, nil
}

// items draws in order.
func (c *canvas) items(list []page.Item, at affine) error {
	for _, it := range list {
		var err error
		switch it := it.(type) {
		case *page.Text:
			err = c.text(it, at)
		case *page.Path:
			err = c.path(it, at)
		case *page.Code:
			err = c.code(it, at)
		case *page.Picture:
			err = c.picture(it, at)
		}
		if err != nil {
			return fmt.Errorf("png: %w", err)
		}
	}
	return nil
}

func rgba(c page.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 255} }

func (c *canvas) path(p *page.Path, at affine) error {
	lines, err := flatten(p, at)
	if err != nil {
		return err
	}
	if p.Fill != nil {
		if p.EvenOdd && c.wild {
			c.fillWild(lines, *p.Fill)
		} else if p.EvenOdd {
			c.fillEvenOdd(lines, *p.Fill)
		} else {
			c.fill(lines, *p.Fill)
		}
	}
	if p.Stroke != nil && p.Width > 0 {
		pen := penOf(p, at.scale())
		if dash, ok := dashes(p.Dash, at.scale()); ok {
			lines = dashed(lines, dash)
		}
		for _, outline := range pen.outlines(lines) {
			c.fill(outline, *p.Stroke)
		}
	}
	return nil
}

// fill paints closed polygons with the non-zero rule.
func (c *canvas) fill(lines []line, colour page.Colour) {
	if r, ok := c.cover(lines); ok {
		c.ras.Draw(c.img, r, image.NewUniform(rgba(colour)), image.Point{})
	}
}

// cover puts polygons into the rasteriser; r is the part of the picture they
// touch.
func (c *canvas) cover(lines []line) (r image.Rectangle, ok bool) {
	r = bounds(lines).Intersect(c.clip).Intersect(c.img.Bounds())
	if r.Empty() {
		return r, false
	}
	c.ras.Reset(r.Dx(), r.Dy())
	c.ras.DrawOp = draw.Over
	for _, l := range lines {
		pts := within(l.pts, r)
		if len(pts) < 2 {
			continue
		}
		for i, p := range pts {
			x, y := float32(p.x-float64(r.Min.X)), float32(p.y-float64(r.Min.Y))
			if i == 0 {
				c.ras.MoveTo(x, y)
			} else {
				c.ras.LineTo(x, y)
			}
		}
		c.ras.ClosePath()
	}
	return r, true
}

// fillEvenOdd paints with the even-odd rule, which the rasteriser lacks: the
// coverages of the single contours are combined as exclusive or.
func (c *canvas) fillEvenOdd(lines []line, colour page.Colour) {
	all := bounds(lines).Intersect(c.clip).Intersect(c.img.Bounds())
	if all.Empty() {
		return
	}
	sum := image.NewAlpha(all)
	for _, l := range lines {
		r, ok := c.cover([]line{l})
		if !ok {
			continue
		}
		one := image.NewAlpha(r)
		c.ras.DrawOp = draw.Src
		c.ras.Draw(one, r, image.Opaque, image.Point{})
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				a, b := int(sum.AlphaAt(x, y).A), int(one.AlphaAt(x, y).A)
				sum.SetAlpha(x, y, color.Alpha{A: uint8(a + b - 2*a*b/255)})
			}
		}
	}
	draw.DrawMask(c.img, all, image.NewUniform(rgba(colour)), image.Point{}, sum, all.Min, draw.Over)
}
