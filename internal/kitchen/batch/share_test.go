package batch

import "testing"

// Parts as packets write them: the figure is the part's share, not its name.
func TestPartsWithShares(t *testing.T) {
	b, l := Parse("b.toml", []byte(`name = "Plum jam"
kind = "jam"
made = 2026-08-28
[[ingredient]]
name = "pectin"
amount = "50 g"
contains = ["citric acid 3.5 %", "dextrose (60%)", "pectin 36,5%", "E 330", "80 % solids", "butter 105 %", "sugar 100 %", "salt 100,1 %", { name = "salt 2 %", percent = 0 }]
`), nil)
	if b == nil || len(b.Ingredients) != 1 {
		t.Fatal(l)
	}
	want := []struct {
		name    string
		percent float64
	}{{"citric acid", 3.5}, {"dextrose", 60}, {"pectin", 36.5}, {"E 330", 0}, {"80 % solids", 0}, {"butter 105 %", 0}, {"sugar", 100}, {"salt 100,1 %", 0}, {"salt 2 %", 0}}
	for i, p := range b.Ingredients[0].Contains {
		if p.Name != want[i].name || p.Percent != want[i].percent {
			t.Errorf("%q %g, want %q %g", p.Name, p.Percent, want[i].name, want[i].percent)
		}
	}
}
