package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// potWith is a pot whose last part may be something no table knows.
func potWith(t *testing.T, kind batch.ProductType, name, last string, list ...part) *cook.Result {
	if _, ok := pantry.Default().Ingredient(last); ok {
		return pot(t, kind, name, measured(66), append(list, part{last, 50})...)
	}
	r := pot(t, kind, name, measured(66), list...)
	r.Lines = append(r.Lines, cook.Line{Name: last, Mass: 50 * unit.Gram, Paths: []string{"ingredient[9]"}})
	return r
}

// The closed lists of 21 CFR 150.160(c), 150.140(c) and 150.110(c), letter by letter
// in the quotations: pectin alone gels, no color, no flavoring but in butter a natural
// one; what nobody knows proves nothing.
func TestClosedListsOfTheStandards(t *testing.T) {
	for _, x := range []struct {
		kind  batch.ProductType
		name  string
		fruit string
		other string
		want  string
	}{
		{batch.Jam, "Plum jam", "pitted plums", "gelatin", "standard-outsider"},
		{batch.Jam, "Plum jam", "pitted plums", "agar", "standard-outsider"},
		{batch.Jam, "Plum jam", "pitted plums", "cornstarch", "standard-outsider"},
		{batch.Jam, "Plum jam", "pitted plums", "calcium chloride", "standard-outsider"},
		{batch.Jam, "Plum jam", "pitted plums", "pectin", "standard-met"},
		{batch.Jam, "Plum jam", "pitted plums", "sodium citrate", "standard-met"},
		{batch.Jam, "Plum jam", "pitted plums", "fumaric acid", "standard-met"},
		{batch.Jam, "Plum jam", "pitted plums", "maple flavoring", "standard-outsider"},
		{batch.Jam, "Plum jam", "pitted plums", "carrot juice for color", "standard-outsider"},
		{batch.Jam, "Plum jam", "pitted plums", "plum pudding powder", "standard-unsure"},
		{batch.Jelly, "Grape jelly", "grape juice", "vanilla essence", "standard-outsider"},
		{batch.Butter, "Peach butter", "peaches", "caramel color", "standard-outsider"},
		{batch.Butter, "Peach butter", "peaches", "artificial rum flavor", "standard-outsider"},
		{batch.Butter, "Peach butter", "peaches", "natural rum flavor", "standard-met"},
		{batch.Butter, "Peach butter", "peaches", "vanilla extract", "standard-met"},
		{batch.Butter, "Peach butter", "peaches", "soy sauce", "standard-outsider"},
		// A fruit beside those the standard lists, which the name does not say.
		{batch.Jam, "Strawberry jam", "strawberries", "kiwifruit", "standard-outsider"},
		{batch.Jam, "Strawberry kiwi jam", "strawberries", "kiwifruit", "standard-not-covered"},
		{batch.Butter, "Peach butter", "peaches", "blueberries", "standard-outsider"},
	} {
		_, l := declare(t, potWith(t, x.kind, x.name, x.other, part{x.fruit, 8000}, part{"sugar", 2500}), "us", draft.Options{})
		if got := standing(l); got != x.want {
			t.Errorf("%s with %s: %s, want %s", x.name, x.other, got, x.want)
		}
	}
}

// A color in a part is a color in the jam (150.160(c); 101.22(k)).
func TestColorInAPartIsOutside(t *testing.T) {
	r := pot(t, batch.Jam, "Cherry jam", measured(66), part{"pitted sour cherries", 5000}, part{"sugar", 5000}, part{"pectin", 100})
	for parts, want := range map[string]string{"Red 40": "standard-outsider", "natural flavors": "standard-outsider", "dextrose": "standard-met"} {
		r.Lines[2].Contains = []pantry.Part{{Name: "pectin"}, {Name: parts}}
		_, l := declare(t, r, "us", draft.Options{})
		if got := standing(l); got != want {
			t.Errorf("pectin with %s: %s", parts, got)
		}
	}
}

// Fruit nobody knows is not told to be outside of every standard: canned fruit is
// listed (150.160(b)(1)).
func TestUnknownFruitIsUnsure(t *testing.T) {
	r := pot(t, batch.Jam, "Apricot jam", measured(66), part{"apricots", 1}, part{"sugar", 5000})
	r.Lines[0] = cook.Line{Name: "canned apricots", Mass: 5000 * unit.Gram, Paths: []string{"ingredient[0]"}}
	_, l := declare(t, r, "us", draft.Options{})
	if got := standing(l); got != "standard-unsure" {
		t.Error(got)
	}
}

