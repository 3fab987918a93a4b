package draft

import (
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// NamesIn gives the names a law's list has for what was found: a group it asks
// about as written, and the maker's own words; beyond adds what the maker names
// and the list does not.
func NamesIn(a cook.Allergy, list Names, beyond bool) (out []string) {
	put := func(words ...string) {
		for _, w := range words {
			if !slices.ContainsFunc(out, func(o string) bool { return strings.EqualFold(o, w) }) {
				out = append(out, w)
			}
		}
	}
	for _, f := range a.Found {
		names, ask := list(f.Substance)
		put(names...)
		if ask || beyond && f.Maker && len(names) == 0 {
			put(f.Word)
		}
	}
	for _, w := range a.Words {
		put(w.Word)
	}
	return out
}

// Names gives the names one law's list prints for a substance, and whether
// it wants the kind named instead of the group.
type Names func(allergen.Substance) (names []string, ask bool)

// Evidence reads what the recipe's allergens rest on into the content, by the
// list of one law, and tells what is not proven. Whoever prints says the same.
func (p *Draft) Evidence(list Names, cite string) {
	a := p.Allergy
	p.C.AllergenNames = NamesIn(a, list, false)
	for _, f := range a.Found {
		names, ask := list(f.Substance)
		if ask {
			p.askKind(f.Word, p.BatchFile(), f.From[0].Path, cite)
			names = []string{f.Word}
		}
		for _, n := range names {
			p.why(n, f.From)
		}
	}
	for _, w := range a.Words {
		p.ownWord(w.Word, p.BatchFile(), w.Path, cite)
		p.why(w.Word, []cook.Evidence{{Fact: w.Word}})
	}
	for _, u := range a.Unknown {
		p.C.AllergenDoubt = append(p.C.AllergenDoubt, u.Name)
		p.L.Errorf("allergens-unknown", p.BatchFile(), u.Path, "nothing shows which allergens are in %q", u.Name).
			Hinted(`read the packet: write its list into contains = ["..."], or its allergens into allergens = ["..."]; allergens = [] says there are none`).Cited(cite)
	}
	p.C.NoAllergens = len(a.Unknown) == 0 && len(p.C.AllergenNames) == 0
}

// why notes what a name rests on, by the names of ingredients.
func (p *Draft) why(name string, from []cook.Evidence) {
	i := 0
	for i < len(p.C.AllergenWhy) && p.C.AllergenWhy[i].Name != name {
		i++
	}
	if i == len(p.C.AllergenWhy) {
		p.C.AllergenWhy = append(p.C.AllergenWhy, label.Why{Name: name})
	}
	for _, e := range from {
		if w := &p.C.AllergenWhy[i]; !Has(w.From, e.Fact) {
			w.From = append(w.From, e.Fact)
		}
	}
}

// Handles names what else the kitchen handles, as one law's list does, else as
// the maker wrote it.
func (p *Draft) Handles(list Names, cite string) (out []string) {
	a := cook.Stated(p.K.AlsoHandles, "also_handles")
	for _, f := range a.Found {
		if _, ask := list(f.Substance); ask {
			p.askKind(f.Word, p.KitchenFile(), "also_handles", cite)
		}
	}
	for _, w := range a.Words {
		p.ownWord(w.Word, p.KitchenFile(), "also_handles", cite)
	}
	return NamesIn(a, list, true)
}

func (p *Draft) askKind(word, file, path, cite string) {
	p.L.Errorf("name-the-species", file, path, "%q is a group or may be of several kinds, and the label must name the kind itself", word).
		Hinted(`write the kind: allergens = ["almonds"], or pecans, cod, shrimp, wheat …`).Cited(cite)
}

// ownWord tells of an allergen word no table knows: a slip of the pen stops
// the label, another word is printed as it is.
func (p *Draft) ownWord(word, file, path, cite string) *diag.Diagnostic {
	if allergen.SaysNone(word) {
		return p.L.Errorf("unknown-allergen", file, path, "%q is no allergen", word).Hinted("an empty list says that there is none: []").Cited(cite)
	}
	if near, ok := diag.DidYouMean(allergen.Fold(strings.TrimSpace(word)), allergen.Default().Words()); ok {
		return p.L.Errorf("unknown-allergen", file, path, "%q is no allergen the tables know", word).Meant(near).Cited(cite)
	}
	return p.L.Warnf("unknown-allergen", file, path, "%q is no allergen the tables know, so it is printed as you wrote it", word).
		Hinted("if it is one of the law's, name it as the law does: milk, egg, wheat, peanut, soy, sesame, the nut, fish or shellfish itself").Cited(cite)
}
