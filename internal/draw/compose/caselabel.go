package compose

import (
	"slices"
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// caseLabel sets the label of a box of jars, to be read across a room: name,
// how many and how large, lot and date, with the record's code.
func (l *layout) caseLabel() {
	in, on, short := l.card("frame", "left", "right", "corners", "corner", "bottom", "top")
	head, foot := in, in
	head.H = share(in.H, 0.5)
	foot = in.inset(0, share(in.H, 0.56), 0, 0)
	l.headed(head, on, short)
	foot = l.cornerCode(foot, on, 0.34)
	k := stack{in: foot, align: typeset.Left, rise: 1, spread: 1.4}
	if b, ok := l.block(label.Count); ok {
		k.rows = append(k.rows, l.factRow(b, on, 0.055, 0.1, 1.5))
	}
	if b, ok := l.block(label.Net); ok {
		k.rows = append(k.rows, l.factRow(b, on, 0.04, 0.062, 1))
	}
	if r, ok := l.joinedRow(on, 0.035, 0.05, label.Lot, label.Date); ok {
		k.rows = append(k.rows, r)
	}
	l.fit(k, "the facts")
}

// card is the room a card has for its words, with drawings at those spots, the
// colours on it and its shorter side.
func (l *layout) card(spots ...string) (region, roles, unit.Length) {
	area := l.band(page.Rect{W: l.cell.W, H: l.cell.H}, l.look.Band)
	on, short := l.colours, min(area.W, area.H)
	return l.reserve(l.inner(area, on), on, short, spots...), on, short
}

// headed sets maker and name at the top of a card, from the left.
func (l *layout) headed(in region, on roles, short unit.Length) {
	beside := l.headRows(in, on, short)
	if l.corner.H > 0 { // under the corner's drawing, where that leaves the name more
		low := in
		low.holes = slices.DeleteFunc(slices.Clone(in.holes), func(h page.Rect) bool { return h == l.corner })
		low = low.inset(0, max(0, l.corner.Y+l.corner.H-in.Y), 0, 0)
		under := l.headRows(low, on, short)
		a, okA := beside.best()
		b, okB := under.best()
		if okB && (!okA || b.score > a.score*1.15) {
			beside = under
		}
	}
	l.fit(beside, "the name")
}

// headRows is the stack of a card's head.
func (l *layout) headRows(in region, on roles, short unit.Length) stack {
	k := stack{in: in, align: l.align(), rise: 0, spread: 1.3}
	if b, ok := l.block(label.Brand); ok {
		k.rows = append(k.rows, l.displayRow(b, l.voices.Brand, on, short, 1, 0.6))
	}
	rows := l.titleRows(on, short)
	if len(rows) > 0 {
		rows[0].gap = 0.6
	}
	k.rows = append(k.rows, rows...)
	if len(k.rows) > 0 {
		k.rows[0].gap = 0
	}
	return k
}

// factRow sets a block in the text voice at display size, shares of the
// card's shorter side.
func (l *layout) factRow(b label.Block, on roles, least, best, weight float64) row {
	r := l.displayRow(b, l.voices.Text, on, l.short(), 3, weight)
	v := l.voice(l.voices.Text, on)
	v.Leading = 1.25
	r.para = typeset.New(v, typeset.Say(b.ID, emphasised(b), b.Exact))
	r.legal = leastSize(v, b, b.Text())
	r.least, r.best = spanOf(v, design.Range{Least: least, Best: best}, l.short(), max(legible, r.legal))
	r.gap = 0.55
	return r
}

// joinedRow sets several blocks on one line.
func (l *layout) joinedRow(on roles, least, best float64, kinds ...label.Kind) (row, bool) {
	blocks := l.all(kinds...)
	if len(blocks) == 0 {
		return row{}, false
	}
	r := l.factRow(blocks[0], on, least, best, 0.8)
	var parts []typeset.Part
	for _, b := range blocks {
		one := l.factRow(b, on, least, best, 0.8)
		r.least, r.best, r.legal = max(r.least, one.least), max(r.best, one.best), max(r.legal, one.legal)
		parts = append(parts, typeset.Say(b.ID, bound(emphasised(b)), b.Exact))
	}
	r.para = typeset.New(r.para.Voice, parts...)
	return r, true
}

// bound keeps a short statement on one line.
func bound(runs []label.Run) []label.Run {
	if len(plain(runs)) > 32 {
		return runs
	}
	out := append([]label.Run(nil), runs...)
	for i := range out {
		out[i].Text = strings.ReplaceAll(out[i].Text, " ", string(typeset.NBSP))
	}
	return out
}

// cornerCode stands the record's code in the lower right corner of a region
// and gives what is left of it. part is the largest share of the card's
// shorter side it may take.
func (l *layout) cornerCode(in region, on roles, part float64) region {
	plan, ok := l.planCode(min(in.W/2, in.H))
	if !ok {
		return in
	}
	box, ok := l.cornerBox(plan, in, part)
	if !ok {
		l.lacks("the QR code", in, func(r region) bool {
			_, ok := l.enlarged(in, r).cornerBox(plan, r, part)
			return ok
		})
		return in
	}
	return l.beside(plan, in, box, on)
}

// cornerBox is where a corner's code would stand: smaller where its patch on a dark
// ground would meet the words below.
func (l *layout) cornerBox(plan codePlan, in region, part float64) (page.Rect, bool) {
	side := max(plan.least, min(share(l.short(), part), in.H, in.W/3))
	if in.oval.W > 0 {
		sp, ok := l.codeInOval(plan, in, side)
		return sp.box, ok
	}
	box, ok := l.cornerAt(plan, in, side)
	for s := side; l.colours.dark && !ok && s > plan.least; {
		s = max(plan.least, share(s, 0.97))
		box, ok = l.cornerAt(plan, in, s)
	}
	return box, ok
}

// cornerAt is the box of a code of one size.
func (l *layout) cornerAt(plan codePlan, in region, side unit.Length) (page.Rect, bool) {
	quiet := plan.blank(side)
	// The quiet zone may use the blank margin, not the edge of the paper.
	edge := max(0, quiet-l.blankFoot(in))
	if l.colours.dark { // its patch stands off the words below as the code would
		edge = quiet
	}
	box := page.Rect{X: in.X + in.W - side - edge, Y: in.Y + in.H - side - edge, W: side, H: side}
	return box, side <= in.H && side+quiet <= in.W/2 && box.Y >= in.Y && l.codeFits(box, quiet)
}

// beside puts a code and gives the region left of it.
func (l *layout) beside(plan codePlan, in region, box page.Rect, on roles) region {
	l.putCode(plan, box, on)
	quiet := plan.blank(box.W)
	hole := box.Grow(quiet+quiet/2, quiet)
	if l.colours.dark { // words stand off the edge of its patch
		hole = box.Grow(quiet*2, quiet)
	}
	in = in.less(hole)
	return in.inset(0, 0, max(0, in.X+in.W-hole.X), 0)
}
