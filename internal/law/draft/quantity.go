package draft

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// weightIn finds a weight or a volume in a text: "12 oz", "340g", "1/2 pint".
var weightIn = regexp.MustCompile(`(?i)(?:^|[\s(,;:])((?:\d+ )?\d+(?:[.,/]\d+)?[\s-]?(?:fl\.? ?oz|fluid ounces?|ounces?|oz|pounds?|lbs?|grams?|gr?|kg|ml|cl|litres?|liters?|l|pints?|quarts?|Gramm|Unzen|Liter))\.?(?:$|[\s),;:!.])`)

// spelledOut finds the same in words, "half a pound of fruit"; the "of" tells it from
// money.
var spelledOut = regexp.MustCompile(`(?i)(?:^|[^\p{L}])((half an?|half|an?|one|two|three|four|five|ein halbes|ein|eine|zwei|drei) (pounds?|ounces?|kilos?|pints?|quarts?|lit(?:er|re)s?|Pfund|Kilo|Liter)) (?:of|an)\b`)

// spelledGerman is the same where no word tells it from money: "ein Pfund Erdbeeren".
var spelledGerman = regexp.MustCompile(`(?:^|[^\p{L}])((ein halbes|[Ee]in|[Zz]wei|[Dd]rei) (Pfund|Kilo|Liter)) \p{Lu}\p{Ll}`)

// inFigures are the numbers of spelledOut.
var inFigures = map[string]string{"half a": "1/2", "half an": "1/2", "half": "1/2", "a": "1", "an": "1", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "ein halbes": "1/2", "ein": "1", "eine": "1", "zwei": "2", "drei": "3"}

// saidQuantities are the quantities of a text, each as it says them and in figures.
func saidQuantities(text string) (out [][2]string) {
	for _, m := range weightIn.FindAllStringSubmatch(text, -1) {
		out = append(out, [2]string{m[1], strings.ReplaceAll(m[1], "-", " ")})
	}
	for _, m := range append(spelledOut.FindAllStringSubmatch(text, -1), spelledGerman.FindAllStringSubmatch(text, -1)...) {
		measure := strings.ToLower(m[3])
		if strings.HasPrefix(measure, "kilo") {
			measure = "kg"
		}
		out = append(out, [2]string{m[1], inFigures[strings.ToLower(m[2])] + " " + measure})
	}
	return out
}

// declaredRoom is how far a quantity in a text may be from the declared one: the
// two systems are rounded each for itself (21 CFR 101.7(b), from memory).
const declaredRoom = 0.03

// quantities reports a weight or a volume in what the food is called, or on a
// stamp, that is not what the label declares: two quantities on one label mislead
// whichever is right.
func (p *Draft) quantities() {
	if p.NetMass <= 0 && p.NetVolume <= 0 {
		return
	}
	cite := "21 U.S.C. 343(a)(1), (e)(2)"
	if p.Set.EU != nil {
		cite = "Regulation (EU) 1169/2011 Art 7, 23"
	}
	for _, o := range p.ownTexts() {
		if o.as != "name" && !slices.Contains([]string{"label.stamp", "label.words", "label.season"}, o.path) {
			continue
		}
		for _, m := range saidQuantities(o.text) {
			if q, err := unit.ParseQuantity(m[1]); err == nil && !p.declares(q) {
				p.L.Warnf("quantity-in-text", o.file, o.path, "%q is not the quantity the label declares, %s", m[0], p.Net).
					Hinted("leave it out: the net quantity has its own place on the label").Cited(cite)
				break
			}
		}
	}
}

// declares reports a quantity that is the declared one, or that says nothing of
// mass or volume.
func (p *Draft) declares(q unit.Quantity) bool {
	near := func(a, b float64) bool { return math.Abs(a-b) <= declaredRoom*b }
	switch q.Dim {
	case unit.ByMass:
		return p.NetMass > 0 && near(q.Mass.Grams(), p.NetMass.Grams())
	case unit.ByVolume:
		return p.NetVolume > 0 && near(q.Volume.ML(), p.NetVolume.ML()) || p.Jar.Jar.Nominal > 0 && near(q.Volume.ML(), p.Jar.Jar.Nominal.ML())
	}
	return true
}
