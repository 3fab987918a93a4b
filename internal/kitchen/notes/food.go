package notes

import (
	"regexp"
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

var (
	partForm  = regexp.MustCompile(`(?i)^(?:the |le |der |das )?((?:finely |freshly |coarsely )?(?:grated |pared |strained |squeezed |fresh |shredded |abgeriebene )*)(juice|zest|rind|peel|saft|schale|jus|zestes?)(?: (?:and|und|et) (?:the |grated )*(juice|zest|rind|peel|saft|schale|jus|zestes?))? (?:of|from|von|d'|de |d'une? )[ ]?(.+)$`)
	partAfter = regexp.MustCompile(`(?i)^(` + num + `) ((?:large |medium |small )?[\p{L} ]+?)(?:,| -+)? (?:the )?((?:grated |pared |strained )*)(juice|zest|rind|peel)(?:d| only| of)?(?: (?:and|&) (?:grated )?(juice|zest|rind|peel))?(?: of)?$`)
	genitive  = regexp.MustCompile(`(?i)^((?:der |den )?(?:saft|schale|abgeriebene schale)) eine[rs] `)
	partNames = map[string]string{"juice": "juice", "saft": "juice", "jus": "juice", "zest": "zest", "rind": "zest", "peel": "zest", "schale": "zest", "zeste": "zest", "zestes": "zest"}
	brackets  = regexp.MustCompile(`\([^()]*\)`)
	trailing  = regexp.MustCompile(`(?i)[ ,;-]*\b(?:if desired|if (?:you )?(?:like|wish)|optional|to taste|divided|as needed|if necessary|if needed|approximately|about|or to taste|facultatif|nach belieben|wer mag)\b\.?[ ]*$`)
	optional  = regexp.MustCompile(`(?i)\b(?:if desired|if (?:you )?(?:like|wish)|optional|facultatif|nach belieben|wer mag)\b`)
	sentence  = regexp.MustCompile(`(?i)\b(?:is|are|was|were|until|then|stir|stirring|boil|bring|cook|simmer|remove|pour|let|stand|mix|combine|measure|place|heat|fill|wash|should|will|it|we|they|i)\b`)
	upTo      = regexp.MustCompile(`(?i)\((?:or|to|up to) (` + num + `)\b`)
	cutForm   = regexp.MustCompile(` -+ |; |, | - `)
)

// one reads one thing in the pot; ok is false when the text is none.
func (g *grammar) one(l *Line, s string) ([]Ingredient, bool) {
	if out, ok := g.partOf(l, s); ok {
		return out, true
	}
	a, rest, ok := g.amount(s)
	if !ok {
		a, rest, ok = g.behind(s)
	}
	if !ok || rest == "" || timeWord.MatchString(rest) {
		return nil, false
	}
	in, ok := g.named(l, rest)
	if !ok {
		return nil, false
	}
	if m := upTo.FindStringSubmatch(rest); m != nil && a.text != "" {
		n := numHead.FindString(a.text)
		a.choices = []string{a.text, m[1] + a.text[len(n):]}
	}
	in.Amount, in.Amounts = a.text, a.choices
	if in.Name == "" && len(in.Names) == 0 {
		return nil, false
	}
	g.sayAmount(l, a, &in)
	return []Ingredient{in}, true
}

// sayAmount tells what is open in an amount.
func (g *grammar) sayAmount(l *Line, a amount, in *Ingredient) {
	if a.say != "" {
		l.say("%s", a.say)
	}
	switch {
	case a.vague:
		in.Amount = ""
		l.ask("how much is that? Weigh it, or give spoons")
	case len(a.choices) > 0:
		in.Amount = ""
		l.ask("how much was it? Take the # off one, or write your own")
	default:
		g.sayPiece(l, in)
	}
}

// sayPiece asks for the weight of a pack or a handful nobody knows.
func (g *grammar) sayPiece(l *Line, in *Ingredient) {
	q, err := unit.ParseQuantity(in.Amount)
	if err != nil || q.Dim != unit.ByCount || q.Part != "" {
		return
	}
	row, known := g.row(in.Name)
	if m, ok := g.p.Measure(q.Piece, row); ok && m.Ask != "" {
		l.ask("%s", m.Ask)
	} else if known && !ok && row.PieceG <= 0 {
		l.ask("what one of them weighs is not known: give a weight or a kitchen measure")
	}
}

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
	n := numHead.FindString(of)
	if n == "" {
		if _, ok := g.row(of); !ok {
			return nil, false
		}
		n, of = "1", "1 "+of
	}
	fruit := strings.TrimSpace(brackets.ReplaceAllString(of[len(n):], ""))
	fruit, form, _ := strings.Cut(fruit, ",")
	word, size := strings.TrimSpace(fruit), ""
	if first, more, cut := strings.Cut(word, " "); cut && sizes[strings.ToLower(first)] {
		word, size = more, first+" "
	}
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
		in := Ingredient{Name: row.Words["en"].Singular + " " + part, Amount: part + " of " + n + " " + size + word, Form: strings.TrimSpace(form)}
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

// formOnly reports that words say nothing but how it was cut.
func (g *grammar) formOnly(s string) bool {
	for _, w := range strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == ',' || r == '(' || r == ')' }) {
		if !forms[w] {
			return false
		}
	}
	return true
}

