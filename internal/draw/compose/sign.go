package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/law/label"
)

// sign sets a sheet to stand at the point of sale: the words the law
// prescribes there as large as they go, the name of the food over them, and
// what is in it and who made it at the foot. Where no words are prescribed, the
// name stands alone in their place.
func (l *layout) sign() {
	in, on, short := l.card("frame", "left", "right", "corners", "corner", "top", "bottom", "beside", "around")
	in = in.inset(share(short, 0.03), share(short, 0.02), share(short, 0.03), share(short, 0.02))
	in, ok := l.signFoot(in, on)
	if !ok {
		return
	}
	k := stack{in: in, align: l.align(), rise: 0.4, spread: 2}
	k.rows = l.titleRows(on, short)
	if words, ok := l.block(label.SignWords); ok {
		for i := range k.rows { // the food is the lesser thing here
			r := &k.rows[i]
			r.least, r.best = max(legible, share(short, 0.025)), share(short, 0.05)
			r.weight, r.grows = r.weight/4, false
		}
		v := l.voices.Title
		v.Size = design.Range{Least: 0.04, Best: 0.1}
		r := l.displayRow(words, v, on, short, 8, 4)
		r.gap = 0.8
		k.rows = append(k.rows, r)
	}
	l.fit(k, "the words of the sign")
}

// signFoot sets ingredients, allergens and maker along the foot and gives the
// region above them.
func (l *layout) signFoot(in region, on roles) (region, bool) {
	v := l.voices.Text
	v.Size = design.Range{Least: 9, Best: max(9, min(16, l.short().Points()*0.028))}
	var ps []passage
	for _, b := range l.all(label.Ingredients, label.Allergens, label.Advisory, label.Maker) {
		p := l.smallPassage(b, on, v)
		p.gap = 0.4
		ps = append(ps, p)
	}
	if len(ps) == 0 {
		return in, true
	}
	missing := len(l.missing)
	top := l.raise(ps, in, in.Y+in.H, l.align(), "facts at the foot", 0.45)
	in.H = max(0, top-in.Y-share(l.short(), 0.05))
	return in, len(l.missing) == missing
}
