package cook

import (
	"cmp"
	"fmt"
	"strings"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

const (
	srcPH       = srcGuide1 + "; FDA, Approximate pH of Foods (2003)"
	srcAcidFood = "21 CFR 114 (acidified foods)"
	srcWater    = "Norrish 1966, K = 6.47 for sucrose, an estimate; C. botulinum needs 0.93 or more (FDA, Fish and Fishery Products Hazards, from memory, unverified)"
	srcChutney  = "USDA AIB 539 rev. 2009; So Easy to Preserve 2006"
)

// keepByAcid judges the acid: a measured pH, else a tested recipe, else every
// line of the pot. What is not plainly acid wants a pH or a Brix that was
// measured, or the refrigerator.
func (c *calc) keepByAcid(v *verdict) {
	switch {
	case c.r.PHMeasured:
		c.keepByPH(v)
	case c.tested():
		class := ShelfShort
		if c.sour.ok() {
			class = Shelf
		}
		v.atLeast(class, Evidence{"a tested recipe, unchanged: " + c.recipe.Cite() + ", " + c.recipe.Page, Confirmed, "recipe", c.recipe.Source})
	case c.sour.ok():
		v.atLeast(Shelf, rule("everything in the pot is acid, or a trace beside the acid fruit", srcPH))
	case c.drySugar():
		v.atLeast(ShelfShort, Evidence{fmt.Sprintf("not plainly acid (%s), but measured at %.1f °Brix: water activity about %.2f", c.notAcid(), c.r.Brix.Value, pantry.WaterActivity(c.r.Brix.Value, 0)),
			Measured, "cook.brix", srcWater})
	default:
		c.notPlainlyAcid(v)
	}
	c.keepByKind(v)
}

// keepByPH: to 4.2 a reading passes; to 4.6 it is too near the limit to be
// taken for granted; above, boiling water does not do.
func (c *calc) keepByPH(v *verdict) {
	ph := c.r.PHHigh
	read := Evidence{fmt.Sprintf("measured pH %.2f", ph) + c.readBy(), Measured, "cook.ph", srcGuide1}
	switch {
	case ph <= safePH:
		v.atLeast(Shelf, read)
	case ph <= acidLimit:
		read.Source += "; " + srcAcidFood
		v.atLeast(ShelfShort, read)
		c.warnf("ph-near-limit", "cook.ph", "pH %.2f is close to 4.6, the limit of what boiling water preserves", ph).
			Hinted("add acid by a tested recipe, measure three jars after a day, and ask your state: food made acid to 4.6 is an acidified food, which several states do not take from a home kitchen").
			Cited(srcAcidFood + "; " + srcGuide1)
	default:
		v.perish(read)
		c.warnf("low-acid", "cook.ph", "pH %.2f is above 4.6: this can't be kept by boiling-water processing", ph).
			Hinted("refrigerate or freeze it; your state may not let you sell it from a home kitchen").Cited(srcGuide1 + "; 21 CFR 114")
	}
}

func (c *calc) readBy() string {
	s := ""
	if d := c.b.Cook.PHDate; !d.IsZero() {
		s += " on " + d.String()
	}
	if m := strings.TrimSpace(c.b.Cook.PHMeter); m != "" {
		s += " (" + m + ")"
	}
	return s
}

// drySugar: a refractometer read full sugar, which binds the water.
// Hot jam reads wrong.
func (c *calc) drySugar() bool {
	return c.r.Brix.How == Measured && !c.coarse && !c.doubted && c.r.Brix.Value >= jamBrix-0.05
}

// notAcid names what keeps the pot from being plainly acid.
func (c *calc) notAcid() string {
	return cmp.Or(naming(append(c.lines(c.sour.low), c.lines(c.sour.unknown)...)), "water with no acid fruit to carry it")
}

func (c *calc) notPlainlyAcid(v *verdict) {
	const hint = "measure the pH of the finished batch (cook.ph) or its Brix (cook.brix), or follow a tested recipe unchanged (recipe, unchanged = true)"
	low, unknown := c.lines(c.sour.low), c.lines(c.sour.unknown)
	if len(low) > 0 {
		list, where := naming(low), linePath(low[0])+".name"
		v.perish(rule("may be above pH 4.6: "+list, srcPH))
		c.warnf("low-acid", where, "%s may be above pH 4.6; the label will say refrigerate", list).Hinted(hint).Cited(srcPH)
	}
	if len(unknown) > 0 {
		list, where := naming(unknown), linePath(unknown[0])+".name"
		v.perish(rule("acidity not known, so taken as low: "+list, srcOwn))
		c.warnf("acid-unknown", where, "the acidity of %s is not known, or there is more of it than acid fruit bears; the label will say refrigerate", list).
			Hinted(hint).Cited(srcGuide1)
	}
	if c.sour.known() {
		v.perish(rule("no acid fruit that carries the water and sugar", srcOwn))
		if c.incomplete || len(c.r.Lines) == 0 {
			return
		}
		c.warnf("acid-unknown", "ingredient", "there is no acid fruit in it, or too little for the water; the label will say refrigerate").Hinted(hint).Cited(srcGuide1)
	}
}

// keepByKind: chutney and relish, and curd, keep by tested recipes only.
func (c *calc) keepByKind(v *verdict) {
	switch {
	case c.b.Product == batch.Curd && c.tested():
		v.atLeast(Cold, rule("curd by a tested recipe", srcCurd))
	case c.b.Product == batch.Curd:
		v.perish(rule("only the tested lemon curd has a process", srcCurd))
		c.warnf("untested-curd", "kind", "curd keeps by a tested recipe alone; the label will say refrigerate").
			Hinted("follow the tested lemon curd unchanged: recipe, unchanged = true").Cited(srcCurd)
	case (c.b.Product == batch.Chutney || c.b.Product == batch.Relish) && !c.tested() && !c.r.PHMeasured:
		v.atLeast(Cold, rule("only tested chutney and relish recipes have a process", srcChutney))
		c.warnf("untested-chutney", "kind", "chutney and relish are shelf-stable only by a tested recipe or a pH reading; the label will say refrigerate").
			Hinted("record recipe and unchanged, or cook.ph").Cited("USDA AIB 539 rev. 2009")
	}
}

// lines gives lines by number, without those the never-list speaks of: once is
// enough.
func (c *calc) lines(numbers []int) (out []Line) {
	for _, i := range numbers {
		if _, never := c.never[i]; !never {
			out = append(out, c.r.Lines[i])
		}
	}
	return out
}

// keepByNever holds the pot against the list that nothing unlocks.
func (c *calc) keepByNever(v *verdict) {
	for i, ln := range c.r.Lines {
		n, ok := c.never[i]
		switch {
		case !ok, n.Knob && c.sour.trace[i], c.tested() && (n.Unless == "tested" || n.Unless == c.recipe.ID):
			continue
		}
		v.perish(rule(ln.Name+": "+n.Reason, n.Source))
		hint := "refrigerate or freeze it: no reading and no note changes that"
		switch n.Unless {
		case "":
		case "tested":
			hint = "refrigerate or freeze it, unless you follow a tested recipe unchanged (recipe, unchanged = true)"
		default:
			hint = fmt.Sprintf("refrigerate or freeze it; only one recipe has a process: recipe = %q, unchanged = true", n.Unless)
		}
		c.warnf("never-shelf", ln.Paths[0]+".name", "no shelf with %s in it: %s", ln.Name, n.Reason).Hinted(hint).Cited(n.Source)
	}
}
