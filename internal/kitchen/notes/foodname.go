package notes

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/pantry"
)

// formOnly reports that words say nothing but how it was cut.
func (g *grammar) formOnly(s string) bool {
	for _, w := range strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == ',' || r == '(' || r == ')' }) {
		if !isForm(w) && w != "und" {
			return false
		}
	}
	return true
}

// named splits a food into its name and its form.
func (g *grammar) named(l *Line, s string) (Ingredient, bool) {
	in := Ingredient{}
	var form, instead []string
	if optional.MatchString(s) {
		l.say("optional in the notes: take it out if you left it out")
	}
	asked := len(l.Asks)
	l.insideBrackets(s)
	bare := strings.Join(strings.Fields(brackets.ReplaceAllString(s, " ")), " ")
	for _, b := range brackets.FindAllString(s, -1) {
		if m := orFood.FindStringSubmatch(b); m != nil && g.orBracket(l, &in, bare, m[1]) {
			return in, true
		}
		if m := orKinds.FindStringSubmatch(b); m != nil && g.kindsBracket(l, &in, strings.TrimSpace(s[:strings.Index(s, b)]), m[1], m[2]) {
			return in, true
		}
	}
	s = g.tells(l, sugarRatio.ReplaceAllString(s, "$1 $2:$3"))
	if form, instead = g.bracketForms(l, s, bare, asked); instead != nil {
		in.Names = instead
		l.ask("which was it? Take the # off one")
		return in, true
	}
	s = strings.TrimSpace(brackets.ReplaceAllString(s, " "))
	if m := percent.FindString(s); m != "" { // rum 38 %
		s, form = strings.Replace(s, m, "", 1), append(form, strings.TrimSpace(m))
	}
	for range 2 {
		s = trailing.ReplaceAllString(s, "")
	}
	s = strings.Join(strings.Fields(strings.Trim(s, " .,;:*-")), " ")
	if orEnd.MatchString(s) {
		l.ask("or what? The line ends there; was this what you used?")
		s = orEnd.ReplaceAllString(s, "")
	}
	if names, cuts := g.listed(s); len(names) > 1 {
		in.Names, in.Form = g.ownNames(l, names), strings.Join(cuts, ", ")
		l.ask("which was it? Take the # off one")
		return in, true
	}
	name, cuts := g.nameOf(joinTail.ReplaceAllString(s, ""))
	name = joinTail.ReplaceAllString(name, "")
	name, lead := g.leadForm(name)
	name, tail := g.tailForm(name)
	in.Form = strings.Join(slices.DeleteFunc(slices.Concat([]string{strings.ToLower(lead)}, form, cuts, []string{tail}), func(w string) bool { return w == "" }), ", ")
	in.Form = strings.TrimSpace(joinTail.ReplaceAllString(in.Form, ""))
	l.doubtForm(in.Form)
	return g.choose(l, in, name)
}

// bracketForms reads what brackets say: how it was cut, or a food used instead; the
// rest is said, or asked of a line that was asked no more than asked questions.
func (g *grammar) bracketForms(l *Line, s, bare string, asked int) (form, instead []string) {
	for _, b := range brackets.FindAllString(s, -1) {
		inner := strings.TrimSpace(strings.Trim(b, "()"))
		more := strings.Trim(againWords.ReplaceAllString(inner, ""), " .,;:/=~-")
		switch {
		case sizedCount.MatchString(inner):
			l.say("beside it stands %s", b)
		case g.formOnly(inner), g.kind(bare, inner):
			form = append(form, inner)
		case g.insteadIn(bare, inner) != "":
			return form, g.ownNames(l, []string{g.insteadIn(bare, inner), inner})
		case more != "":
			l.say("beside it stands %s", b)
			if orLead.MatchString(b) && len(l.Asks) == asked && !g.formOnly(more) { // honey (or 2 cups of sugar)
				l.ask("what went in at the end? Check name and amount")
			}
			if strings.Contains(inner, ", ") && len(aFigure.FindAllString(inner, 2)) > 1 {
				l.ask("what is %s? Check name and amount", b)
			}
		}
	}
	return form, nil
}

