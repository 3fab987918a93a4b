package cook

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// The words held against never-shelf.csv: name, names as written, each form
// before its name, whatever stands behind a comma or in brackets, and the parts.
func TestWordsHeldAgainstTheNeverList(t *testing.T) {
	written := map[string]batch.Ingredient{"ingredient[0]": {Name: "peaches, white", Form: "peeled, very ripe in wine"}, "ingredient[1]": {Name: "(white) peaches"}, "ingredient[2]": {Name: "peaches – white"}}
	got := texts(Line{Name: "peaches", Paths: []string{"ingredient[0]", "ingredient[1]", "ingredient[2]"}, Contains: []pantry.Part{{Name: "cream"}}}, written)
	want := []string{
		"peaches",
		"peaches, white", "peeled, very ripe in wine peaches, white", "peeled peaches, white", "very peaches, white", "ripe peaches, white", "very ripe peaches, white", " white peaches", "white peaches",
		"(white) peaches", "white) peaches ", "white ", "peaches ",
		"peaches – white", " white peaches ", "white peaches ",
		"cream in peaches",
	}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
	for form, n := range map[string]int{"a": 2, "a b": 4, "a,b": 3, "a-b": 4, "d'or": 4, "in a": 1, "a with b": 2, strings.Repeat("a ", 30): 1 + 20 + 19} {
		if got := formed(form, "x"); len(got) != n {
			t.Errorf("%q: %d of %q, want %d", form, len(got), got, n)
		}
	}
	for _, name := range []string{"peaches, white", "(white) peaches", "peaches – white"} {
		b := demo(t)
		b.Ingredients = []batch.Ingredient{ing(t, name, "1 kg", ""), ing(t, "sugar", "1 kg", "")}
		if r, l := compute(t, b); !has(l, "never-shelf") || r.Keeping.Class != Cold {
			t.Errorf("%s: %s, %s", name, r.Keeping.Class, codesOf(l))
		}
	}
}

// What never keeps is let off by a trace against foam, by any tested recipe or
// by the one that is named, as its row says.
func TestWhatTheNeverListLetsOff(t *testing.T) {
	for _, x := range []struct {
		n      pantry.Never
		trace  bool
		recipe string
		told   bool
		hint   string
	}{
		{pantry.Never{}, false, "", true, "no reading and no note changes that"}, {pantry.Never{}, false, "any", true, "no reading"}, {pantry.Never{}, true, "", true, "no reading"}, {pantry.Never{Knob: true}, true, "", false, ""}, {pantry.Never{Knob: true}, false, "", true, "no reading"},
		{pantry.Never{Unless: "tested"}, false, "", true, "unless you follow a tested recipe"}, {pantry.Never{Unless: "tested"}, false, "any", false, ""}, {pantry.Never{Unless: "one"}, false, "one", false, ""}, {pantry.Never{Unless: "one"}, false, "any", true, `recipe = "one"`}, {pantry.Never{Unless: "one"}, false, "", true, `recipe = "one"`},
	} {
		c := potOfRows(t, "plum 1000, butter_salted 1")
		x.n.Reason, x.n.Source = "it spoils", "somewhere"
		c.never, c.sour = map[int]pantry.Never{1: x.n}, sourness{trace: map[int]bool{1: x.trace}}
		if x.recipe != "" {
			c.recipe = &pantry.TestedRecipe{ID: x.recipe}
		}
		v := &verdict{class: Shelf}
		c.keepByNever(v)
		if has(c.l, "never-shelf") != x.told || v.perishable != x.told || x.told && (!strings.Contains(c.l[0].Hint, x.hint) || c.l[0].Path != "ingredient[1].name") {
			t.Errorf("%+v: %v", x, c.l)
		}
		if got := naming(c.lines([]int{0, 1})); got != "plums" {
			t.Errorf("told of twice: %s", got)
		}
	}
}

