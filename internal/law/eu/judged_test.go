package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Directive 2001/113/EC Annex I as amended (450 and 500 g, from 14 June 2026) and as it
// stood (350 g; Great Britain's still): the very least is enough.
func TestJustEnoughFruit(t *testing.T) {
	for _, x := range []struct {
		set, given string
		g          float64
		short      bool
	}{{"eu", "Strawberry jam", 450, false}, {"eu", "Strawberry jam", 449.9, true}, {"eu", "Strawberry extra jam", 500, false}, {"eu", "Strawberry extra jam", 499.9, true}, {"gb", "Strawberry jam", 350, false}, {"gb", "Strawberry jam", 349.9, true}} {
		e := tester(t, x.set, "en", after, cooked(batch.Jam, x.given, 1000, 62, tableIn(t, "strawberry", x.g)), cylinder(68, 60, 340))
		e.L = nil
		e.judge()
		if got := strings.Contains(saidAt(e), "error:too-little-fruit name"); got != x.short {
			t.Errorf("%s %s of %g g: %s", x.set, x.given, x.g, saidAt(e))
		}
	}
}

// Where a minimum is from memory, the label's maker is told, enough or not.
func TestMinimumFromMemoryIsTold(t *testing.T) {
	for g, want := range map[float64]string{600: "note:minimum-unverified name", 100: "error:too-little-fruit name"} {
		for _, memory := range []bool{true, false} {
			e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 1000, 62, tableIn(t, "strawberry", g)), cylinder(68, 60, 340))
			e.product.Floors = []place.Floor{{Class: "general", Grams: 350, Confidence: map[bool]string{true: verifiedNot, false: verifiedRead}[memory]}}
			e.L = nil
			e.judgeFruit()
			said := saidAt(e)
			if g < 350 && strings.Contains(e.L[0].Message, "unverified") != memory || (said == want) != (memory || g < 350) || said != "" && said != want {
				t.Errorf("%g g, from memory %v: %q %v", g, memory, said, e.L)
			}
		}
	}
}

// Annex I: fruits that may not be mixed with others make an extra jam alone.
func TestUnmixedFruitAlone(t *testing.T) {
	for _, x := range []struct {
		list []in
		want bool
	}{{[]in{tableIn(t, "apple", 600)}, false}, {[]in{tableIn(t, "apple", 400), tableIn(t, "strawberry", 200)}, true}, {[]in{tableIn(t, "raspberry_red", 300), tableIn(t, "strawberry", 300)}, false}} {
		e := tester(t, "gb", "en", after, cooked(batch.Jam, "Extra jam", 1000, 62, x.list...), cylinder(68, 60, 340))
		e.judge()
		if got := strings.Contains(codes(e.L), "error:extra-mixture"); got != x.want {
			t.Errorf("%s: %s", x.list[0].key, codes(e.L))
		}
	}
}

// What a solids rule asks is said as it asks it: at least, or more than (KonfV s. 3(2)),
// and where a place has a "reduced sugar" jam its range is named (SI 2003/3120, England).
func TestWordsOfTheSolidsRule(t *testing.T) {
	for _, x := range []struct {
		more          bool
		from, to      float64
		message, hint string
	}{{false, 0, 0, "jam needs 60 %", ""}, {true, 0, 0, "jam needs more than 60 %", ""}, {false, 25, 50, "jam needs 60 %", `"reduced sugar" is for 25 to 50 %`}, {false, 0.2, 0.7, "jam needs 60 %", "0.2 to 0.7 %"}} {
		for _, how := range []cook.How{cook.Measured, cook.Estimated} {
			e := tester(t, "eu", "en", after, batchA1(55), cylinder(68, 60, 340))
			e.product.Solids = &place.SolidsRule{Least: 60, More: x.more, ReducedFrom: x.from, ReducedTo: x.to}
			e.R.Brix.How, e.L = how, nil
			e.judgeSolids()
			if d := e.L[0]; !strings.Contains(d.Message, x.message) || strings.Contains(d.Hint, "reduced sugar") != (x.hint != "") || !strings.Contains(d.Hint, x.hint) || strings.Contains(d.Hint, "refractometer") != (how != cook.Measured) {
				t.Errorf("%+v %s: %q, hint %q", x, how, d.Message, d.Hint)
			}
		}
	}
}

