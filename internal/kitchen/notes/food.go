package notes

import (
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
	s = g.amountFirst(l, s)
	a, rest, ok := g.amountAnywhere(s)
	if !ok {
		if in, unknown := g.unknownBehind(l, s); unknown {
			return []Ingredient{in}, true
		}
	}
	if !ok || rest == "" || timeWord.MatchString(rest) {
		return nil, false
	}
	a, rest = g.besideAmount(l, a, rest)
	if share.MatchString(rest) {
		l.ask("that is a share: how much was it in all?")
		return nil, true
	}
	rest = g.plainFood(l, a, rest)
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
	a = otherMass(g.amountChoices(a, rest), rest)
	g.askPart(l, a, in, rest)
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

// amountFirst puts the amount first and takes off what is said around it.
func (g *grammar) amountFirst(l *Line, s string) string {
	if told, say := scraped(s); say != "" {
		s = told
		l.say("%s", say)
	}
	if m := orMore.FindStringSubmatch(s); m != nil { // 3 or more tablespoons
		s = m[1] + " " + s[len(m[0]):]
		l.ask("or %s: how much was it in the end? Check amount", strings.ToLower(m[2]))
	}
	g.french = frenchOf.MatchString(s)
	return toCover.ReplaceAllString(g.eachFirst(g.bracketFirst(s)), "$2 $1")
}

// amountAnywhere reads the amount before a food, behind it, or behind how it was cut.
func (g *grammar) amountAnywhere(s string) (a amount, rest string, ok bool) {
	if a, rest, ok = g.amount(s); ok {
		return a, rest, ok
	}
	if a, rest, ok = g.behind(s); ok {
		return a, rest, ok
	}
	if m := formLead.FindStringSubmatch(s); m != nil && g.formOnly(m[1]) { // scrubbed 2 lemons
		a, rest, ok = g.amount(m[2])
		rest += ", " + strings.ToLower(strings.TrimRight(m[1], " ,"))
	}
	return a, rest, ok
}

// besideAmount takes from the words behind an amount what belongs to it.
func (g *grammar) besideAmount(l *Line, a amount, rest string) (amount, string) {
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
	return weighed(a, rest)
}

// plainFood says a food in the words of the table: how it was cut behind it, the
// juice of a fruit as that juice.
func (g *grammar) plainFood(l *Line, a amount, rest string) string {
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
	return g.preparedJuice(l, rest)
}

// amountChoices finds the second of two amounts: prepared, up to, of a British pint.
func (g *grammar) amountChoices(a amount, rest string) amount {
	if d := pintDoubt(a.text, rest); d != "" && a.doubt == "" {
		a.doubt = d
	}
	for _, form := range []pattern{prepared, preparedTo} {
		if net, ok := a.inItsUnit(form.FindStringSubmatch(rest)); ok && len(a.choices) == 0 && valid(a.text) {
			a.choices = []string{a.text, net}
		}
	}
	if other, ok := a.inItsUnit(upTo.FindStringSubmatch(rest)); ok {
		a.choices = []string{a.text, other}
	}
	if g.british && len(a.choices) == 0 {
		if a.choices = pints(a.text); len(a.choices) > 0 {
			a.say = joined(a.say, "a pint is 568 ml in Britain and 473 ml in America, and a quart two pints")
		}
	}
	return a
}

// inItsUnit gives a number and the measure found behind it, or else the measure of
// the amount it goes with.
func (a amount) inItsUnit(m []string) (string, bool) {
	if m == nil || a.text == "" {
		return "", false
	}
	other := m[1] + m[2]
	if m[2] == "" {
		other += a.text[len(numHead.FindString(a.text)):]
	}
	return other, valid(other)
}

// askPart asks whether a fruit went in whole, or its juice or zest.
func (g *grammar) askPart(l *Line, a amount, in Ingredient, rest string) {
	row, _ := g.row(in.Name)
	if row.Class != "fruit" {
		return
	}
	if ofLiquid.MatchString(a.text) {
		l.ask("the juice of it? Then write: %s juice", row.Words["en"].Singular)
	}
	if partWords.MatchString(rest) && !partWords.MatchString(in.Name) {
		l.ask("the whole fruit, or only its juice or zest? Then write: juice of %s", strings.TrimSpace(a.text+" "+in.Name))
	}
}

var orMore = pattern(`(?i)^(` + num + `) (?:or|oder|ou) (more|less|fewer|mehr|weniger|plus|moins) `)

var formLead = pattern(`^((?:\p{L}+,? ){1,4})(\d.*)$`)

// ofLiquid are measures of what runs.
var ofLiquid = pattern(`(?i) (?:dash|drops?|splash|squeeze|glug|spritzer|tropfen|schuss|trait|gouttes?|filet)(?:es)?$`)

// cutFirst is how a food was cut, before it.
var cutFirst = pattern(`(?i)^(` + num + `[- ]?(?:inch|in\.|cm)(?:-thick| thick)? (?:slices?|pieces?|cubes?|chunks?|dice|lengths?)) (?:of )?([\p{L} -]+)(.*)$`)

// juiceOne are the juices of fruit, counted: "1 jus de citron".
var juiceOne = pattern(`(?i)^(\d{1,2}(?: 1/2)?|\d/\d) (jus|juices?|saft) (?:de |d'|of |von )(?:(?:gros|petit|large|small)s? )?([\p{L} -]+)( ?\(.*\)|,.*)?$`)

var orLead = pattern(`(?i)^\((?:or|oder|ou|bzw\.|` + insteadWord + `) `)

// againWords are what brackets hold that say an amount again, and no more.
var againWords = pattern(`(?i)(?:` + againOne + `)\b|` + num + `|\b(?:about|abt|approx(?:imately)?|or|ca|circa|etwa|env|environ|around|roughly|to|each|total|in all|so|more or less|` + holder + `|optional|facultatif|if desired|nach belieben|wer mag)\b`)

var moreOf = pattern(`(?i)^(?:more|extra|additional|another|weitere[rns]?) (.+)$`)