// The words of the process, and how high the kitchen lies (1 ft = 0.3048 m).
func TestWordsOfTheProcess(t *testing.T) {
	b := demo(t)
	reasons, codes := facts(compute(t, b))
	if !strings.Contains(reasons, "10 min by boiling water at 984 ft, half-pint or pint\n") || strings.Contains(codes, "process") {
		t.Errorf("%s %s", reasons, codes)
	}
	for name, x := range map[string]struct {
		set  func(*batch.Batch)
		fact string
		code string
	}{
		"not processed": {func(b *batch.Batch) { b.Process.Method = "none" }, "not processed", "not-processed process.method"}, "nothing said": {func(b *batch.Batch) { b.Process = batch.Process{} }, "no process is recorded", "process-not-said process"},
		"unsafe":             {func(b *batch.Batch) { b.Process.Method = "oven" }, "oven: ", "unsafe-method process.method"},
		"none sealed":        {func(b *batch.Batch) { b.Fills = []batch.Fill{{Jar: "us8", Count: 11, Sealed: 0}} }, "no jar sealed", "none-sealed fill"},
		"none of two sealed": {func(b *batch.Batch) { b.Fills = []batch.Fill{{Jar: "us8", Count: 5}, {Jar: "us8", Count: 6}} }, "no jar sealed", "none-sealed fill"},
		"too high":           {func(b *batch.Batch) { b.Process.Altitude = mostAltitude + 1 }, "nobody cooks at that height", "altitude-implausible process"},
		"an inch of one jar": {func(b *batch.Batch) {
			b.Fills = append(b.Fills, batch.Fill{Jar: "us8", Headspace: unit.Inch, Count: 1, Sealed: 1})
		}, "headspace that leaves no good seal: ", "headspace-off fill[1].headspace"},
		"an inch, and one right":  {func(b *batch.Batch) { b.Process.Headspace = unit.Inch; b.Fills[0].Headspace = unit.Inch / 4 }, "headspace that leaves no good seal: ", "headspace-off process.headspace"},
		"too short in its canner": {func(b *batch.Batch) { *b.Process.Minutes = 4 }, "processed too short for the altitude", "process-too-short process.minutes"},
	} {
		b := demo(t)
		x.set(b)
		r, l := compute(t, b)
		reasons, codes := facts(r, l)
		if r.Keeping.Class != Cold || !strings.Contains(reasons, x.fact) || !strings.Contains(codes, x.code+"\n") || strings.Contains(reasons, " min by ") {
			t.Errorf("%s: %s\n%s\n%s", name, r.Keeping.Class, reasons, codes)
		}
	}
	for name, set := range map[string]func(*batch.Batch){
		"nought of nought sealed": func(b *batch.Batch) { b.Fills = []batch.Fill{{Jar: "us8", Count: 0, Sealed: 0}} }, "not counted": func(b *batch.Batch) { b.Fills = []batch.Fill{{Jar: "us8", Count: -1, Sealed: 0}} },
		"one of two": func(b *batch.Batch) {
			b.Fills = []batch.Fill{{Jar: "us8", Count: 5, Sealed: 5}, {Jar: "us8", Count: 6}}
		}, "no fills": func(b *batch.Batch) { b.Fills = nil },
		"at the highest town": func(b *batch.Batch) { b.Process.Altitude, *b.Process.Minutes = mostAltitude, 20 },
	} {
		b := demo(t)
		set(b)
		if r, l := compute(t, b); r.Keeping.Class != Shelf {
			t.Errorf("%s: %s %s", name, r.Keeping.Class, codesOf(l))
		}
	}
	for _, x := range []struct {
		given unit.Length
		ok    bool
		home  unit.Length
		want  unit.Length
	}{{0, false, 5, 5}, {0, true, 5, 0}, {7, false, 5, 7}, {7, true, 5, 7}, {-1, false, 5, -1}} {
		c := &calc{b: &batch.Batch{Process: batch.Process{Altitude: x.given, AltitudeOK: x.ok}}, k: &batch.Kitchen{Altitude: x.home}}
		if got := c.altitude(); got != x.want {
			t.Errorf("%+v: %d", x, got)
		}
	}
}

