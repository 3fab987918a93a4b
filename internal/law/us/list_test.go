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

// 21 CFR 101.4(a)(1), (2): descending by weight; at or under the threshold at
// the end. The shares are 52.08, 44.51, 2.84 and 0.57 %.
func TestIngredientList(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 4700}, part{"pectin", 60}, part{"lemon juice, fresh", 300}, part{"sugar", 5500})
	for i := range r.Lines {
		ln := &r.Lines[i]
		ln.Contains = nil
		ln.Percent = ln.Mass.Grams() / 10560 * 100
		ln.PercentFin = ln.Mass.Grams() / 8400 * 100
	}
	s := *rulesOf(t, "us")
	for threshold, want := range map[float64]string{
		0:   "Ingredients: Sugar, strawberries, lemon juice, pectin.",
		2:   "Ingredients: Sugar, strawberries, lemon juice, contains 2% or less of pectin.",
		1.5: "Ingredients: Sugar, strawberries, lemon juice, contains 1.5% or less of pectin.",
		1:   "Ingredients: Sugar, strawberries, lemon juice, contains 1% or less of pectin.",
		0.5: "Ingredients: Sugar, strawberries, lemon juice, pectin.",
	} {
		table := *s.Ingredients
		table.TwoPercent = threshold
		s.Ingredients = &table
		c, _ := Declare(r, jar8(10*unit.Ounce), &s, draft.Options{})
		if got := text(c, label.Ingredients); got != want {
			t.Errorf("threshold %v: %q, want %q", threshold, got, want)
		}
	}
	r.Kitchen.SmallAmounts = 1 // the maker's own choice goes before the set's
	c, _ := Declare(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	if got := text(c, label.Ingredients); !strings.HasSuffix(got, "contains 1% or less of pectin.") {
		t.Errorf("small_amounts = 1: %q", got)
	}
	// 1.875 % of the formula and 2.5 % of the yield: not grouped.
	main, small := group([]entry{{name: "sugar", percent: 60, finished: 80}, {name: "pectin", percent: 1.875, finished: 2.5}}, 2)
	if len(main) != 2 || len(small) != 0 {
		t.Errorf("grouped %v", small)
	}
}

func TestListDetails(t *testing.T) {
	r := pot(t, batch.Jam, "Apricot jam", measured(66), part{"apricots", 500}, part{"dried apricots", 100}, part{"sugar", 500}, part{"apricots", 200}, part{"sodium benzoate", 1})
	r.Lines = append(r.Lines, cook.Line{Paths: []string{"ingredient[9]"}, Name: "pectin", Mass: 10 * unit.Gram,
		Contains: []pantry.Part{{Name: "dextrose"}, {Name: "citric acid"}}})
	r.Lines[1].Allergens = []string{"sulfites"}
	c, l := declare(t, r, "us", draft.Options{})
	want := "Ingredients: Apricots, sugar, dried apricots (sulfites), pectin (dextrose, citric acid), sodium benzoate (preservative)."
	if got := text(c, label.Ingredients); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if _, ok := found(l, "sulfites-unknown"); ok {
		t.Error("declared sulfites are asked for again")
	}
	b, _ := c.Find(label.Ingredients)
	if b.Min.Length != unit.Inch/16 || b.Zone != label.Info || !b.Required {
		t.Errorf("%+v", b)
	}
	r.Lines[1].Allergens = nil
	_, l = declare(t, r, "us", draft.Options{})
	if d, ok := found(l, "sulfites-unknown"); !ok || d.Path != "ingredient[1]" {
		t.Errorf("sulfites: %v", l)
	}
}

// 21 U.S.C. 343(w); FDA guidance Edition 5: coconut is off the list; a nut is
// named itself.
func TestAllergens(t *testing.T) {
	for _, x := range []struct{ words, want string }{
		{"butter", "Contains: Milk"},
		{"pecans", "Contains: Pecans"},
		{"egg yolks", "Contains: Egg"},
		{"Brazil nuts", "Contains: Brazil nuts"},
		{"soy sauce", "Contains: Soy, Wheat"},
		{"sesame seeds", "Contains: Sesame"},
		{"coconut", "Allergens: none of the nine major allergens in this recipe."},
		{"mustard seed", "Allergens: none of the nine major allergens in this recipe."},
	} {
		c, _ := declare(t, pot(t, batch.Conserve, "Fig conserve", measured(66), part{"figs", 500}, part{"sugar", 500}, part{x.words, 20}), "us", draft.Options{})
		if got := text(c, label.Allergens); got != x.want {
			t.Errorf("%s: %q, want %q", x.words, got, x.want)
		}
	}
}

func TestOwnAllergenWords(t *testing.T) {
	r := pot(t, batch.Jam, "Fig jam", measured(66), part{"figs", 500}, part{"sugar", 500})
	r.Lines[0].Allergens = []string{"tree nut (almond)", "soy lecithin", "nuts", "coconut", "rowan", "mlik"}
	r.Kitchen.AlsoHandles = []string{"almonds", "milk", "Brazil nuts"}
	c, l := declare(t, r, "us", draft.Options{})
	if got := text(c, label.Allergens); got != "Contains: Almonds, Soy, Nuts, Rowan, Mlik. Also contains: coconut." {
		t.Errorf("%q", got)
	}
	if got := text(c, label.Advisory); got != "Kitchen also handles milk and Brazil nuts." {
		t.Errorf("advisory %q", got)
	}
	for _, code := range []string{"unknown-allergen", "name-the-species", "no-longer-major", "cross-contact"} {
		if _, ok := found(l, code); !ok {
			t.Errorf("no %s in %v", code, l)
		}
	}
}

// 21 CFR 101.4(b)(2)(i): parts "in descending order of predominance"; as the
// packet has them where a percentage is not known.
func TestPartsByPredominance(t *testing.T) {
	for want, parts := range map[string][]pantry.Part{
		"dextrose, citric acid, pectin": {{Name: "pectin", Percent: 3.5}, {Name: "dextrose", Percent: 60}, {Name: "citric acid", Percent: 36.5}},
		"pectin, dextrose, citric acid": {{Name: "pectin"}, {Name: "dextrose", Percent: 60}, {Name: "citric acid", Percent: 36.5}},
		"":                              nil,
	} {
		if got := partsText(cook.Line{Contains: parts}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// 21 CFR 101.22(j): the name and "a separate description of its function",
// inside parentheses too, and once.
func TestPreservativeFunctionAtAnyDepth(t *testing.T) {
	p := &pass{Draft: &draft.Draft{Set: rulesOf(t, "us")}}
	for text, want := range map[string]string{
		"sodium benzoate": "sodium benzoate (preservative)",
		"liquid pectin (water, pectin, sodium benzoate)":          "liquid pectin (water, pectin, sodium benzoate (preservative))",
		"filling (fruit base (apples, Potassium Sorbate), sugar)": "filling (fruit base (apples, Potassium Sorbate (preservative)), sugar)",
		"potassium sorbate (to retard spoilage)":                  "potassium sorbate (to retard spoilage)",
		"sulfur dioxide, sorbic acid":                             "sulfur dioxide (preservative), sorbic acid (preservative)",
		"sodium benzoates":                                        "sodium benzoates",
		"sugar":                                                   "sugar",
	} {
		if got := p.withFunction(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
