package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// Worked A1, A2: order by weight as used, water by its weight in the finished
// product, left out at no more than 5 % (Regulation (EU) 1169/2011 Annex VII
// Part A(1); the batches are ours).
func TestWater(t *testing.T) {
	syrup := func(yield float64) *cook.Result {
		return cooked(batch.Syrup, "Syrup", yield, 0, in{key: "sugar_white", name: "sugar", g: 600}, in{key: "apple_juice", name: "apple juice", g: 300, kind: "juice"},
			in{key: "water", name: "water", g: 250, kind: "water"})
	}
	tests := []struct {
		name string
		r    *cook.Result
		want string
	}{
		{"A1", batchA1(62), "Ingredients: Strawberries, Sugar, Lemon juice, Gelling agent: pectin"},
		{"A2 10 %", syrup(1000), "Ingredients: Sugar, Apple juice, Water"},
		{"A2 4.76 %", syrup(945), "Ingredients: Sugar, Apple juice"},
		{"A2 5.26 %", syrup(950), "Ingredients: Sugar, Apple juice, Water"},
		{"no yield", syrup(0), "Ingredients: Sugar, Apple juice"},
	}
	for _, c := range tests {
		e := tester(t, "eu", "en", after, c.r, cook.JarPlan{})
		if got := marked(e.listRuns(nil)); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

// Emphasis inside the list with a clear reference to the Annex II name
// (Regulation (EU) 1169/2011 Art 21(1); Commission Notice 2017/C 428/01).
func TestAllergensInList(t *testing.T) {
	milk := []pantry.Part{{Name: "cream", EUAllergen: "milk"}, {Name: "salt"}}
	tests := []struct {
		lang string
		in   in
		want string
	}{
		{"en", in{name: "butter", allergen: "milk"}, "Butter (**milk**)"},
		{"en", in{name: "almonds", allergen: "nuts (almond)"}, "**Almonds**"},
		{"en", in{name: "malt vinegar", own: []string{"barley"}}, "Malt vinegar (**barley**)"},
		{"en", in{name: "mustard seed", allergen: "mustard"}, "**Mustard** seed"},
		{"en", in{name: "whole egg", allergen: "eggs"}, "Whole **egg**"},
		{"en", in{name: "butter", parts: milk, allergen: "milk"}, "Butter (cream (**milk**), salt)"},
		{"en", in{name: "buttermilk", allergen: "milk"}, "Buttermilk (**milk**)"},
		{"en", in{name: "oat flakes", own: []string{"oats"}}, "**Oat** flakes"},
		{"en", in{name: "coconut"}, "Coconut"},
		{"en", in{name: "dried apricots", own: []string{"sulfites"}}, "Dried apricots (**sulphites**)"},
		{"en", in{name: "pectin mix", parts: []pantry.Part{{Name: "sugar"}, {Name: "pectin"}, {Name: "citric acid"}}},
			"Pectin mix (sugar, gelling agent: pectin, acid: citric acid)"},
		{"de", in{key: "egg_yolk", name: "egg yolk", allergen: "eggs"}, "Eigelb (**Eier**)"},
		{"de", in{key: "almond", name: "almonds", allergen: "nuts (almond)"}, "**Mandeln**"},
		{"de", in{key: "citric_acid", name: "citric acid"}, "Säuerungsmittel: Citronensäure"},
		{"fr", in{key: "egg_yolk", name: "egg yolk", allergen: "eggs"}, "jaune d’**œuf**"},
		{"fr", in{key: "butter_unsalted", name: "butter", allergen: "milk"}, "beurre (**lait**)"},
		{"fr", in{key: "pectin_powder", name: "pectin"}, "gélifiant : pectine"},
	}
	for _, c := range tests {
		c.in.g = 100
		e := tester(t, "eu", c.lang, after, cooked(batch.Curd, "Curd", 100, 0, c.in), cook.JarPlan{})
		got := marked(e.listRuns(nil))
		if head := strings.ReplaceAll(e.say("ingredients.heading"), nbsp, " "); got != head+c.want {
			t.Errorf("%s %s: %q, want %q", c.lang, c.in.name, got, head+c.want)
		}
		if len(e.L) > 0 {
			t.Errorf("%s: findings %s", c.in.name, codes(e.L))
		}
	}
}

// "Contains" stands only where there is no list (Art 21(1), last paragraph),
// which a jar below 10 cm² may leave out (Art 16(2)).
func TestTinyPack(t *testing.T) {
	r := cooked(batch.Curd, "Lemon curd", 100, 0, in{name: "butter", g: 100, allergen: "milk"})
	big := tester(t, "gb", "en", after, r, cylinder(50, 40, 100))
	big.declare()
	if textOf(big, label.Allergens) != "" || textOf(big, label.Ingredients) == "" {
		t.Error("a jar with a list also says Contains")
	}
	tiny := tester(t, "gb", "en", after, r, cylinder(20, 15, 20))
	tiny.declare()
	if got := textOf(tiny, label.Allergens); got != "Contains: milk" || textOf(tiny, label.Ingredients) != "" {
		t.Errorf("tiny jar: %q", got)
	}
}

// Every Annex II substance has a name in every language, and unknown words are
// told (the fourteen groups of Annex II; nuts and cereals named themselves).
func TestAnnex2(t *testing.T) {
	for _, lang := range []string{"en", "de", "fr"} {
		e := tester(t, "eu", lang, after, batchA1(62), cook.JarPlan{})
		seen := map[string]bool{}
		for _, s := range allergen.Default().Substances() {
			for _, name := range first(e.names(s)) {
				seen[name] = true
			}
		}
		if len(seen) != 26 { // 6 cereals, 8 nuts, 12 other groups
			t.Errorf("%s: %d different names", lang, len(seen))
		}
	}
	e := tester(t, "eu", "en", after, cooked(batch.Spread, "x", 1, 0, in{name: "paste", g: 1, own: []string{"tree nuts", "rowan"}}), cook.JarPlan{})
	if got := marked(e.listRuns(nil)); got != "Ingredients: Paste (**tree nuts**, **rowan**)" {
		t.Errorf("%q", got)
	}
}

func first(names []string, _ bool) []string { return names }

// A tabled ingredient without a name in the language is an error.
func TestNoEnglishByAccident(t *testing.T) {
	e := tester(t, "eu", "de", after, cooked(batch.Spread, "x", 1, 0, in{key: "durian", name: "durian", g: 1}), cook.JarPlan{})
	e.listRuns(nil)
	if codes(e.L) != "error:no-name-in-language" {
		t.Error(codes(e.L))
	}
}
