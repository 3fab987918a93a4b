package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// blossoms is a flowering twig.
func (k *sketch) blossoms() {
	b := k.box
	size := min(b.h()*0.24, b.w()*0.075, 5.5)
	c := b.centre()
	wave := min(b.h()*0.2, size*0.8)
	s := newSpine(false, 80, func(t float64) vec {
		return vec{b.x0 + size*1.1 + (b.w()-size*2.2)*t, c.y + wave*math.Sin(t*2*math.Pi+0.6)*0.8 - wave*0.3}
	})
	l := s.length()
	k.stroke(s.line(0, l, 14), k.tint.stem, max(0.16, size*0.08))
	n := max(3, int(math.Sqrt(k.density)*l/(size*2.25)))
	type bloom struct {
		at   vec
		r, a float64
	}
	var blooms []bloom
	for i := range n {
		d := l * (float64(i) + 0.5) / float64(n)
		p, h := s.at(d)
		side := 1 - 2*float64(i%2)
		for j, back := range []float64{0.55, -0.35} {
			q, hh := s.at(d - size*back*1.1)
			k.leaf(q, hh-side*(0.75+0.25*float64(j)), size*1.15*k.vary(0.12), slim, side*0.1, i+j)
		}
		if i%3 == 2 {
			k.bud(p, h+side*0.7, size)
			continue
		}
		blooms = append(blooms, bloom{offset(p, h, side*size*0.42), size * k.vary(0.13), k.turn(math.Pi)})
	}
	k.bud(s.pts[len(s.pts)-1], k.turn(0.3), size)
	k.bud(s.pts[0], math.Pi+k.turn(0.3), size)
	for _, f := range blooms {
		k.blossom(f.at, f.r, f.a)
	}
}

func (t tint) petal() (petal, edge page.Colour) {
	if t.dark {
		return palette.Mix(t.cream, t.fruit, 0.1), palette.Mix(t.cream, t.fruit, 0.5)
	}
	petal = palette.Mix(white, t.fruit, 0.16)
	return petal, palette.Ensure(palette.Mix(white, t.fruit, 0.52), t.ground, 1.65)
}

// blossom is one flower of five notched petals.
func (k *sketch) blossom(c vec, r, turn float64) {
	petal, edge := k.tint.petal()
	k.element(func() {
		for i := range 5 {
			a := turn + float64(i)*2*math.Pi/5
			at := func(x, y float64) vec { return c.add(polar(a, x*r)).add(polar(a+math.Pi/2, y*r)) }
			t := (&trace{}).move(at(0.08, 0)).
				curve(at(0.2, -0.5), at(0.75, -0.75), at(0.98, -0.2)).curve(at(1, -0.1), at(0.95, -0.04), at(0.9, 0)).
				curve(at(0.95, 0.04), at(1, 0.1), at(0.98, 0.2)).curve(at(0.75, 0.75), at(0.2, 0.5), at(0.08, 0)).close()
			if k.tint.line {
				k.body(t, petal)
			} else {
				k.put(shape{ops: t.ops, pts: t.pts, fill: &petal, stroke: &edge, width: max(0.08, r*0.035)})
			}
			k.shadeBody(spot(at(0.3, 0), 0.2*r, 0.1*r, a), palette.Mix(petal, edge, 0.75))
		}
		stamens, tips := &trace{}, &trace{}
		for i := range 8 {
			a := turn + 0.3 + float64(i)*math.Pi/4
			q := c.add(polar(a, r*(0.34+0.08*float64(i%2))))
			stamens.move(c).line(q)
			s := spot(q, 0.055*r, 0.055*r, 0)
			tips.ops, tips.pts = append(tips.ops, s.ops...), append(tips.pts, s.pts...)
		}
		k.stroke(stamens, palette.Mix(k.tint.gold, edge, 0.4), max(0.07, r*0.025))
		k.shadeBody(tips, k.tint.gold)
		k.body(spot(c, 0.13*r, 0.13*r, 0), k.tint.gold)
	})
}

func (k *sketch) bud(p vec, angle, size float64) {
	petal, edge := k.tint.petal()
	q := p.add(polar(angle, size*0.6))
	k.element(func() {
		k.stroke((&trace{}).move(p).line(q), k.tint.stem, max(0.12, size*0.06))
		t := ellipse(q.add(polar(angle, size*0.25)), size*0.32, size*0.24, angle)
		k.body(t, palette.Mix(petal, edge, 0.55))
		k.leaf(q, angle-0.5, size*0.42, slim, 0.25, 1)
		k.leaf(q, angle+0.5, size*0.42, slim, -0.25, 0)
	})
}

// flower is one blossom on two leaves.
func flower(e easel) {
	e.leafAt(-0.1, 0.1, 2.6, 1.05, slim, -0.1, 0)
	e.leafAt(0.1, 0.1, 0.5, 1.05, slim, 0.1, 1)
	e.k.blossom(e.p(0, -0.08), e.r*0.86, e.angle-1.57)
}
