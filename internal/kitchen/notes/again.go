package notes

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// The same amount said again, in brackets before the food or after it, and
// figures a printer set so that they may be two amounts.

const (
	againUnit = `(?:` + sizeUnit + `|cups?|tbsp\.?|tablespoons?|tsp\.?|teaspoons?|pints?|pts?\.?|quarts?|qts?\.?|tasses?|pintes?|chopines?|c\.? à (?:soupe|thé|café|table|s|c)\.?|cuill\p{L}+ à \p{L}+|EL|TL|sticks?|pfund|livres?)`
	againOne  = num + `(?: ?(?:-|to|à|bis) ?` + num + `)? ?` + againUnit
)

var (
	againForm   = pattern(`(?i)^\((?:about |approx(?:\.|imately)? |or |ca\.? |etwa |env(?:iron|\.)? |= ?)*(` + againOne + `)\.?(?:[ ,;/=]+(?:or |about |plus |and )*` + againOne + `\.?)*\) `)
	againAfter  = pattern(`(?i)^([\p{L}][\p{L} '-]*?)(?: -|,| =)? (?:about |ca\.? |approx\.? |or )?(` + againOne + `)\b\.?(?:[ ,;/]+(?:or |about |ca\.? )*` + againOne + `\b\.?)*(?: ?/ [^\d]*)?( - .*)?$`)
	numberAside = pattern(`^(` + num + `) \(([\p{L}-]+(?: [\p{L}-]+)?)\) `)
	glued       = pattern(`^(\d)(\d{1,2})/(\d{1,2})( .*|$)`)
	slashRange  = pattern(`(?i)^(\d{2,4})/(\d{2,4}) ?(ml|g|cl|dl|kg|grams?)\b`)
)

// bare takes the brackets off a word between number and measure: "1 (heaped)
// tsp", "2 (medium) onions".
func bare(s string) string {
	m := numberAside.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	for _, w := range strings.Fields(strings.ToLower(m[2])) {
		if !sizes[w] && !isForm(w) && !unlevel.MatchString(w+" ") {
			return s
		}
	}
	return m[1] + " " + m[2] + " " + s[len(m[0]):]
}

// apart puts a space between a measure and a food a page has run together:
// "3cupsgranulated sugar".
func (g *grammar) apart(s string) string {
	if m := dotAfter.FindStringSubmatch(s); m != nil && valid("1 "+m[2]) { // 2Tbsp.honey
		return m[1] + " " + m[2] + " " + m[3]
	}
	m := runTogether.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	if q, err := unit.ParseQuantity("1 " + m[2]); err == nil && q.Dim != unit.ByCount {
		return s
	}
	for n := len(m[2]); n > 1 || n == 1 && m[2][0] == 'g' && len(m[1]) > 1; n-- { // the longest measure that leaves a food
		food := m[2][n:] + m[3]
		low := strings.ToLower(m[2][:n])
		piece := pieces[low] && strings.HasSuffix(low, "s") || sizes[low] && n > 2 // 4 clovesgarlic
		if !piece && !valid("1 "+m[2][:n]) || food == "" || food[0] == ' ' || food[0] == ',' {
			continue
		}
		q, _ := unit.ParseQuantity("1 " + m[2][:n])
		name, _ := g.leadForm(firstWords(food))
		if _, known := g.row(name); known && piece || (known || n > 2 && g.endsInFood(food)) && q.Dim != unit.ByCount {
			return m[1] + " " + m[2][:n] + " " + food
		}
	}
	return s
}

// compound reports a measure and a part of it, "lb 3 oz": the second is smaller than
// one of the first.
func compound(words []string) bool {
	if len(words) < 3 {
		return false
	}
	last := len(words) - 1
	big, err := unit.ParseQuantity("1 " + strings.TrimRight(words[0], ".,"))
	small, bad := unit.ParseQuantity("1 " + strings.TrimRight(words[last], ".,"))
	n, ok := number(joinWord.ReplaceAllString(strings.Join(words[1:last], " "), ""))
	if err != nil || bad != nil || !ok || big.Dim != small.Dim || big.Dim == unit.ByCount {
		return false
	}
	times := float64(big.Mass+unit.Mass(big.Volume)) / float64(small.Mass+unit.Mass(small.Volume))
	return times > 1 && n < times && (times <= 20 || metricUnit.MatchString(strings.TrimRight(words[last], ".,")))
}

var joinWord = pattern(`(?i)^(?:plus|and|&|\+|und|et) `)

