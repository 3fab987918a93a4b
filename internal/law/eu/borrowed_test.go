package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
)

// Directive 2001/113/EC Art 2(1): the product names "shall apply only to the
// products referred to therein"; in addition they may designate "other products
// which cannot be confused" with them (onion marmalade). KonfV s. 3(2) as of 14
// June 2026: Marmelade is jam too.
func TestReservedNamesOnOtherProducts(t *testing.T) {
	sb, onions := fruitIn("strawberry", "strawberries", 600, "general"), unknownIn("onions", 600)
	for _, c := range []struct {
		set, lang, given string
		product          batch.ProductType
		of               in
		want             string
	}{
		{"gb", "en", "Strawberry marmalade", batch.Jam, sb, "error"}, {"gb", "en", "Strawberry jelly", batch.Jam, sb, "error"},
		{"gb", "en", "Strawberry jam", batch.Spread, sb, "error"}, {"gb", "en", "Strawberry marmalade jam", batch.Jam, sb, ""},
		{"gb", "en", "Strawberry jam", batch.Jam, sb, ""}, {"gb", "en", "Strawberry extra jam", batch.Jam, sb, ""},
		{"gb", "en", "Strawberry spread", batch.Spread, sb, ""}, {"gb", "en", "Strawberry relish jam", batch.Relish, sb, "warning"},
		{"gb", "en", "Onion marmalade", batch.Spread, onions, "warning"}, {"gb", "en", "Grandma's red", batch.Jam, sb, ""},
		{"fr", "fr", "Marmelade de fraises", batch.Jam, sb, "error"}, {"fr", "fr", "Confiture de fraises", batch.Jam, sb, ""},
		{"de", "de", "Erdbeermarmelade", batch.Jam, sb, ""}, {"de", "de", "Erdbeergelee", batch.Jam, sb, "error"},
		{"eu", "de", "Erdbeermarmelade", batch.Jam, sb, "warning"},
	} {
		e := tester(t, c.set, c.lang, after, cooked(c.product, c.given, 1000, 62, c.of, in{key: "sugar_white", name: "sugar", g: 400, kind: "sweetener"}), cylinder(68, 60, 340))
		e.declare()
		got, n := "", 0
		for _, d := range e.L {
			if d.Code == "reserved-name" {
				got, n = d.Severity.String(), n+1
			}
		}
		if got != c.want || n > 1 {
			t.Errorf("%s %q of %s: %d times %q, want %q", c.set, c.given, c.of.name, n, got, c.want)
		}
	}
}

// A German word of two products is told once, as the word it is.
func TestReservedWordIsToldOnce(t *testing.T) {
	e := tester(t, "de", "de", after, cooked(batch.Relish, "Zwiebelmarmelade", 1000, 62, unknownIn("Zwiebeln", 600)), cylinder(68, 60, 340))
	e.declare()
	if n := strings.Count(codes(e.L), "reserved-name"); n != 1 {
		t.Errorf("%d times: %v", n, e.L)
	}
}

// Regulation (EU) 1169/2011 Art 26(3), by words of the name alone.
func TestOriginInTheName(t *testing.T) {
	for _, c := range []struct {
		set, lang, given, subtitle string
		told                       bool
	}{
		{"gb", "en", "Scottish strawberry jam", "", true}, {"gb", "en", "Strawberry jam", "Made in Kent", true}, {"gb", "en", "Strawberry jam", "made in small batches", false},
		{"gb", "en", "Seville orange marmalade", "", false}, {"gb", "en", "Strawberry jam with Irish whiskey", "", false}, {"gb", "en", "Strawberry jam", "grown in our garden", false},
		{"de", "de", "Wachauer Erdbeerkonfitüre", "", true}, {"de", "de", "Erdbeerkonfitüre", "mit sizilianischen Zitronen", true}, {"de", "de", "Erdbeerkonfitüre", "", false},
		{"fr", "fr", "Confiture de fraises", "fraises de Provence", true}, {"fr", "fr", "Confiture de fraises", "", false},
	} {
		r := cooked(batch.Jam, c.given, 1000, 62, tabled(t, c.lang, "strawberries", 600))
		r.Batch.Label.Subtitle = c.subtitle
		for _, origin := range []string{"", "Kent"} {
			r.Batch.Origin, r.Batch.FruitOrigin = origin, origin
			e := tester(t, c.set, c.lang, after, r, cylinder(68, 60, 340))
			e.origin()
			if got := strings.Contains(codes(e.L), "warning:primary-origin"); got != (c.told && origin == "") {
				t.Errorf("%s %q %q, origin %q: told %v", c.set, c.given, c.subtitle, origin, got)
			}
		}
	}
}
