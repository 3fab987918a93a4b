package cook

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Brix is soluble solids by weight of the syrup, the insoluble not counted
// (21 CFR 150.160); a pot of solids alone has none left to dissolve them.
func TestBrixOfAMix(t *testing.T) {
	for _, x := range []struct{ soluble, insoluble, pot, want float64 }{
		{50, 10, 110, 50}, {50, 10, 60, 100}, {50, 10, 40, 100}, {50, 10, 10, 0}, {50, 10, 5, 0}, {50, 10, 10.5, 100}, {0, 10, 110, 0}, {0.5, 0, 100, 0.5}, {-1, 0, 100, 0},
	} {
		if got := (mix{soluble: x.soluble, insoluble: x.insoluble}).brixOf(x.pot); math.Abs(got-x.want) > 1e-9 {
			t.Errorf("%+v: %g", x, got)
		}
	}
	if got := (mix{soluble: 50, insoluble: 10}).at(50); got != 110 {
		t.Errorf("%g", got)
	}
}

// What goes in comes out as yield, steam, foam and what was lifted out. Foam up
// to the pot is believed, more is told and left aside.
func TestFoamAndWhatWasLiftedOut(t *testing.T) {
	for _, x := range []struct {
		foam float64
		told bool
	}{{0, false}, {100, false}, {900, false}, {901, true}} {
		c := potOfRows(t, "strawberry 500, sugar_white 500, cinnamon_stick 20")
		c.r.Lines[2].Removed, c.r.Lines[2].Soluble, c.r.Lines[2].Insoluble = true, 0, 0
		for _, ln := range c.r.Lines {
			c.r.Soluble, c.r.Insoluble = c.r.Soluble+ln.Soluble, c.r.Insoluble+ln.Insoluble
		}
		c.b.Cook.FinishedPot, c.b.Cook.Skimmed = grams(900-x.foam), grams(x.foam)
		if x.told {
			c.b.Cook = batch.Cook{Skimmed: grams(x.foam), Brix: f(float64(c.r.Soluble) * 100 / float64(900*unit.Gram-c.r.Insoluble))} // a pot of 900 g, read
		}
		if x.foam == 900 {
			c.b.Cook = batch.Cook{Skimmed: grams(x.foam), Method: "no cook"}
		}
		c.yield()
		if has(c.l, "skimmed-too-much") != x.told || c.r.Yield.Mass+c.r.Evaporated+c.r.Skimmed != c.r.Input {
			t.Errorf("%g g: %s; %s", x.foam, codesOf(c.l), c.r.Yield.Mass.Format(unit.Metric))
		}
		want := grams(20 + x.foam)
		if x.told {
			want = grams(20)
		}
		if c.r.Skimmed != want {
			t.Errorf("%g g: %s skimmed and lifted out", x.foam, c.r.Skimmed.Format(unit.Metric))
		}
	}
}

// A weight that leaves more than 85 % dissolved is told (no jam reaches it: own
// reading), unless a refractometer was read.
func TestWeightsNoJamReaches(t *testing.T) {
	for pot, told := range map[float64]bool{1177: false, 1176: true} {
		c := potOfRows(t, "sugar_white 1000, water 1000")
		c.r.Soluble, c.r.Insoluble = 1000*unit.Gram, 0
		c.b.Cook.FinishedPot = grams(pot)
		if o, ok := c.weighedPot(c.mix()); !ok || has(c.l, "brix-implausible") != told || o.how != Measured {
			t.Errorf("%g g: %.2f °Brix, %s", pot, o.brix.Value, codesOf(c.l))
		}
		c.l, c.b.Cook.Brix = nil, f(80)
		if o, _ := c.weighedPot(c.mix()); has(c.l, "brix-implausible") || o.brix != (Reading{80, Measured}) {
			t.Errorf("read: %+v %s", o.brix, codesOf(c.l))
		}
	}
}

