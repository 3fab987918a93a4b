package cook

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// codesOf lists the findings, in order.
func codesOf(l diag.List) string {
	var out []string
	for _, d := range l {
		out = append(out, d.Code)
	}
	return strings.Join(out, " ")
}

// A batch too heavy for any pot is told once, and what went over it is left out.
func TestTooHeavyIsToldOnce(t *testing.T) {
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "plums", "999 kg", ""), ing(t, "sugar", "2 kg", ""), ing(t, "pears", "3 kg", ""), ing(t, "apples", "1 kg", "")}
	b.Fills = []batch.Fill{{Jar: "us8", Count: 1, Sealed: 1}}
	r, l := compute(t, b)
	if strings.Count(codesOf(l), "amount-too-large") != 1 || has(l, "counts-off") || r.Input != 1000*unit.Kilogram || r.Lines[1].Mass+r.Lines[1].Soluble+r.Lines[1].Insoluble+r.Lines[2].Mass != 0 {
		t.Errorf("%s, %s", r.Input.Format(unit.Metric), codesOf(l))
	}
	var sum [2]unit.Mass
	for _, ln := range r.Lines {
		sum[0], sum[1] = sum[0]+ln.Soluble, sum[1]+ln.Insoluble
	}
	if r.Soluble != sum[0] || r.Insoluble != sum[1] || r.Insoluble <= 0 {
		t.Errorf("solids %d and %d of %d and %d", r.Soluble, r.Insoluble, sum[0], sum[1])
	}
}

// A batch of no file without ingredients is told; that of a file was, by its reader.
func TestNothingInTheBatch(t *testing.T) {
	b := demo(t)
	b.Ingredients = nil
	_, l := compute(t, b)
	parsed, _ := batch.Parse("b.toml", []byte("name = \"x\"\nkind = \"jam\"\n"), nil)
	_, l2 := Compute(parsed, nil, pantry.Default())
	if !has(l, "no-ingredients") || has(l2, "no-ingredients") {
		t.Errorf("%s; %s", codesOf(l), codesOf(l2))
	}
	b.Ingredients = []batch.Ingredient{{Name: "plums", Path: "ingredient[0]"}}
	if _, l := compute(t, b); !has(l, "no-amount") {
		t.Error(codesOf(l))
	}
	b.File = parsed.File
	if _, l := compute(t, b); has(l, "no-amount") {
		t.Error(codesOf(l))
	}
}

// Lines of one name are one when their parts are the same and both stay in the
// pot; what either says is said of both.
func TestWhatMakesLinesOne(t *testing.T) {
	two := func(a, b batch.Ingredient) *Result {
		x := demo(t)
		x.Ingredients = []batch.Ingredient{a, b}
		r, _ := compute(t, x)
		return r
	}
	part := func(name string) batch.Ingredient {
		g := ing(t, "house mix", "10 g", "")
		g.Contains = []pantry.Part{{Name: name}}
		return g
	}
	skipped := ing(t, "house mix", "10 g", "")
	skipped.Skip = true
	for _, x := range []struct {
		name string
		a, b batch.Ingredient
		want int
	}{
		{"the same", ing(t, "house mix", "10 g", ""), ing(t, "House  mix", "10 g", ""), 1}, {"other parts", part("milk"), part("egg"), 2}, {"the same parts", part("milk"), part("Milk"), 1},
		{"parts and none", part("milk"), ing(t, "house mix", "10 g", ""), 2}, {"lifted out", ing(t, "house mix", "10 g", ""), skipped, 2}, {"both lifted out", skipped, skipped, 1},
	} {
		if r := two(x.a, x.b); len(r.Lines) != x.want {
			t.Errorf("%s: %d lines", x.name, len(r.Lines))
		}
	}
	a, b := ing(t, "apricots", "1 kg", "halved"), ing(t, "apricots", "2 cups", "sliced")
	a.Allergens, b.Allergens = []string{"milk"}, []string{"egg"}
	r := two(a, b)
	one := r.Lines[0]
	if fmt.Sprint(one.Allergens, one.Forms, one.Written, one.Paths) != "[milk egg] [halved sliced] [apricots apricots] [ingredient[0] ingredient[1]]" {
		t.Errorf("%+v", one)
	}
	if one.Prepared != "weighed + 2 cups at 165 g a cup (sliced)" || !one.Estimated || one.Mass != 1330*unit.Gram {
		t.Errorf("%q, estimated %v, %d g", one.Prepared, one.Estimated, one.Mass/unit.Gram)
	}
	single := two(ing(t, "apricots", "1330 g", ""), ing(t, "salt", "1 g", "")).Lines[0]
	if d := one.Soluble - single.Soluble; d < -5 || d > 5 || one.Insoluble-single.Insoluble > 5 || one.Insoluble-single.Insoluble < -5 {
		t.Errorf("solids %d and %d, of one line %d and %d", one.Soluble, one.Insoluble, single.Soluble, single.Insoluble)
	}
	for _, x := range [][3]bool{{false, false, false}, {true, false, true}, {false, true, true}, {true, true, true}} {
		c := &calc{r: &Result{}}
		at := map[string]int{}
		for _, yes := range x[:2] {
			c.add(at, Line{Name: "x", Estimated: yes, Row: pantry.Ingredient{SulphiteCheck: yes, Memory: yes}})
		}
		if one := c.r.Lines[0]; one.Estimated != x[2] || one.Row.SulphiteCheck != x[2] || one.Row.Memory != x[2] {
			t.Errorf("%v: %+v", x, one)
		}
	}
	c := &calc{r: &Result{}}
	at := map[string]int{}
	for _, n := range []int{199, 1, 5} {
		c.add(at, Line{Name: "x", Prepared: strings.Repeat("y", n)})
	}
	if n := len(c.r.Lines[0].Prepared); n != 199+3+1 {
		t.Errorf("%d bytes: it grows until 200", n)
	}
}

