package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// fir is a winter bough: two branches of needles that sweep down from the
// middle, side twigs above and below them, cones and berries at the tie.
func (k *sketch) fir() {
	b := k.box
	c := b.centre()
	wide := min(b.w(), b.h()*6.2) // a bough, never a thread
	needle := min(b.h()*0.27, wide*0.075, 6) * k.fine
	drop := min(b.h()*0.3, needle*1.1)
	top := c.add(vec{0, -drop * 0.45})
	for side := -1.0; side <= 1; side += 2 {
		end := vec{c.x + side*(wide/2-needle*0.8), c.y + drop}
		s := bezier(top, vec{c.x + side*wide*0.16, c.y - drop*1.5}, vec{c.x + side*wide*0.34, c.y - drop*0.7}, end)
		for i, d := range []float64{0.22, 0.36, 0.5, 0.64, 0.78} {
			p, h := s.at(s.length() * d)
			up := 1.0 - 2*float64(i%2)
			a := h + side*up*0.62
			l := needle * (2.5 - 1.3*d)
			k.needles(bezier(p, p.add(polar(a, l*0.35)), p.add(polar(a-side*up*0.14, l*0.7)), p.add(polar(a-side*up*0.36, l))), needle*0.62)
		}
		k.needles(s, needle)
	}
	for side := -1.0; side <= 1; side += 2 {
		k.cone(c.add(vec{side * needle * 0.62, needle * 0.3}), needle*0.72, -side*0.5)
	}
	for i, q := range []vec{{-0.3, -0.42}, {0.3, -0.42}, {0, -0.02}, {0, -0.72}} {
		k.berry(c.add(q.mul(needle)), needle*(0.28-0.02*float64(i)), i == 3)
	}
}

// needles covers a spine with fir needles: dark ones behind, light in front.
// It grows in pieces, so that a free zone takes no more than it covers.
func (k *sketch) needles(s *spine, long float64) {
	l := s.length()
	pitch, passes := max(long*0.2, l/40), 2
	if k.tint.line { // sparing with ink
		pitch, passes = max(long*0.3, l/30), 1
	}
	n := max(1, int(math.Round(l/pitch)))
	const piece = 5
	for from := 0; from <= n; from += piece {
		k.element(func() {
			k.stroke(s.line(l*float64(from)/float64(n), min(l, l*float64(from+piece)/float64(n))*0.98, 2), k.tint.stem, max(0.14, long*0.07))
			for pass := range passes {
				t := &trace{}
				for i := from; i < from+piece && i <= n; i++ {
					k.whorl(t, s, (float64(i)+0.5*float64(pass))*l/float64(n), long, pass)
				}
				k.stroke(t, k.tint.leaf(pass+pass*boolInt(len(k.tint.leaves) > 2)*boolInt(k.tint.dark)), max(0.13, long*0.062))
			}
		})
	}
}

// whorl adds the needles of both sides at a distance along the bough, and
// the last one at its tip.
func (k *sketch) whorl(t *trace, s *spine, d, long float64, pass int) {
	l := s.length()
	d = min(d, l)
	p, h := s.at(d)
	grown := long * (1 - 0.45*math.Pow(d/l, 2)) * (1 - 0.18*float64(pass))
	for side := -1.0; side <= 1; side += 2 {
		a := h + side*(0.72-0.34*d/l+k.turn(0.1)-0.12*float64(pass))
		t.move(p).line(p.add(polar(a, grown*k.vary(0.12))))
	}
	if d == l {
		t.move(p).line(p.add(polar(h, long*0.5)))
	}
}

// cone is a fir cone hanging at an angle (0 straight down).
func (k *sketch) cone(c vec, r, angle float64) {
	brown := page.Colour{R: 0x86, G: 0x5d, B: 0x3a}
	if k.tint.dark {
		brown = page.Colour{R: 0xb0, G: 0x84, B: 0x56}
	}
	dark := palette.Mix(brown, page.Colour{R: 0x2a, G: 0x18, B: 0x10}, 0.45)
	light := palette.Mix(brown, page.Colour{R: 0xf5, G: 0xe2, B: 0xc4}, 0.35)
	e := easel{k, c, r, angle}
	k.element(func() {
		k.body(smooth(e.mirror(0, -0.95, 0.5, -0.55, 0.58, 0.1, 0.3, 0.8, 0, 1.1), true), dark)
		for j := 4; j >= 0; j-- {
			y := -0.62 + 0.36*float64(j)
			n := []int{2, 3, 3, 2, 1}[j]
			for i := range n {
				x := (float64(i) - float64(n-1)/2) * 0.4
				s := (&trace{}).move(e.p(x-0.2, y-0.12)).curve(e.p(x-0.2, y+0.12), e.p(x-0.08, y+0.26), e.p(x, y+0.3)).
					curve(e.p(x+0.08, y+0.26), e.p(x+0.2, y+0.12), e.p(x+0.2, y-0.12)).close()
				k.body(s, palette.Mix(brown, light, 0.5*float64((i+j)%2)))
			}
		}
	})
}

// firWreath is a ring of fir with cones and berries.
func (k *sketch) firWreath() {
	c := k.box.centre()
	rx, ry := k.box.w()/2, k.box.h()/2
	needle := min(max(min(rx, ry)*0.17, 1.2), 6) * k.fine
	rx, ry = rx-needle*0.8, ry-needle*0.8
	ring := func(a float64) vec { return c.add(vec{math.Cos(a) * rx, math.Sin(a) * ry}) }
	const boughs = 8
	for i := range boughs {
		a := 2*math.Pi*float64(i)/boughs + k.turn(0.05)
		turn := 1 - 2*float64(i%2)
		s := newSpine(false, 40, func(t float64) vec {
			p := ring(a + t*2*math.Pi/boughs*1.22)
			return c.add(p.sub(c).mul(1 + 0.05*turn*t*t))
		})
		k.needles(s, needle*k.vary(0.08))
	}
	for i := range 5 {
		a := 2*math.Pi*float64(i)/5 - math.Pi/2 + 0.35
		if i%2 == 0 {
			k.cone(ring(a), needle*0.5, k.turn(0.7))
			continue
		}
		for j := range 3 {
			k.berry(ring(a).add(polar(a+float64(j)*2*math.Pi/3, needle*0.27)), needle*0.22, false)
		}
	}
}