// A tested recipe brings its own process; quarts of fruit butter have a row of
// their own (USDA Guide 7: 10 min), whatever recipe it is.
func TestProcessOfATestedRecipe(t *testing.T) {
	for _, x := range []struct {
		kind   batch.ProductType
		ml     float64
		tested bool
		want   string
	}{{batch.Jam, 240, false, "jam"}, {batch.Jam, 240, true, "mine"}, {batch.Butter, 240, true, "mine"}, {batch.Butter, 940, true, "butter quart"}, {batch.Butter, 940, false, "butter quart"}, {batch.Chutney, 240, false, "chutney"}, {batch.Relish, 240, false, "chutney"}, {batch.Curd, 240, false, "curd"}} {
		c := calcOf(65, 1000, 900)
		c.b.Product = x.kind
		c.r.Jars = []JarPlan{{Jar: pantry.Jar{Nominal: unit.ML(x.ml)}}}
		if x.tested {
			c.recipe = &pantry.TestedRecipe{Process: pantry.Process{Key: "mine"}}
		}
		if got := c.processRow().Key; got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
	for _, x := range []struct {
		name string
		set  func(*calc)
		want string
	}{{"no sugar known", func(c *calc) { c.r.Brix.Value = 0 }, "jam"}, {"a little", func(c *calc) { c.r.Brix.Value = 0.5 }, "low sugar"}, {"a pot that was weighed", func(c *calc) {
		c.r.Yield.How, c.pot.pot, c.r.Lines[0].Mass, c.r.Lines[1].Soluble = Measured, 1000, grams(100), grams(499)
	}, "low sugar"}, {"pectin", func(c *calc) {
		c.r.Brix.Value, c.r.Lines[1].Mass = 56, grams(1000)
		c.r.Lines = append(c.r.Lines, Line{Row: pantry.Ingredient{Class: "gelling"}})
	}, "jam"}} {
		c := calcOf(59, 1000, 499)
		if x.set(c); c.processKey() != x.want {
			t.Errorf("%s: %s", x.name, c.processKey())
		}
	}
}

// A recipe followed to its shares (0.7 to 1.45 of each part, 0.85 of the acid,
// 1.6 of what it also has: own tolerances); acid and sugar may be more.
func TestSharesOfATestedRecipe(t *testing.T) {
	recipe := pantry.TestedRecipe{Products: []string{"jam"}, Main: []pantry.RecipePart{{Keys: []string{"plum", "damson"}, Grams: 1000}, {Keys: []string{"sugar_white"}, Grams: 1000}, {Keys: []string{"lemon_juice"}, Grams: 100}},
		Also: []pantry.RecipePart{{Keys: []string{"water"}, Grams: 100}, {Keys: []string{"walnut", "pecan"}, Grams: 50}}}
	for list, want := range map[string]string{
		"plum 1000, sugar_white 1000, lemon_juice 100": "", "plum 500, damson 500, sugar_white 1000, lemon_juice 100": "", "plum 2000, sugar_white 2000, lemon_juice 200": "",
		"sugar_white 1000, lemon_juice 100": "the pot holds no plums", "plum 1000, sugar_white 1000": "the pot holds no lemon juice", "plum 1000, lemon_juice 100": "the pot holds no sugar",
		"plum 549, sugar_white 1000, lemon_juice 100": "there is less plums in it than the recipe has", "plum 551, sugar_white 1000, lemon_juice 100": "",
		"plum 1000, sugar_white 549, lemon_juice 100": "there is less sugar in it than the recipe has", "plum 1000, sugar_white 1000, lemon_juice 84": "there is less lemon juice in it than the recipe has", "plum 1000, sugar_white 1000, lemon_juice 85.3": "",
		"plum 1000, sugar_white 1000, lemon_juice 300": "", "plum 1000, sugar_white 1440, lemon_juice 145": "",
		"plum 1000, sugar_white 1300, lemon_juice 105, walnut 30": "", "plum 1000, sugar_white 1000, lemon_juice 100, walnut 79": "", "plum 1000, sugar_white 1000, lemon_juice 100, walnut 81": "walnuts is not in it, or not so much",
		"plum 2000, sugar_white 2000, lemon_juice 200, walnut 159": "", "plum 2000, sugar_white 2000, lemon_juice 200, walnut 161": "walnuts is not in it, or not so much", "plum 1000, sugar_white 1000, lemon_juice 100, onion 1": "onions is not in it, or not so much",
		"plum 1000, sugar_white 1000, lemon_juice 100, vinegar 50": "", "plum 1000, sugar_white 1000, lemon_juice 100, salt 1": "", "plum 1000, sugar_white 1000, lemon_juice 100, water 161": "",
	} {
		c := potOfRows(t, list)
		c.sour = sourness{trace: map[int]bool{}}
		for i, ln := range c.r.Lines {
			c.sour.trace[i] = ln.Key == "vinegar" || ln.Key == "salt" || ln.Key == "water"
		}
		if got := c.unlike(recipe); got != want {
			t.Errorf("%s: %q, want %q", list, got, want)
		}
	}
	three := recipe
	three.Main = []pantry.RecipePart{{Keys: []string{"plum"}, Grams: 1000}, {Keys: []string{"sugar_white"}, Grams: 1000}, {Keys: []string{"lemon_juice", "apple"}, Grams: 1000}}
	for list, want := range map[string]string{
		"plum 1440, sugar_white 700, lemon_juice 860": "", "plum 1460, sugar_white 700, lemon_juice 860": "there is more plums in it than the recipe has",
		"plum 715, sugar_white 715, lemon_juice 1570": "", "plum 685, sugar_white 715, lemon_juice 1600": "there is less plums in it than the recipe has",
	} {
		if got := potOfRows(t, list).unlike(three); got != want {
			t.Errorf("%s: %q, want %q", list, got, want)
		}
	}
	three.Main[2].Keys = []string{"apple"}
	if got := potOfRows(t, "plum 715, sugar_white 1570, apple 715").unlike(three); got != "" {
		t.Errorf("more sugar: %q", got)
	}
	c := potOfRows(t, "plum 1000")
	c.b.Product = batch.Curd
	if got := c.unlike(three); got != "it is a jam, not a curd" {
		t.Error(got)
	}
	for note, hint := range map[string]string{"Grandmother's tin": "recipe is a private note then", "usda plum orange": "did you mean "} {
		b := demo(t)
		b.Recipe = note
		_, l := compute(t, b)
		for _, d := range l {
			if d.Code == "recipe-not-tested" && !strings.HasPrefix(d.Hint, hint) {
				t.Errorf("%s: %q", note, d.Hint)
			}
		}
		if !has(l, "recipe-not-tested") {
			t.Errorf("%s: %s", note, codesOf(l))
		}
	}
}

// Tags for gifts up to the most jars of one size, boxes by how many one takes,
// and what is in the cupboard: own lids are known, slips are asked about.
func TestWhatTheJarsNeed(t *testing.T) {
	for _, x := range []struct {
		gifts []int
		count int
		holds int
		want  string
	}{{nil, 12, 12, "12 12 0 1"}, {[]int{1, 2, 0, -3}, 13, 12, "13 13 3 2"}, {[]int{mostJars, 5}, 1, 6, "1 1 10000 1"}, {[]int{1 << 62, 1 << 62}, 0, 6, "0 0 10000 0"}, {nil, 7, 6, "7 7 0 2"}, {nil, 6, 6, "6 6 0 1"}} {
		c := &calc{b: &batch.Batch{}, k: &batch.Kitchen{Supplies: batch.Supplies{BoxHolds: x.holds}}, p: pantry.Default(), r: &Result{Jars: []JarPlan{{Count: x.count, Sealed: x.count}}}}
		for _, n := range x.gifts {
			c.b.Gifts = append(c.b.Gifts, batch.Gift{Jars: n})
		}
		c.supplies()
		if s := c.r.Supplies; fmt.Sprint(s.Lids, s.Labels, s.Tags, s.Boxes) != x.want {
			t.Errorf("%+v: %+v", x, s)
		}
	}
	own := []pantry.Jar{{Key: "mine", Lid: "odd lid", Nominal: unit.ML(200), Brimful: unit.ML(220), Mouth: unit.MM(50)}}
	c := &calc{b: &batch.Batch{}, p: pantry.Default().With(nil, own), r: &Result{}, k: &batch.Kitchen{Supplies: batch.Supplies{Lids: map[string]int{"odd lid": 1, "odd lids": 1, "qqqqqqqqqqqq": 1}, Jars: map[string]int{"mine": 1, "us8": 1}}}}
	c.supplies()
	var hints []string
	for _, d := range c.l {
		hints = append(hints, d.Message+": "+d.Hint)
	}
	if len(hints) != 2 || !strings.HasSuffix(hints[0], "did you mean odd lid?") || !strings.HasSuffix(hints[1], "write the neck finish, such as 70-450 CT or 63 lug") {
		t.Errorf("%q", hints)
	}
	if r := (&Result{Jars: []JarPlan{{Count: 5, Sealed: 3}, {Count: 2, Sealed: 2}}}); r.Count() != 7 || r.Sealed() != 5 || r.Jars[0].Unsealed() != 2 {
		t.Errorf("%d jars, %d sealed", r.Count(), r.Sealed())
	}
}
