package pantry

import (
	"slices"
	"strings"
)

// Ambiguous is a word makers use for several foods whose facts differ.
type Ambiguous struct {
	Words   []string // "pepper"
	Settled []string // words beside it that say which: "ground"
	By      []string // amounts that say which: "small", "large", "count"
	Choices []string // what it may be, in words of the table
	Why     string
	Source  string
}

// Sizes of an amount that tell a spice from a fruit, in grams or millilitres.
const (
	smallAmount = 15
	largeAmount = 30
)

func (p *Pantry) loadAmbiguous() error {
	t := readTable(p.from, "ambiguous")
	t.each(func(r row) {
		a := Ambiguous{Words: r.list("words"), Settled: r.list("settled_words"), By: r.list("settled_by"), Choices: r.list("choices"), Why: r.need("why"), Source: r.need("source")}
		if len(a.Words) == 0 || len(a.Choices) < 2 {
			r.fail("choices", "a word needs two choices or more")
		}
		for _, by := range a.By {
			if !slices.Contains([]string{"small", "large", "count"}, by) {
				r.fail("settled_by", by+" is none of small, large and count")
			}
		}
		p.ambiguous = append(p.ambiguous, a)
	})
	return t.err
}

// Ambiguous finds the row of a name that may be several foods; the words of
// the form may settle it, and so does an ingredient of the maker's own.
func (p *Pantry) Ambiguous(name, form string) (Ambiguous, bool) {
	if g, ok := p.Ingredient(name); ok && g.Own {
		return Ambiguous{}, false
	}
	said := tokens(name + " " + form)
	bare := strings.Join(stripped(tokens(name)), " ")
	whole := strings.Join(tokens(name), " ")
	for _, a := range p.ambiguous {
		is := func(w string) bool { k := strings.Join(tokens(w), " "); return k == bare || k == whole }
		settles := func(w string) bool { // and is a food of the table with it: "sour" makes no row of cream
			if !slices.Contains(said, strings.Join(tokens(w), " ")) {
				return false
			}
			_, before := p.Ingredient(w + " " + name)
			_, behind := p.Ingredient(name + " " + w)
			return before || behind
		}
		if slices.ContainsFunc(a.Words, is) && !slices.ContainsFunc(a.Settled, settles) {
			return a, true
		}
	}
	return Ambiguous{}, false
}

// SettledBy reports whether an amount says which food is meant: in grams (or
// millilitres), or a count of pieces.
func (a Ambiguous) SettledBy(grams float64, counted bool) bool {
	switch {
	case counted:
		return slices.Contains(a.By, "count")
	case grams <= 0:
		return false
	case grams <= smallAmount:
		return slices.Contains(a.By, "small")
	}
	return grams >= largeAmount && slices.Contains(a.By, "large")
}
