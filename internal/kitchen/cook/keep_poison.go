package cook

import (
	"jarmark/internal/kitchen/batch"
)

// tellPoisons tells of every line that names what hurts whoever eats it
// (poisonous.csv). What is not told is not said to be safe.
func (c *calc) tellPoisons(written map[string]batch.Ingredient) {
	for _, ln := range c.r.Lines {
		x, ok := c.p.Poison(texts(ln, written)...)
		if !ok {
			continue
		}
		at := linePath(ln) + ".name"
		if x.Errs {
			c.errorf("poisonous", at, "%s: %s", ln.Name, x.Reason).Hinted(x.Hint).Cited(x.Source)
			continue
		}
		c.warnf("poisonous", at, "%s: %s", ln.Name, x.Reason).Hinted(x.Hint).Cited(x.Source)
	}
}
