package page

import (
	"math"

	"jarmark/internal/kit/unit"
)

// kappa places the control points of a quarter circle drawn as a cubic.
const kappa = 0.5522847498307936

// Outline is the cut edge of the label in its own coordinates, to be filled
// with the even-odd rule: a tag has its hole.
func (f *Frame) Outline() *Path { return f.Around(0) }

// Around is the outline of a Sector grown by out on all sides; of other shapes, the
// outline itself.
func (f *Frame) Around(out unit.Length) *Path {
	switch f.Shape {
	case Sector:
		return f.Arc.outline(out)
	case Ellipse:
		return roundedBox(f.W, f.H, f.W/2, f.H/2)
	case TagShape:
		return f.tagOutline()
	}
	r := max(0, min(f.Corner, f.W/2, f.H/2))
	return roundedBox(f.W, f.H, r, r)
}

// TagCut is how far the top corners of a hang tag are cut off, across and
// down (our own drawing of a tag; no standard).
func TagCut(w, h unit.Length) (dx, dy unit.Length) {
	dx = w * 18 / 100
	return dx, min(h*127/1000, dx*5/4)
}

// TagHole is where a hang tag is punched: a circle in this box.
func (f *Frame) TagHole() Rect {
	d := min(5*unit.Millimetre, min(f.W, f.H)/6)
	return Rect{X: f.W/2 - d/2, Y: max(f.Safe, f.H*65/1000), W: d, H: d}
}

func (f *Frame) tagOutline() *Path {
	x, y := TagCut(f.W, f.H)
	p := &Path{EvenOdd: true}
	p.add(MoveTo, Point{X: x})
	r := max(0, min(f.Corner, f.W/4, f.H/4))
	k := control(r)
	p.add(LineTo, Point{X: f.W - x})
	p.add(LineTo, Point{X: f.W, Y: y})
	p.add(LineTo, Point{X: f.W, Y: f.H - r})
	p.add(CubicTo, Point{X: f.W, Y: f.H - k}, Point{X: f.W - k, Y: f.H}, Point{X: f.W - r, Y: f.H})
	p.add(LineTo, Point{X: r, Y: f.H})
	p.add(CubicTo, Point{X: k, Y: f.H}, Point{Y: f.H - k}, Point{Y: f.H - r})
	p.add(LineTo, Point{Y: y})
	p.add(Close)
	h := f.TagHole()
	hole := roundedBox(h.W, h.H, h.W/2, h.H/2)
	for i := range hole.Pts {
		hole.Pts[i].X += h.X
		hole.Pts[i].Y += h.Y
	}
	p.Ops, p.Pts = append(p.Ops, hole.Ops...), append(p.Pts, hole.Pts...)
	return p
}

// roundedBox is a box with quarter ellipses as corners.
func roundedBox(w, h, rx, ry unit.Length) *Path {
	kx, ky := control(rx), control(ry)
	p := &Path{EvenOdd: true}
	p.add(MoveTo, Point{X: rx})
	p.add(LineTo, Point{X: w - rx})
	if rx > 0 && ry > 0 {
		p.add(CubicTo, Point{X: w - kx}, Point{X: w, Y: ky}, Point{X: w, Y: ry})
	}
	p.add(LineTo, Point{X: w, Y: h - ry})
	if rx > 0 && ry > 0 {
		p.add(CubicTo, Point{X: w, Y: h - ky}, Point{X: w - kx, Y: h}, Point{X: w - rx, Y: h})
	}
	p.add(LineTo, Point{X: rx, Y: h})
	if rx > 0 && ry > 0 {
		p.add(CubicTo, Point{X: kx, Y: h}, Point{Y: h - ky}, Point{Y: h - ry})
		p.add(LineTo, Point{Y: ry})
		p.add(CubicTo, Point{Y: ky}, Point{X: kx}, Point{X: rx})
	}
	p.add(Close)
	return p
}

// control is how far from the corner the control points of its curve lie.
func control(r unit.Length) unit.Length {
	return unit.Length(math.Round(float64(r) * (1 - kappa)))
}

func (p *Path) add(op Op, pts ...Point) {
	p.Ops, p.Pts = append(p.Ops, op), append(p.Pts, pts...)
}
