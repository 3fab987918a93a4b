package cook

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// calcOf is a computation with an estimated Brix and lines in grams.
func calcOf(brix, fruit, sugar float64) *calc {
	return &calc{b: &batch.Batch{Product: batch.Jam}, k: nobody(), p: pantry.Default(), pot: outcome{loss: -1}, r: &Result{Brix: Reading{brix, Estimated}, Yield: Amount{grams(1000), Estimated},
		Lines: []Line{{Name: "plums", Key: "plum", IsFruit: true, Mass: grams(fruit)}, {Name: "sugar", Key: "sugar_white", IsSweet: true, Mass: grams(sugar)}}}}
}

// 21 CFR 150.160: 65 %; an assumed finish is believed from half as much sugar
// as fruit on (published long-boil recipes start at 0.53).
func TestFullSugarFromBothSides(t *testing.T) {
	for _, c := range []struct {
		brix, fruit, sugar float64
		want               bool
	}{{64.95, 1000, 500, true}, {64.94, 1000, 500, false}, {65, 1000, 499, false}, {65, 1000, 500, true}} {
		if got := calcOf(c.brix, c.fruit, c.sugar).fullSugar(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
	low := calcOf(65, 1000, 499)
	low.r.Yield.How = Measured
	low.pot.pot, low.r.Lines[1].Soluble, low.r.Lines[0].Soluble = 900, grams(499), grams(120)
	if !low.fullSugar() {
		t.Errorf("a weighed pot is believed: %.1f", low.sugarBrix())
	}
	if c := calcOf(65, 1000, 0); c.sweetness() != 0 {
		t.Error("no sugar is sweet")
	}
	c := calcOf(70, 1000, 500)
	c.pot.loss = 0.1
	if got := c.sugarBrix(); got != 0 {
		t.Errorf("no solids: %g", got)
	}
	// 500 g sugar, 100 g soluble and 20 g of other solids in 1000 g of plums; a tenth
	// boils away: 880 − 150 = 730 g of water are left beside 600 g of sugar.
	c.r.Lines[0].Soluble, c.r.Lines[0].Insoluble, c.r.Lines[1].Soluble = grams(100), grams(20), grams(500)
	if got := c.sugarBrix(); math.Abs(got-100*600.0/1330) > 0.01 {
		t.Errorf("%.2f", got)
	}
	c.r.Lines = append(c.r.Lines, Line{Name: "salt", Key: "salt", Mass: grams(100), Soluble: grams(100)}, Line{Name: "peel", Removed: true, IsFruit: true, Mass: grams(900), Soluble: grams(900)})
	if got := c.sugarBrix(); math.Abs(got-100*600.0/1330) > 0.01 {
		t.Errorf("salt and what was lifted out count: %.2f", got)
	}
}

// In a pot of one weight ginger and sweet potatoes bring solids, but starch is
// no sugar (USDA SR28: 1.7 g and 4.18 g of sugars in 100 g).
func TestStarchKeepsNothing(t *testing.T) {
	for _, c := range []struct {
		more  string
		least bool
	}{{"fresh ginger", false}, {"sweet potatoes", false}, {"sugar", true}} {
		b := demo(t)
		ten, ph := 15.0, 2.8
		b.Cook, b.Process.Minutes = batch.Cook{PH: &ph, FinishedPot: 300 * unit.Gram}, &ten
		b.Ingredients = []batch.Ingredient{ing(t, "strawberries", "200 g", ""), ing(t, "sugar", "113 g", ""), ing(t, c.more, "324 g", "")}
		r, _ := Compute(b, nil, pantry.Default())
		said := r.Keeping.Reasons[0].Fact
		if reduced := strings.HasPrefix(said, "reduced sugar"); reduced == c.least {
			t.Errorf("%s: %s", c.more, said)
		}
	}
}

// What keeping says at 60 °Brix and at pH 4.6, both included.
func TestKeepingAtItsLimits(t *testing.T) {
	for brix, fact := range map[float64]string{60: "too little sugar for the 60 °Brix", 59.9: "reduced sugar, and no pH"} {
		c := calcOf(brix, 1000, 400)
		v := &verdict{class: Shelf}
		if c.keepBySugar(v); v.class != Cold || !strings.HasPrefix(v.reasons[0].Fact, fact) {
			t.Errorf("%g: %+v", brix, v.reasons)
		}
	}
	for ph, class := range map[float64]Class{4.6: ShelfShort, 4.61: Cold} {
		c := calcOf(50, 1000, 400)
		c.r.PHMeasured, c.r.PHHigh = true, ph
		v := &verdict{class: Shelf}
		if c.keepBySugar(v); v.class != class {
			t.Errorf("pH %g: %s", ph, v.class)
		}
	}
	for _, c := range []struct {
		cooked, way string
		kept        bool
		warned      bool
	}{{"no cook", "boiling water", true, true}, {"no cook", "freezer", true, false}, {"no cook", "refrigerator", true, false}, {"no cook", "", true, false}, {"long boil", "boiling water", false, false}, {"long boil", "refrigerator", true, false}} {
		x := calcOf(65, 1000, 1000)
		x.b.Cook.Method, x.b.Process.Method = c.cooked, c.way
		if kept := x.keptCold(&verdict{}); kept != c.kept || has(x.l, "uncooked-processed") != c.warned {
			t.Errorf("%+v: kept %v, %v", c, kept, x.l)
		}
	}
	row, _ := pantry.Default().ProcessTime("jam")
	for h, ok := range map[unit.Length]bool{0: true, row.LeastHead: true, row.LeastHead - 1: false, row.MostHead: true, row.MostHead + 1: false} {
		x := calcOf(65, 1000, 1000)
		x.b.Process.Headspace = h
		if got := x.headroom(&verdict{}, row); got != ok {
			t.Errorf("headspace %d: %v", h, got)
		}
	}
}

// Small pieces weigh what the table says: 0.08 g a clove.
func TestTinyPiecesWeigh(t *testing.T) {
	r, _ := potWith(t, pantry.Default(), "plums: 1 kg", "whole cloves: 10 cloves")
	if got := r.Lines[1].Mass.Grams(); math.Abs(got-0.8) > 0.001 {
		t.Errorf("ten cloves weigh %g g", got)
	}
	if _, ok := cup(pantry.Ingredient{Class: "spice"}, ""); ok {
		t.Error("a cup without a weight")
	}
}
