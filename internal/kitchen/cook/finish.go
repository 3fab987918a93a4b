package cook

import (
	"fmt"
	"math"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// assumed finishes the pot by the table: to a °Brix, or with a loss.
func (c *calc) assumed(m mix, method string) outcome {
	b, ok := c.p.Boil(string(c.b.Product), method)
	switch {
	case !ok:
		b = pantry.Boil{Name: "long boil", Brix: jamBrix}
		fallthrough
	case b.Brix > 0 && b.Minutes <= 0:
		o := c.target(m, b)
		o.boil = b
		return o
	}
	loss := c.simmered(m, b)
	if b.Brix > 0 {
		loss = c.thickened(m, b, loss)
	}
	o := lose(m, loss, fmt.Sprintf("%s, %.0f %% loss", b.Name, 100*loss))
	o.boil = b
	return o
}

func lose(m mix, loss float64, rule string) outcome {
	pot := math.Max(m.in*(1-loss), math.Min(m.in, m.soluble+m.insoluble))
	return outcome{pot: pot, how: Estimated, rule: rule, loss: loss}
}

// target boils to a °Brix, but no more away than the row allows: with little
// sugar nobody boils so far. Water that was added to cook the fruit soft boils
// away whatever there was: quinces in 2 quarts of it and 3 cups of sugar are
// boiled to the jelly point (testdata/published/yields-tested.txt).
func (c *calc) target(m mix, b pantry.Boil) outcome {
	o := outcome{pot: m.at(b.Brix), how: Estimated, rule: fmt.Sprintf("%s to %.0f °Brix", b.Name, b.Brix), loss: -1}
	away, least := 1-o.pot/m.in, (m.in-m.water)*(1-b.Loss/100)
	if away > 2.0/3 && (b.Loss <= 0 || c.b.Product == batch.Butter) {
		c.warnf("much-boil-off", "cook", "a %s would boil %.0f %% of this pot away", o.rule, 100*away).
			Hinted("a reduced-sugar recipe is not boiled so far: weigh the finished pot or take a reading")
	}
	switch own := m.brixOf(m.in); {
	case o.pot > m.in:
		o.pot, o.rule = m.in, fmt.Sprintf("no boil-off: the mix has %.0f °Brix already", own)
	case b.Loss > 0 && o.pot < least:
		loss := 1 - least/m.in
		o = lose(m, loss, fmt.Sprintf("%s with little sugar, %.0f %% loss", b.Name, 100*loss))
	}
	return o
}