// named splits a food into its name and its form.
func (g *grammar) named(l *Line, s string) (Ingredient, bool) {
	in := Ingredient{}
	var form []string
	if optional.MatchString(s) {
		l.say("optional in the notes: take it out if you left it out")
	}
	for _, b := range brackets.FindAllString(s, -1) {
		if inner := strings.Trim(b, "()"); g.formOnly(inner) {
			form = append(form, inner)
		}
	}
	s = strings.TrimSpace(brackets.ReplaceAllString(s, " "))
	for range 2 {
		s = trailing.ReplaceAllString(s, "")
	}
	s = strings.Join(strings.Fields(strings.Trim(s, " .,;:*-")), " ")
	segments := cutForm.Split(s, -1)
	name := ""
	for i, seg := range segments {
		seg = strings.TrimSpace(seg)
		switch {
		case name != "":
			form = append(form, seg)
		case g.formOnly(seg) && i < len(segments)-1:
			form = append(form, seg)
		default:
			name = seg
		}
	}
	name, lead := g.leadForm(name)
	lead = strings.ToLower(lead)
	in.Form = strings.Join(slices.DeleteFunc(append([]string{lead}, form...), func(w string) bool { return w == "" }), ", ")
	return g.choose(l, in, name)
}

// leadForm takes the words of form from before a name, unless with them it is
// another food: "dried apricots".
func (g *grammar) leadForm(name string) (rest, lead string) {
	words := strings.Fields(name)
	n := 0
	for n < len(words)-1 && forms[strings.ToLower(strings.Trim(words[n], ","))] {
		n++
	}
	if n == 0 {
		return name, ""
	}
	rest = strings.Join(words[n:], " ")
	whole, ok := g.row(name)
	bare, also := g.row(rest)
	if ok && (!also || bare.Key != whole.Key) {
		return name, ""
	}
	return rest, strings.TrimSuffix(strings.Join(words[:n], " "), " and")
}

// choose settles the name: known, several, unknown, or no food at all.
func (g *grammar) choose(l *Line, in Ingredient, name string) (Ingredient, bool) {
	if name == "" || len(name) > 80 || len(strings.Fields(name)) > 9 || strings.ContainsAny(ratio.ReplaceAllString(name, ""), "0123456789") {
		return in, false
	}
	if a, ok := g.p.Ambiguous(name, in.Form); ok {
		in.Name = name
		l.ask("%s may be %s: write the one you used (%s)", name, strings.Join(a.Choices, " or "), a.Why)
		return in, true
	}
	if _, ok := g.row(name); ok {
		in.Name = name
		return in, true
	}
	if either := g.either(name); len(either) > 1 {
		in.Names = either
		l.ask("which was it? Take the # off one")
		return in, true
	}
	if both := splitWords(name, " and ", " und ", " et ", " & "); len(both) > 1 && g.allKnown(both) {
		in.Names = both
		l.ask("how much of each? Write one table for each")
		return in, true
	}
	if sentence.MatchString(name) || len(strings.Fields(name)) > 6 || !lettersOnly(name) {
		return in, false
	}
	in.Name = name
	hint := ""
	if near := g.p.Suggest(name); len(near) > 0 {
		hint = " Did you mean " + strings.Join(near, ", ") + "?"
	}
	l.ask("%s is not in the table of ingredients.%s", name, hint)
	return in, true
}

var ratio = regexp.MustCompile(`\b\d:\d\b`) // gelling sugar 2:1

func lettersOnly(s string) bool { return !strings.ContainsAny(s, `0123456789=<>{}[]|\@$%^~`) }

// either gives the foods of "butter or margarine", "lemon or lime juice"; the
// words they share stand at the end.
func (g *grammar) either(name string) []string {
	out := splitWords(name, " or ", " oder ", " ou ", "/", " and/or ")
	if len(out) < 2 {
		return nil
	}
	last := strings.Fields(out[len(out)-1])
	for i, w := range out[:len(out)-1] {
		for n := len(last) - 1; n > 0; n-- {
			long := w + " " + strings.Join(last[len(last)-n:], " ")
			if _, ok := g.row(long); ok {
				out[i] = long
				break
			}
		}
	}
	for _, w := range out {
		if _, ok := g.row(w); ok {
			return out
		}
	}
	return nil
}

func (g *grammar) allKnown(names []string) bool {
	return !slices.ContainsFunc(names, func(n string) bool { _, ok := g.row(n); return !ok })
}

func splitWords(s string, seps ...string) []string {
	out := []string{s}
	for _, sep := range seps {
		var next []string
		for _, o := range out {
			next = append(next, strings.Split(o, sep)...)
		}
		out = next
	}
	for i := range out {
		out[i] = strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(out[i]), "or "))
	}
	return slices.DeleteFunc(out, func(w string) bool { return w == "" })
}
