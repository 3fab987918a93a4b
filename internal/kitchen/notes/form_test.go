package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// What a maker strings together on one line is not lost in how a food was cut:
// where the form of an ingredient holds figures, the line asks. Invented lines.
func TestAFormHoldsNoFigures(t *testing.T) {
	for _, line := range []string{
		"3 lb blackberries, 2 lb sugar, juice 1 lemon, boiled 20 min, 220F, 7 half pints, bath 10 min",
		"juice of 2 lemons, strained, 30 min at 105 C, 8 jars",
		"zest of 1 orange, grated, got 6 jars",
		"1,2 kg framboises, 900 g sucre, cuisson 12 min à 105 °C, 6 pots de 250 g",
		"2 lb tomatoes, 1 lb onions, half pint malt vinegar, tsp salt, simmered 90 min, 4 jars",
	} {
		for _, l := range Read(line, pantry.Default()).Lines {
			for _, in := range l.Ingredients {
				if strings.ContainsAny(in.Form, "0123456789") && !strings.Contains(strings.Join(l.Asks, " "), "more than how it was cut") {
					t.Errorf("%q: %q of %s is not asked about: %q", line, in.Form, in.Name, l.Asks)
				}
			}
		}
	}
	for _, l := range Read("2 lb rhubarb, cut in 1/2-inch pieces", pantry.Default()).Lines {
		if len(l.Asks) > 0 {
			t.Errorf("a size of pieces is asked about: %q", l.Asks)
		}
	}
}
