package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// standing is what the standard said of a batch: its codes, sorted as found.
func standing(l diag.List) string {
	var out []string
	for _, d := range l {
		if strings.HasPrefix(d.Code, "standard-") || strings.HasPrefix(d.Code, "name-") || d.Code == "jelly-juice" {
			out = append(out, d.Code)
		}
	}
	return strings.Join(out, " ")
}

// The forms of fruit a standard takes, its closed list and its statements: 21
// CFR 150.160(b)(1), (d)(2)(iii); 150.110(b)(1), (c)(6), (c)(9), (e)(2)(i);
// 150.140(e)(1).
func TestFormsOfFruit(t *testing.T) {
	for _, x := range []struct {
		what string
		kind batch.ProductType
		name string
		list []part
		want string
	}{
		{"dried figs are none of fresh, concentrated, frozen, canned", batch.Jam, "Fig jam", []part{{"dried figs", 5000}, {"sugar", 5000}}, "standard-not-met"},
		{"dried fruit beside fresh is outside the list", batch.Jam, "Apricot jam", []part{{"pitted apricots", 5000}, {"dried apricots", 200}, {"sugar", 5000}}, "standard-outsider"},
		{"butter of dried fruit", batch.Butter, "Apricot butter", []part{{"dried apricots", 3000}, {"sugar", 1000}}, "standard-met"},
		{"pectin is allowed in butter", batch.Butter, "Apple butter", []part{{"apples", 5000}, {"sugar", 1000}, {"pectin", 20}}, "standard-met"},
		{"a little juice in butter", batch.Butter, "Apple butter", []part{{"apples", 5000}, {"sugar", 1000}, {"apple juice", 100}}, "standard-not-met"},
		{"juice of half the fruit", batch.Butter, "Apple butter", []part{{"apples", 5000}, {"sugar", 1000}, {"apple juice", 2700}}, "standard-met"},
		{"vanilla stands outside, and nothing is met", batch.Jam, "Strawberry jam", []part{{"strawberries", 5000}, {"sugar", 5000}, {"vanilla extract", 10}}, "standard-outsider"},
		{"pits out", batch.Jam, "Sour cherry jam", []part{{"pitted sour cherries", 5000}, {"sugar", 5000}}, "standard-met"},
		{"pits in, and enough without", batch.Jam, "Sour cherry jam", []part{{"sour cherries with pits", 5000}, {"sugar", 5000}}, "standard-met"},
		{"pits in: 10 % less", batch.Jam, "Sour cherry jam", []part{{"unpitted sour cherries", 4700}, {"sugar", 5400}}, "standard-not-met"},
		{"nothing said of pits", batch.Jam, "Sour cherry jam", []part{{"sour cherries", 4700}, {"sugar", 5400}}, "standard-unsure"},
		{"berries have no pits", batch.Jam, "Strawberry jam", []part{{"strawberries", 4700}, {"sugar", 5500}}, "standard-met"},
		{"whole fruit is no juice", batch.Jelly, "Redcurrant jelly", []part{{"redcurrants", 5000}, {"sugar", 3000}}, "jelly-juice"},
		{"jelly of juice", batch.Jelly, "Apple jelly", []part{{"apple juice", 8000}, {"sugar", 5000}}, "standard-met"},
		{"jelly is named by its fruit", batch.Jelly, "Granny's jelly", []part{{"apple juice", 8000}, {"sugar", 5000}}, "standard-met name-lacks-fruit"},
		{"a fancy name lacks the fruit", batch.Jam, "Red Delight jam", []part{{"strawberries", 5000}, {"sugar", 5000}}, "standard-met name-lacks-fruit"},
		{"a synonym names it", batch.Jam, "Bramble jam", []part{{"blackberries", 5000}, {"sugar", 5000}}, "standard-met"},
		{"a standard that is not named is not claimed", batch.Spread, "Red Delight", []part{{"strawberries", 5000}, {"sugar", 5000}}, "standard-not-covered"},
	} {
		_, l := declare(t, pot(t, x.kind, x.name, measured(66), x.list...), "us", draft.Options{})
		if got := standing(l); got != x.want {
			t.Errorf("%s: %s, want %s", x.what, got, x.want)
		}
	}
}

// 21 U.S.C. 343(g)(2): without its fruit the name of a jam misbrands it.
func TestNameLacksFruitIsAnError(t *testing.T) {
	r := pot(t, batch.Jelly, "Granny's jelly", measured(66), part{"apple juice", 8000}, part{"sugar", 5000})
	_, l := declare(t, r, "us", draft.Options{})
	if d, _ := found(l, "name-lacks-fruit"); d.Severity != diag.Error || !strings.Contains(d.Hint, `"Apple Jelly"`) {
		t.Errorf("%+v", d)
	}
	if _, l = declare(t, r, "us", draft.Options{Gift: true}); l.HasErrors() {
		t.Errorf("a gift: %v", l)
	}
}