// Money of two lines is that of the first currency named.
func TestCostsKeepTheirCurrency(t *testing.T) {
	for _, x := range []struct {
		a, b, want unit.Money
	}{
		{unit.Money{}, unit.Money{Minor: 3, Currency: "USD"}, unit.Money{Minor: 3, Currency: "USD"}}, {unit.Money{Minor: 2, Currency: "USD"}, unit.Money{}, unit.Money{Minor: 2, Currency: "USD"}},
		{unit.Money{Minor: 2, Currency: "USD"}, unit.Money{Minor: 3, Currency: "USD"}, unit.Money{Minor: 5, Currency: "USD"}},
	} {
		c := &calc{r: &Result{}}
		at := map[string]int{}
		c.add(at, Line{Name: "x", Cost: x.a})
		if c.add(at, Line{Name: "x", Cost: x.b}); c.r.Lines[0].Cost != x.want {
			t.Errorf("%v and %v: %v", x.a, x.b, c.r.Lines[0].Cost)
		}
	}
}

// Rows found by form, part and piece, and by the words before a comma.
func TestRowsFoundByTheirPiece(t *testing.T) {
	for _, x := range []struct{ name, amount, form, key string }{
		{"lemons", "100 g", "juice", "lemon as juice"}, {"lemons", "100 g", "", "lemon"}, {"stardust", "100 g", "juice", ""}, {"limes", "juice of 3", "", "lime_juice"}, {"cinnamon", "2 sticks", "", "cinnamon_stick"},
		{"cinnamon", "2 g", "", "cinnamon"}, {"plums, from the garden", "1 kg", "", "plum"}, {"stardust, from the sky", "1 kg", "", ""}, {"plums", "3", "", "plum"}, {"garlic", "2 cloves", "", "garlic"},
	} {
		ln, l := oneLine(t, x.name, x.amount, x.form)
		key := ln.Key
		if ln.Row.Class == "juice" {
			key += " as juice"
		}
		if key != x.key {
			t.Errorf("%s of %s (%s): %q, want %q; %v", x.amount, x.name, x.form, key, x.key, l)
		}
	}
	for _, x := range []struct{ form, beside, want string }{{"chopped", "ripe", "chopped|ripe"}, {"ripe", " ripe ", "ripe"}, {"", " ", ""}, {" ", "ripe", "ripe"}} {
		g := batch.Ingredient{Form: x.form}
		g.Amount.Form = x.beside
		if got := strings.Join(forms(g), "|"); got != x.want {
			t.Errorf("%q and %q: %q", x.form, x.beside, got)
		}
	}
	for name, want := range map[string]string{" house   blend ": "house blend", " ": "unnamed ingredient"} {
		if got := plainName(name); got != want {
			t.Errorf("%q: %q", name, got)
		}
	}
}

