package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/law/label"
)

// sign sets a sheet to stand at the point of sale: the words the law
// prescribes there as large as they go, the name of the food over them, and
// what is in it and who made it at the foot. Where no words are prescribed, the
// name stands alone in their place.
func (s *setter) sign() {
	area := s.band(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Band)
	on, short := s.colours, min(area.W, area.H)
	in := s.inner(area, on)
	in = s.reserve(in, on, short, "frame", "left", "right", "corners", "corner", "top", "bottom", "beside", "around")
	in = in.inset(share(short, 0.03), share(short, 0.02), share(short, 0.03), share(short, 0.02))
	in, ok := s.signFoot(in, on)
	if !ok {
		return
	}
	k := stack{in: in, align: s.align(), rise: 0.4, spread: 2}
	k.rows = s.titleRows(on, short)
	if words, ok := s.block(label.SignWords); ok {
		for i := range k.rows { // the food is the lesser thing here
			r := &k.rows[i]
			r.least, r.best = max(legible, share(short, 0.025)), share(short, 0.05)
			r.weight, r.grows = r.weight/4, false
		}
		v := s.d.Voices.Title
		v.Size = design.Range{Least: 0.04, Best: 0.1}
		r := s.displayRow(words, v, on, short, 8, 4)
		r.gap = 0.8
		k.rows = append(k.rows, r)
	}
	s.fit(k, "the words of the sign")
	s.decorate()
}

// signFoot sets ingredients, allergens and maker along the foot and gives the
// region above them.
func (s *setter) signFoot(in region, on roles) (region, bool) {
	v := s.d.Voices.Text
	v.Size = design.Range{Least: 9, Best: max(9, min(16, s.short().Points()*0.028))}
	var ps []passage
	for _, b := range s.all(label.Ingredients, label.Allergens, label.Advisory, label.Maker) {
		p := s.smallPassage(b, on, v)
		p.gap = 0.4
		ps = append(ps, p)
	}
	if len(ps) == 0 {
		return in, true
	}
	missing := len(s.over)
	top := s.raise(ps, in, in.Y+in.H, s.align(), "facts at the foot", 0.45)
	in.H = max(0, top-in.Y-share(s.short(), 0.05))
	return in, len(s.over) == missing
}