// 21 U.S.C. 343(c); 21 CFR 101.3(e): "in type of uniform size and prominence, the word
// 'imitation' and, immediately thereafter, the name of the food imitated". Sold so,
// jam of too little fruit is not misbranded: 62 Cases of Jam v. United States, 340
// U.S. 593 (1951), of 25 parts of fruit.
func TestImitationIsHeldToNoStandard(t *testing.T) {
	for name, want := range map[string]string{
		"Imitation strawberry jam": "standard-not-covered", "Imitation Strawberry Preserves": "standard-not-covered",
		"Strawberry jam": "standard-not-met", "Strawberry jam, no imitation": "standard-not-met",
	} {
		_, l := declare(t, pot(t, batch.Jam, name, measured(66), part{"strawberries", 250}, part{"sugar", 550}, part{"lemon juice", 20}), "us", draft.Options{})
		for _, code := range []string{"standard-not-covered", "standard-not-met", "standard-met"} {
			if _, ok := found(l, code); ok != (code == want) {
				t.Errorf("%s: %s %v, want %s", name, code, ok, want)
			}
		}
	}
}

// 21 CFR 150.110(e)(2)(i): the words "prepared from" or "prepared in part
// from", "dried", and the fruit.
func TestDriedFruitIsDeclared(t *testing.T) {
	for want, list := range map[string][]part{
		"prepared from dried apricots":         {{"dried apricots", 3000}, {"sugar", 1000}},
		"prepared in part from dried apricots": {{"dried apricots", 1500}, {"apricots", 5000}, {"sugar", 1000}},
		"":                                     {{"apricots", 5000}, {"sugar", 1000}},
	} {
		c, _ := declare(t, pot(t, batch.Butter, "Apricot butter", measured(50), list...), "us", draft.Options{})
		got := ""
		for _, b := range c.Blocks {
			if b.ID == "dried" {
				got = b.Text()
				if b.Kind != label.Statement || !b.Required {
					t.Errorf("%+v", b)
				}
			}
		}
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// 21 CFR 150.140(c)(8), (9): mint flavoring and green color beside apple, crabapple
// and pineapple, cinnamon flavoring and red color beside apple and crabapple; the
// closed lists of jelly and jam take no other color.
func TestFlavoredAndColoredJelly(t *testing.T) {
	for _, x := range []struct {
		kind         batch.ProductType
		fruit, added string
		outside      bool
	}{
		{batch.Jelly, "apple juice", "mint extract", false}, {batch.Jelly, "pineapple juice", "green food coloring", false}, {batch.Jelly, "grape juice", "mint extract", true},
		{batch.Jelly, "apple juice", "cinnamon flavoring", false}, {batch.Jelly, "pineapple juice", "red food coloring", true}, {batch.Jelly, "apple juice", "blue food coloring", true},
		{batch.Jam, "strawberries", "red food coloring", true}, {batch.Jam, "strawberries", "moon dust", false},
	} {
		r := pot(t, x.kind, "x "+string(x.kind), measured(66), part{x.fruit, 1000}, part{"sugar", 900})
		r.Lines = append(r.Lines, cook.Line{Name: x.added, Paths: []string{"ingredient[2]"}, Mass: unit.Gram})
		_, l := declare(t, r, "us", draft.Options{})
		if _, ok := found(l, "standard-outsider"); ok != x.outside {
			t.Errorf("%+v: %s", x, standing(l))
		}
	}
}

// 150.140(b)(1) lists grape 7.0, orange 8.0, cranberry 9.5, pineapple 7.0 and
// pomegranate 5.5 (print of Sep 2024): jelly of their bought juice has a standard.
func TestBoughtJuiceHasAStandard(t *testing.T) {
	for _, juice := range []string{"grape juice", "orange juice", "cranberry juice", "pineapple juice", "pomegranate juice", "apple juice"} {
		r := pot(t, batch.Jelly, strings.TrimSuffix(juice, " juice")+" jelly", measured(66), part{juice, 1000}, part{"sugar", 500})
		_, l := declare(t, r, "us", draft.Options{})
		if _, ok := found(l, "standard-not-covered"); ok {
			t.Errorf("%s: %s", juice, standing(l))
		}
	}
}

// 21 CFR 101.22(k): a color is named, by itself or among the parts.
func TestColorNamedInParts(t *testing.T) {
	for list, want := range map[string]bool{"": true, "water": true, "water|Red 40": false} {
		r := strawberry(t)
		ln := cook.Line{Name: "red food coloring", Paths: []string{"ingredient[1]"}, Mass: unit.Gram}
		for _, n := range strings.FieldsFunc(list, func(r rune) bool { return r == '|' }) {
			ln.Contains = append(ln.Contains, pantry.Part{Name: n})
		}
		r.Lines = append(r.Lines, ln)
		_, l := declare(t, r, "us", draft.Options{})
		if _, ok := found(l, "color-unnamed"); ok != want {
			t.Errorf("%q: told %v", list, ok)
		}
	}
}
