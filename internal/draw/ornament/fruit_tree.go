package ornament

import (
	"math"

	"jarmark/internal/draw/palette"
)

// stone draws a round stone fruit with its seam.
func stone(e easel, outline []vec, seam float64) {
	k := e.k
	e.form(outline, k.tint.fruit, k.tint.shade)
	line := (&trace{}).move(e.p(0.04, -0.62)).curve(e.p(seam, -0.4), e.p(seam+0.08, 0.25), e.p(0.14, 0.72))
	k.stroke(line, palette.Mix(k.tint.fruit, k.tint.shade, 0.85), max(0.07, 0.045*e.r))
}

func apricot(e easel) {
	e.leafAt(0.02, -0.66, -0.5, 0.95, oval, 0.14, 0)
	e.leafAt(0, -0.66, -2.6, 0.8, oval, -0.12, 1)
	stone(e, e.mirror(0, -0.66, 0.42, -0.72, 0.8, -0.12, 0.62, 0.6, 0, 0.86), 0.34)
	e.glow(-0.4, -0.2, 0.2, 0.13, -0.8)
	e.stalk(0.08, 0.06, -0.98, 0.02, -0.8, 0.02, -0.6)
}

func peach(e easel) {
	e.leafAt(0.02, -0.7, -0.3, 1.1, willow, 0.16, 0)
	e.leafAt(0, -0.7, -2.75, 0.95, willow, -0.14, 1)
	stone(e, e.mirror(0, -0.6, 0.44, -0.72, 0.82, -0.2, 0.72, 0.4, 0.36, 0.8, 0, 0.92), 0.38)
	e.glow(-0.42, -0.2, 0.2, 0.13, -0.8)
	e.stalk(0.09, 0.05, -0.98, 0.02, -0.82, 0.02, -0.58)
}

func plum(e easel) {
	e.leafAt(0.02, -0.86, -0.05, 0.95, slim, 0.16, 0)
	e.leafAt(0, -0.86, -2.9, 0.75, slim, -0.14, 1)
	stone(e, e.mirror(0, -0.78, 0.42, -0.74, 0.68, 0, 0.5, 0.7, 0, 0.94), 0.3)
	e.glow(-0.32, -0.22, 0.24, 0.12, -1.1)
	e.stalk(0.08, 0.1, -1.08, 0.04, -0.92, 0.02, -0.72)
}

func apple(e easel) {
	e.leafAt(0.04, -0.8, -0.35, 0.85, broad, 0.16, 0)
	k := e.k
	e.form(e.mirror(0, -0.54, 0.3, -0.68, 0.66, -0.56, 0.84, -0.14, 0.74, 0.38, 0.4, 0.82, 0.16, 0.84, 0, 0.78), k.tint.fruit, k.tint.shade)
	e.glow(-0.46, -0.2, 0.24, 0.14, -1.0)
	dip := (&trace{}).move(e.p(-0.26, -0.52)).curve(e.p(-0.12, -0.42), e.p(0.12, -0.42), e.p(0.26, -0.52))
	k.stroke(dip, palette.Mix(k.tint.fruit, k.tint.shade, 0.9), max(0.07, 0.05*e.r))
	e.stalk(0.09, 0.16, -1, 0.04, -0.8, 0, -0.48)
}

func pear(e easel) {
	e.leafAt(0.04, -0.92, 0.05, 0.8, broad, 0.16, 0)
	k := e.k
	e.form(e.mirror(0, -0.84, 0.24, -0.72, 0.36, -0.26, 0.66, 0.26, 0.56, 0.76, 0, 0.95), k.tint.fruit, k.tint.shade)
	e.glow(-0.34, 0.2, 0.24, 0.13, -1.1)
	specks := &trace{}
	for _, q := range [][2]float64{{0.2, 0.1}, {0.34, 0.4}, {0.04, 0.52}, {-0.08, -0.2}, {0.1, -0.44}} {
		c := spot(e.p(q[0], q[1]), 0.03*e.r, 0.03*e.r, 0)
		specks.ops, specks.pts = append(specks.ops, c.ops...), append(specks.pts, c.pts...)
	}
	k.shadeBody(specks, palette.Mix(k.tint.fruit, k.tint.shade, 0.8))
	e.stalk(0.09, 0.16, -1.08, 0.03, -0.95, 0, -0.78)
}

