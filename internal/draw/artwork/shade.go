package artwork

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// spot is a place in the box of the drawing, as a number.
type spot struct{ x, y float64 }

// shade paints an area with a gradient. A gradient without a length, or of one stop,
// is its last colour; one without stops is none.
func (r *reader) shade(name string, p *page.Path, in state) {
	g, ok := r.gradient(name, in.style.fill.id, in.style.colour)
	if !ok || len(g.stops) == 0 {
		return
	}
	parts := flattened(p)
	cuts := 2 * (1 + len(g.steps()))
	if g.radial {
		cuts *= around / 2
	}
	for _, part := range parts {
		if !r.spend(len(part) * cuts) {
			return
		}
	}
	share, ok := g.share(parts, in.to)
	last := g.stops[len(g.stops)-1].colour
	if !ok || len(g.stops) == 1 {
		r.area(parts, p.EvenOdd, last)
		return
	}
	if !g.radial {
		r.bands(g, parts, share, p.EvenOdd)
		return
	}
	steps := g.steps()
	r.area(parts, p.EvenOdd, last) // from the outermost ring in
	for i := len(steps) - 1; i >= 0; i-- {
		s, inner := steps[i], parts
		if s.at <= 0 {
			break
		}
		for k := range around { // inside the chords of a circle
			sin, cos := math.Sincos(2 * math.Pi * float64(k) / around)
			inner = cut(inner, p.EvenOdd, func(q spot) float64 { u := g.place(q); return s.at - u.x*cos - u.y*sin })
		}
		r.area(inner, p.EvenOdd, s.before)
	}
}

// lap is how far a colour that is much another is painted over one, so that nothing
// shows between; one a step on is painted over all of its own way.
const lap = 0.004

// bands paints a linear gradient: each colour from its step to past the next.
func (r *reader) bands(g gradient, parts [][]spot, share func(spot) float64, evenOdd bool) {
	steps := g.steps()
	from, colour := math.Inf(-1), g.stops[0].colour
	for i := 0; i <= len(steps); i++ {
		to, past := math.Inf(1), math.Inf(1)
		if i < len(steps) {
			to = steps[i].at
			past = to + lap
		}
		if i < len(steps) && apart(colour, steps[i].after) <= 3*finest {
			past = math.Inf(1)
			if i+1 < len(steps) {
				past = max(steps[i+1].at, to+lap)
			}
		}
		if to > from {
			band := parts
			if i > 0 {
				band = cut(band, evenOdd, func(q spot) float64 { return share(q) - from })
			}
			if !math.IsInf(past, 1) {
				band = cut(band, evenOdd, func(q spot) float64 { return past - share(q) })
			}
			r.area(band, evenOdd, colour)
		}
		if i < len(steps) {
			from, colour = to, steps[i].after
		}
	}
}

// mostWork bounds what gradients may cost, in spots looked at: a second.
const mostWork = 100_000_000

// spend reports whether there is work left for gradients, and tells where there is not.
func (r *reader) spend(n int) bool {
	if r.work += n; r.work <= mostWork {
		return true
	}
	r.stop("give its areas plain colours, or export it as PNG", "the drawing has too many gradients, or too large areas painted with them")
	return false
}

// step is where one colour gives way to the next.
type step struct {
	at            float64
	before, after page.Colour
}

// steps cuts the way between stops into steps too small to be seen.
func (g *gradient) steps() (out []step) {
	last := g.stops[0].colour
	for i := 1; i < len(g.stops); i++ {
		a, b := g.stops[i-1], g.stops[i]
		n := max(1, min(mostSteps, int(apart(a.colour, b.colour)/finest)))
		for k := range n {
			to := blend(a.colour, b.colour, (float64(k)+0.5)/float64(n))
			if k > 0 || to != last {
				out = append(out, step{a.at + (b.at-a.at)*float64(k)/float64(n), last, to})
			}
			last = to
		}
	}
	return append(out, step{g.stops[len(g.stops)-1].at, last, g.stops[len(g.stops)-1].colour})
}

// apart is how much two colours differ, of 255.
func apart(a, b page.Colour) (d float64) {
	for _, v := range [3][2]uint8{{a.R, b.R}, {a.G, b.G}, {a.B, b.B}} {
		d = max(d, math.Abs(float64(v[0])-float64(v[1])))
	}
	return d
}

func blend(a, b page.Colour, t float64) page.Colour {
	v := func(x, y uint8) uint8 { return uint8(float64(x) + (float64(y)-float64(x))*t + 0.5) }
	return page.Colour{R: v(a.R, b.R), G: v(a.G, b.G), B: v(a.B, b.B)}
}

