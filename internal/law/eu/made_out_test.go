package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// The fruit content is a prescribed sentence beside the name (2001/113/EC Art
// 2(3)), whole grams rounded down; without a yield there is none, and it is said.
func TestFruitContentIsExactAndNeedsAYield(t *testing.T) {
	e := tester(t, "eu", "en", after, batchA1(63), cylinder(68, 60, 340))
	e.declare()
	b, ok := e.C.Find(label.Fruit)
	if !ok || !b.Exact || len(b.With) != 1 || b.With[0] != label.Identity || !strings.Contains(b.Text(), "62") { // 2000 g in 3200 g: 62.5
		t.Errorf("%v %+v", ok, b)
	}
	r := batchA1(63)
	r.Yield = cook.Amount{}
	e = tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
	e.fruit()
	if _, made := e.C.Find(label.Fruit); made || !strings.Contains(saidAt(e), "no-yield cook") {
		t.Errorf("%v %q", made, saidAt(e))
	}
}

// A fruit of no class of Annex I counts in the class of all others.
func TestFruitOfNoClassIsGeneral(t *testing.T) {
	for class, want := range map[string]string{"": "general", "none": "general", "general": "general", "citrus": "citrus"} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Jam", 1000, 63, in{key: "strawberry", name: "strawberries", g: 500, kind: "fruit", class: class}), cylinder(68, 60, 340))
		e.R.Lines[0].IsFruit = true
		if got := e.counted([]string{"fruit"}); len(got) != 1 || got[0].Class != want {
			t.Errorf("%q: %+v", class, got)
		}
	}
}

// A product's first name may stand alone from so many fruits on, as the sets
// write it for chestnut purée and mincemeat; with fewer the fruits are named.
func TestNameOfManyFruits(t *testing.T) {
	fruits := []in{{key: "orange", name: "oranges", g: 500, kind: "fruit", class: "citrus"}, {key: "lemon", name: "lemons", g: 300, kind: "fruit", class: "citrus"},
		{key: "grapefruit", name: "grapefruit", g: 200, kind: "fruit", class: "citrus"}}
	for n, want := range map[int]bool{2: false, 3: true} {
		e := tester(t, "eu", "en", after, cooked(batch.Marmalade, "Marmalade", 3000, 63, append(fruits[:n:n], in{key: "sugar_white", name: "sugar", g: 1500, kind: "sweetener"})...), cylinder(68, 60, 340))
		e.product.Names = []place.ProductName{{Lang: "en", Name: "citrus marmalade", AloneFrom: 3}}
		if got := e.composed(); (got == "Citrus marmalade") != want {
			t.Errorf("%d fruits: %q", n, got)
		}
	}
}

// Curd needs so much fat and egg yolk in 1000 g (SR 2018/78 Schedule 3 Part 11):
// the very least is enough, and yolk solids are what is not water.
func TestLeastConstituentsToTheGram(t *testing.T) {
	yolk := pantry.Ingredient{Key: "egg_yolk", Name: "egg yolk", WaterG: 50, FatG: 26}
	for least, short := range map[float64]bool{50: false, 50.001: true, 49.9: false} {
		e := tester(t, "eu", "en", after, cooked(batch.Curd, "Lemon curd", 1000, 65, in{key: "egg_yolk", name: "egg yolk", g: 100, row: &yolk}), cylinder(68, 60, 340))
		e.product.Least, e.L = []place.LeastRule{{What: "egg yolk solids", Grams: least}}, nil
		e.judgeLeast()
		if (saidAt(e) != "") != short {
			t.Errorf("least %g g: %q", least, saidAt(e))
		}
	}
	// USDA SR28: a large egg of 50 g holds 17 g of yolk (from memory), of which 47.69 % is no water.
	whole := pantry.Ingredient{Key: "egg_whole", Name: "eggs"}
	e := tester(t, "eu", "en", after, cooked(batch.Curd, "Lemon curd", 1000, 65, in{key: "egg_whole", name: "eggs", g: 1000, row: &whole}), cylinder(68, 60, 340))
	if got := e.holds(place.LeastRule{What: "egg yolk solids"}); got < 162 || got > 162.2 { // 1000 × 0.34 × 0.4769 = 162.146
		t.Errorf("yolk solids of 1 kg of eggs: %.3f g", got)
	}
}

// Weights that support no net quantity leave it to be declared.
func TestNoNetFromWeightsTooSmall(t *testing.T) {
	jar := cylinder(68, 60, 0)
	jar.Weighed = []unit.Mass{unit.Grams(0.9), unit.Grams(0.9), unit.Grams(0.9)}
	e := tester(t, "eu", "en", after, batchA1(63), jar)
	if m := e.nominal(); m != 0 || strings.Contains(saidAt(e), "net-from-weights") {
		t.Errorf("%v: %s", m, saidAt(e))
	}
}

// What is wrong with a use-by date is told at the use-by date.
func TestUseByIsItsOwnKey(t *testing.T) {
	for useBy, want := range map[bool]string{true: "use_by", false: "best_before"} {
		r := batchA1(63)
		r.Batch.UseBy = useBy
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		e.date()
		if b, _ := e.C.Find(label.Date); b.Path != want {
			t.Errorf("use by %v: told at %q", useBy, b.Path)
		}
	}
}

func TestENumberOfOddNames(t *testing.T) {
	for name, want := range map[string]string{"pectin - E 440": "440", "- -": "", "E 12": "", "E 12345": "", "E 1422": "1422", "e150d": "150d", "E160ab": "", "-E-": "", "Ee": ""} {
		if got := eNumber(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
