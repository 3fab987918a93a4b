package page

import "jarmark/internal/kit/unit"

// Union is the least box that holds both.
func (a Rect) Union(b Rect) Rect {
	x, y := min(a.X, b.X), min(a.Y, b.Y)
	return Rect{X: x, Y: y, W: max(a.X+a.W, b.X+b.W) - x, H: max(a.Y+a.H, b.Y+b.H) - y}
}

// Common is what two boxes share; of none that do, a box without area.
func (a Rect) Common(b Rect) Rect {
	x, y := max(a.X, b.X), max(a.Y, b.Y)
	return Rect{X: x, Y: y, W: max(0, min(a.X+a.W, b.X+b.W)-x), H: max(0, min(a.Y+a.H, b.Y+b.H)-y)}
}

// Overlaps reports whether two boxes share more than an edge.
func (a Rect) Overlaps(b Rect) bool {
	return a.X < b.X+b.W && b.X < a.X+a.W && a.Y < b.Y+b.H && b.Y < a.Y+a.H
}

// Grow moves the sides out by dx and dy; negative values move them in.
func (a Rect) Grow(dx, dy unit.Length) Rect {
	return Rect{X: a.X - dx, Y: a.Y - dy, W: a.W + 2*dx, H: a.H + 2*dy}
}

// Bounds is the box of a path's points and half its stroke.
func (p *Path) Bounds() Rect {
	if p.sealed != nil {
		return p.sealed.bounds
	}
	if len(p.Pts) == 0 {
		return Rect{}
	}
	lo, hi := hull(p.Pts)
	w := unit.Length(0)
	if p.Stroke != nil {
		w = p.Width / 2
	}
	return Rect{X: lo.X - w, Y: lo.Y - w, W: hi.X - lo.X + 2*w, H: hi.Y - lo.Y + 2*w}
}

// WithQuiet is the box of a code with its quiet zone.
func (c *Code) WithQuiet() Rect {
	q := c.At.W * unit.Length(c.Quiet) / unit.Length(max(1, len(c.Modules)))
	return c.At.Grow(q, q)
}
