package cook

import (
	"fmt"
	"math"
	"slices"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// The assumptions of the yield rules lie in templates/pantry/boil.csv, chosen
// where published recipes agree: they make a plan, not a measurement.
const (
	jamBrix = 65   // the usual finish, and the least of 21 CFR 150.160
	slack   = 0.03 // by how much a scale and kitchen measures may disagree
)

// mix is what is in the pot in grams: what went in less what was lifted out,
// the solids in it, and the water that was added.
type mix struct{ in, soluble, insoluble, foam, removed, water float64 }

// brixOf gives the Brix of the syrup when the pot (foam included) weighs g.
func (m mix) brixOf(g float64) float64 {
	if g-m.insoluble <= 0 || m.soluble <= 0 {
		return 0
	}
	return math.Min(100, 100*m.soluble/(g-m.insoluble))
}

// at gives what the pot weighs, foam included, when its syrup is at brix %.
func (m mix) at(brix float64) float64 { return 100*m.soluble/brix + m.insoluble }

// outcome is what one rule found: the pot with its foam, in grams.
type outcome struct {
	pot  float64
	how  How
	brix Reading
	rule string
	loss float64     // share of the pot that boils away, where the rule is one; else negative
	boil pantry.Boil // the row that decided, where nobody measured
}

// yield works out finished mass, Brix and evaporation by the first rule that
// has what it needs: weighed pot, measured Brix, thermometer, kind of batch.
func (c *calc) yield() {
	r, m := c.r, c.mix()
	o := outcome{loss: -1}
	for _, rule := range []func(mix) (outcome, bool){c.weighedPot, c.measuredBrix, c.thermometer, c.byKind} {
		var ok bool
		if o, ok = rule(m); ok {
			break
		}
	}
	o.pot = math.Min(math.Max(o.pot, 0), m.in) // an incomplete recipe can be lighter than its pot
	if m.foam > o.pot {
		c.errorf("skimmed-too-much", "cook.skimmed", "%s skimmed is more than the %s in the pot", c.say(c.b.Cook.Skimmed), c.say(grams(o.pot))).
			Hinted("check the weight of the foam")
		m.foam = 0
	}
	r.Skimmed = grams(m.foam + m.removed)
	r.Yield = Amount{min(grams(o.pot-m.foam), r.Input-r.Skimmed), o.how} // never a nanogram more than there is
	r.Evaporated = r.Input - r.Yield.Mass - r.Skimmed
	r.Brix, r.YieldRule = o.brix, o.rule
	c.pot = o
	c.rejected = c.rejected && o.how != Measured && o.brix.How != Measured
	if o.brix.How == "" {
		r.Brix = Reading{m.brixOf(o.pot), Estimated}
	}
}

func (c *calc) mix() mix {
	m := mix{soluble: c.r.Soluble.Grams(), insoluble: c.r.Insoluble.Grams(), foam: max(c.b.Cook.Skimmed.Grams(), 0)}
	for _, ln := range c.r.Lines {
		switch {
		case ln.Removed:
			m.removed += ln.Mass.Grams()
		case ln.IsWater:
			m.water += ln.Mass.Grams()
		}
	}
	m.in = c.r.Input.Grams() - m.removed
	return m
}

// weighedPot: a scale beats everything, unless it contradicts the recipe.
func (c *calc) weighedPot(m mix) (outcome, bool) {
	pot := c.b.Cook.FinishedPot.Grams() + m.foam
	if c.b.Cook.FinishedPot <= 0 {
		return outcome{}, false
	}
	if c.incomplete { // nothing to hold the weight against
		return outcome{pot: pot, how: Measured, rule: "weighed pot", loss: -1}, true
	}
	const where = "cook.finished_pot"
	switch solids := m.soluble + m.insoluble; {
	case pot > m.in*(1+slack):
		c.rejected = true
		c.errorf("pot-over-input", where, "the finished pot (%s) weighs more than went in (%s); the weight is not used", c.say(grams(pot)), c.say(c.r.Input)).
			Hinted("take the empty pot off the weight, or check the ingredients")
		return outcome{}, false
	case pot < solids*(1-slack):
		c.rejected = true
		c.errorf("pot-under-solids", where, "the finished pot (%s) weighs less than the solids in it (%s); the weight is not used", c.say(grams(pot)), c.say(grams(solids))).
			Hinted("check the weight, the tare and the ingredients; water boils off, sugar does not")
		return outcome{}, false
	case pot > m.in:
		c.warnf("pot-over-input", where, "the finished pot (%s) weighs a little more than went in (%s); no loss is counted", c.say(grams(pot)), c.say(c.r.Input)).
			Hinted("weigh the ingredients rather than measure them in cups")
	}
	o := outcome{pot: math.Min(pot, m.in), how: Measured, rule: "weighed pot", brix: Reading{m.brixOf(math.Min(pot, m.in)), Estimated}, loss: -1}
	if b, ok := c.reading(); ok {
		c.compare(b, o.brix.Value)
		o.brix = Reading{b, Measured}
	} else if o.brix.Value > 85 {
		c.warnf("brix-implausible", where, "that weight leaves %.0f %% soluble solids, which no jam reaches", o.brix.Value).Hinted("check the weight and the ingredients")
	}
	return o, true
}

func (c *calc) compare(read, balance float64) {
	if balance > 0 && math.Abs(read-balance) > mostApart {
		c.doubted = c.doubted || read-balance > mostApart && balance < jamBrix
		c.warnf("brix-disagrees", "cook.brix", "the refractometer says %.1f °Brix, the weights %.1f", read, balance).
			Hinted("one of the pot weight, the reading and the ingredients is off")
	}
}

// mostApart is how far two readings of the solids may stand apart: kitchen scales,
// cups and thermometers explain as much (own reading).
const mostApart = 8

// heldByBoil holds a refractometer reading against the thermometer: a boil that
// ended where water does, or nearly, leaves no full sugar.
func (c *calc) heldByBoil(read float64) {
	t := c.b.Cook.TempC
	if t == nil || read < jamBrix-mostApart {
		return
	}
	alt := c.altitude()
	boiled, ok := c.p.BrixAtBoilingPoint(*t, alt)
	switch low := *t < pantry.BoilingPoint(alt)+1; {
	case !ok && !low || ok && read-boiled <= mostApart || boiled >= jamBrix:
		return
	case !ok:
		boiled = 0
	}
	c.doubted = true
	c.warnf("brix-disagrees", "cook.temperature", "the refractometer says %.1f °Brix, but a boil that ended at %.1f °C leaves about %.0f", read, *t, boiled).
		Hinted("one of the two is off: read both again")
}

// reading gives the refractometer reading at 20 °C.
func (c *calc) reading() (float64, bool) {
	k := c.b.Cook
	if k.Brix == nil {
		return 0, false
	}
	if bad(k.Brix, 1, 95) {
		c.rejected = true
		c.errorf("bad-brix", "cook.brix", "a reading of %g °Brix can't be", *k.Brix).Hinted("give the refractometer's %, 1 to 95")
		return 0, false
	}
	if k.BrixTempC == nil {
		return *k.Brix, true
	}
	corr, ok := c.p.BrixTempCorrection(*k.Brix, *k.BrixTempC)
	if !ok {
		c.coarse = true
		c.warnf("brix-temperature", "cook.brix_temperature", "no correction is tabled for a reading at %.0f °C; it is used as it stands", *k.BrixTempC).
			Hinted("let the sample cool to 10-30 °C and read again").Cited("OIV-MA-AS2-02 Table I; ICUMSA 1974")
	}
	return *k.Brix + corr, true
}

// measuredBrix: solids stay, water leaves; the reading is that of the syrup.
func (c *calc) measuredBrix(m mix) (outcome, bool) {
	b, ok := c.reading()
	if !ok {
		return outcome{}, false
	}
	pot, ok := c.boiledTo(m, b, "cook.brix", 2)
	c.heldByBoil(b)
	return outcome{pot: pot, how: Estimated, rule: fmt.Sprintf("measured Brix, %.1f", b), brix: Reading{b, Measured}, loss: -1}, ok
}

// thermometer: the syrup's boiling point gives its Brix, to about ±3.
func (c *calc) thermometer(m mix) (outcome, bool) {
	t := c.b.Cook.TempC
	if t == nil {
		return outcome{}, false
	}
	alt := c.altitude()
	b, ok := c.p.BrixAtBoilingPoint(*t, alt)
	if !ok {
		c.rejected = true
		c.warnf("bad-set-temperature", "cook.temperature", "%.1f °C at the end of the boil gives no usable soluble solids; it is not used", *t).
			Hinted(fmt.Sprintf("water boils at %.1f °C there, and jam about 4.4 °C (8 °F) above", pantry.BoilingPoint(alt))).Cited("Brown 1912; USDA jelly-point table")
		return outcome{}, false
	}
	if b < jamBrix && c.p.Finished(*t, alt) {
		b = jamBrix // the jelly point, within the thermometer's accuracy
	}
	pot, ok := c.boiledTo(m, b, "cook.temperature", 5)
	return outcome{pot: pot, how: Estimated, rule: fmt.Sprintf("thermometer, %.1f °C, about %.0f ±3 °Brix", *t, b), brix: Reading{b, Estimated}, loss: -1}, ok
}

// boiledTo gives the pot at brix %; a reading below the mix's own Brix by more
// than slackBrix contradicts the recipe.
func (c *calc) boiledTo(m mix, brix float64, where string, slackBrix float64) (float64, bool) {
	pot := m.at(brix)
	switch own := m.brixOf(m.in); {
	case m.soluble <= 0:
		return 0, false
	case pot > m.in && c.incomplete:
		return m.in, true
	case pot > m.in && own-brix > slackBrix:
		c.rejected = true
		c.errorf("brix-below-mix", where, "%.1f °Brix is less than the ingredients have before any boiling (%.1f); it is not used", brix, own).
			Hinted("check the reading and the ingredients; boiling can only raise it")
		return 0, false
	case pot > m.in:
		return m.in, true
	}
	return pot, true
}

// byKind: nothing was measured, so the kind of batch decides.
func (c *calc) byKind(m mix) (outcome, bool) {
	var o outcome
	switch kind := c.b.Product; {
	case c.raw():
		o = lose(m, 0, "not cooked, nothing boils off")
	case kind == batch.Curd, kind == batch.Chutney, kind == batch.Relish:
		o = c.assumed(m, "")
	case kind == batch.Butter:
		o = c.assumed(m, "long boil")
	default:
		o = c.boil(m)
	}
	if m.in > 0 {
		c.notef("yield-estimated", "cook", "the yield of %s is an estimate (%s)", c.say(grams(o.pot-m.foam)), o.rule).
			Hinted("weigh the finished pot (cook.finished_pot) or take a refractometer reading (cook.brix)").Cited("own assumption, checked against published recipes (templates/pantry/boil.csv)")
	}
	return o, true
}

// raw reports a spread that is not boiled: said so, or one for the freezer of
// whose cooking nothing is said.
func (c *calc) raw() bool {
	k := c.b.Cook
	switch k.Method {
	case "no cook", "freezer":
		return true
	case "":
		return c.b.Process.Method == "freezer" && k.Minutes == nil && k.TempC == nil && k.SetTest == ""
	}
	return false
}

func (c *calc) boil(m mix) outcome {
	pectin := c.hasPectin()
	switch method := c.b.Cook.Method; {
	case method == "added pectin" || method == "" && pectin:
		o := c.assumed(m, "added pectin")
		if b := m.brixOf(o.pot); m.in > 0 && !c.incomplete && (b < 60 || b > 72) {
			c.notef("pectin-brix", "cook", "added pectin leaves this recipe at about %.0f °Brix; the usual range is 60-72", b).
				Hinted("check sugar against fruit, or take a reading").Cited("own assumption; 21 CFR 150.160 asks for 65 %")
		}
		return o
	case c.b.Product == batch.Spread && method == "" && c.sweetness() < leastSugar: // with sugar enough it is boiled as jam
		return c.assumed(m, "")
	}
	return c.assumed(m, "long boil")
}

func (c *calc) hasPectin() bool {
	return slices.ContainsFunc(c.r.Lines, func(ln Line) bool { return ln.Row.Class == "gelling" || ln.Row.Class == "gelling sugar" })
}
