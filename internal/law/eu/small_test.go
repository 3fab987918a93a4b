package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// What the sale mode does not ask for warns, on gifts it is a note.
func TestMissingParticulars(t *testing.T) {
	for _, x := range []struct {
		ppds, gift bool
		want       string
	}{{false, false, "error"}, {false, true, "note"}, {true, false, "warning"}, {true, true, "note"}} {
		e := tester(t, "gb", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.ppds, e.O.Gift = x.ppds, x.gift
		if d := e.missing("no-lot", label.Date, "lot", "x"); d.Severity.String() != x.want {
			t.Errorf("missing %+v: %s", x, d.Severity)
		}
		e.L = nil
		e.pending("no-net", label.Date, "fill", "to come", "missing", "hint", "cite")
		if d := e.L[0]; d.Severity.String() != x.want || d.Hint != "hint" || d.Cite != "cite" {
			t.Errorf("pending %+v: %+v", x, d)
		}
	}
}

// The net quantity is prescribed words; a volume is none, weighed or not declared.
func TestNetIsExact(t *testing.T) {
	e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
	e.net()
	if b, _ := e.C.Find(label.Net); !b.Exact || b.Min.On != label.Digit || len(b.With) != 1 {
		t.Errorf("%+v", b)
	}
	for v, code := range map[unit.Volume]string{1: "net-by-weight", 0: "no-net"} {
		jar := cylinder(68, 60, 0)
		jar.DeclVolume, jar.DeclText = v, "x"
		e := tester(t, "eu", "en", after, batchA1(62), jar)
		if e.net(); codes(e.L) != "error:"+code {
			t.Errorf("%v: %s", v, codes(e.L))
		}
	}
}

// Nothing says that there are no allergens where one is found, may be, or is
// handled in the same kitchen.
func TestWhenThereAreNoAllergens(t *testing.T) {
	for _, x := range []struct {
		also []string
		add  []in
		want bool
	}{{nil, nil, true}, {[]string{"almonds"}, nil, false}, {nil, []in{{key: "butter", name: "butter", g: 5, own: []string{"milk"}}}, false},
		{nil, []in{{key: "apricot_dried", name: "dried apricots", g: 50, row: &pantry.Ingredient{Key: "apricot_dried", Name: "dried apricots", Class: "dried fruit", SulphiteCheck: true}}}, false}} {
		r := cooked(batch.Spread, "Spread", 1000, 62, append([]in{tableIn(t, "strawberry", 600), tableIn(t, "sugar_white", 500)}, x.add...)...)
		r.Kitchen.AlsoHandles = x.also
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		e.begin()
		e.list()
		if e.C.NoAllergens != x.want {
			t.Errorf("%+v: %v, %v", x, e.C.NoAllergens, codes(e.L))
		}
	}
}

// An unknown jar takes the larger letters, and says so.
func TestUnknownJarIsTold(t *testing.T) {
	for _, x := range []struct {
		jar  cook.JarPlan
		want bool
	}{{cylinder(68, 60, 340), false}, {cook.JarPlan{}, true}} {
		e := tester(t, "eu", "en", after, batchA1(62), x.jar)
		if e.begin(); strings.Contains(codes(e.L), "jar-not-measured") != x.want {
			t.Errorf("%v: %s", x.want, codes(e.L))
		}
	}
}

// An unknown ingredient of a fiftieth of the batch or more hides the fruit
// content; of less it does not.
func TestUnknownShare(t *testing.T) {
	for g, want := range map[float64]bool{19: true, 19.9: true, 20: false, 21: false} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 900, 62, tableIn(t, "strawberry", 500), in{key: "sugar_white", name: "sugar", g: 500 - g, kind: "sweetener"}, in{name: "moon dust", g: g}), cylinder(68, 60, 340))
		if got := e.fruitKnown(); got != want {
			t.Errorf("%v g of 1000: %v", g, got)
		}
	}
}

// Figures of 1 g and 1 % are figures; 0 is none, nor is a reading above 100.
func TestSmallestFigures(t *testing.T) {
	for yield, want := range map[float64]string{50_000: "prepared with 1 g of fruit per 100 g", 50_001: ""} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", yield, 62, tableIn(t, "strawberry", 500)), cylinder(68, 60, 340))
		if e.fruit(); textOf(e, label.Fruit) != want {
			t.Errorf("%v: %q", yield, textOf(e, label.Fruit))
		}
	}
	for brix, want := range map[float64]bool{1: true, 0.6: true, 100: true, 100.1: false, 0.4: false} {
		e := tester(t, "eu", "en", before, batchA1(brix), cylinder(68, 60, 340))
		if e.sugar(); (textOf(e, label.Sugar) != "") != want {
			t.Errorf("%v °Brix: %q", brix, textOf(e, label.Sugar))
		}
	}
}

// Without a yield, what went in stands for the finished food.
func TestFinishedWithoutAYield(t *testing.T) {
	e := tester(t, "eu", "en", after, cooked(batch.Jam, "x", 0, 62, tableIn(t, "strawberry", 500)), cylinder(68, 60, 340))
	if e.finished() != 500*unit.Gram || e.quidBase() != 500*unit.Gram {
		t.Errorf("%v %v", e.finished(), e.quidBase())
	}
	e = tester(t, "eu", "en", after, cooked(batch.Jam, "x", 400, 62, tableIn(t, "strawberry", 500)), cylinder(68, 60, 340))
	if e.finished() != 400*unit.Gram {
		t.Error(e.finished())
	}
}

