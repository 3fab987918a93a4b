package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// curdOf is a lemon curd that keeps so many days in the cold.
func curdOf(t *testing.T, days int, list ...in) *pass {
	r := cooked(batch.Curd, "Lemon curd", 1000, 66, list...)
	r.BestBefore, r.Keeping.Class = r.Batch.Made.AddDays(days), cook.Cold
	e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
	e.perishable()
	return e
}

// Art 24(1): asked of eggs and of milk, each alone, up to a month (common
// practice, no source), and of nothing else.
func TestUseByIsAskedOfEggsAndMilk(t *testing.T) {
	for key, want := range map[string]string{"butter": "of butter", "egg": "egg", "lemon juice": "", "sugar": ""} {
		e := curdOf(t, 31, tabled(t, "en", "lemon juice", 150), tabled(t, "en", key, 150))
		if asked := len(e.L) == 1; asked != (want != "") || asked && !strings.Contains(strings.ToLower(e.L[0].Message), want) {
			t.Errorf("%s: %v", key, e.L)
		}
	}
	if e := curdOf(t, 32, tabled(t, "en", "egg", 150)); len(e.L) != 0 {
		t.Errorf("after a month: %v", e.L)
	}
}

// Art 9(1)(h): a jar sold bears name and address, a present the name alone.
func TestMakerOfAPresent(t *testing.T) {
	for name, want := range map[string]string{"Thornfield Lane Preserves": "Thornfield Lane Preserves", " ": ""} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.O, e.K.Name, e.C.Blocks = draft.Options{Gift: true}, name, nil
		if e.maker(); textOf(e, label.Maker) != want {
			t.Errorf("%q: %q", name, textOf(e, label.Maker))
		}
	}
}

// Art 25(2): how long the opened jar keeps, in weeks from a fortnight on.
func TestOpenedDays(t *testing.T) {
	for days, want := range map[int]string{0: "keep.opened", 1: "1 day", 13: "13 day", 14: "2 week", 28: "4 week"} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.R.Keeping.OpenedDays = days
		if days == 0 {
			want = e.say(want)
		}
		if e.storage(); !strings.Contains(e.C.Keep.Opened, want) {
			t.Errorf("%d days: %q", days, e.C.Keep.Opened)
		}
	}
	for days, want := range map[int]string{0: "", 1: "1", 3: "3"} { // a jar that did not seal
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.R.Keeping.UnsealedDays, e.C.Keep.Unsealed = days, ""
		if e.storage(); (e.C.Keep.Unsealed == "") != (want == "") || !strings.Contains(e.C.Keep.Unsealed, want) {
			t.Errorf("%d days: %q", days, e.C.Keep.Unsealed)
		}
	}
}

// Directive 2001/113/EC Annex I: marmalade is of citrus fruit alone, and jelly,
// as any other product, of whatever its row says.
func TestWhatAProductIsMadeOf(t *testing.T) {
	e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
	for only, want := range map[string]string{"citrus": "citrus fruit", "chestnut": "chestnut"} {
		if e.product.Only = []string{only}; e.onlyWords() != want {
			t.Errorf("%s: %s", only, e.onlyWords())
		}
	}
	// A strange lump in a product of one kind of fruit alone is unknown too.
	e = tester(t, "eu", "en", after, cooked(batch.Marmalade, "Marmalade", 1000, 62, fruitIn("orange", "oranges", 300, "general"), in{name: "moon dust", g: 300}), cylinder(68, 60, 340))
	e.product.Only = []string{"citrus"}
	if e.fruitKnown() || !strings.Contains(codes(e.L), "fruit-content-unknown") {
		t.Errorf("moon dust: %s", codes(e.L))
	}
	e.L, e.R.Lines[1].Row.Key, e.R.Lines[1].Key = nil, "lemon", "lemon" // known by its key to be citrus
	e.product.Only = []string{"lemon"}
	if !e.fruitKnown() {
		t.Errorf("a lemon: %s", codes(e.L))
	}
}

