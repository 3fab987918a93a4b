package notes

import (
	"slices"
	"strings"
)

// Terse notes: several things on one line, short words, no commas.

// long writes the short words of a line out, and says how it read them.
func (g *grammar) long(s string) (out string, says []string) {
	words := strings.Split(s, " ")
	for i, w := range words {
		bare := strings.Trim(w, ",;()")
		if means, ok := g.p.Short(bare); ok && bare != "" {
			words[i] = strings.Replace(w, bare, means, 1)
			says = append(says, bare+" is read as "+means)
		}
	}
	return strings.Join(words, " "), says
}

// unparted cuts "3 lb plums 3 lb sugar" where an amount and a food are whole and
// the next begins.
func (g *grammar) unparted(s string) (out []string) {
	if strings.Contains(s, "(") || strings.Contains(s, ", ") {
		return []string{s}
	}
	for at := range s {
		if s[at] != ' ' || !g.exact(s[:at]) || !g.exact(s[at+1:]) && len(g.unparted(s[at+1:])) < 2 {
			continue
		}
		return append([]string{s[:at]}, g.unparted(s[at+1:])...)
	}
	return []string{s}
}

// exact reports an amount and a known food, and no word more.
func (g *grammar) exact(s string) bool {
	if slices.ContainsFunc(strings.Fields(s), func(w string) bool { return strings.Trim(w, "/|+&-;") == "" }) {
		return false
	}
	if _, name, ok := g.behind(s); ok {
		_, known := g.row(name)
		return known
	}
	a, rest, ok := g.amount(s)
	if !ok || a.vague || rest == "" || strings.ContainsAny(ratio.ReplaceAllString(rest, ""), "0123456789") {
		return false
	}
	name, _ := g.leadForm(rest)
	name, _ = g.tailForm(name)
	_, known := g.row(name)
	return known && !strings.Contains(name, " and ")
}
