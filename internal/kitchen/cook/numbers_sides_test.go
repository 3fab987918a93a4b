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

// Masses from computed numbers stay within what an int64 of nanograms holds
// (9.2e9 g), and no number is none.
func TestMassesOfAnyNumber(t *testing.T) {
	for _, x := range []struct{ in, want float64 }{{0.5, 0.5}, {-0.5, -0.5}, {9e9, 9e9}, {1e12, 9e9}, {math.Inf(1), 9e9}, {-9e9, 0}, {-9e9 - 0.5, 0}, {-9e9 + 0.5, -9e9 + 0.5}, {math.Inf(-1), 0}, {math.NaN(), 0}} {
		if got := grams(x.in); got != unit.Grams(x.want) {
			t.Errorf("%g g: %d ng", x.in, got)
		}
	}
	if positive(0.5) != 0.5 || positive(-0.5) != 0 || positive(-3*unit.Gram) != 0 || positive(unit.Gram) != unit.Gram || percent(1, 4) != 25 {
		t.Error("a share or a negative number")
	}
	for v, want := range map[float64]bool{0.99: true, 1: false, 95: false, 95.01: true, math.NaN(): true} {
		if bad(&v, 1, 95) != want || bad(nil, 1, 95) {
			t.Errorf("%g of 1 to 95: bad %v", v, !want)
		}
	}
}

// The whole of the alphabet makes initials, and a batch of no day is never late.
func TestInitialsAndDays(t *testing.T) {
	if got := initials("Zwetschgen mit Anis jam"); got != "ZMA" {
		t.Error(got)
	}
	b := demo(t)
	b.Made, b.BestBefore = unit.Date{}, unit.Date{Year: 2031, Month: 1, Day: 1}
	if r, l := compute(t, b); has(l, "best-before-late") || r.BestBefore != b.BestBefore || r.Keeping.BestBeforeHow != Given {
		t.Errorf("%+v %v", r.BestBefore, l)
	}
}

// Choi and Okos, components by their share of any mass; fat and protein count
// from 2 % of the pot on, dry solids too.
func TestDensityFromBothSides(t *testing.T) {
	row := pantry.Ingredient{CarbG: 50, FibreG: 10, ProteinG: 5, FatG: 20}
	s := mixed(pantry.Solids{}, Line{Row: row, Mass: 200 * unit.Gram, Soluble: 120 * unit.Gram, Insoluble: 52 * unit.Gram})
	if got := fmt.Sprintf("%.1f %.1f %.1f %.1f %.1f", s.Carbohydrate, s.Fibre, s.Protein, s.Fat, s.Ash); got != "80.0 20.0 10.0 40.0 22.0" {
		t.Error(got)
	}
	for _, x := range []struct {
		row  pantry.Ingredient
		want string // carbohydrate and ash of 100 g with 30 g of solids
	}{{pantry.Ingredient{CarbG: 0}, "30 0"}, {pantry.Ingredient{CarbG: -1}, "30 0"}, {pantry.Ingredient{CarbG: 0, ProteinG: 5}, "0 25"}, {pantry.Ingredient{CarbG: 0, FatG: 5}, "0 25"},
		{pantry.Ingredient{CarbG: 20}, "20 10"}, {pantry.Ingredient{CarbG: 60}, "30 0"}, {pantry.Ingredient{CarbG: 0.5}, "0.5 29.5"}, {pantry.Ingredient{CarbG: 5, FibreG: 9}, "0 21"}} {
		s := mixed(pantry.Solids{}, Line{Row: x.row, Mass: 100 * unit.Gram, Soluble: 20 * unit.Gram, Insoluble: 10 * unit.Gram})
		if got := fmt.Sprintf("%g %g", s.Carbohydrate, s.Ash); got != x.want {
			t.Errorf("%+v: %s, want %s", x.row, got, x.want)
		}
	}
	for fat, mix := range map[float64]bool{1: false, 1.01: true} { // and as much protein, of 100 g
		r := &Result{Yield: Amount{100 * unit.Gram, Measured}, Brix: Reading{20, Estimated},
			Lines: []Line{{Row: pantry.Ingredient{CarbG: 20, ProteinG: fat, FatG: fat}, Mass: 100 * unit.Gram, Soluble: 20 * unit.Gram, Insoluble: 3 * unit.Gram}}}
		syrup := pantry.Density(20, fillTempC) / 1000
		if got := r.HotDensity(); math.Abs(got-syrup) < 1e-9 == mix {
			t.Errorf("%g %% of fat and of protein: %.5f", fat, got)
		}
	}
	r := &Result{Yield: Amount{50 * unit.Gram, Measured}, Lines: []Line{{Row: pantry.Ingredient{FatG: 100}, Mass: 100 * unit.Gram, Insoluble: 100 * unit.Gram}}}
	within(t, "all of it fat, and more than the pot", r.HotDensity(), (925.59-0.41757*fillTempC)/1000, 1e-9)
}