// 150.160(b)(1), 150.140(b): plums but damsons and greengages are plums, red and
// white currants are currants; 150.110(b)(1), (e)(2)(i): dried apples make a butter
// that says so.
func TestNamesAndFormsTheStandardKnows(t *testing.T) {
	for _, x := range []struct {
		kind        batch.ProductType
		name, fruit string
		want        string
	}{
		{batch.Jam, "Plum jam", "mirabelles", "standard-met"},
		{batch.Jam, "Plum jam", "beach plums", "standard-met"},
		{batch.Jam, "Plum jam", "damsons", "standard-met name-lacks-fruit"},
		{batch.Jam, "Currant jam", "whitecurrants", "standard-met"},
		{batch.Jelly, "Currant jelly", "redcurrant juice", "standard-met"},
		{batch.Butter, "Apple butter", "dried apples", "standard-met"},
		{batch.Butter, "Pear butter", "dried pears", "standard-met"},
	} {
		c, l := declare(t, pot(t, x.kind, x.name, measured(66), part{x.fruit, 9000}, part{"sugar", 4000}), "us", draft.Options{})
		if got := standing(l); got != x.want {
			t.Errorf("%s of %s: %s, want %s", x.name, x.fruit, got, x.want)
		}
		said := false
		for _, b := range c.Blocks {
			said = said || b.ID == "dried" && b.Text() == "prepared from "+x.fruit
		}
		if said != strings.HasPrefix(x.fruit, "dried") {
			t.Errorf("%s of %s: dried words %v", x.name, x.fruit, said)
		}
	}
}

// 101.13(i), 101.9(j)(1)(i): an amount of a nutrient is nutrition information in any
// context; 101.61(c)(2) "unsalted"; 101.60(b)(1) with calories cut short.
func TestAmountsAreClaims(t *testing.T) {
	for words, want := range map[string]bool{"sugars: 0 g": true, "Only 5g sugar a spoonful": true, "12 mg of vitamin per jar": true, "0 % fat": true, "Sodium 5 mg": true, "sugarfree": true, "Unsalted": true, "low cal": true, "no-cal": true, "nutrient-dense": true,
		"900 g sugar to the kilo": false, "100 % plums": false, "stirred 50 times": false, "2 spoons of sugar": false, "local": false, "5 g of love": false} {
		r := strawberry(t)
		r.Batch.Label.Words = words
		_, l := declare(t, r, "us", draft.Options{})
		if _, ok := found(l, "nutrition-claim"); ok != want {
			t.Errorf("%q: claim %v", words, ok)
		}
	}
}

// Bought coconut cream and milk are mixed foods, and some hold caseinate: no absence
// is printed before their packet was read. Coconut itself is on no list (FDA guidance
// Ed. 5, 6 Jan 2025).
func TestCoconutProductsAreNoAbsence(t *testing.T) {
	for _, x := range []struct {
		name  string
		parts []string
		want  string
	}{
		{"cream of coconut", nil, ""}, {"coconut cream", nil, ""}, {"coconut milk", nil, ""}, {"coconut milk powder", nil, ""}, {"coconut yogurt", nil, ""},
		{"desiccated coconut", nil, "Allergens: none of the nine major allergens in this recipe."},
		{"cream of coconut", []string{"coconut", "sugar", "water"}, "Allergens: none of the nine major allergens in this recipe."},
		{"coconut milk powder", []string{"coconut", "sodium caseinate"}, "Contains: Milk"},
	} {
		r := potWith(t, batch.Spread, "Mango spread", x.name, part{"mangoes", 5000}, part{"sugar", 5000})
		for _, n := range x.parts {
			r.Lines[2].Contains = append(r.Lines[2].Contains, pantry.Part{Name: n})
		}
		c, l := declare(t, r, "us", draft.Options{})
		got := text(c, label.Allergens)
		if _, asked := found(l, "allergens-unknown"); got != x.want && !(x.want == "" && asked) || asked != (x.want == "") {
			t.Errorf("%s %v: %q, asked %v", x.name, x.parts, got, asked)
		}
	}
}
