package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// passage is one paragraph of running text.
type passage struct {
	parts       []typeset.Part
	para        typeset.Para
	least, best unit.Length // type size
	gap         float64     // blank above it in ems
	name        string      // for findings
	ink         reach
	boxes       []typeset.Box
	ragged      typeset.Ragged
	closes      bool // its lines may close up to less than tight
}

// tight is the line spacing running text may close up to before its size has
// to fall; open is set by the voice.
const tight = 1.2

// closest is the spacing it may close up to before it does not fit at all, and
// closedUp the scale of text so set, at its least size.
const (
	closest  = 1.1
	closedUp = -1.0
)

// flowed is running text set in a region.
type flowed struct {
	items  []page.Item
	region region      // it was set in
	top    unit.Length // of the region
	bottom unit.Length // under the last line's ink
	scale  float64     // 1 = best sizes, 0 = least
	open   float64     // how wide the blanks between passages are, 1 = plain
	fits   bool
	again  func(region) bool // whether it fits another region at its least sizes
}

// flow sets passages one under the other, as large as the region takes, and
// opens the blanks between them into what height is left.
func flow(ps []passage, in region, a typeset.Align) flowed {
	f := fitFlow(ps, in, a)
	if !f.fits {
		return f
	}
	return flowAt(ps, in, a, f.scale, f.open, true)
}

// fitFlow measures what flow would set, without setting it.
func fitFlow(ps []passage, in region, a typeset.Align) flowed {
	measured(ps)
	if f := flowAt(ps, in, a, 1, 1, false); f.fits {
		return opened(ps, in, a, f)
	}
	low := flowAt(ps, in, a, 0, 1, false)
	if !low.fits {
		if closest := leastScale(ps); closest < 0 {
			low = flowAt(ps, in, a, closest, 1, false)
		}
		low.again = func(r region) bool { return flowAt(ps, r, a, leastScale(ps), 1, false).fits }
		return low
	}
	lo, hi := 0.0, 1.0
	for range 5 {
		mid := (lo + hi) / 2
		if f := flowAt(ps, in, a, mid, 1, false); f.fits {
			low, lo = f, mid
		} else {
			hi = mid
		}
	}
	return low
}

// leastScale is the scale at which passages need the least height.
func leastScale(ps []passage) float64 {
	if len(ps) > 0 && ps[0].closes {
		return closedUp
	}
	return 0
}

// widest is how far the blanks between passages open.
const widest = 2.2

// opened widens the blanks between passages while the region takes it.
func opened(ps []passage, in region, a typeset.Align, f flowed) flowed {
	lo, hi := 1.0, widest
	for range 4 {
		mid := (lo + hi) / 2
		if g := flowAt(ps, in, a, 1, mid, false); g.fits {
			f, lo = g, mid
		} else {
			hi = mid
		}
	}
	return f
}

// measured notes how far the ink of each passage reaches.
func measured(ps []passage) {
	for i := range ps {
		if ps[i].ink == (reach{}) {
			ps[i].ink, ps[i].boxes = reachOf(ps[i].para), ps[i].para.Boxes()
		}
	}
}

// flowAt sets the passages at one scale, the blanks between them open times
// as wide. When they do not fit it goes on below the region, so that bottom
// tells how much they need. draw asks for the items, not the measures alone.
func flowAt(ps []passage, in region, a typeset.Align, t, open float64, draw bool) flowed {
	f := flowed{scale: t, open: open, fits: true, top: in.Y, bottom: in.Y}
	y := in.Y
	for i, p := range ps {
		size, lead := p.sized(t)
		if i > 0 {
			y += max(0, lead-typeset.At(p.ink.top+p.ink.bottom, size)) + share(size, p.gap*(0.5+0.5*t)*open)
		}
		items, lines, ok := p.set(in, a, size, lead, y, draw)
		if !ok {
			f.fits = false
		}
		if lines == 0 {
			continue
		}
		f.items = append(f.items, items...)
		y += typeset.At(p.ink.top+p.ink.bottom, size) + unit.Length(lines-1)*lead
		f.bottom = y
	}
	if f.bottom > in.Y+in.H {
		f.fits = false
	}
	return f
}

// sized gives the type size of a passage at a scale and its line spacing.
func (p passage) sized(t float64) (size, lead unit.Length) {
	if t < 0 {
		return p.least, share(p.least, closest)
	}
	size = p.least + share(p.best-p.least, t)
	return size, share(size, tight+(max(tight, p.para.Voice.Leading)-tight)*t)
}

// set places one passage from y down.
func (p passage) set(in region, a typeset.Align, size, lead, y unit.Length, draw bool) ([]page.Item, int, bool) {
	first := y + typeset.At(p.ink.top, size)
	span := func(line int) (unit.Length, unit.Length) {
		base := first + unit.Length(line)*lead
		return p.ink.chord(in, base, size)
	}
	measure := func(line int) int {
		x0, x1 := span(line)
		return typeset.Em(x1-x0, size) + p.para.Voice.Track
	}
	if !draw {
		if lines, ok := typeset.Fewest(p.boxes, measure); ok {
			return nil, lines, true
		}
	}
	ends, ok := typeset.Break(p.boxes, measure, p.ragged, 0)
	if !ok {
		return nil, 0, false
	}
	if !draw {
		return nil, len(ends), true
	}
	return setLines(p.para, ends, size, func(line int, w unit.Length) page.Point {
		x0, x1 := span(line)
		return page.Point{X: x0 + a.Shift(x1-x0, w), Y: first + unit.Length(line)*lead}
	}), len(ends), true
}

// setLines sets lines that are broken at their ends, each at the place of one so
// wide.
func setLines(p typeset.Para, ends []int, size unit.Length, at func(line int, w unit.Length) page.Point) (items []page.Item) {
	from := 0
	for line, to := range ends {
		items = append(items, p.SetLine(from, to, size, at(line, typeset.At(p.LineWidth(from, to), size)))...)
		from = to
	}
	return items
}
