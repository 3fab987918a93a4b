package draft

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
)

// claim finds a claim's words in a text, at word borders; the longest is told.
func (p *Draft) claim(text string) (found string) {
	plain, t := Spaced(text), p.Set.Nutrition
	for _, u := range t.Unless {
		plain = strings.ReplaceAll(plain, Spaced(u), " | ")
	}
	try := func(words string) {
		if len(words) > len(found) && strings.Contains(plain, Spaced(words)) {
			found = words
		}
	}
	each := func(forms, nutrients []string) {
		for _, n := range nutrients {
			named := strings.Contains(plain, strings.Trim(Spaced(n), " "))
			for _, form := range forms {
				if named || !strings.Contains(form, "{n}") { // else there is nothing to find
					try(strings.ReplaceAll(form, "{n}", n))
				}
			}
		}
	}
	each(t.Forms, t.Nutrients)
	each(t.GoodForms, t.GoodNutrients)
	for _, w := range t.Words {
		try(w)
	}
	return cmp.Or(found, amount(text, append(slices.Clone(t.Nutrients), t.GoodNutrients...)))
}

var (
	amountOf  = regexp.MustCompile(`(?i)(\d+)(?:[.,]\d+)?\s*(g|mg|mcg|µg|grams?|gramm|grammes?|%|percent|prozent)\s+(?:(?:of|de|an|von|total|added)\s+)*(\p{L}+)`)
	amountFor = regexp.MustCompile(`(?i)(\p{L}+):?\s*(\d+)(?:[.,]\d+)?\s*(g|mg|mcg|µg|grams?|gramm|grammes?|%)(?:\P{L}|$)`)
)

// amount finds a quantity of a nutrient, "0 g sugar", "sugars: 5 g", which is a
// statement about nutrition like any claim (21 CFR 101.13(i), 101.9(j)(1)(i)). A
// hundred grams and more is a recipe's quantity: our own reading.
func amount(text string, nutrients []string) string {
	if !strings.ContainsAny(text, "0123456789") {
		return ""
	}
	for _, m := range amountOf.FindAllStringSubmatch(text, -1) {
		if Has(nutrients, m[3]) && !(len(m[1]) > 2 && strings.HasPrefix(strings.ToLower(m[2]), "g")) {
			return m[0]
		}
	}
	for _, m := range amountFor.FindAllStringSubmatch(text, -1) {
		if Has(nutrients, m[1]) && !(len(m[2]) > 2 && strings.HasPrefix(strings.ToLower(m[3]), "g")) {
			return strings.TrimRight(m[0], " .,;")
		}
	}
	return ""
}
