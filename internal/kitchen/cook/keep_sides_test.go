package cook

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// What a boil leaves of the sugar in its syrup: the solids of sugar, fruit and
// acid over what water is left; raw and weighed pots alike. The sums are those
// of the mass balance, written out here.
func TestSugarOfASyrup(t *testing.T) {
	const list = "strawberry 500, sugar_white 400, water 200, salt 50, orange_juice 100, lemon_juice 20, raisin 30"
	var sweet, insoluble, water float64
	for _, ln := range potOfRows(t, list).r.Lines {
		g, sol, ins := ln.Mass.Grams(), ln.Soluble.Grams(), ln.Insoluble.Grams()
		water += g - sol - ins
		if ln.Key != "salt" && !ln.IsWater {
			sweet, insoluble = sweet+sol, insoluble+ins
		}
	}
	const in = 1250 // all but the salt
	for _, x := range []struct {
		name    string
		loss    float64 // of the rule; negative = boiled to a Brix
		row     float64 // % the row lets boil away
		weighed float64
		want    float64
	}{
		{"raw", 0, 0, 0, 100 * sweet / (sweet + water)}, {"a tenth boils away", 0.1, 0, 0, 100 * sweet / (sweet + water - 0.1*in)},
		{"to a Brix, as far as the row allows", -1, 45, 0, 100 * sweet / (sweet + water - 0.45*in)}, {"to a Brix without a row", -1, 0, 0, 99},
		{"all water", 0.9, 0, 0, 99}, {"weighed", -1, 0, 900, 100 * sweet / (900 - insoluble)}, {"weighed after a row", 0.5, 45, 900, 100 * sweet / (900 - insoluble)}, {"weighed at next to nothing", -1, 0, 1, 0},
	} {
		c := potOfRows(t, list)
		c.r.Brix, c.r.Yield.How = Reading{99, Estimated}, Estimated
		c.pot = outcome{loss: x.loss, boil: pantry.Boil{Loss: x.row}, pot: x.weighed}
		if x.weighed > 0 {
			c.r.Yield.How = Measured
		}
		if got := c.sugarBrix(); math.Abs(got-x.want) > 1e-6 {
			t.Errorf("%s: %.4f, want %.4f", x.name, got, x.want)
		}
		c.r.Brix.How = Measured
		if got := c.sugarBrix(); got != 99 {
			t.Errorf("%s, and read: %.4f", x.name, got)
		}
	}
	// Of ginger and sweet potatoes the sugars count, where they are known.
	for sugars, want := range map[float64]float64{-1: 20, 0: 0, 0.5: 0.5, 30: 20} {
		for _, class := range []string{"spice", "vegetable"} {
			c := potOfRows(t, "strawberry 100")
			c.r.Brix, c.pot.loss = Reading{99, Estimated}, 0
			ln := &c.r.Lines[0]
			ln.Row.Class, ln.Row.SugarsG, ln.Soluble, ln.Insoluble = class, sugars, 20*unit.Gram, 0
			if got := c.sugarBrix(); math.Abs(got-100*want/(want+80)) > 1e-6 {
				t.Errorf("a %s of %g %% sugars: %.2f", class, sugars, got)
			}
		}
	}
	c := potOfRows(t, "salt 100")
	if c.pot.loss = 0; c.sugarBrix() != 0 || potOfRows(t, "sugar_white 500").sweetness() != 500 || potOfRows(t, "sugar_white 500, plum 0.5").sweetness() != 500 {
		t.Error("salt is sweet, or sugar without fruit is not")
	}
}

