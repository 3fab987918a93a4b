package ornament

import (
	"math"

	"jarmark/internal/draw/palette"
)

func tomato(e easel) {
	k := e.k
	e.form(e.mirror(0, -0.62, 0.5, -0.68, 0.88, -0.08, 0.66, 0.58, 0, 0.78), k.tint.fruit, k.tint.shade)
	e.glow(-0.48, -0.1, 0.24, 0.14, -0.9)
	for i, a := range []float64{2.9, 0.25, 2.2, 0.95, 1.57} {
		e.leafAt(0, -0.62, a, 0.5, willow, 0.16*math.Cos(a), i)
	}
	e.stalk(0.1, 0.12, -0.98, 0.02, -0.8, 0, -0.6)
}

func pumpkin(e easel) {
	k := e.k
	c := k.tint.fruit
	deep := palette.Mix(c, k.tint.shade, 0.65)
	for i, l := range []struct{ x, rx float64 }{{-0.52, 0.4}, {0.52, 0.4}, {-0.28, 0.42}, {0.28, 0.42}, {0, 0.36}} {
		tone := palette.Mix(c, deep, []float64{0.55, 0.85, 0.2, 0.5, 0}[i])
		k.body(ellipse(e.p(l.x, 0.12), l.rx*e.r, 0.66*e.r, e.angle), tone)
	}
	e.glow(-0.1, -0.16, 0.1, 0.26, 0.1)
	e.leafAt(0.1, -0.56, -0.3, 0.75, broad, 0.14, 0)
	e.stalk(0.17, 0.1, -0.95, 0, -0.75, 0, -0.5)
	e.stalk(0.05, 0.05, -0.62, -0.35, -0.82, -0.6, -0.62, -0.75, -0.78)
}

func carrot(e easel) {
	k := e.k
	for i, a := range []float64{-2.2, -0.95, -1.9, -1.25, -1.57} {
		e.leafAt(0, -0.4, a, 0.62, willow, 0.12*math.Cos(a), i)
	}
	e.form(e.mirror(0, -0.46, 0.26, -0.36, 0.26, 0, 0.12, 0.6, 0, 1.05), k.tint.fruit, k.tint.shade)
	t := (&trace{}).move(e.p(-0.22, -0.1)).line(e.p(-0.06, -0.08)).move(e.p(0.2, 0.12)).line(e.p(0.05, 0.14)).
		move(e.p(-0.16, 0.32)).line(e.p(-0.05, 0.34)).move(e.p(0.11, 0.52)).line(e.p(0.02, 0.53))
	k.stroke(t, palette.Mix(k.tint.fruit, k.tint.shade, 0.8), max(0.06, 0.04*e.r))
}

func chilli(e easel) {
	k := e.k
	pts := e.all(-0.24, -0.5, 0.04, -0.6, 0.3, -0.46, 0.34, -0.05, 0.22, 0.42, -0.08, 0.8, -0.46, 1, -0.24, 0.66, -0.12, 0.3, -0.16, -0.1)
	e.form(pts, k.tint.fruit, k.tint.shade)
	k.shadeBody(spot(e.p(-0.05, -0.1), 0.05*e.r, 0.26*e.r, e.angle), palette.Mix(k.tint.fruit, k.tint.light, 0.7))
	e.leafAt(0.02, -0.56, 2.6, 0.34, slim, 0.1, 0)
	e.leafAt(0.06, -0.56, 0.5, 0.34, slim, -0.1, 1)
	e.leafAt(0.04, -0.58, 1.57, 0.28, slim, 0, 2)
	e.stalk(0.1, 0.34, -1, 0.12, -0.82, 0.04, -0.58)
}

func pineapple(e easel) {
	k := e.k
	for i, a := range []float64{-2.5, -0.65, -2.15, -1.0, -1.8, -1.35, -1.57} {
		e.leafAt(0, -0.3, a, 0.5+0.05*float64(i), willow, 0.2*math.Cos(a), i)
	}
	e.form(e.mirror(0, -0.38, 0.36, -0.3, 0.54, 0.22, 0.42, 0.8, 0, 0.98), k.tint.fruit, k.tint.shade)
	t := &trace{}
	for _, y := range []float64{-0.1, 0.2, 0.5} {
		t.move(e.p(-0.44, y)).curve(e.p(-0.15, y+0.1), e.p(0.15, y+0.22), e.p(0.38, y+0.34))
		t.move(e.p(0.44, y)).curve(e.p(0.15, y+0.1), e.p(-0.15, y+0.22), e.p(-0.38, y+0.34))
	}
	k.stroke(t, palette.Mix(k.tint.fruit, k.tint.shade, 0.85), max(0.07, 0.04*e.r))
}

// anise is a star of eight pods with a seed in each.
func anise(e easel) {
	k := e.k
	seeds := &trace{}
	for i := range 8 {
		a := e.angle + float64(i)*math.Pi/4
		pod := blade{wide: 0.44, belly: 0.3, point: 0.72, pinch: 0.3}
		at := func(x, y float64) vec {
			return e.c.add(polar(a, x*e.r*0.92)).add(polar(a+math.Pi/2, y*e.r*0.92))
		}
		h := pod.wide * 0.6
		t := (&trace{}).move(at(0, 0)).curve(at(0.3, -h), at(0.7, -h*0.8), at(1, 0)).curve(at(0.7, h*0.8), at(0.3, h), at(0, 0)).close()
		k.body(t, palette.Mix(k.tint.fruit, k.tint.shade, 0.35*float64(i%2)))
		s := spot(at(0.52, 0), 0.15*e.r, 0.075*e.r, a)
		seeds.ops, seeds.pts = append(seeds.ops, s.ops...), append(seeds.pts, s.pts...)
	}
	if k.tint.line {
		k.stroke(seeds, black, hair*0.8)
		return
	}
	light := palette.Mix(k.tint.fruit, k.tint.light, 0.7)
	k.put(shape{ops: seeds.ops, pts: seeds.pts, fill: &light})
}

// leafSprig is a fan of leaves, for foods without a fruit of their own.
func leafSprig(e easel) {
	e.stalk(0.07, 0, 1, 0.04, 0.4, 0, -0.4)
	for i := range 3 {
		y := 0.62 - 0.42*float64(i)
		l := 0.86 - 0.12*float64(i)
		e.leafAt(0.02, y, -0.62, l, oval, -0.1, i)
		e.leafAt(0.02, y-0.1, -2.5, l, oval, 0.1, i+1)
	}
	e.leafAt(0, -0.34, -math.Pi/2, 0.7, oval, 0.05, 2)
}

// ear is an ear of wheat.
func ear(e easel) {
	s := newSpine(false, 24, func(t float64) vec { return e.p(0.1*math.Sin(t*2), 1-1.95*t) })
	e.k.ear(s, 0.42, e.r*0.34)
}

// lavender is a posy of three spikes.
func lavender(e easel) {
	for _, x := range []float64{-1, 1, 0} {
		lean := x * 0.34
		s := newSpine(false, 24, func(t float64) vec { return e.p(-x*0.05+lean*t*t*1.6, 1-(1.95-0.28*x*x)*t) })
		e.k.element(func() { e.k.spike(s, e.r*0.25) })
	}
	e.leafAt(0, 0.75, -2.3, 0.62, willow, 0.1, 0)
	e.leafAt(0, 0.75, -0.85, 0.62, willow, -0.1, 1)
}

func floret(e easel) {
	e.k.grain(e.p(0, 1.3), e.angle-math.Pi/2, e.r*2.5, 1, e.k.tint.fruit)
}
