package notes

import (
	"slices"
	"strings"
)

// Amounts of foods in a step: "1 kg Quitten mit 400 g Zucker aufkochen". What the
// list of the recipe has already is no more in the pot.

// mostNamed is the most amounts of a step that are asked about.
const mostNamed = 4

// names keeps the amounts of known foods a step names, by their rows; water is no
// question, it boils away.
func (g *grammar) names(l *Line, s string) bool {
	from := 0
	for _, at := range numAt.FindAllStringIndex(s, -1) {
		if at[0] < from || len(l.names) >= 2*mostNamed {
			continue
		}
		a, rest, ok := g.amount(s[at[0]:])
		if !ok || a.text == "" || !measured(a.text) {
			continue
		}
		words := strings.Fields(firstWords(rest))
		for n := min(3, len(words)); n > 0; n-- {
			name, _ := g.leadForm(strings.TrimRight(strings.Join(words[:n], " "), " .,;:"))
			if row, known := g.row(name); known && row.Key != "water" && !isForm(strings.ToLower(name)) && !strings.ContainsAny(name, "0123456789") {
				l.names = append(l.names, a.text+" "+name, row.Key)
				from = at[1]
				break
			}
		}
	}
	return len(l.names) > 0
}

var numAt = pattern(num)

// named asks of the amounts in steps which no line has as a thing in the pot.
func (r *Reading) named(g *grammar) {
	var pot []string
	for _, l := range r.Lines {
		for _, in := range l.Ingredients {
			for _, n := range append(slices.Clone(in.Names), in.Name) {
				row, _ := g.row(n)
				pot = append(pot, row.Key)
			}
		}
	}
	for i := range r.Lines {
		l := &r.Lines[i]
		var open []string
		for k := 0; k+1 < len(l.names); k += 2 {
			if !slices.Contains(pot, l.names[k+1]) {
				open = append(open, l.names[k])
			}
		}
		switch {
		case len(l.names) == 0 || l.Read() || len(l.Asks) > 0:
		case len(open) > 0:
			l.unsay()
			l.ask("is %s one more in the pot, or a step about what is written already? If it is more, write it as an ingredient", strings.Join(open, ", "))
		default:
			l.unsay()
			l.say("a step: what it names stands on a line of its own")
		}
	}
}

// aStep reports that a text begins with an amount and ends in a verb that says what is
// done with it: "1 kg Quitten mit 400 g Zucker mischen". German writes verbs small and
// foods large; a participle tells how a food was cut.
func (g *grammar) aStep(s string) bool {
	for _, one := range strings.Split(s, ". ") {
		words := strings.Fields(strings.TrimRight(brackets.ReplaceAllString(one, " "), " .,;!:"))
		if len(words) < 3 || !capitals.MatchString(one) {
			continue
		}
		last := words[len(words)-1]
		if _, known := g.row(last); smallVerb.MatchString(last) && !known && !isForm(last) && (!participle.MatchString(last) || strings.HasSuffix(last, "geben")) {
			return true
		}
	}
	return frenchStep.MatchString(s)
}

var (
	capitals   = pattern(` \p{Lu}\p{Ll}{2,}`)
	smallVerb  = pattern(`^\p{Ll}{3,}(?:e[nr]?|el)n$`)
	participle = pattern(`^(?:\p{L}{2,4})?ge\p{L}{3,}en$|^(?:ver|zer|be|ent)\p{L}+[oiu]\p{L}+en$`)
	frenchStep = pattern(`(?i)^(?:(?:puis|ensuite|alors|enfin|y|et) )?(?:vers|mélang|incorpor|mesur|pes|coup|lav|port|plac|dépos|dispos|rajout|mix|pass|press|filtr|prépar|recouvr|couvr|mouill|arros|saupoudr|dissou|dilu|rédui|mett|fai|laiss|pren|remett)\p{L}*(?:er|ez|re|ir|tes|t|s) `)
)

// frenchWords and englishWords are words that are in one of the languages alone.
var (
	frenchWords  = pattern(`(?i)\b(?:les|des|et|puis|avec|dans|sucre|cuire|laisser|laissez|minutes de|jus|eau|kg de|g de|confitures?|ajoutez|ajouter|en remuant|pendant|écume|retirez|portez)\b`)
	englishWords = pattern(`(?i)\b(?:the|and|of|with|until|sugar|boil|cups?)\b`)
)

// insteadIn gives the food before a bracket that holds another of its class, and no
// more: "800 g Orangen (Bitterorangen)".
func (g *grammar) insteadIn(bare, inner string) string {
	name, _, _ := strings.Cut(bare, ",")
	name, _ = g.leadForm(strings.TrimSpace(name))
	one, known := g.row(name)
	other, also := g.row(inner)
	if !known || !also || one.Key == other.Key || one.Class != other.Class && !bothSugar(one.Key, other.Key) || g.formOnly(inner) || strings.ContainsAny(inner, "0123456789") || orLead.MatchString("("+inner) {
		return ""
	}
	return name
}

func bothSugar(a, b string) bool {
	return strings.HasPrefix(a, "sugar") && strings.HasPrefix(b, "sugar")
}

// turned gives a German kind as it stands in the table, where it is written behind its
// food: "Johannisbeeren rot", "Zucker braun".
func (g *grammar) turned(food, kind string) string {
	if !capital.MatchString(food) || capital.MatchString(kind) {
		return ""
	}
	for _, end := range []string{"e", "er", "es", "en"} {
		if _, known := g.row(kind + end + " " + food); known && !strings.Contains(kind, " ") {
			return kind + end + " " + food
		}
	}
	return ""
}

// coloured gives the food of "blue or black elderberries" where no colour makes
// another food of it.
func (g *grammar) coloured(name string) (food, colours string) {
	m := twoColours.FindStringSubmatch(name)
	if m == nil || !ofColour.MatchString(m[2]) || !ofColour.MatchString(m[3]) {
		return name, ""
	}
	bare, lead := g.leadForm(m[4])
	row, known := g.row(bare)
	for _, c := range m[2:4] {
		if kind, also := g.row(c + " " + bare); also && kind.Key != row.Key {
			return name, ""
		}
	}
	if !known || row.Class != "fruit" && !flower.MatchString(bare) {
		return name, ""
	}
	return bare, strings.ToLower(strings.TrimSpace(m[1] + " " + lead))
}

var flower = pattern(`(?i)\b(?:petals?|flowers?|blossoms?|blüten\p{L}*|fleurs?|pétales?)\b`)

var twoColours = pattern(`(?i)^((\p{L}+)(?: or | oder | ou | and/or | und/oder |/)(\p{L}+)) (.+)$`)

// ofColour are words that make no other food of a fruit which has no row for them.
// Green is none: it may be unripe.
var ofColour = pattern(`(?i)^(?:red|yellow|blue|black|white|pink|purple|golden|dark|(?:rot|grün|gelb|blau|schwarz|weiß|weiss|dunkl?|hell|wild)(?:e[nrs]?)?|rouges?|vert(?:e?s?)|noire?s?|jaunes?|blanch?e?s?|violet(?:te)?s?|sauvages?)$`)
