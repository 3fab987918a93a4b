package cook

import (
	"strings"

	"golang.org/x/text/cases"
)

// Allergens lists the allergens of a recipe, each once, heaviest ingredient
// first: by the US list in a US kitchen, else by Annex II of Regulation (EU)
// 1169/2011, and what the maker named. Ingredients lifted out again count:
// they leave their allergens behind.
func (r *Result) Allergens() (out []string) {
	seen := map[string]bool{"": true}
	fold := cases.Fold()
	add := func(words ...string) {
		for _, w := range words {
			w = strings.TrimSpace(w)
			if key := fold.String(w); !seen[key] {
				seen[key] = true
				out = append(out, w)
			}
		}
	}
	us := r.Kitchen.US()
	for _, l := range r.ByWeight() {
		add(pick(us, l.Row.USAllergen, l.Row.EUAllergen))
		for _, part := range l.Contains {
			add(pick(us, part.USAllergen, part.EUAllergen))
		}
		add(l.Allergens...)
	}
	return out
}

func pick(us bool, american, european string) string {
	if us {
		return american
	}
	return european
}
