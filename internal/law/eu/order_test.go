package eu

import (
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// Directive 2001/113/EC Art 2(2): the fruit of a name "in descending order of the weight
// of the raw materials used". Of the same weight neither comes first, and the batch
// file's order is as good as the other; whatever weighs more or less keeps its place.
func TestFruitOfTheSameWeight(t *testing.T) {
	for _, x := range []struct {
		given                     string
		strawberry, rhubarb, plum float64
		want                      string
	}{
		{"Strawberry and rhubarb jam", 600, 600, 0, "Strawberry and rhubarb jam"},
		{"Rhubarb and strawberry jam", 600, 600, 0, "Rhubarb and strawberry jam"},
		{"Rhubarb and strawberry jam", 600, 599, 0, "Strawberry and rhubarb jam"},
		{"Rhubarb, strawberry and plum jam", 600, 600, 300, "Rhubarb, strawberry and plum jam"},
		{"Rhubarb, plum and strawberry jam", 600, 600, 300, "Strawberry, rhubarb and plum jam"},
		{"Plum, rhubarb and strawberry jam", 600, 600, 700, "Plum, rhubarb and strawberry jam"},
		{"Strawberry, plum and rhubarb jam", 600, 600, 700, "Plum, strawberry and rhubarb jam"},
		{"Summer's end", 600, 600, 0, "Strawberry and rhubarb jam"},
	} {
		list := []in{tableIn(t, "strawberry", x.strawberry), tableIn(t, "rhubarb", x.rhubarb)}
		if x.plum > 0 {
			list = append(list, tableIn(t, "plum", x.plum))
		}
		e := tester(t, "gb", "en", after, cooked(batch.Jam, x.given, 2000, 62, list...), cylinder(68, 60, 340))
		if e.identity(); textOf(e, label.Identity) != x.want {
			t.Errorf("%q of %g, %g and %g g: %q, want %q", x.given, x.strawberry, x.rhubarb, x.plum, textOf(e, label.Identity), x.want)
		}
	}
}
