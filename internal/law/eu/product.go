package eu

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// choose finds the legal product of the batch; its zero value stands for a food
// no product row governs.
func (c *pass) choose() {
	c.product, c.governed = draft.ProductOf(c.Set.Products, c.B, func(p place.Product) bool {
		for _, w := range strings.Split(p.Wish, "|") {
			if draft.HasWord(words.Fold(c.B.Name), words.Fold(w)) {
				return true
			}
		}
		return c.saysProduct(c.B.Name, p)
	})
	c.fruits = c.countedFruits()
}

// owesFruit reports whether the fruit content must be told.
func (c *pass) owesFruit() bool { return c.governed && c.product.Owes("fruit", c.on) }

// among is among of the table, where "citrus" stands for the citrus fruits.
func (c *pass) among(list []string, ln cook.Line) bool {
	return draft.Among(list, ln) || slices.Contains(list, "citrus") && slices.Contains(c.law.Citrus, ln.Key)
}

// judgeIngredients tests every ingredient against the positive list of the
// product (Directive 2001/113/EC Art 4, Annexes II, III).
func (c *pass) judgeIngredients() {
	p := c.product
	if len(p.Allows) == 0 {
		return
	}
	for _, ln := range c.R.Lines {
		switch rule, beside := c.onlyBeside(ln); {
		case beside && !c.madeOf(rule.Beside):
			c.notAllowed(ln, "the jam rules let it into products of certain fruit alone")
		case beside:
		case c.isAdditive(ln):
			c.judgeAdditive(ln)
		case ln.IsWater || c.isFruit(ln) || c.among(p.Aside, ln) || c.among(p.Souring, ln):
		case p.Little != nil && c.among(p.Little.Of, ln):
			if share := percentOf(ln.Mass, c.finished()); share > p.Little.Percent {
				c.notAllowed(ln, fmt.Sprintf("%s: at most %g %% here, this batch has %.1f %%", p.Little.Why, p.Little.Percent, share))
			}
		case c.boundTo(ln):
		case c.among(p.Allows, ln) && (c.form(ln) != "juice" || c.juiceAllowed(ln)):
		case c.among(p.Doubtful, ln):
			c.L.Warnf("ingredient-doubtful", c.BatchFile(), draft.LinePath(ln), "the jam rules do not name %s among what %s may hold", ln.Name, c.printed(p)).
				Hinted("ask your food authority before you sell it under this name").Cited(citeJam + "I; Art 4")
		case c.unknown(ln):
			c.L.Warnf("ingredient-not-judged", c.BatchFile(), draft.LinePath(ln), "nothing is known of %s, so whether %s may hold it can't be told", ln.Name, c.printed(p)).
				Hinted(`write an [[ingredient]] of your own in kitchen.toml with its kind ("fruit", "spice", "nut" …)`).Cited(citeJam + "I; Art 4")
		default:
			c.notAllowed(ln, "only the sugars and the additional ingredients the jam rules list are allowed")
		}
	}
}

func (c *pass) notAllowed(ln cook.Line, why string) {
	c.fail("ingredient-not-allowed", draft.LinePath(ln), c.printed(c.product)+" may not hold "+ln.Name+": "+why).
		Hinted("leave it out, or call it " + c.say("product.spread") + ` and write kind = "spread" (a savoury one: kind = "chutney")`).
		Cited(citeJam + "I; Art 4; " + c.product.Cite)
}

// juiceAllowed: a row that allows the kind allows every juice, another only the
// juices it names.
func (c *pass) juiceAllowed(ln cook.Line) bool {
	return slices.Contains(c.product.Allows, "juice") || slices.Contains(c.product.Allows, ln.Key)
}

// boundTo reports a juice that is allowed beside the fruit of this batch.
func (c *pass) boundTo(ln cook.Line) bool {
	if c.form(ln) != "juice" {
		return false
	}
	for _, b := range c.product.Bound {
		if slices.Contains(b.Of, ln.Key) && slices.ContainsFunc(c.fruits, func(f share) bool { return slices.Contains(b.Beside, f.Line.Key) }) {
			return true
		}
	}
	return false
}

