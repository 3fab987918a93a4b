package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// within reports whether a box lies inside the safe area of a label's shape,
// with a tolerance.
func within(f *page.Frame, r page.Rect, slack unit.Length) bool {
	s := f.Safe - slack
	if r.X < s || r.Y < s || r.X+r.W > f.W-s || r.Y+r.H > f.H-s {
		return false
	}
	for _, p := range []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X, Y: r.Y + r.H}, {X: r.X + r.W, Y: r.Y + r.H}} {
		if !pointWithin(f, p, s) {
			return false
		}
	}
	return true
}

// pointWithin reports whether a point lies inside the outline moved in by s.
func pointWithin(f *page.Frame, p page.Point, s unit.Length) bool {
	switch f.Shape {
	case page.Ellipse:
		rx, ry := float64(f.W/2-s), float64(f.H/2-s)
		if rx <= 0 || ry <= 0 {
			return false
		}
		dx, dy := float64(p.X-f.W/2)/rx, float64(p.Y-f.H/2)/ry
		return dx*dx+dy*dy <= 1.0000001
	case page.TagShape:
		cx, cy := page.TagCut(f.W, f.H)
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
