package cook

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// ambiguous asks about a name that may be several foods: its facts, and the
// name on the label, would be a guess.
func (c *calc) ambiguous(g batch.Ingredient) (asked bool) {
	a, ok := c.p.Ambiguous(g.Name, g.Form)
	if !ok || a.SettledBy(c.roughly(g)) {
		return false
	}
	c.errorf("ambiguous-ingredient", g.Path+".name", "%q may be %s", g.Name, Either(a.Choices)).
		Hinted("write the one you used: " + a.Why)
	return true
}

// Either lists choices: "a, b or c".
func Either(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

// roughly is an amount in grams or millilitres, or that it was counted; a
// pinch or a dash is small.
func (c *calc) roughly(g batch.Ingredient) (grams float64, counted bool) {
	switch q := g.Amount; q.Dim {
	case unit.ByMass:
		return q.Mass.Grams(), false
	case unit.ByVolume:
		return q.Volume.ML(), false
	default:
		if m, ok := c.p.Measure(q.Piece, pantry.Ingredient{}); ok && m.Says != "" {
			return 1, false
		}
		return 0, true
	}
}
