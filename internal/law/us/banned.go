package us

import (
	"cmp"
	"slices"

	"jarmark/internal/law/draft"
)

// banned tells of what no food may hold, in an ingredient or any part of one.
func (p *pass) banned(e entry) {
	texts := append([]string{e.line.Name}, partNames(e)...)
	for _, b := range p.Set.Ingredients.Banned {
		named := func(text string) bool {
			return draft.Said(text, b.Words, nil) != "" && draft.Said(text, b.Unless, nil) == ""
		}
		if slices.ContainsFunc(texts, named) {
			p.L.Errorf("banned-in-food", p.BatchFile(), draft.LinePath(e.line), "%s: %s", e.name, b.Why).
				Hinted(cmp.Or(b.Hint, "leave it out")).Cited(b.Source)
			return
		}
	}
}