// A name nobody knows is an error where it has no weight, a warning where it
// has; the hint asks for what is near, else to check the spelling.
func TestNamesNobodyKnows(t *testing.T) {
	for _, x := range []struct {
		name, amount string
		severity     diag.Severity
		hint         string
	}{{"strawbery", "1 kg", diag.Warning, "did you mean "}, {"strawbery", "1 cup", diag.Error, "did you mean "}, {"qqqxxzz", "1 kg", diag.Warning, "check the spelling, or give its"}, {"qqqxxzz", "1 cup", diag.Error, "check the spelling, or give the amount"}} {
		_, l := oneLine(t, x.name, x.amount, "")
		i := slices.IndexFunc(l, func(d diag.Diagnostic) bool { return d.Code == "unknown-ingredient" })
		if i < 0 || l[i].Severity != x.severity || !strings.HasPrefix(l[i].Hint, x.hint) {
			t.Errorf("%s of %s: %v", x.amount, x.name, l)
		}
	}
}

// Solids of the maker's reading win over those of the row and leave room for the
// other solids; none known of any weight is told.
func TestSolidsOfALine(t *testing.T) {
	for _, x := range []struct {
		row, other, own float64
		mass            unit.Mass
		removed         bool
		want            string
		code            string
	}{
		{10, 2, -1, 1000 * unit.Gram, false, "100 20", ""}, {10, 2, 0, 1000 * unit.Gram, false, "0 20", ""}, {10, 2, 30, 1000 * unit.Gram, false, "300 20", ""}, {10, 2, 99, 1000 * unit.Gram, false, "990 10", ""},
		{10, 2, 100, 1000 * unit.Gram, false, "1000 0", ""}, {10, 2, 100.5, 1000 * unit.Gram, false, "100 20", "bad-solids"}, {-1, -1, -1, 1000 * unit.Gram, false, "0 0", "solids-unknown"}, {-1, -1, -1, 0, false, "0 0", ""},
		{-1, -1, 5, 1000 * unit.Gram, false, "50 0", ""}, {10, 2, -1, 1000 * unit.Gram, true, "0 0", ""}, {0, 0, -1, 1000 * unit.Gram, false, "0 0", ""}, {0.5, 0.5, -1, 1000 * unit.Gram, false, "5 5", ""},
	} {
		c := &calc{}
		ln := Line{Mass: x.mass, Removed: x.removed, Row: pantry.Ingredient{SolubleG: x.row, OtherSolidsG: x.other}}
		c.solids(&ln, batch.Ingredient{Solids: x.own}, true)
		if got := fmt.Sprintf("%g %g", ln.Soluble.Grams(), ln.Insoluble.Grams()); got != x.want || codesOf(c.l) != x.code {
			t.Errorf("%+v: %s %s", x, got, codesOf(c.l))
		}
	}
}

// How a weight was found, in words; USDA SR28 portions as in [TestMeasuresMakersWrite].
func TestHowAWeightWasFound(t *testing.T) {
	for _, x := range []struct{ name, amount, form, prepared string }{
		{"plums", "1 kg", "", "weighed"}, {"strawberries", "2 cups", "", "2 cups at 144 g a cup (whole)"}, {"strawberries", "2 cups", "pureed", "2 cups at 232 g a cup (pureed)"}, {"strawberries", "2 cups", "crushed", "2 cups at 232 g a cup (pureed)"},
		{"strawberries", "2", "", `2 at 12 g each (medium (1-1/4" dia))`}, {"butter", "1 stick", "", "1 stick at 113.5 g each (half a cup)"}, {"salt", "1 pinch", "", "1 pinch at 0.4 g each (a sixteenth of a teaspoon)"},
		{"lemon juice", "2 tbsp", "", "2 tbsp at 15.2 g a tablespoon"}, {"lemon juice", "2 tsp", "", "2 tsp at 5.1 g a teaspoon"}, {"sour cherries with pits", "1 kg", "", "1 kg as bought, less 10 % (pits and stems)"},
		{"blackberries", "2 cups", "finely chopped", "2 cups at 232 g a cup (crushed)"}, {"onions", "1/2", "", ""},
	} {
		ln, l := oneLine(t, x.name, x.amount, x.form)
		if x.prepared != "" && ln.Prepared != x.prepared || ln.Estimated != (x.prepared != "weighed") || ln.Mass <= 0 {
			t.Errorf("%s of %s (%s): %q, estimated %v; %v", x.amount, x.name, x.form, ln.Prepared, ln.Estimated, l)
		}
	}
	if q(unit.Quantity{}) != "the amount" || q(unit.Quantity{Text: "2 cups"}) != "2 cups" || bracket("") != "" || bracket("whole") != " (whole)" || trim(3) != "3" || trim(0.38) != "0.4" {
		t.Error("words of a weight")
	}
}

