package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// Stock labelled before 14 June 2026 may be sold off (the Irish authority's summary of
// Directive (EU) 2024/1438, as places/eu.toml says), so a set of no day reads the rules
// of the day of making.
func TestRulesOfTheDayOfMaking(t *testing.T) {
	for _, x := range []struct {
		on, made unit.Date
		want     unit.Date
	}{{after, before, after}, {unit.Date{}, before, before}} {
		set := *mustSet(t, "eu")
		r := batchA1(62)
		set.On, r.Batch.Made = x.on, x.made
		if got := newPass(r, cylinder(68, 60, 340), &set, draft.Options{}).on; got != x.want {
			t.Errorf("set of %v, made %v: %v", x.on, x.made, got)
		}
	}
}

// Directive 2001/113/EC Art 2(3): a fruit content on an estimated yield is told to be
// one, and none of nothing is printed.
func TestFruitContentIsToldToBeEstimated(t *testing.T) {
	for _, x := range []struct {
		how   cook.How
		yield float64
		want  string
		made  bool
	}{{cook.Measured, 1000, "", true}, {cook.Estimated, 1000, "warning:fruit-estimated cook", true}, {cook.Measured, 90_000, "error:fruit-content-zero ingredient", false}} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", x.yield, 62, tableIn(t, "strawberry", 500)), cylinder(68, 60, 340))
		e.R.Yield.How = x.how
		e.L = nil
		e.fruit()
		if _, made := e.C.Find(label.Fruit); saidAt(e) != x.want || made != x.made {
			t.Errorf("%s, %g g: %s, printed %v", x.how, x.yield, saidAt(e), made)
		}
	}
	e := tester(t, "eu", "en", after, cooked(batch.Jam, "Jam", 1000, 62, tableIn(t, "sugar_white", 500)), cylinder(68, 60, 340))
	e.L = nil
	if e.fruitKnown() || saidAt(e) != "error:fruit-content-zero ingredient" {
		t.Errorf("without fruit: %s", saidAt(e))
	}
}

// Infant botulism: one spoon of honey is enough for the caution (food agencies;
// common practice, no source read), and without honey there is none.
func TestOneSpoonOfHoney(t *testing.T) {
	for key, want := range map[string]bool{"honey": true, "sugar_white": false} {
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 1000, 62, tableIn(t, "strawberry", 500), tableIn(t, key, 5)), cylinder(68, 60, 340))
		e.caution()
		if b, ok := e.C.Find(label.Caution); ok != want || want && b.Path != "ingredient[1]" {
			t.Errorf("%s: %v at %q", key, ok, b.Path)
		}
	}
}

// What a label need not say and its maker should know: whom to ask, always; what is
// unverified; why there is no nutrition declaration, but of what is packed for direct
// sale, which owes none anyway.
func TestWhatIsToldBesideTheLabel(t *testing.T) {
	for _, x := range []struct {
		ppds  bool
		words string
		want  bool
	}{{false, "small makers", true}, {true, "small makers", false}, {false, "", false}} {
		e := tester(t, "gb", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.law.Nutrition, e.law.NutritionCite, e.law.Unverified, e.ppds = x.words, "a clause", []string{"one", "two"}, x.ppds
		e.closing()
		told := codes(e.L)
		if strings.Contains(told, "note:nutrition-exemption") != x.want || strings.Count(told, "note:unverified") != 2 || strings.Count(told, "note:local-law") != 1 {
			t.Errorf("%+v: %s", x, told)
		}
		for _, d := range e.L {
			if d.Code == "nutrition-exemption" && (d.Message != x.words || d.Cite != "a clause") {
				t.Errorf("%+v", d)
			}
		}
	}
}

// FPackV s. 41: a record of the weighing is told of where a net quantity stands.
func TestDutiesOfTheNetQuantityNeedOne(t *testing.T) {
	for declared, want := range map[float64]bool{340: true, 0: false} {
		e := tester(t, "de", "de", after, batchA1(62), cylinder(68, 60, declared))
		e.net()
		e.L = nil
		e.closing()
		told := false
		for _, d := range e.L {
			told = told || d.Code == "beside-label" && strings.Contains(d.Cite, "FPackV s. 41")
		}
		if told != want {
			t.Errorf("%g g: %v", declared, told)
		}
	}
}

// Where nothing is known of how it keeps, the label says what is said of cold food.
func TestUnknownKeepingIsCold(t *testing.T) {
	for class, key := range map[cook.Class]string{"": "keep.refrigerated", cook.Cold: "keep.refrigerated", cook.Shelf: "keep.shelf", cook.Freezer: "keep.freezer"} {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
		e.R.Keeping.Class = class
		e.storage()
		if want := e.say(key); e.C.Keep.Sealed != want || !strings.HasPrefix(textOf(e, label.Storage), want) {
			t.Errorf("%q: %q, want %q", class, e.C.Keep.Sealed, want)
		}
	}
}

// Art 36: what else the kitchen handles is said of what the batch does not hold, and
// where there is nothing to say no line stands.
func TestWhatTheKitchenHandlesToo(t *testing.T) {
	for _, x := range []struct {
		also []string
		want string
	}{{nil, ""}, {[]string{"almonds"}, "almonds"}, {[]string{"milk"}, ""}, {[]string{"milk", "almonds", "sesame"}, "almonds and sesame"}} {
		r := cooked(batch.Spread, "Spread", 1000, 62, tableIn(t, "strawberry", 600), in{key: "butter", name: "butter", g: 5, own: []string{"milk"}})
		r.Kitchen.AlsoHandles = x.also
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		e.begin()
		e.advisory()
		got := textOf(e, label.Advisory)
		if b, ok := e.C.Find(label.Advisory); ok != (x.want != "") || !strings.Contains(got, x.want) || ok && (b.Path != "also_handles" || strings.Contains(got, "milk")) {
			t.Errorf("%v: %q", x.also, got)
		}
	}
}

// Art 9(1)(h), Art 8(1): whose address a place asks stands in the hint.
func TestWhoseAddress(t *testing.T) {
	for _, set := range []string{"gb", "ni", "de"} {
		r := batchA1(62)
		r.Kitchen.Address = nil
		e := tester(t, set, "en", after, r, cylinder(68, 60, 340))
		e.law.Address = "an address there"
		e.maker()
		if d := e.L[len(e.L)-1]; d.File != "kitchen.toml" || d.Path != "address" || !strings.Contains(d.Hint, "an address there") {
			t.Errorf("%s: %+v", set, d)
		}
	}
}
