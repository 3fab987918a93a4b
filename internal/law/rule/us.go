package rule

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// pass is one jar size of one batch on its way through the American steps.
type pass struct {
	*Draft
	prog *Programme // chosen scheme of the place; nil = none
	list []entry    // ingredients, heaviest first
}

func newPass(r *cook.Result, jar cook.JarPlan, s *Set, o Options) *pass {
	p := &pass{Draft: NewDraft(r, jar, s, o), list: entries(r)}
	p.chooseProgramme()
	return p
}

// usDeclare makes the labels of one jar size for a place in the United States.
func usDeclare(r *cook.Result, jar cook.JarPlan, s *Set, o Options) (*label.Content, diag.List) {
	p := newPass(r, jar, s, o)
	return Take(p.Draft, usSteps(), p)
}

// usKinds says what a set may name: steps with the phrases they need, and what a state
// may ask for on a label.
func usKinds() Law {
	var tokens []string
	for _, x := range particularTable() {
		tokens = append(tokens, x.Token)
	}
	return Law{Kinds(usSteps()), tokens}
}

// usSteps lists every kind of statement; a set's `kinds` picks from it, in the
// order given there. A new kind is one file and one line here.
func usSteps() []Step[*pass] {
	return []Step[*pass]{
		{"identity", "name of the food, 21 CFR 101.3", nil, identity},
		{"standard", "standards of identity, 21 CFR 150", []string{"us.dried", "us.dried-part"}, standard},
		{"net", "net quantity of contents, 21 CFR 101.7", []string{"us.net", "us.net-fluid"}, net},
		{"ingredients", "list of ingredients, 21 CFR 101.4", []string{"us.ingredients", "us.two-percent"}, ingredients},
		{"allergens", "the nine major allergens, 21 U.S.C. 343(w)", []string{"us.contains", "us.no-allergens", "us.also-contains", "us.advisory", "us.and"}, allergens},
		{"maker", "name and place of business, 21 CFR 101.5", []string{"us.maker", "us.permit", "us.phone", "us.county"}, maker},
		{"statement", "the sentence a home kitchen must print", []string{"us.meaning", "us.pets"}, statement},
		{"storage", "how to keep the jar", storagePhrases, storage},
		{"caution", "honey and infants", []string{"us.honey"}, caution},
		{"date", "best-by, use-by and made-on dates", []string{"us.best", "us.use-by", "us.made"}, dates},
		{"lot", "lot code", []string{"us.lot"}, lot},
		{"nutrition", "nutrition exemption and claims, 21 CFR 101.9(j)", nil, nutrition},
		{"price", PriceDoc, PricePhrases, (*pass).Price},
		{"extras", ExtrasDoc, ExtrasPhrases, (*pass).Extras},
		{"closing", "what the maker must still ask", nil, closing},
	}
}

// add appends a statement; its letters are of the least height all required words
// have where no other is set.
func (p *pass) add(b label.Block) {
	if b.Min.Length == 0 {
		b.Min = p.letterO()
	}
	p.Add(b)
}
