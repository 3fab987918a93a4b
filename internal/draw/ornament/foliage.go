package ornament

import "math"

// growth says how leaves and fruit sit on a spine.
type growth struct {
	leaf  float64 // length of a full-grown leaf, mm
	blade blade
	step  float64 // between pairs of leaves, in leaf lengths
	open  float64 // angle of a leaf off the twig, radians
	every int     // pairs of leaves per fruit cluster; 0 = none
	first int     // pair of the first cluster
	taper bool    // young leaves toward the end, one leaf at the tip
	from  float64 // where the first pair sits, in leaf lengths
	most  int     // pairs at most: keeps files small
}

// Most pairs of leaves on a ring and on one of two boughs, and most clusters
// on a ring.
const (
	ringPairs    = 33
	boughPairs   = 12
	archPairs    = 17 // of a garland, whose boughs are long
	mostClusters = 8
	mostArch     = 11.0 // a garland is at most so much wider than high
)

// grow covers a spine with pairs of leaves and, over them, clusters of fruit.
func (k *sketch) grow(s *spine, g growth) {
	length := s.length()
	if length <= 0 || g.leaf <= 0 {
		return
	}
	n := min(max(2, int(math.Round((length/g.leaf-g.from)/g.step))), int(float64(g.most)/k.fine))
	if s.closed && g.every > 0 { // clusters at even distances all around
		g.every = max(g.every, (n+mostClusters-1)/mostClusters)
		groups := max(1, n/g.every)
		if k.tint.dark && groups > 2 { // fruit and gold berries take turns
			groups -= groups % 2
		}
		n = groups * g.every
	}
	k.twig(s, g)
	first := g.from * g.leaf
	pitch := (length - first) / float64(n)
	tone := k.rng.IntN(3)
	type fruit struct {
		at      vec
		heading float64
		side    float64
		size    float64
	}
	var fruits []fruit
	for i := range n {
		d := first + pitch*float64(i)
		size := 1.0
		if g.taper {
			size = 1 - 0.42*math.Pow(d/length, 1.6)
		}
		for side := -1.0; side <= 1; side += 2 {
			// The two leaves of a pair do not sit quite opposite each other.
			p, h := s.at(d + pitch*0.2*side + k.turn(0.05)*pitch)
			l := g.leaf * size * k.vary(0.11)
			a := h + side*(g.open+k.turn(0.14))
			k.leaf(offset(p, h, side*g.leaf*0.035), a, l, g.blade, -side*k.between(0.03, 0.13), tone)
			tone += 1 + k.rng.IntN(2)*boolInt(k.rng.Float64() < 0.3)
		}
		if g.every > 0 && (i+g.every-g.first)%g.every == 0 {
			p, h := s.at(d + pitch*0.45)
			side := 1.0
			if len(fruits)%2 == 1 {
				side = -1
			}
			fruits = append(fruits, fruit{p, h, side, size})
		}
	}
	if g.taper {
		p, h := s.at(length)
		k.leaf(p.sub(polar(h, g.leaf*0.12)), h, g.leaf*0.62, g.blade, k.turn(0.1), tone)
	}
	for _, f := range fruits {
		k.cluster(f.at, f.heading, f.side, g.leaf*0.5*(0.6+0.4*f.size))
	}
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// twig draws the stem in short pieces, so that a free zone takes no more of it
// than it covers; they become one line again.
func (k *sketch) twig(s *spine, g growth) {
	end, pieces := s.length()*0.97, 14
	if s.closed {
		end, pieces = s.length(), 30
	}
	step := end / float64(pieces)
	for i := range pieces {
		k.stroke(s.line(step*float64(i), step*float64(i+1), 1), k.tint.stem, max(0.12, g.leaf*0.038))
	}
}

// leafSize is a good length for leaves: a share of the drawing's reach, more
// when "most" pairs of such leaves would not cover the run of the twig, but
// never so long that they outgrow the reach.
func (k *sketch) leafSize(reach, share, run float64, most int) float64 {
	return max(min(max(reach*share, run/(0.78*float64(most))), reach*0.42)*k.fine, 0.3)
}

// around is near the circumference of an ellipse (Ramanujan).
func around(rx, ry float64) float64 {
	return math.Pi * (3*(rx+ry) - math.Sqrt((3*rx+ry)*(rx+3*ry)))
}

// wreath is a ring of leaves with clusters of the fruit.
func (k *sketch) wreath() {
	c := k.box.centre()
	rx, ry := k.box.w()/2, k.box.h()/2
	leaf := k.leafSize(min(rx, ry), 0.245, around(rx, ry)*0.85, ringPairs)
	in := leaf * 0.66 // what leaves reach past the twig
	rx, ry = rx-in, ry-in
	start := k.between(-0.2, 0.2) - math.Pi/2
	s := newSpine(true, 180, func(t float64) vec {
		a := start + 2*math.Pi*t
		return c.add(vec{math.Cos(a) * rx, math.Sin(a) * ry})
	})
	every := 3
	if k.density > 1.3 {
		every = 2
	}
	k.grow(s, growth{leaf: leaf, blade: k.blade(), step: 0.76 / math.Sqrt(k.density), open: 0.62, every: every, first: 1, most: ringPairs})
}

// laurel is two boughs rising from the bottom, open at the top.
func (k *sketch) laurel() {
	c := k.box.centre()
	rx, ry := k.box.w()/2, k.box.h()/2
	leaf := k.leafSize(min(rx, ry), 0.26, around(rx, ry)*0.36, boughPairs)
	rx, ry = rx-leaf*0.62, ry-leaf*0.62
	for side := -1.0; side <= 1; side += 2 {
		s := newSpine(false, 120, func(t float64) vec {
			a := math.Pi/2 - side*(0.06+t*2.56)
			return c.add(vec{math.Cos(a) * rx, math.Sin(a) * ry})
		})
		k.grow(s, growth{leaf: leaf, blade: k.blade(), step: 0.74 / math.Sqrt(k.density), open: 0.6, every: 3, first: 2, taper: true, from: 0.35, most: boughPairs})
	}
	k.hero(vec{c.x, c.y + ry}, leaf*0.5, 0)
}

// garland is an arch across the top of its box: two boughs from the crown
// down to both sides, fruit at the crown.
func (k *sketch) garland() {
	b := k.box
	if past := b.w() - mostArch*b.h(); past > 0 { // leaves would stand far apart: a shorter one, not a thread
		b.x0, b.x1 = b.x0+past/2, b.x1-past/2
	}
	leaf := min(k.leafSize(b.w(), 0.066, 0, 1), b.h()*0.33*k.fine)
	pad := leaf * 0.72
	left, right := vec{b.x0 + pad*0.9, b.y1 - pad}, vec{b.x1 - pad*0.9, b.y1 - pad}
	top := b.y0 + pad
	if rise := left.y - top; rise > b.w()*0.3 {
		left.y, right.y = top+b.w()*0.3, top+b.w()*0.3
	}
	crown := vec{b.centre().x, top}
	for _, end := range []vec{left, right} {
		reach := end.x - crown.x
		s := bezier(crown, vec{crown.x + reach*0.42, top}, vec{crown.x + reach*0.8, top + (end.y-top)*0.42}, end)
		k.grow(s, growth{leaf: leaf, blade: k.blade(), step: 0.7 / math.Sqrt(k.density), open: 0.6, every: 3, first: 2, taper: true, from: 0.3, most: archPairs})
	}
	k.hero(crown, leaf*0.56, 0)
}

// branch is a spray lying along its box, fruit in the middle.
func (k *sketch) branch() {
	b := k.box
	leaf := min(k.leafSize(b.w(), 0.12, 0, 1), b.h()*0.62*k.fine)
	c := b.centre()
	lift := min(b.h()*0.16, leaf*0.5)
	for side := -1.0; side <= 1; side += 2 {
		end := vec{c.x + side*(b.w()/2-leaf*0.5), c.y + lift*side*0.6}
		mid := c.lerp(end, 0.5)
		s := bezier(c, vec{mid.x - side*leaf*0.3, c.y - lift*side*1.4}, vec{mid.x + side*leaf*0.6, c.y + lift*side*1.2}, end)
		k.grow(s, growth{leaf: leaf, blade: k.blade(), step: 0.66 / math.Sqrt(k.density), open: 0.58, every: 3, first: 2, taper: true, from: 0.35, most: boughPairs})
	}
	k.hero(c, leaf*0.5, 0)
}

// blade is the leaf of the motif's plant.
func (k *sketch) blade() blade {
	switch k.motif {
	case "strawberry", "bramble", "apple", "pear", "grape", "fig", "kiwi", "pumpkin", "tomato":
		return broad
	case "citrus", "apricot", "pomegranate":
		return oval
	case "peach", "elder", "cherry":
		b := slim
		b.wide = 0.38
		return b
	case "chilli", "pineapple", "wheat":
		return willow
	}
	return slim
}
