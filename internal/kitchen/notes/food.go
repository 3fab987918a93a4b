package notes

import (
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// one reads one thing in the pot; ok is false when the text is none.
func (g *grammar) one(l *Line, s string) ([]Ingredient, bool) {
	if out, ok := g.partOf(l, juiceOne.ReplaceAllString(s, "$2 of $1 $3$4")); ok {
		return out, true
	}
	if out, ok := g.equalled(l, s); ok {
		return out, true
	}
	if told, say := scraped(s); say != "" {
		s = told
		l.say("%s", say)
	}
	if m := orMore.FindStringSubmatch(s); m != nil { // 3 or more tablespoons
		s = m[1] + " " + s[len(m[0]):]
		l.ask("or %s: how much was it in the end? Check amount", strings.ToLower(m[2]))
	}
	g.french = frenchOf.MatchString(s)
	s = toCover.ReplaceAllString(g.eachFirst(s), "$2 $1")
	a, rest, ok := g.amount(s)
	if !ok {
		a, rest, ok = g.behind(s)
	}
	if m := formLead.FindStringSubmatch(s); !ok && m != nil && g.formOnly(m[1]) { // scrubbed 2 lemons
		a, rest, ok = g.amount(m[2])
		rest += ", " + strings.ToLower(strings.TrimRight(m[1], " ,"))
	}
	if !ok {
		if in, unknown := g.unknownBehind(l, s); unknown {
			return []Ingredient{in}, true
		}
	}
	if !ok || rest == "" || timeWord.MatchString(rest) {
		return nil, false
	}
	if after, beside, doubt := g.afterFood(a.text, rest); after != rest {
		rest, a.doubt = after, doubt
		if m := massIn.FindStringSubmatch(beside); m != nil {
			a.beside = m[1] + " " + m[2]
		}
	}
	if m := moreOf.FindStringSubmatch(rest); m != nil {
		rest = m[1]
		l.say("what was added is one more thing in the pot")
	}
	a, rest = weighed(a, rest)
	if share.MatchString(rest) {
		l.ask("that is a share: how much was it in all?")
		return nil, true
	}
	if q, err := unit.ParseQuantity(a.text); err == nil && (q.Dim == unit.ByMass || q.Piece != "") {
		rest = lumpOf.ReplaceAllString(rest, "")
	}
	if m := cutFirst.FindStringSubmatch(rest); m != nil { // 2 cups 1/2-inch slices rhubarb
		rest = m[2] + ", " + m[1] + m[3]
	}
	if m := stalksOf.FindStringSubmatch(rest); m != nil && g.whole("1 kg "+m[1]) {
		rest = m[1] + rest[len(m[0]):]
	}
	if m := juiceFrom.FindStringSubmatch(rest); m != nil {
		if row, _ := g.row(m[1]); row.Words["en"].Singular != "" {
			rest = row.Words["en"].Singular + " juice"
		}
	}
	rest = g.preparedJuice(l, rest)
	a, rest = plusBehind(l, a, rest)
	a, rest = g.pulped(l, a, rest)
	if out, ok := g.each(l, a, rest); ok {
		g.sayAmount(l, a, &out[0])
		return out, true
	}
	in, ok := g.named(l, rest)
	if !ok {
		return nil, false
	}
	if d := pintDoubt(a.text, rest); d != "" && a.doubt == "" {
		a.doubt = d
	}
	if m := prepared.FindStringSubmatch(rest); m != nil && a.text != "" && len(a.choices) == 0 {
		net := m[1] + m[2]
		if m[2] == "" {
			net += a.text[len(numHead.FindString(a.text)):]
		}
		if valid(a.text, net) {
			a.choices = []string{a.text, net}
		}
	}
	if m := upTo.FindStringSubmatch(rest); m != nil && a.text != "" {
		n := numHead.FindString(a.text)
		other := m[1] + m[2]
		if m[2] == "" {
			other += a.text[len(n):]
		}
		if valid(other) {
			a.choices = []string{a.text, other}
		}
	}
	if row, _ := g.row(in.Name); row.Class == "fruit" && ofLiquid.MatchString(a.text) {
		l.ask("the juice of it? Then write: %s juice", row.Words["en"].Singular)
	}
	if row, _ := g.row(in.Name); row.Class == "fruit" && partWords.MatchString(rest) && !partWords.MatchString(in.Name) {
		l.ask("the whole fruit, or only its juice or zest? Then write: juice of %s", strings.TrimSpace(a.text+" "+in.Name))
	}
	if g.british && len(a.choices) == 0 {
		if a.choices = pints(a.text); len(a.choices) > 0 {
			a.say = joined(a.say, "a pint is 568 ml in Britain and 473 ml in America, and a quart two pints")
		}
	}
	a = otherMass(a, rest)
	a, in = g.cupsWeighed(l, a, rest, in)
	in.Amount, in.Amounts = a.text, a.choices
	if a.gross {
		in.Form = g.gross(in)
	}
	if in.Name == "" && len(in.Names) == 0 {
		return nil, false
	}
	g.sayAmount(l, a, &in)
	return []Ingredient{in}, true
}

var orMore = pattern(`(?i)^(` + num + `) (?:or|oder|ou) (more|less|fewer|mehr|weniger|plus|moins) `)

var formLead = pattern(`^((?:\p{L}+,? ){1,4})(\d.*)$`)

// ofLiquid are measures of what runs.
var ofLiquid = pattern(`(?i) (?:dash|drops?|splash|squeeze|glug|spritzer|tropfen|schuss|trait|gouttes?|filet)(?:es)?$`)

// cutFirst is how a food was cut, before it.
var cutFirst = pattern(`(?i)^(` + num + `[- ]?(?:inch|in\.|cm)(?:-thick| thick)? (?:slices?|pieces?|cubes?|chunks?|dice|lengths?)) (?:of )?([\p{L} -]+)(.*)$`)

// juiceOne are the juices of fruit, counted: "1 jus de citron".
var juiceOne = pattern(`(?i)^(\d{1,2}(?: 1/2)?|\d/\d) (jus|juices?|saft) (?:de |d'|of |von )(?:(?:gros|petit|large|small)s? )?([\p{L} -]+)( ?\(.*\)|,.*)?$`)

var orLead = pattern(`(?i)^\((?:or|oder|ou|bzw\.) `)

// againWords are what brackets hold that say an amount again, and no more.
var againWords = pattern(`(?i)(?:` + againOne + `)\b|` + num + `|\b(?:about|abt|approx(?:imately)?|or|ca|circa|etwa|env|environ|around|roughly|to|each|total|in all|so|more or less|` + holder + `|optional|facultatif|if desired|nach belieben|wer mag)\b`)

var moreOf = pattern(`(?i)^(?:more|extra|additional|another|weitere[rns]?) (.+)$`)

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
	var form []string
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
	for _, b := range brackets.FindAllString(s, -1) {
		switch inner := strings.TrimSpace(strings.Trim(b, "()")); {
		case sizedCount.MatchString(inner):
			l.say("beside it stands %s", b)
		case g.formOnly(inner), g.kind(bare, inner):
			form = append(form, inner)
		case g.insteadIn(bare, inner) != "":
			in.Names = g.ownNames(l, []string{g.insteadIn(bare, inner), inner})
			l.ask("which was it? Take the # off one")
			return in, true
		case strings.Trim(againWords.ReplaceAllString(inner, ""), " .,;:/=~-") != "":
			l.say("beside it stands %s", b)
			if orLead.MatchString(b) && len(l.Asks) == asked && !g.formOnly(strings.Trim(againWords.ReplaceAllString(inner, ""), " .,;:/=~-")) { // honey (or 2 cups of sugar)
				l.ask("what went in at the end? Check name and amount")
			}
			if strings.Contains(inner, ", ") && len(aFigure.FindAllString(inner, 2)) > 1 {
				l.ask("what is %s? Check name and amount", b)
			}
		}
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
	if a, ok := g.p.Ambiguous(name, in.Form); ok {
		in.Name = name
		l.ask("%s may be %s: write the one you used (%s)", name, strings.Join(a.Choices, " or "), a.Why)
		return in, true
	}
	if row, ok := g.row(name); ok {
		in.Name = name
		g.strange(l, name, in.Form)
		if own, known := g.p.Ingredient(name); !known {
			in.Name = row.Name // by the table's own name any kitchen finds it
			l.say("%s is read as %s", name, row.Name)
		} else if other, ok := g.tongues[2].Ingredient(name); ok && other.Key != own.Key && (g.french || g.frenchAll) {
			if g.frenchAll {
				in.Name = other.Name
				l.say("%s is read as %s, as in French", name, other.Name)
				return in, true
			}
			in.Name, in.Names = "", []string{other.Name, own.Name}
			l.ask("%s is %s in French: take the # off one", name, other.Name)
		}
		return in, true
	}
	if a, b, two := strings.Cut(name, " "); two { // Johannisbeeren rot
		if kind := g.turned(a, b); kind != "" {
			return g.choose(l, in, kind)
		}
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
