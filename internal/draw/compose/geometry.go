package compose

import "jarmark/internal/draw/page"

// trace walks a path as straight pieces, curves in twelve steps, and calls
// step with both ends of each.
func trace(p *page.Path, step func(a, b page.Point)) {
	pts := p.Pts
	var start, now page.Point
	for _, op := range p.Ops {
		need := [...]int{page.MoveTo: 1, page.LineTo: 1, page.CubicTo: 3, page.Close: 0}[op]
		if len(pts) < need {
			return
		}
		switch op {
		case page.MoveTo:
			start, now = pts[0], pts[0]
			step(now, now)
		case page.LineTo:
			step(now, pts[0])
			now = pts[0]
		case page.CubicTo:
			from := now
			for i := 1; i <= 12; i++ {
				to := onCubic(from, pts[0], pts[1], pts[2], float64(i)/12)
				step(now, to)
				now = to
			}
		case page.Close:
			step(now, start)
			now = start
		}
		pts = pts[need:]
	}
}

func onCubic(a, b, c, d page.Point, t float64) page.Point {
	u := 1 - t
	ka, kb, kc, kd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return page.Point{
		X: share(a.X, ka) + share(b.X, kb) + share(c.X, kc) + share(d.X, kd),
		Y: share(a.Y, ka) + share(b.Y, kb) + share(c.Y, kc) + share(d.Y, kd),
	}
}

// crosses reports whether a drawing leaves ink in a box: its outline runs
// through the box, or its fill covers the box's middle.
func crosses(p *page.Path, r page.Rect) bool {
	if r.W <= 0 || r.H <= 0 {
		return false
	}
	reach := bounds(p)
	if !overlaps(reach, r) && reach.W > 0 && reach.H > 0 {
		return false
	}
	if edgeIn(p, r) {
		return true
	}
	return p.Fill != nil && holds(p, page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2})
}

// edgeIn reports whether the outline of a path, as wide as its stroke, runs
// through a box.
func edgeIn(p *page.Path, r page.Rect) bool {
	if p.Stroke != nil {
		r = grow(r, p.Width/2, p.Width/2)
	}
	hit := false
	trace(p, func(a, b page.Point) {
		hit = hit || segmentMeets(a, b, r)
	})
	return hit
}

// segmentMeets clips a segment against a box (Liang and Barsky's method).
func segmentMeets(a, b page.Point, r page.Rect) bool {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{
		{-dx, float64(a.X - r.X)}, {dx, float64(r.X + r.W - a.X)},
		{-dy, float64(a.Y - r.Y)}, {dy, float64(r.Y + r.H - a.Y)},
	} {
		switch {
		case e[0] == 0:
			if e[1] <= 0 {
				return false
			}
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		default:
			t1 = min(t1, e[1]/e[0])
		}
	}
	return t0 < t1 || (dx == 0 && dy == 0)
}

// holds reports whether a filled path covers a point, by its fill rule.
func holds(p *page.Path, q page.Point) bool {
	winding, crossings := 0, 0
	var first, last page.Point
	count := func(a, b page.Point) {
		if (a.Y <= q.Y) == (b.Y <= q.Y) {
			return
		}
		x := float64(a.X) + float64(q.Y-a.Y)*float64(b.X-a.X)/float64(b.Y-a.Y)
		if x <= float64(q.X) {
			return
		}
		crossings++
		if b.Y > a.Y {
			winding++
		} else {
			winding--
		}
	}
	trace(p, func(a, b page.Point) {
		if a == b { // a new part begins: close the one before
			count(last, first)
			first = a
		}
		count(a, b)
		last = b
	})
	count(last, first)
	if p.EvenOdd {
		return crossings%2 == 1
	}
	return winding != 0
}
