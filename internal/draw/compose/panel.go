package compose

import (
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// panel sets a principal display panel in area: name, maker and net quantity,
// with the look's ornaments. extra lists further blocks it must bear.
func (s *setter) panel(area page.Rect, on roles, extra []label.Block) bool {
	short := min(area.W, area.H)
	in := s.inner(area, on)
	in = s.reserve(in, on, short, "frame", "left", "right", "ends", "corners", "corner", "bottom", "beside")
	upper, ok := s.net(in, area, on, short)
	if !ok {
		return false
	}
	upper = s.reserve(upper, on, short, "top", "around")
	return s.name(upper, on, short, extra)
}

// inner draws the frame and gives the region inside the margin.
func (s *setter) inner(area page.Rect, on roles) region {
	ellipse := s.cell.Shape == page.Ellipse
	short := min(area.W, area.H)
	_, inside := s.frameInset(short)
	if line := s.innerLine(short); line > 0 {
		inside = max(inside, line+share(short, 0.025))
	}
	m := max(share(short, s.look.Margin), s.cell.Safe, inside)
	s.frameLine(area, on, ellipse)
	return s.shaped(area.Grow(-m, -m))
}

func (s *setter) align() typeset.Align {
	if s.look.Align == "left" && s.cell.Shape != page.Ellipse {
		return typeset.Left
	}
	return typeset.Centre
}

// shaped is the part of a box that lies on the label: an oval's inside, what a
// tag's cut or a rounded corner leaves.
func (s *setter) shaped(r page.Rect) region {
	in := region{Rect: r}
	if s.cell.Shape == page.Ellipse {
		m := max(s.cell.Safe, min(r.X, r.Y, s.cell.W-r.X-r.W, s.cell.H-r.Y-r.H))
		in.oval = page.Rect{W: s.cell.W, H: s.cell.H}.Grow(-m, -m)
		return in
	}
	in.holes = s.beyond()
	if len(in.holes) == 0 {
		in.air = min(max(0, r.X-s.cell.Safe), 3*unit.Millimetre/2)
		if line := s.innerLine(s.short()); line > 0 {
			in.air = max(0, min(in.air, r.X-line-hairline))
		}
	}
	return in
}

// span gives a display voice's sizes on a panel.
func spanOf(v typeset.Voice, d design.Range, short, least unit.Length) (lo, hi unit.Length) {
	lo, hi = share(short, d.Least), share(short, d.Best)
	lo = max(lo, least)
	return lo, max(lo, hi)
}

// legible is the least size of type no law speaks of: 5 pt, common practice,
// no source.
var legible = unit.Points(5)

// name sets title, subtitle, maker and extra blocks in a region.
func (s *setter) name(in region, on roles, short unit.Length, extra []label.Block) bool {
	short = max(short, min(in.W*2/5, in.H)) // a low panel is wide
	k := stack{in: in, align: s.align(), rise: 0.46, spread: 1.9, largest: s.netSize, sides: s.sides}
	k.rows = s.titleRows(on, short)
	s.body = in
	if r, ok := s.ruleRow(on, short, k.align); ok && (s.has(label.Brand) || len(extra) > 0) {
		k.rows = append(k.rows, r)
	}
	if b, ok := s.block(label.Brand); ok && (s.look.Brand != "none" || b.Required) {
		r := s.displayRow(b, s.d.Voices.Brand, on, short, 2, 1)
		r.gap, r.weight = 0.9, 0.6
		if s.look.Brand == "above" {
			k.rows = append([]row{r}, k.rows...)
			k.rows[1].gap = 0.55
		} else {
			k.rows = append(k.rows, r)
		}
	}
	for _, b := range extra {
		r := s.textRow(b, on, short)
		k.rows = append(k.rows, r)
	}
	return s.fit(k, "the name")
}

// fit places a stack's best setting or reports what it lacks.
func (s *setter) fit(k stack, what string) bool {
	if len(k.rows) == 0 {
		return true
	}
	k.rows[0].gap = 0
	best, ok := k.best()
	if !ok {
		k.relax()
		best, ok = k.best()
	}
	if !ok {
		s.lacks(k, what)
		return false
	}
	s.noteTitle(k.rows, best)
	if s.measuring {
		return true
	}
	items, _ := k.place(best)
	s.put(items...)
	for i, r := range k.rows {
		if !r.names {
			continue
		}
		box := s.inkOf(items[k.from[i]:k.from[i+1]])
		if s.nameBox.W > 0 && box.W > k.in.W-2*s.sides {
			break // drawings stand beside the lines above it
		}
		s.nameBox = joined(s.nameBox, box)
	}
	return true
}

// noteTitle remembers how large the first line of the name is set.
func (s *setter) noteTitle(rows []row, as setting) {
	for i, r := range rows {
		if r.names {
			s.title1, s.atBest = as.sizes[i], as.sizes[i] >= r.best
			return
		}
	}
}

// joined is the box of two boxes, either of which may be empty.
func joined(a, b page.Rect) page.Rect {
	switch {
	case a.W == 0:
		return b
	case b.W == 0:
		return a
	}
	return a.Union(b)
}

// relax lets rows go below the design's least size, to the law's or to what
// can be read, and closes the gaps.
func (k *stack) relax() {
	for i := range k.rows {
		r := &k.rows[i]
		if r.draw == nil {
			r.least = min(r.least, max(r.legal, legible))
		}
		r.gap *= 0.6
	}
}

// lacks reports by how much a stack is too small.
func (s *setter) lacks(k stack, what string) {
	need, wide := unit.Length(0), unit.Length(0)
	for _, r := range k.rows {
		if r.draw != nil {
			need += r.high
			continue
		}
		lines := len(r.narrow)
		wide = max(wide, typeset.At(r.narrow[lines-1], r.least))
		need += share(r.least, r.gap) + r.height(r.least, r.linesFor(k.in.W))
	}
	if wide > k.in.W {
		s.overflow(what, wide, k.in.W, true)
		return
	}
	s.overflow(what, max(need, k.in.H+100*unit.Micrometre), k.in.H, false)
}

func (r row) linesFor(w unit.Length) int {
	for n, narrow := range r.narrow {
		if typeset.At(narrow, r.least) <= w {
			return n + 1
		}
	}
	return len(r.narrow)
}

// has reports whether the content has a block of a kind.
func (s *setter) has(k label.Kind) bool { _, ok := s.block(k); return ok }

// titleRows is the display name, and the statement of identity when the name
// does not already say it.
func (s *setter) titleRows(on roles, short unit.Length) []row {
	id, hasID := s.block(label.Identity)
	shown := normal(s.title + " " + s.sub)
	whole := hasID && normal(id.Text()) == shown
	var rows []row
	size := s.d.Voices.Title.Size
	if s.look.Title.Best > 0 {
		size = s.look.Title
	}
	add := func(text string, v design.Voice, span design.Range, blk label.Block, lines int, weight, gap float64) {
		if strings.TrimSpace(text) == "" {
			return
		}
		vc := s.voice(v, on)
		if !blk.Exact {
			text = recase(vc, text)
		}
		legal := leastSize(vc, blk, text)
		lo, hi := spanOf(vc, span, short, max(legible, legal))
		rows = append(rows, row{
			para:  typeset.New(vc, typeset.Say(blk.ID, []label.Run{{Text: text, Bold: blk.Bold}}, true)),
			least: lo, best: hi, legal: legal, lines: lines, ragged: typeset.Balanced, weight: weight, gap: gap, name: "the name",
			names: true, grows: true, part: s.prominence(blk),
		})
	}
	both := label.Block{}
	if whole {
		both = id
	}
	add(s.title, s.d.Voices.Title, size, both, 3, 3, 0.4)
	sub := both
	if hasID && !whole && normal(id.Text()) == normal(s.sub) {
		sub, whole = id, true
	}
	add(s.sub, s.d.Voices.Subtitle, s.subSize(size), sub, 2, 1.6, 0.32)
	repeats := (s.piece == label.Lid || s.piece == label.Tag) && len(rows) > 0 // the jar's label says it
	if hasID && (!whole || len(rows) == 0) && !repeats {
		add(id.Text(), s.d.Voices.Subtitle, s.subSize(size), id, 2, 1.6, 0.4)
	}
	return rows
}

// prominence is the least size of a block in percent of the largest print
// beside it, on labels that have a display panel.
func (s *setter) prominence(b label.Block) int {
	if s.piece != label.Front && s.piece != label.Wrap {
		return 0
	}
	return b.OfLargest
}

// subSize keeps the subtitle in proportion when a look overrides the title.
func (s *setter) subSize(title design.Range) design.Range {
	v, own := s.d.Voices.Subtitle.Size, s.d.Voices.Title.Size
	f := title.Best / own.Best
	return design.Range{Least: v.Least * f, Best: v.Best * f}
}

// normal makes texts comparable: letters and figures only.
func normal(s string) string {
	return strings.Join(strings.Fields(strings.ToLower(s)), " ")
}

// displayRow sets a block in a display voice.
func (s *setter) displayRow(b label.Block, v design.Voice, on roles, short unit.Length, lines int, weight float64) row {
	vc := s.voice(v, on)
	runs := cased(vc, b)
	legal := leastSize(vc, b, plain(runs))
	lo, hi := spanOf(vc, v.Size, short, max(legible, legal))
	return row{
		para:  typeset.New(vc, typeset.Say(b.ID, runs, b.Exact)),
		least: lo, best: hi, legal: legal, lines: lines, ragged: typeset.Balanced, weight: weight, gap: 0.6, name: string(b.Kind),
	}
}

// textRow sets a block in the text voice as a row of a stack.
func (s *setter) textRow(b label.Block, on roles, short unit.Length) row {
	vc := s.voice(s.d.Voices.Text, on)
	vc.Leading = tight // few lines, in a small space
	runs := emphasised(b)
	legal := leastSize(vc, b, b.Text())
	lo := max(legal, legible)
	return row{
		para:  typeset.New(vc, typeset.Say(b.ID, runs, b.Exact)),
		legal: legal, least: lo, best: max(lo, share(short, 0.05)), lines: 6, ragged: typeset.Balanced, weight: 0.5, gap: 0.95, name: string(b.Kind),
	}
}

func plain(runs []label.Run) string {
	s := ""
	for _, r := range runs {
		s += r.Text
	}
	return s
}

// emphasised makes a block bold where the law asks for bold.
func emphasised(b label.Block) []label.Run {
	if !b.Bold {
		return b.Runs
	}
	out := append([]label.Run(nil), b.Runs...)
	for i := range out {
		out[i].Bold = true
	}
	return out
}
