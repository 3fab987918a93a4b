package rule

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// identity adds the name of the food and tests it against the jam rules.
func (c *euCase) identity() {
	name := ""
	if c.r.Batch != nil {
		name = strings.TrimSpace(c.r.Batch.Name)
	}
	cite := "Regulation (EU) 1169/2011 Art 17"
	if c.r.Batch != nil && c.law.inJamRules(c.r.Batch.Kind) {
		fruit := c.law.euFruits(c.r)
		product := c.product(name)
		name, cite = c.reservedName(name, product, fruit), c.jam.Cite
		c.judge(product, fruit)
	} else {
		c.outside(name)
	}
	if name == "" {
		c.missing("no-name", "name", "the food has no name").Hinted(`write name = "Strawberry jam"`).Cited(cite)
		return
	}
	c.add(label.Block{Kind: label.Identity, Bold: true, Runs: []label.Run{{Text: name, Bold: true}},
		With: []label.Kind{label.Net}, Cite: cite, Path: "name"})
}

// product is the phrase key of the reserved product name: jam, extra-jam,
// jelly, extra-jelly or marmalade. "Extra" is the maker's wish, read from the
// name.
func (c *euCase) product(name string) string {
	p := "jam"
	switch c.r.Batch.Kind {
	case batch.Jelly:
		p = "jelly"
	case batch.Marmalade:
		return "marmalade"
	}
	if euWord(name, "extra") {
		return "extra-" + p
	}
	return p
}

// reservedName keeps the maker's name when it says the product and the fruit
// as the directive asks (Art 2(2)), and otherwise composes one.
func (c *euCase) reservedName(name, product string, fruit []euShare) string {
	if len(fruit) == 0 {
		if product == "marmalade" {
			product = c.jam.Marmalade
		}
		c.l.Warnf("no-fruit", c.batchFile(), "ingredient", "no ingredient counts as fruit, so the name can't be checked").Cited(citeJam)
		return euOr(name, upper(c.say("product."+product)))
	}
	made := c.composed(product, fruit)
	if c.saysProduct(name, product) && c.saysFruit(name, fruit) {
		return name
	}
	c.l.Notef("legal-name", c.batchFile(), "name", "%q is not the name the jam rules ask, so the label also says %q", name, made).
		Hinted("the name is the product with its fruit, heaviest first").Cited(citeJam)
	return made
}

