package cook

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// potOfRows is a pot of rows of the pantry: "plum 1000, sugar_white 500".
func potOfRows(t *testing.T, list string) *calc {
	t.Helper()
	c := &calc{b: &batch.Batch{Product: batch.Jam}, k: nobody(), p: pantry.Default(), r: &Result{}, pot: outcome{loss: -1}}
	for i, s := range strings.Split(list, ", ") {
		var key string
		var g float64
		if _, err := fmt.Sscanf(s, "%s %g", &key, &g); err != nil {
			t.Fatalf("%q: %v", s, err)
		}
		at := slices.IndexFunc(c.p.Ingredients(), func(g pantry.Ingredient) bool { return g.Key == key })
		if at < 0 {
			t.Fatalf("no row %q", key)
		}
		row := c.p.Ingredients()[at]
		c.r.Lines = append(c.r.Lines, Line{Paths: []string{path("ingredient", i)}, Name: row.Name, Key: key, Row: row, Mass: unit.Grams(g),
			Soluble: unit.Grams(g * row.SolubleG / 100), Insoluble: unit.Grams(g * row.OtherSolidsG / 100),
			IsFruit: row.Class == "fruit", IsSweet: sweeteners[row.Class], IsWater: row.Class == "water"})
		c.r.Input += unit.Grams(g)
	}
	shareOut(c.r)
	return c
}

// shareOut fills in the percentages of hand-made lines.
func shareOut(r *Result) {
	for i := range r.Lines {
		r.Lines[i].Percent = percent(r.Lines[i].Mass.Grams(), r.Input.Grams())
	}
}

// The pH of a pot nobody measured is the highest of its fruit, vegetables and
// juice (FDA, Approximate pH of Foods, 2003: strawberries to 3.90, rhubarb to
// 3.40, pears to 4.60), and not known when one of them is not tabled. Sugar,
// acids and peel are not asked.
func TestPHOfAPotNobodyMeasured(t *testing.T) {
	for list, want := range map[string]float64{
		"strawberry 1000, rhubarb 500": 3.9, "rhubarb 500, strawberry 1000": 3.9, "rhubarb 500, sugar_white 500": 3.4,
		"strawberry 500, lemon_juice 50": 3.9, "strawberry 500, orange_peel 50": 3.9, "sugar_white 500": 0,
	} {
		c := potOfRows(t, list)
		if c.acidity(); c.r.PHHigh != want || c.r.PHMeasured {
			t.Errorf("%s: %g, measured %v; want %g", list, c.r.PHHigh, c.r.PHMeasured, want)
		}
	}
	for at := range 3 {
		c := potOfRows(t, "strawberry 1000, rhubarb 500, pear 200")
		c.r.Lines[at].Row.PHHigh = 0
		if c.acidity(); c.r.PHHigh != 0 {
			t.Errorf("line %d has no pH: %g", at, c.r.PHHigh)
		}
	}
	c := potOfRows(t, "strawberry 1000")
	c.b.Cook.PH = f(3.3)
	if c.acidity(); c.r.PHHigh != 3.3 || !c.r.PHMeasured {
		t.Errorf("measured: %g %v", c.r.PHHigh, c.r.PHMeasured)
	}
}

// A reading of pH lies in 2 (limes begin there: FDA 2003) to 10, and tells what
// is missing of its day and meter.
func TestPHReadingsAtTheirEnds(t *testing.T) {
	day := unit.Date{Year: 2026, Month: 6, Day: 14}
	for _, x := range []struct {
		ph    float64
		day   unit.Date
		meter string
		codes string
	}{
		{1.99, day, "pen meter", "bad-ph"}, {2, day, "pen meter", ""}, {10, day, "pen meter", ""}, {10.01, day, "pen meter", "bad-ph"},
		{3.4, day, " ", "ph-not-dated"}, {3.4, unit.Date{}, "pen meter", "ph-not-dated"}, {3.4, unit.Date{}, "", "ph-not-dated"}, {3.4, day, "none", "ph-not-read"},
	} {
		c := &calc{p: pantry.Default(), b: &batch.Batch{Made: day, Cook: batch.Cook{PH: &x.ph, PHDate: x.day, PHMeter: x.meter}}, r: &Result{}}
		got := c.measuredPH()
		var codes []string
		for _, d := range c.l {
			codes = append(codes, d.Code)
		}
		if strings.Join(codes, " ") != x.codes || (got != nil) != (x.codes == "" || x.codes == "ph-not-dated") || got != nil && *got != x.ph {
			t.Errorf("%+v: %v %v", x, got, codes)
		}
	}
}

