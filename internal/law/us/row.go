package us

import (
	"cmp"
	"strings"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// row is the row of the batch: by the name it bears, else by its kind. A
// spread that is named jam is judged as jam (21 U.S.C. 343(g)).
func (p *pass) row() (place.Product, bool) {
	word := cmp.Or(draft.ProductWord(p.B.Name), string(p.B.Product))
	return place.ProductNamed(p.Set.Products, word)
}

// stones says what the maker's words tell of pits: "in", "out" or "" (nothing).
func (p *pass) stones(paths []string) string {
	said := ""
	for _, path := range paths {
		in := p.Made[path]
		if in == nil {
			continue
		}
		words := " " + strings.Join(strings.FieldsFunc(strings.ToLower(in.Name+" "+in.Form), draft.NotLetter), " ") + " "
		for _, w := range []string{" unpitted ", " unstoned ", " with pits ", " with stones ", " pits in ", " stones in "} {
			if strings.Contains(words, w) {
				return "in"
			}
		}
		for _, w := range []string{" pitted ", " stoned ", " destoned ", " without pits ", " without stones "} {
			if strings.Contains(words, w) {
				said = "out"
			}
		}
	}
	return said
}
