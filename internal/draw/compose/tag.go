package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// holeAcross is the hole of a hang tag.
const holeAcross = 5 * unit.Millimetre

// hole is where a tag is punched.
func (l *layout) hole() page.Rect {
	d := min(holeAcross, l.short()/6)
	y := max(l.cell.Safe+hairline, share(l.cell.H, 0.065))
	return page.Rect{X: l.cell.W/2 - d/2, Y: y, W: d, H: d}
}

// tag sets a gift tag: hole, name in its wreath, who it is for and from, a
// message and a serving idea.
func (l *layout) tag() {
	short := l.short()
	area := page.Rect{W: l.cell.W, H: l.cell.H}
	if l.look.Band.Edge == "bottom" {
		area = l.band(area, l.look.Band)
	}
	in := l.inner(area, l.colours)
	if l.cell.Shape == page.TagShape { // a card or an envelope hangs on nothing
		hole := l.hole()
		l.punch(hole)
		top := hole.Y + hole.H + share(short, 0.05)
		in = in.inset(0, max(0, top-in.Y), 0, 0)
	}
	in = l.reserve(in, l.colours, short, "frame", "left", "right", "bottom")
	foot := l.tagFoot(in, short, true)
	body := in
	body.H = max(0, foot-in.Y-share(short, 0.04))
	body.H -= body.H % unit.Millimetre // by steps, so that tags of other words share one wreath
	body = l.wreathSquare(body)
	body = l.reserve(body, l.colours, short, "top", "around")
	k := stack{in: body, align: l.align(), rise: 0.47, spread: 1.6, rows: l.titleRows(l.colours, short)}
	if body.oval.W > 0 {
		k.align = typeset.Centre
	} else if k.align == typeset.Centre {
		k.in = body.inset(share(body.W, 0.035), 0, share(body.W, 0.035), 0)
	}
	if r, ok := l.ruleRow(l.colours, short, k.align); ok {
		k.rows = append(k.rows, r)
	}
	l.fit(k, "the name")
}

// roomy is the least height of the blank for the name, as a share of its
// width, that leaves a serving idea its place beside a message.
const roomy = 0.86

// wreathSquare keeps a ring of leaves round when it would be a long oval.
func (l *layout) wreathSquare(in region) region {
	for _, o := range l.look.Ornaments {
		if o.Spot == "around" && in.H > in.W {
			spare := in.H - in.W
			return in.inset(0, share(spare, 0.42), 0, spare-share(spare, 0.42))
		}
	}
	return in
}

// punch marks the hole: bare paper in a fine line to cut along.
func (l *layout) punch(hole page.Rect) {
	p := ellipsePath(hole)
	white, line := l.pal.White, l.pal.Soft
	p.Fill, p.Stroke, p.Width, p.Block = &white, &line, hairline, "hole"
	l.put(p)
	l.kept = append(l.kept, hole.Grow(unit.Millimetre, unit.Millimetre))
}

// tagFoot sets the written lines from the foot up and gives their top.
func (l *layout) tagFoot(in region, short unit.Length, idea bool) unit.Length {
	y := in.Y + in.H
	was := l.draft
	if b, ok := l.block(label.Allergens); ok {
		y = l.footNote(b, in, y) - share(short, 0.05)
	}
	if b, ok := l.block(label.Serve); ok && idea {
		y = l.footNote(b, in, y) - share(short, 0.07)
	}
	if b, ok := l.block(label.Message); ok {
		y = l.written(b, in, y, short) - share(short, 0.06)
	}
	for _, k := range []label.Kind{label.From, label.To} {
		if b, ok := l.block(k); ok {
			y = l.line(b, in, y, short) - share(short, 0.055)
		}
	}
	if idea && l.has(label.Serve) && l.has(label.Message) && y-in.Y < share(in.W, roomy) {
		l.draft = was // the name is worth more
		return l.tagFoot(in, short, false)
	}
	return y
}

// footNote sets a small centred note ending at y and gives its top.
func (l *layout) footNote(b label.Block, in region, y unit.Length) unit.Length {
	p := l.smallPassage(b, l.colours, l.voices.Small)
	p.ragged = typeset.Balanced
	return l.raise([]passage{p}, in, y, typeset.Centre, string(b.Kind), 0.16)
}

