package png

import (
	"fmt"
	"image"
	"image/draw"
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// text draws every stretch from its own x with plain advances, as page.Seg
// promises.
func (c *canvas) text(t *page.Text, at affine) error {
	f, err := c.faces.Open(t.Face)
	if err != nil {
		return err
	}
	sin, cos := page.SinCos(t.Turn)
	m := at.mul(affine{a: cos, b: sin, c: -sin, d: cos, e: float64(t.At.X), f: float64(t.At.Y)})
	var lines []line
	for _, g := range t.Segs {
		x := float64(g.X)
		for _, r := range g.S {
			if !f.Has(r) {
				return fmt.Errorf("%s has no letter %q", t.Face, r)
			}
			o := f.Outline(r)
			glyph := page.Path{Ops: o.Ops, Pts: make([]page.Point, len(o.Pts))}
			for i, v := range o.Pts {
				glyph.Pts[i] = page.Point{X: ems(v.X, t.Size), Y: ems(v.Y, t.Size)}
			}
			ls, err := flatten(&glyph, m.mul(translation(x, 0)))
			if err != nil {
				return err
			}
			lines = append(lines, ls...)
			x += float64(t.Size) * float64(f.Advance(r)) / 1000
		}
	}
	c.fill(lines, t.Colour)
	return nil
}

// code draws a QR code with module edges on whole pixels, so that every
// module is evenly dark and scanners see crisp squares.
func (c *canvas) code(k *page.Code, at affine) error {
	n := len(k.Modules)
	if n == 0 {
		return nil
	}
	if k.Turn != 0 {
		return c.turnedCode(k, at.mul(turning(k.At, k.Turn)))
	}
	colour := image.NewUniform(rgba(k.Dark))
	for y, row := range k.Modules {
		if len(row) != n {
			return fmt.Errorf("a QR code has %d rows but a row of %d modules", n, len(row))
		}
		for x, dark := range row {
			if dark {
				r := module(k.At, at, x, y, n)
				draw.Draw(c.img, r.Intersect(c.clip), colour, image.Point{}, draw.Src)
			}
		}
	}
	return nil
}

// turnedCode draws a code that does not lie along the dots.
func (c *canvas) turnedCode(k *page.Code, at affine) error {
	n := len(k.Modules)
	var boxes []line
	for y, row := range k.Modules {
		if len(row) != n {
			return fmt.Errorf("a QR code has %d rows but a row of %d modules", n, len(row))
		}
		for x := 0; x < n; x++ {
			from := x
			for x < n && row[x] {
				x++
			}
			if x > from {
				boxes = append(boxes, moduleBox(k.At, at, n, from, y, x))
			}
		}
	}
	c.fill(boxes, k.Dark)
	return nil
}

// moduleBox is a run of dark modules of one row as a polygon.
func moduleBox(box page.Rect, at affine, n, from, row, to int) line {
	corner := func(i, j int) (v vec) {
		v.x, v.y = at.apply(float64(box.X)+float64(box.W)*float64(i)/float64(n), float64(box.Y)+float64(box.H)*float64(j)/float64(n))
		return v
	}
	return line{pts: []vec{corner(from, row), corner(to, row), corner(to, row+1), corner(from, row+1)}, closed: true}
}

// turning turns about the middle of a box, degrees clockwise.
func turning(r page.Rect, degrees float64) affine {
	sin, cos := page.SinCos(degrees)
	x, y := float64(r.X+r.W/2), float64(r.Y+r.H/2)
	return affine{a: cos, b: sin, c: -sin, d: cos, e: x - x*cos + y*sin, f: y - x*sin - y*cos}
}

// module gives the pixels of one module; neighbours share their edges.
func module(box page.Rect, at affine, x, y, n int) image.Rectangle {
	corner := func(i, j int) (int, int) {
		px, py := at.apply(
			float64(box.X)+float64(box.W)*float64(i)/float64(n),
			float64(box.Y)+float64(box.H)*float64(j)/float64(n))
		return int(math.Round(px)), int(math.Round(py))
	}
	x0, y0 := corner(x, y)
	x1, y1 := corner(x+1, y+1)
	return image.Rect(x0, y0, x1, y1).Canon()
}

// ems turns a distance in ems into a length.
func ems(v float64, size unit.Length) unit.Length {
	return unit.Length(math.Round(v * float64(size)))
}
