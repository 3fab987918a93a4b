package cook

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// A jar is as large as what it holds, whatever its maker calls it: half-pint or
// pint for sweet spreads (Kansas State University, 13 Sept 2019; USDA AIB 539).
func TestJarLargerThanItsName(t *testing.T) {
	for _, x := range []struct {
		nominal, brim float64
		ok            bool
	}{{250, 270, true}, {473, 510, true}, {500, 540, true}, {500, 676, true}, {500, 678, false}, {250, 1000, false}, {237, 946, false}, {473, 720, false}, {1000, 1050, false}} {
		c := calcOf(65, 1000, 1000)
		c.b.Product = batch.Jam
		c.r.Jars = []JarPlan{{Jar: pantry.Jar{Description: "own", Nominal: unit.ML(x.nominal), Brimful: unit.ML(x.brim)}}}
		row, _ := pantry.Default().ProcessTime("jam")
		if got := c.jarsFit(&verdict{}, row); got != x.ok {
			t.Errorf("%g ml of %g: %v", x.nominal, x.brim, got)
		}
	}
}

// What is written behind a food, or in its brackets, is read with it; what it
// lies in is another food.
func TestFormsOfAFood(t *testing.T) {
	for _, x := range []struct {
		name, form string
		never      bool
	}{
		{"peaches", "peeled, white, sliced", true}, {"peaches", "ripe white", true}, {"peaches (white)", "", true}, {"nectarines – white", "", true},
		{"peaches", "in white wine", false}, {"peaches", "yellow, peeled", false}, {"Pfirsiche", "geschält, weiß", true}, {"apples", "cooked with pumpkin", true},
	} {
		b := &batch.Batch{Product: batch.Jam, Ingredients: []batch.Ingredient{{Name: x.name, Form: x.form, Solids: -1, Amount: unit.Quantity{Text: "1 kg", Dim: unit.ByMass, Mass: unit.Kilogram}}}}
		_, l := Compute(b, nil, pantry.Default())
		if got := has(l, "never-shelf"); got != x.never {
			t.Errorf("%s, %s: %v", x.name, x.form, got)
		}
	}
}