// endsInFood reports that the words before the first comma or bracket end in a food.
func (g *grammar) endsInFood(s string) bool {
	words := strings.Fields(firstWords(s))
	for n := min(3, len(words)); n > 0; n-- {
		if g.knows(strings.Join(words[len(words)-n:], " ")) {
			return true
		}
	}
	return false
}

var (
	runTogether = pattern(`^(` + num + `) ?([a-zA-Z]{4,26})(,? .*)?$`)
	dotAfter    = pattern(`^(` + num + `) ?([a-zA-Z]{1,10})\.(\p{L}{3}.*)$`)
)

// twoNumbers gives both readings of figures that may be two amounts: "11/2 cups"
// is one and a half where a printer lost the space, "575/600 ml" a range.
func twoNumbers(s string) (low, high, rest string, ok bool) {
	if m := slashRange.FindStringSubmatch(s); m != nil {
		return m[1], m[2], s[len(m[0])-len(m[3]):], true
	}
	m := glued.FindStringSubmatch(s)
	if m == nil {
		return "", "", s, false
	}
	top, _ := strconv.Atoi(m[2])
	if bottom, _ := strconv.Atoi(m[3]); top >= bottom {
		return "", "", s, false
	}
	return m[1] + " " + m[2] + "/" + m[3], m[1] + m[2] + "/" + m[3], strings.TrimSpace(m[4]), true
}

// How a text shows on which side of the Atlantic it was written. A pint stands
// alone for neither.
var (
	british  = pattern(`(?i)\b(?:cast[eo]r sugar|demerara|muscovado|sultanas|malt vinegar|preserving sugar|courgettes?|aubergines?|swedes?|treacle|bramleys?|cookers|windfalls|marrows?|setting point|hob|gas mark|muslin|pips|topped and tailed|top and tail|sterilised|grammes|millilitres|litres?|tblsp|dessertspoons?|knob of butter|stone|p&p|jam sugar|sieve|pudding|colour)\b|\b\d+ ?(?:g|kg|ml)\b`)
	american = pattern(`(?i)\b(?:cups?|half[- ]pints?|canner|canning|sticks? of butter|liters?|kosher|zucchini|eggplants?|rutabagas?|confectioner'?s'?|extension|usda|mason)\b|\d c\. `)
	pintsOf  = pattern(`(?i)^(` + num + `) ?(pints?|pts?\.?|quarts?|qts?\.?|gallons?)$`)
)

// pints gives the British and the American size of pints in British notes.
func pints(text string) []string {
	m := pintsOf.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	n, ok := number(m[1])
	per := map[byte]float64{'p': 568.261, 'q': 1136.52, 'g': 4546.09}[strings.ToLower(m[2])[0]] // Weights and Measures Act 1985, Schedule 1
	if !ok {
		return nil
	}
	return []string{strconv.FormatFloat(n*per, 'f', 0, 64) + " ml", text}
}

var (
	metricUnit = pattern(`(?i)^(?:g|gr|grams?|grammes?|kg|kilos?|kilograms?|mg|ml|mls|cl|dl|l|lit(?:er|re)s?|millilit(?:er|re)s?)$`)
	orAmounts  = pattern(`(?i)^(` + againOne + `|` + num + ` (?:\([^()]*\) )?` + holder + `|` + num + ` ?` + sizeUnit + ` ` + holder + `)(?: (or|oder|ou|to|bis|à) |( ?- ?))(\d.*)$`)
	markOf     = pattern(`(?i)^(?:the |das |les )?(?:scraped |ausgekratzte[s]? )?(?:mark|seeds|graines) (?:of|from|von|aus|de|d')? ?(\d (?:1/2 )?|\d/\d |an? |one |half a |eine[rs]? (?:halben )?|une |d'une )(vanilla (?:beans?|pods?)|vanilleschoten?|vanillestangen?|gousses? de vanille)`)
)

// orAmount reads "1 tbsp or 15 ml lemon juice" and "1 bottle or 2 pouches of
// liquid pectin": an amount to choose, unless they are the same.
func (g *grammar) orAmount(s string) (a amount, rest string, ok bool) {
	m := orAmounts.FindStringSubmatch(s)
	if m == nil || rangeOf.MatchString(m[1]) {
		return a, s, false
	}
	other, rest, ok := g.amount(m[4])
	name, _ := g.leadForm(firstWords(rest))
	one, _, fits := g.amount(m[1] + " x")
	span := m[2] != "" && strings.Contains(" to bis à ", " "+strings.ToLower(m[2])+" ") || m[3] != ""
	if _, known := g.row(name); !ok || !fits || !known && !span || other.text == "" || one.text == "" {
		return a, s, false
	}
	x, err := unit.ParseQuantity(one.text)
	y, bad := unit.ParseQuantity(other.text)
	if strings.EqualFold(m[2], "à") && x.Dim != y.Dim { // 5 jars à 330 g
		return a, s, false
	}
	if !span && err == nil && bad == nil && x.Dim == y.Dim && x.Dim != unit.ByCount && disagree(one.text, other.text) == "" {
		return amount{text: one.text}, rest, true
	}
	return amount{choices: []string{one.text, other.text}}, rest, true
}

