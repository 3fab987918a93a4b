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
		for _, m := range weightIn.FindAllStringSubmatch(o.text, -1) {
			if q, err := unit.ParseQuantity(strings.ReplaceAll(m[1], "-", " ")); err == nil && !p.declares(q) {
				p.L.Warnf("quantity-in-text", o.file, o.path, "%q is not the quantity the label declares, %s", m[1], p.Net).
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
