package compose

import (
	"jarmark/internal/page"
	"jarmark/internal/unit"
)

// passage is one paragraph of running text.
type passage struct {
	parts       []said
	para        para
	least, best unit.Length // type size
	gap         float64     // blank above it in ems
	name        string      // for findings
	ink         reach
	ragged      ragged
}

// tight is the line spacing running text may close up to before its size has
// to fall; open is set by the voice.
const tight = 1.2

// flowed is running text set in a region.
type flowed struct {
	items  []page.Item
	top    unit.Length // of the region it was set in
	bottom unit.Length // under the last line's ink
	scale  float64     // 1 = best sizes, 0 = least
	fits   bool
}

// flow sets passages one under the other, as large as the region takes.
func flow(ps []passage, in region, a align) flowed {
	measured(ps)
	if f := flowAt(ps, in, a, 1); f.fits {
		return f
	}
	low := flowAt(ps, in, a, 0)
	if !low.fits {
		return low
	}
	lo, hi := 0.0, 1.0
	for range 5 {
		mid := (lo + hi) / 2
		if f := flowAt(ps, in, a, mid); f.fits {
			low, lo = f, mid
		} else {
			hi = mid
		}
	}
	return low
}

// measured notes how far the ink of each passage reaches.
func measured(ps []passage) {
	for i := range ps {
		ps[i].ink = ps[i].para.reach()
	}
}

// flowAt sets the passages at one scale. When they do not fit it goes on
// below the region, so that bottom tells how much they need.
func flowAt(ps []passage, in region, a align, t float64) flowed {
	f := flowed{scale: t, fits: true, top: in.Y, bottom: in.Y}
	y := in.Y
	for i, p := range ps {
		size := p.least + share(p.best-p.least, t)
		lead := share(size, tight+(max(tight, p.para.voice.leading)-tight)*t)
		if i > 0 {
			y += max(0, lead-at(p.ink.top+p.ink.bottom, size)) + share(size, p.gap*(0.5+0.5*t))
		}
		items, lines, ok := p.set(in, a, size, lead, y)
		if !ok {
			f.fits = false
		}
		if lines == 0 {
			continue
		}
		f.items = append(f.items, items...)
		y += at(p.ink.top+p.ink.bottom, size) + unit.Length(lines-1)*lead
		f.bottom = y
	}
	if f.bottom > in.Y+in.H {
		f.fits = false
	}
	return f
}

// set places one passage from y down.
func (p passage) set(in region, a align, size, lead, y unit.Length) ([]page.Item, int, bool) {
	first := y + at(p.ink.top, size)
	span := func(line int) (unit.Length, unit.Length) {
		base := first + unit.Length(line)*lead
		return p.ink.chord(in, base, size)
	}
	ends, ok := breakLines(p.para.boxes(), func(line int) int {
		x0, x1 := span(line)
		return em(x1-x0, size) + p.para.voice.track
	}, p.ragged, 0)
	if !ok {
		return nil, 0, false
	}
	var items []page.Item
	from := 0
	for line, to := range ends {
		x0, x1 := span(line)
		w := at(p.para.lineWidth(from, to), size)
		pt := page.Point{X: x0 + a.shift(x1-x0, w), Y: first + unit.Length(line)*lead}
		items = append(items, p.para.setLine(from, to, size, pt)...)
		from = to
	}
	return items, len(ends), true
}