// The headspace of a fill, else of the batch, else of its process: a quarter
// inch for jam, a half for chutney (USDA AIB 539).
func TestHeadspaceThatIsMeant(t *testing.T) {
	for _, x := range []struct {
		fill, all unit.Length
		kind      batch.ProductType
		want      unit.Length
	}{{1, 2, batch.Jam, 1}, {0, 2, batch.Jam, 2}, {0, 0, batch.Jam, unit.Inch / 4}, {0, 0, batch.Chutney, unit.Inch / 2}} {
		c := &calc{b: &batch.Batch{Product: x.kind, Process: batch.Process{Headspace: x.all}}, p: pantry.Default(), r: &Result{}}
		if got := c.headspace(batch.Fill{Headspace: x.fill}); got != x.want {
			t.Errorf("%+v: %d nm", x, got)
		}
	}
	b := demo(t)
	b.Process.Headspace = unit.Inch / 2
	r, _ := compute(t, b)
	if got := r.FillMass(r.Jars[0].Jar); got != r.Jars[0].Fill || got <= 0 {
		t.Errorf("a jar holds %d ng, planned are %d ng", got, r.Jars[0].Fill)
	}
	if usualJar("metric") != "lug212" || usualJar("us") != "us8" || usualJar("") != "us8" {
		t.Error("usual jars")
	}
}

// What is over after the last whole jar, from a twentieth of a jar on, is a
// partial one; a jar 1 % short is full (own readings).
func TestLastJarOfThePot(t *testing.T) {
	for _, x := range []struct {
		jars  float64 // in the pot, by what one holds
		count int
		part  bool
	}{{0, 0, false}, {0.04, 0, false}, {0.06, 0, true}, {0.98, 0, true}, {0.995, 1, false}, {3.04, 3, false}, {3.06, 3, true}, {3.985, 3, true}, {3.995, 4, false}, {mostJars, mostJars, false}, {mostJars + 5, mostJars, false}} {
		c := &calc{r: &Result{Yield: Amount{grams(x.jars * 200), Estimated}, Jars: []JarPlan{{How: Estimated, Count: -1, Sealed: -1, Checked: true, Fill: 200 * unit.Gram}}}}
		c.estimate()
		j := c.r.Jars[0]
		if j.Count != x.count || j.Sealed != x.count || j.Checked || (j.Part > 0) != x.part {
			t.Errorf("%g jars: %d, a part of %d g, checked %v", x.jars, j.Count, j.Part/unit.Gram, j.Checked)
		}
		if want := (x.jars - float64(x.count)) * 200; x.part && math.Abs(j.Part.Grams()-want) > 1e-6 {
			t.Errorf("%g jars: a part of %g g, want %g", x.jars, j.Part.Grams(), want)
		}
	}
}

