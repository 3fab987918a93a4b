package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Regulation (EU) 1169/2011 Art 22(1)(a): what the name says counts, whatever
// word the list has for it: champagne is listed as sparkling wine.
func TestQuantityOfWhatTheNameSaysInOtherWords(t *testing.T) {
	for _, c := range []struct {
		lang, given, written string
		told                 bool
	}{
		{"en", "Strawberry and champagne jam", "champagne", true}, {"en", "Strawberry and prosecco jam", "Prosecco", true}, {"en", "Strawberry jam", "champagne", false},
		{"en", "Strawberry balsamic jam", "balsamic vinegar", true}, {"en", "Strawberry and elderflower jam", "elderflower cordial", true}, {"en", "Strawberry cordial jam", "elderflower cordial", false},
		{"de", "Erdbeer-Balsamico-Konfitüre", "Balsamico-Essig", true}, {"de", "Erdbeer-Prosecco-Konfitüre", "Prosecco", true},
		{"fr", "Confiture de fraises au champagne", "champagne", true},
	} {
		key := map[bool]string{true: "vinegar_balsamic", false: "sparkling_wine"}[strings.Contains(strings.ToLower(c.written), "balsam")]
		name := map[string]string{"vinegar_balsamic": "balsamic vinegar", "sparkling_wine": "sparkling wine"}[key]
		if strings.Contains(c.written, "elderflower") {
			key, name = "elderflower_cordial", "elderflower cordial"
		}
		r := cooked(batch.Jam, c.given, 1000, 62, tabled(t, c.lang, "strawberries", 600), in{key: key, name: name, g: 60})
		r.Lines[1].Written = []string{c.written}
		e := tester(t, "eu", c.lang, after, r, cylinder(68, 60, 340))
		e.declare()
		told := false
		for _, q := range e.quotas() {
			told = told || q.line.Key == key
		}
		if told != c.told {
			t.Errorf("%s with %s: told %v", c.given, c.written, told)
		}
	}
}

// Annex II(12): what is commonly sulphited is asked about, also where the table
// does not know it; a packet that was read settles it.
func TestSulphitedByItsWords(t *testing.T) {
	for name, want := range map[string]bool{
		"lemon juice concentrate": true, "dried papaya": true, "red wine reduction": true, "Pinot noir wine": true, "candied angelica": true,
		"freeze dried papaya": false, "dried rose petals": false, "papaya": false, "winegum": false, "undried figs": false,
	} {
		r := cooked(batch.Jam, "Strawberry jam", 1000, 62, tabled(t, "en", "strawberries", 600), unknownIn(name, 60))
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		e.lineAllergens(r.Lines[1])
		if got := strings.Contains(codes(e.L), "sulphites-unknown"); got != want {
			t.Errorf("%s: asked %v", name, got)
		}
	}
	apricots := cook.Line{Name: "dried apricots", Mass: unit.Gram, Paths: []string{"ingredient[1]"}}
	apricots.Row.SulphiteCheck = true
	r := cooked(batch.Jam, "Strawberry jam", 1000, 62, tabled(t, "en", "strawberries", 600))
	r.Lines = append(r.Lines, apricots)
	for _, read := range []bool{false, true} {
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if read {
			e.Made["ingredient[1]"] = &batch.Ingredient{Contains: []pantry.Part{{Name: "apricots"}}}
		}
		e.lineAllergens(apricots)
		if got := strings.Contains(codes(e.L), "sulphites-unknown"); got == read {
			t.Errorf("packet read %v: asked %v", read, got)
		}
	}
}
