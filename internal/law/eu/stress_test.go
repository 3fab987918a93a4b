package eu

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// Annex VIII (1)(a)(iii), (2)(a): no quantity of what flavours in small amounts, nor of
// a sweetener told of beside the name; of all else the name says, the smallest share.
func TestWhatNeedsAQuantity(t *testing.T) {
	for _, x := range []struct {
		given in
		want  bool
	}{
		{in{name: "quirk", g: 19, kind: "spice"}, false}, {in{name: "quirk", g: 19, kind: "flavour"}, false}, {in{name: "quirk", g: 19, kind: "herb"}, false}, {in{name: "quirk", g: 19, kind: "acid"}, false}, {in{name: "quirk", g: 19, kind: "seed"}, false},
		{in{name: "quirk", g: 20, kind: "seed"}, true}, {in{name: "quirk", g: 1, kind: "nut"}, true}, {in{name: "quirk", g: 1, kind: "alcohol"}, true}, {in{name: "quirk", g: 1, kind: "fruit"}, true}, {in{name: "quirk", g: 1}, true}, {in{name: "quirk", g: 500, kind: "water"}, false},
		{in{name: "xylitol", g: 100}, false}, {in{name: "pectin", g: 100}, true},
	} {
		r := cooked(batch.Spread, "Spread with quirk, pectin and xylitol", 1000, 50, in{key: "plum", name: "plums", g: 1000, kind: "vegetable"}, x.given)
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if got := len(e.quotas()) == 1; got != x.want {
			t.Errorf("%g g of %s, a %s: %v", x.given.g, x.given.name, x.given.kind, e.quotas())
		}
	}
	e := tester(t, "eu", "en", after, cooked(batch.Spread, "Plum spread", 0, 50, in{key: "plum", name: "plums", kind: "vegetable"}), cylinder(68, 60, 340))
	if got := e.quotas(); got != nil {
		t.Errorf("of nothing: %v", got)
	}
}

// "hergestellt aus" takes the dative: adjectives and nouns of many end in n, but for
// those in s; names of no plural stay, as do a maker's own words and other languages.
func TestDative(t *testing.T) {
	for _, x := range []struct{ lang, key, name, want string }{
		{"de", "blackcurrant", "", "schwarzen Johannisbeeren"}, {"de", "apple", "", "Äpfeln"}, {"de", "apple_dried", "", "getrockneten Äpfeln"}, {"de", "tomato", "", "Tomaten"}, {"de", "kiwi", "", "Kiwis"},
		{"de", "rhubarb", "", "Rhabarber"}, {"de", "", "Holzäpfel", "Holzäpfel"}, {"en", "apple", "", "apples"}, {"fr", "apple", "", "de pommes"}, {"fr", "orange", "", "d’oranges"},
	} {
		given := in{name: x.name, g: 500}
		if x.key != "" {
			given = tableIn(t, x.key, 500)
		}
		e := tester(t, "eu", x.lang, after, cooked(batch.Spread, "x", 1000, 50, given), cylinder(68, 60, 340))
		if got := e.dative(e.R.Lines[0]); got != x.want {
			t.Errorf("%s %s%s: %q, want %q", x.lang, x.key, x.name, got, x.want)
		}
	}
}

// A kind of its own is told by the row, a fruit also by its class of Annex I, and "none"
// is no class.
func TestFormOfAnIngredient(t *testing.T) {
	for _, x := range []struct {
		name, kind, class string
		fruit             bool
		want              string
	}{{"plums", "", "general", false, "fruit"}, {"plums", "", "none", false, ""}, {"plums", "", "", false, ""}, {"plums", "", "", true, "fruit"}, {"plums", "fruit", "none", false, "fruit"}, {"plum juice", "fruit", "general", true, "juice"}, {"plum juice", "spice", "", false, "spice"}, {"nectarines", "", "", true, "fruit"}} {
		r := cooked(batch.Jam, "x", 1000, 50, in{name: x.name, g: 100, kind: x.kind, class: x.class})
		r.Lines[0].IsFruit = x.fruit
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if got := e.form(e.R.Lines[0]); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

// Regulation (EU) 1169/2011 Art 44: a place without rules of its own for what is packed
// for direct sale asks all of it (Germany), one with rules what they name.
func TestPackedForDirectSale(t *testing.T) {
	for set, want := range map[string]bool{"de": true, "gb": false} {
		e := tester(t, set, rulesOf(t, set).Languages[0], after, batchA1(62), cylinder(68, 60, 340))
		e.ppds = true
		if got := e.required(label.Lot); got != want {
			t.Errorf("%s asks a lot: %v", set, got)
		}
		if e.law.PPDS = []string{string(label.Identity)}; e.required(label.Lot) || !e.required(label.Identity) {
			t.Errorf("%s with one particular: lot %v, name %v", set, e.required(label.Lot), e.required(label.Identity))
		}
	}
}

// A list of the finished weight or what went in, whichever is less.
func TestSharesAreOfTheLesserWeight(t *testing.T) {
	for yield, want := range map[float64]float64{900: 900, 1100: 1000, 1000: 1000, 0: 1000} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, "x", yield, 50, in{name: "plums", g: 1000}), cylinder(68, 60, 340))
		if got := e.quidBase(); got != unit.Grams(want) {
			t.Errorf("%g g of 1000 g: %v", yield, got)
		}
	}
}