// E numbers of three and four figures with a letter at most; words that begin
// alike are none.
func TestENumberLengths(t *testing.T) {
	for text, want := range map[string]string{"E 1442": "1442", "E1442a": "1442a", "E 12345": "", "E 12": "", "Eis": "", "elderberry": "", "E150d": "150d", "e150dd": ""} {
		if got := eNumber(text); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// Citrus for souring below a tenth of the fruit is no fruit of the jam; a tenth is.
func TestATenthOfCitrus(t *testing.T) {
	for lemon, want := range map[float64]int{99: 1, 100: 2} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "x", 1000, 62, tableIn(t, "strawberry", 1000-lemon), tableIn(t, "lemon", lemon)), cylinder(68, 60, 340))
		if len(e.fruits) != want {
			t.Errorf("%v g of 1000: %d fruits", lemon, len(e.fruits))
		}
	}
}

// Annex III 2.4: more than 10 % of added polyols.
func TestPolyols(t *testing.T) {
	for g, want := range map[float64]bool{100: false, 101: true} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, "Spread", 1000, 40, tableIn(t, "strawberry", 900), in{name: "xylitol", g: g}), cylinder(68, 60, 340))
		e.sweeteners()
		found := false
		for _, b := range e.C.Blocks {
			found = found || b.ID == "laxative"
		}
		if found != want {
			t.Errorf("%v g in 1000: %v", g, found)
		}
	}
}

// A jelly whose notes weigh fruit is told that it counts juice; one of juice is not.
func TestJellyCountsJuice(t *testing.T) {
	for key, want := range map[string]bool{"redcurrant": true, "apple_juice": false} {
		e := tester(t, "eu", "en", after, cooked(batch.Jelly, "x", 1000, 62, tableIn(t, key, 600)), cylinder(68, 60, 340))
		if e.judgeFruit(); strings.Contains(codes(e.L), "jelly-counts-juice") != want {
			t.Errorf("%s: %s", key, codes(e.L))
		}
	}
}

// An unsealed jar has words of its own where days are known.
func TestUnsealedWords(t *testing.T) {
	for days, want := range map[int]bool{0: false, 3: true} {
		r := batchA1(62)
		r.Keeping.UnsealedDays = days
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if e.storage(); (e.C.Keep.Unsealed != "") != want {
			t.Errorf("%d days: %q", days, e.C.Keep.Unsealed)
		}
	}
}

// Annex V(18): packages of which the largest surface is below 25 cm².
func TestNutritionBySurface(t *testing.T) {
	for mm2, want := range map[float64]bool{2490: true, 2510: false} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(mm2/50/3.141592653589793, 50, 340))
		e.closing()
		if got := strings.Contains(e.L[0].Cite, "Annex V(18)"); got != want {
			t.Errorf("%v mm²: %v", mm2, e.L[0])
		}
	}
}

// Quantities rest on the yield: an estimate is told where one is printed.
func TestEstimatedQuantities(t *testing.T) {
	for name, want := range map[string]bool{"Plum spread with walnuts": true, "Plum spread": false} {
		r := cooked(batch.Spread, name, 900, 50, in{key: "plum", name: "plums", g: 800, kind: "vegetable"}, tableIn(t, "walnut", 100))
		r.Yield.How = cook.Estimated
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		e.product.Due = nil
		words := e.quid()
		if got := strings.Contains(codes(e.L), "quid-estimated"); got != (len(words) > 0) || want && !got {
			t.Errorf("%s: %v %s", name, words, codes(e.L))
		}
	}
}

// Shares are whole from 5 %, below with one decimal, no ",0" (guidance on QUID).
func TestPercentWords(t *testing.T) {
	for p, want := range map[float64]string{4.94: "4,9 %", 4.04: "4 %", 5: "5 %", 5.5: "6 %", 12.4: "12 %", 0.25: "0,3 %"} {
		if got := strings.ReplaceAll(percent(p, ","), nbsp, " "); got != want {
			t.Errorf("%v: %q, want %q", p, got, want)
		}
	}
}

// Components copied off an English packet are in the label's language.
func TestPartsInTheLanguage(t *testing.T) {
	for lang, want := range map[string]string{"de": "(Wasser, Zitronensaftkonzentrat, Honig, Bergtee)", "fr": "(eau, jus de citron concentré, miel, Bergtee)"} {
		r := cooked(batch.Spread, "x", 1000, 50, in{name: "Mischung", g: 100, parts: []pantry.Part{{Name: "water"}, {Name: "lemon juice concentrate"}, {Name: "honey"}, {Name: "Bergtee"}}})
		e := tester(t, "eu", lang, after, r, cylinder(68, 60, 340))
		if got := marked(e.listRuns(nil)); !strings.Contains(got, want) {
			t.Errorf("%s: %s", lang, got)
		}
	}
}
