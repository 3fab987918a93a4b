package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Directive 2001/113/EC Art 2(1): a reserved name is looked for in the kinds that count
// fruit; a curd keeps the name its maker gave it, and its row judges it all the same.
func TestNameOfAKindThatCountsNoFruit(t *testing.T) {
	e := tester(t, "gb", "en", after, cooked(batch.Curd, "Nan's lemon curd", 1000, 40, tabled(t, "en", "butter", 200)), cylinder(68, 60, 340))
	e.L = nil
	e.identity()
	b, _ := e.C.Find(label.Identity)
	if b.Text() != "Nan's lemon curd" || !b.Bold || strings.Contains(codes(e.L), "no-fruit") || !strings.Contains(codes(e.L), "solids-too-low") {
		t.Errorf("%q, bold %v: %s", b.Text(), b.Bold, codes(e.L))
	}
	e = tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
	e.B.Name, e.L = "Summer's end", nil
	e.product.Counts = e.product.Counts[:1]
	if e.identity(); textOf(e, label.Identity) != "Strawberry jam" || !strings.Contains(saidAt(e), "note:legal-name name") {
		t.Errorf("counting fruit alone: %q, %s", textOf(e, label.Identity), saidAt(e))
	}
}

// A name that may stand alone from so many fruits on (citrus marmalade) is the one said
// where the fruit is not known, and is lawful from that number on.
func TestNameThatStandsAlone(t *testing.T) {
	for from, want := range map[int]string{0: "Marmalade", 1: "Citrus marmalade"} {
		e := tester(t, "eu", "en", after, cooked(batch.Marmalade, "", 1000, 62, tableIn(t, "sugar_white", 500)), cylinder(68, 60, 340))
		e.product.Names = []place.ProductName{{Lang: "en", Name: "marmalade"}, {Lang: "en", Name: "citrus marmalade", AloneFrom: from}}
		if got := e.reservedName(""); got != want {
			t.Errorf("alone from %d: %q", from, got)
		}
	}
	for from, want := range map[int]bool{0: false, 1: true, 2: false} {
		e := tester(t, "eu", "en", after, cooked(batch.Marmalade, "", 1000, 62, tableIn(t, "orange", 500)), cylinder(68, 60, 340))
		e.product.Names = []place.ProductName{{Lang: "en", Name: "citrus marmalade", AloneFrom: from}}
		if got := e.lawfulName("Citrus marmalade"); got != want {
			t.Errorf("one orange, alone from %d: lawful %v", from, got)
		}
		if got := e.composed() == "Citrus marmalade"; got != want {
			t.Errorf("one orange, alone from %d: %q", from, e.composed())
		}
	}
}

// The stem of a maker's own fruit is not known: German then names it as it is written.
func TestGermanNameOfAnOwnFruit(t *testing.T) {
	r := cooked(batch.Jam, "x", 1000, 62, tableIn(t, "strawberry", 500))
	r.Lines[0].Row.Own, r.Lines[0].Name = true, "Walderdbeeren"
	e := tester(t, "de", "de", after, r, cylinder(68, 60, 340))
	if name, ok := e.german(); ok || name != "" {
		t.Errorf("a name is made of its stem: %q", name)
	}
	if got := e.composed(); !strings.Contains(got, "Walderdbeeren") {
		t.Errorf("%q", got)
	}
}

// What stands out in a list is the whole word that begins with the allergen's name, and
// a name of one letter is a name.
func TestRunsOfAList(t *testing.T) {
	if from, to, ok := findName("Milchpulver", "Milch"); !ok || from != 0 || to != len("Milchpulver") {
		t.Errorf("Milch in Milchpulver: %d %d %v", from, to, ok)
	}
	w := &runs{}
	for _, s := range []string{"a", "", "b", "c"} {
		w.plain(s)
	}
	w.put("d", true)
	w.put("e", true)
	w.plain("f")
	if got := marked(w.runs); got != "abc**de**f" || len(w.runs) != 3 {
		t.Errorf("%q in %d runs", got, len(w.runs))
	}
	w = &runs{}
	if left := w.emphasised("E", []string{"milk"}); marked(w.runs) != "E" || len(left) != 1 {
		t.Errorf("%q, left %v", marked(w.runs), left)
	}
	w = &runs{}
	if w.bracketed(nil); len(w.runs) != 0 {
		t.Errorf("brackets round nothing: %v", w.runs)
	}
}

// The order of a list is by weight; of the same weight as the batch file has it (our own
// choice: neither comes first in law).
func TestListOfTheSameWeight(t *testing.T) {
	e := tester(t, "eu", "en", after, cooked(batch.Spread, "x", 1500, 62, in{name: "sugar", g: 500}, in{name: "plums", g: 500}, in{name: "apples", g: 501}), cook.JarPlan{})
	if got := marked(e.listRuns(nil)); got != "Ingredients: Apples, Sugar, Plums" {
		t.Error(got)
	}
}
