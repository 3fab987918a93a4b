package rule

import "strings"

// IngredientNames gives what the rows of the ingredient table are called in the
// language a label of the place takes, by key: the words its maker writes. It
// is nil where that is the table's own English, or the place is unknown.
func (b *Book) IngredientNames(place, lang string) map[string]string {
	r, ok, err := b.set(place)
	if !ok || err != nil || len(r.Languages) == 0 {
		return nil
	}
	take := r.Languages[0]
	for _, l := range r.Languages {
		if l == lang {
			take = l
		}
	}
	const prefix = "eu.ingredient."
	var out map[string]string
	for key, text := range b.words[take].words {
		if row, ok := strings.CutPrefix(key, prefix); ok && take != "en" {
			if out == nil {
				out = map[string]string{}
			}
			out[row] = text
		}
	}
	return out
}