// share gives how far along the gradient a place is, 0 at its first stop and 1 at its
// last; of a radial one it is only asked whether there is one. It keeps for place how
// the drawing maps to the gradient.
func (g *gradient) share(parts [][]spot, to matrix) (func(spot) float64, bool) {
	back, ok := to.inverse()
	if !ok {
		return nil, false
	}
	if g.box {
		lo, hi := spot{math.Inf(1), math.Inf(1)}, spot{math.Inf(-1), math.Inf(-1)}
		for _, part := range parts {
			for _, q := range part {
				x, y := back.apply(q.x, q.y)
				lo, hi = spot{min(lo.x, x), min(lo.y, y)}, spot{max(hi.x, x), max(hi.y, y)}
			}
		}
		box, ok := matrix{a: hi.x - lo.x, d: hi.y - lo.y, e: lo.x, f: lo.y}.inverse()
		if !ok {
			return nil, false
		}
		back = box.mul(back)
	}
	own, ok := g.to.inverse()
	if !ok {
		return nil, false
	}
	back = own.mul(back)
	if g.radial {
		if g.at[2] <= 0 {
			return nil, false
		}
		scale := matrix{a: 1 / g.at[2], d: 1 / g.at[2], e: -g.at[0] / g.at[2], f: -g.at[1] / g.at[2]}
		g.to = scale.mul(back)
		return nil, true
	}
	dx, dy := g.at[2]-g.at[0], g.at[3]-g.at[1]
	long := dx*dx + dy*dy
	return func(q spot) float64 {
		x, y := back.apply(q.x, q.y)
		return ((x-g.at[0])*dx + (y-g.at[1])*dy) / long
	}, long > 0
}

// place is a place of the drawing in the circle of a radial gradient, of radius 1.
func (g *gradient) place(q spot) (u spot) {
	u.x, u.y = g.to.apply(q.x, q.y)
	return u
}

// inverse is the way back; ok is false where there is none.
func (m matrix) inverse() (matrix, bool) {
	d := m.a*m.d - m.b*m.c
	if math.Abs(d) < 1e-30 || math.IsInf(d, 0) || math.IsNaN(d) {
		return identity, false
	}
	n := matrix{a: m.d / d, b: -m.b / d, c: -m.c / d, d: m.a / d}
	e, f := n.apply(-m.e, -m.f)
	n.e, n.f = e, f
	return n, true
}

// flattened is a path as polygons: a curve in short lines.
func flattened(p *page.Path) (out [][]spot) {
	const lines = 24
	at := func(q page.Point) spot { return spot{float64(q.X), float64(q.Y)} }
	i := 0
	for _, op := range p.Ops {
		switch op {
		case page.MoveTo:
			out = append(out, []spot{at(p.Pts[i])})
			i++
		case page.LineTo:
			out[len(out)-1] = append(out[len(out)-1], at(p.Pts[i]))
			i++
		case page.CubicTo:
			part := out[len(out)-1]
			a, b, c, d := part[len(part)-1], at(p.Pts[i]), at(p.Pts[i+1]), at(p.Pts[i+2])
			for k := 1; k <= lines; k++ {
				t := float64(k) / lines
				u := 1 - t
				w := [4]float64{u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t}
				part = append(part, spot{w[0]*a.x + w[1]*b.x + w[2]*c.x + w[3]*d.x, w[0]*a.y + w[1]*b.y + w[2]*c.y + w[3]*d.y})
			}
			out[len(out)-1] = part
			i += 3
		}
	}
	return out
}

// area keeps polygons of one colour.
func (r *reader) area(parts [][]spot, evenOdd bool, c page.Colour) {
	p := &page.Path{EvenOdd: evenOdd, Fill: &c}
	for _, part := range parts {
		for i, q := range part {
			op := page.LineTo
			if i == 0 {
				op = page.MoveTo
			}
			p.Ops, p.Pts = append(p.Ops, op), append(p.Pts, page.Point{X: unit.Length(q.x), Y: unit.Length(q.y)})
		}
		p.Ops = append(p.Ops, page.Close)
	}
	if r.points += len(p.Pts); r.points > mostPoints {
		r.stop("simplify its paths (in drawing programs: simplify), or export it as PNG", "the drawing has more than %d points, its gradients in steps", mostPoints)
		return
	}
	if len(p.Pts) > 0 {
		p.Seal()
		r.out.Paths = append(r.out.Paths, p)
	}
}