// Two readings stand 8 °Brix apart at most (own reading); the higher is doubted
// where the lower would be no full sugar (65 %, 21 CFR 150.160).
func TestReadingsThatStandApart(t *testing.T) {
	for _, x := range []struct {
		read, balance float64
		told, doubted bool
	}{{68, 60, false, false}, {68.1, 60, true, true}, {60, 68, false, false}, {60, 68.1, true, false}, {80, 65, true, false}, {80, 64.9, true, true}, {80, 0, false, false}, {80, 0.5, true, true}} {
		c := &calc{}
		if c.compare(x.read, x.balance); has(c.l, "brix-disagrees") != x.told || c.doubted != x.doubted {
			t.Errorf("%+v: %s, doubted %v", x, codesOf(c.l), c.doubted)
		}
	}
	for _, x := range []struct {
		read, tempC float64
		doubted     bool
		about       string
	}{ // syrup boils at 101.5 °C with 44 °Brix, 102.5 with 54, 104.5 with 65 (Brown 1912, boiling-elevation.csv)
		{66, 100.9, true, "about 0"}, {66, 101, false, ""}, {57, 100.9, true, ""}, {56.9, 100.9, false, ""}, {66, 101.5, true, "about 44"}, {62, 102.5, false, ""}, {62.4, 102.5, true, "about 54"}, {60, 102.5, false, ""},
		{75, 104.5, false, ""}, {80, 104, true, "about 64"}, {72, 104, false, ""}, {66, 120, false, ""}, {66, 90, true, "about 0"},
	} {
		c := &calc{b: &batch.Batch{Cook: batch.Cook{TempC: &x.tempC}}, k: nobody(), p: pantry.Default()}
		c.heldByBoil(x.read)
		if c.doubted != x.doubted || has(c.l, "brix-disagrees") != x.doubted || x.about != "" && !strings.HasSuffix(c.l[0].Message, x.about) {
			t.Errorf("%g °Brix at %g °C: doubted %v, %v", x.read, x.tempC, c.doubted, c.l)
		}
	}
	(&calc{b: &batch.Batch{}}).heldByBoil(66) // nobody read a thermometer
}

// A refractometer is believed from 1 to 95 %, corrected to 20 °C from 10 to 30
// (OIV-MA-AS2-02 Table I: +0.81 at 30 °C and 60 %, -0.75 at 10 °C).
func TestRefractometerAtItsEnds(t *testing.T) {
	for _, x := range []struct {
		brix, tempC float64
		want        float64
		code        string
	}{{0.99, 20, 0, "bad-brix"}, {1, 20, 1, ""}, {95, 20, 95, ""}, {95.1, 20, 0, "bad-brix"}, {60, 30, 60.81, ""}, {60, 10, 59.25, ""}, {60, 30.1, 60, "brix-temperature"}, {60, 9.9, 60, "brix-temperature"}} {
		c := &calc{b: &batch.Batch{Cook: batch.Cook{Brix: &x.brix, BrixTempC: &x.tempC}}, p: pantry.Default()}
		got, ok := c.reading()
		if ok == (x.code == "bad-brix") || ok && math.Abs(got-x.want) > 0.005 || codesOf(c.l) != x.code || c.coarse != (x.code == "brix-temperature") || c.rejected == ok {
			t.Errorf("%+v: %g %v %s", x, got, ok, codesOf(c.l))
		}
	}
	c := &calc{b: &batch.Batch{}}
	if _, ok := c.reading(); ok || len(c.l) > 0 || c.rejected {
		t.Error("read where nobody read")
	}
}

// Solids stay and water leaves: a reading below what the mix has before it
// boils contradicts the recipe beyond a slack.
func TestBoiledToAReading(t *testing.T) {
	m := mix{in: 1000, soluble: 200, insoluble: 50} // 21.05 °Brix
	for _, x := range []struct {
		brix, slack float64
		incomplete  bool
		pot         float64
		ok          bool
		told        bool
	}{
		{65, 2, false, 200/0.65 + 50, true, false}, {21.5, 2, false, 200/0.215 + 50, true, false}, {20, 2, false, 1000, true, false}, {19.1, 2, false, 1000, true, false}, {19, 2, false, 0, false, true}, {19, 3, false, 1000, true, false},
		{19, 2, true, 1000, true, false}, {16.1, 5, false, 1000, true, false}, {16, 5, false, 0, false, true},
	} {
		c := &calc{incomplete: x.incomplete}
		pot, ok := c.boiledTo(m, x.brix, "cook.brix", x.slack)
		if math.Abs(pot-x.pot) > 1e-6 || ok != x.ok || has(c.l, "brix-below-mix") != x.told || c.rejected != x.told {
			t.Errorf("%+v: %g %v %s", x, pot, ok, codesOf(c.l))
		}
	}
	if pot, ok := (&calc{}).boiledTo(mix{in: 1000}, 65, "", 2); pot != 0 || ok {
		t.Error("nothing sweet is boiled to a Brix")
	}
	for brix, told := range map[float64]bool{19.1: false, 19: true} { // the refractometer's slack is 2, the thermometer's 5
		c := potOfRows(t, "water 1000")
		c.r.Soluble, c.r.Insoluble, c.b.Cook.Brix = 200*unit.Gram, 50*unit.Gram, f(brix)
		if o, ok := c.measuredBrix(c.mix()); ok == told || has(c.l, "brix-below-mix") != told || o.rule != fmt.Sprintf("measured Brix, %.1f", brix) || o.how != Estimated || o.brix != (Reading{brix, Measured}) {
			t.Errorf("%g: %+v %v", brix, o, ok)
		}
	}
}

