package eu

import (
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// tableIn is an ingredient of the table, in grams.
func tableIn(t *testing.T, key string, g float64) in {
	t.Helper()
	for _, row := range pantry.Default().Ingredients() {
		if row.Key == key {
			return in{key: key, name: row.Name, g: g, kind: row.Class, class: row.FruitClassEU, row: &row}
		}
	}
	t.Fatalf("no row %s", key)
	return in{}
}

// Directive 2001/113/EC Art 2(2): the product with the name of its fruit; how
// German joins the two is grammar, not law.
func TestComposedNames(t *testing.T) {
	for _, x := range []struct {
		lang string
		kind batch.ProductType
		want string
		list []string
	}{
		{"de", batch.Jam, "Erdbeerkonfitüre", []string{"strawberry"}},
		{"de", batch.Jam, "Brombeer-Apfel-Konfitüre", []string{"blackberry", "apple"}},
		{"de", batch.Jam, "Schwarze-Johannisbeer-Konfitüre", []string{"blackcurrant"}},
		{"de", batch.Jelly, "Apfelgelee", []string{"apple_juice"}},
		{"de", batch.Jelly, "Trauben-Orangen-Gelee", []string{"grape_juice", "orange_juice"}},
		{"en", batch.Jelly, "Grape jelly", []string{"grape_juice"}},
		{"fr", batch.Jelly, "Gelée d’orange", []string{"orange_juice"}},
		{"fr", batch.Jam, "Confiture de fraises et de rhubarbe", []string{"strawberry", "rhubarb"}},
	} {
		var list []in
		for i, key := range x.list {
			list = append(list, tableIn(t, key, 600-float64(i)*100))
		}
		e := tester(t, "eu", x.lang, after, cooked(x.kind, "Sommerglück", 1000, 63, list...), cylinder(68, 60, 250))
		if e.composed() != x.want {
			t.Errorf("%s %v: %q, want %q", x.lang, x.list, e.composed(), x.want)
		}
	}
}

// What is composed is itself a lawful name, for every fruit and juice of the
// table in every language: else a label would say one name under another for ever.
func TestComposedNamesAreLawful(t *testing.T) {
	for _, row := range pantry.Default().Ingredients() {
		kind := batch.Jam
		if row.Class == "juice" {
			kind = batch.Jelly
		} else if row.Class != "fruit" {
			continue
		}
		for _, lang := range []string{"en", "de", "fr"} {
			e := tester(t, "eu", lang, after, cooked(kind, "x", 1000, 63, tableIn(t, row.Key, 600)), cylinder(68, 60, 250))
			if len(e.fruits) == 1 && !e.lawfulName(e.composed()) {
				t.Errorf("%s %s: %q is not lawful by our own reading", lang, row.Key, e.composed())
			}
		}
	}
}

// A word of three letters begins a German compound ("Rumtopf"), and an English
// word of its own alone.
func TestShortWordsInNames(t *testing.T) {
	rum := tableIn(t, "rum", 50)
	for name, want := range map[string]bool{"Rumtopfkonfitüre": true, "Erdbeerkonfitüre mit Rum": true, "Erdbeerkonfitüre aus dem Forum": false} {
		e := tester(t, "de", "de", after, cooked(batch.Jam, name, 1000, 63, rum), cylinder(68, 60, 250))
		if got := e.mentions(e.R.Lines[0]); got != want {
			t.Errorf("%s: %v", name, got)
		}
	}
	e := tester(t, "gb", "en", after, cooked(batch.Jam, "Rumble jam", 1000, 63, rum), cylinder(68, 60, 250))
	if e.mentions(e.R.Lines[0]) {
		t.Error("rum found in rumble")
	}
}
