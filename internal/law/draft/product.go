package draft

import (
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/place"
)

// ProductOf picks the row of a batch: one its name asks for, else the first
// that governs its kind; ok is false where no product does.
func ProductOf(rows []place.Product, b *batch.Batch, says func(place.Product) bool) (place.Product, bool) {
	for _, p := range rows {
		if p.ByName && p.Governs(string(b.Product)) && says(p) {
			return p, true
		}
	}
	for _, p := range rows {
		if !p.ByName && p.Governs(string(b.Product)) {
			return p, true
		}
	}
	return place.Product{}, false
}

// kindWords are the kinds of the ingredient table that are words too: a maker's
// own "nut brittle" is no nut by that.
var kindWords = map[string]bool{"fruit": true, "juice": true, "acid": true, "vegetable": true, "spice": true, "sweetener": true, "gelling": true,
	"dairy": true, "egg": true, "nut": true, "seed": true, "flavour": true, "salt": true, "alcohol": true, "water": true, "herb": true, "additive": true,
	"sugar": true, "pectin": true, "honey": true}

// Among reports whether a list holds an ingredient by its key, its kind or, for
// a maker's own words, a word of its name.
func Among(list []string, ln cook.Line) bool {
	for _, w := range list {
		switch {
		case w == ln.Key && w != "", w == ln.Row.Key && w != "", w == ln.Row.Class && w != "":
			return true
		case (ln.Key == "" || ln.Row.Own) && len(w) > 2 && !kindWords[w] && begins(ln.Name, w):
			return true
		}
	}
	return false
}
