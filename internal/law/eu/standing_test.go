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

// besideName says of each statement of a label whether it must share a field of
// view with the name of the food.
func besideName(c *pass) map[string]bool {
	out := map[string]bool{}
	for _, b := range c.C.Blocks {
		out[b.ID] = len(b.With) == 1 && b.With[0] == label.Identity
	}
	return out
}

// Regulation (EU) 1169/2011 Annex III 2.1 and 2.2: the words "shall accompany the
// name of the food". 2.3 and 2.4 say nothing of where. Directive 2001/113/EC Art
// 2(3) with Regulation 1169/2011 Art 13(5): the quantity shares a field of vision
// with the name.
func TestWhatAccompaniesTheName(t *testing.T) {
	for _, sugars := range []bool{false, true} {
		list := []in{tabled(t, "en", "strawberries", 500), tabled(t, "en", "erythritol", 150), unknownIn("E 951", 1)}
		if sugars {
			list = append(list, tabled(t, "en", "sugar", 200))
		}
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 1000, 40, list...), cylinder(68, 60, 340))
		e.sweeteners()
		e.net()
		for id, want := range map[string]bool{"sweeteners": true, "phenylalanine": false, "laxative": false, "net": true} {
			if got, ok := besideName(e)[id]; !ok || got != want {
				t.Errorf("sugars %v, %s: there %v, beside the name %v", sugars, id, ok, got)
			}
		}
	}
}

// Every prescribed sentence stands as it is written: dates and lot marks by Annex X
// and Directive 2011/91/EU Art 3, the sentences of Annex III, the fruit content.
func TestPrescribedWordsAreExact(t *testing.T) {
	r := cooked(batch.Jam, "Strawberry jam", 1000, 62, tabled(t, "en", "strawberries", 500), tabled(t, "en", "erythritol", 150))
	e := tester(t, "eu", "en", before, r, cylinder(68, 60, 340))
	e.declare()
	for _, id := range []string{"net", "fruit", "sugar", "date", "lot", "sweeteners", "laxative"} {
		if b, ok := textBlock(e, id); !ok || !b.Exact {
			t.Errorf("%s: there %v, exact %v", id, ok, b.Exact)
		}
	}
	if b, _ := e.C.Find(label.Ingredients); b.Exact {
		t.Error("the list is the maker's own words")
	}
}

// Annex II no. 8 names its nuts one by one, and Art 21(1)(a) wants the name of the
// substance: a group is no answer, in the batch and of what else is handled.
func TestAGroupOfAnnexIIIsAskedAbout(t *testing.T) {
	for word, want := range map[string]bool{"tree nuts": true, "almonds": false} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, "Plum spread", 1000, 62, in{name: "paste", g: 100, own: []string{word}}), cylinder(68, 60, 340))
		if e.begin(); strings.Contains(codes(e.L), "error:name-the-species") != want {
			t.Errorf("%s in the paste: %s", word, codes(e.L))
		}
		r := cooked(batch.Spread, "Plum spread", 1000, 62, tabled(t, "en", "plums", 500))
		r.Kitchen.AlsoHandles = []string{word}
		e = tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if e.begin(); strings.Contains(codes(e.L), "error:name-the-species") != want {
			t.Errorf("%s handled: %s", word, codes(e.L))
		}
	}
}

// Annex II no. 8 does not name pine nuts. What the maker calls an allergen beyond the
// list stands out all the same, and is told wherever allergens are.
func TestAnAllergenBeyondAnnexII(t *testing.T) {
	for _, own := range [][]string{nil, {"pine nuts"}} {
		e := tester(t, "eu", "en", after, cooked(batch.Spread, "Plum spread", 1000, 62, in{key: "pine_nut", name: "pine nuts", g: 100, own: own}), cylinder(68, 60, 340))
		e.begin()
		e.list()
		b, _ := e.C.Find(label.Ingredients)
		if got := strings.Contains(strings.ToLower(marked(b.Runs)), "**pine nuts**"); got != (own != nil) || (len(e.C.AllergenNames) == 1) != (own != nil) {
			t.Errorf("named by the maker %v: %s, %v", own, marked(b.Runs), e.C.AllergenNames)
		}
	}
}

// That there are none is said of no batch that holds what nothing is known of.
func TestNoAllergensOfTheUnknown(t *testing.T) {
	for name, want := range map[string]bool{"moon dust": false, "": true} {
		list := []in{tabled(t, "en", "strawberries", 500)}
		if name != "" {
			list = append(list, unknownIn(name, 5))
		}
		e := tester(t, "eu", "en", after, cooked(batch.Jam, "Strawberry jam", 1000, 62, list...), cylinder(68, 60, 340))
		e.begin()
		if e.list(); e.C.NoAllergens != want {
			t.Errorf("with %q: %v", name, e.C.NoAllergens)
		}
	}
}

