package page

import (
	"jarmark/internal/kit/unit"
)

// Within reports whether a box lies inside the safe area of a label's shape,
// with a tolerance.
func (f *Frame) Within(r Rect, slack unit.Length) bool {
	s := f.Safe - slack
	if r.X < s || r.Y < s || r.X+r.W > f.W-s || r.Y+r.H > f.H-s {
		return false
	}
	if f.Shape == Sector && !f.holds(f.Arc.nearest(r), s) {
		return false
	}
	for _, p := range []Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X, Y: r.Y + r.H}, {X: r.X + r.W, Y: r.Y + r.H}} {
		if !f.holds(p, s) {
			return false
		}
	}
	return true
}

// holds reports whether a point lies inside the outline moved in by s.
func (f *Frame) holds(p Point, s unit.Length) bool {
	switch f.Shape {
	case Sector:
		return f.Arc.holds(p, s)
	case Ellipse:
		rx, ry := float64(f.W/2-s), float64(f.H/2-s)
		if rx <= 0 || ry <= 0 {
			return false
		}
		dx, dy := float64(p.X-f.W/2)/rx, float64(p.Y-f.H/2)/ry
		return dx*dx+dy*dy <= 1.0000001
	case TagShape:
		cx, cy := TagCut(f.W, f.H)
		x := min(p.X, f.W-p.X)
		if x >= cx || p.Y >= cy || cx <= 0 || cy <= 0 {
			return true
		}
		// Right of the cut line from (cx, 0) to (0, cy), safe edge aside.
		return float64(x)/float64(cx)+float64(p.Y)/float64(cy) >= 1
	}
	c := f.Corner - s
	if c <= 0 {
		return true
	}
	x, y := min(p.X, f.W-p.X)-s, min(p.Y, f.H-p.Y)-s
	if x >= c || y >= c {
		return true
	}
	dx, dy := float64(c-x), float64(c-y)
	return dx*dx+dy*dy <= float64(c)*float64(c)*1.0000001
}

// Leaves reports whether a drawing leaves the safe area, with a tolerance.
func (f *Frame) Leaves(p *Path, tolerance unit.Length) bool {
	if f.Within(p.Bounds(), tolerance) {
		return false
	}
	edge := f.Safe - tolerance
	if p.Stroke != nil {
		edge += p.Width / 2
	}
	out := false
	p.Trace(func(a, _ Point) {
		if a.X < edge || a.Y < edge || a.X > f.W-edge || a.Y > f.H-edge || !f.holds(a, edge) {
			out = true
		}
	})
	return out
}
