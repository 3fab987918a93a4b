package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// trace collects a path.
type trace struct {
	ops []page.Op
	pts []vec
}

func (t *trace) move(p vec) *trace { return t.op(page.MoveTo, p) }
func (t *trace) line(p vec) *trace { return t.op(page.LineTo, p) }
func (t *trace) curve(a, b, p vec) *trace {
	return t.op(page.CubicTo, a, b, p)
}
func (t *trace) close() *trace { return t.op(page.Close) }
func (t *trace) op(op page.Op, pts ...vec) *trace {
	if t.ops == nil {
		t.ops, t.pts = make([]page.Op, 0, 8), make([]vec, 0, 16) // most shapes are a leaf or a berry
	}
	t.ops, t.pts = append(t.ops, op), append(t.pts, pts...)
	return t
}

// smooth draws a curve through points (Catmull-Rom as cubics).
func smooth(pts []vec, closed bool) *trace {
	t := &trace{}
	n := len(pts)
	if n < 2 {
		return t
	}
	at := func(i int) vec {
		if closed {
			return pts[((i%n)+n)%n]
		}
		return pts[min(max(i, 0), n-1)]
	}
	t.move(pts[0])
	last := n - 1
	if closed {
		last = n
	}
	for i := range last {
		a, b, c, d := at(i-1), at(i), at(i+1), at(i+2)
		t.curve(b.add(c.sub(a).mul(1.0/6)), c.sub(d.sub(b).mul(1.0/6)), c)
	}
	if closed {
		t.close()
	}
	return t
}

// kappa places the control points of a quarter circle drawn as a cubic.
const kappa = 0.5522847498307936

func ellipse(c vec, rx, ry, angle float64) *trace {
	u, v := polar(angle, rx), polar(angle+math.Pi/2, ry)
	p := func(a, b float64) vec { return c.add(u.mul(a)).add(v.mul(b)) }
	return (&trace{}).move(p(1, 0)).
		curve(p(1, kappa), p(kappa, 1), p(0, 1)).curve(p(-kappa, 1), p(-1, kappa), p(-1, 0)).
		curve(p(-1, -kappa), p(-kappa, -1), p(0, -1)).curve(p(kappa, -1), p(1, -kappa), p(1, 0)).close()
}

// spot is a small rounded fleck of light: two curves are enough for the eye.
func spot(c vec, rx, ry, angle float64) *trace {
	u, v := polar(angle, rx), polar(angle+math.Pi/2, ry*4/3)
	p := func(a, b float64) vec { return c.add(u.mul(a)).add(v.mul(b)) }
	return (&trace{}).move(p(-1, 0)).curve(p(-1, -1), p(1, -1), p(1, 0)).curve(p(1, 1), p(-1, 1), p(-1, 0)).close()
}

// Widths of the outlines of line drawings, mm: usual, and of small parts.
const (
	hair = 0.17
	fine = 0.09
)

// body fills a closed shape; a line drawing outlines it instead and knocks
// out what lies behind.
func (k *sketch) body(t *trace, c page.Colour) {
	if k.tint.cut {
		k.engrave(t, c)
		return
	}
	s := shape{ops: t.ops, pts: t.pts, fill: &c}
	if k.tint.line {
		w, b := white, black
		reach := s.reach()
		s.fill, s.stroke, s.width = &w, &b, min(max(reach.short()*0.07, fine), hair)
	}
	k.put(s)
}

// shadeBody fills a part that only models light: a line drawing leaves it out.
func (k *sketch) shadeBody(t *trace, c page.Colour) {
	if !k.tint.line {
		k.put(shape{ops: t.ops, pts: t.pts, fill: &c})
	}
}

// stroke draws a line; line drawings draw it black and no thicker than needed.
func (k *sketch) stroke(t *trace, c page.Colour, width float64) {
	switch {
	case k.tint.cut:
		c, width = k.tint.ink, min(max(width, cut), contour)
	case k.tint.line:
		c, width = black, min(max(width, fine), hair*1.15)
	}
	k.put(shape{ops: t.ops, pts: t.pts, stroke: &c, width: width})
}

// blade is the form of a leaf, in parts of its length.
type blade struct {
	wide     float64 // greatest width
	belly    float64 // where the outline leaves the base: smaller is fuller there
	point    float64 // where it comes in to the tip: larger is blunter
	pinch    float64 // 0 straight into the tip … 1 drawn out to a fine point
	sideVein bool
}

