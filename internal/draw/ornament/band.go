package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// lattice is the woven crust of a pie, fruit showing through, crimped along
// its upper and lower edge.
func (k *sketch) lattice() {
	b := k.box.grow(-hair)
	crust := page.Colour{R: 0xdf, G: 0xb0, B: 0x70}
	edge := page.Colour{R: 0xb0, G: 0x78, B: 0x3c}
	rim := min(b.h()*0.16, 2)
	in := box{b.x0, b.y0 + rim*0.6, b.x1, b.y1 - rim*0.6}
	k.body(rectangle(in), k.tint.fruit)
	strip := max(min(in.h()*0.2, 3.2), b.w()/90, math.Sqrt(b.w()*b.h())/30) // bounds the crossings
	pitch := strip * 2.15 * math.Sqrt2 / math.Sqrt(k.density)
	pitch = in.w() / max(1, math.Round(in.w()/pitch)) // ends alike
	n := int(math.Ceil(in.h()/pitch)) + 1
	total := int(math.Round(in.w() / pitch))
	half := strip / math.Sqrt2
	band := func(x, y0, y1, lean float64) []vec {
		at := func(y float64) float64 { return x + lean*(y-in.centre().y) }
		return clip([]vec{{at(y0) - half, y0}, {at(y0) + half, y0}, {at(y1) + half, y1}, {at(y1) - half, y1}}, in)
	}
	lay := func(pts []vec) {
		if len(pts) < 3 {
			return
		}
		t := polygon(pts)
		if k.tint.line {
			k.body(t, crust)
			return
		}
		k.put(shape{ops: t.ops, pts: t.pts, fill: &crust, stroke: &edge, width: max(0.08, strip*0.07)})
	}
	x := func(i int) float64 { return in.x0 + pitch*(float64(i)+0.5) }
	for i := -n; i < total+n; i++ {
		lay(band(x(i), in.y0, in.y1, 1))
	}
	for i := -n; i < total+n; i++ {
		lay(band(x(i), in.y0, in.y1, -1))
	}
	for i := -n; i < total+n; i++ { // every other crossing the first strips go over
		for j := -n; j < total+n; j++ {
			if (i+j)&1 != 0 {
				continue
			}
			k.over(vec{(x(i) + x(j)) / 2, in.centre().y + (x(j)-x(i))/2}, half, strip, in, crust, edge)
		}
	}
	k.crimp(b.y0+rim*0.5, rim*0.5, crust, edge)
	k.crimp(b.y1-rim*0.5, rim*0.5, crust, edge)
}

// over lays a first strip over a second one where they cross at c.
func (k *sketch) over(c vec, half, strip float64, in box, crust, edge page.Colour) {
	diamond := clip([]vec{c.add(vec{0, -half}), c.add(vec{half, 0}), c.add(vec{0, half}), c.add(vec{-half, 0})}, in)
	if len(diamond) < 3 {
		return
	}
	tone, width := crust, max(0.08, strip*0.07)
	if k.tint.line {
		tone, edge, width = white, black, hair
	}
	t := polygon(diamond)
	k.put(shape{ops: t.ops, pts: t.pts, fill: &tone, stroke: &tone, width: width})
	sides := &trace{}
	for _, s := range [][2]vec{{{-half, 0}, {0, half}}, {{0, -half}, {half, 0}}} {
		if a, b, ok := clipLine(c.add(s[0]), c.add(s[1]), in); ok {
			sides.move(a).line(b)
		}
	}
	if len(sides.pts) > 0 {
		k.put(shape{ops: sides.ops, pts: sides.pts, stroke: &edge, width: width})
	}
}

// clipLine cuts a line to a box.
func clipLine(p, q vec, b box) (vec, vec, bool) {
	cut := clip([]vec{p, q}, b)
	if len(cut) < 2 {
		return p, q, false
	}
	return cut[0], cut[1], true
}

