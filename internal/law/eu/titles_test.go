package eu

import (
	"testing"

	"jarmark/internal/kitchen/batch"
)

// Directive 2001/113/EC Art 2(1): the names of Annex I "shall apply only to the
// products referred to therein", in whatever line of the label they stand; what is
// called extra is held to the figures of extra (Annex I.I).
func TestReservedNamesInTitles(t *testing.T) {
	sb := fruitIn("strawberry", "strawberries", 600, "general")
	for _, c := range []struct {
		set, lang, name string
		label           batch.Label
		want            string
	}{
		{"gb", "en", "Strawberry jam", batch.Label{Title: "Strawberry marmalade"}, "label.title error"},
		{"gb", "en", "Strawberry jam", batch.Label{Title: "Strawberry"}, ""},
		{"gb", "en", "Strawberry jam", batch.Label{Title: "Grandma’s jam"}, ""},
		{"gb", "en", "Strawberry jam", batch.Label{Subtitle: "a summer jelly"}, "label.subtitle error"},
		{"gb", "en", "Strawberry jam", batch.Label{Subtitle: "extra jam"}, "label.subtitle error"},
		{"gb", "en", "Strawberry jam", batch.Label{Subtitle: "Extra"}, "label.subtitle error"},
		{"gb", "en", "Strawberry jam", batch.Label{Subtitle: "with extra lemon"}, ""},
		{"gb", "en", "Strawberry jam", batch.Label{Stamp: "Best extra jam 2025"}, "label.stamp error"},
		{"gb", "en", "Strawberry extra jam", batch.Label{Title: "Strawberry jam", Subtitle: "extra"}, ""},
		{"de", "de", "Erdbeerkonfitüre", batch.Label{Title: "Erdbeer-Marmelade"}, ""}, // KonfV s. 3(2) from 14 June 2026
		{"de", "de", "Erdbeerkonfitüre", batch.Label{Title: "Erdbeer-Gelee"}, "label.title error"},
		{"de", "de", "Erdbeerkonfitüre", batch.Label{Subtitle: "Konfitüre extra"}, "label.subtitle error"},
		{"fr", "fr", "Confiture de fraises", batch.Label{Title: "Marmelade de fraises"}, "label.title error"},
		{"fr", "fr", "Confiture de fraises", batch.Label{Subtitle: "confiture extra"}, "label.subtitle error"},
		{"fr", "fr", "Confiture extra de fraises", batch.Label{Title: "Confiture de fraises"}, ""},
	} {
		r := cooked(batch.Jam, c.name, 1000, 62, sb, in{key: "sugar_white", name: "sugar", g: 400, kind: "sweetener"})
		e := tester(t, c.set, c.lang, after, r, cylinder(68, 60, 340))
		e.B.Label = c.label
		e.declare()
		got := ""
		for _, d := range e.L {
			if d.Code == "reserved-name" {
				got += d.Path + " " + d.Severity.String()
			}
		}
		if got != c.want {
			t.Errorf("%s %q with %+v: %q, want %q", c.set, c.name, c.label, got, c.want)
		}
	}
}
