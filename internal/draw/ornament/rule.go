package ornament

import (
	"math"
)

// axis gives the long middle line of the box and its thickness.
func (k *sketch) axis() (from, to vec, thick float64) {
	b := k.box
	c := b.centre()
	if b.h() > b.w() {
		return vec{c.x, b.y0}, vec{c.x, b.y1}, b.w()
	}
	return vec{b.x0, c.y}, vec{b.x1, c.y}, b.h()
}

// across is the step of length d at right angles to the long way.
func (k *sketch) across(d float64) vec {
	if k.box.h() > k.box.w() {
		return vec{d, 0}
	}
	return vec{0, d}
}

func (k *sketch) straight(from, to vec, width float64) {
	c := k.tint.rule()
	t := (&trace{}).move(from).line(to)
	k.put(shape{ops: t.ops, pts: t.pts, stroke: &c, width: width, butt: true})
}

// ruleDouble is a heavier line beside a light one.
func (k *sketch) ruleDouble() {
	from, to, thick := k.axis()
	heavy := min(0.42, thick*0.4)
	gap := min(0.62, thick*0.5-heavy*0.5)
	k.straight(from.sub(k.across(gap/2)), to.sub(k.across(gap/2)), heavy)
	k.straight(from.add(k.across(gap/2)), to.add(k.across(gap/2)), heavy*0.6)
}

// shadeOrDot is a dot small enough to print solid even in line drawings.
func (k *sketch) shadeOrDot(c vec, r float64) {
	tone := k.tint.rule()
	t := spot(c, r, r, 0)
	k.put(shape{ops: t.ops, pts: t.pts, fill: &tone})
}

// ruleBerry is a fine line with a leaf pair and a berry at its middle.
func (k *sketch) ruleBerry() {
	from, to, thick := k.axis()
	c := from.lerp(to, 0.5)
	along := to.sub(from)
	a := math.Atan2(along.y, along.x)
	leaf := min(thick*1.3, along.len()*0.09, 4.5)
	gap := leaf * 1.45
	if gap*2 < along.len() {
		k.straight(from, c.sub(polar(a, gap)), min(0.24, thick*0.2))
		k.straight(c.add(polar(a, gap)), to, min(0.24, thick*0.2))
	}
	for side := 0.0; side < 2; side++ {
		h := a + side*math.Pi
		k.leaf(c.add(polar(h, leaf*0.22)), h-0.16, leaf, slim, 0.14, int(side))
	}
	k.berry(c, min(leaf*0.27, thick*0.45), false)
}

// frame is a fine double frame with notched corners, a nib in each notch.
func (k *sketch) frame() {
	b := k.box.grow(-0.3)
	notch := min(b.short()*0.11, 4.2)
	k.notched(b, notch, 0.36)
	inner := min(0.9, notch*0.3)
	k.notched(b.grow(-inner), notch, 0.16)
	if notch < 1 {
		return
	}
	for _, p := range []vec{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}} {
		in := math.Atan2(b.centre().y-p.y, b.centre().x-p.x)
		in = math.Round((in-math.Pi/4)/(math.Pi/2))*math.Pi/2 + math.Pi/4
		q := p.add(polar(in, notch*0.22))
		k.leaf(q, in-0.7, notch*0.8, slim, -0.12, 0)
		k.leaf(q, in+0.7, notch*0.8, slim, 0.12, 1)
		k.berry(q, notch*0.19, false)
	}
}

// notched strokes a box whose corners are scooped out.
func (k *sketch) notched(b box, r, width float64) {
	h := r * (1 - kappa)
	t := (&trace{}).move(vec{b.x0 + r, b.y0}).line(vec{b.x1 - r, b.y0}).
		curve(vec{b.x1 - r, b.y0 + r - h}, vec{b.x1 - h, b.y0 + r}, vec{b.x1, b.y0 + r}).line(vec{b.x1, b.y1 - r}).
		curve(vec{b.x1 - h, b.y1 - r}, vec{b.x1 - r, b.y1 - r + h}, vec{b.x1 - r, b.y1}).line(vec{b.x0 + r, b.y1}).
		curve(vec{b.x0 + r, b.y1 - r + h}, vec{b.x0 + h, b.y1 - r}, vec{b.x0, b.y1 - r}).line(vec{b.x0, b.y0 + r}).
		curve(vec{b.x0 + h, b.y0 + r}, vec{b.x0 + r, b.y0 + r - h}, vec{b.x0 + r, b.y0}).close()
	k.stroke(t, k.tint.rule(), width)
}

// frameRound is a ring of two lines and beads.
func (k *sketch) frameRound() {
	b := k.box.grow(-0.3)
	c := b.centre()
	k.stroke(ellipse(c, b.w()/2, b.h()/2, 0), k.tint.rule(), 0.36)
	gap := min(2.6, b.short()*0.07)
	k.stroke(ellipse(c, b.w()/2-gap, b.h()/2-gap, 0), k.tint.rule(), 0.16)
	rx, ry := b.w()/2-gap/2, b.h()/2-gap/2
	around := math.Pi * (rx + ry)
	n := max(8, min(120, int(around/(gap*1.25))))
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		k.shadeOrDot(c.add(vec{math.Cos(a) * rx, math.Sin(a) * ry}), gap*0.13)
	}
}