// crimp is a row of pressed dough along y.
func (k *sketch) crimp(y, r float64, crust, edge page.Colour) {
	b := k.box.grow(-hair)
	n := max(2, min(90, int(b.w()/(r*1.9))))
	step := b.w() / float64(n)
	for i := range n {
		t := ellipse(vec{b.x0 + step*(float64(i)+0.5), y}, step*0.5, r, 0)
		if k.tint.line {
			k.body(t, crust)
			continue
		}
		k.put(shape{ops: t.ops, pts: t.pts, fill: &crust, stroke: &edge, width: max(0.06, r*0.12)})
	}
}

func rectangle(b box) *trace {
	return polygon([]vec{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}})
}

func polygon(pts []vec) *trace {
	t := (&trace{}).move(pts[0])
	for _, p := range pts[1:] {
		t.line(p)
	}
	return t.close()
}

// clip cuts a convex polygon to a box (Sutherland and Hodgman).
func clip(pts []vec, b box) []vec {
	sides := []func(vec) float64{
		func(p vec) float64 { return p.x - b.x0 }, func(p vec) float64 { return b.x1 - p.x },
		func(p vec) float64 { return p.y - b.y0 }, func(p vec) float64 { return b.y1 - p.y },
	}
	for _, inside := range sides {
		var out []vec
		for i, p := range pts {
			q := pts[(i+1)%len(pts)]
			dp, dq := inside(p), inside(q)
			if dp >= 0 {
				out = append(out, p)
			}
			if dp*dq < 0 {
				out = append(out, p.lerp(q, dp/(dp-dq)))
			}
		}
		pts = out
	}
	return pts
}

// gingham is woven check; as a line drawing the threads themselves.
func (k *sketch) gingham() {
	b := k.box.grow(-hair)
	rows := max(3, int(math.Round(b.h()/max(1.4, b.h()/7))))
	cell := b.h() / float64(rows|1)
	rows |= 1
	for float64(rows)*b.w()/cell > 500 {
		rows = max(1, rows-2)
		cell = b.h() / float64(rows)
		if rows == 1 {
			break
		}
	}
	cols := max(1, min(500, int(math.Round(b.w()/cell))))
	wide := b.w() / float64(cols)
	at := func(i, j int, w float64) box {
		return box{b.x0 + float64(i)*wide, b.y0 + float64(j)*cell, b.x0 + (float64(i)+w)*wide, b.y0 + float64(j+1)*cell}
	}
	if k.tint.line {
		k.threads(b, cols, rows, wide, cell)
		return
	}
	ground := k.tint.ground
	full := palette.Mix(ground, k.tint.fruit, 0.82)
	mid := palette.Mix(ground, k.tint.fruit, 0.4)
	k.body(rectangle(b), palette.Mix(ground, k.tint.fruit, 0.08))
	for j := range rows {
		if j%2 == 0 {
			k.body(rectangle(at(0, j, float64(cols))), mid)
		}
	}
	for i := 0; i < cols; i += 2 {
		for j := range rows {
			c := mid
			if j%2 == 0 {
				c = full
			}
			k.body(rectangle(at(i, j, 1)), c)
		}
	}
}

func (k *sketch) threads(b box, cols, rows int, wide, cell float64) {
	t := &trace{}
	for j := 0; j < rows; j += 2 {
		for _, s := range []float64{0.1, 0.37, 0.63, 0.9} {
			y := b.y0 + (float64(j)+s)*cell
			t.move(vec{b.x0, y}).line(vec{b.x1, y})
		}
	}
	for i := 0; i < cols; i += 2 {
		for _, s := range []float64{0.1, 0.37, 0.63, 0.9} {
			x := b.x0 + (float64(i)+s)*wide
			t.move(vec{x, b.y0}).line(vec{x, b.y1})
		}
	}
	c := black
	k.put(shape{ops: t.ops, pts: t.pts, stroke: &c, width: 0.1, butt: true})
}