// household picks by the measure first, then by form, and says when it guessed.
func TestKitchenWeightOfEachMeasure(t *testing.T) {
	all := pantry.Ingredient{Class: "fruit", TbspG: 15, TspG: 5, CupG: 150, CupForm: "whole", Cup2G: 165, Cup2Form: "sliced"}
	spoons := pantry.Ingredient{TbspG: 15, TspG: 5}
	for _, x := range []struct {
		row         pantry.Ingredient
		text, words string
		grams       float64
		name, form  string
		assumed     bool
	}{
		{all, "2 Tbsp", "", 15, "tablespoon", "", false}, {all, "2 tablespoons", "", 15, "tablespoon", "", false}, {all, "2 tsp", "", 5, "teaspoon", "", false}, {all, "2 teaspoons", "", 5, "teaspoon", "", false},
		{all, "2 cups", "", 150, "cup", "whole", false}, {all, "2 cups", "whole", 150, "cup", "whole", false}, {all, "2 cups", "sliced", 165, "cup", "sliced", false}, {all, "2 cups", "grated", 150, "cup", "whole", true},
		{all, "2 cups", "zsliced", 150, "cup", "whole", false}, {all, "2 cups", "mashed", 232, "cup", "crushed", false}, {all, "2 cups", "very finely chopped", 232, "cup", "crushed", false}, {all, "2 cups", "ripe, sliced!", 165, "cup", "sliced", false},
		{spoons, "2 cups", "", 15, "tablespoon", "", false}, {pantry.Ingredient{TspG: 5}, "2 cups", "", 5, "teaspoon", "", false}, {pantry.Ingredient{TspG: 0.4}, "1 cup", "", 0.4, "teaspoon", "", false}, {pantry.Ingredient{TbspG: 0.9}, "1 tbsp", "", 0.9, "tablespoon", "", false},
		{pantry.Ingredient{CupG: 0.9, CupForm: "whole", Class: "spice"}, "1 cup", "diced", 0.9, "cup", "whole", false}, {pantry.Ingredient{CupG: 0.9, CupForm: "whole"}, "1 tbsp", "", 0.9, "cup", "whole", false},
		{pantry.Ingredient{Class: "vegetable"}, "1 cup", "crushed", 232, "cup", "crushed", false}, {pantry.Ingredient{Class: "spice"}, "1 cup", "crushed", 0, "", "", false}, {pantry.Ingredient{}, "1 cup", "", 0, "", "", false},
		{pantry.Ingredient{Class: "fruit", CupForm: "sliced", CupG: 0, Cup2G: 3, Cup2Form: "chopped"}, "1 cup", "sliced", 0, "", "", false},
	} {
		m, ok := household(x.row, unit.Quantity{Text: x.text}, x.words)
		if ok != (x.grams != 0) || m.grams != x.grams || m.name != x.name || m.form != x.form || (m.assumed != "") != x.assumed {
			t.Errorf("%s %q of %+v: %+v, %v", x.text, x.words, x.row, m, ok)
		}
	}
}

