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
func (s *setter) caseLabel() {
	area := s.band(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Band)
	on, short := s.colours, min(area.W, area.H)
	in := s.inner(area, on)
	in = s.reserve(in, on, short, "frame", "left", "right", "corners", "corner", "bottom", "top")
	head, foot := in, in
	head.H = share(in.H, 0.5)
	foot = in.inset(0, share(in.H, 0.56), 0, 0)
	s.headed(head, on, short)
	foot = s.cornerCode(foot, on, 0.34)
	k := stack{in: foot, align: typeset.Left, rise: 1, spread: 1.4}
	if b, ok := s.block(label.Count); ok {
		k.rows = append(k.rows, s.factRow(b, on, 0.055, 0.1, 1.5))
	}
	if b, ok := s.block(label.Net); ok {
		k.rows = append(k.rows, s.factRow(b, on, 0.04, 0.062, 1))
	}
	if r, ok := s.joinedRow(on, 0.035, 0.05, label.Lot, label.Date); ok {
		k.rows = append(k.rows, r)
	}
	s.fit(k, "the facts")
	s.decorate()
}

// headed sets maker and name at the top of a card, from the left.
func (s *setter) headed(in region, on roles, short unit.Length) {
	beside := s.headRows(in, on, short)
	if s.cornerBox.H > 0 { // under the corner's drawing, where that leaves the name more
		low := in
		low.holes = slices.DeleteFunc(slices.Clone(in.holes), func(h page.Rect) bool { return h == s.cornerBox })
		low = low.inset(0, max(0, s.cornerBox.Y+s.cornerBox.H-in.Y), 0, 0)
		under := s.headRows(low, on, short)
		a, okA := beside.best()
		b, okB := under.best()
		if okB && (!okA || b.score > a.score*1.15) {
			beside = under
		}
	}
	s.fit(beside, "the name")
}

// headRows is the stack of a card's head.
func (s *setter) headRows(in region, on roles, short unit.Length) stack {
	k := stack{in: in, align: s.align(), rise: 0, spread: 1.3}
	if b, ok := s.block(label.Brand); ok {
		k.rows = append(k.rows, s.displayRow(b, s.d.Voices.Brand, on, short, 1, 0.6))
	}
	rows := s.titleRows(on, short)
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
func (s *setter) factRow(b label.Block, on roles, least, best, weight float64) row {
	r := s.displayRow(b, s.d.Voices.Text, on, s.short(), 3, weight)
	v := s.voice(s.d.Voices.Text, on)
	v.Leading = 1.25
	r.para = typeset.New(v, typeset.Say(b.ID, emphasised(b), b.Exact))
	r.legal = leastSize(v, b, b.Text())
	r.least, r.best = spanOf(v, design.Range{Least: least, Best: best}, s.short(), max(legible, r.legal))
	r.gap = 0.55
	return r
}

// joinedRow sets several blocks on one line.
func (s *setter) joinedRow(on roles, least, best float64, kinds ...label.Kind) (row, bool) {
	blocks := s.all(kinds...)
	if len(blocks) == 0 {
		return row{}, false
	}
	r := s.factRow(blocks[0], on, least, best, 0.8)
	var parts []typeset.Part
	for _, b := range blocks {
		one := s.factRow(b, on, least, best, 0.8)
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
func (s *setter) cornerCode(in region, on roles, part float64) region {
	plan, ok := s.planCode(min(in.W/2, in.H))
	if !ok {
		return in
	}
	side := max(plan.least, min(share(s.short(), part), in.H, in.W/3))
	quiet := plan.blank(side)
	if in.oval.W > 0 {
		return s.cornerCodeInOval(plan, in, side, on)
	}
	if side > in.H || side+quiet > in.W/2 {
		s.overflow("the QR code", side+quiet, min(in.H, in.W/2), true)
		return in
	}
	// The quiet zone may use the blank margin, not the edge of the paper.
	edge := max(0, quiet-s.blankFoot(in))
	box := page.Rect{X: in.X + in.W - side - edge, Y: in.Y + in.H - side - edge, W: side, H: side}
	if !s.codeFits(box, quiet) || box.Y < in.Y {
		s.overflow("the QR code", side+2*quiet, min(in.H, in.W/2), true)
		return in
	}
	return s.beside(plan, in, box, on)
}

func (s *setter) cornerCodeInOval(plan codePlan, in region, side unit.Length, on roles) region {
	sp, ok := s.codeInOval(plan, in, side)
	if !ok {
		s.overflow("the QR code", max(in.W/2+100*unit.Micrometre, side+2*plan.blank(side)), in.W/2, true)
		return in
	}
	return s.beside(plan, in, sp.box, on)
}

// beside puts a code and gives the region left of it.
func (s *setter) beside(plan codePlan, in region, box page.Rect, on roles) region {
	s.putCode(plan, box, on)
	quiet := plan.blank(box.W)
	hole := box.Grow(quiet+quiet/2, quiet)
	in.holes = append(in.holes[:len(in.holes):len(in.holes)], hole)
	return in.inset(0, 0, max(0, in.X+in.W-hole.X), 0)
}
