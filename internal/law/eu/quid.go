package eu

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// quota is one ingredient whose quantity must be told.
type quota struct {
	line  cook.Line
	share float64 // percent
}

// quotas finds the ingredients the name stresses (Art 22(1)(a), (b)). Where the
// fruit content must be told, it stands for the fruit (Annex VIII(1)(a)(ii));
// flavourings in small amounts, here below 2 %, need none ((1)(a)(iii)), nor do
// the sweeteners and sugars that words beside the name tell of ((2)(a)).
func (c *pass) quotas() []quota {
	var out []quota
	base := c.quidBase()
	if base <= 0 {
		return nil
	}
	for _, it := range c.items() {
		ln := it.line
		share := percentOf(ln.Mass, base)
		small := share < 2 && tastes[ln.Row.Class]
		if c.owesFruit() && c.isFruit(ln) || small || ln.IsWater || c.isSweetener(ln) {
			continue
		}
		if c.mentions(ln) {
			out = append(out, quota{ln, share})
		}
	}
	return out
}

// tastes are the kinds of ingredient that flavour in small amounts.
var tastes = map[string]bool{"spice": true, "flavour": true, "herb": true, "acid": true, "seed": true}

func (c *pass) isSweetener(ln cook.Line) bool {
	a, ok := c.additiveIn(ln.Key, ln.Name, c.ingredientQuiet(ln))
	return ok && a.Category == "sweetener"
}

// quidBase is what shares are reckoned on: the finished weight where the food
// lost moisture (Annex VIII(4)(a)), else all ingredients as used (Art 22).
func (c *pass) quidBase() unit.Mass {
	if y := c.R.Yield.Mass; y > 0 {
		return min(y, c.R.Input)
	}
	return c.R.Input
}

// quid words the quantities: percentages for the list, or, where one of them
// or their total passes 100 %, grams per 100 g of finished product as a
// statement beside the name (Annex VIII(4)(a)).
func (c *pass) quid() map[string]string {
	list := c.quotas()
	total := 0.0
	for _, q := range list {
		total += q.share
		if q.line.Row.Class == "alcohol" {
			c.L.Notef("quid-volatile", c.BatchFile(), draft.LinePath(q.line), "the share of %s counts what is left in the finished food; the printed figure is as used", q.line.Name).
				Hinted("some alcohol boils off; measure or lower the figure if that matters").Cited(citeFIC22 + " (4)(b)")
		}
	}
	if len(list) > 0 && c.R.Yield.How == cook.Estimated {
		c.L.Warnf("quid-estimated", c.BatchFile(), "cook", "quantities on the label rest on an estimated yield").
			Hinted("weigh the finished pot").Cited(citeFIC22)
	}
	if total > 100 {
		c.quidStatement(list)
		return nil
	}
	words := map[string]string{}
	for _, q := range list {
		words[draft.LinePath(q.line)] = percent(q.share, c.dec)
	}
	return words
}

// dative is a name as it stands after "hergestellt aus 60 g" (schwarzen Johannisbeeren,
// Äpfeln) or "préparé avec 60 g" (d’oignons). English leaves it as it is.
func (c *pass) dative(ln cook.Line) string {
	name := c.ingredientName(ln)
	if c.Say.Lang == "fr" {
		return ofFruit(name)
	}
	n, _ := ln.Row.Names("de")
	if n.Label != name || n.Singular == n.Label { // another language, the maker's own words, or no plural
		return name
	}
	ws := strings.Fields(name)
	for i, w := range ws {
		last := i == len(ws)-1
		if !last && strings.HasSuffix(w, "e") || last && !strings.HasSuffix(w, "n") && !strings.HasSuffix(w, "s") {
			ws[i] += "n"
		}
	}
	return strings.Join(ws, " ")
}

func (c *pass) quidStatement(list []quota) {
	var parts []string
	for _, q := range list {
		g := strconv.FormatInt(int64(q.share+0.5), 10)
		parts = append(parts, c.say("quid.item", "g", g, "name", c.dative(q.line)))
	}
	text := c.say("quid.prepared", "list", draft.Joined(parts, c.say("and")))
	c.add(label.Block{ID: "quid", Kind: label.Statement, Runs: []label.Run{{Text: text}},
		With: []label.Kind{label.Identity}, Cite: citeFIC22, Path: draft.LinePath(list[0].line)})
}