var (
	slim   = blade{wide: 0.34, belly: 0.25, point: 0.72, pinch: 0.35}
	broad  = blade{wide: 0.45, belly: 0.16, point: 0.72, pinch: 0.55, sideVein: true}
	oval   = blade{wide: 0.43, belly: 0.14, point: 0.86, pinch: 0.1}
	willow = blade{wide: 0.23, belly: 0.25, point: 0.66, pinch: 0.4}
)

// leaf draws a leaf from its base along an angle. bend curls the tip, in
// parts of the length, positive clockwise. tone picks the colour.
func (k *sketch) leaf(base vec, angle, length float64, b blade, bend float64, tone int) {
	c := k.tint.leaf(tone)
	at := func(x, y float64) vec {
		y += bend * x * x
		cos, sin := math.Cos(angle), math.Sin(angle)
		return base.add(vec{(x*cos - y*sin) * length, (x*sin + y*cos) * length})
	}
	h := b.wide * 0.68 // of the control points, so that the curve is wide/2 off the axis
	in := h * (1 - b.pinch*0.62)
	mid := func(x float64) vec { return at(x, 0) }
	k.element(func() {
		t := (&trace{}).move(at(0, 0)).
			curve(at(b.belly, -h), at(b.point, -in), at(1, 0)).
			curve(at(b.point, in), at(b.belly, h), at(0, 0)).close()
		k.body(t, c)
		if length > 3 && k.fine > 0.8 {
			half := (&trace{}).move(at(0, 0)).curve(at(0.33, -bend*0.11), at(0.66, -bend*0.22), at(1, 0)).
				curve(at(b.point, in), at(b.belly, h), at(0, 0)).close()
			k.shadeBody(half, k.tint.under(c))
		}
		if length < 1.6 {
			return // finer than a printer shows
		}
		vein := (&trace{}).move(mid(0.06)).curve(at(0.3, -bend*0.09), at(0.6, -bend*0.2), at(0.86, -bend*0.02))
		k.stroke(vein, k.tint.vein(c), max(0.07, min(0.26, length*0.026)))
		if b.sideVein && length > 6 && k.fine > 0.8 {
			k.sideVeins(at, c, length)
		}
	})
}

func (k *sketch) sideVeins(at func(x, y float64) vec, c page.Colour, length float64) {
	t := &trace{}
	for _, x := range []float64{0.3, 0.52} {
		y := 0.15 - 0.1*math.Abs(x-0.42)
		t.move(at(x+0.14, -y)).line(at(x, 0)).line(at(x+0.14, y))
	}
	k.stroke(t, palette.Mix(c, k.tint.vein(c), 0.6), max(0.05, length*0.014))
}

// berry draws a round berry with its shadow side and a glint, golden where
// asked for and wherever the ground is dark.
func (k *sketch) berry(c vec, r float64, gold bool) {
	fruit, light, shade := k.tint.fruit, k.tint.light, k.tint.shade
	if gold || k.tint.dark {
		fruit, light, shade = k.tint.berry, k.tint.berryLight, k.tint.berryShade
	}
	k.ball(c, r, fruit, light, shade)
}

// bead is a round berry in the fruit's own colour on any ground.
func (k *sketch) bead(c vec, r float64) { k.ball(c, r, k.tint.fruit, k.tint.light, k.tint.shade) }

func (k *sketch) ball(c vec, r float64, fruit, light, shade page.Colour) {
	k.element(func() {
		if k.tint.line {
			k.body(ellipse(c, r, r, 0), fruit)
			glint := c.add(vec{-0.32 * r, -0.38 * r})
			k.stroke((&trace{}).move(glint.add(vec{-0.2 * r, 0.26 * r})).
				curve(glint.add(vec{-0.16 * r, -0.02 * r}), glint.add(vec{0, -0.14 * r}), glint.add(vec{0.28 * r, -0.16 * r})), black, hair*0.8)
			return
		}
		k.body(ellipse(c, r, r, 0), palette.Mix(fruit, shade, 0.75))
		k.body(ellipse(c.add(vec{-0.07 * r, -0.08 * r}), r*0.89, r*0.89, 0), fruit)
		k.body(spot(c.add(vec{-0.34 * r, -0.38 * r}), r*0.23, r*0.17, -0.7), light)
	})
}
