package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// A key a product row names is a key of the ingredient table, or a kind of it: a
// slip of the pen would let an ingredient pass, or forbid it.
func TestProductKeysAreInTheTable(t *testing.T) {
	known := map[string]bool{"citrus": true, "sugar": true, "pectin": true, "honey": true}
	for _, g := range pantry.Default().Ingredients() {
		known[g.Key], known[g.Class] = true, true
	}
	book, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"eu", "gb", "ni", "ie", "de", "fr"} {
		set, _ := book.Place(id, after)
		for _, p := range set.Products {
			lists := [][]string{p.Counts, p.Alone, p.Aside, p.Souring, p.Only, p.Allows, p.Doubtful, p.Unmixed}
			for _, b := range p.Bound {
				lists = append(lists, b.Of, b.Beside)
			}
			for _, list := range lists {
				for _, w := range list {
					if !known[w] && strings.ToLower(w) == w && p.ID != "chestnut" {
						t.Errorf("%s %s: %q is no key and no kind", id, p.ID, w)
					}
				}
			}
		}
		for _, w := range append(append([]string{}, set.EU.Citrus...), set.EU.Compound...) {
			if !known[w] {
				t.Errorf("%s: %q is no key", id, w)
			}
		}
	}
}
