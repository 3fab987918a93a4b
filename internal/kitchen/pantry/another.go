package pantry

import (
	"slices"
	"strings"
)

// anotherFood is a row of makes-another.csv: words that make of a food of the table
// another one, which the table may not have.
type anotherFood struct {
	words    [][]string
	of       []string // keys
	notFruit bool     // of all foods but fruit
	why      string
}

func (p *Pantry) loadAnother() error {
	t := readTable(p.from, "makes-another")
	t.each(func(r row) {
		a := anotherFood{why: r.need("why")}
		for _, w := range r.list("word") {
			a.words = append(a.words, tokens(w))
		}
		for _, of := range r.list("of") {
			if of == "* but fruit" {
				a.notFruit = true
				continue
			}
			if !slices.ContainsFunc(p.ingredients, func(g Ingredient) bool { return g.Key == of }) {
				r.fail("of", of+" is no key of the table")
			}
			a.of = append(a.of, of)
		}
		if len(a.words) == 0 || len(a.of) == 0 && !a.notFruit {
			r.fail("word", "no words, or no food they are about")
		}
		p.another = append(p.another, a)
	})
	return t.err
}

// makesAnother reports that words name another food than the row that was found
// without some of them: wild plums are plums, and wild garlic is no garlic.
func (p *Pantry) makesAnother(said, found []string, g Ingredient) (why string, ok bool) {
	for _, a := range p.another {
		if !slices.Contains(a.of, g.Key) && !(a.notFruit && g.Class != "fruit") {
			continue
		}
		for _, w := range a.words {
			if find(said, w) >= 0 && find(found, w) < 0 && !g.Own {
				return a.why, true
			}
		}
	}
	return "", false
}

// Another reports that words beside a name, "oat" of milk, make of the food another
// that the table does not have, and why; a food of the table is [Pantry.Told].
func (p *Pantry) Another(name, beside string) (why string, ok bool) {
	g, known := p.Ingredient(name)
	if !known || beside == "" || len(beside) > 80 {
		return "", false
	}
	if _, _, told := p.Told(name, beside); told {
		return "", false
	}
	for _, f := range strings.FieldsFunc(beside, func(r rune) bool { return strings.ContainsRune(",;()", r) }) {
		if row, ok := p.Ingredient(f + " " + name); ok && !cutOnly(f) && row.Key == g.Key {
			continue // "unsalted butter" is butter
		}
		ts := tokens(f)
		if len(ts) > 3 || slices.ContainsFunc(ts, func(w string) bool { return parts(w) || w == "in" || w == "for" }) {
			continue // "in oat milk", "with wild garlic" stand beside it
		}
		if why, ok := p.makesAnother(ts, tokens(name), g); ok {
			return why, true
		}
	}
	return "", false
}
