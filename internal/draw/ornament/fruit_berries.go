package ornament

import (
	"math"

	"jarmark/internal/draw/palette"
)

// berrySprig is a trio of berries with two leaves.
func berrySprig(e easel) {
	e.leafAt(0, -0.2, -2.75, 1.25, slim, -0.12, 0)
	e.leafAt(0, -0.2, -0.4, 1.25, slim, 0.12, 1)
	e.leafAt(0, -0.25, -1.6, 0.85, slim, 0.08, 2)
	e.stalk(0.06, 0, -0.35, -0.18, -0.05, -0.38, 0.2)
	e.stalk(0.06, 0, -0.35, 0.18, -0.08, 0.38, 0.1)
	e.stalk(0.06, 0, -0.35, 0.04, 0.1, 0.02, 0.6)
	for _, q := range e.all(-0.42, 0.2, 0.42, 0.12, 0.02, 0.64) {
		e.k.berry(q, e.r*0.36, false)
	}
}

// currants is a hanging strand, large berries above, small below.
func currants(e easel) {
	e.leafAt(0, -0.95, -2.7, 0.85, broad, -0.1, 1)
	e.leafAt(0, -0.95, -0.45, 0.9, broad, 0.1, 0)
	e.stalk(0.06, 0, -1, 0.05, -0.4, -0.02, 0.3, 0.04, 0.95)
	for i, y := range []float64{-0.52, -0.38, -0.05, 0.1, 0.4, 0.54, 0.86} {
		x := 0.29 - 0.03*float64(i)
		if i%2 == 1 {
			x = -x
		}
		if i == 6 {
			x = 0.03
		}
		e.k.bead(e.p(x, y), e.r*(0.285-0.018*float64(i)))
	}
}

// elder is a flat umbel of many small berries.
func elder(e easel) {
	e.leafAt(0, -0.55, -2.75, 1.1, slim, -0.1, 0)
	e.leafAt(0, -0.55, -0.4, 1.1, slim, 0.1, 1)
	spots := e.all(-0.8, 0.1, -0.46, 0.3, -0.1, 0.42, 0.27, 0.36, 0.62, 0.22, 0.88, 0.02,
		-0.58, -0.1, -0.22, 0.06, 0.14, 0.04, 0.48, -0.08, -0.02, 0.78, -0.36, 0.66, 0.36, 0.7)
	for i, q := range spots {
		if i < 6 {
			e.k.stroke((&trace{}).move(e.p(0, -0.7)).curve(e.p(0, -0.4), q.lerp(e.p(0, -0.5), 0.5), q), e.k.tint.stem, max(0.09, 0.04*e.r))
		}
	}
	for i, q := range spots {
		e.k.bead(q, e.r*(0.17+0.02*float64(i%3)))
	}
}

// crown is the star a blueberry wears.
func crown(e easel, x, y, r float64) {
	k := e.k
	t := &trace{}
	for i := range 10 {
		l := r
		if i%2 == 1 {
			l = r * 0.52
		}
		q := e.p(x, y).add(polar(e.angle+float64(i)*math.Pi/5, l*e.r))
		if i == 0 {
			t.move(q)
		} else {
			t.line(q)
		}
	}
	k.body(t.close(), palette.Mix(k.tint.fruit, k.tint.shade, 0.9))
}

func crowned(e easel) {
	k := e.k
	k.ball(e.c, e.r*0.95, k.tint.fruit, palette.Mix(k.tint.fruit, k.tint.light, 0.75), k.tint.shade)
	crown(e, 0.2, 0.18, 0.34)
}

func blueberries(e easel) {
	e.leafAt(-0.05, -0.15, -2.6, 1.15, oval, -0.1, 0)
	e.leafAt(0.05, -0.2, -0.5, 1.15, oval, 0.1, 1)
	e.leafAt(0, -0.3, -1.5, 0.8, oval, 0.1, 2)
	for i, q := range e.all(-0.4, 0.12, 0.42, 0.06, 0.03, 0.56) {
		crowned(easel{e.k, q, e.r * 0.44, e.angle + 0.5*float64(i)})
	}
}

// striped is one gooseberry: veins from pole to pole.
func striped(e easel) {
	k := e.k
	k.ball(e.c, e.r*0.98, k.tint.fruit, k.tint.light, k.tint.shade)
	c := palette.Mix(k.tint.fruit, k.tint.light, 0.6)
	for _, x := range []float64{-0.5, 0, 0.5} {
		k.stroke((&trace{}).move(e.p(x*0.3, -0.8)).curve(e.p(x*1.2, -0.35), e.p(x*1.2, 0.35), e.p(x*0.3, 0.8)), c, max(0.06, 0.05*e.r))
	}
	e.stalk(0.1, 0, 0.86, 0.02, 1.0, 0.08, 1.16)
}

func gooseberry(e easel) {
	e.leafAt(0, -0.45, -2.65, 1, broad, -0.1, 0)
	e.leafAt(0, -0.45, -0.5, 1, broad, 0.1, 1)
	e.stalk(0.06, 0, -0.55, -0.2, -0.3, -0.32, -0.05)
	e.stalk(0.06, 0, -0.55, 0.25, -0.3, 0.38, 0.1)
	striped(easel{e.k, e.p(0.38, 0.38), e.r * 0.44, e.angle - 0.15})
	striped(easel{e.k, e.p(-0.36, 0.2), e.r * 0.5, e.angle + 0.12})
}

// grapes is a bunch.
func grapes(e easel) {
	e.leafAt(0, -0.75, -2.7, 1.05, broad, -0.1, 0)
	e.leafAt(0, -0.75, -0.4, 1.05, broad, 0.1, 1)
	e.stalk(0.08, 0.06, -1, 0, -0.8, 0, -0.5)
	rows := []struct {
		n int
		y float64
	}{{3, -0.42}, {4, -0.12}, {3, 0.18}, {2, 0.48}, {1, 0.78}}
	for j, row := range rows {
		for i := range row.n {
			x := (float64(i) - float64(row.n-1)/2) * 0.4
			e.k.bead(e.p(x+0.03*float64(j%2), row.y+0.04*math.Abs(x)), e.r*0.225)
		}
	}
}

func cherries(e easel) {
	k := e.k
	e.leafAt(0.1, -0.98, 0.15, 1.05, slim, 0.14, 0)
	e.stalk(0.065, 0.12, -1, -0.14, -0.62, -0.4, 0.02)
	e.stalk(0.065, 0.12, -1, 0.3, -0.5, 0.42, 0.16)
	for _, q := range e.all(-0.42, 0.38, 0.44, 0.5) {
		f := easel{k, q, e.r * 0.44, e.angle}
		f.form(f.mirror(0, -0.8, 0.5, -0.95, 1, -0.3, 0.85, 0.55, 0, 0.98), k.tint.fruit, k.tint.shade)
		f.glow(-0.42, -0.3, 0.26, 0.2, -0.8)
		f.stalk(0.1, -0.2, -0.72, 0, -0.66, 0.2, -0.72)
	}
}