// choose settles the name: known, several, unknown, or no food at all.
func (g *grammar) choose(l *Line, in Ingredient, name string) (Ingredient, bool) {
	if name == "" || strings.ContainsAny(name, "=<>") || len(name) > 80 || len(strings.Fields(name)) > 9 || strings.ContainsAny(ratio.ReplaceAllString(name, ""), "0123456789") {
		return in, false
	}
	if row, by, ok := g.p.Told(name, in.Form); ok && eitherWord.MatchString(by) { // "lemon juice, fresh or bottled"
		l.ask("%s: which was it? Check the name", by)
	} else if ok && row.Key != "" { // "sugar, brown"
		in.Form = strings.Trim(strings.Replace(in.Form, by, "", 1), " ,")
		in.Form = strings.ReplaceAll(in.Form, ", , ", ", ")
		return g.choose(l, in, by+" "+name)
	}
	g.besides(l, name, in.Form)
	if g.whichOf(l, name, in.Form) {
		in.Name = name
		return in, true
	}
	if row, ok := g.row(name); ok {
		return g.foundName(l, in, name, row), true
	}
	if a, b, two := strings.Cut(name, " "); two { // Johannisbeeren rot
		if kind := g.turned(a, b); kind != "" {
			return g.choose(l, in, kind)
		}
	}
	if food, colours := g.coloured(name); colours != "" {
		in.Form = strings.Trim(colours+", "+in.Form, ", ")
		return g.choose(l, in, food)
	}
	switch either := g.either(name); len(either) {
	case 0:
	case 1: // two words for one food
		return g.choose(l, in, either[0])
	default:
		in.Names = g.ownNames(l, either)
		l.ask("which was it? Take the # off one")
		return in, true
	}
	if both := splitWords(name, " and ", " und ", " et ", " & "); len(both) > 1 && g.allKnown(both) {
		in.Names = both
		l.ask("how much of each? Write one table for each")
		return in, true
	}
	if jarTalk.MatchString(name) || sentence.MatchString(strings.ReplaceAll(name, "no-cook", "")) || noName.MatchString(name) || len(strings.Fields(name)) > 6 || !lettersOnly(ratio.ReplaceAllString(name, "")) {
		return in, false
	}
	if food, word := g.withWord(name); word != "" {
		if row, _ := g.row(food); row.Class == "fruit" && ofColour.MatchString(word) {
			in.Form = strings.Trim(strings.ToLower(word)+", "+in.Form, ", ")
			return g.choose(l, in, food)
		}
		l.ask("%s is read as %s: a kind of it, or another food? Then write its name and its allergens", name, food)
		in.Form = strings.Trim(strings.ToLower(word)+", "+in.Form, ", ")
		return g.choose(l, in, food)
	}
	in.Name = name
	l.ask("%s is not in the table of ingredients.%s", name, g.hint(name))
	return in, true
}

// whichOf asks of a name that is said of several foods.
func (g *grammar) whichOf(l *Line, name, form string) bool {
	a, ok := g.p.Ambiguous(name, form)
	if ok {
		l.ask("%s may be %s: write the one you used (%s)", name, strings.Join(a.Choices, " or "), a.Why)
	}
	return ok
}

// foundName writes a food under the name any kitchen finds it by, and asks where it
// is another food in French.
func (g *grammar) foundName(l *Line, in Ingredient, name string, row pantry.Ingredient) Ingredient {
	in.Name = name
	g.strange(l, name, in.Form)
	own, known := g.p.Ingredient(name)
	if !known {
		in.Name = row.Name
		l.say("%s is read as %s", name, row.Name)
		g.whichOf(l, row.Name, in.Form)
		return in
	}
	other, ok := g.tongues[2].Ingredient(name)
	switch {
	case !ok || other.Key == own.Key:
	case g.frenchAll:
		in.Name = other.Name
		l.say("%s is read as %s, as in French", name, other.Name)
	case g.french:
		in.Name, in.Names = "", []string{other.Name, own.Name}
		l.ask("%s is %s in French: take the # off one", name, other.Name)
	}
	return in
}

var percent = pattern(`(?i),? \d{1,2}(?:[.,]\d)? ?(?:%|prozent|percent|per cent)(?: ?(?:vol|alc|abv|fat|fett|acidity|acid|säure)\.?)?`)

var ratio = pattern(`\b\d:\d\b`) // gelling sugar 2:1

func lettersOnly(s string) bool {
	return !strings.ContainsAny(s, `0123456789=<>{}[]|\@$%^~+`) && !strings.HasPrefix(s, "'")
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
