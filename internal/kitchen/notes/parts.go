package notes

import (
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// How the parts of a fruit are said before "of": "the finely grated zest and juice".
const (
	partHow  = `(?:(?:finely|freshly|coarsely|thinly|grated|pared|strained|squeezed|fresh|shredded|sliced|frisch\p{L}*|fein\p{L}*|dünn|ab)?(?:ge(?:rieben|presst)\p{L}*|gerieben\p{L}*)? )*?`
	partOne  = `(juice|zest|rinds?|peel|skins?|saft|schale|abrieb|jus|zestes?|écorces?)`
	partLead = `(?:the |le |la |les |l'|der |die |das |den )?(` + partHow + `)` + partOne + `(?:,? ?(?:and|&|und|u\.|u|et|\+|plus) (?:the |le |les |der |die |das )?(` + partHow + `)` + partOne + `)?`
)

// Parts of a fruit, one amount of several things, and amounts that stand behind
// their food.
var (
	genitive   = pattern(`(?i)^(` + partLead + `) (?:von )?eine[rs] (halben )?`)
	partNumber = pattern(`(?i)^(` + partLead + `)(?:,? \(?only\)?)? (\d)`)
	saidPart   = pattern(`(?i)^(?:fresh(?:ly)? )?(?:squeezed |grated )?(\p{L}+?) ?(juice|zest|rind|peel|saft|schale) (?:from|of|von|aus) (?:about |ca\.? )?(\d.*)$`)
	aboutIn    = pattern(`(?i) \((?:ca\.?|about|etwa|env\.?|environ|equat\p{L}+ to|equals|gives|ergibt|yields|total) [^()]*\)$`)
	partForm   = pattern(`(?i)^` + partLead + ` ?(?:of|from|von|v\.|aus|d'|de |du |d'une?\b)[ ]?(.+)$`)
	partAfter  = pattern(`(?i)^(` + num + `) ((?:large |medium |small )?[\p{L} -]+?)(?:,|:| -+)? \(?(?:the |only |nur |davon )?(?:der |den |die |das |le |les |son |leur )?((?:grated |finely |pared |strained |abgeriebene[rn]? |abgerieben |fein |frisch |gepresster? |ausgepresster? |ganzer? |etwas |wenig )*)(juice|zest|rind|peel|saft|schale|jus)(?:e?d| only| of| davon| uniquement| seulement| seul| pressé)?(?:,? ?(?:and|&|und|et|\+) ?(?:the )?(?:grated )?(juice|zest|rind|peel|saft|schale)(?:e?d)?)?(?: of)?\)?$`)
	partNames  = map[string]string{"juice": "juice", "saft": "juice", "jus": "juice", "zest": "zest", "rind": "zest", "rinds": "zest", "peel": "zest", "skin": "zest", "skins": "zest", "schale": "zest", "abrieb": "zest", "zeste": "zest", "zestes": "zest", "écorce": "zest", "écorces": "zest"}
	juiceFrom  = pattern(`(?i)^(?:fresh )?juice (?:from|of) (?:about )?(?:` + num + ` )?(?:large |small |medium )?([\p{L} ]+)$`)
	partWords  = pattern(`(?i)\b(?:juiced?|zest(?:ed)?|saft|schale|jus|zestes?|abrieb|squeezed|ausgepresst|gepresst|pressée?s?)(?:$|[^\p{L}])`)
	halfPart   = pattern(`(?i)^half (?:of )?the (juice|zest|rind|peel) of (?:an? |one |1 )([\p{L} ]+)$`)
	orFruit    = pattern(`(?i)^(?:` + num + ` )?([\p{L} ]+?) (?:or|oder|ou) ([\p{L} ]+)$`)
	juiceOnly  = pattern(`(?i)^(?:prepared )?(?:fruit )?juice \(([^()]*)\)`)
)

// partOf reads "juice of 2 lemons" and "2 lemons, juice and zest".
func (g *grammar) partOf(l *Line, s string) ([]Ingredient, bool) {
	parts, of, how := []string(nil), "", ""
	s = partLater.ReplaceAllString(s, "$1$2 and $5 of $3 $4")
	s = gratedAnd.ReplaceAllString(s, "$1, grated zest and juice")
	s = g.partSaid(g.fruitFirst(possessive.ReplaceAllString(s, "$3 of $1 $2")))
	s = partNumber.ReplaceAllString(oneOf(aboutIn.ReplaceAllString(s, "")), "$1 von $6")
	if m := halfPart.FindStringSubmatch(s); m != nil { // half the juice of a lemon
		s = m[1] + " of 1/2 " + m[2]
	}
	either := partForm.MatchString(s)
	if m := partForm.FindStringSubmatch(s); m != nil {
		parts, of, how = []string{m[2], m[4]}, m[5], m[1]+m[3]
	} else if m := partAfter.FindStringSubmatch(s); m != nil {
		parts, of, how = []string{m[4], m[5]}, m[1]+" "+m[2], m[3]
	} else {
		return nil, false
	}
	of, _ = spelled(strings.TrimSpace(of))
	if m := orFruit.FindStringSubmatch(strings.Trim(of, " ,.")); m != nil && either {
		one, known := g.row(m[1])
		other, also := g.row(m[2])
		if known && also && one.Key != other.Key {
			l.ask("of which fruit was it, %s or %s? Write the line with the one", m[1], m[2])
			return nil, true
		}
	}
	n, size, word, form := g.fruitOf(ofYou.ReplaceAllString(of, ""))
	if m := orInside.FindString(s); m != "" {
		l.ask("%s: what went in at the end? Check name and amount", m)
	}
	if optional.MatchString(s) {
		l.say("optional in the notes: take it out if you left it out")
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
		in := Ingredient{Name: row.Words["en"].Singular + " " + part, Amount: part + " of " + n + " " + size + word, Form: form}
		if part == "zest" {
			in.Form = strings.ToLower(strings.TrimSpace(how + in.Form))
		}
		if !valid(in.Amount) || row.Words["en"].Singular == "" {
			return nil, false
		}
		if _, known := g.row(in.Name); !known {
			return nil, false
		}
		out = append(out, in)
	}
	l.doubtForm(form)
	return out, len(out) > 0
}

// partLater is the second part of a fruit behind it: "grated rind of 2 lemons + juice".
var partLater = pattern(`(?i)^(` + partHow + `)` + partOne + ` of (` + num + `) ((?:large |medium |small )?\p{L}+)(?:,? (?:and|&|\+|plus)|,) (?:the |their )?(juice|zest|rind|peel)$`)

// fruitFirst puts the number before the fruit: "lemons 2 (juice)", "lem x2, juice
// + zest".
func (g *grammar) fruitFirst(s string) string {
	m := fruitParts.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	if row, known := g.row(m[1]); !known || row.Class != "fruit" {
		return s
	}
	return m[2] + " " + m[1] + ", " + m[3]
}

var fruitParts = pattern(`(?i)^([\p{L}][\p{L} ]+?)(?: ?[:=] ?| - | )[x×]? ?(` + num + `)(?:,| -)? (\(?(?:the |only |nur |den |die )?(?:(?:grated|finely|pared|strained) )*(?:juice|zest|rind|peel|saft|schale|jus)(?:[^\p{L}].*)?)$`)

// partSaid drops the fruit where it is said again: "lemon juice from 2 lemons".
func (g *grammar) partSaid(s string) string {
	m := saidPart.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	_, _, word, _ := g.fruitOf(m[3])
	one, known := g.row(m[1])
	if other, also := g.row(word); !known || !also || one.Key != other.Key {
		return s
	}
	return m[2] + " of " + m[3]
}

// oneOf gives "Saft einer halben Zitrone" the number it stands for.
func oneOf(s string) string {
	m := genitive.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	n := "1 "
	if m[len(m)-1] != "" {
		n = "1/2 "
	}
	return m[1] + " von " + n + s[len(m[0]):]
}

// fruitOf cuts "2 large lemons, washed" into number, size, fruit and form; a
// fruit without a number is one.
func (g *grammar) fruitOf(of string) (n, size, word, form string) {
	if n = numHead.FindString(of); n == "" {
		n, of = "1", "1 "+of
	}
	word = strings.TrimSpace(brackets.ReplaceAllString(of[len(n):], ""))
	if at := cutForm.FindStringIndex(word); at != nil {
		word, form = word[:at[0]], word[at[1]:]
	} else {
		word = trailing.ReplaceAllString(word, "")
	}
	word = strings.TrimSpace(word)
	if first, more, cut := strings.Cut(word, " "); cut && sizes[strings.ToLower(first)] {
		word, size = more, first+" "
	}
	word, lead := g.leadForm(word)
	return n, size, word, strings.TrimSpace(lead + " " + form)
}

// behind reads an amount that stands after the food: "sugar: 4 cups". Words after
// it are how it was cut, or asked about.
func (g *grammar) behind(s string) (a amount, rest string, ok bool) {
	at := behindForm.FindStringSubmatch(s)
	if at == nil {
		return a, s, false
	}
	if m := origin.FindStringSubmatch(at[1]); m != nil && g.knows(m[1]) { // Quitten vom Nachbarn, 5 kg
		at[1] = m[1] + ", " + m[2]
	}
	name, form, _ := strings.Cut(strings.TrimSpace(article.ReplaceAllString(at[1], "")), ", ")
	if !g.knows(name) || joins(form) {
		return a, s, false
	}
	a, more, ok := g.amountBehind(strings.TrimSpace(at[3]))
	if m := againForm.FindStringSubmatch(more + " "); m != nil && measured(a.text) {
		a.doubt, more = disagree(a.text, m[1]), (more + " ")[len(m[0]):]
	}
	if m := slashAgain.FindStringSubmatch(more); m != nil && measured(a.text) { // 15 g / 1 tbsp
		a.doubt, more = disagree(a.text, m[1]), ""
	}
	more = strings.TrimSpace(strings.TrimLeft(more, ",- "))
	if m := formAgain.FindStringSubmatch(more); m != nil && g.formOnly(m[1]) { // plums 3 kg, stoned (2.7 kg)
		name, more = name+" "+m[2], m[1]
	}
	first, tail, _ := strings.Cut(more, ", ")
	_, kind := g.row(first + " " + name)
	same, _ := g.leadForm(strings.Join(strings.Fields(brackets.ReplaceAllString(ofForm.ReplaceAllString(more, ""), " ")), " "))
	switch row, twice := g.row(same); {
	case more == "" || g.formOnly(more) || afterIng.MatchString(" "+more) && !strings.ContainsAny(cutSize.ReplaceAllString(more, ""), "0123456789"):
	case twice && g.sameRow(name, row.Key): // sugar - 4 cups of white sugar
		name, more = same, ""
	case strings.HasPrefix(more, "("): // read with the name
		name, more = name+" "+more, ""
	case kind && !strings.Contains(first, " "): // sugar 1 kg brown
		name, more = first+" "+name, tail
	case strings.ContainsAny(more, "0123456789") || len(strings.Fields(more)) > 4 || sentence.MatchString(more) || g.foodIn(more) || strings.Contains(at[3], ". "):
		if !share.MatchString(" " + more) {
			return a, s, false
		}
	default:
		a.doubt = joined(a.doubt, `is "`+more+`" how it was cut, or another food? Check name and form`)
	}
	name += at[2]
	for _, f := range []string{form, more} {
		if f != "" {
			name += ", " + f
		}
	}
	return a, name, ok
}

func measured(amount string) bool {
	q, err := unit.ParseQuantity(amount)
	return err == nil && q.Dim != unit.ByCount
}

func (g *grammar) sameRow(name, key string) bool {
	row, ok := g.row(name)
	return ok && row.Key == key
}

// knows reports a food of the table, or words that may be several.
func (g *grammar) knows(name string) bool {
	_, known := g.row(name)
	if a, b, two := strings.Cut(name, " "); two && !known && !strings.Contains(b, " ") { // Ribisel rot
		known = g.turned(a, b) != ""
	}
	_, asks := g.p.Ambiguous(name, "")
	_, colours := g.coloured(name)
	return known || asks || colours != "" || g.knowsEach(splitWords(name, " or ", " oder ", " ou "))
}

// knowsEach reports two foods or more to choose from, known all of them.
func (g *grammar) knowsEach(names []string) bool {
	if len(names) < 2 {
		return false
	}
	g.sharing(names)
	return g.allKnown(names)
}

// foodIn reports a word that is a food.
func (g *grammar) foodIn(s string) bool {
	return slices.ContainsFunc(strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,/()", r) }), func(w string) bool {
		_, known := g.row(w)
		return known && !isForm(strings.ToLower(w))
	})
}

