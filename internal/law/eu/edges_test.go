package eu

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Directive 2001/113/EC Annex I.II: 60 % or more of soluble dry matter; a
// reading nobody took only warns, no reading says nothing.
func TestSolidsFromBothSides(t *testing.T) {
	for _, x := range []struct {
		brix, least float64
		more        bool
		how         string
		want        string
	}{
		{60, 60, false, string(cook.Measured), ""}, {59.9, 60, false, string(cook.Measured), "error:solids-too-low cook.brix"},
		{60, 60, true, string(cook.Measured), "error:solids-too-low cook.brix"}, {60.1, 60, true, string(cook.Measured), ""},
		{59.9, 60, false, string(cook.Estimated), "warning:solids-too-low cook"}, {0, 60, false, string(cook.Measured), ""},
		{0.5, 60, false, string(cook.Measured), "error:solids-too-low cook.brix"}, {math.NaN(), 60, false, string(cook.Measured), ""},
	} {
		e := tester(t, "eu", "en", after, batchA1(60), cylinder(68, 60, 340))
		rule := *e.product.Solids
		rule.Least, rule.More = x.least, x.more
		e.product.Solids, e.R.Brix.Value = &rule, x.brix
		setWord(&e.R.Brix.How, x.how)
		e.L = nil
		e.judgeSolids()
		if got := saidAt(e); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

func setWord[T ~string](to *T, s string) { *to = T(s) }

func saidAt(c *pass) string {
	var out []string
	for _, d := range c.L {
		out = append(out, d.Severity.String()+":"+d.Code+" "+d.Path)
	}
	return strings.Join(out, ", ")
}

// A range for "reduced sugar" holds at both its ends, and only where the name
// claims it; where the rules on claims let it, it is told what they ask
// (Regulation (EC) 1924/2006 Annex).
func TestReducedSugarRange(t *testing.T) {
	for _, x := range []struct {
		name     string
		brix     float64
		from, to float64
		reduced  bool
		want     bool
		code     string
	}{
		{"Reduced sugar strawberry jam", 24.9, 25, 50, false, false, ""}, {"Reduced sugar strawberry jam", 25, 25, 50, false, true, ""},
		{"Reduced sugar strawberry jam", 50, 25, 50, false, true, ""}, {"Reduced sugar strawberry jam", 50.1, 25, 50, false, false, ""},
		{"Strawberry jam", 30, 25, 50, false, false, ""}, {"Strawberry jam", 30, 0, 0, true, false, ""},
		{"Reduced sugar strawberry jam", 0.5, 0.2, 0.7, true, true, ""},
		{"Reduced sugar strawberry jam", 30, 0, 0, true, true, "warning:reduced-sugar-claim name"}, {"Reduced sugar strawberry jam", 30, 0, 0, false, false, ""},
	} {
		e := tester(t, "eu", "en", after, batchA1(60), cylinder(68, 60, 340))
		e.B.Name, e.L = x.name, nil
		rule := &place.SolidsRule{ReducedFrom: x.from, ReducedTo: x.to, Reduced: x.reduced}
		if got := e.reducedSugar(rule, x.brix); got != x.want || saidAt(e) != x.code {
			t.Errorf("%+v: %v, %q", x, got, saidAt(e))
		}
	}
}

// A figure on the label is read back: the first whole number of the text.
func TestFirstNumber(t *testing.T) {
	for text, want := range map[string]int64{"": -1, "no figure": -1, "0": 0, "9": 9, "62 g": 62, "mit 45 g je 100 g": 45, "a7": 7, "909090": 909090, "99999999999999999999": -1, "12.5": 12} {
		if got := firstNumber(text); got != want {
			t.Errorf("%q: %d, want %d", text, got, want)
		}
	}
}

// What is printed for sugar and fruit must be what a second reckoning gives, and
// never nought.
func TestRecheckFindsAWrongFigure(t *testing.T) {
	for _, x := range []struct {
		brix  float64
		text  string
		wrong bool
	}{{62, "62 g", false}, {62, "61 g", true}, {62, "63 g", true}, {61.5, "62 g", false}, {61.4, "61 g", false}, {99.45, "99 g", false}, {99.5, "100 g", false}, {61.4995, "61 g", false}, {0, "0 g", true}, {62, "none", true}} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.R.Brix.Value, e.L = x.brix, nil
		e.C.Blocks = []label.Block{{Kind: label.Sugar, Path: "cook.brix", Runs: []label.Run{{Text: x.text}}}}
		e.recheck(label.Sugar)
		want := ""
		if x.wrong {
			want = "error:figure-wrong cook.brix"
		}
		if got := saidAt(e); got != want {
			t.Errorf("%v as %q: %q", x.brix, x.text, got)
		}
	}
	e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
	e.C.Blocks, e.L = nil, nil
	if e.recheck(label.Fruit); saidAt(e) != "" {
		t.Error(saidAt(e))
	}
}

// Art 2(3): grams of fruit per 100 g of the finished product, rounded down; more
// than the numbers hold is no figure.
func TestFruitAgain(t *testing.T) {
	for _, x := range []struct {
		fruit, yield float64
		want         int64
	}{{500, 1000, 50}, {509.9, 1000, 50}, {510, 1000, 51}, {1500, 1000, 150}, {0, 1000, 0}} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", x.yield, 62, tableIn(t, "strawberry", x.fruit), tableIn(t, "sugar_white", 500)), cylinder(68, 60, 340))
		if got := e.fruitAgain(); got != x.want {
			t.Errorf("%v in %v: %d, want %d", x.fruit, x.yield, got, x.want)
		}
	}
	e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 0, 62, tableIn(t, "strawberry", 500)), cylinder(68, 60, 340))
	e.R.Lines[0].Mass = math.MaxInt64
	for yield, want := range map[unit.Mass]int64{1: -1, 49: -1, 50: 1 << 62, 100 << 20: (math.MaxInt64) / (1 << 20)} {
		if e.R.Yield.Mass = yield; e.fruitAgain() != want {
			t.Errorf("all there is in %d ng: %d, want %d", yield, e.fruitAgain(), want)
		}
	}
}

