package cook

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Findings of the process, the pot and the counts, each from both sides of its
// limit: what is written over the demo batch, and the codes of the far side.
func TestFindingsFromBothSides(t *testing.T) {
	minutes := func(m float64, sterile bool, method string) func(*batch.Batch) {
		return func(b *batch.Batch) { b.Process.Minutes, b.Process.Sterilised, b.Process.Method = &m, &sterile, method }
	}
	counted := func(n ...int) func(*batch.Batch) {
		return func(b *batch.Batch) {
			b.Fills = nil
			for _, c := range n {
				b.Fills = append(b.Fills, batch.Fill{Jar: "8 fl oz", Count: c, Sealed: -1})
			}
		}
	}
	pot := func(kg, brix float64) func(*batch.Batch) {
		return func(b *batch.Batch) { b.Cook.FinishedPot, b.Cook.Brix = unit.Grams(kg*1000), &brix }
	}
	for _, c := range []struct {
		name string
		set  func(*batch.Batch)
		code string
		told bool
	}{
		// USDA AIB 539: 5 min for sterile jars to 1000 ft; under 10 min the jars are boiled first.
		{"5 min", minutes(5, true, "boiling water"), "process-too-short", false}, {"4.9 min", minutes(4.9, true, "boiling water"), "process-too-short", true},
		{"9.9 min", minutes(9.9, false, "boiling water"), "jars-not-sterile", true}, {"10 min", minutes(10, false, "boiling water"), "jars-not-sterile", false}, {"sterile", minutes(9.9, true, "boiling water"), "jars-not-sterile", false},
		{"nobody said", func(b *batch.Batch) { m := 9.9; b.Process.Minutes, b.Process.Sterilised = &m, nil }, "jars-not-sterile", true},
		{"120 min", minutes(120, true, "boiling water"), "minutes-implausible", false}, {"121 min", minutes(121, true, "boiling water"), "minutes-implausible", true},
		{"45 min of steam", minutes(45, true, "steam"), "steam-too-long", false}, {"46 min of steam", minutes(46, true, "steam"), "steam-too-long", true}, {"46 min of water", minutes(46, true, "boiling water"), "steam-too-long", false},
		{"no minutes", func(b *batch.Batch) { b.Process.Minutes = nil }, "minutes-not-said", true},
		{"no altitude", func(b *batch.Batch) { b.Process.Altitude, b.Process.AltitudeOK = 0, false }, "altitude-not-said", true},
		{"at the sea", func(b *batch.Batch) { b.Process.Altitude, b.Process.AltitudeOK = 0, true }, "altitude-not-said", false},
		// The pot gives 3379 g, 11.2 jars of 302 g.
		{"13 jars", counted(13), "counts-off", false}, {"14 jars", counted(14), "counts-off", true}, {"9 jars", counted(9), "counts-off", false}, {"8 jars", counted(8), "counts-off", true},
		{"8 of one size, and more of another", counted(8, -1), "counts-off", false}, {"15 of one size, and more of another", counted(15, -1), "counts-off", true},
		{"a reading that agrees", pot(3.4, 66), "brix-disagrees", false}, {"a reading far below the weights", pot(3.4, 55), "brix-disagrees", true}, {"a reading far above", pot(3.4, 75), "brix-disagrees", true},
		{"10 000 jars", counted(10_000), "too-many-jars", false}, {"10 001 jars", counted(10_001), "too-many-jars", true},
		{"no weight", func(b *batch.Batch) { b.Ingredients = append(b.Ingredients, grammes("salt", 0)) }, "no-amount", true},
		{"a pint", func(b *batch.Batch) { b.Fills[0].Jar = "16 fl oz" }, "jar-too-large", false},
		{"a tonne", func(b *batch.Batch) { b.Ingredients = []batch.Ingredient{ing(t, "plums", "1000 kg", "")} }, "amount-too-large", false},
		{"over a tonne", func(b *batch.Batch) {
			b.Ingredients = []batch.Ingredient{ing(t, "plums", "1000 kg", ""), ing(t, "salt", "1 g", "")}
		}, "amount-too-large", true},
	} {
		b := demo(t)
		c.set(b)
		if r, l := compute(t, b); has(l, c.code) != c.told {
			t.Errorf("%s: %s told %v; pot %s, %.1f °Brix", c.name, c.code, !c.told, r.Yield.Mass.Format(unit.Metric), r.Brix.Value)
		}
	}
}

