package rule

import "slices"

// Language gives the language of the table of ingredients that a maker of this
// place writes in: the asked one where the place knows it, else the place's
// first; empty for an unknown place.
func (b *Book) Language(place, lang string) string {
	r, ok, err := b.set(place)
	switch {
	case !ok || err != nil || len(r.Languages) == 0:
		return ""
	case slices.Contains(r.Languages, lang):
		return lang
	}
	return r.Languages[0]
}