// Regulation (EU) 1169/2011 Annex VIII (4)(a): shares are of the finished weight
// where moisture was lost, else of all that went in.
func TestQuidBase(t *testing.T) {
	for _, x := range []struct{ yield, input, want unit.Mass }{{0, 10, 10}, {-1, 10, 10}, {1, 10, 1}, {9, 10, 9}, {10, 10, 10}, {11, 10, 10}, {5, 0, 0}} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.R.Yield.Mass, e.R.Input = x.yield, x.input
		if got := e.quidBase(); got != x.want || x.want == 0 && e.quotas() != nil {
			t.Errorf("%+v: %v", x, got)
		}
	}
}

// Annex VIII (1)(a)(iii): what flavours in a small amount, below 2 % here, needs
// no quantity; 2 % does, and what is no flavouring does at any share.
func TestSmallAmountsThatFlavour(t *testing.T) {
	for _, x := range []struct {
		kind string
		g    float64
		want bool
	}{{"spice", 19.9, false}, {"spice", 20, true}, {"herb", 19.9, false}, {"nut", 1, true}, {"alcohol", 1, true}} {
		r := cooked(batch.Spread, "Plum ginger spread", 1000, 50, in{key: "plum", name: "plums", g: 1200, kind: "vegetable"}, in{name: "ginger", g: x.g, kind: x.kind})
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		got := false
		for _, q := range e.quotas() {
			got = got || q.line.Name == "ginger"
		}
		if got != x.want {
			t.Errorf("%v g of a %s in 1000: %v", x.g, x.kind, got)
		}
	}
}

// A total of 100 % stands as percentages; above it the words are grams per 100 g
// of the finished product (Annex VIII (4)(a)).
func TestQuidAboveAHundred(t *testing.T) {
	for plums, statement := range map[float64]bool{1000: false, 1001: true} {
		r := cooked(batch.Spread, "Plum spread", 1000, 50, in{key: "plum", name: "plums", g: plums, kind: "vegetable"}, tableIn(t, "sugar_white", 500))
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		words := e.quid()
		b, ok := textBlock(e, "quid")
		if ok != statement || (len(words) == 1) == statement || ok && !strings.Contains(b.Text(), "100") {
			t.Errorf("%v g: %v, %v", plums, words, b.Text())
		}
	}
}

func textBlock(c *pass, id string) (label.Block, bool) {
	for _, b := range c.C.Blocks {
		if b.ID == id {
			return b, true
		}
	}
	return label.Block{}, false
}

// French elides "de" before a vowel and a mute h, with an accent too.
func TestOfFruit(t *testing.T) {
	for n, want := range map[string]string{"abricots": "d’abricots", "fraises": "de fraises", "oranges": "d’oranges", "églantines": "d’églantines", "": "de ", "zestes": "de zestes"} {
		if got := ofFruit(n); got != want {
			t.Errorf("%q: %q", n, got)
		}
	}
}

// Annex I: an additive off the list of the product is not allowed; one for lean
// products is doubtful at the least of the solids, and fits below it.
func TestAdditivesOfTheProduct(t *testing.T) {
	for _, x := range []struct {
		numbers, lean []string
		brix          float64
		want          string
	}{
		{nil, nil, 62, ""}, {[]string{"440"}, nil, 62, ""}, {[]string{"330"}, nil, 62, "error:ingredient-not-allowed ingredient[3]"},
		{[]string{"330"}, []string{"440"}, 60, "warning:ingredient-doubtful ingredient[3]"}, {[]string{"330"}, []string{"440"}, 59.9, ""},
		{[]string{"330"}, []string{"440"}, 0, "warning:ingredient-doubtful ingredient[3]"}, {[]string{"330"}, []string{"440"}, 0.5, ""},
	} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		rule := *e.product.Solids
		rule.Least = 60
		e.product.Solids, e.product.Numbers, e.product.Lean, e.R.Brix.Value, e.L = &rule, x.numbers, x.lean, x.brix, nil
		e.judgeAdditive(e.R.Lines[3])
		if got := saidAt(e); !strings.HasPrefix(got, x.want) || (got == "") != (x.want == "") {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

// Regulation (EU) 1169/2011 Art 16(2): below 10 cm² of the largest surface the
// list may be given otherwise, and that is told; Art 21(1): what would stand out
// in it then stands after "Contains".
func TestTinyPackIsTold(t *testing.T) {
	for mm2, tiny := range map[float64]bool{999: true, 1001: false} {
		for _, milk := range []bool{false, true} {
			r := batchA1(62)
			if milk {
				r = cooked(batch.Spread, "Spread", 1000, 62, tableIn(t, "strawberry", 600), in{key: "butter", name: "butter", g: 5, own: []string{"milk"}})
			}
			e := tester(t, "eu", "en", after, r, cylinder(mm2/50/math.Pi, 50, 20))
			e.L = nil
			e.list()
			_, listed := e.C.Find(label.Ingredients)
			_, contains := e.C.Find(label.Allergens)
			if listed == tiny || contains != (tiny && milk) || strings.Contains(saidAt(e), "note:tiny-pack fill[0]") != tiny {
				t.Errorf("%v mm², milk %v: list %v, contains %v, %s", mm2, milk, listed, contains, saidAt(e))
			}
		}
	}
}
