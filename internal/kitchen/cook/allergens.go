package cook

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/allergen"
)

// Allergy is what is known of the allergens of a recipe, and what each fact
// rests on. Label, card, record, stall and code read this one value.
type Allergy struct {
	Found   []Found    // each substance once, heaviest ingredient first
	Words   []OwnWord  // the maker's words that no table knows; they are printed as written
	Unknown []Unproven // ingredients and parts of which nothing shows what is in them
	// Confirmed are the ingredients of which the maker wrote that they hold no
	// allergen (allergens = []), where no table shows it.
	Confirmed []Evidence
	Honey     []Evidence // where honey comes from: a caution for babies
}

// Found is one substance of the vocabulary and where it comes from.
type Found struct {
	allergen.Substance
	Word  string // the first word that named it, as written
	Maker bool   // the maker named it
	Usual bool   // usual in such a food, no more: what the maker says of it decides
	From  []Evidence
}

// OwnWord is a maker's allergen word that no table knows.
type OwnWord struct{ Word, Path string }

// Unproven is a name nothing is known of: "dark chocolate › emulsifier".
type Unproven struct{ Name, Path string }

// None reports whether it is proven that the recipe holds nothing on any list.
func (a Allergy) None() bool {
	return len(a.Unknown) == 0 && len(a.Words) == 0 && len(a.Found) == 0
}

// Allergy reads every ingredient and every part at any depth: by the row of the
// pantry, by the words of its name, and by what the maker wrote. Ingredients
// lifted out again count: they leave their allergens behind.
func (r *Result) Allergy() Allergy {
	if r.allergy != nil {
		return *r.allergy
	}
	var all Allergy
	for _, ln := range r.ByWeight() {
		all.join(r.LineAllergy(ln))
	}
	return all
}

// LineAllergy is the same of one ingredient, with its parts.
func (r *Result) LineAllergy(ln Line) Allergy {
	var a Allergy
	s := r.scan(&a, linePath(ln))
	s.line(ln)
	for _, part := range ln.Contains {
		a.join(r.PartAllergy(ln, part))
	}
	if s.said(ln) {
		if len(a.Unknown) > 0 {
			a.Confirmed = append(a.Confirmed, Evidence{Fact: ln.Name, How: Confirmed, Path: linePath(ln), Source: "the maker's own word"})
		}
		a.Unknown = nil
	}
	if len(a.Unknown) == 0 && (s.said(ln) || len(ln.Contains) > 0) {
		a.Found = slices.DeleteFunc(a.Found, func(f Found) bool { return f.Group() && f.Usual && !f.Maker })
	}
	a.settleGroups()
	return a
}

// OwnAllergy is what an ingredient carries by itself, without its parts.
func (r *Result) OwnAllergy(ln Line) Allergy {
	var a Allergy
	s := r.scan(&a, linePath(ln))
	s.line(ln)
	a.settleGroups()
	return a
}

// Names gives the food sources found, in the words of the table, where no place
// is at hand to name them.
func (a Allergy) Names() (out []string) {
	for _, f := range a.Found {
		if name := f.ID; f.Group() || f.Means == "plain" {
			out = append(out, f.Word)
		} else {
			out = append(out, strings.ReplaceAll(name, "_", " "))
		}
	}
	for _, w := range a.Words {
		out = append(out, w.Word)
	}
	return out
}

func linePath(ln Line) string {
	if len(ln.Paths) == 0 {
		return "ingredient"
	}
	return ln.Paths[0]
}

// join adds what another ingredient holds; each substance stands once.
func (a *Allergy) join(b Allergy) {
	for _, f := range b.Found {
		a.add(f)
	}
	for _, w := range b.Words {
		a.word(w)
	}
	a.Unknown = append(a.Unknown, b.Unknown...)
	a.Honey = append(a.Honey, b.Honey...)
	a.Confirmed = append(a.Confirmed, b.Confirmed...)
}

func (a *Allergy) word(w OwnWord) {
	if !slices.Contains(a.Words, w) {
		a.Words = append(a.Words, w)
	}
}

func (a *Allergy) add(f Found) {
	if f.Means == "honey" {
		a.Honey = append(a.Honey, f.From...)
		return
	}
	for i := range a.Found {
		if a.Found[i].ID == f.ID {
			one := &a.Found[i]
			if f.Maker && !one.Maker {
				one.Maker, one.Word = true, f.Word
			}
			one.Usual = one.Usual && f.Usual
			for _, e := range f.From {
				if !slices.Contains(one.From, e) {
					one.From = append(one.From, e)
				}
			}
			return
		}
	}
	a.Found = append(a.Found, f)
}

// settleGroups drops the group word of a name where a kind of the group is
// named: "mixed nuts (almonds, cashews)" asks nothing more. A group among the
// maker's own words stays.
func (a *Allergy) settleGroups() {
	named := map[string]bool{}
	for _, f := range a.Found {
		if !f.Group() {
			named[f.Family] = true
		}
	}
	a.Found = slices.DeleteFunc(a.Found, func(f Found) bool { return f.Group() && !f.Maker && f.Family != "" && named[f.Family] })
}

// Stated reads a maker's list of allergen words, such as what else the kitchen
// handles.
func Stated(words []string, path string) Allergy {
	var a Allergy
	(&Result{}).scan(&a, path).words(words, "")
	a.settleGroups()
	return a
}