// Crystals count ten times as much as juice; the share of dry matter says which
// it is, and of unknown water it is juice (own reading).
func TestStrengthOfAcids(t *testing.T) {
	for water, want := range map[float64]float64{-1: 1, 0: 10, 4.9: 10, 5: 1, 92.3: 1} {
		if got := strength(Line{Row: pantry.Ingredient{WaterG: water}}); got != want {
			t.Errorf("%g %% water: %g", water, got)
		}
	}
	for list, want := range map[string]bool{"sugar_white 990, lemon_juice 10": true, "sugar_white 9901, lemon_juice 99": false, "sugar_white 999, citric_acid 1": true,
		"sugar_white 9991, citric_acid 9": false, "sugar_white 90, cream_of_tartar 10": false} {
		if got := potOfRows(t, list).acidAdded(); got != want {
			t.Errorf("%s: %v", list, got)
		}
	}
}

// Acid carries three times its weight of water (marmalade: up to 2.5 parts to
// one of fruit), a dry acid thirty times; what stands beside acid fruit is
// borne up to the share of acid-traces.csv, all lines of a group together.
func TestWhatAcidBears(t *testing.T) {
	for _, x := range []struct {
		list         string
		base, water  float64
		low, unknown string
		traces       int
		ok           bool
	}{
		{"plum 1000, water 3000", 1000, 3000, "", "", 1, true}, {"plum 1000, water 3001", 1000, 3001, "", "", 1, false},
		{"lemon_juice 500, sugar_white 500, water 1500", 500, 1500, "", "", 2, true}, {"lemon_juice 500, water 1501", 500, 1501, "", "", 1, false},
		{"citric_acid 10, water 300", 100, 300, "", "", 2, true}, {"citric_acid 10, water 301", 100, 301, "", "", 2, false},
		{"sugar_white 500", 0, 0, "", "", 1, false}, {"water 500", 0, 500, "", "", 1, false},
		{"plum 1000, walnut 60, pecan 60", 1000, 0, "", "", 2, true}, {"plum 1000, walnut 60, pecan 61", 1000, 0, "", "walnuts pecans", 0, false},
		{"plum 1000, honey 1000", 1000, 0, "", "", 1, true}, {"plum 1000, honey 1001", 1000, 0, "", "honey", 0, false},
		{"plum 1000, onion 100", 1000, 0, "onions", "", 0, false}, {"onion 100, walnut 10", 0, 0, "onions", "", 0, false}, {"walnut 10", 0, 0, "", "walnuts", 0, false},
		{"plum 1000, baking_soda 1", 1000, 0, "", "baking soda", 0, false},
	} {
		c := potOfRows(t, x.list)
		s := c.judgeAcid()
		traces := 0
		for _, yes := range s.trace {
			if yes {
				traces++
			}
		}
		low, unknown := strings.ReplaceAll(naming(c.lines(s.low)), ",", ""), strings.ReplaceAll(naming(c.lines(s.unknown)), ",", "")
		if math.Abs(s.base-x.base) > 1e-6 || s.water != x.water || low != x.low || unknown != x.unknown || traces != x.traces || s.ok() != x.ok {
			t.Errorf("%s: %+v, low %q, unknown %q, traces %d, ok %v", x.list, s, low, unknown, traces, s.ok())
		}
	}
}

// What a maker calls an acid or a water is none without a pH (own cautious
// reading); citric acid of their own is what it is anywhere.
func TestOwnAcidsAndWaters(t *testing.T) {
	c := &calc{p: pantry.Default()}
	for _, x := range []struct {
		key, class string
		own        bool
		ph         float64
		group      string
	}{
		{"", "acid", true, 0, ""}, {"", "acid", true, 2.4, "acid"}, {"", "acid", false, 0, "acid"}, {"", "water", true, 0, ""}, {"", "water", true, 3, "water"},
		{"citric_acid", "acid", true, 0, "acid"}, {"yuzu_juice", "acid", true, 0, ""}, {"", "spice", true, 0, "dry spice"}, {"", "sugar", true, 0, "sugar in crystals"},
		{"walnut", "", true, 0, ""}, {"chestnut", "nut", false, 0, "chestnuts"}, {"walnut", "nut", false, 0, "nuts"}, {"", "", false, 0, ""}, {"honey", "", false, 0, ""},
	} {
		if got := c.traceOf(Line{Key: x.key, Row: pantry.Ingredient{Class: x.class, Own: x.own, PHHigh: x.ph}}).Group; got != x.group {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

// Fruit, dried fruit, vegetables and juice have a pH of the tables; peel and
// the rest have none.
func TestProduce(t *testing.T) {
	for list, want := range map[string]bool{"plum 1": true, "raisin 1": true, "onion 1": true, "apple_juice 1": true, "orange_peel 1": false, "sugar_white 1": false, "lemon_juice 1": false, "honey 1": false} {
		if got := produce(potOfRows(t, list).r.Lines[0]); got != want {
			t.Errorf("%s: %v", list, got)
		}
	}
}
