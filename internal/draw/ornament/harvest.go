package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// ear draws an ear of wheat on a spine: grains in pairs from the share "from"
// of its length to the end, awns beyond.
func (k *sketch) ear(s *spine, from, grain float64) {
	l := s.length()
	gold, dark := k.tint.gold, k.tint.stem
	k.element(func() {
		k.stroke(s.line(0, l*0.98, 8), dark, max(0.12, grain*0.09))
		n := min(max(3, int((1-from)*l/(grain*0.52))), 17)
		for i := range n {
			d := l * (from + (1-from)*float64(i)/float64(n))
			p, h := s.at(d)
			size := grain * (1 - 0.3*float64(i)/float64(n))
			for side := -1.0; side <= 1; side += 2 {
				a := h + side*0.5
				k.grain(offset(p, h, side*grain*0.06), a, size, side, gold)
				tip := p.add(polar(a, size))
				k.stroke((&trace{}).move(tip).curve(tip.add(polar(h+side*0.4, size*0.3)), tip.add(polar(h+side*0.25, size*0.6)), tip.add(polar(h+side*0.16, size*0.95))), gold, max(0.08, grain*0.05))
			}
		}
		p, h := s.at(l)
		k.grain(p.sub(polar(h, grain*0.2)), h, grain*0.75, 1, gold)
		k.stroke((&trace{}).move(p).line(p.add(polar(h, grain*1.2))), gold, max(0.08, grain*0.05))
	})
}

func (k *sketch) grain(base vec, angle, l, side float64, tone page.Colour) {
	at := func(x, y float64) vec {
		return base.add(polar(angle, x*l)).add(polar(angle+math.Pi/2, y*l))
	}
	t := (&trace{}).move(at(0, 0)).curve(at(0.2, -0.36), at(0.75, -0.26), at(1, 0)).curve(at(0.75, 0.26), at(0.2, 0.36), at(0, 0)).close()
	k.body(t, tone)
	if l < 0.9 {
		return
	}
	half := (&trace{}).move(at(0, 0)).curve(at(0.4, 0.06*side), at(0.75, 0.04*side), at(1, 0)).curve(at(0.75, 0.26*side), at(0.2, 0.36*side), at(0, 0)).close()
	k.shadeBody(half, palette.Mix(tone, page.Colour{R: 0x5a, G: 0x36, B: 0x20}, 0.3))
}

// spike is a flowering spike: whorls of florets with gaps between.
func (k *sketch) spike(s *spine, floret float64) {
	l := s.length()
	k.stroke(s.line(0, l*0.97, 8), k.tint.stem, max(0.11, floret*0.13))
	for i := range 6 {
		d := l * (0.45 + 0.1*float64(i))
		p, h := s.at(d)
		size := floret * (1 - 0.07*float64(i))
		for j, a := range []float64{-0.95, 0.95, -0.4, 0.4} {
			tone := palette.Mix(k.tint.fruit, k.tint.light, 0.28*float64((i+j)%2))
			k.grain(p, h+a, size, math.Copysign(1, a), tone)
		}
	}
	p, h := s.at(l * 0.98)
	k.grain(p, h, floret*0.6, 1, k.tint.fruit)
}

// wheat is a sheaf of ears, or two ears lying tip to tip when the box is wide.
func (k *sketch) wheat() {
	b := k.box
	if b.w() > b.h()*1.8 {
		k.wheatBand()
		return
	}
	foot := vec{b.centre().x, b.y1}
	tall := b.h() * 0.9
	n := 5
	if k.density < 0.8 {
		n = 3
	}
	for i := range n {
		x := float64(i) - float64(n-1)/2
		lean := x * 0.27 * 5 / float64(n)
		l := tall * (1 - 0.05*math.Abs(x)) * k.vary(0.02)
		base := foot.add(vec{-x * b.w() * 0.055, 0})
		tip := foot.add(vec{math.Sin(lean) * l * 0.98, -math.Cos(lean) * l})
		s := bezier(base, base.lerp(tip, 0.3).add(vec{-x * b.w() * 0.015, 0}), vec{foot.x + (tip.x-foot.x)*0.5, foot.y + (tip.y-foot.y)*0.62}, tip)
		k.ear(s, 0.55, tall*0.095)
	}
	tie := foot.add(vec{0, -tall * 0.27})
	w := tall * 0.05
	for side := -1.0; side <= 1; side += 2 { // a bow: two loops, two tails
		at := func(x, y float64) vec { return tie.add(vec{side * x * w, y * w}) }
		k.body((&trace{}).move(at(0, -0.1)).curve(at(0.9, -1.5), at(2.4, -1.1), at(2.1, -0.1)).curve(at(1.9, 0.7), at(0.9, 0.5), at(0, 0.1)).close(), k.tint.fruit)
		k.body((&trace{}).move(at(0.05, 0.1)).curve(at(0.5, 0.9), at(0.9, 1.5), at(1.7, 2.2)).line(at(1.1, 2.5)).curve(at(0.6, 1.8), at(0.2, 1), at(-0.1, 0.2)).close(), palette.Mix(k.tint.fruit, k.tint.shade, 0.45))
	}
	k.body(ellipse(tie, w*0.5, w*0.42, 0), palette.Mix(k.tint.fruit, k.tint.shade, 0.3))
}

