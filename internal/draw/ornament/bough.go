package ornament

import "math"

// bough is a fruiting bough as a headpiece: one fruit large in the middle, its
// leaves fanned to both sides, a smaller fruit among them left and right.
func (k *sketch) bough() {
	b := k.box
	c := b.centre()
	r := min(b.h()*0.42, b.w()*0.16)
	reach := min(b.w()/2, r*4)
	leaf := min(r*1.5, reach*0.42) * k.fine
	for side := -1.0; side <= 1; side += 2 {
		tip := vec{c.x + side*(reach-leaf*0.45), c.y + r*0.1}
		s := bezier(c.add(vec{0, r * 0.2}), vec{c.x + side*reach*0.3, c.y + r*0.5}, vec{c.x + side*reach*0.62, c.y - r*0.35}, tip)
		k.stroke(s.line(0, s.length(), 6), k.tint.stem, max(0.2, r*0.075))
		for i, d := range []float64{0.46, 0.66, 0.85} {
			p, h := s.at(s.length() * d)
			l := leaf * (1 - 0.17*float64(i))
			for j, up := range []float64{-1, 1} {
				k.leaf(p, h+up*(0.72-0.12*float64(i)), l*(1-0.08*float64(j)), k.blade(), -up*0.1, i+2*j)
			}
		}
		p, h := s.at(s.length())
		k.leaf(p.sub(polar(h, leaf*0.1)), h, leaf*0.62, k.blade(), 0.05*side, 1)
		if reach > r*3 {
			p, _ = s.at(s.length() * 0.58)
			k.hero(p.add(vec{0, r * 0.16}), r*0.5, side*-0.35)
		}
	}
	for i, a := range []float64{-2.62, -0.52, 2.75, 0.4, -2.1, -1.04} {
		k.leaf(c.add(polar(a, r*0.45)), a, leaf*(1-0.04*float64(i)), k.blade(), 0.08*math.Cos(a), i)
	}
	k.hero(c, r*0.98, 0)
}
