package eu

import (
	"cmp"
	"math/bits"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// known reports whether the fruit content can be told at all: some fruit
// counts, and nothing unknown makes up a fiftieth of the batch or more.
func (c *pass) fruitKnown() bool {
	ok := len(c.fruits) > 0
	if !ok {
		c.fail("fruit-content-zero", "ingredient", "the fruit content would be 0 g: no ingredient counts as the fruit of "+c.printed(c.product)).
			Hinted("write the fruit as the table knows it, or an [[ingredient]] of your own in kitchen.toml with kind and fruit_class; juice counts in jelly only").Cited(c.product.Cite)
	}
	for _, ln := range c.R.Lines {
		if c.unknown(ln) && !c.among(c.product.Only, ln) && float64(ln.Mass)*50 >= float64(c.R.Input) {
			c.fail("fruit-content-unknown", draft.LinePath(ln), "the fruit content can't be told: nothing is known of "+ln.Name).
				Hinted(`write an [[ingredient]] of your own in kitchen.toml with its kind, and fruit_class if it is a fruit ("general")`).Cited(c.product.Cite)
			ok = false
		}
	}
	return ok
}

// recheck works a prescribed figure out a second way, in whole numbers from the
// lines of the batch, and reads it back off the block: a figure that is 0 or
// differs does not leave the house.
func (c *pass) recheck(k label.Kind) {
	b, ok := c.C.Find(k)
	if !ok {
		return
	}
	want := int64(c.R.Brix.Value*1000+500) / 1000
	if k == label.Fruit {
		want = c.fruitAgain()
	}
	if got := firstNumber(b.Text()); got != want || got == 0 {
		c.L.Errorf("figure-wrong", c.BatchFile(), b.Path, "the label would say %q, and a second reckoning gives %d g", b.Text(), want).
			Hinted("this is a fault of the program if the batch is as written: please report it").Cited(b.Cite)
	}
}

// fruitAgain adds up the counted lines in whole micrograms and divides in
// integers, rounded down, per 100 g.
func (c *pass) fruitAgain() int64 {
	var sum uint64
	for _, ln := range c.R.Lines {
		if c.isFruit(ln) {
			sum += uint64(lessWater(ln))
		}
	}
	hi, lo := bits.Mul64(sum, 100)
	yield := uint64(c.R.Yield.Mass) // no figure is made without one
	if hi >= yield {
		return -1
	}
	q, _ := bits.Div64(hi, lo, yield)
	return int64(min(q, 1<<62))
}

// firstNumber reads the first whole number of a text; -1 = none.
func firstNumber(text string) int64 {
	at := strings.IndexAny(text, "0123456789")
	if at < 0 {
		return -1
	}
	end := at
	for end < len(text) && text[end] >= '0' && text[end] <= '9' {
		end++
	}
	n, err := strconv.ParseInt(text[at:end], 10, 64)
	if err != nil {
		return -1
	}
	return n
}

// fruit adds the fruit content, rounded down to whole grams (Art 2(3); the
// directive sets no rounding).
func (c *pass) fruit() {
	if !c.owesFruit() {
		return
	}
	defer c.recheck(label.Fruit)
	cite := c.product.Cite
	if c.R.Yield.Mass <= 0 {
		c.missing("no-yield", label.Fruit, "cook", "the fruit content can't be told without a yield").
			Hinted("weigh the finished pot and write it under [cook]").Cited(cite)
		return
	}
	if !c.fruitKnown() {
		return
	}
	if c.R.Yield.How == cook.Estimated {
		c.L.Warnf("fruit-estimated", c.BatchFile(), "cook", "the fruit content rests on an estimated yield").
			Hinted("weigh the finished pot and write it under [cook]").Cited(cite)
	} else if _, cups := c.loosely(); len(cups) > 0 {
		c.L.Warnf("fruit-estimated", c.BatchFile(), "ingredient", "the fruit content rests on %s measured in cups or pieces and not weighed", strings.Join(cups, ", ")).
			Hinted("weigh the fruit as it goes into the pot: amount = \"1.2 kg\"").Cited(cite)
	}
	g := int(roundedDown(sumOf(c.fruits), c.R.Yield.Mass, 100))
	if g <= 0 {
		c.fail("fruit-content-zero", "ingredient", "the fruit content would be 0 g in 100 g").Hinted("check the amounts and the yield").Cited(cite)
		return
	}
	c.add(label.Block{Kind: label.Fruit, Min: c.clear(), Exact: true, With: []label.Kind{label.Identity}, Path: "ingredient",
		Runs: []label.Run{{Text: c.say("jam.fruit", "g", strconv.Itoa(g))}}, Cite: cite})
}

// sugar adds the total sugar content where it is still asked. It is the
// refractometer reading of the finished product at 20 °C: measured, never
// computed (Art 2(4)).
func (c *pass) sugar() {
	if !c.governed || !c.product.Owes("sugar", c.on) {
		return
	}
	defer c.recheck(label.Sugar)
	b := c.R.Brix
	if b.How != cook.Measured || b.Value <= 0 || b.Value > 100 {
		c.pending("brix-not-measured", label.Sugar, "cook.brix", draft.BrixToCome, "the total sugar content must be measured, and no refractometer reading is given",
			"measure the finished food at 20 °C and write brix under [cook]; a computed value is not allowed", c.law.SugarStatement)
		return
	}
	g := int64(b.Value + 0.5)
	if g == 0 {
		c.fail("sugar-content-zero", "cook.brix", "a refractometer reading below 0.5 % is no jam's").Hinted("check brix").Cited(c.law.SugarStatement)
		return
	}
	c.add(label.Block{Kind: label.Sugar, Min: c.clear(), Exact: true, With: []label.Kind{label.Identity}, Path: "cook.brix",
		Runs: []label.Run{{Text: c.say(cmp.Or(c.law.SugarPhrase, "jam.sugar"), "g", strconv.FormatInt(g, 10))}}, Cite: c.law.SugarStatement})
}

// clear is the least height of words that must be clearly visible (Directive
// 2001/113/EC Art 2(5)).
func (c *pass) clear() label.Height {
	return label.Height{On: label.XHeight, Length: c.x * unit.Length(c.law.Clear) / 100}
}

// prescribed is a prescribed statement of one phrase.
func prescribed(id, text, path, cite string, beside bool) label.Block {
	b := label.Block{ID: id, Kind: label.Statement, Exact: true, Runs: []label.Run{{Text: text}}, Cite: cite, Path: path}
	if beside {
		b.With = []label.Kind{label.Identity}
	}
	return b
}