// amountBehind reads what may stand behind a name: a measure, a bare number,
// "x2", "1 box", "3 large".
func (g *grammar) amountBehind(s string) (a amount, more string, ok bool) {
	s = plainPiece.ReplaceAllString(s, "$1 ")
	if a, more, ok := pack(s); ok {
		return a, more, true
	}
	if level, say := g.level(s); say != "" {
		a, more, ok := g.amountBehind(level)
		a.say = joined(say, a.say)
		return a, more, ok
	}
	if m := timesBehind.FindStringSubmatch(s); m != nil { // lemon x2
		return amount{text: m[1]}, m[2], true
	}
	if m := pieceBehind.FindStringSubmatch(s); m != nil {
		if w := strings.ToLower(m[2]); pieces[w] || sizes[w] { // pectin 1 box
			text := m[1] + " " + held(w)
			return amount{text: text}, m[3], valid(text)
		}
	}
	if m := bareBehind.FindStringSubmatch(s); m != nil && !timeWord.MatchString(strings.TrimSpace(m[2])) {
		if w, _, ok := g.measure(m[2]); !ok || w.unit == "" || m[2] == "" {
			return amount{text: m[1]}, m[2], true
		}
	}
	return g.amount(s)
}

var formAgain = pattern(`(?i)^([\p{L}, -]+?),? (\((?:about |ca\.? )?` + againOne + `(?: (?:net|netto|prepared|stoned|hulled|peeled|geputzt|entsteint|vorbereitet|paré\p{L}*))?\))$`)

