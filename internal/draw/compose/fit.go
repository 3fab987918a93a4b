package compose

import (
	"slices"

	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// penalty is what a further line costs a display row.
var penalty = []float64{1, 0.8, 0.66, 0.55, 0.5, 0.45, 0.4, 0.36}

// best finds the setting with the largest type; ok is false when even the
// least sizes do not fit.
func (k *stack) best() (setting, bool) {
	k.prepare()
	counts := make([]int, len(k.rows))
	for i := range counts {
		counts[i] = 1
	}
	var top setting
	found := false
	for {
		if s, ok := k.fill(counts, top.score, found); ok {
			top, found = s, true
		}
		if !k.next(counts) {
			break
		}
	}
	if found && top.scale == 1 {
		top = k.grown(top)
	}
	return top, found
}

// fill finds the largest sizes at which rows of given line counts fit; ok is
// false when they do not, or score no more than a setting found before.
func (k *stack) fill(counts []int, beat float64, found bool) (setting, bool) {
	better := func(s setting) bool { return !found || s.score > beat+1e-9 }
	fits := func(step int) bool {
		s, ok := k.sized(counts, float64(step)/steps)
		return ok && s.high <= k.in.H
	}
	if s, ok := k.sized(counts, 1); ok && !better(s) {
		return setting{}, false
	}
	lo, hi := -1, steps+1
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; fits(mid) {
			lo = mid
		} else {
			hi = mid
		}
	}
	for ; lo >= 0; lo-- {
		s, ok := k.sized(counts, float64(lo)/steps)
		if !ok || !better(s) {
			break
		}
		s.slack = k.gapScale(s)
		if k.holds(s) {
			return s.kept(), true
		}
	}
	return setting{}, false
}

// kept is a setting of its own.
func (s setting) kept() setting {
	s.sizes, s.lines = slices.Clone(s.sizes), slices.Clone(s.lines)
	return s
}

// steps is into how many steps the way from the least to the best size is cut.
const steps = 16

// airy is the share of a region's height and width type may grow into beyond
// the sizes the design likes: the rest stays blank.
const airy = 0.8

// grown lets display type grow beyond its best size where the region is large
// and the text short.
func (k *stack) grown(s setting) setting {
	for _, t := range []float64{1.7, 1.55, 1.4, 1.25, 1.12} {
		g, ok := k.sized(s.lines, t)
		if g.slack = k.gapScale(g); ok && g.high <= share(k.in.H, airy) && g.score > s.score && k.holds(g) {
			return g.kept()
		}
	}
	return s
}

// next counts through the line counts of the rows.
func (k *stack) next(counts []int) bool {
	for i := range counts {
		if counts[i] < k.rows[i].lines && k.rows[i].draw == nil {
			counts[i]++
			return true
		}
		counts[i] = 1
	}
	return false
}

// second is the most the further lines of a name may have of the first.
const second = 0.78

// sized sizes the rows at t (1 = best, 0 = least, more = grown) with given
// line counts; ok is false when a row is too wide for its least size. The
// setting holds until the next one is tried (see kept): a label takes hundreds.
func (k *stack) sized(counts []int, t float64) (setting, bool) {
	k.trial = append(k.trial[:0], make([]unit.Length, len(k.rows))...)
	s := setting{lines: counts, sizes: k.trial, scale: t}
	title := unit.Length(0)
	for i := range k.rows {
		r := &k.rows[i]
		if r.draw != nil {
			continue
		}
		size := r.least + share(r.best-r.least, min(t, 1))
		if t > 1 && r.grows {
			size = share(r.best, t)
		}
		wide := k.in.W
		if r.names && title == 0 {
			wide -= 2 * k.sides
		}
		if n := r.narrow[counts[i]-1]; n > 0 {
			across := unit.Length(n + r.ink.left + r.ink.right)
			if t > 1 { // a line that is wide already keeps its size
				size = min(size, max(r.best, min(wide, share(k.in.W, airy))*1000/across))
			}
			size = min(size, wide*1000/across)
		}
		if size < r.least {
			return s, false
		}
		if title > 0 && r.names {
			size = min(size, max(r.least, share(title, second)))
		}
		s.sizes[i] = size
		if r.names && title == 0 {
			title = size
		}
	}
	if !k.lift(&s) {
		return s, false
	}
	for i := range k.rows {
		if r := &k.rows[i]; r.best > 0 {
			s.score += r.weight * float64(s.sizes[i]) / float64(r.best) * penalty[counts[i]-1]
		}
	}
	s.high = k.height(s)
	return s, true
}

// lift makes rows that must not be less than a part of the largest print that
// large; ok is false when their line is too long for it.
func (k *stack) lift(s *setting) bool {
	most := k.largest
	for _, size := range s.sizes {
		most = max(most, size)
	}
	for i := range k.rows {
		r := &k.rows[i]
		need := (most*unit.Length(r.part) + 99) / 100
		if s.sizes[i] >= need {
			continue
		}
		if n := r.narrow[s.lines[i]-1]; typeset.At(n+r.ink.left+r.ink.right, need) > k.in.W {
			return false
		}
		s.sizes[i] = need
	}
	return true
}

// holds reports whether every line of a setting fits where it would stand.
func (k *stack) holds(s setting) bool {
	if s.high > k.in.H {
		return false
	}
	_, ok := k.put(s, false)
	return ok
}
