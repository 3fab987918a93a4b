package cook

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// A list of ingredients has ingredients in it (21 CFR 101.4(a); Regulation (EU)
// 1169/2011 Art 18(1): "all the ingredients of the food"); what a packet says may
// be in there is a warning beside it.
func TestAPacketsWarningIsNoPart(t *testing.T) {
	for part, want := range map[string]bool{
		"may contain milk": true, "May also contain nuts": true, "traces of nuts": true, "possible traces of soy": true, "may have traces of egg": true,
		"Kann Spuren von Nüssen enthalten": true, "Spuren von Milch": true, "peut contenir des traces de lait": true, "traces éventuelles de soja": true, "Traces d’arachide": true,
		"milk powder": false, "maybe sugar": false, "contains 2 % salt": false, "trace minerals": false, "Kandis": false, "cannellini beans": false,
	} {
		b := demo(t)
		g := ing(t, "dark chocolate", "20 g", "")
		g.Contains = []pantry.Part{{Name: "cocoa mass"}, {Name: part}}
		b.Ingredients = append(b.Ingredients, g)
		_, l := compute(t, b)
		if got := has(l, "advisory-in-parts"); got != want {
			t.Errorf("%q: %v, want %v", part, got, want)
		}
		for _, d := range l {
			if d.Code == "advisory-in-parts" && (!strings.Contains(d.Path, "contains") || !strings.Contains(d.Message, part) || d.Hint == "") {
				t.Errorf("%+v", d)
			}
		}
	}
}