// Annex VII Part A(1): water may be left out where it is no more than 5 % of the
// finished food.
func TestWaterOfJustFivePercent(t *testing.T) {
	for yield, want := range map[float64]bool{1000: false, 1001: true, 999: false} {
		r := cooked(batch.Syrup, "Syrup", yield, 0, in{key: "sugar_white", name: "sugar", g: 950}, in{key: "water", name: "water", g: 300, kind: "water"})
		e := tester(t, "eu", "en", after, r, cook.JarPlan{})
		if got := strings.Contains(marked(e.listRuns(nil)), "Water"); got != want {
			t.Errorf("%g g of water in %g g: %v", yield-950, yield, got)
		}
	}
}

// Annex VII Part E(2): below 2 % of the finished food the list of a compound may be
// left out; at 2 % it may not. A name of the table needs none where it is no compound.
func TestCompoundFromBothSides(t *testing.T) {
	for _, x := range []struct {
		given in
		want  string
	}{
		{in{name: "mango chutney", g: 20}, "error:compound-without-parts"}, {in{name: "mango chutney", g: 19.9}, "warning:compound-without-parts"},
		{in{key: "chocolate_dark", name: "dark chocolate", g: 20}, "error:compound-without-parts"}, {in{key: "chocolate_dark", name: "dark chocolate", g: 1}, "warning:compound-without-parts"},
		{in{key: "sugar_white", name: "jam in a name of the table", g: 20}, ""}, {in{name: "plums", g: 20}, ""},
		{in{name: "mango chutney", g: 20, parts: []pantry.Part{{Name: "mango"}, {Name: "sugar"}}}, ""},
	} {
		e := tester(t, "gb", "en", after, cooked(batch.Spread, "x", 1000, 62, x.given), cylinder(68, 60, 340))
		e.listRuns(nil)
		if got := codes(e.L); !strings.Contains(got, x.want) || x.want == "" && strings.Contains(got, "compound") {
			t.Errorf("%g g of %s: %s", x.given.g, x.given.name, got)
		}
	}
}

// Art 21(1): the name of Annex II is found in one and in many, and a short word is not
// cut to what stands in others.
func TestNamesOfAnnexIIInOneAndMany(t *testing.T) {
	for _, x := range []struct {
		name, allergen string
		want           string
	}{
		{"oat flakes", "oats", "oat"}, {"Haselnuss", "Haselnüsse", ""}, {"egg yolk", "eggs", "egg"}, {"ab cd", "abs", ""}, {"abc cd", "abcs", "abc"},
		{"abcd ef", "abcde", ""}, {"abcde fg", "abcdee", "abcde"}, {"noi", "noix", "noi"}, {"Mandel", "Mandeln", "Mandel"}, {"milk", "milk", "milk"}, {"oats", "oats", "oats"}, {"ei xy", "eiz", ""},
	} {
		from, to, ok := findName(x.name, x.allergen)
		if ok != (x.want != "") || ok && x.name[from:to] != x.want {
			t.Errorf("%s in %q: %v %d %d", x.allergen, x.name, ok, from, to)
		}
	}
}

// Annex VII Part E, Art 21: each allergen of a compound stands out at the part that
// carries it, once; what no part carries is in brackets after all of them.
func TestAllergensOfCompounds(t *testing.T) {
	for _, x := range []struct {
		in   in
		want string
	}{
		{in{name: "spread", g: 100, own: []string{"almonds"}, parts: []pantry.Part{{Name: "sugar"}, {Name: "almonds", EUAllergen: "nuts (almond)"}}}, "Spread (sugar, **almonds**)"},
		{in{name: "spread", g: 100, own: []string{"almonds", "milk"}, parts: []pantry.Part{{Name: "sugar"}, {Name: "almonds", EUAllergen: "nuts (almond)"}}}, "Spread (sugar, **almonds**) (**milk**)"},
		{in{name: "spread", g: 100, own: []string{"milk", "sesame"}, parts: []pantry.Part{{Name: "sugar"}}}, "Spread (sugar) (**milk**, **sesame**)"},
		{in{name: "spread", g: 100, parts: []pantry.Part{{Name: "cream"}, {Name: "butter"}}}, "Spread (cream (**milk**), butter (**milk**))"},
		{in{name: "milk spread", g: 100, own: []string{"milk"}, parts: []pantry.Part{{Name: "sugar"}}}, "**Milk** spread (sugar)"},
	} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, "x", 1000, 62, x.in), cook.JarPlan{})
		if got := marked(e.listRuns(nil)); got != "Ingredients: "+x.want {
			t.Errorf("%v: %q, want %q", x.in.parts, got, x.want)
		}
	}
}

