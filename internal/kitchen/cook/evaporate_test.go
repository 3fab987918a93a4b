package cook

import (
	"fmt"
	"math"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// latent is the heat that boils away a gram of water at 100 °C, in joules: 2257
// (steam tables).
const latent = 2257

// The rates are those of a kitchen: a simmer takes the heat that measured gas
// rings give a pan at and below the boil (0.43 to 0.85 kW of a ring of 1.75 kW,
// protonsforbreakfast.wordpress.com, 16 Dec 2012), and the fastest boil three
// quarters of 3 kW, the efficiency of an electric ring.
func TestPotsLoseWhatARingCanHeat(t *testing.T) {
	if kW := simmerAway * 3500 * float64(latent) / 3600e3; kW < 0.43 || kW > 0.85 {
		t.Errorf("a simmer of 3.5 kg takes %.2f kW", kW)
	}
	if kW := boilAway * float64(latent) / 60e3; kW < 1.9 || kW > 0.76*3 {
		t.Errorf("the fastest boil takes %.2f kW", kW)
	}
	// 0.5 US gallon an hour off 3 gallons, an electric hob (beer.trevorbentley.com, 11 Sep 2017)
	if most, measured := boilAway*60.0, 0.5*3785; measured > most || measured < most/3 {
		t.Errorf("%.0f g an hour measured, %.0f at most", measured, most)
	}
}

func simmeredBatch(t *testing.T, kind batch.ProductType, minutes float64) *Result {
	t.Helper()
	b := &batch.Batch{Product: kind}
	b.Ingredients = []batch.Ingredient{ing(t, "tomatoes", "3 kg", ""), ing(t, "onions", "1 kg", ""), ing(t, "brown sugar", "500 g", ""), ing(t, "cider vinegar", "1 l", "")}
	if minutes >= 0 {
		b.Cook.Minutes = &minutes
	}
	r, _ := Compute(b, nil, pantry.Default())
	return r
}

// Boil time moves what is boiled by the clock: each quarter of an hour more
// leaves less of a chutney or relish, and none boils away its solids, or more
// than the ring can heat.
func TestBoilTimeMovesTheYield(t *testing.T) {
	for _, kind := range []batch.ProductType{batch.Chutney, batch.Relish} {
		row, _ := pantry.Default().Boil(string(kind), "")
		usual := simmeredBatch(t, kind, -1)
		if at := simmeredBatch(t, kind, row.Minutes); at.Yield != usual.Yield {
			t.Errorf("%s: %v after its usual %g minutes, %v when none is said", kind, at.Yield, row.Minutes, usual.Yield)
		}
		before := math.Inf(1)
		for _, min := range []float64{0, 15, 30, 60, 120, 240, 1440} {
			r := simmeredBatch(t, kind, min)
			got, in, solids := r.Yield.Mass.Grams(), r.Input.Grams(), (r.Soluble + r.Insoluble).Grams()
			if got > before+1e-6 || got < solids/thickest/1.3 || got < in*(1-warmUp)-boilAway*min-1 || r.Range.Low > r.Yield.Mass || r.Range.High < r.Yield.Mass {
				t.Errorf("%s after %g minutes: %.0f g of %.0f, %.0f of them solids, %v", kind, min, got, in, solids, r.Range)
			}
			before = got
		}
	}
	// by hand: 12 % after 10 minutes, and 0.30 of the pot in each hour more
	hour := simmeredBatch(t, batch.Relish, 70)
	within(t, "relish after 70 minutes", hour.Yield.Mass.Grams(), hour.Input.Grams()*0.88*math.Exp(-0.30), 0.5)
	// by hand: the mean of 30 % after 55 minutes, and of 40 % soluble solids
	c := simmeredBatch(t, batch.Chutney, 55)
	in, s, i := c.Input.Grams(), c.Soluble.Grams(), c.Insoluble.Grams()
	within(t, "chutney after 55 minutes", c.Yield.Mass.Grams(), math.Sqrt(in*0.70*(s/0.40+i)), 0.5)
}

// A jam boiled two minutes has not come to its finish yet, and is not expected
// there; boiled long enough it is. Its yield, which law and label rest on, stays.
func TestShortBoilLeavesMore(t *testing.T) {
	mid := func(minutes float64) (m, yield float64) {
		b := potOf(t, "").Batch
		if minutes > 0 {
			b.Cook.Minutes = &minutes
		}
		r, _ := Compute(b, nil, pantry.Default())
		return (r.Range.Low.Grams() + r.Range.High.Grams()) / 2, r.Yield.Mass.Grams()
	}
	plain, yield := mid(0)
	short, same := mid(2)
	long, _ := mid(60)
	if short <= plain*1.02 || math.Abs(long-plain) > 1 || yield != same {
		t.Errorf("after 2 minutes %.0f, 60 %.0f, unsaid %.0f; yield %.0f and %.0f", short, long, plain, yield, same)
	}
	in := potOf(t, "").Input.Grams()
	within(t, "after 2 minutes", short, in*0.92-2*60, 0.5)
	// the ten minutes of a marmalade are those after its peel was cooked soft
	at := func(minutes float64) *Result {
		b := &batch.Batch{Product: batch.Marmalade, Ingredients: []batch.Ingredient{ing(t, "oranges with peel", "1 kg", ""), ing(t, "water", "2 l", ""), ing(t, "sugar", "1.5 kg", "")}}
		if minutes > 0 {
			b.Cook.Minutes = &minutes
		}
		r, _ := Compute(b, nil, pantry.Default())
		return r
	}
	if unsaid, ten := at(0), at(10); unsaid.Range != ten.Range || unsaid.Range.High.Grams() > 0.8*unsaid.Input.Grams() {
		t.Errorf("a marmalade: %v, ten minutes %v", unsaid.Range, ten.Range)
	}
	if s := fmt.Sprint(simmeredBatch(t, batch.Curd, 30).YieldRule); s != "curd, 3 % loss" {
		t.Errorf("time moved %q", s)
	}
}