// onlyBeside finds the rule about what is allowed beside certain fruit alone: beetroot
// juice, leaves of scented geranium, oils of citrus (Annex II).
func (c *pass) onlyBeside(ln cook.Line) (place.BoundRule, bool) {
	for _, b := range c.product.Besides {
		if c.among(b.Of, ln) || draft.Said(ln.Name, b.Words, nil) != "" {
			return b, true
		}
	}
	return place.BoundRule{}, false
}

// madeOf reports whether a fruit of the batch is of a list.
func (c *pass) madeOf(keys []string) bool {
	return slices.ContainsFunc(c.fruits, func(f share) bool { return slices.Contains(keys, f.Line.Key) })
}

// isFruit reports whether a line counts as the fruit of the product.
func (c *pass) isFruit(ln cook.Line) bool {
	return slices.ContainsFunc(c.fruits, func(f share) bool { return draft.LinePath(f.Line) == draft.LinePath(ln) && f.Line.Name == ln.Name })
}

// unknown reports an ingredient the tables know nothing of.
func (c *pass) unknown(ln cook.Line) bool {
	if c.isAdditive(ln) {
		return false
	}
	return ln.Row.Class == "" && ln.Row.FruitClassEU == "" && !ln.IsFruit && !ln.IsWater && !ln.IsSweet
}

// isAdditive: which additives a jam may hold is Regulation (EC) 1333/2008's.
func (c *pass) isAdditive(ln cook.Line) bool {
	_, ok := c.additiveIn(ln.Key, ln.Name)
	return ok
}

// form is the kind of an ingredient, a juice also by the maker's own words.
func (c *pass) form(ln cook.Line) string {
	if k := ln.Row.Class; k != "" && k != "fruit" {
		return k
	}
	if c.isJuiceWord(ln.Name) {
		return "juice"
	}
	if ln.IsFruit || ln.Row.FruitClassEU != "" && ln.Row.FruitClassEU != "none" {
		return "fruit"
	}
	return ln.Row.Class
}

// isJuiceWord reports whether a name says a juice: "Holundersaft", "jus de".
func (c *pass) isJuiceWord(name string) bool {
	for _, word := range append(strings.Split(c.say("word.juice"), "|"), "juice") {
		for _, w := range strings.FieldsFunc(strings.ToLower(name), draft.NotLetter) {
			if strings.HasSuffix(w, word) {
				return true
			}
		}
	}
	return false
}

// judgeLeast tests the other minima of a product.
func (c *pass) judgeLeast() {
	for _, m := range c.product.Least {
		cite := cmp.Or(m.Cite, c.product.Cite)
		if m.What == "endocarp" {
			c.L.Notef("endocarp", c.BatchFile(), "name", "at least %g g in 1000 g must come from the flesh of the fruit; that can't be told from the notes", m.Grams).Cited(cite)
			continue
		}
		// Without a yield this is no number, and so is short of nothing.
		if have := c.holds(m) / c.R.Yield.Mass.Grams() * 1000; have+1e-9 < m.Grams {
			c.tooLittle("too-little-of", "name", fmt.Sprintf("%s needs %g g of %s in 1000 g, this batch has %.1f g", c.printed(c.product), m.Grams, m.What, have)).
				Hinted("change the recipe, or call it by another name").Cited(cite)
		}
	}
}

// yolkShare is how much of a whole egg without its shell is yolk: 17 g of 50 g
// (USDA SR28, large egg, portion weights of yolk and white, from memory).
const yolkShare = 0.34

// holds adds up a constituent or some ingredients, in grams.
func (c *pass) holds(m place.LeastRule) (sum float64) {
	for _, ln := range c.R.Lines {
		g := ln.Mass.Grams()
		switch {
		case len(m.Of) > 0:
			if c.among(m.Of, ln) {
				sum += g
			}
		case m.What == "fat":
			sum += g * max(ln.Row.FatG, 0) / 100
		case m.What == "egg yolk solids" && ln.Key == "egg_yolk":
			sum += g * (100 - ln.Row.WaterG) / 100
		case m.What == "egg yolk solids" && ln.Key == "egg_whole":
			// USDA SR28 no. 01125: raw yolk is 52.31 % water.
			sum += g * yolkShare * (100 - 52.31) / 100
		}
	}
	return sum
}
