package cook

import (
	"fmt"
	"strings"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Sources of the keeping rules.
const (
	srcGuide1  = "USDA Complete Guide to Home Canning, Guide 1"
	srcNCHFP   = "NCHFP, Storing Home-Canned Jams and Jellies"
	srcOpened  = "NCHFP wording, read in a copy: full-sugar cooked jam best within 1 month of opening, refrigerated"
	srcSeal    = "Michigan State University Extension: unsealed, refrigerate and eat in 2-3 days"
	srcOwn     = "own cautious default, no source"
	srcCurd    = "NCHFP, canned lemon curd"
	srcInfants = "Quebec public health institute; CDC says the same (from memory, unverified)"
	srcFreezer = "Michigan State University Extension 1997: uncooked jam up to 4 weeks refrigerated, up to a year frozen; the shorter 3 weeks is taken"
	srcNorrish = "Norrish 1966, ln aw = ln xw - 6.47 xs² for sucrose; good to 0.01, the pulp not counted; 0.85 is the limit of 21 CFR 114.3(b), (d)" // read in a copy of 1 April 2002 on 27 Nov 2026
	srcFull    = "21 CFR 150.160 (65 %); USDA AIB 539"
)

// mostNorrish is up to where water activity is estimated: beyond it lies no
// syrup the constants were found for (own reading).
const mostNorrish = 80

// verdict gathers reasons; the most cautious class wins.
type verdict struct {
	class      Class
	perishable bool // low acid, egg or dairy: keeps shortest, even refrigerated
	full       bool // full sugar
	processed  bool // for the time of the altitude
	reasons    []Evidence
	decisive   string // source of the reason that raised the class last
}

var caution = map[Class]int{Shelf: 0, ShelfShort: 1, Cold: 2, Refrigerator: 3, Freezer: 3}

func (v *verdict) because(e Evidence) { v.reasons = append(v.reasons, e) }

// atLeast raises the class to one at least as cautious and says why.
func (v *verdict) atLeast(k Class, e Evidence) {
	if caution[k] > caution[v.class] {
		v.class, v.decisive = k, e.Source
	}
	v.because(e)
}

// perish raises the class to the refrigerator, for food that spoils there too.
func (v *verdict) perish(e Evidence) {
	v.perishable = true
	v.atLeast(Cold, e)
}

// rule is a fact that a table or handbook carries.
func rule(fact, source string) Evidence { return Evidence{Fact: fact, How: Tabled, Source: source} }

// keeping works out how a sealed jar keeps. It never says that a jar is safe:
// it says how long and where, by the facts recorded.
func (c *calc) keeping() {
	v := &verdict{class: Shelf}
	written := c.written()
	c.tellPoisons(written)
	c.never, c.sour = c.neverRows(written), c.judgeAcid()
	c.findRecipe()
	v.full = c.fullSugar()
	c.keepBySugar(v)
	c.keepByAcid(v)
	c.keepByNever(v)
	if !c.keptCold(v) {
		c.keepByProcess(v)
	}
	c.r.Keeping.Class, c.decisive = v.class, v.decisive
	c.r.Keeping.Reasons = v.reasons
	c.times(v)
	c.r.Keeping.Times = v.reasons[len(c.r.Keeping.Reasons):]
	c.honey()
}

func (c *calc) keepBySugar(v *verdict) {
	brix := Reading{c.sugarBrix(), c.r.Brix.How}
	fact := func(words string) Evidence {
		return Evidence{fmt.Sprintf("%s: %s %.1f °Brix", words, brix.How, brix.Value), brix.How, c.brixPath(), srcNCHFP}
	}
	bound := func(words, source string) Evidence { // by sugar that binds the water
		e := fact(words)
		e.Source = source
		if c.incomplete || brix.Value > mostNorrish {
			return e
		}
		e.Fact += fmt.Sprintf(", water activity about %.2f (Norrish's equation)", pantry.WaterActivity(brix.Value, 0))
		e.Source = source + "; " + srcNorrish
		return e
	}
	switch {
	case c.rejected:
		v.atLeast(Cold, Evidence{"a reading was taken that can't be right, so nothing is known of the sugar", Given, c.brixPath(), srcOwn})
	case c.doubted:
		v.atLeast(Cold, Evidence{"two readings of the sugar contradict each other, and the lower would not keep", Given, c.brixPath(), srcOwn})
	case v.full:
		v.atLeast(Shelf, bound("full sugar", srcFull))
	case c.b.Product == batch.Curd: // egg decides
	case c.pectinSugar():
		v.atLeast(ShelfShort, fact("as much sugar as fruit, and pectin, but little over half is sugar by the estimate"))
	case brix.Value >= 60 && (brix.How == Measured || c.r.Yield.How == Measured || c.sweetness() >= leastSugar):
		v.atLeast(ShelfShort, bound("between 60 and 65 °Brix, loses colour and flavour sooner", srcNCHFP))
	case c.b.Product == batch.Butter:
		v.atLeast(ShelfShort, fact("fruit butter, less sugar than jam"))
	case c.tested() || c.r.PHMeasured && c.r.PHHigh <= acidLimit:
		v.atLeast(ShelfShort, fact("reduced sugar, but the recipe is tested or the pH was measured"))
	default:
		short := fact("reduced sugar, and no pH of 4.6 or below or tested recipe is recorded")
		if brix.Value >= 60 {
			short.Fact = fmt.Sprintf("too little sugar for the %.0f °Brix that is assumed, and nobody measured", brix.Value)
		}
		short.Source = srcOwn
		v.atLeast(Cold, short)
		if c.incomplete || len(c.r.Lines) == 0 {
			return
		}
		c.warnf("reduced-sugar", "cook", "%s; the label will say refrigerate", short.Fact).
			Hinted("record cook.ph, or recipe if you followed a tested one unchanged, or take a refractometer reading").Cited(srcNCHFP)
	}
}

// brixPath is what the maker wrote that the Brix rests on; "" = the recipe alone.
func (c *calc) brixPath() string {
	k := c.b.Cook
	switch {
	case k.Brix != nil:
		return "cook.brix"
	case k.FinishedPot != 0:
		return "cook.finished_pot"
	case k.TempC != nil:
		return "cook.temperature"
	}
	return ""
}

// fullSugar reports a spread that keeps by its sugar: 65 °Brix, measured or of
// a recipe with sugar enough to get there; or an added-pectin batch with as much
// sweetener as fruit whose Brix nobody read off a refractometer and whose pot
// nobody weighed.
// Published full-sugar pectin recipes (USDA AIB 539) compute to 60-64 °Brix by
// the 5 % rule, so the estimate alone must not call them reduced. A reading that
// was rejected leaves nothing to believe.
func (c *calc) fullSugar() bool {
	r, ratio := c.r, c.sweetness()
	switch brix := c.sugarBrix(); {
	case c.doubted:
		return false
	case r.Brix.How == Measured:
		return brix >= jamBrix-0.05
	case c.rejected, c.pot.boil.Loss > 0 && (c.b.Product == batch.Chutney || c.b.Product == batch.Relish): // how far it is boiled down is a guess
		return false
	case brix >= c.fullBrix()-0.05:
		return ratio >= leastSugar || r.Yield.How == Measured
	default: // a pot that was weighed was not finished by the 5 % rule
		return brix >= 59 && c.hasPectin() && ratio >= 1 && r.Yield.How != Measured
	}
}

// fullBrix is the °Brix of full sugar: 65, or where published recipes of the
// kind finish (marmalade, 60), when nothing but the recipe is known.
func (c *calc) fullBrix() float64 {
	if b, ok := c.p.Boil(string(c.b.Product), "long boil"); ok && b.Brix >= 60 && c.brixPath() == "" {
		return b.Brix
	}
	return jamBrix
}

// pectinSugar reports a full-sugar pectin recipe that the 5 % rule puts below
// 59 °Brix: published ones compute to 56-57 (USDA HGB 56, pineapple jam with
// liquid pectin) and lose nearer 8 % (testdata/published).
func (c *calc) pectinSugar() bool {
	return c.r.Brix.How != Measured && c.r.Yield.How != Measured && !c.rejected && c.sugarBrix() >= 55 && c.hasPectin() && c.sweetness() >= 1
}

// sugarBrix is the Brix that keeping rests on: the reading, or the estimate
// with the solids of sugar, fruit and acid alone. Nuts, salt and pectin make
// the syrup denser and keep nothing.
func (c *calc) sugarBrix() float64 {
	r, loss := c.r, c.pot.loss
	if loss < 0 { // boiled to a Brix: as far as the row allows with the sugar that is there, nuts or no nuts
		loss = c.pot.boil.Loss / 100
	}
	if r.Brix.How == Measured || r.Yield.How != Measured && c.pot.loss < 0 && loss <= 0 {
		return r.Brix.Value
	}
	var in, sweet, insoluble, water float64
	for _, ln := range r.Lines {
		if ln.Removed {
			continue
		}
		g, sol, rest := ln.Mass.Grams(), ln.Soluble.Grams(), ln.Insoluble.Grams()
		water += positive(g - sol - rest)
		switch {
		case ln.IsWater: // the salts of the tap are no sugar
			in += g
		case ln.IsSweet, ln.IsFruit, ln.Row.Class == "juice", ln.Row.Class == "dried fruit", c.traceOf(ln).Group == "acid":
			if k := ln.Row.Class; (k == "vegetable" || k == "spice") && ln.Row.SugarsG >= 0 { // ginger, sweet potatoes: the rest is starch
				sol = min(sol, g*ln.Row.SugarsG/100)
			}
			in, sweet, insoluble = in+g, sweet+sol, insoluble+rest
		}
	}
	syrup := c.pot.pot - insoluble
	if r.Yield.How != Measured {
		syrup = sweet + positive(water-loss*in)
	}
	if syrup <= 0 {
		return 0
	}
	return min(r.Brix.Value, percent(sweet, syrup))
}

// leastSugar is how much sweetener a part of fruit needs before an assumed
// finish of 65 °Brix is believed: published long-boil recipes start at 0.53
// (testdata/published, fig jam).
const leastSugar = 0.5

// sweetness is sweetener by weight of fruit; large when there is no fruit.
func (c *calc) sweetness() float64 {
	sweet, fruit := 0.0, 0.0
	for _, ln := range c.r.Lines {
		if ln.IsSweet {
			sweet += ln.Mass.Grams()
		}
		if ln.IsFruit {
			fruit += ln.Mass.Grams()
		}
	}
	return sweet / max(fruit, 1)
}

// keptCold: freezer, refrigerator and uncooked spreads are never shelf products.
func (c *calc) keptCold(v *verdict) bool {
	cooked, way, raw := c.b.Cook.Method, c.b.Process.Method, c.raw()
	switch {
	case way == "freezer", way == "" && cooked == "freezer":
		v.atLeast(Freezer, Evidence{"freezer spread: never a shelf product", Given, "process.method", srcNCHFP})
	case way == "refrigerator", raw:
		v.atLeast(Refrigerator, Evidence{"refrigerator or uncooked spread: never a shelf product", Given, "process.method", srcNCHFP})
	default:
		return false
	}
	if raw && way != "freezer" && way != "refrigerator" && way != "" {
		c.warnf("uncooked-processed", "process.method", "an uncooked spread is not made for the shelf by %s processing", way).
			Hinted("freeze or refrigerate it").Cited(srcNCHFP)
	}
	return true
}

// naming lists lines by name.
func naming(lines []Line) string {
	var all []string
	for _, ln := range lines {
		all = append(all, ln.Name)
	}
	return strings.Join(all, ", ")
}

// honey is a fact for babies, whatever the process.
func (c *calc) honey() {
	if honey := c.r.Allergy().Honey; len(honey) > 0 {
		c.notef("honey-infants", honey[0].Path, "honey, raw or cooked, is not for children under 12 months").
			Hinted("the label says so; tell those you give it to").Cited(srcInfants)
	}
}
