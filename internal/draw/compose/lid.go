package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/law/label"
)

// lid sets a label for the top of the lid: name, maker or season, and the lot
// small, for finding a jar in a crate.
func (s *setter) lid() {
	area := page.Rect{W: s.cell.W, H: s.cell.H}
	round := s.cell.Shape == page.Ellipse
	if !round || s.look.Band.Edge == "around" {
		area = s.band(area, s.look.Band)
	}
	short := s.short()
	in := s.inner(area, s.colours)
	in = s.reserve(in, s.colours, short, "frame", "around", "top", "bottom", "left", "right", "corners")
	k := stack{in: in, align: s.align(), rise: 0.5, spread: 1.7}
	if in.oval.W > 0 {
		k.align = typeset.Centre
	}
	k.rows = s.titleRows(s.colours, short)
	if b, ok := s.block(label.Season); ok {
		r := s.displayRow(b, s.d.Voices.Hand, s.colours, short, 2, 0.8)
		r.gap = 0.55
		k.rows = append(k.rows, r)
	} else if b, ok := s.block(label.Brand); ok {
		r := s.displayRow(b, s.d.Voices.Brand, s.colours, short, 2, 0.4)
		r.gap = 0.9
		k.rows = append(k.rows, r)
	}
	if b, ok := s.block(label.Lot); ok {
		k.rows = append(k.rows, s.noteRow(b, 0.6))
	}
	s.fit(k, "the name")
	s.decorate()
}

// noteRow sets a block in the small voice as a row of a stack.
func (s *setter) noteRow(b label.Block, weight float64) row {
	v := s.voice(s.d.Voices.Small, s.colours)
	p := s.smallPassage(b, s.colours, s.d.Voices.Small)
	return row{
		para: typeset.New(v, typeset.Say(b.ID, bound(emphasised(b)), true)), legal: leastSize(v, b, b.Text()), least: p.least, best: p.best,
		lines: 2, ragged: typeset.Balanced, weight: weight * 0.5, gap: 0.9, name: string(b.Kind),
	}
}
