package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/law/label"
)

// strip sets a seal strip that runs over the lid and down both sides: its
// words stand in the middle third, where the lid is, between ornaments.
func (l *layout) strip() {
	area := page.Rect{W: l.cell.W, H: l.cell.H}
	if l.look.Band.Edge == "top" || l.look.Band.Edge == "bottom" || l.look.Band.Edge == "around" || l.look.Band.Edge == "both" {
		area = l.band(area, l.look.Band)
	}
	short := l.short()
	in := l.inner(area, l.colours)
	in = l.reserve(in, l.colours, short, "frame", "left", "right", "ends")
	in = in.inset(share(short, 0.16), 0, share(short, 0.16), 0)
	k := stack{in: in, align: typeset.Centre, rise: 0.5, spread: 1.5}
	if b, ok := l.block(label.Seal); ok {
		v := l.voices.Subtitle
		v.Size.Least, v.Size.Best = 0.14, 0.3
		v.Track = min(v.Track, 0.06) // a whole sentence
		k.rows = append(k.rows, l.displayRow(b, v, l.colours, short, 2, 2))
	} else {
		k.rows = l.stripTitle(k.rows)
	}
	if b, ok := l.block(label.Brand); ok {
		v := l.voices.Brand
		v.Size.Least, v.Size.Best = 0.1, 0.15
		r := l.displayRow(b, v, l.colours, short, 1, 1)
		r.gap = 0.7
		k.rows = append(k.rows, r)
	}
	l.fit(k, "the words")
}

// stripTitle says the name on one line when there are no seal words.
func (l *layout) stripTitle(rows []row) []row {
	text := l.called()
	if text == "" {
		return rows
	}
	v := l.voices.Subtitle
	v.Size.Least, v.Size.Best = 0.14, 0.3
	b := label.Block{Kind: label.Identity, Runs: []label.Run{{Text: text}}, Exact: true}
	if id, ok := l.block(label.Identity); ok && normal(id.Text()) == normal(text) {
		b.ID, b.Min = id.ID, id.Min
	}
	return append(rows, l.displayRow(b, v, l.colours, l.short(), 2, 2))
}
