package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
)

// Directive 2001/113/EC Annex I as amended by (EU) 2024/1438: 450 g of fruit in
// 1000 g of jam since 14 June 2026 (read 26 Nov 2026). Fruit measured in cups that
// only just comes to it is told to be weighed, and so is the figure on the label.
func TestCupsNearTheMinimum(t *testing.T) {
	for _, c := range []struct {
		fruit float64
		cups  bool
		want  string
	}{
		{450, false, ""}, {449, false, "too-little-fruit"},
		{450, true, "standard-unsure fruit-estimated"}, {499, true, "standard-unsure fruit-estimated"}, {500, true, "fruit-estimated"}, {449, true, "too-little-fruit fruit-estimated"},
	} {
		r := cooked(batch.Jam, "Strawberry jam", 1000, 62, tabled(t, "en", "strawberries", c.fruit), in{key: "sugar_white", name: "sugar", g: 500, kind: "sweetener"})
		r.Lines[0].Estimated = c.cups
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		e.judgeFruit()
		e.fruit()
		got := ""
		for _, code := range []string{"too-little-fruit", "standard-unsure", "fruit-estimated"} {
			if strings.Contains(codes(e.L), code) {
				got = strings.TrimSpace(got + " " + code)
			}
		}
		if got != c.want {
			t.Errorf("%g g, cups %v: %q, want %q (%s)", c.fruit, c.cups, got, c.want, codes(e.L))
		}
	}
}
