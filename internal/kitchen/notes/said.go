package notes

import (
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// What is said around an amount: that it is not level, the same amount in other
// units, what the pieces weigh.
var (
	twice      = pattern(`(?i)^(` + twiceOne + `(?: ` + twiceOne + `)?) ?/ ?(` + twiceOne + `(?: ` + twiceOne + `)?)\.?(?: ?/ ?(?:` + twiceOne + `)?)?[ ]`)
	twiceIn    = pattern(`(?i)^(` + twiceOne + `) \((?:about |approx\.? |ca\.? )?(` + twiceOne + `)(?: ?[/,;] ?` + twiceOne + `)?\) `)
	imperial   = pattern(`(?i)(?:pints?|pts?|quarts?|qts?|gills?|gallons?|fl\.? ?oz\.?|fluid ounces?)$`)
	metric     = pattern(`(?i)\d ?(?:ml|cl|dl|l|lit(?:er|re)s?|millilit(?:er|re)s?)$`)
	unlevel    = pattern(`(?i)^(` + num + ` |an? )?(generous|good|big|scant|heap(?:ing|ed)|rounded|gehäufte[rn]?|bombée?s?) `)
	canNumber  = pattern(`(?i)^(?:(\d{1,2}) )?(?:x )?(?:no\.?|number|#) ?\d{1,3}(?: 1/2)?(?:-size)? (cans?|tins?)\b`) // 2 No. 2 cans
	possessive = pattern(`(?i)^(` + num + `) (\p{L}+)(?:'s|s')(?: worth of)? (juice|zest)\b`)
	weighing   = pattern(`(?i)(?: ?\(|, | ?[~≈=] ?| - | (?:about|approx\.?|ca\.?|circa|etwa|env\.?|environ) )(each |ea\.? )?(?:about |approx(?:\.|imately)? |roughly |around |ca\.? |circa |etwa |environ |env\. |total |weighing |in all )*(` + num + `) ?(lbs?\.? ?\d{1,2} ?oz|pounds?,? \d{1,2} ounces?|g|grams?|gr|kg|lbs?\.?|pounds?|oz\.?|ounces?)( each| ea\.?| apiece|/each)?(?: total| in total| in all| insgesamt| en tout)?(?:(, [^()\d]+)?\)|$)`)
	share      = pattern(`(?i) (?:per|for (?:each|every)|to (?:each|every|the|a)|je|pro|auf|pour chaque|par|pour 1|each) (?:` + num + ` )?(?:` + sizeUnit + `|kilos?|cups?|pints?|quarts?|tasses?)\b`)
)

// level drops a word that makes a measure more or less than level, and says so.
func (g *grammar) level(s string) (out, say string) {
	m := unlevel.FindStringSubmatch(s)
	if m == nil {
		return s, ""
	}
	rest := s[len(m[0]):]
	if numHead.FindString(rest) != "" { // a scant 3 lb
		return rest, strings.ToLower(m[2]) + " is read as the amount that is named: weigh it where that matters"
	}
	w, _, ok := g.measure(rest)
	if !ok || w.unit == "" || bareVague.MatchString(rest) {
		return m[1] + rest, ""
	}
	return m[1] + rest, strings.ToLower(m[2]) + " is read as level: weigh it where that matters"
}

// saidTwice keeps one of two amounts of the same: the first, but where that is a
// pint or a fluid ounce, which are larger in Britain, the metric one.
func saidTwice(s string) string {
	for _, p := range []pattern{twice, twiceIn} {
		m := p.FindStringSubmatch(s)
		if m == nil {
			continue
		}
		keep := m[1]
		if imperial.MatchString(m[1]) && metric.MatchString(m[2]) {
			keep = m[2]
		} else if p == twiceIn {
			continue // the bracket goes with the food
		}
		s = keep + " " + s[len(m[0]):]
	}
	return s
}

// weighed takes the weight beside a count: "3 large (about 500 g) apples". What
// each weighs is multiplied.
func weighed(a amount, rest string) (amount, string) {
	first := a.text
	if len(a.choices) > 0 {
		first = a.choices[0]
	}
	q, err := unit.ParseQuantity(first)
	if w := eachWeighs.FindStringSubmatch(rest); w != nil && err == nil && q.Dim == unit.ByCount && a.text != "" {
		if text := strconv.FormatFloat(q.Count, 'f', -1, 64) + " (" + w[1] + ") " + q.Piece; valid(text) {
			return amount{text: strings.TrimSpace(text), gross: q.Piece == "" || sizes[strings.ToLower(q.Piece)], say: joined(a.say, first+" by the weight beside it")}, food(rest[:len(rest)-len(w[0])])
		}
	}
	m := weighing.FindStringSubmatchIndex(rest)
	if err == nil && m == nil && q.Dim == unit.ByCount && q.Piece != "" && !sizes[strings.ToLower(q.Piece)] && len(a.choices) == 0 {
		if v := holding.FindStringSubmatch(rest); v != nil && valid(v[1]) { // a shot of kirsch (4 cl)
			return amount{text: v[1], say: joined(a.say, first+" by the volume beside it")}, food(strings.Replace(rest, v[0], "", 1))
		}
	}
	if err != nil || q.Dim != unit.ByCount || m == nil {
		return a, rest
	}
	weight := rest[m[4]:m[5]] + " " + strings.TrimSuffix(rest[m[6]:m[7]], ".")
	if m[2] >= 0 || m[8] >= 0 {
		if len(a.choices) > 0 {
			return a, rest
		}
		weight = strconv.FormatFloat(q.Count, 'f', -1, 64) + " (" + weight + ")"
	}
	if !valid(weight) {
		return a, rest
	}
	words := ""
	if m[10] >= 0 {
		words = " (" + rest[m[10]+2:m[11]] + ")"
	}
	return amount{text: weight, gross: q.Piece == "" || sizes[strings.ToLower(q.Piece)], say: joined(a.say, first+" by the weight beside it")}, food(rest[:m[0]] + words + rest[m[1]:])
}

// eachWeighs is what each of several weighs: "2 sachets de pectine de 8 g".
var eachWeighs = pattern(`(?i)(?: ?\(|,? )(?:je(?:weils)?|à|zu je|de) (?:ca\.? |env\.? |environ |etwa )?(` + num + ` ?(?:g|kg))(?: chacune?s?)?\)?$`)

var holding = pattern(`(?i) \((?:about |ca\.? |approx\.? |env\.? )?(` + num + ` ?(?:ml|cl|dl|l|fl\.? ?oz))\)`)

// gross tells in the form that whole fruit was weighed, where part of it is
// thrown away. Citrus is cooked with its peel, or only its juice is.
func (g *grammar) gross(in Ingredient) string {
	row, _ := g.row(in.Name)
	if row.RefusePct <= 0 || row.Class != "fruit" && row.Class != "vegetable" || strings.Contains(strings.ToLower(row.Refuse), "peel") {
		return in.Form
	}
	return strings.TrimPrefix(in.Form+", as bought", ", ")
}

func joined(texts ...string) string {
	return strings.Join(slices.DeleteFunc(texts, func(s string) bool { return s == "" }), "; ")
}
