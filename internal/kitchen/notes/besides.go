package notes

import (
	"slices"
	"strings"
)

const moreFood = "too? Then write its amount"

// besides asks of a word of form that is a food itself: "500 g strawberries,
// raspberries".
func (g *grammar) besides(l *Line, name, form string) {
	row, known := g.row(name)
	for _, f := range strings.Split(form, ",") {
		if other := g.hidden(f, row.Key); known && other != "" {
			l.ask("%s "+moreFood+" on a line of its own", other)
			continue
		}
		if why, another := g.p.Another(name, f); another {
			l.ask("%s? %s: write its name", strings.TrimSpace(f)+" "+name, why)
			continue
		}
		if in := g.within(f, row.Key); known && in != "" {
			l.ask("%s "+moreFood+" on a line of its own", in)
			continue
		}
		f, _ = g.leadForm(strings.TrimSpace(f))
		if other, ok := g.row(f); ok && known && other.Key != row.Key && !g.formOnly(f) && !strings.ContainsAny(f, "0123456789") {
			l.ask("%s "+moreFood+" on a line of its own", f)
		}
	}
}

// kind reports a word that tells which kind of a food it is: Victoria of plums.
func (g *grammar) kind(name, word string) bool {
	name, _, _ = strings.Cut(name, ",")
	name, _ = g.leadForm(strings.TrimSpace(name))
	row, known := g.row(name)
	kind, also := g.row(word + " " + name)
	return known && also && row.Key == kind.Key && len(strings.Fields(word)) <= 3
}

// strange asks of a word or two behind a food that are no cut, no kind of it and
// no food known here: "plums, Amaretto".
func (g *grammar) strange(l *Line, name, form string) {
	for _, f := range strings.Split(form, ",") {
		f = strings.TrimSpace(f)
		words := strings.Fields(f)
		if len(words) == 0 || len(words) > 2 || strings.ContainsAny(f, "0123456789()%") || g.kind(name, f) {
			continue
		}
		if _, known := g.row(f); known || !capital.MatchString(words[0]) || slices.ContainsFunc(words, func(w string) bool { return isForm(strings.ToLower(w)) || plainWord.MatchString(w) }) {
			continue
		}
		l.ask("is %s a kind of %s, or another food? Leave it in form, or write it as an ingredient", f, name)
	}
}

var (
	capital   = pattern(`^\p{Lu}\p{Ll}`)
	plainWord = pattern(`(?i)^(?:and|&|or|for|in|to|of|the|from|und|oder|et|ou|only|more|less|each)$|(?:ed|ing|ly)$`)
)

// remarked takes a sentence off from behind a food with its amount: what it says of
// the food is asked about.
func (g *grammar) remarked(l *Line, s string) string {
	if m := thatIs.FindString(s); m != "" && (share.MatchString(m) || !strings.ContainsAny(m, "0123456789")) {
		s = strings.TrimSuffix(s, m)
		l.say("beside it stands: %s", strings.Trim(m, " ,"))
	}
	m := behindStop.FindStringSubmatch(s)
	if m == nil || strings.ContainsAny(m[2], "0123456789") || jarTalk.MatchString(m[2]) || hasMinutes(m[2]) {
		return s
	}
	try := Line{}
	if in, ok := g.one(&try, m[1]); !ok || len(in) != 1 || !g.knows(in[0].Name) {
		return s
	}
	if g.foodIn(m[2]) || eitherWord.MatchString(m[2]) {
		l.ask("%q: what was it in the end? Check name and amount", m[2])
	} else {
		l.say("beside it stands: %s", m[2])
	}
	return m[1]
}

var (
	behindStop = pattern(`^(\S.*?\p{L}{3,}\)?)[.!?] (\p{Lu}\p{L}+ .*|I .*)$`)
	eitherWord = pattern(`(?i)\b(?:or|oder|ou|instead|statt|more|less|mehr|weniger|plus|moins)\b`)
)

