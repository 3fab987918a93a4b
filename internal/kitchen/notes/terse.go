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
	if strings.ContainsAny(s, "(,") {
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
	if _, name, ok := g.behind(s); ok {
		_, known := g.row(name)
		return known
	}
	a, rest, ok := g.amount(s)
	if !ok || a.vague || rest == "" || strings.ContainsAny(ratio.ReplaceAllString(rest, ""), "0123456789") {
		return false
	}
	if slices.ContainsFunc(strings.Fields(s), func(w string) bool { return strings.Trim(w, "/|+&-;") == "" }) {
		return false
	}
	name, _ := g.leadForm(rest)
	name, _ = g.tailForm(name)
	_, known := g.row(name)
	return known && !strings.Contains(name, " and ")
}

var (
	fragment = lazily(`(?:, | / |; | \+ | & | - | \| )`)
	restForm = lazily(`(?i)^(?:a bit|a half|half|a little|a (?:bit|little|small one|taste) (?:left|over|more)|some left|1 small(?: one)?|rest|ein rest|etwas übrig|1 kleines?)\.?$`)
)

// terse reads a line of short facts: "2 kg plums, got 9 jars, 104 C, 14.9.26".
// Most must be read, two at least; what is not is asked about.
func (g *grammar) terse(l *Line, s string) bool {
	pieces := fragments(s)
	if len(pieces) < 2 {
		return false
	}
	all := Line{No: l.No, Text: l.Text}
	read, kinds := 0, map[string]bool{}
	for _, p := range pieces {
		if len(strings.Fields(p)) > 7 {
			return false
		}
		sub := g.fact(p, kinds["fill"])
		if again := all.clash(sub); again {
			return false
		}
		if sub.Read() {
			read++
		} else if len(sub.Asks) == 0 {
			sub.ask("what is %q? Write it on a line of its own", p)
		}
		sub.sorts(kinds)
		all.Ingredients, all.Keys, all.Fills = append(all.Ingredients, sub.Ingredients...), append(all.Keys, sub.Keys...), append(all.Fills, sub.Fills...)
		all.Asks, all.Says = append(all.Asks, sub.Asks...), append(all.Says, sub.Says...)
	}
	if read < 2 || len(kinds) < 2 || 2*read < len(pieces) {
		return false
	}
	*l = all
	return true
}

// fact reads one short fact of a line; after a count of jars a bit may be left.
func (g *grammar) fact(p string, jars bool) Line {
	sub := Line{Text: p}
	switch {
	case jars && restForm.MatchString(p):
		sub.ask(`the jar that is not full: write part_jar = "100 g", what is in it`)
	case g.date(&sub, p), g.labelled(&sub, p):
	case g.ingredients(&sub, p):
		for _, in := range sub.Ingredients {
			if _, known := g.row(in.Name); !known && in.Name != "" {
				return Line{Text: p} // no food: something else, and asked about
			}
		}
	default:
		g.sentences(&sub, p)
		g.bareCount(&sub, p)
	}
	return sub
}

// sorts notes which sorts of fact a line holds.
func (l *Line) sorts(kinds map[string]bool) {
	for _, k := range l.Keys {
		kinds[k.Path] = true
	}
	if len(l.Ingredients) > 0 {
		kinds["ingredient"] = true
	}
	if len(l.Fills) > 0 {
		kinds["fill"] = true
	}
}

// clash reports that another fact gives a key once more.
func (l *Line) clash(other Line) bool {
	return slices.ContainsFunc(other.Keys, func(k Key) bool { return l.find(k.Path) != nil })
}

// fragments cuts a line at its signs, outside of brackets.
func fragments(s string) (out []string) {
	from := 0
	for _, at := range fragment.FindAllStringIndex(s, -1) {
		if inBrackets(s, at[0]) {
			continue
		}
		out, from = append(out, strings.TrimSpace(s[from:at[0]])), at[1]
	}
	return append(out, strings.Trim(s[from:], " ."))
}

// bareCount takes a count of jars without a verb, and asks whether it is one.
func (g *grammar) bareCount(l *Line, s string) {
	if l.Read() || len(l.Asks) > 0 {
		return
	}
	if f, ok := g.count(s); ok && (f.Jar != "" || jarTalk.MatchString(s)) {
		l.ask("jars that were filled? Then write: got %s, and their size", s)
	}
}