// Annex II and the rows' own limits: so much of a little is allowed, more is not.
func TestALittleOfWhatIsLimited(t *testing.T) {
	for g, want := range map[float64]bool{5: false, 5.001: true} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 1000, 62, tableIn(t, "strawberry", 600), tableIn(t, "butter_unsalted", g)), cylinder(68, 60, 340))
		rule := *e.product.Little
		rule.Of, rule.Percent = []string{"butter_unsalted"}, 0.5
		e.product.Little = &rule
		e.judgeIngredients()
		if got := strings.Contains(codes(e.L), "error:ingredient-not-allowed"); got != want {
			t.Errorf("%g g of butter in 1000: %s", g, codes(e.L))
		}
	}
}

// Art 22, Annex VIII(4)(b): of a spirit the share left in the finished food counts,
// which nobody weighed: it is told. Grams per 100 g are rounded half up.
func TestSharesInTheName(t *testing.T) {
	for name, want := range map[string]bool{"Plum and rum spread": true, "Plum spread": false} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, name, 1000, 50, tableIn(t, "plum", 500), tableIn(t, "rum", 50), tableIn(t, "sugar_white", 600)), cylinder(68, 60, 340))
		e.quid()
		if got := strings.Contains(codes(e.L), "note:quid-volatile"); got != want {
			t.Errorf("%s: %s", name, codes(e.L))
		}
	}
	for plums, want := range map[float64]string{1514: "151 g", 1515: "152 g", 1100: "110 g"} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, "Plum spread", 1000, 50, in{key: "plum", name: "plums", g: plums, kind: "vegetable"}), cylinder(68, 60, 340))
		e.quid()
		if b, _ := textBlock(e, "quid"); !strings.Contains(strings.ReplaceAll(b.Text(), nbsp, " "), want) || len(b.With) != 1 || b.Path != "ingredient[0]" {
			t.Errorf("%g g: %q", plums, b.Text())
		}
	}
}

// Art 2(1): a batch without a name has none; one that the rules name has theirs.
func TestFoodWithoutAName(t *testing.T) {
	for kind, want := range map[batch.ProductType]string{batch.Spread: "", batch.Jam: "Strawberry jam"} {
		e := tester(t, "gb", "en", after, cooked(kind, "  ", 1000, 62, tableIn(t, "strawberry", 600)), cylinder(68, 60, 340))
		e.identity()
		if got := textOf(e, label.Identity); got != want || strings.Contains(saidAt(e), "error:no-name name") != (want == "") {
			t.Errorf("%s: %q %s", kind, got, saidAt(e))
		}
	}
}

// The other minima of a row (SR 2018/78 Schedule 3): told as short on an estimated yield
// and as an error on a weighed one; without a yield nothing is.
func TestOtherMinimaByTheYield(t *testing.T) {
	for _, x := range []struct {
		how   cook.How
		yield float64
		want  string
	}{{cook.Measured, 1000, "error:too-little-of name"}, {cook.Estimated, 1000, "warning:too-little-of name"}, {cook.Measured, 0, ""}} {
		e := tester(t, "gb", "en", after, cooked(batch.Curd, "Lemon curd", x.yield, 66, tableIn(t, "sugar_white", 500)), cylinder(68, 60, 340))
		e.R.Yield.How = x.how
		e.product.Least, e.L = []place.LeastRule{{What: "fat", Grams: 40}}, nil
		if e.judgeLeast(); saidAt(e) != x.want {
			t.Errorf("%s %g g: %s", x.how, x.yield, saidAt(e))
		}
	}
	e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
	e.product.Least, e.L = []place.LeastRule{{What: "endocarp", Grams: 75}}, nil
	if e.judgeLeast(); saidAt(e) != "note:endocarp name" || !strings.Contains(e.L[0].Message, "75 g") {
		t.Errorf("endocarp: %v", e.L)
	}
	butter := pantry.Ingredient{Key: "butter", Name: "butter", FatG: 80}
	e = tester(t, "gb", "en", after, cooked(batch.Curd, "Lemon curd", 1000, 66, in{key: "butter", name: "butter", g: 100, row: &butter}, in{key: "sugar_white", name: "sugar", g: 100, row: &pantry.Ingredient{Key: "sugar_white", FatG: -1}}), cylinder(68, 60, 340))
	if got := e.holds(place.LeastRule{What: "fat"}); got != 80 {
		t.Errorf("fat of 100 g of butter: %g g", got)
	}
	if got := e.holds(place.LeastRule{What: "sugars", Of: []string{"sugar_white"}}); got != 100 {
		t.Errorf("of the sugar itself: %g g", got)
	}
}
