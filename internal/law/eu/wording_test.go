package eu

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// Directive 76/211/EEC Annex I no. 3.1: grams below a kilogram, kilograms from one
// on, with the decimal sign of the language.
func TestQuantitiesInWords(t *testing.T) {
	for g, want := range map[float64]string{1: "1 g", 999: "999 g", 999.9: "999 g", 1000: "1 kg", 1001: "1,001 kg", 1250.9: "1,25 kg", 2500: "2,5 kg", 12345: "12,345 kg"} {
		if got := strings.ReplaceAll(mass(unit.Grams(g), ","), nbsp, " "); got != want {
			t.Errorf("%g g: %q, want %q", g, got, want)
		}
	}
}

// German joins the stems of the fruit: of a name of two words the adjective stays
// where the noun is the fruit's, and "from the tin" is no part of a name.
func TestGermanNamesOfTwoWords(t *testing.T) {
	for key, want := range map[string]string{"pineapple_canned": "Ananaskonfitüre", "redcurrant": "Rote-Johannisbeer-Konfitüre", "chokecherry": "Virginische-Traubenkirsch-Konfitüre", "cherry_sour_canned": "Sauerkirschkonfitüre"} {
		e := tester(t, "de", "de", after, cooked(batch.Jam, "x", 1000, 62, tableIn(t, key, 600)), cylinder(68, 60, 340))
		if e.fruits = e.counted([]string{"fruit"}); len(e.fruits) != 1 {
			e.fruits = []share{{Line: e.R.Lines[0], Mass: e.R.Lines[0].Mass}}
		}
		if got, ok := e.german(); !ok || got != want {
			t.Errorf("%s: %q, want %q", key, got, want)
		}
	}
}

// Art 2(2): three fruits and more may be told by their number, in words to ten, in
// figures beyond, and as a wrong number never.
func TestNumberOfFruits(t *testing.T) {
	for _, x := range []struct {
		n     int
		given string
		want  bool
	}{{3, "Three fruit jam", true}, {3, "Four fruit jam", false}, {10, "Ten fruit jam", true}, {11, "11-fruit jam", true}, {11, "Eleven fruit jam", false}, {12, "Ten fruit jam", false}, {2, "Two fruit jam", false}} {
		var list []in
		for i := range x.n {
			list = append(list, fruitIn(fmt.Sprint("fruit", i), fmt.Sprint("windfall", i), 100-float64(i), "general"))
		}
		e := tester(t, "gb", "en", after, cooked(batch.Jam, x.given, 1000, 62, list...), cylinder(68, 60, 340))
		if got := e.saysFruit(x.given); got != x.want {
			t.Errorf("%d fruits as %q: %v", x.n, x.given, got)
		}
	}
}

// Annex VII Part E: parts copied off an English packet, by the table's word or another
// the table has for it, are in the label's language; what is not on the packet's
// list as such stays as it is written.
func TestPartsByTheirOtherNames(t *testing.T) {
	row, ok := pantry.Default().Ingredient("confectioners sugar")
	if !ok {
		t.Fatal("no row")
	}
	de, _ := row.Names("de")
	for _, x := range []struct{ lang, part, want string }{{"de", "confectioners sugar", de.Label}, {"de", row.Name, de.Label}, {"de", "lots of " + row.Name, "lots of " + row.Name}, {"en", "confectioners sugar", "confectioners sugar"}} {
		r := cooked(batch.Spread, "x", 1000, 50, in{name: "Mischung", g: 100, parts: []pantry.Part{{Name: x.part}}})
		e := tester(t, "eu", x.lang, after, r, cylinder(68, 60, 340))
		if got := marked(e.listRuns(nil)); !strings.HasSuffix(got, "("+x.want+")") {
			t.Errorf("%s %q: %s", x.lang, x.part, got)
		}
	}
}

// Art 15: a part of a row of the table that has no words in the language is told,
// unless the maker wrote the packet's list out.
func TestPartsWithoutWordsOfTheLanguage(t *testing.T) {
	for _, x := range []struct {
		lang, key string
		own, read bool
		want      bool
	}{{"de", "paste", false, false, true}, {"de", "paste", false, true, false}, {"de", "paste", true, false, false}, {"de", "", false, false, false}, {"en", "paste", false, false, false}} {
		r := cooked(batch.Spread, "x", 1000, 50, in{key: x.key, name: "Paste", g: 100, parts: []pantry.Part{{Name: "moon dust"}}})
		r.Lines[0].Row.Own = x.own
		e := tester(t, "eu", x.lang, after, r, cylinder(68, 60, 340))
		if x.read {
			e.Made[r.Lines[0].Paths[0]] = &batch.Ingredient{Contains: []pantry.Part{{Name: "moon dust"}}}
		}
		e.partName(item{line: r.Lines[0], path: "ingredient[0]"}, "moon dust")
		if got := strings.Contains(codes(e.L), "error:no-name-in-language"); got != x.want {
			t.Errorf("%+v: %s", x, codes(e.L))
		}
	}
}

// Art 2(4), until 2026: what no refractometer showed is still to be read, and a reading
// that rounds to nothing is no jam's.
func TestReadingsOfNothing(t *testing.T) {
	for brix, want := range map[float64]string{0: "brix-not-measured", -1: "brix-not-measured", 0.4: "sugar-content-zero", 100.1: "brix-not-measured", 100: "", 0.5: ""} {
		e := tester(t, "eu", "en", before, batchA1(62), cylinder(68, 60, 340))
		e.R.Brix = cook.Reading{Value: brix, How: cook.Measured}
		e.L = nil
		e.sugar()
		got := ""
		if len(e.L) > 0 {
			got = e.L[0].Code
		}
		if _, made := e.C.Find(label.Sugar); got != want || made != (want == "") {
			t.Errorf("%g %%: %s", brix, codes(e.L))
		}
	}
}