// citrusSlice is a round slice: peel, pith, segments.
func citrusSlice(e easel) {
	e.leafAt(-0.3, -0.55, -2.3, 1.0, oval, -0.14, 0)
	e.leafAt(-0.1, -0.6, -1.45, 0.85, oval, 0.1, 1)
	slice(e, 0.84)
}

func slice(e easel, r float64) {
	k := e.k
	pith := palette.Mix(k.tint.light, k.tint.fruit, 0.06)
	k.body(ellipse(e.c, r*e.r, r*e.r, 0), palette.Mix(k.tint.fruit, k.tint.shade, 0.5))
	k.shadeBody(ellipse(e.c, r*0.93*e.r, r*0.93*e.r, 0), k.tint.fruit)
	if !k.tint.line || r*e.r > 2.2 {
		k.body(ellipse(e.c, r*0.86*e.r, r*0.86*e.r, 0), pith)
	}
	n := 9
	if r*e.r < 2.2 { // a small slice shows fewer, larger segments
		n = 7
	}
	segments := &trace{}
	for i := range n {
		a := e.angle + (float64(i)+0.3)*2*math.Pi/float64(n)
		half := math.Pi/float64(n) - 0.075
		in, out := 0.14*r*e.r, 0.79*r*e.r
		at := func(turn, d float64) vec { return e.c.add(polar(a+turn, d)) }
		segments.move(at(0, in)).
			curve(at(-half*0.9, in*2), at(-half, out*0.6), at(-half, out*0.88)).
			curve(at(-half*0.95, out*1.03), at(half*0.95, out*1.03), at(half, out*0.88)).
			curve(at(half, out*0.6), at(half*0.9, in*2), at(0, in)).close()
	}
	if k.tint.line {
		k.stroke(segments, black, min(hair*0.8, r*e.r*0.04))
		return
	}
	flesh := palette.Mix(k.tint.fruit, k.tint.light, 0.16)
	k.put(shape{ops: segments.ops, pts: segments.pts, fill: &flesh})
	glints := &trace{}
	for i := range n {
		a := e.angle + (float64(i)+0.3)*2*math.Pi/float64(n) - 0.1
		glints.move(e.c.add(polar(a, 0.36*r*e.r))).line(e.c.add(polar(a, 0.58*r*e.r)))
	}
	k.stroke(glints, palette.Mix(k.tint.fruit, k.tint.light, 0.55), max(0.07, 0.035*e.r))
}

// kiwi is a slice with its ring of seeds.
func kiwi(e easel) {
	k := e.k
	e.leafAt(-0.3, -0.55, -2.3, 1.0, broad, -0.14, 0)
	e.leafAt(-0.1, -0.6, -1.45, 0.85, broad, 0.1, 1)
	k.body(ellipse(e.c, 0.84*e.r, 0.8*e.r, e.angle), k.tint.stem)
	k.body(ellipse(e.c, 0.77*e.r, 0.73*e.r, e.angle), k.tint.fruit)
	rays, seeds := &trace{}, &trace{}
	for i := range 14 {
		a := e.angle + float64(i)*2*math.Pi/14
		rays.move(e.c.add(polar(a, 0.3*e.r))).line(e.c.add(polar(a, 0.62*e.r)))
		s := spot(e.c.add(polar(a+0.2, (0.38+0.05*float64(i%2))*e.r)), 0.055*e.r, 0.028*e.r, a+0.2)
		seeds.ops, seeds.pts = append(seeds.ops, s.ops...), append(seeds.pts, s.pts...)
	}
	k.stroke(rays, palette.Mix(k.tint.fruit, k.tint.light, 0.4), max(0.06, 0.03*e.r))
	k.body(ellipse(e.c, 0.26*e.r, 0.2*e.r, e.angle), palette.Mix(k.tint.fruit, k.tint.light, 0.85))
	dark := palette.Mix(k.tint.shade, black, 0.55)
	if k.tint.line {
		dark = k.tint.rule()
	}
	k.put(shape{ops: seeds.ops, pts: seeds.pts, fill: &dark})
}
