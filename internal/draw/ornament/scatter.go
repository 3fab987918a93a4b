package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

type disk struct {
	c vec
	r float64
}

// scatter finds places for n discs that touch neither each other, nor the
// edges, nor a keep-out zone: dart throwing with air between (Poisson disc).
// Each disc has a partner of its size on the other side of the middle, as high,
// so that neither side weighs more; a place without room for the partner is left. The large ones come first, so that the small ones fill
// what they leave: sizes lists radii from large to small, used in equal shares.
func (k *sketch) scatter(n int, air float64, sizes ...float64) []disk {
	var out []disk
	least := sizes[len(sizes)-1]
	middle := k.box.x0 + k.box.x1
	for i := 0; i < n; i += 2 {
		r := min(sizes[i*len(sizes)/n], k.box.short()/2.05)
		for try := range 100 {
			if try%40 == 39 { // no room at this size: try a smaller piece
				r = max(r*0.72, least)
			}
			d := disk{vec{k.between(k.box.x0+r, k.box.x1-r), k.between(k.box.y0+r, k.box.y1-r)}, r}
			e := disk{vec{middle - d.c.x, d.c.y}, r}
			if k.free(d.c, r*1.05) && k.free(e.c, r*1.05) && apart(out, d, air) && apart(append(out, d), e, air) {
				out = append(out, d, e)
				break
			}
		}
	}
	return out
}

func apart(all []disk, d disk, air float64) bool {
	for _, o := range all {
		if o.c.sub(d.c).len() < (o.r+d.r)*(1+air) {
			return false
		}
	}
	return true
}

// room gives how many pieces of a radius suit the free area.
func (k *sketch) room(r float64, most int) int {
	k.asked = true
	area := k.box.w() * k.box.h()
	for _, z := range k.keep {
		w := min(z.x1, k.box.x1) - max(z.x0, k.box.x0)
		h := min(z.y1, k.box.y1) - max(z.y0, k.box.y0)
		area -= max(w, 0) * max(h, 0)
	}
	n := k.density * max(area, 0) / (r * r * 8.5)
	return min(max(int(n), 3), most)
}

// frost is the colour of ice: a cool grey of the leaves, pale on dark.
func (t tint) frost(i int) page.Colour {
	if t.dark {
		return palette.Mix(t.cream, t.leaf(i), 0.3*float64(i%2))
	}
	return palette.Mix(t.leaf(0), page.Colour{R: 0x7f, G: 0xa2, B: 0xb8}, 0.45+0.3*float64(i%2))
}

// crystals are snow crystals: six arms, all alike within one crystal.
func (k *sketch) crystals() {
	unit := min(max(k.box.short()*0.13, 1.6), 6)
	places := k.scatter(k.room(unit*0.8, 26), 0.22, unit*1.4, unit*0.95, unit*0.8, unit*0.6, unit*0.18)
	large := 0
	for _, d := range places {
		large += boolInt(d.r >= unit*0.35)
	}
	if large < leastStrewn && len(k.keep) > 0 {
		return
	}
	for i, d := range places {
		if d.r < unit*0.35 {
			k.body(spot(d.c, min(d.r*0.6, 0.4), min(d.r*0.55, 0.37), 0), k.tint.frost(i/2))
			continue
		}
		k.crystal(d.c, d.r*0.95, k.tint.frost(i/2))
	}
}

// leastStrewn is how many crystals round a name look strewn; fewer look lost.
const leastStrewn = 6

// snowfall is a row of crystals, alike to both sides of a large one in the
// middle, hung higher and lower.
func (k *sketch) snowfall() {
	b := k.box
	c, r := b.centre(), min(b.h()*0.42, b.w()*0.09)
	k.crystal(vec{c.x, c.y}, r, k.tint.frost(0))
	x := r
	for i, part := range []float64{0.42, 0.74, 0.34, 0.56, 0.28, 0.4} {
		x += r * (part + 0.32)
		if x+r*part > b.w()/2 {
			break
		}
		y := c.y + (b.h()/2-r*part)*[]float64{0.45, -0.3, 0.6, 0.1, -0.5, 0.3}[i]
		for side := -1.0; side <= 1; side += 2 {
			k.crystal(vec{c.x + side*x, y}, r*part, k.tint.frost(i+1))
		}
		x += r * part
	}
}

// mostRound is how many large crystals a ring has at most.
const mostRound = 13

// snowRing is a ring of crystals, large and small by turns.
func (k *sketch) snowRing() {
	b := k.box
	r := min(b.short()*0.08, 6)
	rx, ry := b.w()/2-r, b.h()/2-r
	n := 2 * min(max(4, int(math.Round(math.Pi*(rx+ry)/(r*3.7)))), mostRound)
	for i := range n {
		a := 2*math.Pi*float64(i)/float64(n) - math.Pi/2
		size := r * []float64{0.95, 0.48}[i%2]
		k.crystal(b.centre().add(vec{math.Cos(a) * rx, math.Sin(a) * ry}), size, k.tint.frost(i%2))
	}
}

// crystal draws one snow crystal. Its arms have side branches at 60°, as ice
// grows; how many, where and how long is the crystal's own.
func (k *sketch) crystal(c vec, r float64, tone page.Colour) {
	type twig struct{ at, long float64 }
	twigs := []twig{{k.between(0.42, 0.5), k.between(0.2, 0.3)}, {k.between(0.66, 0.74), k.between(0.14, 0.22)}}
	if r > 3 {
		twigs = append(twigs, twig{k.between(0.24, 0.3), k.between(0.1, 0.2)})
	}
	plate := k.between(0.14, 0.22)
	jewel := k.rng.Float64() < 0.5
	turn := k.turn(math.Pi / 6)
	k.element(func() {
		t := &trace{}
		hub := &trace{}
		ends := &trace{}
		for i := range 6 {
			a := turn + float64(i)*math.Pi/3
			at := func(x, y float64) vec { return c.add(polar(a, x*r)).add(polar(a+math.Pi/2, y*r)) }
			t.move(at(0, 0)).line(at(0.97, 0))
			for _, w := range twigs {
				x, y := w.long*0.5, w.long*math.Sqrt(3)/2
				t.move(at(w.at+x, -y)).line(at(w.at, 0)).line(at(w.at+x, y))
			}
			if i == 0 {
				hub.move(at(plate, 0))
			} else {
				hub.line(at(plate, 0))
			}
			if jewel {
				ends.move(at(0.86, 0)).line(at(0.93, -0.06)).line(at(1, 0)).line(at(0.93, 0.06)).close()
			}
		}
		k.stroke(t, tone, max(0.1, r*0.055))
		k.stroke(hub.close(), tone, max(0.1, r*0.05))
		if jewel {
			k.body(ends, tone)
		}
	})
}