var slashAgain = pattern(`(?i)^ ?[/=] ?(` + againOne + `)\.?$`)

var behindForm = pattern(`^([\p{L}][\p{L} ',-]{1,60}?(?: \d[:+]\d)?)((?: \([^()\d]*\))?)(?: ?[:=] ?| - | ?\.{2,} ?|, | )((?:(?:about|abt\.?|ca\.?|c\.) |[~≈] ?)?[\d.].*|[x×] ?\d.*|(?:a|half) .+)$`)

var (
	timesBehind = pattern(`^[x×] ?(\d{1,3})\b(.*)$`)
	pieceBehind = pattern(`^(` + num + `) (\p{L}{2,})\.?(?:$|[ ,](.*)$)`)
	bareBehind  = pattern(`^(` + num + `)(?:$|,? ((?:\(|[\p{L}]{2}).*)$)`)
)

// unknownBehind takes a short name that is no food of the table and the weight or
// volume behind it, and asks what it is: "g'berries 4 lb".
func (g *grammar) unknownBehind(l *Line, s string) (in Ingredient, ok bool) {
	m := strangeForm.FindStringSubmatch(s)
	if m == nil || notFood.MatchString(m[1]) || sentence.MatchString(m[1]) || jarTalk.MatchString(m[1]) || len(strings.Fields(m[1])) > 3 {
		return in, false
	}
	a, rest, ok := g.amount(m[2] + " x")
	if !ok || rest != "x" || a.text == "" || a.vague {
		return in, false
	}
	name := strings.Trim(m[1], " .,:-")
	if _, known := g.row(name); known {
		l.ask("what is %s short for? Check the name", m[1])
	} else {
		l.ask("%s is not in the table of ingredients.%s", name, g.hint(name))
	}
	return Ingredient{Name: name, Amount: a.text}, true
}

