package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/law/label"
)

// allergens sets the stall's allergen card: the name, then what it contains
// in large type, then ingredients and cautions.
func (l *layout) allergens() {
	in, on, short := l.card("frame", "left", "right", "corners", "corner", "bottom", "top")
	head := in
	head.H = share(in.H, 0.3)
	l.headed(head, on, short)
	body := in.inset(0, share(in.H, 0.38), 0, 0)
	with := l.cornerCode(body, on, 0.22)
	body.holes = with.holes
	ps := l.cardFacts(on)
	f := flow(ps, body, typeset.Left)
	l.putFlow(f, body, "the allergens", false)
}

// cardFacts sets allergens first and largest.
func (l *layout) cardFacts(on roles) []passage {
	big, usual := l.voices.Text, l.voices.Text
	pt := min(l.short().Points(), 400)
	big.Size = design.Range{Least: 9, Best: max(9, pt*0.082)}
	usual.Size = design.Range{Least: 7, Best: max(7, pt*0.052)}
	var ps []passage
	add := func(v design.Voice, gap float64, kinds ...label.Kind) {
		for _, b := range l.all(kinds...) {
			p := l.smallPassage(b, on, v)
			p.gap = gap
			ps = append(ps, p)
		}
	}
	add(big, 0.5, label.Allergens)
	add(usual, 0.9, label.Advisory)
	add(usual, 0.9, label.Ingredients)
	add(usual, 0.5, label.Caution)
	add(usual, 0.9, label.Lot)
	return ps
}
