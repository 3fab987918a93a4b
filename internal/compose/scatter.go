package compose

import (
	"jarmark/internal/page"
	"jarmark/internal/unit"
)

// scatter strews a look's small ornaments (snow crystals, stars) over the
// paper, well away from type and from each other.
func (s *setter) scatter() {
	for _, o := range s.look.Ornaments {
		if o.Place != "scatter" {
			continue
		}
		keep := s.kept()
		for i, box := range s.strew(o.Size, o.Density, uint64(o.Seed), keep) {
			one := o
			one.Seed += int64(i)
			one.Density = 0
			s.put(s.drawing(one, box, s.colours, nil)...)
		}
	}
}

// strew finds boxes for about 40 x density drawings of differing size.
func (s *setter) strew(size, density float64, seed uint64, keep []page.Rect) []page.Rect {
	if density <= 0 {
		density = 1
	}
	safe := max(s.cell.Safe, unit.Millimetre)
	rnd := splitmix(seed + 1)
	var out []page.Rect
	for try := 0; try < 400 && len(out) < int(40*density); try++ {
		big := share(s.short(), size*(0.45+0.75*rnd.unit()))
		if big < 1200*unit.Micrometre {
			continue
		}
		room := page.Rect{X: safe, Y: safe, W: s.cell.W - 2*safe - big, H: s.cell.H - 2*safe - big}
		if room.W <= 0 || room.H <= 0 {
			continue
		}
		box := page.Rect{X: room.X + share(room.W, rnd.unit()), Y: room.Y + share(room.H, rnd.unit()), W: big, H: big}
		if !s.inside(box) || meets(grow(box, big/4, big/4), keep) || meets(grow(box, big/3, big/3), out) {
			continue
		}
		out = append(out, box)
	}
	return out
}

func meets(r page.Rect, list []page.Rect) bool {
	for _, k := range list {
		if overlaps(r, k) {
			return true
		}
	}
	return false
}

// inside reports whether a box lies on the label, whatever its shape.
func (s *setter) inside(r page.Rect) bool { return within(s.frame, r, 0) }

// splitmix is Vigna's SplitMix64, a small generator that gives the same
// numbers everywhere.
type splitmix uint64

func (x *splitmix) next() uint64 {
	*x += 0x9e3779b97f4a7c15
	z := uint64(*x)
	z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9
	z = (z ^ (z >> 27)) * 0x94d049bb133111eb
	return z ^ (z >> 31)
}

func (x *splitmix) unit() float64 { return float64(x.next()>>11) / (1 << 53) }