var (
	strangeForm = pattern(`(?i)^([\p{L}][\p{L}' .-]{2,30}?)(?: ?[:=] ?| - | )(` + num + ` ?(?:kg|g|lbs?\.?|oz\.?|pounds?|ml|l|cups?|tbsp|tsp|#))$`)
	notFood     = pattern(`(?i)\b(?:really|actually|rather|eigentlich|vielmehr|finalement|pot|pan|topf|full|empty|net|netto|gross|brutto|weight|weighed|wt|total|yield\w*|batch|waste|foam|scum|peels?|skins?|stones?|pits?|cores?|left|over|finished|made|makes?|got|gave|used|minus|less|plus|about|after|before|size|sized|temp|temperature|oven|brix|altitude|head\w*|filled|declared|tare|each|per|set|ratio|capacity|holds|recipe)\b`)
	toCover     = pattern(`(?i)^([\p{L}][\p{L} ]{1,30}?),? (?:enough |just )*(?:to come (?:level|up)(?: with [\p{L} ]+?)?|to (?:just |barely )?cover(?: (?:them|it|the fruit))?|zum Bedecken|pour couvrir),? ?\(?(?:about |ca\.? |c\. |env\.? |approx\.? |~)?(` + num + ` ?(?:ml|l|cups?|pints?|pts?|quarts?|qts?|lit(?:er|re)s?|tasses?))\)?$`)
)
