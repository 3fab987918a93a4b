package ornament

import (
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// merged is several shapes of one paint drawn as one path, which keeps files
// small and drawing fast.
type merged struct {
	shape
	parts []box
	clock []bool // turning direction of each part
}

// merge joins each shape with the last earlier one of the same paint, as long
// as nothing drawn in between would change places with it.
func merge(shapes []shape) []*merged {
	const reach = 60 // how far back to look: enough for a leaf among leaves
	var out []*merged
	for i := range shapes {
		s := &shapes[i]
		b, clock := s.reach(), clockwise(s.pts)
		into := -1
		for j := len(out) - 1; j >= 0 && j >= len(out)-reach; j-- {
			if out[j].samePaint(s) && out[j].takes(b, clock, s.fill != nil) {
				into = j
			}
			if into == j || out[j].touches(b) {
				break
			}
		}
		if into < 0 {
			first := *s // of a drawing that is merged again: nothing is added behind it
			first.ops, first.pts = slices.Clip(s.ops), slices.Clip(s.pts)
			out = append(out, &merged{shape: first, parts: []box{b}, clock: []bool{clock}})
			continue
		}
		m := out[into]
		m.ops, m.pts = append(m.ops, s.ops...), append(m.pts, s.pts...)
		m.parts, m.clock = append(m.parts, b), append(m.clock, clock)
	}
	return out
}

func (m *merged) touches(b box) bool {
	for _, p := range m.parts {
		if p.meets(b) {
			return true
		}
	}
	return false
}

// takes reports whether a part may join: filled parts that touch must turn
// the same way, or the non-zero rule would cut a hole; and parts that are
// both filled and outlined must not touch, or outlines would cross fills.
func (m *merged) takes(b box, clock, filled bool) bool {
	if !filled {
		return true
	}
	for i, p := range m.parts {
		if p.meets(b) && (m.clock[i] != clock || m.stroke != nil) {
			return false
		}
	}
	return true
}

func (m *merged) samePaint(s *shape) bool {
	if !same(m.fill, s.fill) || !same(m.stroke, s.stroke) || m.butt != s.butt || len(m.dash) != len(s.dash) {
		return false
	}
	for i := range m.dash {
		if m.dash[i] != s.dash[i] {
			return false
		}
	}
	return m.stroke == nil || micro(m.width) == micro(s.width)
}

func same(a, b *page.Colour) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}

// clockwise tells the turning direction of a closed shape from its control
// points.
func clockwise(pts []vec) bool {
	sum := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		sum += p.x*q.y - q.x*p.y
	}
	return sum > 0
}

// finest is the thinnest line drawn, a quarter of a point (common practice of
// print shops, no source).
const finest = unit.Inch / 72 / 4

func (m *merged) path() *page.Path {
	p := &page.Path{Ops: m.ops, Pts: make([]page.Point, len(m.pts)), Fill: m.fill}
	for i, q := range m.pts {
		p.Pts[i] = page.Point{X: micro(q.x), Y: micro(q.y)}
	}
	if m.stroke != nil {
		p.Stroke, p.Width, p.Round = m.stroke, max(micro(m.width), finest), !m.butt
		for _, d := range m.dash {
			p.Dash = append(p.Dash, micro(d))
		}
	}
	return p
}
