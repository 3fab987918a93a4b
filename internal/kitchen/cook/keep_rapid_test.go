package cook

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// neither is what is no acid and no sugar: it can't make a jar keep longer.
var neither = []string{"water", "butter", "almonds", "walnuts", "garlic", "fresh ginger", "mint", "lavender", "cocoa", "bacon", "cinnamon", "salt", "pumpkin",
	"baking soda", "ascorbic acid", "kirsch", "pectin", "eggs", "cream", "carrots", "tomatoes", "chillies", "coconut", "no such thing", "thyme", "onions", "figs", "white peaches", "bananas"}

// keepsFor orders keeping: the class first, then the days sealed and opened.
func keepsFor(k Keeping) [3]int {
	return [3]int{-caution[k.Class], k.SealedMonths*30 + k.SealedDays, k.OpenedDays}
}

func longer(a, b Keeping) bool {
	x, y := keepsFor(a), keepsFor(b)
	return x[0] > y[0] || x[1] > y[1] || x[2] > y[2]
}

// a kitchen batch, some readings drawn, processed well.
func plausible(t *rapid.T) *batch.Batch {
	grams := func(name string, least, most float64) batch.Ingredient {
		g := rapid.Float64Range(least, most).Draw(t, name)
		return batch.Ingredient{Name: name, Amount: unit.Quantity{Text: "weighed", Dim: unit.ByMass, Mass: unit.Grams(math.Round(g))}, Solids: -1}
	}
	yes, ten := true, 15.0
	b := &batch.Batch{Name: "Jam", Made: unit.Date{Year: 2026, Month: 6, Day: 14},
		Product: rapid.SampledFrom([]batch.ProductType{batch.Jam, batch.Jelly, batch.Butter, batch.Spread, batch.Conserve, batch.Marmalade, batch.Curd, batch.Chutney}).Draw(t, "kind"),
		Process: batch.Process{Method: "boiling water", Minutes: &ten, Sterilised: &yes, AltitudeOK: true},
		Fills:   []batch.Fill{{Jar: "us8", Count: -1, Sealed: -1}}}
	fruit := rapid.SampledFrom([]string{"strawberries", "apricots", "figs", "rhubarb", "oranges", "dates", "red bell peppers", "mangoes", "bananas"}).Draw(t, "fruit")
	b.Ingredients = append(b.Ingredients, grams(fruit, 200, 2000), grams("sugar", 50, 2000))
	for _, more := range []string{"lemon juice", "pectin", "fresh ginger", "water", "walnuts", "raisins", "mint"} {
		if rapid.Bool().Draw(t, more+"?") {
			b.Ingredients = append(b.Ingredients, grams(more, 2, 200))
		}
	}
	b.Cook = batch.Cook{Brix: maybe(t, "brix", 30, 75), PH: maybe(t, "pH", 2.8, 5.2), TempC: maybe(t, "temperature", 95, 112)}
	if rapid.Bool().Draw(t, "pot weighed?") {
		b.Cook.FinishedPot = unit.Grams(rapid.Float64Range(300, 4000).Draw(t, "pot"))
	}
	return b
}

func maybe(t *rapid.T, name string, least, most float64) *float64 {
	if !rapid.Bool().Draw(t, name+"?") {
		return nil
	}
	v := rapid.Float64Range(least, most).Draw(t, name)
	return &v
}

// Adding an ingredient never lengthens keeping unless it is acid or sugar.
func TestAddingNeverLengthens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := plausible(t)
		before, l := Compute(b, nil, pantry.Default())
		if has(l, "brix-below-mix") || has(l, "pot-over-input") {
			t.Skip("the reading contradicts the recipe: an ingredient forgotten explains it")
		}
		pool := neither
		if b.Cook.FinishedPot > 0 { // in a pot of one weight more fruit is more sugar
			pool = neither[:len(neither)-3]
		}
		name := rapid.SampledFrom(pool).Draw(t, "added")
		more := batch.Ingredient{Name: name, Solids: -1, Skip: rapid.Bool().Draw(t, "lifted out"),
			Amount: unit.Quantity{Text: "weighed", Dim: unit.ByMass, Mass: unit.Grams(rapid.Float64Range(1, 1500).Draw(t, "grams"))}}
		with := *b
		with.Ingredients = append(slices.Clone(b.Ingredients), more)
		after, _ := Compute(&with, nil, pantry.Default())
		if longer(after.Keeping, before.Keeping) {
			t.Fatalf("%s makes %s (%d months, %d days) of %s (%d months, %d days)\n%v\n%v", name, after.Keeping.Class, after.Keeping.SealedMonths, after.Keeping.SealedDays,
				before.Keeping.Class, before.Keeping.SealedMonths, before.Keeping.SealedDays, before.Keeping.Reasons, after.Keeping.Reasons)
		}
	})
}

// What is written as recipe never lengthens keeping, and a tested recipe that
// the batch isn't does not either.
func TestRecipeWordsNeverLengthen(t *testing.T) {
	var ids []string
	for _, x := range pantry.Default().TestedRecipes() {
		ids = append(ids, x.ID, x.Cite())
	}
	rapid.Check(t, func(t *rapid.T) {
		b := plausible(t)
		b.Ingredients = append(b.Ingredients, batch.Ingredient{Name: "garlic", Solids: -1, Amount: unit.Quantity{Text: "weighed", Dim: unit.ByMass, Mass: 400 * unit.Gram}})
		before, _ := Compute(b, nil, pantry.Default())
		with := *b
		with.Recipe = rapid.OneOf(rapid.String(), rapid.SampledFrom(ids)).Draw(t, "recipe")
		with.Unchanged = rapid.Bool().Draw(t, "unchanged")
		after, _ := Compute(&with, nil, pantry.Default())
		if longer(after.Keeping, before.Keeping) {
			t.Fatalf("%q makes %s of %s\n%v", with.Recipe, after.Keeping.Class, before.Keeping.Class, after.Keeping.Reasons)
		}
	})
}
