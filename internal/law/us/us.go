// Package us makes the statements of the United States: 21 CFR 101 and 150, and
// the home-kitchen laws of the states. It is a table of steps over a draft; every
// number comes from the tables of the place. What the European law says lives in
// eu, what both say in draft. To add a statement: one function, one line of steps.
package us

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// pass is one jar size of one batch on its way through the American steps.
type pass struct {
	*draft.Draft
	prog *place.Programme // chosen scheme of the place; nil = none
	list []entry          // ingredients, heaviest first
}

func newPass(r *cook.Result, jar cook.JarPlan, s *place.Set, o draft.Options) *pass {
	p := &pass{Draft: draft.NewDraft(r, jar, s, o), list: entries(r)}
	p.chooseProgramme()
	return p
}

// Declare makes the labels of one jar size for a place in the United States.
func Declare(r *cook.Result, jar cook.JarPlan, s *place.Set, o draft.Options) (*label.Content, diag.List) {
	p := newPass(r, jar, s, o)
	return draft.Take(p.Draft, steps(), p)
}

// Law says what a set may name: steps with the phrases they need, and what a state
// may ask for on a label.
func Law() place.Law {
	var tokens []string
	for _, x := range particularTable() {
		tokens = append(tokens, x.Token)
	}
	return place.Law{Statements: draft.StatementTypes(steps()), Particulars: tokens}
}

// steps lists every kind of statement; a set's `kinds` picks from it, in the
// order given there. A new kind is one file and one line here.
func steps() []draft.Step[*pass] {
	step := draft.NewStep[*pass]
	return []draft.Step[*pass]{
		step("identity", "name of the food, 21 CFR 101.3", nil, identity),
		step("standard", "standards of identity, 21 CFR 150", []string{"us.dried", "us.dried-part"}, standard),
		step("net", "net quantity of contents, 21 CFR 101.7", []string{"us.net", "us.net-fluid"}, net),
		step("ingredients", "list of ingredients, 21 CFR 101.4", []string{"us.ingredients", "us.two-percent"}, ingredients),
		step("allergens", "the nine major allergens, 21 U.S.C. 343(w)", []string{"us.contains", "us.no-allergens", "us.also-contains", "us.advisory", "us.and"}, allergens),
		step("maker", "name and place of business, 21 CFR 101.5", []string{"us.maker", "us.permit", "us.phone", "us.county"}, maker),
		step("statement", "the sentence a home kitchen must print", []string{"us.meaning", "us.pets"}, statement),
		step("storage", "how to keep the jar", storagePhrases, storage),
		step("caution", "honey and infants", []string{"us.honey"}, caution),
		step("date", "best-by, use-by and made-on dates", []string{"us.best", "us.use-by", "us.made"}, dates),
		step("lot", "lot code", []string{"us.lot"}, lot),
		step("nutrition", "nutrition exemption and claims, 21 CFR 101.9(j)", nil, nutrition),
		step("price", draft.PriceDoc, draft.PricePhrases, (*pass).Price),
		step("extras", draft.ExtrasDoc, draft.ExtrasPhrases, (*pass).Extras),
		step("closing", "what the maker must still ask", nil, closing),
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
