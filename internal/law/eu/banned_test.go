package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// What no food may hold: Regulation (EC) No 1925/2006 Annex III Part A (ephedra,
// yohimbe), (EC) No 1334/2008 Annex III Part A (substances as such) and Annex IV
// (Acorus calamus in its tetraploid form, Hypericum), (EU) 2015/2283 Art 6(2)
// (extracts of hemp), and in Great Britain alone SI 2002/3169 reg 3(1) (kava).
func TestWhatNoFoodMayHold(t *testing.T) {
	for _, c := range []struct{ set, name, parts, want, cite string }{
		{"eu", "CBD oil", "", "error", "2015/2283"}, {"gb", "hemp seed oil with cannabidiol", "", "error", "2015/2283"}, {"fr", "extrait de chanvre", "", "error", "2015/2283"},
		{"de", "Hanfsamen", "", "", ""}, {"gb", "hemp seed oil", "", "", ""}, {"de", "THC-freies Hanfmehl, ohne THC", "", "", ""},
		{"ie", "ephedra", "", "error", "1925/2006"}, {"de", "Kräuterauszug", "Yohimberinde", "error", "1925/2006"},
		{"eu", "tonka extract", "coumarin", "error", "1334/2008 Annex III"}, {"de", "Zimt, cumarinarm (wenig Cumarin)", "", "", ""}, {"de", "Kalmuswurzel", "", "warning", "Annex IV Part A"},
		{"de", "Johanniskrautblüten", "", "error", "Annex IV Part B"}, {"fr", "millepertuis", "", "error", "Annex IV Part B"}, {"gb", "butterfly pea flowers", "", "warning", "EN-7084"},
		{"gb", "kava powder", "", "error", "2002/3169"}, {"eu", "kava powder", "", "", ""}, {"gb", "rose petals", "", "", ""},
	} {
		r := cooked(batch.Jelly, "Apple jelly", 1000, 62, in{name: "sugar", g: 500}, unknownIn(c.name, 5))
		if c.parts != "" {
			r.Lines[len(r.Lines)-1].Contains = []pantry.Part{{Name: "water"}, {Name: c.parts}}
		}
		p := tester(t, c.set, "en", after, r, cylinder(68, 60, 340))
		p.begin()
		got, cite := "", ""
		for _, d := range p.L {
			if d.Code == "banned-in-food" {
				got, cite = got+d.Severity.String(), d.Cite
			}
		}
		if got != c.want || !strings.Contains(cite, c.cite) {
			t.Errorf("%s, %s (%s): %q by %q, want %q by %s", c.set, c.name, c.parts, got, cite, c.want, c.cite)
		}
	}
}
