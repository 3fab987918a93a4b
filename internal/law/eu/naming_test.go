package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
)

// What a label calls the food is in the jar (Regulation (EU) 1169/2011 Art 7(1):
// information shall not mislead), in German compounds and in French too.
func TestNamesSayWhatIsInTheJar(t *testing.T) {
	for _, c := range []struct{ set, lang, name, title, want string }{
		{"gb", "en", "Strawberry & raspberry jam", "", "raspberry"},
		{"gb", "en", "Strawberry jam", "Raspberry", "raspberry"},
		{"gb", "en", "Strawberry & basil jam", "", "basil"},
		{"de", "de", "Himbeerkonfitüre", "", "himbeer"},
		{"de", "de", "Erdbeer-Basilikum-Konfitüre", "", "basilikum"},
		{"de", "de", "Erdbeerkonfitüre mit Vanille", "", "mit vanille"},
		{"fr", "fr", "Confiture de fraises et de framboises", "", "framboises"},
		{"gb", "en", "Strawberry jam", "Strawberry", ""},
		{"gb", "en", "Raspberry flavour strawberry jam", "", ""},
		{"de", "de", "Erdbeerkonfitüre", "Omas Erdbeere", ""},
		{"de", "de", "Erdbeer-Konfitüre extra", "", ""},
		{"fr", "fr", "Confiture de fraises", "La fraise du jardin", ""},
		{"fr", "fr", "Crème de fraises", "", ""}, // "crème de marrons" is a name of Annex I itself
		{"fr", "fr", "Confiture de fraises à la crème", "", "crème"},
	} {
		r := cooked(batch.Jam, c.name, 1000, 62, tableIn(t, "strawberry", 600), tableIn(t, "sugar_white", 500))
		r.Batch.Label.Title = c.title
		e := tester(t, c.set, c.lang, after, r, cylinder(68, 60, 340))
		e.Wordings()
		got := ""
		for _, d := range e.L {
			if d.Code == "says-absent-ingredient" {
				got += d.Message
			}
		}
		if (c.want == "") != (got == "") || !strings.Contains(got, c.want) && c.want != "" {
			t.Errorf("%s, %s: %q, want %q", c.name, c.title, got, c.want)
		}
	}
}
