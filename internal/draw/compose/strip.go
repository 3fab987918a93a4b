package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/law/label"
)

// strip sets a seal strip that runs over the lid and down both sides: its
// words stand in the middle third, where the lid is, between ornaments.
func (s *setter) strip() {
	area := page.Rect{W: s.cell.W, H: s.cell.H}
	if s.look.Band.Edge == "top" || s.look.Band.Edge == "bottom" || s.look.Band.Edge == "around" || s.look.Band.Edge == "both" {
		area = s.band(area, s.look.Band)
	}
	short := s.short()
	in := s.inner(area, s.colours)
	in = s.reserve(in, s.colours, short, "frame", "left", "right", "ends")
	in = in.inset(share(short, 0.16), 0, share(short, 0.16), 0)
	k := stack{in: in, align: typeset.Centre, rise: 0.5, spread: 1.5}
	if b, ok := s.block(label.Seal); ok {
		v := s.d.Voices.Subtitle
		v.Size.Least, v.Size.Best = 0.14, 0.3
		v.Track = min(v.Track, 0.06) // a whole sentence
		k.rows = append(k.rows, s.displayRow(b, v, s.colours, short, 2, 2))
	} else {
		k.rows = s.stripTitle(k.rows)
	}
	if b, ok := s.block(label.Brand); ok {
		v := s.d.Voices.Brand
		v.Size.Least, v.Size.Best = 0.1, 0.15
		r := s.displayRow(b, v, s.colours, short, 1, 1)
		r.gap = 0.7
		k.rows = append(k.rows, r)
	}
	s.fit(k, "the words")
	s.decorate()
}

// stripTitle says the name on one line when there are no seal words.
func (s *setter) stripTitle(rows []row) []row {
	text := s.title
	if s.sub != "" {
		text += " " + s.sub
	}
	if text == "" {
		return rows
	}
	v := s.d.Voices.Subtitle
	v.Size.Least, v.Size.Best = 0.14, 0.3
	b := label.Block{Kind: label.Identity, Runs: []label.Run{{Text: text}}, Exact: true}
	if id, ok := s.block(label.Identity); ok && normal(id.Text()) == normal(text) {
		b.ID, b.Min = id.ID, id.Min
	}
	return append(rows, s.displayRow(b, v, s.colours, s.short(), 2, 2))
}