func (k *sketch) wheatBand() {
	b := k.box
	c := b.centre()
	grain := min(b.h()*0.3, b.w()*0.05)
	sag := min(b.h()*0.18, grain)
	for side := -1.0; side <= 1; side += 2 {
		for j, lift := range []float64{1, -0.35} {
			reach := (b.w()/2 - grain*1.4) * (1 - 0.2*float64(j))
			s := bezier(vec{c.x - side*grain*0.5, c.y + sag*lift*0.8}, vec{c.x + side*reach*0.3, c.y + sag*0.6*lift},
				vec{c.x + side*reach*0.7, c.y - sag*lift}, vec{c.x + side*reach, c.y - sag*0.9*lift})
			k.ear(s, 0.22, grain)
		}
	}
	k.cluster(vec{c.x, c.y}, 0, 1, grain*1.1)
}

// berries is a loose heap of berries on leaves.
func (k *sketch) berries() {
	b := k.box
	c := b.centre()
	r := b.short() / 2
	n := min(max(int(math.Round(7*k.density)), 3), 15)
	size := r * 0.5 / math.Sqrt(float64(n)) * 1.45
	wide := min(b.w()/b.short(), 1.15)
	for i := range 5 {
		a := -math.Pi*(0.02+0.96*float64(i)/4) + k.turn(0.06)
		k.leaf(c.add(vec{math.Cos(a) * r * 0.18, r * 0.12}), a, r*0.92*k.vary(0.07), k.blade(), k.turn(0.1), i)
	}
	for i := n - 1; i >= 0; i-- {
		a := 2.399963*float64(i) + 1.9 // the golden angle packs evenly
		d := size * 1.06 * math.Sqrt(float64(i)+0.25)
		q := c.add(vec{math.Cos(a) * d * wide, math.Sin(a)*d*0.86 + r*0.16})
		if m := k.motifOf(); m.small != nil {
			k.element(func() { m.small(easel{k, q, size * k.vary(0.06), k.turn(0.4)}) })
		} else {
			k.berry(q, size*k.vary(0.06), false)
		}
	}
}

// slices is a row of citrus slices and leaves; one slice when there is no
// room for more.
func (k *sketch) slices() {
	b := k.box
	k.wear("citrus")
	r := b.h() * 0.42
	n := int(b.w() / (r * 2.5))
	if n%2 == 0 {
		n--
	}
	n = min(n, 7)
	if n < 2 {
		k.hero(b.centre(), b.short()/2*0.9, 0)
		return
	}
	c := b.centre()
	for i := range n {
		x := float64(i) - float64(n-1)/2
		q := vec{c.x + x*r*2.3, c.y + r*0.1*(1-2*float64((i+n/2)%2))}
		size := r * (0.92 - 0.09*math.Abs(x))
		for side := -1.0; side <= 1; side += 2 {
			k.leaf(q.add(vec{side * size * 0.5, -size * 0.3}), -math.Pi/2+side*1.05, size*0.95, oval, side*0.1, i)
			k.leaf(q.add(vec{side * size * 0.5, size * 0.3}), math.Pi/2-side*0.95, size*0.8, oval, -side*0.1, i+1)
		}
		k.element(func() { slice(easel{k, q, size, k.turn(0.4)}, 0.86) })
	}
}