// Art 2(1): the reserved name says which kind to write.
func TestReservedNameTellsItsKind(t *testing.T) {
	e := tester(t, "gb", "en", after, cooked(batch.Chutney, "Tomato jam", 1000, 62, fruitIn("strawberry", "strawberries", 600, "general")), cylinder(68, 60, 340))
	e.L = nil
	row, _ := place.ProductNamed(mustSet(t, "gb").Products, "jam")
	row.Counts, row.ByName = row.Counts[:1], false
	e.Set.Products = []place.Product{row}
	if e.outside("Tomato jam"); len(e.L) != 1 || !strings.Contains(e.L[0].Hint, `write kind = "jam" if it is one`) {
		t.Errorf("%v", e.L)
	}
}

func mustSet(t *testing.T, id string) *place.Set {
	t.Helper()
	b, _ := testBook()
	s, l := b.Place(id, after)
	if s == nil {
		t.Fatal(l)
	}
	return s
}

// A spice of just a twentieth of the batch counts; of less it is a flavouring.
func TestSpiceFromBothSides(t *testing.T) {
	for grams, want := range map[float64]bool{49: false, 50: true, 51: true} {
		r := cooked(batch.Jam, "Apple jam", 1000, 62, fruitIn("apple", "apples", 1000-grams, "general"),
			in{key: "ginger", name: "ginger", g: grams, kind: "spice", class: "general"})
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if got := e.counts([]string{"spice"}, r.Lines[1]); got != want {
			t.Errorf("%g g: %v", grams, got)
		}
	}
}

// French says what a juice is of in the third word; a name of two is read whole.
func TestFrenchNamesOfTwoWords(t *testing.T) {
	e := tester(t, "fr", "fr", after, batchA1(62), cylinder(68, 60, 340))
	for name, want := range map[string]string{"jus citron": "jus", "jus": "jus", "jus de citron": "citro", "écorces d’orange": "orang", "citron vert": "citro", "": ""} {
		var got []string
		e.stems(name, func(s string) { got = append(got, s) })
		if strings.Join(got, " ") != want {
			t.Errorf("%q is of %q, want %q", name, got, want)
		}
	}
}

// Annex I.III: a floor from memory is told as such, wherever in the mixture.
func TestFloorsFromMemory(t *testing.T) {
	p := place.Product{Floors: []place.Floor{{Class: "general", Grams: 350, Confidence: "primary"}, {Class: "redcurrant", Grams: 250, Confidence: verifiedNot}}}
	apple, currant := share{Class: "general", Mass: unit.Kilogram}, share{Class: "redcurrant", Mass: unit.Kilogram}
	for _, x := range []struct {
		fruit  []share
		least  int
		memory bool
	}{{[]share{apple}, 350, false}, {[]share{currant}, 250, true}, {[]share{apple, currant}, 300, true}, {[]share{currant, apple}, 300, true}} {
		if least, memory := leastFruit(p, x.fruit, after); least != x.least || memory != x.memory {
			t.Errorf("%v: %d, %v", x.fruit, least, memory)
		}
	}
}

// Art 26(3): the primary ingredient is the heaviest fruit, without fruit the
// heaviest ingredient; without any there is none.
func TestPrimaryIngredient(t *testing.T) {
	onions := in{key: "onion", name: "onions", g: 600, kind: "vegetable"}
	for want, list := range map[string][]in{"Onions": {onions, {key: "sugar_white", name: "sugar", g: 300, kind: "sweetener"}}, "": nil} {
		e := tester(t, "eu", "en", after, cooked(batch.Chutney, "Chutney", 1000, 62, list...), cylinder(68, 60, 340))
		if got := e.primary(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Without fruit that counts the fruit content fails once, and is not judged too.
func TestNoFruitIsNotTooLittle(t *testing.T) {
	e := tester(t, "eu", "en", after, cooked(batch.Jam, "Jam", 1000, 62, in{key: "sugar_white", name: "sugar", g: 900, kind: "sweetener"}), cylinder(68, 60, 340))
	e.L = nil
	if e.judge(); strings.Contains(codes(e.L), "fruit") {
		t.Error(codes(e.L))
	}
}