func euOr(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// composed names every fruit, heaviest first: "Strawberry and rhubarb jam".
func (c *euCase) composed(product string, fruit []euShare) string {
	var names []string
	for _, f := range fruit {
		n := c.ingredientName(f.Line)
		if c.lang == "en" {
			n = euSingular(n)
		}
		if c.lang == "fr" {
			n = euDe(n)
		}
		if !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return upper(c.say("name.composed", "fruits", joined(names, c.say("and")), "product", c.say("product."+product)))
}

// euDe is the French "de" with its elision.
func euDe(n string) string {
	if strings.ContainsAny(strings.ToLower(n[:min(1, len(n))]), "aeiouh") || strings.HasPrefix(n, "é") {
		return "d’" + n
	}
	return "de " + n
}

func (c *euCase) saysProduct(name, product string) bool {
	want := strings.ToLower(c.say("product." + product))
	low := strings.ToLower(name)
	for _, also := range c.jam.Also {
		if strings.HasSuffix(product, "jam") && strings.Contains(low, strings.ToLower(also)) {
			return strings.HasPrefix(product, "extra") == euWord(name, "extra")
		}
	}
	return strings.Contains(low, want) || c.lang == "de" && strings.Contains(low, strings.TrimSuffix(want, " extra")) &&
		strings.HasPrefix(product, "extra") == euWord(name, "extra")
}

// saysFruit: one or two fruits are named in order of weight; three or more may
// be "mixed fruit" instead.
func (c *euCase) saysFruit(name string, fruit []euShare) bool {
	if len(fruit) > 2 && strings.Contains(strings.ToLower(name), strings.ToLower(c.say("name.mixed"))) {
		return true
	}
	last := -1
	for _, f := range fruit {
		at := c.fruitAt(name, f)
		if at < last || at < 0 {
			return false
		}
		last = at
	}
	return true
}

func (c *euCase) fruitAt(name string, f euShare) int {
	for _, n := range []string{c.ingredientName(f.Line), f.Line.Name} {
		words := strings.Fields(n)
		for i := len(words) - 1; i >= 0; i-- {
			stem := strings.ToLower(euStem(strings.Trim(words[i], "(),"), c.lang))
			if at := strings.Index(strings.ToLower(name), stem); at >= 0 && len(stem) > 2 {
				return at
			}
		}
	}
	return -1
}

// judge tests fruit content, mixtures and soluble solids.
func (c *euCase) judge(product string, fruit []euShare) {
	if product == "marmalade" {
		c.judgeMarmalade(fruit)
	} else if c.r.Yield.Mass > 0 && len(fruit) > 0 {
		c.judgeFruit(product, fruit)
	}
	c.judgeSolids()
}

func (c *euCase) judgeFruit(product string, fruit []euShare) {
	have := euPerKilo(fruit, c.r.Yield.Mass)
	least, memory := c.jam.euMinimum(fruit)
	extra := strings.HasPrefix(product, "extra-")
	need := least[0]
	if extra {
		need = least[1]
		c.judgeMixture(fruit)
	}
	unverified := ""
	if memory {
		unverified = " (minimum from memory, unverified)"
	}
	if have < need {
		c.fail("too-little-fruit", "name", c.say("product."+product)+" needs "+euGrams(need)+" of fruit in 1000 g, this batch has "+euGrams(have)+unverified).
			Hinted("call it " + c.say("product.spread") + ` and write kind = "spread", or use more fruit`).Cited(c.jam.Cite)
		return
	}
	if memory {
		c.l.Notef("minimum-unverified", c.batchFile(), "name", "the minimum of %s of fruit in 1000 g is from memory, unverified; this batch has %s", euGrams(need), euGrams(have)).Cited(c.jam.Cite)
	}
}

func euGrams(g int) string { return strconv.Itoa(g) + " g" }

// judgeMixture: some fruits may not be mixed with others in extra jam (Annex I).
func (c *euCase) judgeMixture(fruit []euShare) {
	if len(fruit) < 2 {
		return
	}
	for _, f := range fruit {
		if slices.Contains(c.law.NeverMixed, f.Line.Key) {
			c.fail("extra-mixture", linePath(f.Line), f.Line.Name+" may not be mixed with other fruit in extra jam").
				Hinted("leave \"extra\" out of the name").Cited(citeJam)
		}
	}
}

func (c *euCase) judgeMarmalade(fruit []euShare) {
	for _, f := range fruit {
		if !slices.Contains(c.law.Citrus, f.Line.Key) {
			c.fail("marmalade-not-citrus", linePath(f.Line), "marmalade is made of citrus fruit only, and "+f.Line.Name+" is none").
				Hinted("call it " + c.say("product.jam")).Cited(c.jam.Cite)
			return
		}
	}
	if have := euPerKilo(fruit, c.r.Yield.Mass); c.r.Yield.Mass > 0 && have < c.jam.Citrus {
		c.fail("too-little-fruit", "name", "marmalade needs "+euGrams(c.jam.Citrus)+" of citrus in 1000 g, this batch has "+euGrams(have)).Cited(c.jam.Cite)
	}
	c.l.Notef("endocarp", c.batchFile(), "name", "at least 75 g in 1000 g must come from the flesh of the fruit; that can't be told from the notes").Cited(citeJam)
}

// judgeSolids tests the soluble dry matter by refractometer; sweetened and
// lawful reduced-sugar products are the exceptions (Annex I, II).
func (c *euCase) judgeSolids() {
	b := c.r.Brix
	floor := float64(c.jam.Solids)
	if !(b.Value > 0) || b.Value > floor || b.Value == floor && !c.jam.More {
		return
	}
	lo, hi := c.law.ReducedFrom, c.law.ReducedTo
	if hi > 0 && b.Value >= float64(lo) && b.Value <= float64(hi) && c.r.Batch != nil && euWord(c.r.Batch.Name, "reduced sugar") {
		return
	}
	hint := "boil further, or call it " + c.say("product.spread") + ` and write kind = "spread"`
	if hi > 0 {
		hint += fmt.Sprintf("; \"reduced sugar\" is for %d to %d %%", lo, hi)
	}
	msg := fmt.Sprintf("soluble solids of %.1f %% are too low: the jam rules ask %s%d %%", b.Value, map[bool]string{true: "more than "}[c.jam.More], c.jam.Solids)
	cite := euOr(c.jam.SolidsCite, citeJam)
	if b.How == cook.Measured {
		c.fail("solids-too-low", "cook.brix", msg).Hinted(hint).Cited(cite)
		return
	}
	c.l.Warnf("solids-too-low", c.batchFile(), "cook", "%s (%s, not measured)", msg, b.How).Hinted("measure with a refractometer; " + hint).Cited(cite)
}

// fail blocks printing for sale when the facts are measured; on an estimated
// yield or a gift it warns.
func (c *euCase) fail(code, path, message string) *diag.Diagnostic {
	if c.gift || c.r.Yield.How == cook.Estimated && code == "too-little-fruit" {
		return c.l.Warnf(code, c.batchFile(), path, "%s", message)
	}
	return c.l.Errorf(code, c.batchFile(), path, "%s", message)
}

// outside handles kinds the jam rules do not govern: a reserved name may not
// stand on them alone.
func (c *euCase) outside(name string) {
	for _, p := range []string{"jam", "jelly", "marmalade"} {
		if euWord(name, c.say("product."+p)) {
			c.l.Warnf("reserved-name", c.batchFile(), "name", "%q is a reserved name, and this batch is of another kind", c.say("product."+p)).
				Hinted(`write kind = "` + p + `" if it is one, or choose another name`).Cited(citeJam)
		}
	}
	if c.r.Batch != nil && c.r.Batch.Kind == batch.Curd && c.law.CurdSolids > 0 && c.r.Brix.Value > 0 && c.r.Brix.Value < float64(c.law.CurdSolids) {
		c.l.Warnf("curd-solids", c.batchFile(), "cook", "curd needs %d %% soluble solids here, this batch has %.1f %% (%s)", c.law.CurdSolids, c.r.Brix.Value, c.r.Brix.How).
			Cited("SI 2003/3120, from a secondary source")
	}
}
