package ornament

import (
	"math"

	"jarmark/internal/page"
	"jarmark/internal/palette"
)

// ear draws an ear of wheat on a spine: grains in pairs from the share "from"
// of its length to the end, awns beyond.
func (k *sketch) ear(s *spine, from, grain float64) {
	l := s.length()
	gold, dark := k.tint.gold, k.tint.stem
	if !k.tint.dark {
		dark = k.tint.stem
	}
	k.element(func() {
		k.stroke(s.line(0, l*0.98, 8), dark, max(0.12, grain*0.09))
		n := max(3, int((1-from)*l/(grain*0.52)))
		for i := range n {
			d := l * (from + (1-from)*float64(i)/float64(n))
			p, h := s.at(d)
			size := grain * (1 - 0.3*float64(i)/float64(n))
			for side := -1.0; side <= 1; side += 2 {
				a := h + side*0.5
				k.grain(offset(p, h, side*grain*0.06), a, size, side)
				tip := p.add(polar(a, size))
				k.stroke((&trace{}).move(tip).curve(tip.add(polar(h+side*0.4, size*0.3)), tip.add(polar(h+side*0.25, size*0.6)), tip.add(polar(h+side*0.16, size*0.95))), gold, max(0.08, grain*0.05))
			}
		}
		p, h := s.at(l)
		k.grain(p.sub(polar(h, grain*0.2)), h, grain*0.75, 1)
		k.stroke((&trace{}).move(p).line(p.add(polar(h, grain*1.2))), gold, max(0.08, grain*0.05))
	})
}

func (k *sketch) grain(base vec, angle, l, side float64) {
	at := func(x, y float64) vec {
		return base.add(polar(angle, x*l)).add(polar(angle+math.Pi/2, y*l))
	}
	t := (&trace{}).move(at(0, 0)).curve(at(0.2, -0.36), at(0.75, -0.26), at(1, 0)).curve(at(0.75, 0.26), at(0.2, 0.36), at(0, 0)).close()
	k.body(t, k.tint.gold)
	half := (&trace{}).move(at(0, 0)).curve(at(0.4, 0.06*side), at(0.75, 0.04*side), at(1, 0)).curve(at(0.75, 0.26*side), at(0.2, 0.36*side), at(0, 0)).close()
	k.shadeBody(half, k.grainShade())
}

func (k *sketch) grainShade() page.Colour {
	return palette.Mix(k.tint.gold, page.Colour{R: 0x7a, G: 0x4a, B: 0x12}, 0.35)
}