// A count is told where the first one stands, whether its maker gave paths or not.
func TestCountsAreToldAtTheFirst(t *testing.T) {
	for _, path := range []string{"", "fill[0]"} {
		b := demo(t)
		b.Fills = []batch.Fill{{Path: path, Jar: "8 fl oz", Count: 20, Sealed: -1}}
		if path == "" {
			b.Fills = append(b.Fills, batch.Fill{Jar: "4 fl oz", Count: 20, Sealed: -1})
		}
		r, l := compute(t, b)
		for _, d := range l {
			if d.Code == "counts-off" && d.Path != "fill[0].count" {
				t.Errorf("%s", d.Path)
			}
		}
		if !has(l, "counts-off") || r.Jars[0].FillPath != "fill[0]" {
			t.Errorf("%+v", r.Jars[0])
		}
	}
	b := demo(t)
	b.Fills = []batch.Fill{plan("us8", 0), plan("us4", 0), plan("us12", 0.5)} // what no share takes goes to the first open size
	r, _ := compute(t, b)
	if got := fmt.Sprint(r.Jars[0].Count, r.Jars[1].Count, r.Jars[2].Count); r.Jars[0].Count < 5 || r.Jars[1].Count > 1 || r.Jars[2].Count != 3 {
		t.Error(got)
	}
}

// What cannot be weighed leaves the recipe open: no range of jars is told, and
// nothing is said against the counts.
func TestWhatCannotBeWeighedLeavesItOpen(t *testing.T) {
	for _, c := range []struct {
		name, amount string
		open         bool
	}{{"sugar", "10 g", false}, {"salt", "", true}, {"pepper", "2 tsp", false}, {"pepper", "2", true}, {"pepper", "4 g", false}, {"moonstone", "3", true}, {"moonstone", "3 g", false}} {
		b := demo(t)
		if c.amount == "" {
			b.Ingredients = append(b.Ingredients, grammes(c.name, 0))
		} else {
			b.Ingredients = append(b.Ingredients, ing(t, c.name, c.amount, ""))
		}
		b.Fills[0].Count = 30
		r, l := compute(t, b)
		if has(l, "counts-off") == c.open || r.Jars[0].Count != 30 {
			t.Errorf("%s of %s: %v", c.amount, c.name, l)
		}
	}
}

// The reading of pH says when and with what it was taken.
func TestPHSaysHowItWasRead(t *testing.T) {
	for _, c := range []struct {
		day   unit.Date
		meter string
		fact  string
	}{
		{unit.Date{}, "", "measured pH 3.40"}, {unit.Date{Year: 2026, Month: 6, Day: 15}, "", "measured pH 3.40 on 2026-06-15"},
		{unit.Date{}, " pen meter ", "measured pH 3.40 (pen meter)"}, {unit.Date{Year: 2026, Month: 6, Day: 15}, "pen meter", "measured pH 3.40 on 2026-06-15 (pen meter)"},
	} {
		b := demo(t)
		b.Cook.PH, b.Cook.PHDate, b.Cook.PHMeter = f(3.4), c.day, c.meter
		r, _ := compute(t, b)
		found := false
		for _, e := range r.Keeping.Reasons {
			found = found || e.Fact == c.fact
		}
		if !found {
			t.Errorf("%q is not among %v", c.fact, r.Keeping.Reasons)
		}
	}
}

