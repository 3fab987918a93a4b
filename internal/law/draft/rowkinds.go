package draft

import (
	"strings"

	"jarmark/internal/law/place"
)

// ofItsOwn judges the texts by a row that is of a kind of its own, and reports
// whether it is one: most are words that are true or not beside some ingredient.
// denying are the texts with any way of denying, forms those ways.
func (p *Draft) ofItsOwn(w place.WordingRule, texts, denying []ownText, forms []string) bool {
	switch {
	case w.Unproven:
		p.unproven(w, mayDeny(w, texts))
	case w.Only:
		p.only(w, texts)
	case len(w.Words) > 0 && strings.Contains(w.Words[0], "{x}"):
		p.absent(w, mayDeny(w, texts))
	case w.Holds:
		p.holding(w, texts)
	case w.Names:
		p.naming(w, texts, forms)
		p.dishes(w, texts)
		p.shares(w.Cite)
	case w.Named:
		p.named(w, denying, forms)
	default:
		return false
	}
	return true
}

// dishes reports dishes in the name of the food whose mark no ingredient is: a
// daiquiri without rum.
func (p *Draft) dishes(w place.WordingRule, texts []ownText) {
	for _, o := range texts {
		if !Has(w.In, o.as) || o.says(w.Words, nil) != "" {
			continue
		}
		for _, d := range place.Dishes() {
			if said := Said(o.text, d.Words, nil); said != "" && !p.holdsAny(d.Of) {
				p.tellWording(w, []ownText{o}, []string{said}, nil, w.Level, w.Text, d.Of[0])
			}
		}
	}
}

// holdsAny reports an ingredient with one of some words in a name of it.
func (p *Draft) holdsAny(words []string) bool {
	for _, ln := range p.R.Lines {
		for _, n := range append(namesOf(ln), ln.Row.Aliases...) {
			if Said(n, words, nil) != "" {
				return true
			}
		}
	}
	return false
}
