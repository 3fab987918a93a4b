package design

import "testing"

// An arch laid flat is told from one that only shrank, so that it costs a label
// more than a smaller name does (our own taste).
func TestFlattenedArches(t *testing.T) {
	own := Look{Ornaments: []Ornament{{Spot: "top", Size: 0.2, Reach: 0.4}, {Spot: "corners", Size: 0.1}}}
	for name, x := range map[string]struct {
		look Look
		want bool
	}{
		"as written":       {own, false},
		"shrunk":           {own.slim(0.5), false},
		"lying flat":       {own.flat(), true},
		"flat and shrunk":  {own.flat().slim(0.5), true},
		"none":             {Look{}, false},
		"another ornament": {Look{Ornaments: own.Ornaments[1:]}, false},
	} {
		if got := x.look.Flattened(own); got != x.want {
			t.Errorf("%s: %t", name, got)
		}
	}
	if level := (Look{Ornaments: []Ornament{{Spot: "top", Size: 0.2}}}); level.flat().Flattened(level) {
		t.Error("what never was an arch lies flat")
	}
}
