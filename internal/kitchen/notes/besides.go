package notes

import (
	"strings"
)

// besides asks of a word of form that is a food itself: "500 g strawberries,
// raspberries".
func (g *grammar) besides(l *Line, name, form string) {
	row, known := g.row(name)
	for _, f := range strings.Split(form, ",") {
		f, _ = g.leadForm(strings.TrimSpace(f))
		if other, ok := g.row(f); ok && known && other.Key != row.Key && !g.formOnly(f) && !strings.ContainsAny(f, "0123456789") {
			l.ask("%s too? Then write its amount on a line of its own", f)
		}
	}
}

// orBracket asks between a food and another in brackets: "white wine (or cider)
// vinegar". It settles the names where both are known.
func (g *grammar) orBracket(l *Line, in *Ingredient, bare, other string) bool {
	name, _, _ := strings.Cut(bare, ",")
	words := strings.Fields(name)
	one, known := g.row(name)
	for _, o := range []string{other, other + " " + words[len(words)-1]} {
		if row, also := g.row(o); known && also && row.Key != one.Key {
			in.Names = []string{name, o}
			l.ask("which was it? Take the # off one")
			return true
		}
	}
	if !g.formOnly(other) && !less.MatchString("("+other) && !optional.MatchString(other) && other != "so" {
		l.ask("or %s: which was it? Check the name", other)
	}
	return false
}
