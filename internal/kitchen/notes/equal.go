package notes

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// The same food by another measure: "2 kg plums = 1.8 kg stoned", "6 cups plums
// (about 4 lb)".

var (
	equals   = pattern(`(?i)^(.+?) ?(?:=|->|→|≈) ?(?:about |abt |ca\.? |approx\.? )?(` + againOne + `)\.?(?:,? ([\p{L} ,&]+))?$`)
	massIn   = pattern(`(?i)(` + num + `) ?(kg|kilos?|g|gr|grams?|grammes?|lbs?|pounds?|oz|ounces?)\b`)
	inParens = pattern(`\([^()]*\)`)
)

// equalled reads "2 kg plums halved = 1.8 kg stoned": where the two are not the
// same weight, which of them went into the pot is asked.
func (g *grammar) equalled(l *Line, s string) ([]Ingredient, bool) {
	m := equals.FindStringSubmatch(s)
	if m == nil || m[3] != "" && !g.formOnly(m[3]) {
		return nil, false
	}
	out, ok := g.one(l, m[1])
	if !ok || len(out) != 1 || out[0].Amount == "" {
		return nil, false
	}
	in, other := &out[0], strings.TrimSuffix(m[2], ".")
	if m[3] != "" {
		in.Form = strings.TrimPrefix(in.Form+", "+strings.ToLower(m[3]), ", ")
	}
	a, err := unit.ParseQuantity(in.Amount)
	b, bad := unit.ParseQuantity(other)
	switch {
	case err != nil || bad != nil:
		return nil, false
	case a.Dim == unit.ByVolume && b.Dim == unit.ByVolume && near(float64(a.Volume), float64(b.Volume), 0.06):
	case a.Dim == unit.ByMass && b.Dim == unit.ByMass && near(float64(a.Mass), float64(b.Mass), 0.03), a.Dim == unit.ByMass && b.Dim == unit.ByVolume:
	case a.Dim != unit.ByMass && b.Dim == unit.ByMass:
		l.say("%s by the weight beside it", in.Amount)
		in.Amount = other
	default:
		in.Amount, in.Amounts = "", []string{in.Amount, other}
		l.ask("how much was it? Take the # off one, or write your own")
	}
	return out, true
}

func near(a, b, by float64) bool { return a <= b*(1+by) && b <= a*(1+by) }

// otherMass takes another weight in brackets behind a food that was weighed, where
// the two are not the same: "1.2 kg rhubarb (1 kg when peeled)".
func otherMass(a amount, rest string) amount {
	q, err := unit.ParseQuantity(a.text)
	if err != nil || q.Dim != unit.ByMass || len(a.choices) > 0 || a.gross {
		return a
	}
	for _, b := range inParens.FindAllString(rest, -1) {
		if _, bought := pantry.AsBought(b); bought || eachOf.MatchString(b) || partOfIt.MatchString(b) {
			continue // "1 kg apricots (1.2 kg with stones)"
		}
		for _, m := range massIn.FindAllStringSubmatch(b, -1) {
			other, err := unit.ParseQuantity(m[1] + " " + m[2])
			if err == nil && other.Dim == unit.ByMass && !near(float64(q.Mass), float64(other.Mass), 0.1) {
				a.choices = []string{a.text, m[1] + " " + m[2]}
				return a
			}
		}
	}
	return a
}

// partOfIt tells of a part of the amount before it.
var partOfIt = pattern(`(?i)\((?:davon|darunter|dont|of which|of these|including|incl\.?|inkl\.?|y compris) `)

// cupsWeighed takes the weight beside cups of a food for them: cups hold more or
// less as it is cut. A weight of what was bought is told by what the table knows
// of a cup; where neither fits, both are asked about.
func (g *grammar) cupsWeighed(l *Line, a amount, rest string, in Ingredient) (amount, Ingredient) {
	q, err := unit.ParseQuantity(a.text)
	if err != nil || q.Dim != unit.ByVolume || len(a.choices) > 0 {
		return a, in
	}
	weight := a.beside
	if m := weighing.FindStringSubmatch(rest); weight == "" && m != nil && m[1] == "" && m[4] == "" {
		weight = m[2] + " " + strings.TrimSuffix(m[3], ".")
	}
	if m := rangeBeside.FindStringSubmatch(rest); weight == "" && m != nil {
		return g.cupsBetween(a, m, in), in
	}
	w, err := unit.ParseQuantity(weight)
	row, known := g.row(in.Name)
	if err != nil || w.Dim != unit.ByMass || !known || row.Class != "fruit" && row.Class != "vegetable" {
		return a, in
	}
	grams := float64(w.Mass) / float64(unit.Gram)
	cups := float64(q.Volume) / float64(unit.Cup) * cupOf(row, in.Form)
	net := grams * (1 - row.RefusePct/100)
	switch {
	case cups <= 0 || near(cups, grams, 0.1) || row.RefusePct <= 0 && near(cups, grams, cutsDiffer):
		l.say("%s by the weight beside it", a.text)
		return amount{text: weight, say: a.say}, in
	case near(cups, net, cutsDiffer):
		l.say("%s by the weight beside it, as it was bought", a.text)
		in.Form = strings.TrimPrefix(in.Form+", as bought", ", ")
		return amount{text: weight, say: a.say}, in
	}
	a.choices = []string{a.text, weight}
	return a, in
}

// rangeBeside is a range of weights in brackets.
var rangeBeside = pattern(`(?i)\((?:about |ca\.? |approx\.? |env\.? )?(` + num + `) ?(?:-|to|bis|à|or) ?(` + num + `) ?(kg|g|grams?|lbs?|pounds?|oz|ounces?)\.?\)`)

// cupsBetween asks where cups hold neither the weights beside them nor any between.
func (g *grammar) cupsBetween(a amount, m []string, in Ingredient) amount {
	row, known := g.row(in.Name)
	q, err := unit.ParseQuantity(a.text)
	low, no := unit.ParseQuantity(m[1] + " " + m[3])
	high, bad := unit.ParseQuantity(m[2] + " " + m[3])
	if !known || err != nil || no != nil || bad != nil || row.Class != "fruit" && row.Class != "vegetable" {
		return a
	}
	grams := float64(q.Volume) / float64(unit.Cup) * cupOf(row, in.Form)
	if grams > 0 && (grams < float64(low.Mass)/float64(unit.Gram)/(1+cutsDiffer) || grams > float64(high.Mass)/float64(unit.Gram)*(1+cutsDiffer)) {
		a.choices = []string{a.text, m[1] + " " + m[3], m[2] + " " + m[3]}
	}
	return a
}

// cutsDiffer is how much more a cup holds of a fruit that is crushed than of a
// whole one: strawberries 232 g and 144 g, USDA SR28 09316; and a tenth.
const cutsDiffer = 0.75

var eachOf = pattern(`(?i)\b(?:each|apiece|chacune?|je(?:weils)?|per|pro|par)\b|\d ` + holder + ` (?:of|de|à|zu) `)

// pulpCup is a cup of crushed fruit, which is as heavy as water: 237 ml.
const pulpCup = 237

var pulpy = pattern(`(?i)\b(?:crushed|mashed|pur(?:é|e)ed|pureed|ground|minced)\b`)

// cupOf is what a cup of a food weighs, cut as its form says. 0 = not known.
func cupOf(row pantry.Ingredient, form string) float64 {
	if row.Cup2G > 0 && row.Cup2Form != "" && strings.Contains(form, row.Cup2Form) {
		return row.Cup2G
	}
	if pulpy.MatchString(form) {
		return max(row.CupG, pulpCup)
	}
	return max(row.CupG, 0)
}
