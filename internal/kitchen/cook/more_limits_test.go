package cook

import (
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Weights in findings are in the kitchen's units: a pot of 30 lb (13.6 kg) out
// of far less, told in pounds or in kilograms (NIST SP 811: 1 lb = 453.59237 g).
func TestWeightsInFindings(t *testing.T) {
	for units, want := range map[string]string{unit.US: "30 lb", unit.Metric: "13.608 kg"} {
		b := demo(t)
		b.Cook.FinishedPot = 30 * unit.Pound
		if _, l := Compute(b, &batch.Kitchen{Units: units}, pantry.Default()); !slices.ContainsFunc(l, func(d diag.Diagnostic) bool {
			return d.Code == "pot-over-input" && strings.Contains(d.Message, "("+want+")")
		}) {
			t.Errorf("%s: %v", units, l)
		}
	}
}

// A scale and kitchen measures may disagree by 3 % (own reading): within that
// the pot is believed, beyond it set aside.
func TestWeighedPotAgainstItsRecipe(t *testing.T) {
	b := demo(t)
	r, _ := compute(t, b)
	in, solids := r.Input.Grams(), (r.Soluble + r.Insoluble).Grams()
	for pot, rule := range map[float64]string{in: "weighed pot", in * 1.029: "weighed pot", in * 1.031: "long boil to 65 °Brix", solids * 0.971: "weighed pot", solids * 0.969: "long boil to 65 °Brix"} {
		b := demo(t)
		b.Cook.FinishedPot = unit.Grams(pot)
		r, l := compute(t, b)
		if r.YieldRule != rule || (rule != "weighed pot") != l.HasErrors() {
			t.Errorf("%.0f g of %.0f: %s %v", pot, in, r.YieldRule, l)
		}
		if over := has(l, "pot-over-input"); over != (pot > in) {
			t.Errorf("%.0f g of %.0f: told %v", pot, in, over)
		}
		if r.Yield.Mass > r.Input {
			t.Errorf("%s out of %s", r.Yield.Mass.Format(unit.Metric), r.Input.Format(unit.Metric))
		}
	}
}

// USDA Guide 7 has a row of its own for quarts of fruit butter.
func TestQuartsOfButter(t *testing.T) {
	for ml, key := range map[float64]string{600: "butter", 601: "butter quart"} {
		c := calcOf(55, 1000, 300)
		c.b.Product = batch.Butter
		c.r.Jars = []JarPlan{{Jar: pantry.Jar{Nominal: unit.ML(ml)}}}
		if got := c.processKey(); got != key {
			t.Errorf("%g ml: %s", ml, got)
		}
	}
	for _, c := range []struct {
		brix, sugar float64
		read        bool
		key         string
	}{{59, 1000, true, "low sugar"}, {59, 1000, false, "jam"}, {50, 499, false, "low sugar"}, {50, 500, false, "jam"}, {60, 400, true, "jam"}} {
		x := calcOf(c.brix, 1000, c.sugar)
		if c.read {
			x.r.Brix.How = Measured
		}
		if got := x.processKey(); got != c.key {
			t.Errorf("%+v: %s", c, got)
		}
	}
	low := calcOf(50, 1000, 400)
	low.incomplete = true
	if low.processKey() != "jam" {
		t.Error("half a recipe has little sugar")
	}
}

// Published full-sugar pectin recipes compute to 56-64 °Brix (USDA AIB 539, HGB 56).
func TestPectinSugarFromBothSides(t *testing.T) {
	with := func(brix, sugar float64) *calc {
		c := calcOf(brix, 1000, sugar)
		c.r.Lines = append(c.r.Lines, Line{Key: "pectin_powder", Row: pantry.Ingredient{Class: "gelling"}})
		return c
	}
	for _, c := range []struct {
		brix, sugar float64
		full, short bool
	}{{59, 1000, true, true}, {58.9, 1000, false, true}, {59, 999, false, false}, {55, 1000, false, true}, {54.9, 1000, false, false}} {
		if x := with(c.brix, c.sugar); x.fullSugar() != c.full || x.pectinSugar() != c.short {
			t.Errorf("%+v: full %v, pectin sugar %v", c, x.fullSugar(), x.pectinSugar())
		}
	}
	if calcOf(60, 1000, 1000).fullSugar() {
		t.Error("60 °Brix without pectin")
	}
}

// 21 CFR and EU lists: a part whose allergens are given is known, by either
// list or the maker's word; what a colon ends is a heading.
func TestPartsThatAreProven(t *testing.T) {
	for name, part := range map[string]pantry.Part{
		"by the United States' list": {Name: "mystery", USAllergen: "milk"}, "by the European list": {Name: "mystery", EUAllergen: "milk"}, "by the maker": {Name: "mystery", Allergens: []string{}},
	} {
		r := &Result{}
		if a := r.PartAllergy(Line{Name: "mix", Paths: []string{"ingredient[0]"}}, part); len(a.Unknown) != 0 {
			t.Errorf("%s: %+v", name, a.Unknown)
		}
	}
	if got := join("mix", " mystery: "); got != "mix › mystery" || join("", "milk") != "milk" || join("milk", "milk") != "milk" {
		t.Error(got)
	}
	deep := "mystery" + strings.Repeat(" (mystery", 14) + strings.Repeat(")", 14)
	if a := (&Result{}).PartAllergy(Line{Name: "mix"}, pantry.Part{Name: deep}); len(a.Unknown) == 0 {
		t.Error("what is too deep to follow is proven")
	}
	p := pantry.Default()
	s := (&Result{}).scan(&Allergy{}, "")
	plum, _ := p.Ingredient("plums")
	if !s.proven(plum, "plums") {
		t.Error("plums")
	}
	if s.proven(pantry.Ingredient{Name: "house blend", Own: true, Compound: "several things"}, "house blend") {
		t.Error("several things are one")
	}
}

// A published recipe counts only as it stands: without unchanged = true the
// finding says so, and what to write.
func TestRecipeThatMayHaveBeenChanged(t *testing.T) {
	b := demo(t)
	b.Recipe = "usda-blueberry-spice-jam"
	b.Ingredients = []batch.Ingredient{ing(t, "blueberries", "740 g", ""), ing(t, "sugar", "1100 g", ""), ing(t, "pectin", "50 g", ""), ing(t, "lemon juice", "15 g", ""), ing(t, "nutmeg", "1.1 g", ""), ing(t, "water", "177 g", "")}
	_, l := compute(t, b)
	i := slices.IndexFunc(l, func(d diag.Diagnostic) bool { return d.Code == "recipe-not-tested" })
	if i < 0 || !strings.Contains(l[i].Message, "nobody says") || !strings.Contains(l[i].Hint, "unchanged = true") {
		t.Errorf("%v", l)
	}
	b.Unchanged = true
	if _, l := compute(t, b); has(l, "recipe-not-tested") {
		t.Errorf("%v", l)
	}
}

// Nothing in the pot: no estimate is told, and no range.
func TestAnEmptyPotIsNotEstimated(t *testing.T) {
	b := demo(t)
	b.Ingredients = nil
	r, l := Compute(b, nil, pantry.Default())
	if has(l, "yield-estimated") || r.Range.Coverage != 0 || r.RangeText() != "" {
		t.Errorf("%v %+v", l, r.Range)
	}
	if _, l := compute(t, demo(t)); !has(l, "yield-estimated") {
		t.Error("an estimate is not told")
	}
	w := demo(t)
	w.Cook.FinishedPot = 3 * unit.Kilogram
	if r, l := compute(t, w); has(l, "yield-estimated") || r.unweighed <= 0 {
		t.Errorf("a weighed pot is told as an estimate: %v", l)
	}
	c := calcOf(65, 1000, 1000)
	c.sour = sourness{}
	if got := c.notAcid(); got != "water with no acid fruit to carry it" {
		t.Error(got)
	}
	c.sour.low, c.r.Lines[0].Paths = []int{0}, []string{"ingredient[0]"}
	if got := c.notAcid(); got != "plums" {
		t.Error(got)
	}
}

// Choi and Okos where fat and protein are more than 2 %: curd is lighter than
// the syrup of its sugar, by the solids of all lines.
func TestDensityOfCurd(t *testing.T) {
	row := pantry.Ingredient{CarbG: 20, FibreG: 1, ProteinG: 10, FatG: 20}
	r := &Result{Yield: Amount{100 * unit.Gram, Measured}, Brix: Reading{50, Estimated}, Lines: []Line{{Row: row, Mass: 100 * unit.Gram, Soluble: 20 * unit.Gram, Insoluble: 33 * unit.Gram}}}
	want := pantry.MixDensity(pantry.Solids{Water: 47, Carbohydrate: 19, Fibre: 1, Protein: 10, Fat: 20, Ash: 3}, fillTempC) / 1000
	if got := r.HotDensity(); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.5f, want %.5f", got, want)
	}
	r.Lines[0].Removed = true
	if got := r.HotDensity(); math.Abs(got-pantry.Density(50, fillTempC)/1000) > 1e-9 {
		t.Errorf("%.5f", got)
	}
}
