package page

import "jarmark/internal/kit/unit"

// Trace walks a path as straight pieces, curves in twelve steps, and calls
// step with both ends of each. Only where a part begins are both the same: a
// piece without length is left out.
func (p *Path) Trace(step func(a, b Point)) { trace(p.Ops, p.Pts, nil, step) }

// trace is Trace that takes no steps along curves that skip, given their four
// control points, says do not matter.
func trace(ops []Op, pts []Point, skip func(pts ...Point) bool, step func(a, b Point)) {
	var start, now Point
	line := func(to Point) {
		if to != now {
			step(now, to)
		}
		now = to
	}
	for _, op := range ops {
		need := taken[op]
		if len(pts) < need {
			return
		}
		switch op {
		case MoveTo:
			start, now = pts[0], pts[0]
			step(now, now)
		case LineTo:
			line(pts[0])
		case CubicTo:
			from := now
			if skip != nil && skip(from, pts[0], pts[1], pts[2]) {
				now = pts[2]
				break
			}
			for i := 1; i <= 12; i++ {
				line(onCubic(from, pts[0], pts[1], pts[2], float64(i)/12))
			}
		case Close:
			line(start)
		}
		pts = pts[need:]
	}
}

func onCubic(a, b, c, d Point, t float64) Point {
	u := 1 - t
	ka, kb, kc, kd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Point{
		X: part(a.X, ka) + part(b.X, kb) + part(c.X, kc) + part(d.X, kd),
		Y: part(a.Y, ka) + part(b.Y, kb) + part(c.Y, kc) + part(d.Y, kd),
	}
}

// Crosses reports whether a drawing leaves ink in a box: its outline runs
// through the box, or its fill covers the box's middle.
func (p *Path) Crosses(r Rect) bool {
	if r.W <= 0 || r.H <= 0 {
		return false
	}
	reach := p.Bounds()
	if !reach.Overlaps(r) && reach.W > 0 && reach.H > 0 {
		return false
	}
	if p.EdgeIn(r) {
		return true
	}
	return p.Fill != nil && p.Covers(Point{X: r.X + r.W/2, Y: r.Y + r.H/2})
}

// EdgeIn reports whether the outline of a path, as wide as its stroke, runs
// through a box.
func (p *Path) EdgeIn(r Rect) bool {
	if p.Stroke != nil {
		r = r.Grow(p.Width/2, p.Width/2)
	}
	for _, part := range p.pieces() {
		if hit := false; !apart(r, part.lo, part.hi) {
			trace(part.ops, part.pts, func(pts ...Point) bool { return beside(r, pts) }, func(a, b Point) {
				hit = hit || segmentMeets(a, b, r)
			})
			if hit {
				return true
			}
		}
	}
	return false
}

// beside reports whether points, and so any curve they control, lie all on one
// side of a box. A rounded point of the curve may lie up to 4 nm off their hull.
func beside(r Rect, pts []Point) bool {
	lo, hi := hull(pts)
	return apart(r, lo, hi)
}

// apart reports whether a box of points lies all on one side of a box.
func apart(r Rect, lo, hi Point) bool {
	return hi.X+4 < r.X || lo.X-4 > r.X+r.W || hi.Y+4 < r.Y || lo.Y-4 > r.Y+r.H
}

// hull is the box around points, by its corners.
func hull(pts []Point) (lo, hi Point) {
	lo, hi = pts[0], pts[0]
	for _, q := range pts[1:] {
		lo.X, lo.Y = min(lo.X, q.X), min(lo.Y, q.Y)
		hi.X, hi.Y = max(hi.X, q.X), max(hi.Y, q.Y)
	}
	return lo, hi
}

// segmentMeets clips a segment against a box (Liang and Barsky's method).
func segmentMeets(a, b Point, r Rect) bool {
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

// Covers reports whether a filled path covers a point, by its fill rule.
func (p *Path) Covers(q Point) bool {
	winding, crossings := 0, 0
	var first, last Point
	count := func(a, b Point) {
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
	// A curve counts as its chord where its control points all lie to one side
	// of the point; only one that passes around it is walked.
	// A rounded point of the curve may lie up to 4 nm off their hull.
	chord := func(pts ...Point) bool {
		lo, hi := hull(pts)
		if lo.Y-4 <= q.Y && q.Y < hi.Y+4 && lo.X-4 <= q.X && q.X < hi.X+4 {
			return false
		}
		count(pts[0], pts[3])
		last = pts[3]
		return true
	}
	for _, part := range p.pieces() {
		if apart(Rect{X: q.X, Y: q.Y}, part.lo, part.hi) {
			continue // it winds around nothing outside its own box
		}
		first, last = part.pts[0], part.pts[0]
		trace(part.ops, part.pts, chord, func(a, b Point) {
			count(a, b)
			last = b
		})
		count(last, first) // an open part is closed to be filled
	}
	if p.EvenOdd {
		return crossings%2 == 1
	}
	return winding != 0
}

func part(l unit.Length, f float64) unit.Length { return unit.Length(float64(l) * f) }
