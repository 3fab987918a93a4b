package draft

import (
	"cmp"
	"slices"

	"jarmark/internal/kit/diag"
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
		why, ahead := b.Why, false
		if from, err := unit.ParseDate(b.From); err == nil && p.day().Before(from) {
			why, ahead = "from "+from.Words(p.Set.Units == "us")+" on, "+why, true
		}
		text := ln.Name + ": " + why
		var d *diag.Diagnostic
		if ahead || b.Level == "warning" {
			d = p.L.Warnf("banned-in-food", p.BatchFile(), LinePath(ln), "%s", text)
		} else {
			d = p.L.Errorf("banned-in-food", p.BatchFile(), LinePath(ln), "%s", text)
		}
		d.Hinted(cmp.Or(b.Hint, "leave it out")).Cited(b.Source)
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