// scraped reads the seeds of a pod as the pod, which the table weighs.
func scraped(s string) (out, say string) {
	m := markOf.FindStringSubmatch(s)
	if m == nil {
		return s, ""
	}
	n := strings.ToLower(strings.TrimSpace(m[1]))
	switch {
	case n[0] >= '0' && n[0] <= '9':
	case strings.Contains(n, "hal"):
		n = "1/2"
	default:
		n = "1"
	}
	return n + " " + m[2] + s[len(m[0]):], "the seeds are read as the pod they came from"
}

// saidAgain drops an amount in brackets before the food; what does not agree
// with the first is told.
func saidAgain(first, rest string) (out, doubt string) {
	m := againForm.FindStringSubmatch(rest)
	if q, err := unit.ParseQuantity(first); m == nil || err != nil || q.Dim == unit.ByCount {
		return rest, ""
	}
	return rest[len(m[0]):], disagree(first, m[1])
}

// again drops the same amount in brackets before the food.
func (a amount) again(s string) (amount, string, bool) {
	s = strings.TrimSpace(s)
	rest, doubt := saidAgain(a.text, s)
	if a.doubt = doubt; rest != s {
		if m := massIn.FindStringSubmatch(s[:len(s)-len(rest)]); m != nil {
			a.beside = m[1] + " " + m[2]
		}
	}
	return a, food(rest), valid(a.text)
}

// afterFood drops an amount said again behind a known food: "green tomatoes 2.2
// lbs or about 6 cups".
func (g *grammar) afterFood(first, rest string) (out, beside, doubt string) {
	q, err := unit.ParseQuantity(first)
	m := againAfter.FindStringSubmatch(rest)
	if err != nil || m == nil || q.Dim == unit.ByCount {
		return rest, "", ""
	}
	name, _ := g.leadForm(m[1])
	if _, known := g.row(name); !known {
		return rest, "", ""
	}
	return m[1] + m[3], m[2], disagree(first, m[2])
}

var bracketAmount = pattern(`(?i)\((?:about |approx\.? |ca\.? |env\.? |= ?)?(` + num + `) ?(fluid ounces?|fl\.? ?oz|ounces?|oz|ml|cl|dl|lit(?:er|re)s?|l)\b`)

// pintDoubt asks where the same amount in brackets behind a food shows that a pint
// or a quart is none of America: "2 pt water (40 ounces)".
func pintDoubt(first, rest string) string {
	m := bracketAmount.FindStringSubmatch(rest)
	if m == nil || !pintsOf.MatchString(first) {
		return ""
	}
	u := strings.ToLower(m[2])
	if strings.HasPrefix(u, "o") {
		u = "fl oz"
	}
	a, err := unit.ParseQuantity(first)
	b, bad := unit.ParseQuantity(m[1] + " " + u)
	if err != nil || bad != nil || b.Volume == 0 {
		return ""
	}
	if x := float64(a.Volume) / float64(b.Volume); x < 0.9 || x > 1.1 {
		return fmt.Sprintf("%s is not %s %s: which was it?", first, m[1], m[2])
	}
	return ""
}

var rangeOf = pattern(`(?i)^(` + num + `) ?(?:-|to|à|bis) ?(` + num + `) ?(\p{L}.*)$`)

// disagree tells where two amounts of one kind are not the same: a weight by
// more than a quarter, a volume by more than a British pint differs from an
// American one.
func disagree(first, other string) string {
	if m := rangeOf.FindStringSubmatch(other); m != nil {
		other = m[1] + " " + m[3]
	}
	a, err := unit.ParseQuantity(first)
	b, bad := unit.ParseQuantity(other)
	if err != nil || bad != nil || a.Dim != b.Dim || a.Dim == unit.ByCount {
		return ""
	}
	x, y := float64(a.Mass)+float64(a.Volume), float64(b.Mass)+float64(b.Volume)
	if y == 0 || a.Dim == unit.ByMass && (x/y > 1.25 || x/y < 0.8) || x/y > 1.4 || x/y < 0.7 {
		return fmt.Sprintf("%s is not %s: which was it?", first, other)
	}
	return ""
}
