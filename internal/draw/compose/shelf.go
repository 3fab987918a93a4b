package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// shelf sets a price card for the stall: name and jar, a large price with the
// price per unit beside it, the allergen line, and the record's code.
func (s *setter) shelf() {
	area := s.band(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Band)
	on, short := s.colours, min(area.W, area.H)
	in := s.inner(area, on)
	in = s.reserve(in, on, short, "frame", "left", "right", "corners", "corner", "top", "bottom")
	in, ok := s.cardFoot(in, on)
	if !ok {
		return
	}
	head := in
	head.H = share(in.H, 0.5)
	k := stack{in: head, align: s.align(), rise: 0, spread: 1.3, rows: s.titleRows(on, short)}
	if r, ok := s.jarRow(on); ok {
		k.rows = append(k.rows, r)
	}
	s.fit(k, "the name")
	tail := in.inset(0, share(in.H, 0.56), 0, 0)
	tail = s.cornerCode(tail, on, 0.3)
	s.price(tail, on, short)
	s.decorate()
}

// jarRow says what jar it is: "10 oz jar", and the net quantity.
func (s *setter) jarRow(on roles) (row, bool) {
	var parts []typeset.Part
	jar := label.Block{}
	r := row{}
	if text := s.drawn(s.c.JarText, "", "the jar", nil); text != "" {
		jar.Runs = []label.Run{{Text: text}}
		r = s.factRow(jar, on, 0.045, 0.068, 0.8)
		parts = append(parts, typeset.Say("", jar.Runs, false))
	}
	if b, ok := s.block(label.Net); ok {
		n := s.factRow(b, on, 0.045, 0.068, 0.8)
		r.least, r.best, r.legal = max(r.least, n.least), max(r.best, n.best), max(r.legal, n.legal)
		if r.para.Words == nil {
			r = n
		}
		parts = append(parts, typeset.Say(b.ID, b.Runs, b.Exact))
	}
	if len(parts) == 0 {
		return row{}, false
	}
	r.para = typeset.New(r.para.Voice, parts...)
	r.gap = 0.75
	return r, true
}

// cardFoot sets the allergen line along the foot of a card and gives the
// region above it.
func (s *setter) cardFoot(in region, on roles) (region, bool) {
	blocks := s.all(label.Allergens, label.Advisory)
	if len(blocks) == 0 {
		return in, true
	}
	v := s.d.Voices.Text
	v.Size = design.Range{Least: 6.5, Best: max(6.5, min(14, s.short().Points()*0.042))}
	var ps []passage
	for _, b := range blocks {
		p := s.smallPassage(b, on, v)
		p.gap = 0.3
		ps = append(ps, p)
	}
	missing := len(s.over)
	top := s.raise(ps, in, in.Y+in.H, s.align(), "allergen line", 0.3)
	in.H = max(0, top-in.Y-share(s.short(), 0.05))
	return in, len(s.over) == missing
}

// price sets the price as large as it goes, the unit price on its baseline.
func (s *setter) price(in region, on roles, short unit.Length) {
	b, ok := s.block(label.Price)
	if !ok {
		return
	}
	v := s.voice(s.d.Voices.Price, on)
	p := typeset.New(v, typeset.Say(b.ID, b.Runs, true))
	lo, hi := spanOf(v, s.d.Voices.Price.Size, short, legible)
	unitBlock, hasUnit := s.block(label.UnitPrice)
	small := s.voice(s.d.Voices.Text, on)
	smallSize := max(unit.Points(6.5), leastSize(small, unitBlock, unitBlock.Text()), share(short, 0.06))
	q := typeset.New(small, typeset.Say(unitBlock.ID, unitBlock.Runs, true))
	beside := unit.Length(0)
	if hasUnit {
		beside = typeset.At(q.LineWidth(0, len(q.Words)), smallSize) + share(short, 0.05)
	}
	ink := reachOf(p)
	w := p.LineWidth(0, len(p.Words))
	size := hi
	if w > 0 {
		size = min(size, max(0, in.W-beside)*1000/unit.Length(w))
	}
	size = min(size, in.H*1000/unit.Length(max(1, ink.top+ink.bottom)))
	if size < lo {
		s.overflow("the price", typeset.At(w, lo)+beside, in.W, true)
		return
	}
	base := in.Y + in.H - typeset.At(ink.bottom, size)
	x, right := ink.chord(in, base, size)
	for range 4 { // the corners leave less than the full width
		if room := right - x - beside; typeset.At(w, size) > room && w > 0 {
			size = max(0, room) * 1000 / unit.Length(w)
			base = in.Y + in.H - typeset.At(ink.bottom, size)
			x, right = ink.chord(in, base, size)
		}
	}
	if need := typeset.At(w, size) + beside; right-x < need || size < lo {
		s.overflow("the price", typeset.At(w, max(size, lo))+beside, right-x, true)
		return
	}
	s.put(p.SetLine(0, len(p.Words), size, page.Point{X: x, Y: base})...)
	if hasUnit {
		x += typeset.At(w, size) + share(short, 0.05)
		s.put(q.SetLine(0, len(q.Words), smallSize, page.Point{X: x, Y: base})...)
	}
}
