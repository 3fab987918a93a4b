package rule

import (
	"strconv"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// euQuota is one ingredient whose quantity must be told.
type euQuota struct {
	line  cook.Line
	share float64 // percent
}

// quotas finds the ingredients the name stresses (Art 22(1)(a), (b)). Under
// the jam rules the fruit statement serves for the fruit (our reading of Annex
// VIII(1)(a)(ii), from memory); flavourings below 2 % need none.
func (c *euCase) quotas() []euQuota {
	var out []euQuota
	base := c.quidBase()
	if base <= 0 || c.r.Batch == nil {
		return nil
	}
	for _, it := range c.euItems() {
		ln := it.line
		share := float64(ln.Mass) / float64(base) * 100
		fruit := c.law.inJamRules(c.r.Batch.Kind) && euClass(ln) != ""
		taste := (ln.Row.Kind == "spice" || ln.Row.Kind == "flavour") && share < 2
		if fruit || taste || ln.IsWater || ln.Row.Kind == "acid" && share < 2 {
			continue
		}
		if euMentions(c.r.Batch.Name, c.ingredientName(ln), c.lang) || euMentions(c.r.Batch.Name, ln.Name, c.lang) {
			out = append(out, euQuota{ln, share})
		}
	}
	return out
}

// quidBase is what shares are reckoned on: the finished weight where the food
// lost moisture (Annex VIII(4)(a)), else all ingredients as used (Art 22).
func (c *euCase) quidBase() unit.Mass {
	if y := c.r.Yield.Mass; y > 0 && y < c.r.Input {
		return y
	}
	return c.r.Input
}

// quid words the quantities: percentages for the list, or, where one of them
// or their total passes 100 %, grams per 100 g of finished product as a
// statement beside the name (Annex VIII(4)(a)).
func (c *euCase) quid() map[string]string {
	list := c.quotas()
	total := 0.0
	for _, q := range list {
		total += q.share
		if q.line.Row.Kind == "alcohol" {
			c.l.Notef("quid-volatile", c.batchFile(), linePath(q.line), "the share of %s counts what is left in the finished food; the printed figure is as used", q.line.Name).
				Hinted("some alcohol boils off; measure or lower the figure if that matters").Cited(citeFIC22 + " (4)(b), from memory, unverified")
		}
	}
	if len(list) > 0 && c.r.Yield.How == cook.Estimated {
		c.l.Warnf("quid-estimated", c.batchFile(), "cook", "quantities on the label rest on an estimated yield").
			Hinted("weigh the finished pot").Cited(citeFIC22)
	}
	if total > 100 {
		c.quidStatement(list)
		return nil
	}
	words := map[string]string{}
	for _, q := range list {
		words[linePath(q.line)] = euPercent(q.share, c.dec)
	}
	return words
}

func (c *euCase) quidStatement(list []euQuota) {
	var parts []string
	for _, q := range list {
		g := strconv.FormatInt(int64(q.share+0.5), 10)
		parts = append(parts, c.say("quid.item", "g", g, "name", c.ingredientName(q.line)))
	}
	text := c.say("quid.prepared", "list", joined(parts, c.say("and")))
	c.add(label.Block{ID: "quid", Kind: label.Statement, Runs: []label.Run{{Text: text}},
		With: []label.Kind{label.Identity}, Cite: citeFIC22, Path: linePath(list[0].line)})
}