// What the sugar says, each words at its limits; the sources are those of keep.go.
func TestWhatTheSugarSays(t *testing.T) {
	full := func(b float64) string {
		return fmt.Sprintf("full sugar: estimated %.1f °Brix, water activity about %.2f (Norrish's equation)", b, pantry.WaterActivity(b, 0))
	}
	between := func(b float64, how How) string {
		return fmt.Sprintf("between 60 and 65 °Brix, loses colour and flavour sooner: %s %.1f °Brix, water activity about %.2f (Norrish's equation)", how, b, pantry.WaterActivity(b, 0))
	}
	const reduced = "reduced sugar, and no pH of 4.6 or below or tested recipe is recorded: estimated %.1f °Brix"
	none := func(*calc) {}
	read := func(c *calc) { c.r.Brix.How = Measured }
	for _, x := range []struct {
		brix, sugar float64 // beside 1000 g of fruit
		set         func(*calc)
		class       Class
		fact, code  string
	}{
		{66, 900, none, Shelf, full(66), ""}, {80, 900, none, Shelf, full(80), ""}, {80.1, 900, none, Shelf, "full sugar: estimated 80.1 °Brix", ""},
		{66, 900, func(c *calc) { c.incomplete = true }, Shelf, "full sugar: estimated 66.0 °Brix", ""},
		{66, 900, func(c *calc) { c.rejected = true }, Cold, "a reading was taken that can't be right, so nothing is known of the sugar", ""},
		{66, 900, func(c *calc) { c.doubted = true }, Cold, "two readings of the sugar contradict each other, and the lower would not keep", ""},
		{60, 500, none, ShelfShort, between(60, Estimated), ""}, {60, 499, none, Cold, "too little sugar for the 60 °Brix that is assumed, and nobody measured", "reduced-sugar"}, {60, 499, read, ShelfShort, between(60, Measured), ""},
		{59.9, 900, none, Cold, fmt.Sprintf(reduced, 59.9), "reduced-sugar"}, {66, 499, none, Cold, "too little sugar for the 66 °Brix that is assumed, and nobody measured", "reduced-sugar"},
		{59.9, 900, func(c *calc) { c.incomplete = true }, Cold, fmt.Sprintf(reduced, 59.9), ""}, {0, 900, func(c *calc) { c.r.Lines = nil }, Cold, fmt.Sprintf(reduced, 0.0), ""},
		{50, 900, func(c *calc) { c.b.Product = batch.Butter }, ShelfShort, "fruit butter, less sugar than jam: estimated 50.0 °Brix", ""}, {50, 900, func(c *calc) { c.b.Product = batch.Curd }, Shelf, "", ""},
		{50, 900, func(c *calc) { c.r.PHMeasured, c.r.PHHigh = true, 4.6 }, ShelfShort, "reduced sugar, but the recipe is tested or the pH was measured: estimated 50.0 °Brix", ""},
		{50, 900, func(c *calc) { c.r.PHMeasured, c.r.PHHigh = true, 4.61 }, Cold, fmt.Sprintf(reduced, 50.0), "reduced-sugar"}, {50, 900, func(c *calc) { c.r.PHHigh = 3 }, Cold, fmt.Sprintf(reduced, 50.0), "reduced-sugar"},
		{50, 900, func(c *calc) { c.recipe = &pantry.TestedRecipe{} }, ShelfShort, "reduced sugar, but the recipe is tested or the pH was measured: estimated 50.0 °Brix", ""},
		{60, 499, func(c *calc) { c.r.Yield.How, c.pot.pot = Measured, 800; c.r.Lines[1].Soluble = grams(499) }, ShelfShort, between(60, Estimated), ""},
	} {
		c := calcOf(x.brix, 1000, x.sugar)
		x.set(c)
		v := &verdict{class: Shelf, full: c.fullSugar()}
		c.keepBySugar(v)
		fact, code := "", ""
		for _, e := range v.reasons {
			fact += e.Fact
		}
		for _, d := range c.l {
			code += d.Code
		}
		if v.class != x.class || fact != x.fact || code != x.code {
			t.Errorf("%g °Brix, %g g of sugar: %s %q %q, want %s %q %q", x.brix, x.sugar, v.class, fact, code, x.class, x.fact, x.code)
		}
	}
	for want, cook := range map[string]batch.Cook{"": {}, "cook.brix": {Brix: f(60), TempC: f(104), FinishedPot: 1}, "cook.finished_pot": {TempC: f(104), FinishedPot: 1}, "cook.temperature": {TempC: f(104)}} {
		if got := (&calc{b: &batch.Batch{Cook: cook}}).brixPath(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Full sugar is 65 °Brix as read (21 CFR 150.160), 60 for a marmalade of which
// only the recipe is known (boil.csv); a boil of a chutney is a guess.
func TestFullSugarOfEachKind(t *testing.T) {
	for _, x := range []struct {
		name string
		brix float64
		set  func(*calc)
		want bool
	}{
		{"read", 64.95, func(c *calc) { c.r.Brix.How = Measured }, true}, {"read", 64.94, func(c *calc) { c.r.Brix.How = Measured }, false}, {"doubted", 70, func(c *calc) { c.doubted = true }, false},
		{"rejected", 70, func(c *calc) { c.rejected = true }, false}, {"marmalade", 59.95, func(c *calc) { c.b.Product = batch.Marmalade }, true}, {"marmalade", 59.94, func(c *calc) { c.b.Product = batch.Marmalade }, false},
		{"marmalade, boiled to a temperature", 64.9, func(c *calc) { c.b.Product, c.b.Cook.TempC = batch.Marmalade, f(104) }, false},
		{"chutney that boils down", 70, func(c *calc) { c.b.Product, c.pot.boil.Loss = batch.Chutney, 30 }, false}, {"chutney", 70, func(c *calc) { c.b.Product = batch.Chutney }, true},
		{"relish that boils down a little", 70, func(c *calc) { c.b.Product, c.pot.boil.Loss, c.r.Brix.Value = batch.Relish, 0.5, 70 }, false}, {"jam that boils down", 70, func(c *calc) {
			c.pot.boil.Loss, c.r.Lines[0].Mass, c.r.Lines[0].Soluble, c.r.Lines[1].Soluble = 0.5, grams(300), grams(300), grams(900) // nothing is left but sugar
		}, true},
		{"butter", 64.9, func(c *calc) { c.b.Product = batch.Butter }, false},
	} {
		c := calcOf(x.brix, 1000, 900)
		x.set(c)
		if got := c.fullSugar(); got != x.want {
			t.Errorf("%s at %g °Brix: %v", x.name, x.brix, got)
		}
	}
	weighed := calcOf(65, 1000, 900)
	weighed.r.Lines = append(weighed.r.Lines, Line{Key: "pectin_powder", Row: pantry.Ingredient{Class: "gelling"}})
	weighed.r.Yield.How, weighed.pot.pot, weighed.r.Lines[1].Soluble = Measured, 1400, grams(900)
	if weighed.fullSugar() || weighed.pectinSugar() {
		t.Errorf("a weighed pot of %.1f °Brix", weighed.sugarBrix())
	}
	weighed.r.Yield.How, weighed.rejected = Estimated, true
	if weighed.pectinSugar() {
		t.Error("a rejected reading leaves no pectin rule")
	}
}

// How long each class keeps (sources in times.go), sealed, opened and unsealed.
func TestTimesOfEachClass(t *testing.T) {
	for _, x := range []struct {
		class                   Class
		perishable, full, tight bool // tight: tested curd, processed
		want                    string
		sources                 []string
	}{
		{Shelf, false, true, false, "12 0 30 3", []string{srcNCHFP, srcSeal, srcOpened}}, {ShelfShort, false, false, false, "6 0 14 3", []string{srcOwn, srcSeal, srcOwn}},
		{Freezer, false, false, false, "12 0 21 21", []string{srcFreezer}}, {Freezer, true, false, false, "12 0 7 7", []string{srcFreezer}},
		{Refrigerator, false, false, false, "0 21 21 21", []string{srcFreezer}}, {Refrigerator, true, false, false, "0 7 7 7", []string{srcFreezer}},
		{Cold, true, true, false, "0 7 7 3", []string{srcOwn, srcSeal, srcOwn}}, {Cold, false, true, false, "0 30 30 3", []string{srcOpened, srcSeal, srcOpened}}, {Cold, false, false, false, "0 14 14 3", []string{srcOwn, srcSeal, srcOwn}},
		{Cold, true, false, true, "3 0 14 3", []string{srcCurd, srcSeal, srcOwn}},
	} {
		c := &calc{b: &batch.Batch{}, r: &Result{}}
		v := &verdict{class: x.class, perishable: x.perishable, full: x.full, processed: x.tight}
		if x.tight {
			c.b.Product, c.recipe = batch.Curd, &pantry.TestedRecipe{}
		}
		c.times(v)
		k := c.r.Keeping
		var sources []string
		for _, e := range v.reasons {
			sources = append(sources, e.Source)
		}
		if got := fmt.Sprint(k.SealedMonths, k.SealedDays, k.OpenedDays, k.UnsealedDays); got != x.want || !slices.Equal(sources, x.sources) {
			t.Errorf("%+v: %s %q", x, got, sources)
		}
	}
	r, _ := compute(t, demo(t))
	if n := len(r.Keeping.Times); n != 3 || slices.ContainsFunc(r.Keeping.Reasons, func(e Evidence) bool { return strings.Contains(e.Fact, "best within") }) {
		t.Errorf("%d times, reasons %+v", n, r.Keeping.Reasons)
	}
}

// facts are the reasons of a batch, one a line, and the codes of its findings.
func facts(r *Result, l diag.List) (reasons, codes string) {
	for _, e := range r.Keeping.Reasons {
		reasons += e.Fact + "\n"
	}
	for _, d := range l {
		codes += d.Code + " " + d.Path + "\n"
	}
	return reasons, codes
}

// A tested recipe of acid fruit keeps a year, one that holds more the half;
// nothing else takes a chutney off the refrigerator, or a curd.
func TestTestedRecipesOfEachKind(t *testing.T) {
	recipe := &pantry.TestedRecipe{ID: "x", Publisher: "P", Title: "T"}
	for _, x := range []struct {
		list    string
		kind    batch.ProductType
		tested  bool
		ph      float64
		want    Class
		perish  bool
		reasons int
		code    string
	}{
		{"plum 1000, sugar_white 900", batch.Jam, true, 0, Shelf, false, 1, ""}, {"onion 1000, sugar_white 900", batch.Jam, true, 0, ShelfShort, false, 1, ""},
		{"plum 1000, sugar_white 900", batch.Jam, false, 0, Shelf, false, 1, ""}, {"onion 1000, sugar_white 900", batch.Jam, false, 0, Cold, true, 1, "low-acid ingredient[0].name"},
		{"sugar_white 900, walnut 100", batch.Jam, false, 0, Cold, true, 1, "acid-unknown ingredient[1].name"}, {"sugar_white 900", batch.Jam, false, 0, Cold, true, 1, "acid-unknown ingredient"},
		{"plum 1000, onion 100, walnut 500", batch.Jam, false, 0, Cold, true, 2, "low-acid ingredient[1].name, acid-unknown ingredient[2].name"},
		{"plum 1000", batch.Chutney, false, 0, Cold, false, 2, "untested-chutney kind"}, {"plum 1000", batch.Relish, false, 0, Cold, false, 2, "untested-chutney kind"}, {"plum 1000", batch.Chutney, true, 0, Shelf, false, 1, ""},
		{"plum 1000", batch.Chutney, false, 3.5, Shelf, false, 1, ""}, {"plum 1000", batch.Curd, true, 0, Cold, false, 2, ""}, {"plum 1000", batch.Curd, false, 0, Cold, true, 2, "untested-curd kind"},
		{"plum 1000", batch.Jam, false, 4.2, Shelf, false, 1, ""}, {"plum 1000", batch.Jam, false, 4.21, ShelfShort, false, 1, "ph-near-limit cook.ph"}, {"plum 1000", batch.Jam, false, 4.6, ShelfShort, false, 1, "ph-near-limit cook.ph"},
		{"plum 1000", batch.Jam, false, 4.61, Cold, true, 1, "low-acid cook.ph"},
	} {
		c := potOfRows(t, x.list)
		c.b.Product, c.sour = x.kind, c.judgeAcid()
		if x.tested {
			c.recipe = recipe
		}
		c.r.PHMeasured, c.r.PHHigh = x.ph > 0, x.ph
		v := &verdict{class: Shelf}
		c.keepByAcid(v)
		var codes []string
		for _, d := range c.l {
			codes = append(codes, strings.TrimSpace(d.Code+" "+d.Path))
		}
		if v.class != x.want || v.perishable != x.perish || len(v.reasons) != x.reasons || strings.Join(codes, ", ") != x.code {
			t.Errorf("%s (%s, tested %v, pH %g): %s, perishable %v, %v, %q", x.list, x.kind, x.tested, x.ph, v.class, v.perishable, v.reasons, codes)
		}
	}
	for _, set := range []func(*calc){func(c *calc) { c.incomplete = true }, func(c *calc) { c.r.Lines = nil }} { // what is missing was told already
		c := potOfRows(t, "sugar_white 900")
		set(c)
		c.sour = c.judgeAcid()
		if c.keepByAcid(&verdict{class: Shelf}); len(c.l) > 0 {
			t.Error(c.l)
		}
	}
}

// Sugar read at 65 °Brix binds the water of what is not acid, where nothing
// speaks against the reading.
func TestSugarForAcid(t *testing.T) {
	for _, x := range []struct {
		brix float64
		set  func(*calc)
		dry  bool
	}{{64.95, func(*calc) {}, true}, {64.94, func(*calc) {}, false}, {70, func(c *calc) { c.coarse = true }, false}, {70, func(c *calc) { c.doubted = true }, false}, {70, func(c *calc) { c.r.Brix.How = Estimated }, false}} {
		c := potOfRows(t, "onion 1000, sugar_white 900")
		c.sour, c.r.Brix = c.judgeAcid(), Reading{x.brix, Measured}
		x.set(c)
		v := &verdict{class: Shelf}
		c.keepByAcid(v)
		want := fmt.Sprintf("not plainly acid (onions), but measured at %.1f °Brix: water activity about %.2f", x.brix, pantry.WaterActivity(x.brix, 0))
		if got := v.class == ShelfShort && v.reasons[0].Fact == want; got != x.dry {
			t.Errorf("%g °Brix: %s %q", x.brix, v.class, v.reasons[0].Fact)
		}
	}
}
