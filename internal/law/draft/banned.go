package draft

import (
	"cmp"
	"slices"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// Banned tells of what the law of the place lets no food hold, in an ingredient
// or any part of one. What is banned from a day to come warns until then.
func (p *Draft) Banned(ln cook.Line) {
	texts := []string{ln.Name}
	for _, part := range ln.Contains {
		texts = append(texts, part.Name)
	}
	for _, b := range p.Set.Banned {
		named := func(text string) bool { return Said(text, b.Words, nil) != "" && Said(text, b.Unless, nil) == "" }
		if !slices.ContainsFunc(texts, named) {
			continue
		}
		tell, why := p.L.Errorf, b.Why
		if b.Level == "warning" {
			tell = p.L.Warnf
		}
		if from, err := unit.ParseDate(b.From); err == nil && p.day().Before(from) {
			tell, why = p.L.Warnf, "from "+from.Words(p.Set.Units == "us")+" on, "+why
		}
		tell("banned-in-food", p.BatchFile(), LinePath(ln), "%s: %s", ln.Name, why).Hinted(cmp.Or(b.Hint, "leave it out")).Cited(b.Source)
		return
	}
}

// day is the day the rules are read on, else that of the making.
func (p *Draft) day() unit.Date {
	if p.Set.On.IsZero() {
		return p.B.Made
	}
	return p.Set.On
}