// Counted jars come off the pot first; the shares of the others are parts of
// what is left, and more than the whole are parts of each other.
func TestSharesOfThePot(t *testing.T) {
	for _, x := range []struct {
		shares string // of sizes nobody counted; "c": counted, two jars of 100 g
		want   string // grams of 1000
	}{
		{"0", "1000"}, {"0 0", "1000 0"}, {"0.25 0", "250 750"}, {"0 0.25", "750 250"}, {"0 0 0.25", "750 0 250"}, {"0.5 0.75 0", "400 600 0"}, {"3 1", "750 250"}, {"0.2 0.2", "500 500"},
		{"c 0", "0 800"}, {"c 0.5 0", "0 400 400"}, {"0 1e6", "1000 0"}, {"-1 0.5", "500 500"}, {"0.5 0.25 0", "500 250 250"}, {"1 0", "1000 0"}, {"c", "0"},
	} {
		c := &calc{r: &Result{Yield: Amount{1000 * unit.Gram, Estimated}}}
		for i, s := range strings.Fields(x.shares) {
			var share float64
			j := JarPlan{FillPath: path("fill", i), How: Estimated, Fill: 100 * unit.Gram}
			if s == "c" {
				j.How, j.Count = Given, 2
			} else {
				fmt.Sscan(s, &share)
			}
			c.fills, c.r.Jars = append(c.fills, batch.Fill{Path: j.FillPath, Share: share}), append(c.r.Jars, j)
		}
		pot := positive(c.r.Yield.Mass.Grams() - c.r.held())
		got := make([]string, len(c.r.Jars))
		for i, g := range c.portions(pot) {
			if got[i] = fmt.Sprintf("%.0f", g); c.r.Jars[i].How == Given {
				got[i] = "0"
			}
		}
		if s := strings.Join(got, " "); s != x.want {
			t.Errorf("%s: %s, want %s", x.shares, s, x.want)
		}
	}
}

// What jars hold together: counted ones alone, the weighed at their mean and a
// part beside; a jar that weighs nothing was not weighed.
func TestWhatJarsHold(t *testing.T) {
	r := &Result{Jars: []JarPlan{
		{How: Given, Count: 3, Fill: 100 * unit.Gram, Part: 50 * unit.Gram}, {How: Estimated, Count: 9, Fill: 100 * unit.Gram},
		{How: Given, Count: 2, Fill: 100 * unit.Gram, Weighed: []unit.Mass{0, 110 * unit.Gram, 130 * unit.Gram}},
	}}
	if got := r.held(); got != 350+240 {
		t.Errorf("%g g", got)
	}
}

// Counts far off the pot: over a quarter more, or less when all are counted
// (own threshold). What is not known is not held against the maker.
func TestCountsOffFromBothSides(t *testing.T) {
	for _, x := range []struct {
		pot        float64 // what the jars could not hold is not told
		jars       int
		open       bool
		incomplete bool
		told       bool
	}{
		{1000, 12, false, false, false}, {1000, 13, false, false, true}, {1000, 8, false, false, false}, {1000, 7, false, false, true}, {1000, 7, true, false, false}, {1000, 13, true, false, true},
		{800, 10, false, false, false}, {1200, 9, false, false, false}, {0, 13, false, false, false}, {1000, 0, false, false, false}, {1000, 13, false, true, false}, {0.5, 13, false, false, true},
	} {
		c := &calc{k: nobody(), incomplete: x.incomplete, r: &Result{Yield: Amount{grams(x.pot), Estimated}, Jars: []JarPlan{{FillPath: "fill[0]", How: Given, Count: x.jars, Fill: 100 * unit.Gram}}}}
		if x.open {
			c.r.Jars = append(c.r.Jars, JarPlan{FillPath: "fill[1]", How: Estimated, Fill: 100 * unit.Gram})
		}
		if c.checkCounts(); has(c.l, "counts-off") != x.told {
			t.Errorf("%+v: told %v", x, !x.told)
		}
	}
}