// loose reads a line that begins with an amount of a known food and goes on in
// words of its own; they are asked about.
func (g *grammar) loose(l *Line, s string) {
	a, rest, ok := g.amount(s)
	words := strings.Fields(rest)
	if !ok || a.vague || len(words) < 2 || len(words) > mostLoose || hasMinutes(rest) || jarTalk.MatchString(rest) {
		return
	}
	for n := min(5, len(words)-1); n > 0; n-- {
		head := strings.Join(words[:n], " ")
		name, lead := g.leadForm(strings.TrimRight(head, " ,.;:-"))
		if !g.knows(name) || g.formOnly(name) || inBrackets(head, len(head)) {
			continue
		}
		said := Line{}
		tail := strings.Trim(strings.Join(words[n:], " "), " ,.;:-")
		in, ok := g.choose(&said, Ingredient{Form: strings.Trim(lead+", "+tail, " ,")}, name)
		if !ok {
			return
		}
		in.Amount, in.Amounts = a.text, a.choices
		said.ask("is %q "+formDoubt+"? Write each thing on its own line", tail)
		g.sayAmount(&said, a, &in)
		l.Ingredients, l.Asks, l.Says = []Ingredient{in}, said.Asks, append(l.Says, said.Says...)
		return
	}
}

// mostLoose is the most words of a line that is read so.
const mostLoose = 16

// hidden gives a food that stands behind an amount among the words of a form:
// "2 cm ginger root". A word in or for something else is none.
func (g *grammar) hidden(form, key string) string {
	if !strings.ContainsAny(form, "0123456789") {
		return ""
	}
	words := strings.FieldsFunc(form, func(r rune) bool { return strings.ContainsRune(" ,/()'", r) })
	for n := min(3, len(words)); n > 0; n-- {
		for i := 0; i+n <= len(words); i++ {
			said := strings.Join(words[i:i+n], " ")
			if strings.ContainsAny(said, "0123456789") {
				continue
			}
			row, ok := g.row(said)
			if _, asks := g.p.Ambiguous(said, ""); (ok && row.Key != key || asks) && !g.formOnly(said) && (i == 0 || !beside.MatchString(words[i-1])) {
				return said
			}
		}
	}
	return ""
}

// within gives a food that stands among four words of a form or more.
func (g *grammar) within(form, key string) string {
	words := strings.FieldsFunc(form, func(r rune) bool { return strings.ContainsRune(" ,/()'", r) })
	if len(words) < 2 || len(words) < 4 && !eitherWord.MatchString(form) || g.formOnly(form) {
		return ""
	}
	for n := min(3, len(words)); n > 0; n-- {
		for i := 0; i+n <= len(words); i++ {
			said := strings.Join(words[i:i+n], " ")
			row, ok := g.row(said)
			if ok && row.Key != key && !g.formOnly(said) && len(said) > 2 && !(i > 0 && beside.MatchString(words[i-1])) && !(i > 1 && beside.MatchString(words[i-2])) && !ofIt.MatchString(strings.Join(words[max(0, i-2):i+n], " ")) {
				return said
			}
		}
	}
	return ""
}

// ofIt is a part of the food itself: "bruised parts of the apple".
var ofIt = pattern(`(?i)\b(?:parts?|bits?|ends?|pieces|rest|side|tops?|surface) of (?:the |each )?`)

var beside = pattern(`(?i)^(?:in|for|as|like|from|with|without|no|than|to|à|pour|sans|avec|comme|ohne|für|wie|mit)$`)

// kindsBracket asks between two kinds in brackets: "vinegar (white or cider)".
func (g *grammar) kindsBracket(l *Line, in *Ingredient, bare, a, b string) bool {
	name, _, _ := strings.Cut(bare, ",")
	base, _ := g.leadForm(name)
	_, known := g.row(base)
	if g.formOnly(a) && g.formOnly(b) || !known {
		return false
	}
	x, one := g.row(a + " " + base)
	y, other := g.row(b + " " + base)
	if one && other && x.Key == y.Key {
		return false
	}
	if one && other {
		in.Names = []string{a + " " + base, b + " " + base}
		l.ask("which was it? Take the # off one")
		return true
	}
	l.ask("%s or %s: which was it? Check the name", a, b)
	return false
}

var orKinds = pattern(`(?i)^\(((?:\p{L}+ ?-?){1,3}?),? (?:or|oder|ou) ((?:\p{L}+ ?-?){1,3})\)$`)

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
	if !g.formOnly(other) && !orElse.MatchString("(or "+other) && !less.MatchString("("+other) && !optional.MatchString(other) && other != "so" {
		l.ask("or %s: which was it? Check the name", other)
	}
	return false
}