// Annex VII Part C: the category and the name, of a part written so already too,
// and a number alone has none.
func TestCategoryAlreadyWritten(t *testing.T) {
	for _, c := range []struct{ lang, name, want string }{
		{"en", "gelling agent: pectin", "Gelling agent: pectin"}, {"de", "Geliermittel: Pektin", "Geliermittel: Pektin"}, {"de", "Farbstoff: Betanin", "Farbstoff: Betenrot"}, {"en", "acid : citric acid", "Acid: citric acid"},
	} {
		e := tester(t, map[string]string{"de": "de", "en": "gb"}[c.lang], c.lang, after, cooked(batch.Jam, "x", 1000, 62, in{name: c.name, g: 5}), cylinder(68, 60, 340))
		if got, _ := e.additive("ingredient[0]", c.name); !strings.EqualFold(strings.ReplaceAll(got, nbsp, " "), c.want) {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	for name, told := range map[string]bool{"E 999": true, "colour: E 999": false, "berries": false} {
		e := tester(t, "gb", "en", after, cooked(batch.Jam, "x", 1000, 62, in{name: name, g: 5}), cylinder(68, 60, 340))
		if e.additive("ingredient[0]", "", name, name); strings.Count(codes(e.L), "error:additive-category") != map[bool]int{true: 1}[told] {
			t.Errorf("%s: %s", name, codes(e.L))
		}
	}
}

// Annex X(2)(b): a use-by date is day, month and perhaps year, wherever a place lets
// the date of minimum durability stand as a month.
func TestUseByIsADay(t *testing.T) {
	for useBy, want := range map[bool]string{true: "Use by 25 11 2027", false: "Best before end 10 2027"} {
		r := batchA1(62)
		r.Batch.UseBy = useBy
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		e.law.DateForm = "month"
		if e.date(); !strings.HasPrefix(textOf(e, label.Date), want) {
			t.Errorf("use by %v: %q", useBy, textOf(e, label.Date))
		}
	}
}

// Art 9(1)(f), Directive 2011/91/EU Art 2, Art 9(1)(h): what is not there is told,
// and no block stands for it.
func TestDateLotAndMakerAreMissed(t *testing.T) {
	for code, without := range map[string]func(*cook.Result){
		"no-best-before best_before": func(r *cook.Result) { r.BestBefore = unit.Date{} },
		"no-lot lot":                 func(r *cook.Result) { r.Lot = "" },
		"no-address address":         func(r *cook.Result) { r.Kitchen.Address = nil },
		"no-address  address":        func(r *cook.Result) { r.Kitchen.Name = " " },
	} {
		r := batchA1(62)
		without(r)
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		e.date()
		e.lot()
		e.maker()
		if code = strings.ReplaceAll(code, "  ", " "); !strings.Contains(saidAt(e), code) || len(e.C.Blocks) != 2 {
			t.Errorf("%s: %s, %d blocks", code, saidAt(e), len(e.C.Blocks))
		}
	}
}

// Art 24(1): asked of what keeps cold or nobody knows how, in all its forms, and of
// nothing that stands on a shelf.
func TestUseByIsAskedWhereItKeepsCold(t *testing.T) {
	for class, want := range map[cook.Class]bool{cook.Cold: true, cook.Refrigerator: true, "": true, cook.Shelf: false, cook.ShelfShort: false, cook.Freezer: false} {
		r := cooked(batch.Curd, "Lemon curd", 1000, 66, tabled(t, "en", "egg", 150))
		r.BestBefore, r.Keeping.Class = r.Batch.Made.AddDays(20), class
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		if e.date(); strings.Contains(codes(e.L), "warning:use-by-question") != want {
			t.Errorf("%q: %s", class, codes(e.L))
		}
		r.Batch.UseBy = true
		e = tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		if e.date(); len(e.L) > 0 {
			t.Errorf("%q with a use-by date: %s", class, codes(e.L))
		}
	}
}

// Annex X(2)(c): the date is followed by how to store the food: cold where it keeps
// cold, and else as it keeps.
func TestStorageBesideAUseByDate(t *testing.T) {
	for class, cold := range map[cook.Class]bool{cook.Cold: true, cook.Refrigerator: true, "": true, cook.Shelf: false, cook.Freezer: false} {
		r := batchA1(62)
		r.Batch.UseBy, r.Keeping.Class = true, class
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		e.storage()
		e.date()
		text := textOf(e, label.Date)
		if strings.HasSuffix(text, e.say("keep.chilled")) != cold || !cold && !strings.HasSuffix(text, e.C.Keep.Sealed) {
			t.Errorf("%q: %q", class, text)
		}
		if got := textOf(e, label.Storage); got != e.C.Keep.Opened {
			t.Errorf("%q: the storage is said twice: %q", class, got)
		}
	}
}

// A lot that begins with L and a figure needs no other L; a name does (Directive
// 2011/91/EU Art 3: "preceded by the letter 'L' except in cases where it is clearly
// distinguishable").
func TestLotMarks(t *testing.T) {
	for lot, want := range map[string]string{"L17": "L17", "L": "L L", "LA7": "L LA7", "17": "L 17", "L 3": "L 3", "l7": "L l7", "L0": "L0"} {
		r := batchA1(62)
		r.Lot = lot
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		if e.lot(); textOf(e, label.Lot) != want {
			t.Errorf("%q: %q, want %q", lot, textOf(e, label.Lot), want)
		}
	}
}

// A present bears the name of who made it, and tells what a sale would miss as a note.
func TestPresentsMissNothing(t *testing.T) {
	r := batchA1(62)
	r.Lot, r.BestBefore, r.Kitchen.Address = "", unit.Date{}, nil
	e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
	e.O = draft.Options{Gift: true}
	e.date()
	e.lot()
	e.maker()
	if got := saidAt(e); got != "note:no-best-before best_before, note:no-lot lot" {
		t.Error(got)
	}
}
