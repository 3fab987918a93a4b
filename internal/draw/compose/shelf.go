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
func (l *layout) shelf() {
	in, on, short := l.card("frame", "left", "right", "corners", "corner", "top", "bottom")
	in, ok := l.cardFoot(in, on)
	if !ok {
		return
	}
	head := in
	head.H = share(in.H, 0.5)
	k := stack{in: head, align: l.align(), rise: 0, spread: 1.3, rows: l.titleRows(on, short)}
	if r, ok := l.jarRow(on); ok {
		k.rows = append(k.rows, r)
	}
	l.fit(k, "the name")
	tail := in.inset(0, share(in.H, 0.56), 0, 0)
	tail = l.cornerCode(tail, on, 0.3)
	l.price(tail, on, short)
}

// jarRow says what jar it is: "10 oz jar", and the net quantity.
func (l *layout) jarRow(on roles) (row, bool) {
	var parts []typeset.Part
	jar := label.Block{}
	r := row{}
	if l.jar != "" {
		jar.Runs = []label.Run{{Text: l.jar}}
		r = l.factRow(jar, on, 0.045, 0.068, 0.8)
		parts = append(parts, typeset.Say("", jar.Runs, false))
	}
	if b, ok := l.block(label.Net); ok {
		n := l.factRow(b, on, 0.045, 0.068, 0.8)
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
func (l *layout) cardFoot(in region, on roles) (region, bool) {
	blocks := l.all(label.Allergens, label.Advisory)
	if len(blocks) == 0 {
		return in, true
	}
	v := l.voices.Text
	v.Size = design.Range{Least: 6.5, Best: max(6.5, min(14, l.short().Points()*0.042))}
	var ps []passage
	for _, b := range blocks {
		p := l.smallPassage(b, on, v)
		p.gap = 0.3
		ps = append(ps, p)
	}
	missing := len(l.missing)
	top := l.raise(ps, in, in.Y+in.H, l.align(), "allergen line", 0.3)
	in.H = max(0, top-in.Y-share(l.short(), 0.05))
	return in, len(l.missing) == missing
}

// price sets the price as large as it goes, the unit price on its baseline.
func (l *layout) price(in region, on roles, short unit.Length) {
	b, ok := l.block(label.Price)
	if !ok {
		return
	}
	v := l.voice(l.voices.Price, on)
	p := typeset.New(v, typeset.Say(b.ID, b.Runs, true))
	lo, hi := spanOf(v, l.voices.Price.Size, short, legible)
	unitBlock, hasUnit := l.block(label.UnitPrice)
	small := l.voice(l.voices.Text, on)
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
		l.lacks("the price", in, func(r region) bool {
			return r.W >= typeset.At(w, lo)+beside && r.H >= typeset.At(ink.top+ink.bottom, lo)
		})
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
		l.lacksWidth("the price", need, region{Rect: page.Rect{W: right - x}})
		return
	}
	l.put(p.SetLine(0, len(p.Words), size, page.Point{X: x, Y: base})...)
	if hasUnit {
		x += typeset.At(w, size) + share(short, 0.05)
		l.put(q.SetLine(0, len(q.Words), smallSize, page.Point{X: x, Y: base})...)
	}
}