// Acid counts from 1 % of juice, or a tenth of that in crystals (own threshold,
// no source); an acid of unknown strength counts as juice.
func TestAcidThatCounts(t *testing.T) {
	p := pantry.Default().With([]pantry.Ingredient{ownFruit("testfruit", 4.7)}, nil)
	for amount, enough := range map[string]bool{
		"lemon juice: 19 g": false, "lemon juice: 21 g": true, "citric acid: 1.8 g": false, "citric acid: 2.2 g": true, "vinegar: 19 g": false, "vinegar: 21 g": true, "ascorbic acid: 5 g": false,
	} {
		if _, codes := potWith(t, p, "testfruit: 1 kg", "sugar: 1 kg", amount); strings.Contains(strings.Join(codes, " "), "low-acid") == enough {
			t.Errorf("%s: %v", amount, codes)
		}
	}
}

// Without fruit the heaviest vegetable, citrus juice or honey names the batch;
// spice, sugar and water never do.
func TestMainFruit(t *testing.T) {
	for list, key := range map[string]string{
		"carrots: 500 g|sugar: 1 kg": "carrot", "lemon juice: 500 g|sugar: 1 kg": "lemon_juice", "bottled lemon juice: 500 g|sugar: 1 kg": "lemon_juice_bottled",
		"lime juice: 500 g|sugar: 1 kg": "lime_juice", "honey: 500 g|sugar: 1 kg": "honey", "sugar: 1 kg|water: 2 kg|cinnamon: 5 g": "",
		"onions: 900 g|plums: 100 g": "plum", "plums: 100 g|apples: 200 g|pears: 200 g": "apple", "honey: 10 g|onions: 20 g": "onion", "moonberries: 2 kg|plums: 10 g": "plum",
	} {
		if r, _ := potWith(t, pantry.Default(), strings.Split(list, "|")...); r.MainFruit != key {
			t.Errorf("%s: %q, want %q", list, r.MainFruit, key)
		}
	}
}

// Two lines of one food are one: what either says stays, and what only one was
// said to be free of is not proven of the other.
func TestTwoLinesOfOneFood(t *testing.T) {
	for _, order := range [][2]int{{0, 1}, {1, 0}} {
		two := []batch.Ingredient{ing(t, "house blend", "10 g", ""), ing(t, "House blend", "20 g", "")}
		two[0].Allergens = []string{}
		b := demo(t)
		b.Ingredients = []batch.Ingredient{ing(t, "plums", "1 kg", ""), two[order[0]], two[order[1]]}
		r, _ := compute(t, b)
		if len(r.Lines) != 2 || r.Lines[1].Said || len(r.Allergy().Unknown) == 0 || len(r.Allergy().Confirmed) > 0 || len(r.Lines[1].Written) != 2 || len(r.Lines[1].Paths) != 2 {
			t.Errorf("%v: %+v", order, r.Lines[1])
		}
	}
	var list []string
	for range 100 {
		list = append(list, "lemon juice: 1 tbsp")
	}
	r, _ := potWith(t, pantry.Default(), list...)
	if n := len(r.Lines[0].Prepared); n < 200 || n > 260 || !r.Lines[0].Estimated {
		t.Errorf("%d bytes of how it was weighed", n)
	}
}

// A freezer and a refrigerator are equally careful: neither overrules the other.
func TestColdsAreAlike(t *testing.T) {
	for _, c := range [][2]Class{{Refrigerator, Freezer}, {Freezer, Refrigerator}, {Freezer, Cold}, {Refrigerator, Shelf}, {Cold, ShelfShort}, {ShelfShort, Shelf}} {
		v := &verdict{class: c[0]}
		if v.atLeast(c[1], Evidence{Fact: "x"}); v.class != c[0] || len(v.reasons) != 1 {
			t.Errorf("%s overrules %s", c[1], c[0])
		}
		w := &verdict{class: c[1]}
		if w.atLeast(c[0], Evidence{Fact: "x"}); caution[w.class] != caution[c[0]] {
			t.Errorf("%s does not overrule %s", c[0], c[1])
		}
	}
}