// written sets a message as a person would write it.
func (l *layout) written(b label.Block, in region, y, short unit.Length) unit.Length {
	v := l.voice(l.voices.Hand, l.colours)
	v.KernMin = 10
	lo, hi := spanOf(v, l.voices.Hand.Size, short, max(unit.Points(8), leastSize(v, b, b.Text())))
	p := passage{ragged: typeset.Balanced, para: typeset.New(v, typeset.Say(b.ID, b.Runs, b.Exact)), least: lo, best: min(hi, share(short, 0.085))}
	p.best = max(p.least, p.best)
	return l.raise([]passage{p}, in, y, typeset.Centre, string(b.Kind), 0.34)
}

// raise flows passages in at most part of the region's height and moves them
// down to end at y; it gives their top.
func (l *layout) raise(ps []passage, in region, y unit.Length, a typeset.Align, what string, part float64) unit.Length {
	room := in
	room.H = min(y-in.Y, share(in.H, part))
	f := flow(ps, room, a)
	if !f.fits {
		l.lacks("the "+what, in, func(r region) bool {
			foot := in.Y + in.H - y
			r.H = min(r.H-foot, share(r.H, part))
			return f.again(r)
		})
		return y
	}
	room.Y += y - f.bottom // lower down a rounded corner may be in the way
	room.H = y - room.Y
	if f = flow(ps, room, a); !f.fits {
		l.lacks("the "+what, room, f.again)
		return y
	}
	l.put(f.items...)
	return room.Y
}

// line sets "for" or "from" with a name by hand above a line. The block's
// first run is the word, the rest the name; a block of one run is the name.
func (l *layout) line(b label.Block, in region, y, short unit.Length) unit.Length {
	word, name := splitName(b)
	small := l.voice(l.voices.Text, l.colours)
	small.Colour = l.colours.text("accent", textContrast)
	size := max(unit.Points(6.5), share(short, 0.055), leastSize(small, b, word))
	x, right := in.chord(y-share(short, 0.12), y)
	hand := l.voice(l.voices.Hand, l.colours)
	p := typeset.New(hand, typeset.Say(b.ID, []label.Run{{Text: name}}, b.Exact))
	_, hi := spanOf(hand, l.voices.Hand.Size, short, max(unit.Points(7), leastSize(hand, b, name)))
	ink := reachOf(p)
	base := y - max(share(short, 0.02), typeset.At(ink.bottom, hi)+2*hairline)
	if word != "" {
		q := typeset.New(small, typeset.Say(b.ID, []label.Run{{Text: word}}, true))
		l.put(q.SetLine(0, len(q.Words), size, page.Point{X: x, Y: base})...)
		x += max(typeset.At(q.LineWidth(0, len(q.Words))+350, size), share(in.W, 0.2))
	}
	room := right - x - share(short, 0.04)
	w := p.LineWidth(0, len(p.Words))
	set := hi
	if w > 0 {
		set = min(hi, room*1000/unit.Length(w))
	}
	if floor := max(unit.Points(leastHand), leastSize(hand, b, name)); set < floor { // smaller than is liked, never than can be read
		l.lacksWidth("the name "+string(b.Kind), typeset.At(w, floor), region{Rect: page.Rect{W: room}})
		return y
	}
	l.keepRoom(b, room)
	l.put(p.SetLine(0, len(p.Words), set, page.Point{X: x + share(short, 0.02), Y: base})...)
	c := l.colours.text("accent", largeContrast)
	l.put(linePath(page.Point{X: x, Y: y}, page.Point{X: right, Y: y}, hairline, c))
	return base - typeset.At(max(ink.top, 600), set)
}

// leastHand is the smallest type of a long name, in points (common practice, no
// source).
const leastHand = 5.5

// splitName parts the word before a name, which is bold or has a name after
// it, from the name.
func splitName(b label.Block) (word, name string) {
	if len(b.Runs) == 0 || len(b.Runs) == 1 && !b.Runs[0].Bold {
		return "", b.Text()
	}
	for _, r := range b.Runs[1:] {
		name += r.Text
	}
	return b.Runs[0].Text, name
}
