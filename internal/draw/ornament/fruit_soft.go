package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

func strawberry(e easel) {
	k := e.k
	e.stalk(0.09, 0.1, -1.05, 0.03, -0.9, 0, -0.6)
	e.form(e.mirror(0, -0.66, 0.46, -0.74, 0.83, -0.38, 0.66, 0.28, 0.3, 0.8, 0, 1), k.tint.fruit, k.tint.shade)
	k.shadeBody(spot(e.p(-0.42, -0.1), 0.3*e.r, 0.16*e.r, e.angle+1.25), palette.Mix(k.tint.fruit, k.tint.light, 0.25))
	seeds := &trace{}
	for _, q := range [][2]float64{
		{-0.5, -0.22}, {-0.12, -0.16}, {0.26, -0.2}, {0.58, -0.26},
		{-0.34, 0.14}, {0.04, 0.2}, {0.42, 0.12}, {-0.16, 0.5}, {0.22, 0.5}, {0.02, 0.78},
	} {
		seeds.move(e.p(q[0]*1.02, q[1]-0.045)).line(e.p(q[0]*0.96, q[1]+0.045))
	}
	k.stroke(seeds, palette.Mix(k.tint.light, k.tint.gold, 0.55), 0.058*e.r)
	for i, a := range []float64{2.75, 0.4, 2.2, 0.95, 1.57} {
		e.leafAt(0, -0.68, a, 0.56+0.05*float64(i%2), slim, 0.1*math.Cos(a), i)
	}
	e.leafAt(0, -0.68, -2.6, 0.4, slim, 0, 1)
	e.leafAt(0, -0.68, -0.55, 0.4, slim, 0, 2)
}

// bramble is a blackberry or raspberry: drupelets in rows under a calyx.
func bramble(e easel) {
	k := e.k
	e.stalk(0.08, 0.06, -1.05, 0, -0.9, 0, -0.7)
	rows := []struct {
		n int
		y float64
	}{{1, 0.74}, {2, 0.5}, {3, 0.2}, {4, -0.14}, {3, -0.46}}
	if !k.tint.line {
		k.body(smooth(e.mirror(0, -0.7, 0.5, -0.66, 0.74, -0.2, 0.56, 0.36, 0.24, 0.78, 0, 0.9), true), palette.Mix(k.tint.fruit, k.tint.shade, 0.8))
	}
	light := palette.Mix(k.tint.fruit, k.tint.light, 0.6)
	for _, row := range rows {
		for i := range row.n {
			x := (float64(i) - float64(row.n-1)/2) * 0.38
			q := e.p(x, row.y+0.05*math.Abs(x))
			k.drupelet(q, 0.205*e.r, palette.Mix(k.tint.fruit, k.tint.shade, 0.16*float64(i%2)))
			k.shadeBody(spot(q.add(vec{-0.06 * e.r, -0.07 * e.r}), 0.055*e.r, 0.045*e.r, -0.7), light)
		}
	}
	for i, a := range []float64{2.85, 0.3, 2.15, 1.0, 1.57} {
		e.leafAt(0, -0.68, a, 0.5, slim, 0.1*math.Cos(a), i)
	}
}

// drupelet is one bead of a bramble, edged so that it stands off the next.
func (k *sketch) drupelet(c vec, r float64, tone page.Colour) {
	t := ellipse(c, r, r, 0)
	if k.tint.line || r < 0.25 {
		k.body(t, tone)
		return
	}
	edge := palette.Mix(k.tint.fruit, k.tint.shade, 0.95)
	k.put(shape{ops: t.ops, pts: t.pts, fill: &tone, stroke: &edge, width: r * 0.2})
}

func rhubarb(e easel) {
	k := e.k
	for i, a := range []float64{-0.32, 0.3, 0} {
		s := easel{k, e.c, e.r, e.angle + a}
		s.leafAt(0, -0.2, -math.Pi/2-a*0.6, 0.86, blade{wide: 0.86, belly: -0.06, point: 0.82, pinch: 0.35, sideVein: true}, a*0.2, i)
		stalk := s.all(-0.1, 1, -0.13, 0.4, -0.07, -0.3, 0.07, -0.3, 0.13, 0.4, 0.12, 1)
		t := (&trace{}).move(stalk[0]).curve(stalk[1], stalk[1], stalk[2]).line(stalk[3]).curve(stalk[4], stalk[4], stalk[5]).close()
		k.body(t, palette.Mix(k.tint.fruit, k.tint.shade, 0.3*float64(i%2)))
		ribs := (&trace{}).move(s.p(-0.03, 0.92)).line(s.p(-0.03, -0.2)).move(s.p(0.05, 0.92)).line(s.p(0.03, -0.2))
		k.stroke(ribs, palette.Mix(k.tint.fruit, k.tint.light, 0.5), max(0.06, 0.028*e.r))
	}
}

// fig with its ribs and a drop-shaped body.
func fig(e easel) {
	k := e.k
	e.leafAt(0.02, -0.86, 0.25, 0.85, broad, 0.12, 0)
	e.form(e.mirror(0, -0.95, 0.16, -0.8, 0.42, -0.2, 0.76, 0.32, 0.5, 0.84, 0, 0.96), k.tint.fruit, k.tint.shade)
	c := palette.Mix(k.tint.fruit, k.tint.light, 0.3)
	for _, x := range []float64{-0.55, -0.2, 0.2} {
		k.stroke((&trace{}).move(e.p(x*0.12, -0.72)).curve(e.p(x*0.5, -0.25), e.p(x*1.25, 0.2), e.p(x*0.9, 0.68)), c, max(0.06, 0.035*e.r))
	}
	e.stalk(0.12, 0.04, -1.08, 0, -1, 0, -0.9)
}

func pomegranate(e easel) {
	k := e.k
	e.leafAt(-0.1, -0.6, -2.85, 0.95, slim, -0.12, 0)
	e.leafAt(0.1, -0.6, -0.3, 0.95, slim, 0.12, 1)
	t := &trace{}
	for i, x := range []float64{-0.24, -0.3, -0.12, 0, 0.12, 0.3, 0.24} {
		y := -0.62 - 0.34*float64(i%2)
		if i == 3 {
			y = -1
		}
		if i == 2 || i == 4 {
			y = -0.8
		}
		if i == 0 {
			t.move(e.p(x, y))
		} else {
			t.line(e.p(x, y))
		}
	}
	k.body(t.close(), palette.Mix(k.tint.fruit, k.tint.shade, 0.5))
	e.form(e.mirror(0, -0.66, 0.5, -0.6, 0.84, 0.08, 0.56, 0.74, 0, 0.92), k.tint.fruit, k.tint.shade)
	e.glow(-0.38, -0.14, 0.22, 0.14, -0.8)
}
