package notes

import (
	"regexp"
	"strings"
)

// Parts of a fruit, one amount of several things, and amounts that stand behind
// their food.
var (
	genitive  = regexp.MustCompile(`(?i)^((?:der |den )?(?:saft|schale|abgeriebene schale)) eine[rs] `)
	partForm  = regexp.MustCompile(`(?i)^(?:the |le |der |das )?((?:finely |freshly |coarsely )?(?:grated |pared |strained |squeezed |fresh |shredded |abgeriebene )*)(juice|zest|rind|peel|saft|schale|jus|zestes?)(?: (?:and|und|et) (?:the |grated )*(juice|zest|rind|peel|saft|schale|jus|zestes?))? (?:of|from|von|d'|de |d'une? )[ ]?(.+)$`)
	partAfter = regexp.MustCompile(`(?i)^(` + num + `) ((?:large |medium |small )?[\p{L} ]+?)(?:,| -+)? (?:the )?((?:grated |pared |strained )*)(juice|zest|rind|peel)(?:d| only| of)?(?: (?:and|&) (?:grated )?(juice|zest|rind|peel))?(?: of)?$`)
	partNames = map[string]string{"juice": "juice", "saft": "juice", "jus": "juice", "zest": "zest", "rind": "zest", "peel": "zest", "schale": "zest", "zeste": "zest", "zestes": "zest"}
	eachForm  = regexp.MustCompile(`(?i)^each:? (?:of )?(.+)$|^(.+?),? each$`)
)

// partOf reads "juice of 2 lemons" and "2 lemons, juice and zest".
func (g *grammar) partOf(l *Line, s string) ([]Ingredient, bool) {
	parts, of, how := []string(nil), "", ""
	s = genitive.ReplaceAllString(s, "$1 von 1 ")
	if m := partForm.FindStringSubmatch(s); m != nil {
		parts, of, how = []string{m[2], m[3]}, m[4], m[1]
	} else if m := partAfter.FindStringSubmatch(s); m != nil {
		parts, of, how = []string{m[4], m[5]}, m[1]+" "+m[2], m[3]
	} else {
		return nil, false
	}
	of, _ = spelled(strings.TrimSpace(of))
	n, size, word, form := g.fruitOf(of)
	row, ok := g.row(word)
	if !ok {
		return nil, false
	}
	var out []Ingredient
	for _, p := range parts {
		part := partNames[strings.ToLower(p)]
		if part == "" {
			continue
		}
		in := Ingredient{Name: row.Words["en"].Singular + " " + part, Amount: part + " of " + n + " " + size + word, Form: form}
		if part == "zest" {
			in.Form = strings.TrimSpace(how + in.Form)
		}
		if !valid(in.Amount) || row.Words["en"].Singular == "" {
			return nil, false
		}
		if _, known := g.row(in.Name); !known {
			return nil, false
		}
		out = append(out, in)
	}
	return out, len(out) > 0
}

// fruitOf cuts "2 large lemons, washed" into number, size, fruit and form; a
// fruit without a number is one.
func (g *grammar) fruitOf(of string) (n, size, word, form string) {
	if n = numHead.FindString(of); n == "" {
		n, of = "1", "1 "+of
	}
	word, form, _ = strings.Cut(strings.TrimSpace(brackets.ReplaceAllString(of[len(n):], "")), ",")
	word = strings.TrimSpace(word)
	if first, more, cut := strings.Cut(word, " "); cut && sizes[strings.ToLower(first)] {
		word, size = more, first+" "
	}
	return n, size, word, strings.TrimSpace(form)
}

// behind reads an amount that stands after the food: "sugar: 4 cups".
func (g *grammar) behind(s string) (a amount, rest string, ok bool) {
	at := behindForm.FindStringSubmatchIndex(s)
	if at == nil {
		return a, s, false
	}
	name := strings.TrimSpace(s[at[2]:at[3]])
	if _, known := g.row(name); !known {
		return a, s, false
	}
	a, more, ok := g.amount(strings.TrimSpace(s[at[4]:at[5]]))
	more = strings.TrimLeft(more, ", ")
	if more != "" && !g.formOnly(more) {
		if _, known := g.row(more + " " + name); !known || strings.Contains(more, " ") {
			return a, s, false
		}
	}
	if more != "" {
		name += ", " + more
	}
	return a, name, ok
}

var behindForm = regexp.MustCompile(`^([\p{L}][\p{L} '-]{1,40}?)(?: ?[:=] ?| - | ?\.{2,} ?|, | )((?:about |ca\.? )?[\d.].*|(?:a|half) .+)$`)

// each reads one amount of several things: "1/2 tsp each cinnamon and cloves".
func (g *grammar) each(a amount, rest string) (out []Ingredient, ok bool) {
	m := eachForm.FindStringSubmatch(rest)
	if m == nil || a.vague || len(a.choices) > 0 {
		return nil, false
	}
	names := splitWords(m[1]+m[2], ", ", " and ", " & ")
	if len(names) < 2 || !g.allKnown(names) {
		return nil, false
	}
	for _, n := range names {
		if _, asks := g.p.Ambiguous(n, ""); asks {
			return nil, false
		}
		out = append(out, Ingredient{Name: n, Amount: a.text})
	}
	return out, true
}
