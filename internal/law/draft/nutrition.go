package draft

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
)

// claim finds a claim's words in a text, at word borders; the longest is told.
func (p *Draft) claim(o ownText) (found string) {
	for _, text := range append([]string{o.text}, o.apart...) {
		if found = p.claimIn(text); found != "" {
			break
		}
	}
	return found
}

func (p *Draft) claimIn(text string) (found string) {
	plain, t := Spaced(text), p.Set.Nutrition
	for _, u := range t.Unless {
		plain = strings.ReplaceAll(plain, Spaced(u), " | ")
	}
	try := func(words string) {
		if len(words) > len(found) && glance(plain, words) && strings.Contains(plain, Spaced(words)) {
			found = words
		}
	}
	each := func(forms, nutrients []string) {
		named := slices.DeleteFunc(slices.Clone(nutrients), func(n string) bool { return !strings.Contains(plain, " "+strings.ToLower(n)) })
		for _, form := range forms {
			if !strings.Contains(form, "{n}") {
				try(form)
				continue
			}
			for _, n := range named {
				try(strings.ReplaceAll(form, "{n}", n))
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

// glance reports whether a text may say words at all: it has the letters they
// begin with.
func glance(plain, words string) bool {
	n := 0
	for n < len(words) && words[n] >= 'a' && words[n] <= 'z' {
		n++
	}
	return strings.Contains(plain, words[:n])
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
