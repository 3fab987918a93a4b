package notes

import "strings"

// ingredients reads one or several things in the pot; whole or not at all.
func (g *grammar) ingredients(l *Line, s string) bool {
	s, verb := strings.TrimSpace(s), ""
	if m := added.FindStringSubmatch(s); m != nil {
		verb, s = m[1], s[len(m[0]):]
	}
	if imperative.MatchString(verb) && hasMinutes(s) {
		if a, _, ok := g.amount(s); ok && !strings.Contains(s, ". ") {
			l.ask("is %s one more in the pot, or a step about what is written already? If it is more, write it as an ingredient", a.text)
		}
		return false // a step: "Add 6 cups of sugar. Boil 1 minute."
	}
	if imperative.MatchString(verb) && len(s) > 0 {
		if _, _, ok := g.amount(s); ok || partForm.MatchString(s) {
			l.ask("is this one more thing in the pot, or a step about what is written already? If it is more, write %q alone", s)
			return true
		}
		return false
	}
	if unsealedForm.MatchString(s) || sealForm.MatchString(s) || bareHead.MatchString(s) || headForm.MatchString(s) || sealedOnly.MatchString(s) || degrees.MatchString(s) {
		return false
	}
	s, out := g.leftOut(s)
	if out != "" {
		defer l.ask("%q did not go in? If it did, write it as an ingredient with its amount", out)
	}
	if s == "" {
		return true
	}
	s = g.undenied(l, g.remarked(l, s))
	s, short := g.long(s)
	var pot []Ingredient
	for _, part := range g.parts(s) {
		found, ok := g.one(l, part)
		if !ok {
			l.Asks, l.Says = nil, nil
			return false
		}
		pot = append(pot, found...)
	}
	if m := elsewhereUse.FindString(s); m != "" && len(l.Asks) == 0 {
		l.ask("%q: how much of it went into this pot? Check amount", m)
	}
	l.Ingredients = pot
	l.Says = append(short, l.Says...)
	return true
}

var (
	added      = pattern(`(?i)^(added|add|stirred in|stir in|plus|with|topped up with|let down with|thinned with|loosened with|used|put in|threw in|and|then|also|took|take|another|further|extra|ajoute[rz]?|zusätzlich|außerdem|weiters|ferner|eventuell|evtl\.?|éventuellement|en plus|dazu|doch noch|noch|aufgefüllt mit|verlängert mit|verdünnt mit|mit|encore|allongée? (?:avec|de)|avec|\+|&) (?:also |then |in )?`)
	imperative = pattern(`(?i)^(?:add|stir in|take|ajoute[rz]?)$`)
	between    = pattern(`(?i)(?:, | and |; ?| \+ | plus | & | und | et | sowie | ainsi que | as well as | along with )`)
)

// parts cuts a line where a new amount begins: "2 lb plums, 1 lb sugar and the
// juice of 1 lemon". An amount alone ("1 cup plus 2 tbsp") is no part.
func (g *grammar) parts(s string) (out []string) {
	from := 0
	for _, at := range between.FindAllStringIndex(s, -1) {
		if at[0] < from || inBrackets(s, at[0]) {
			continue
		}
		if !g.whole(s[from:at[0]]) || !g.whole(s[at[1]:]) {
			continue
		}
		out = append(out, g.unparted(s[from:at[0]])...)
		from = at[1]
	}
	return append(out, g.unparted(s[from:])...)
}
