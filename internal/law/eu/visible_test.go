package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// Directive 2001/113/EC Art 2(5): the fruit line stands in clearly visible
// characters, so it is no smaller than anything the common least height binds
// (by how much is our own reading).
func TestFruitLineIsClearlyVisible(t *testing.T) {
	for _, set := range []string{"eu", "de", "fr", "gb", "ni", "ie"} {
		lang := rulesOf(t, set).Languages[0]
		e := tester(t, set, lang, after, batchA1(62), cylinder(68, 60, 340))
		e.declare()
		fruit, _ := e.C.Find(label.Fruit)
		list, _ := e.C.Find(label.Ingredients)
		if fruit.Min.On != label.XHeight || fruit.Min.Length != list.Min.Length*14/10 {
			t.Errorf("%s: %v, list %v", set, fruit.Min, list.Min)
		}
	}
}

// Annex II(4): "Fische", "poissons"; the stem is found in the ingredient's own
// name.
func TestFishIsNamedAsAnnexIIDoes(t *testing.T) {
	for lang, want := range map[string]string{"de": "**Fische**", "fr": "**poissons**", "en": "**fish**"} {
		r := cooked(batch.Chutney, "Chutney", 1000, 40, in{name: "Worcestersauce", g: 100, own: []string{"anchovies"}})
		e := tester(t, "eu", lang, after, r, cylinder(68, 60, 340))
		if got := marked(e.listRuns(nil)); !strings.Contains(strings.ToLower(got), strings.ToLower(want)) {
			t.Errorf("%s: %s", lang, got)
		}
	}
	if from, to, ok := findName("Fischsauce", "Fische"); !ok || from != 0 || to != len("Fischsauce") {
		t.Error("the stem of Fische is not found")
	}
	if _, _, ok := findName("origan", "orge"); ok {
		t.Error("barley found in oregano")
	}
}

// FPackV s. 41 (a record of the weighing); PAngV s. 4(3) no. 3 (no unit price at
// a stall): told beside what they are about, in Germany alone, not on gifts.
func TestDutiesBesideTheLabel(t *testing.T) {
	for _, x := range []struct {
		set    string
		price  int64
		gift   bool
		record bool
		unit   bool
	}{{"de", 650, false, true, true}, {"de", 0, false, true, false}, {"de", 650, true, false, false}, {"fr", 650, false, false, false}} {
		jar := cylinder(68, 60, 240)
		jar.Price = unit.Money{Minor: x.price, Currency: "EUR"}
		e := tester(t, x.set, rulesOf(t, x.set).Languages[0], after, batchA1(62), jar)
		e.O.Gift = x.gift
		e.declare()
		cites := ""
		for _, d := range e.L {
			if d.Code == "beside-label" {
				cites += d.Cite + " "
			}
		}
		if strings.Contains(cites, "FPackV s. 41") != x.record || strings.Contains(cites, "PAngV") != x.unit {
			t.Errorf("%+v: %s", x, cites)
		}
	}
}
