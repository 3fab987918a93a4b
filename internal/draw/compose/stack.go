package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// row is one element of a stack of display type: a paragraph in at most lines
// lines, or a drawing of a fixed height.
type row struct {
	para        typeset.Para
	parted      typeset.Para // the same with its words parted and its lines joined, for a narrow piece; may be empty
	least, best unit.Length  // type size
	legal       unit.Length  // type size it may never go below
	lines       int          // most lines it may take
	ragged      typeset.Ragged
	gap         float64 // blank above it, in ems of its size
	weight      float64 // how much its size matters; 0 = follows the others
	draw        func(box page.Rect) []page.Item
	high        unit.Length // height of a drawing
	name        string      // for findings
	narrow      []int       // narrow[k]: least width that holds it in k+1 lines
	ink         reach
	boxes       []typeset.Box
	names       bool // a line of the name
	part        int  // least size in percent of the largest row; 0 = none
	grows       bool // may exceed its best size where there is room
}

// stack is a column of rows to be fitted into a region.
type stack struct {
	rows    []row
	in      region
	align   typeset.Align
	rise    float64       // share of the spare height above the rows
	spread  float64       // how far the gaps may grow, as a factor
	sides   unit.Length   // kept free at each side of the first row, a name
	largest unit.Length   // of the print beside the stack
	from    []int         // of the placed items: where each row's begin, and their end
	trial   []unit.Length // sizes of the setting tried last
}

// setting is one way to set a stack.
type setting struct {
	sizes []unit.Length
	lines []int
	scale float64
	score float64
	high  unit.Length
	slack float64
}

// prepare measures the rows once; all later work is arithmetic.
func (k *stack) prepare() {
	for i := range k.rows {
		r := &k.rows[i]
		if r.draw != nil || r.narrow != nil {
			continue
		}
		r.ink = reachOf(r.para)
		r.boxes = r.para.Boxes()
		if n := ended(r.boxes); n > 1 {
			r.lines = n
		}
		r.lines = max(1, min(r.lines, len(r.boxes)))
		for n := 1; n <= r.lines; n++ {
			r.narrow = append(r.narrow, typeset.Narrowest(r.boxes, n)-r.para.Voice.Track)
		}
	}
}

// ended counts the lines boxes must be set in at least.
func ended(boxes []typeset.Box) int {
	n := 1
	for _, b := range boxes[:max(0, len(boxes)-1)] {
		if b.Ends {
			n++
		}
	}
	return n
}

// height is the height of the rows with their plain gaps.
func (k *stack) height(s setting) unit.Length {
	h := unit.Length(0)
	for i := range k.rows {
		if i > 0 {
			h += k.gapAbove(i, s)
		}
		h += k.rows[i].height(s.sizes[i], s.lines[i])
	}
	return h
}

func (r *row) height(size unit.Length, lines int) unit.Length {
	if r.draw != nil {
		return r.high
	}
	return typeset.At(r.ink.top+r.ink.bottom, size) + unit.Length(lines-1)*r.lead(size)
}

// lead is the line spacing at a size: the voice's, and never so close that the
// letters of two lines touch.
func (r *row) lead(size unit.Length) unit.Length {
	return max(share(size, r.para.Voice.Leading), typeset.At(r.ink.top+r.ink.bottom+20, size))
}

func (k *stack) gapAbove(i int, s setting) unit.Length {
	r := &k.rows[i]
	if r.draw != nil {
		return share(r.high, r.gap)
	}
	gap := share(s.sizes[i], r.gap)
	if r.names && i > 0 && k.rows[i-1].names { // small type under large keeps off it
		gap = max(gap, share(s.sizes[i-1], 0.13))
	}
	return gap
}

// gapScale lets the gaps take a part of the spare height.
func (k *stack) gapScale(s setting) float64 {
	gaps := unit.Length(0)
	for i := 1; i < len(k.rows); i++ {
		gaps += k.gapAbove(i, s)
	}
	if gaps <= 0 {
		return 1
	}
	return min(k.spread, 1+0.45*float64(k.in.H-s.high)/float64(gaps))
}

// place sets the rows; ok is false when a line does not fit its chord.
func (k *stack) place(s setting) ([]page.Item, bool) { return k.put(s, true) }

// put is place, or only the proof that all lines fit.
func (k *stack) put(s setting, draw bool) ([]page.Item, bool) {
	var items []page.Item
	extra := unit.Length(0)
	for i := 1; i < len(k.rows); i++ {
		extra += share(k.gapAbove(i, s), s.slack-1)
	}
	y := k.in.Y + share(k.in.H-s.high-extra, k.rise)
	k.from = k.from[:0]
	for i := range k.rows {
		r := &k.rows[i]
		k.from = append(k.from, len(items))
		if i > 0 {
			y += share(k.gapAbove(i, s), s.slack)
		}
		h := r.height(s.sizes[i], s.lines[i])
		switch {
		case r.draw != nil && !draw:
		case r.draw != nil:
			x0, x1 := k.in.chord(y, y+h)
			items = append(items, r.draw(page.Rect{X: x0, Y: y, W: max(0, x1-x0), H: h})...)
		default:
			set, ok := r.set(k.in, k.align, s.sizes[i], s.lines[i], y, draw)
			if !ok {
				return nil, false
			}
			items = append(items, set...)
		}
		y += h
	}
	k.from = append(k.from, len(items))
	return items, true
}

// set breaks one row into its lines and places them from y down.
func (r *row) set(in region, a typeset.Align, size unit.Length, lines int, y unit.Length, draw bool) ([]page.Item, bool) {
	lead := r.lead(size)
	first := y + typeset.At(r.ink.top, size)
	span := func(line int) (unit.Length, unit.Length) {
		base := first + unit.Length(line)*lead
		return r.ink.chord(in, base, size)
	}
	ends, ok := typeset.Break(r.boxes, func(line int) int {
		x0, x1 := span(line)
		return typeset.Em(x1-x0, size) + r.para.Voice.Track + 1
	}, r.ragged, lines)
	if !ok || !draw {
		return nil, ok
	}
	return setLines(r.para, ends, size, func(line int, w unit.Length) page.Point {
		x0, x1 := span(line)
		return page.Point{X: x0 + a.Shift(x1-x0, w), Y: first + unit.Length(line)*lead}
	}), true
}

// reach is how far the letters of a paragraph reach from their line, in 1/1000
// em: above and below the baseline, and past their advance at either side.
type reach struct{ top, bottom, left, right int }

// reachOf measures the letters of the paragraph. The height of an x at least
// counts above, so that baselines do not jump.
func reachOf(p typeset.Para) reach {
	k := reach{top: p.Voice.Regular.Ink('x').Top}
	for _, w := range p.Words {
		for _, f := range w.Frags {
			fc := p.Voice.Face(f.Bold)
			for _, r := range f.S {
				g := fc.Ink(r)
				k.top, k.bottom = max(k.top, g.Top), max(k.bottom, g.Bottom)
				k.left, k.right = max(k.left, -g.Left), max(k.right, g.Right-fc.Advance(r))
			}
		}
	}
	return k
}

// chord is the stretch of a region a line on a baseline may advance over, so
// that its ink stays inside.
func (k reach) chord(in region, base, size unit.Length) (x0, x1 unit.Length) {
	x0, x1 = in.chord(base-typeset.At(k.top, size), base+typeset.At(k.bottom, size))
	return x0 + max(0, typeset.At(k.left, size)-in.air), x1 - typeset.At(k.right, size)
}