// The number of fluid ounces of a jar, in ounces: to a twentieth.
func TestFluidOuncesFromBothSides(t *testing.T) {
	half := pantry.Jar{Nominal: 8 * unit.FluidOunce}
	for oz, want := range map[float64]bool{7.94: false, 7.96: true, 8: true, 8.04: true, 8.06: false} {
		if got := fluidOunces(unit.Quantity{Text: "8 oz", Mass: unit.Grams(oz * unit.Ounce.Grams())}, half); got != want {
			t.Errorf("%g oz: %v", oz, got)
		}
	}
	if fluidOunces(unit.Quantity{Text: "227 g", Mass: 8 * unit.Ounce}, half) {
		t.Error("grams are no fluid ounces")
	}
}

// A declaration that says nothing, or of a jar nothing is known of, is not
// judged; that of a weighed jar is judged by the scale alone.
func TestDeclarationsThatAreNotJudged(t *testing.T) {
	jar := pantry.Jar{Key: "x", Nominal: 8 * unit.FluidOunce, Brimful: unit.ML(250), Measured: true}
	told := func(mass unit.Mass, fill, weighed float64, incomplete bool) string {
		c := &calc{k: nobody(), incomplete: incomplete, r: &Result{Brix: Reading{65, Measured}}}
		j, f := JarPlan{Jar: jar, Fill: grams(fill)}, batch.Fill{Declared: unit.Quantity{Dim: unit.ByMass, Mass: mass, Text: "x"}}
		if weighed > 0 {
			f.Net = []unit.Mass{grams(weighed)}
			j.Weighed = f.Net
		}
		c.declared(&j, f)
		if j.Declared != mass {
			t.Errorf("declared %d, not %d", j.Declared, mass)
		}
		out := ""
		for _, d := range c.l {
			out += strings.TrimPrefix(d.Code, "declared-")
		}
		return out
	}
	brim := 250 * pantry.Density(65, 20) / 1000
	for _, x := range []struct {
		mass          unit.Mass
		fill, weighed float64
		incomplete    bool
		want          string
	}{
		{0, 300, 0, false, ""}, {100 * unit.Gram, 0, 0, false, ""}, {100 * unit.Gram, 300, 0, true, ""}, {100 * unit.Gram, 300, 0, false, "under-fill"},
		{100 * unit.Gram, 300, 300, false, ""}, {grams(brim + 0.01), 330, 0, false, "over-brim"}, {grams(brim), 330, 0, false, ""}, {grams(brim + 0.01), 330, 300, false, ""},
		{grams(320), 300, 0, false, "over-fill"}, {grams(320), 300, 250, false, ""},
	} {
		if got := told(x.mass, x.fill, x.weighed, x.incomplete); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
	jar.Brimful, jar.Nominal = 0, 0
	if got := told(500*unit.Gram, 300, 0, false); got != "over-fill" {
		t.Errorf("a jar of unknown brim: %q", got)
	}
}

// Nought counted is a count; a name nobody knows and a fill without room are
// told where they stand.
func TestFillsOfNoughtAndOfNothing(t *testing.T) {
	b := demo(t)
	b.Fills = []batch.Fill{{Jar: "us8", Count: 0, Sealed: 0}, {Jar: "us8", Count: -1, Sealed: -1}, {Jar: "moon jar", Count: 1, Sealed: 1}, {Jar: "us4", Count: -1, Sealed: -1, Headspace: 20 * unit.Inch, PartJar: -1}}
	r, l := compute(t, b)
	if len(r.Jars) != 3 || r.Jars[0].How != Given || r.Jars[0].Count != 0 || r.Jars[1].How != Estimated || r.Jars[1].Count < 10 || r.Jars[2].Count != 0 || r.Jars[2].FillPath != "fill[3]" {
		t.Errorf("%+v", r.Jars)
	}
	for _, d := range l {
		if d.Code == "unknown-jar" && d.Path != "fill[2].jar" || d.Code == "no-room-in-jar" && d.Path != "fill[3]" {
			t.Errorf("%s at %s", d.Code, d.Path)
		}
	}
	if !has(l, "unknown-jar") || !has(l, "no-room-in-jar") {
		t.Error(l)
	}
}