// A thermometer at the jelly point (8 °F above boiling water, USDA) is 65 °Brix,
// beyond it what the syrup of that boiling point holds.
func TestThermometerAtTheJellyPoint(t *testing.T) {
	for tempC, want := range map[float64]float64{103.5: 62.34, 104: 65, 104.5: 65.26, 107: 71.12} {
		c := potOfRows(t, "strawberry 500, sugar_white 500")
		c.r.Soluble, c.b.Cook.TempC = 540*unit.Gram, &tempC
		o, ok := c.thermometer(c.mix())
		if !ok || math.Abs(o.brix.Value-want) > 0.01 || o.brix.How != Estimated || o.how != Estimated || !strings.HasPrefix(o.rule, fmt.Sprintf("thermometer, %.1f °C, about %.0f ±3", tempC, want)) {
			t.Errorf("%g °C: %+v %v", tempC, o, ok)
		}
	}
	for _, tempC := range []float64{90, 101, 120} {
		c := potOfRows(t, "strawberry 500, sugar_white 500")
		c.b.Cook.TempC = &tempC
		if _, ok := c.thermometer(c.mix()); ok || !c.rejected || !has(c.l, "bad-set-temperature") {
			t.Errorf("%g °C: %v %s", tempC, ok, codesOf(c.l))
		}
	}
	c := potOfRows(t, "strawberry 500")
	if _, ok := c.thermometer(c.mix()); ok || c.rejected {
		t.Error("a thermometer nobody read")
	}
}

// A spread is raw when its maker says so, or freezes it and says nothing of cooking.
func TestRawSpreads(t *testing.T) {
	ten := 10.0
	for _, x := range []struct {
		cook    batch.Cook
		process string
		want    bool
	}{
		{batch.Cook{Method: "no cook"}, "", true}, {batch.Cook{Method: "freezer"}, "boiling water", true}, {batch.Cook{Method: "long boil"}, "freezer", false}, {batch.Cook{}, "freezer", true}, {batch.Cook{}, "refrigerator", false}, {batch.Cook{}, "", false},
		{batch.Cook{Minutes: &ten}, "freezer", false}, {batch.Cook{TempC: &ten}, "freezer", false}, {batch.Cook{SetTest: "plate"}, "freezer", false},
	} {
		c := &calc{b: &batch.Batch{Cook: x.cook, Process: batch.Process{Method: x.process}}}
		if got := c.raw(); got != x.want {
			t.Errorf("%+v, %s: %v", x.cook, x.process, got)
		}
	}
	m := mix{in: 1000, soluble: 600, insoluble: 100}
	for loss, want := range map[float64]float64{0: 1000, 0.2: 800, 0.3: 700, 0.5: 700} { // solids do not boil away
		if o := lose(m, loss, "x"); math.Abs(o.pot-want) > 1e-9 || o.how != Estimated || o.loss != loss || o.rule != "x" {
			t.Errorf("%g: %+v", loss, o)
		}
	}
}

// Added pectin leaves a recipe at 60 to 72 °Brix (own reading); what lies beside
// it is told, for a recipe that is whole.
func TestPectinAtItsEnds(t *testing.T) {
	row, ok := pantry.Default().Boil("jam", "added pectin")
	if !ok {
		t.Fatal("no row")
	}
	pot := 1000 * (1 - row.Loss/100)
	for _, x := range []struct {
		brix       float64
		incomplete bool
		told       bool
	}{{59.9, false, true}, {60.1, false, false}, {71.9, false, false}, {72.1, false, true}, {50, true, false}} {
		for _, method := range []string{"", "added pectin"} {
			c := potOfRows(t, "pectin_powder 1")
			c.incomplete, c.b.Cook.Method = x.incomplete, method
			if o := c.boil(mix{in: 1000, soluble: pot * x.brix / 100}); has(c.l, "pectin-brix") != x.told || math.Abs(o.pot-pot) > 1e-6 {
				t.Errorf("%+v %q: %+v %s", x, method, o, codesOf(c.l))
			}
		}
	}
	c := potOfRows(t, "pectin_powder 1")
	if c.boil(mix{}); len(c.l) > 0 {
		t.Error("an empty pot is told")
	}
	for _, x := range []struct {
		rows, method, want string
		kind               batch.ProductType
	}{
		{"plum 1000, sugar_white 499", "", "spread", batch.Spread}, {"plum 1000, sugar_white 500", "", "long boil", batch.Spread}, {"plum 1000, sugar_white 499", "long boil", "long boil", batch.Spread}, {"plum 1000, sugar_white 499", "", "long boil", batch.Jam},
		{"plum 1000, pectin_powder 1", "long boil", "long boil", batch.Jam}, {"plum 1000, sugar_gelling 500", "", "added pectin", batch.Jam}, {"plum 1000", "added pectin", "added pectin", batch.Jam},
	} {
		c := potOfRows(t, x.rows)
		c.b.Product, c.b.Cook.Method = x.kind, x.method
		if o := c.boil(mix{in: 1000, soluble: 400}); o.boil.Name != x.want {
			t.Errorf("%+v: %q", x, o.boil.Name)
		}
	}
}

