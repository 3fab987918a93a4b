package eu

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// anyBatch draws results no cook would compute: huge, negative and NaN values,
// odd words, empty names, missing parts.
func anyBatch(t *rapid.T) (*cook.Result, cook.JarPlan) {
	kinds := []batch.ProductType{"jam", "preserve", "jelly", "marmalade", "butter", "curd", "chutney", "relish", "conserve", "spread", "syrup", "", "stew"}
	words := rapid.SampledFrom([]string{"", "strawberries", "Strawberry extra jam", "é", "\xff", "milk (", "almond)", "()", "water", "İstanbul", "s", "pectin", "🍓", "Orange marmalade reduced sugar"})
	number := rapid.SampledFrom([]float64{0, -1, 1, 59.99, 65, 1e18, math.NaN(), math.Inf(1), math.Inf(-1)})
	mass := func(name string) unit.Mass {
		return unit.Mass(rapid.SampledFrom([]int64{0, -5, 1, 250e9, 3200e9, 1e18, math.MaxInt64, math.MinInt64}).Draw(t, name))
	}
	date := func(name string) unit.Date {
		return unit.Date{Year: rapid.IntRange(-1, 9999).Draw(t, name), Month: rapid.IntRange(0, 14).Draw(t, name), Day: rapid.IntRange(-1, 40).Draw(t, name)}
	}
	how := rapid.SampledFrom([]cook.How{cook.Measured, cook.Given, cook.Estimated, ""})
	r := &cook.Result{Lot: words.Draw(t, "lot"), BestBefore: date("best"), Yield: cook.Amount{Mass: mass("yield"), How: how.Draw(t, "how")},
		Brix: cook.Reading{Value: number.Draw(t, "brix"), How: how.Draw(t, "how")}, Input: mass("input"),
		Keeping: cook.Keeping{Class: rapid.SampledFrom([]cook.Class{"", cook.Shelf, cook.ShelfShort, cook.Cold, cook.Freezer, cook.Refrigerator}).Draw(t, "class"), OpenedDays: rapid.IntRange(-9, 99).Draw(t, "opened")}}
	if rapid.Bool().Draw(t, "batch") {
		r.Batch = &batch.Batch{Name: words.Draw(t, "name"), Product: rapid.SampledFrom(kinds).Draw(t, "kind"), Made: date("made"), UseBy: rapid.Bool().Draw(t, "use by")}
	}
	if rapid.Bool().Draw(t, "kitchen") {
		r.Kitchen = &batch.Kitchen{Name: words.Draw(t, "who"), Address: []string{words.Draw(t, "where")}, AlsoHandles: []string{words.Draw(t, "also")}}
	}
	for range rapid.IntRange(0, 4).Draw(t, "lines") {
		ln := cook.Line{Name: words.Draw(t, "line"), Key: rapid.SampledFrom([]string{"", "strawberry", "honey", "lemon"}).Draw(t, "key"), Mass: mass("mass"),
			Allergens: []string{words.Draw(t, "own")}, IsWater: rapid.Bool().Draw(t, "water"), IsFruit: rapid.Bool().Draw(t, "fruit"),
			Row: pantry.Ingredient{EUAllergen: words.Draw(t, "eu"), FruitClassEU: words.Draw(t, "fruit class"), Class: words.Draw(t, "row")}}
		if rapid.Bool().Draw(t, "path") {
			ln.Paths = []string{"ingredient[0]"}
		}
		if rapid.Bool().Draw(t, "parts") {
			ln.Contains = []pantry.Part{{Name: words.Draw(t, "part"), Percent: number.Draw(t, "percent"), EUAllergen: words.Draw(t, "part allergen")}}
		}
		r.Lines = append(r.Lines, ln)
	}
	jar := cook.JarPlan{FillPath: "fill[0]", Declared: mass("declared"), Fill: mass("fill"), Count: rapid.IntRange(-1, 1<<40).Draw(t, "count"), Weighed: []unit.Mass{mass("weighed")},
		Jar: pantry.Jar{Circumference: unit.Length(mass("around")), Panel: unit.Length(mass("panel"))}}
	return r, jar
}

// Whatever comes in: no panic, and every block has words, an id of its own and
// a clause.
func TestNothingPanics(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		r, jar := anyBatch(rt)
		set := rapid.SampledFrom([]string{"eu", "gb"}).Draw(rt, "set")
		c := tester(t, set, rapid.SampledFrom([]string{"en", "de", "fr"}).Draw(rt, "lang"), after, r, jar)
		c.O.Gift, c.ppds = rapid.Bool().Draw(rt, "gift"), rapid.Bool().Draw(rt, "ppds")
		c.declare()
		ids := map[string]bool{}
		for _, b := range c.C.Blocks {
			if ids[b.ID] || b.Cite == "" || b.Verified == "" || b.Min.Length <= 0 {
				rt.Fatalf("block %+v", b)
			}
			ids[b.ID] = true
		}
		for _, d := range c.L {
			if d.Code == "" || d.Message == "" {
				rt.Fatalf("finding %+v", d)
			}
		}
	})
}
