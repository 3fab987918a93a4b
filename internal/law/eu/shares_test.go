package eu

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Directive 2001/113/EC Annex I, jelly: "after deduction of the weight of water used in
// preparing the aqueous extracts". What is no share of a hundred deducts nothing, and
// no more water comes out than went in.
func TestWaterComesOutOfAnExtract(t *testing.T) {
	for _, x := range []struct {
		part    string
		percent []float64
		want    float64
	}{
		{"water", []float64{40}, 600}, {"water", []float64{0.5}, 995}, {"water", []float64{100}, 0}, {"water", []float64{100.5}, 1000}, {"water", []float64{-1}, 1000}, {"water", []float64{0}, 1000},
		{"water", []float64{60, 60}, 0}, {"juice", []float64{40}, 1000}, {"spring water", []float64{40}, 600}, {"watermelon", []float64{40}, 1000},
	} {
		ln := cook.Line{Mass: unit.Grams(1000)}
		for _, p := range x.percent {
			ln.Contains = append(ln.Contains, pantry.Part{Name: x.part, Percent: p})
		}
		if got := lessWater(ln); got != unit.Grams(x.want) {
			t.Errorf("%s %v: %v, want %g g", x.part, x.percent, got, x.want)
		}
	}
}

// Art 2(3): grams in 1000 or 100 g of the finished food, rounded down; of nothing
// there is no share.
func TestSharesOfNothing(t *testing.T) {
	for _, x := range []struct {
		part, whole unit.Mass
		down, per   float64
	}{{1000, 1000, 100, 100}, {math.MaxInt64, 1, 1e15, 100 * float64(math.MaxInt64)}, {999, 1000, 99, 99.9}, {2000, 3200, 62, 62.5}, {5, 0, 0, 0}, {5, -5, 0, 0}, {-50, 10, 0, -500}, {0, 10, 0, 0}, {1, 1, 100, 100}} {
		if got := roundedDown(x.part, x.whole, 100); got != x.down {
			t.Errorf("%d of %d: %g, want %g", x.part, x.whole, got, x.down)
		}
		if got := percentOf(x.part, x.whole); got < x.per-1e-9 || got > x.per+1e-9 {
			t.Errorf("%d of %d: %g %%, want %g", x.part, x.whole, got, x.per)
		}
	}
	for fruit, want := range map[float64]int{1000: 1000, 450: 450, 449.9: 449, 999.9: 999} {
		if got := perKilo([]share{{Mass: unit.Grams(fruit)}}, unit.Kilogram); got != want {
			t.Errorf("%g g in a kilogram: %d", fruit, got)
		}
	}
}

// Annex II permits citrus juice and peel in jam of other fruit; where all fruit is
// citrus, a little of one is fruit too.
func TestALittleCitrusBesideCitrus(t *testing.T) {
	for other, want := range map[string]int{"orange": 2, "strawberry": 1} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "x", 1000, 62, tableIn(t, other, 950), tableIn(t, "lemon", 50)), cylinder(68, 60, 340))
		if len(e.fruits) != want {
			t.Errorf("a lemon beside %s: %d fruits", other, len(e.fruits))
		}
	}
}

// Annex I: the forms a row counts. Juice is fruit where the row counts juice and never
// by its fruit's name; onions are no fruit though a row counts vegetables.
func TestWhichFormsCount(t *testing.T) {
	for _, x := range []struct {
		key  string
		list string
		want bool
	}{
		{"orange_juice", "juice", true}, {"orange_juice", "fruit", false}, {"orange_juice", "orange", false}, {"orange_juice", "orange_juice", false},
		{"strawberry", "fruit", true}, {"strawberry", "strawberry", true}, {"strawberry", "juice", false}, {"strawberry", "rhubarb", false},
		{"onion", "vegetable", false}, {"onion", "onion", true}, {"carrot", "vegetable", true}, {"tomato", "vegetable", true},
	} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "x", 1000, 62, tableIn(t, x.key, 600)), cylinder(68, 60, 340))
		if got := e.counts(strings.Split(x.list, "|"), e.R.Lines[0]); got != x.want {
			t.Errorf("%s where %s counts: %v", x.key, x.list, got)
		}
	}
}