// A habit is the geometric mean of two pots or more, none beyond 0.75 to 1.33
// (own bounds); pots nobody weighed, or of nothing known, are none.
func TestHabitsFromBothSides(t *testing.T) {
	pot := func(weighed, computed float64) *Result {
		return &Result{Yield: Amount{grams(weighed), Measured}, unweighed: computed}
	}
	for _, x := range []struct {
		pots  []*Result
		n     int
		ratio float64
	}{
		{[]*Result{pot(75, 100), pot(100, 100)}, 2, math.Sqrt(0.75)}, {[]*Result{pot(74.9, 100), pot(100, 100)}, 0, 0}, {[]*Result{pot(133, 100), pot(100, 100)}, 2, math.Sqrt(1.33)}, {[]*Result{pot(133.1, 100), pot(100, 100)}, 0, 0},
		{[]*Result{pot(110, 100), nil, pot(121, 110), {Yield: Amount{grams(90), Estimated}, unweighed: 100}}, 2, 1.1}, {[]*Result{pot(100, 0), pot(100, 100)}, 0, 0}, {[]*Result{pot(0.5, 0.5), pot(0.5, 0.5)}, 2, 1},
	} {
		if h := Learn(x.pots); h.Pots != x.n || math.Abs(h.Ratio-x.ratio) > 1e-9 {
			t.Errorf("%d, %.4f; want %d, %.4f", h.Pots, h.Ratio, x.n, x.ratio)
		}
	}
	for ratio, want := range map[float64]string{1.06: "your 3 weighed pots come out 6 % above", 1.006: "your 3 weighed pots come out 1 % above", 1.004: "your 3 weighed pots come out as computed", 0.94: "your 3 weighed pots come out 6 % below", 0.994: "your 3 weighed pots come out 1 % below"} {
		if got := (Habit{ratio, 3}).Say(); got != want {
			t.Errorf("%g: %q", ratio, got)
		}
	}
	for want, c := range map[string]*calc{"long boil": potOfRows(t, "plum 1"), "added pectin": potOfRows(t, "pectin_powder 1")} {
		if got := c.method(); got != want {
			t.Errorf("%s: %s", want, got)
		}
		if c.b.Cook.Method = "freezer"; c.method() != "no cook" {
			t.Error(c.method())
		}
	}
}

// A pot of some grams fills each uncounted size in the part it has of the plan,
// to the nearest jar; counted jars come off first.
func TestJarsOfAnotherPot(t *testing.T) {
	r := &Result{Jars: []JarPlan{
		{How: Given, Count: 2, Fill: 100 * unit.Gram}, {How: Estimated, Count: 6, Fill: 100 * unit.Gram, Part: 50 * unit.Gram}, {How: Estimated, Count: 3, Fill: 50 * unit.Gram}, {How: Estimated, Count: 0, Fill: 0},
	}}
	for pot, want := range map[float64]string{1000: "0 7 3 0", 200: "0 0 0 0", 100: "0 0 0 0", 600: "0 3 2 0", 1800: "0 13 6 0", 205: "0 0 0 0", 1e9: "0 10000 10000 0"} {
		if got := strings.Trim(fmt.Sprint(r.jarsOf(pot)), "[]"); got != want {
			t.Errorf("%g g: %s, want %s", pot, got, want)
		}
	}
	for i := range r.Jars {
		r.Jars[i].Count, r.Jars[i].Part = 0, 0
	}
	if got := fmt.Sprint(r.jarsOf(1000)); got != "[0 0 0 0]" {
		t.Errorf("nothing is planned: %s", got)
	}
}