// What the lids of a planned batch are told to be.
func TestLidsToHaveReady(t *testing.T) {
	for _, c := range []struct {
		low, high int
		how       How
		cover     float64
		want      string
	}{{7, 9, Estimated, 80, "7-9 jars: have 9 lids ready"}, {8, 8, Estimated, 80, "about 8 jars: have 9 lids ready"}, {1, 1, Estimated, 80, "about 1 jar: have 2 lids ready"},
		{0, 0, Estimated, 80, ""}, {7, 9, Given, 80, ""}, {7, 9, Estimated, 0, ""}} {
		r := &Result{Jars: []JarPlan{{Low: c.low, High: c.high, How: c.how}}}
		r.Range.Coverage = c.cover
		if got := r.RangeText(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	r := &Result{Jars: []JarPlan{{Low: 1, High: 2, How: Estimated}, {Low: 3, High: 5, How: Estimated}}}
	if r.Range.Coverage = 80; r.RangeText() != "4-7 jars: have 7 lids ready" {
		t.Error(r.RangeText())
	}
}

// A jar too large for its process gets no word that its minutes are enough.
func TestTooLargeAJarIsNotProcessed(t *testing.T) {
	for ml, large := range map[float64]bool{520: false, 521: true} {
		b := demo(t)
		b.Fills[0].Jar = "own"
		r, l := Compute(b, nil, pantry.Default().With(nil, []pantry.Jar{{Key: "own", Nominal: unit.ML(ml), Brimful: unit.ML(ml), Mouth: unit.MM(70), NamedBy: "brimful"}}))
		if has(l, "jar-too-large") != large {
			t.Errorf("%g ml: %v", ml, l)
		}
		enough := false
		for _, e := range r.Keeping.Reasons {
			enough = enough || strings.Contains(e.Fact, "by boiling water at")
		}
		if enough == large || (r.Keeping.Class == Shelf) == large {
			t.Errorf("%g ml: %s %v", ml, r.Keeping.Class, r.Keeping.Reasons[2:])
		}
	}
	c := &calc{r: &Result{}}
	c.r.Brix = Reading{80, Measured}
	j := pantry.Jar{Brimful: unit.ML(250), Measured: true}
	within(t, "the brim at 20 °C", c.brim(j).Grams(), 250*pantry.Density(80, 20)/1000, 0.001)
	c.r.Brix = Reading{65, Estimated}
	within(t, "the brim of what nobody read", c.brim(j).Grams(), 250*pantry.Density(78, 20)/1000, 0.001)
}

// No jar sealed is a count, not a silence; and so is one ingredient.
func TestNoughtAndOneAreCounts(t *testing.T) {
	for sealed, want := range map[int]int{-1: 8, 0: 0, 1: 1, 8: 8} {
		b := demo(t)
		b.Fills[0].Count, b.Fills[0].Sealed = 8, sealed
		if r, l := compute(t, b); r.Jars[0].Sealed != want || r.Jars[0].Checked != (sealed >= 0) {
			t.Errorf("%d sealed: %+v %v", sealed, r.Jars[0], l)
		}
	}
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "plums", "1 kg", "")}
	if _, l := compute(t, b); !has(l, "reduced-sugar") {
		t.Errorf("plums alone: %v", l)
	}
	b.Ingredients = nil
	if _, l := compute(t, b); has(l, "reduced-sugar") {
		t.Errorf("an empty pot: %v", l)
	}
	for amount, asked := range map[string]bool{"1 pinch": false, "2 tsp": false, "2": true, "300 g": true, "10 g": false} {
		b := demo(t)
		b.Ingredients = append(b.Ingredients, ing(t, "pepper", amount, ""))
		if _, l := compute(t, b); has(l, "ambiguous-ingredient") != asked {
			t.Errorf("%s of pepper: %v", amount, l)
		}
	}
}
