package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// lid sets a label for the top of the lid: name, maker or season, and the lot
// small, for finding a jar in a crate.
func (l *layout) lid() {
	area := page.Rect{W: l.cell.W, H: l.cell.H}
	round := l.cell.Shape == page.Ellipse
	over, band := l.overhang(), l.look.Band
	if over > 0 && band.Edge == "around" { // the cloth hangs down all of it
		lid := area.Grow(-over, -over)
		l.cloth = share(lid.W, band.Size)
		band.Size = float64(over+l.cloth) / float64(l.short())
		over = 0
	}
	if !round || band.Edge == "around" {
		area = l.band(area, band)
	}
	area = area.Grow(-over, -over) // what hangs over the edge of the lid is read by nobody
	short := min(area.W, area.H)
	in := l.inner(area, l.colours)
	in = l.reserve(in, l.colours, short, "frame", "around", "top", "bottom", "left", "right", "corners")
	k := stack{in: in, align: l.align(), rise: 0.5, spread: 1.7}
	if in.oval.W > 0 {
		k.align = typeset.Centre
	}
	k.rows = l.titleRows(l.colours, short)
	if r, ok := l.ruleRow(l.colours, short, k.align); ok && (l.has(label.Season) || l.has(label.Brand)) {
		k.rows = append(k.rows, r)
	}
	if b, ok := l.block(label.Season); ok {
		r := l.displayRow(b, l.voices.Hand, l.colours, short, 2, 0.8)
		r.gap = 0.55
		k.rows = append(k.rows, r)
	} else if b, ok := l.block(label.Brand); ok {
		r := l.displayRow(b, l.voices.Brand, l.colours, short, 2, 0.4)
		r.gap = 0.9
		k.rows = append(k.rows, r)
	}
	if b, ok := l.block(label.Lot); ok {
		k.rows = append(k.rows, l.noteRow(b, 0.6))
	}
	l.fit(k, "the name")
}

// coverLeast is how much wider than its lid a round of paper or cloth is that is
// tied over it, in tenths: a label is never so much too wide by mistake.
const coverLeast = 14

// overhang is how far a round that covers a lid hangs over its edge.
func (b brief) overhang() unit.Length {
	w, lid := min(b.cell.W, b.cell.H), b.content.LidAcross
	if lid <= 0 || w*10 < lid*coverLeast {
		return 0
	}
	return (w - lid) / 2
}

// noteRow sets a block in the small voice as a row of a stack.
func (l *layout) noteRow(b label.Block, weight float64) row {
	v := l.voice(l.voices.Small, l.colours)
	p := l.smallPassage(b, l.colours, l.voices.Small)
	return row{
		para: typeset.New(v, typeset.Say(b.ID, bound(emphasised(b)), true)), legal: leastSize(v, b, b.Text()), least: p.least, best: p.best,
		lines: 2, ragged: typeset.Balanced, weight: weight * 0.5, gap: 0.9, name: string(b.Kind),
	}
}
