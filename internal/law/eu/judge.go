package eu

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// judge tests a batch against the row of its product.
func (c *pass) judge() {
	p := c.product
	if only := c.strangers(); only != nil {
		c.fail("fruit-not-allowed", draft.LinePath(only.Line), c.printed(p)+" is made of "+c.onlyWords()+" alone, and "+only.Line.Name+" is none").
			Hinted("call it by another name").Cited(p.Cite)
	} else if c.R.Yield.Mass > 0 && len(c.fruits) > 0 {
		c.judgeFruit()
	}
	c.judgeMixture()
	c.judgeIngredients()
	c.judgeLeast()
	c.judgeSolids()
}

// strangers is the first fruit a product may not be made of.
func (c *pass) strangers() *share {
	for i, f := range c.fruits {
		if len(c.product.Only) > 0 && !c.among(c.product.Only, f.Line) {
			return &c.fruits[i]
		}
	}
	return nil
}

func (c *pass) onlyWords() string {
	if c.product.Only[0] == "citrus" {
		return "citrus fruit"
	}
	return c.product.Only[0]
}

func (c *pass) judgeFruit() {
	have := perKilo(c.fruits, c.R.Yield.Mass)
	c.judgeStrained()
	need, memory := leastFruit(c.product, c.fruits, c.on)
	unverified := ""
	if memory {
		unverified = " (minimum from memory, unverified)"
	}
	if have < need {
		c.tooLittle("too-little-fruit", "name", c.printed(c.product)+" needs "+grams(need)+" of fruit in 1000 g, this batch has "+grams(have)+unverified).
			Hinted("call it " + c.say("product.spread") + ` and write kind = "spread", or use more fruit; juice counts in jelly only`).Cited(c.product.Cite)
		return
	}
	if least, cups := c.loosely(); len(cups) > 0 && least < need {
		c.L.Warnf("standard-unsure", c.BatchFile(), "name", "%s needs %s of fruit in 1000 g; %s were not weighed, and with cups a little looser this batch has %s", c.printed(c.product), grams(need), strings.Join(cups, ", "), grams(least)).
			Hinted("weigh the fruit to be sure; if it stays so, call it " + c.say("product.spread") + ` and write kind = "spread"`).Cited(c.product.Cite)
	}
	if memory {
		c.L.Notef("minimum-unverified", c.BatchFile(), "name", "the minimum of %s of fruit in 1000 g is from memory, unverified; this batch has %s", grams(need), grams(have)).Cited(c.product.Cite)
	}
}

// loosely is the fruit in 1000 g where fruit that was measured in cups or pieces and
// not weighed is a little less, with the names of that fruit.
func (c *pass) loosely() (perKilogram int, cups []string) {
	least := slices.Clone(c.fruits)
	for i := range least {
		if f := &least[i]; f.Line.Estimated {
			f.Mass -= f.Mass / 1000 * unit.Mass(c.law.CupError)
			cups = append(cups, f.Line.Name)
		}
	}
	return perKilo(least, c.R.Yield.Mass), cups
}

// judgeStrained warns that a figure counts whole fruit where the strained juice or
// extract is what counts: it says more than is known.
func (c *pass) judgeStrained() {
	if !c.product.Strained {
		return
	}
	for _, f := range c.fruits {
		if c.form(f.Line) == "fruit" && len(f.Line.Contains) == 0 {
			c.L.Warnf("jelly-counts-juice", c.BatchFile(), draft.LinePath(f.Line), "the notes weigh %s, and %s counts the strained juice or extract: the fruit content on the label is that of the fruit as weighed", f.Line.Name, c.printed(c.product)).
				Hinted(`weigh the strained juice, and write it as the ingredient: name = "` + words.Singular(f.Line.Name) + ` juice"`).Cited(c.product.Cite)
			return
		}
	}
}

func grams(g int) string { return strconv.Itoa(g) + " g" }

// judgeMixture: some fruits may not be mixed with others in extra jam (Annex I).
func (c *pass) judgeMixture() {
	if len(c.fruits) < 2 {
		return
	}
	for _, f := range c.fruits {
		if c.among(c.product.Unmixed, f.Line) {
			c.fail("extra-mixture", draft.LinePath(f.Line), f.Line.Name+" may not be mixed with other fruit in "+c.printed(c.product)).
				Hinted("leave \"extra\" out of the name").Cited(citeJam)
		}
	}
}

// judgeSolids tests the soluble dry matter by refractometer; products with
// sweeteners or a lawful claim of reduced sugars are the exceptions (Annex I.II).
func (c *pass) judgeSolids() {
	s, b := c.product.Solids, c.R.Brix
	if s == nil || !(b.Value > 0) || b.Value > s.Least || b.Value == s.Least && !s.More {
		return
	}
	if s.Sweetened && len(c.sweetened().sweeteners) > 0 || c.reducedSugar(s, b.Value) {
		return
	}
	hint := "boil further, or call it " + c.say("product.spread") + ` and write kind = "spread"`
	if s.ReducedTo > 0 {
		hint += fmt.Sprintf("; \"reduced sugar\" is for %g to %g %%", s.ReducedFrom, s.ReducedTo)
	}
	msg := fmt.Sprintf("soluble solids of %.1f %% are too low: %s needs %s%g %%", b.Value, c.printed(c.product), map[bool]string{true: "more than "}[s.More], s.Least)
	cite := cmp.Or(s.Cite, c.product.Cite)
	if b.How == cook.Measured {
		c.fail("solids-too-low", "cook.brix", msg).Hinted(hint).Cited(cite)
		return
	}
	c.L.Warnf("solids-too-low", c.BatchFile(), "cook", "%s (%s, not measured)", msg, b.How).Hinted("measure with a refractometer; " + hint).Cited(cite)
}

// reducedSugar reports whether the name claims reduced sugars and the solids
// rule lets it: inside a range, or under the rules on claims.
func (c *pass) reducedSugar(s *place.SolidsRule, brix float64) bool {
	claimed := false
	for _, w := range strings.Split(c.say("claim.reduced-sugar"), "|") {
		claimed = claimed || strings.Contains(words.Fold(c.B.Name), words.Fold(w))
	}
	switch {
	case !claimed:
		return false
	case s.ReducedTo > 0:
		return brix >= s.ReducedFrom && brix <= s.ReducedTo
	case s.Reduced:
		c.L.Warnf("reduced-sugar-claim", c.BatchFile(), "name", "\"reduced sugar\" is a nutrition claim: at least 30 %% less sugars than a like product, and a nutrition declaration on the label").
			Hinted("the exemption of small makers ends with a claim; ask your food authority").Cited("Regulation (EC) 1924/2006 Annex; Regulation (EU) 1169/2011 Art 49")
	}
	return s.Reduced
}