// A count without a size, a piece that nobody can weigh and a measure the table
// has no spoon for are asked about, and weigh nothing.
func TestCountsThatWeighNothing(t *testing.T) {
	row := func(g pantry.Ingredient) Line { g.Key = "x"; return Line{Name: "x", Key: "x", Row: g} }
	for _, x := range []struct {
		ln    Line
		n     float64
		piece string
		want  float64
	}{
		{row(pantry.Ingredient{PieceG: 100}), 2, "", 200}, {row(pantry.Ingredient{PieceG: 100}), 0.5, "", 50}, {row(pantry.Ingredient{PieceG: 0.5}), 2, "", 1}, {row(pantry.Ingredient{PieceG: 100}), 0, "", 0}, {row(pantry.Ingredient{PieceG: 100}), -1, "", 0},
		{row(pantry.Ingredient{}), 2, "", 0}, {row(pantry.Ingredient{TspG: 5}), 2, "pinch", 2 * 5 * 0.308 / unit.Teaspoon.ML()}, {row(pantry.Ingredient{}), 2, "pinch", 0}, {row(pantry.Ingredient{}), 2, "stone", 2 * 6350.3},
		{row(pantry.Ingredient{PieceG: 356, PieceForm: "can or bottle"}), 2, "cans", 712}, {row(pantry.Ingredient{PieceG: 356, PieceForm: "can or bottle"}), 2, "tins", 0}, {row(pantry.Ingredient{PieceForm: "can"}), 2, "cans", 0},
	} {
		c := &calc{p: pantry.Default()}
		c.byCount(&x.ln, batch.Ingredient{Amount: unit.Quantity{Count: x.n, Piece: x.piece, Dim: unit.ByCount}})
		if got := x.ln.Mass.Grams(); got-x.want > 1e-6 || x.want-got > 1e-6 || (len(c.l) == 0) != (x.want > 0) || x.ln.Estimated != (x.want > 0) {
			t.Errorf("%g %q of %+v: %g g, want %g; %s", x.n, x.piece, x.ln.Row, got, x.want, codesOf(c.l))
		}
	}
	for v, told := range map[float64]bool{0: true, -1: true, 0.5: false} {
		c := &calc{}
		ln := row(pantry.Ingredient{CupG: 100})
		c.byVolume(&ln, batch.Ingredient{Amount: unit.Quantity{Text: "x cups", Volume: unit.ML(v), Dim: unit.ByVolume}})
		if has(c.l, "no-kitchen-measure") != told {
			t.Errorf("%g ml: %s", v, codesOf(c.l))
		}
	}
}

// A counted word that is neither is told once and weighs nothing; a dozen is a number.
func TestOddPieces(t *testing.T) {
	for amount, hint := range map[string]string{"2 furlongs": "write a weight (1.8 kg), cups or spoons, or only the number: one is taken as ", "1.3 dozen": "write the number: 12 for a dozen", "2 large": "", "2 pinches": ""} {
		ln, l := oneLine(t, "strawberries", amount, "")
		var hints []string
		for _, d := range l {
			if d.Severity == diag.Error {
				hints = append(hints, d.Hint)
			}
		}
		if hint == "" && amount == "2 large" && (len(hints) > 0 || ln.Mass <= 0) || hint != "" && (len(hints) != 1 || !strings.HasPrefix(hints[0], hint) || ln.Mass != 0) {
			t.Errorf("%s: %d g, %q", amount, ln.Mass/unit.Gram, hints)
		}
	}
	for words, want := range map[string]string{"": "", "a": "a", "a b": "a or b", "a b c": "a, b or c"} {
		if got := Either(strings.Fields(words)); got != want {
			t.Errorf("%q", got)
		}
	}
	for _, x := range []struct {
		amount  unit.Quantity
		grams   float64
		counted bool
	}{
		{unit.Quantity{Dim: unit.ByMass, Mass: 3 * unit.Gram}, 3, false}, {unit.Quantity{Dim: unit.ByVolume, Volume: unit.ML(4)}, 4, false}, {unit.Quantity{Dim: unit.ByCount, Piece: "pinch"}, 1, false}, {unit.Quantity{Dim: unit.ByCount, Piece: "stone"}, 1, false},
		{unit.Quantity{Dim: unit.ByCount, Piece: "can"}, 0, true}, {unit.Quantity{Dim: unit.ByCount}, 0, true},
	} {
		if g, counted := (&calc{p: pantry.Default()}).roughly(batch.Ingredient{Amount: x.amount}); g != x.grams || counted != x.counted {
			t.Errorf("%+v: %g, %v", x.amount, g, counted)
		}
	}
	same := sortedByMass([]Line{{Name: "a", Mass: 1}, {Name: "b", Mass: 2}, {Name: "c", Mass: 1}, {Name: "d", Mass: 2}})
	if got := same[0].Name + same[1].Name + same[2].Name + same[3].Name; got != "bdac" {
		t.Errorf("21 CFR 101.4(a)(1), ties in file order: %s", got)
	}
}
