package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// Engraved drawings are made as a burin makes them: an outline, and lines across
// the form that lie closer, and cross, toward the shadow at the lower right. The
// light patch is left bare, so a drawing of any shape is modelled by its place
// in the light alone.

// burin holds the widths and distances of the lines of an engraving, mm.
const (
	contour  = 0.2
	cut      = 0.1
	hatching = 0.3  // least from line to line on the lit side; half of it toward the shadow
	step     = 0.12 // how finely a line is tried for being inside
	leastRun = 0.22 // shorter lines are dust
	leastCut = 0.8  // narrower shapes bear no lines
	straight = 3    // shorter lines show no bow
)

// engrave cuts one filled shape.
func (k *sketch) engrave(t *trace, c page.Colour) {
	s := shape{ops: t.ops, pts: t.pts}
	paper, ink := k.tint.paper, k.tint.ink
	s.fill, s.stroke = &paper, &ink
	b := s.reach()
	s.width = min(max(b.short()*0.05, cut), contour)
	if b.short() < leastCut/2 { // a pip
		s.fill, s.width = &ink, fine
	}
	k.put(s)
	if b.short() < leastCut {
		return
	}
	ring := outlineOf(t)
	tone := 0.5 - palette.Luminance(c) // dark things are cut more closely
	for _, pass := range []struct {
		angle, from float64
		shift       float64
	}{
		{-math.Pi / 4, 0.12 + tone*0.7, 0},
		{-math.Pi / 4, -0.3 + tone*0.6, 0.5},
		{math.Pi / 5, -0.52 + tone*0.4, 0},
	} {
		k.hatch(ring, b, pass.angle, pass.from, pass.shift)
	}
}

// hatch cuts lines at an angle, bowed over the form, wherever the light is
// less than from; light runs from 1 at the upper left edge to -1 at the lower
// right.
func (k *sketch) hatch(ring []vec, b box, angle, from, shift float64) {
	c, r := b.centre(), math.Hypot(b.w(), b.h())/2
	along, across := polar(angle, 1), polar(angle+math.Pi/2, 1)
	lines, wide := &trace{}, max(hatching, min(b.w(), b.h())*0.036, k.box.short()*0.009)
	for i, d := 0, -r+shift*wide; d <= r; i, d = i+1, d+wide {
		edge := from + 0.1*float64(i*2%5-2) // lines end at different places, as a hand ends them
		at := func(x float64) vec {
			bow := 0.14 * r * (1 - x*x/(r*r))
			return c.add(along.mul(x)).add(across.mul(d + bow - 0.07*r))
		}
		start, inside := 0.0, false
		for x := -r; x <= r+step; x += step {
			p := at(x)
			lit := -0.62*(p.x-c.x)/max(b.w()/2, 1e-6) - 0.72*(p.y-c.y)/max(b.h()/2, 1e-6)
			in := x <= r && lit < edge && within(ring, p)
			switch {
			case in && !inside:
				start = x
			case !in && inside && x-step-start >= leastRun:
				end := x - step
				lines.move(at(start))
				if end-start < straight {
					lines.line(at(end))
				} else {
					lines.curve(at(start+(end-start)/3), at(start+(end-start)*2/3), at(end))
				}
			}
			inside = in
		}
	}
	if len(lines.ops) > 0 {
		ink := k.tint.ink
		k.put(shape{ops: lines.ops, pts: lines.pts, stroke: &ink, width: max(cut, wide*0.3)})
	}
}

// outlineOf flattens a closed outline into corners.
func outlineOf(t *trace) (out []vec) {
	i := 0
	for _, op := range t.ops {
		switch op {
		case page.CubicTo:
			a, b, c, d := out[len(out)-1], t.pts[i], t.pts[i+1], t.pts[i+2]
			for n := 1; n <= 6; n++ {
				u := float64(n) / 6
				v := 1 - u
				out = append(out, a.mul(v*v*v).add(b.mul(3*u*v*v)).add(c.mul(3*u*u*v)).add(d.mul(u*u*u)))
			}
			i += 3
		case page.MoveTo, page.LineTo:
			out = append(out, t.pts[i])
			i++
		}
	}
	return out
}

// within reports whether a place lies inside a ring of corners.
func within(ring []vec, p vec) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.y > p.y) != (b.y > p.y) && p.x < (b.x-a.x)*(p.y-a.y)/(b.y-a.y)+a.x {
			in = !in
		}
	}
	return in
}
