package us

import (
	"slices"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
)

// banned tells of what no food may hold, in an ingredient or any part of one.
func (p *pass) banned(e entry) {
	texts := namesIn(e.line)
	for _, b := range p.Set.Ingredients.Banned {
		named := func(text string) bool {
			has := func(word string) bool { return draft.HasWord(text, word) }
			return slices.ContainsFunc(b.Words, has) && !slices.ContainsFunc(b.Unless, has)
		}
		if !slices.ContainsFunc(texts, named) {
			continue
		}
		hint := b.Hint
		if hint == "" {
			hint = "leave it out"
		}
		p.L.Errorf("banned-in-food", p.BatchFile(), draft.LinePath(e.line), "%s: %s", e.name, b.Why).Hinted(hint).Cited(b.Source)
		return
	}
}

// namesIn is what the maker calls an ingredient and its parts.
func namesIn(ln cook.Line) []string {
	out := []string{ln.Name}
	for _, x := range ln.Contains {
		out = append(out, x.Name)
	}
	return out
}
