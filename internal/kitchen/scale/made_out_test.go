package scale

import (
	"math"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Millilitres in steps a kitchen jug has; each limit belongs to the step above.
func TestMetricAtItsSteps(t *testing.T) {
	for ml, want := range map[float64]string{1000: "1 l", 1004: "1 l", 999: "1000 ml", 994: "995 ml", 50: "50 ml", 52: "50 ml", 49.4: "49 ml", 10: "10 ml", 9.9: "9.9 ml", 0.5: "0.5 ml"} {
		if got := metric(unit.ML(ml)); got != want {
			t.Errorf("%g ml: %s, want %s", ml, got, want)
		}
	}
}

// Twenty cups are measured in cups alone; no volume is no measure.
func TestCupsAtTheirEnds(t *testing.T) {
	tbsp := unit.Tablespoon
	for v, want := range map[unit.Volume]string{0: "", -1: "", 1: "a pinch", 19*unit.Cup + tbsp: "19 cups + 1 tbsp", 20*unit.Cup + tbsp: "20 cups"} {
		if got := Cups(v); got != want {
			t.Errorf("%v: %q, want %q", v, got, want)
		}
	}
}

// "3 lemons" and "50 ml of lemon juice" are no one measure; two counts are.
func TestMixedMeasures(t *testing.T) {
	for _, x := range []struct {
		amounts [2]string
		mixed   bool
	}{{[2]string{"1 cup", "2 tbsp"}, false}, {[2]string{"1 cup", "200 g"}, true}, {[2]string{"200 g", "100 g"}, false}} {
		b := &batch.Batch{Ingredients: []batch.Ingredient{ing(t, "sugar", x.amounts[0]), ing(t, "sugar", x.amounts[1])}}
		r, _ := cook.Compute(b, nil, pantry.Default())
		plan := &Plan{Factor: 2}
		if _, _, _, mixed := plan.asWritten(r, r.Lines[0]); mixed != x.mixed {
			t.Errorf("%v: mixed %v", x.amounts, mixed)
		}
	}
}

// A pot of what is all insoluble has no syrup; one of sugar water has. The pot
// is half as large again as what goes in (own allowance for foam).
func TestPotOfDrySolids(t *testing.T) {
	dry := &cook.Result{Input: unit.Grams(1000), Insoluble: unit.Grams(1000)}
	sweet := &cook.Result{Input: unit.Grams(1000), Soluble: unit.Grams(500)}
	plan := &Plan{Factor: 1}
	plan.pot(dry)
	water := plan.Pot.ML() / (foam * 1000 / pantry.Density(0, 20) * 1000)
	plan.pot(sweet)
	syrup := plan.Pot.ML() / (foam * 1000 / pantry.Density(50, 20) * 1000)
	if math.Abs(water-1) > 1e-9 || math.Abs(syrup-1) > 1e-9 {
		t.Errorf("%g of water, %g of syrup", water, syrup)
	}
}

// Twice the recipe with pectin is warned of, a quarter more of any jam is noted
// (USDA AIB 539: one batch at a time), less is neither.
func TestLargeBatchesFromBothSides(t *testing.T) {
	pectin, plain := berry(t), berry(t)
	pectin.Ingredients = append(pectin.Ingredients, ing(t, "pectin", "50 g"))
	for _, x := range []struct {
		b      *batch.Batch
		factor float64
		code   string
	}{{pectin, 2, "large-pectin-batch"}, {pectin, 1.99, "large-batch"}, {plain, 2, "large-batch"}, {plain, 1.26, "large-batch"}, {plain, 1.25, ""}, {plain, 0.25, ""}, {plain, 0.24, "small-batch"}} {
		r, _ := cook.Compute(x.b, nil, pantry.Default())
		plan := &Plan{Factor: x.factor}
		var l diag.List
		plan.advise(r, &l)
		for _, code := range []string{"large-pectin-batch", "large-batch", "small-batch"} {
			if has(l, code) != (code == x.code) {
				t.Errorf("%g: %s %v", x.factor, code, has(l, code))
			}
		}
	}
}

// A jar somebody weighed full holds what the scale said, not what is computed.
func TestWeighedJarsHoldTheirWeight(t *testing.T) {
	for _, weighed := range []bool{false, true} {
		b := berry(t)
		b.Fills = []batch.Fill{{Jar: "us8", Count: 2, Sealed: -1}}
		if weighed {
			b.Fills[0].Net = []unit.Mass{unit.Grams(280), unit.Grams(281)}
		}
		r, _ := cook.Compute(b, nil, pantry.Default())
		var l diag.List
		plan := &Plan{Factor: 1}
		plan.jars(r, []Want{{Jar: "us8", Count: 2}}, pantry.Default(), &l)
		if len(plan.Jars) != 1 || (plan.Jars[0].How == cook.Measured) != weighed || weighed && (plan.Jars[0].Fill < unit.Grams(280) || plan.Jars[0].Fill > unit.Grams(281)) {
			t.Errorf("weighed %v: %+v", weighed, plan.Jars)
		}
	}
}
