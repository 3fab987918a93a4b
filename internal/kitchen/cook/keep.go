package cook

import (
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
)

// Sources of the keeping rules.
const (
	srcGuide1  = "USDA Complete Guide to Home Canning, Guide 1"
	srcNCHFP   = "NCHFP, Storing Home-Canned Jams and Jellies"
	srcOpened  = "NCHFP wording, read in a copy: full-sugar cooked jam best within 1 month of opening, refrigerated"
	srcSeal    = "Michigan State University Extension: unsealed, refrigerate and eat in 2-3 days"
	srcMould   = "MSU, Penn State and Illinois Extension: no paraffin, no inverting, no open kettle"
	srcOwn     = "own cautious default, no source"
	srcCurd    = "NCHFP, canned lemon curd"
	srcInfants = "Quebec public health institute; CDC says the same (from memory, unverified)"
	srcFreezer = "Michigan State University Extension 1997: uncooked jam up to 4 weeks refrigerated, up to a year frozen; the shorter 3 weeks is taken"
)

// verdict gathers reasons; the most cautious class wins.
type verdict struct {
	class      Class
	perishable bool // low acid, egg or dairy: keeps shortest, even refrigerated
	full       bool // full sugar
	processed  bool // for the time of the altitude
	reasons    []Reason
	decisive   string // source of the reason that raised the class last
}

var caution = map[Class]int{Shelf: 0, ShelfShort: 1, Cold: 2, Refrigerator: 3, Freezer: 3}

func (v *verdict) because(text, cite string) { v.reasons = append(v.reasons, Reason{text, cite}) }

// atLeast raises the class to one at least as cautious and says why.
func (v *verdict) atLeast(k Class, text, cite string) {
	if caution[k] > caution[v.class] {
		v.class, v.decisive = k, cite
	}
	v.because(text, cite)
}

// keeping works out how a sealed jar keeps. It never says that a jar is safe:
// it says how long and where, by the facts recorded.
func (c *calc) keeping() {
	v := &verdict{class: Shelf, full: c.fullSugar()}
	c.keepBySugar(v)
	c.keepByAcid(v)
	c.keepByRichness(v)
	if !c.keptCold(v) {
		c.keepByProcess(v)
	}
	c.r.Keeping.Class, c.decisive = v.class, v.decisive
	c.times(v)
	c.r.Keeping.Reasons = v.reasons
	c.honey()
}

// tested reports a published, tested recipe.
func (c *calc) tested() bool { return strings.TrimSpace(c.b.Recipe) != "" }

func (c *calc) keepBySugar(v *verdict) {
	brix := c.r.Brix
	switch {
	case v.full:
		v.atLeast(Shelf, "full sugar", "21 CFR 150.160 (65 %); USDA AIB 539")
	case c.b.Kind == batch.Curd: // egg decides
	case brix.Value >= 60 && (brix.How == Measured || c.r.Yield.How == Measured || c.sweetness() >= leastSugar):
		v.atLeast(ShelfShort, "between 60 and 65 °Brix: loses colour and flavour sooner", srcNCHFP)
	case c.b.Kind == batch.Butter:
		v.atLeast(ShelfShort, "fruit butter, less sugar than jam", srcNCHFP)
	case c.tested() || c.r.PHMeasured && c.r.PHHigh <= acidLimit:
		v.atLeast(ShelfShort, "reduced sugar, but the recipe is tested or the pH was measured", srcNCHFP)
	default:
		v.atLeast(Cold, "reduced sugar, and no pH of 4.6 or below or tested recipe is recorded", srcOwn)
		if c.incomplete || len(c.r.Lines) == 0 {
			return
		}
		c.warnf("reduced-sugar", "cook", "about %.0f °Brix is too little sugar to keep this by sugar; the label will say refrigerate", brix.Value).
			Hinted("record cook.ph, or recipe if you followed a published tested one, or take a refractometer reading").Cited(srcNCHFP)
	}
}

func (c *calc) keepByAcid(v *verdict) {
	sour, lines := c.acidFacts()
	list, where := naming(lines)
	switch {
	case sour == acidOK && c.r.PHMeasured:
		v.atLeast(Shelf, "measured pH is 4.6 or below", srcGuide1)
	case sour == acidOK:
		v.atLeast(Shelf, "the fruit is acid, or acid was added", srcGuide1)
	case c.r.PHMeasured:
		v.perishable = true
		v.atLeast(Cold, "measured pH is above 4.6", srcGuide1)
		c.warnf("low-acid", "cook.ph", "pH %.2f is above 4.6: this can't be kept by boiling-water processing", c.r.PHHigh).
			Hinted("refrigerate or freeze it; your state may not let you sell it from a home kitchen").Cited(srcGuide1 + "; 21 CFR 114")
	case c.tested():
		v.atLeast(ShelfShort, "low or unknown acid, made by a tested recipe", srcGuide1)
	case sour == lowAcid:
		v.perishable = true
		v.atLeast(Cold, "may be above pH 4.6: "+list, srcGuide1+"; FDA, Approximate pH of Foods (2003)")
		c.warnf("low-acid", where, "%s may be above pH 4.6; the label will say refrigerate", list).
			Hinted("measure the pH of the finished batch (cook.ph), or record the tested recipe you followed").Cited(srcGuide1)
	default:
		v.atLeast(Cold, "acidity is not known: "+list, srcOwn)
		why, hint := "is not known and no acid was added", "measure the pH of the finished batch (cook.ph), or add lemon juice"
		if c.acidAdded() {
			why, hint = "is not known, acid or not", "measure the pH of the finished batch (cook.ph), or record the tested recipe you followed"
		}
		c.warnf("acid-unknown", where, "the acidity of %s %s; the label will say refrigerate", list, why).Hinted(hint).Cited(srcGuide1)
	}
	if (c.b.Kind == batch.Chutney || c.b.Kind == batch.Relish) && !c.tested() && !c.r.PHMeasured {
		v.atLeast(Cold, "only tested chutney and relish recipes have a process", "USDA AIB 539 rev. 2009; So Easy to Preserve 2006")
		c.warnf("untested-chutney", "kind", "chutney and relish are shelf-stable only by a tested recipe or a pH reading; the label will say refrigerate").
			Hinted("record recipe or cook.ph").Cited("USDA AIB 539 rev. 2009")
	}
}

func (c *calc) keepByRichness(v *verdict) {
	rich := c.richLines()
	list, where := naming(rich)
	little := 0.0
	for _, ln := range rich {
		little += ln.Percent
	}
	if len(rich) == 0 && c.b.Kind != batch.Curd || c.tested() && c.b.Kind != batch.Curd && little < 0.5 {
		return // a knob of butter against foam, as a tested recipe has it
	}
	v.perishable = true
	if c.tested() && c.b.Kind == batch.Curd {
		v.perishable = false
		v.atLeast(Cold, "curd by a tested recipe", srcCurd)
		return
	}
	if list == "" {
		list = "curd"
	}
	v.atLeast(Cold, "holds egg or dairy: "+list, srcGuide1+"; "+srcCurd)
	c.warnf("egg-or-dairy", where, "egg, butter or cream keeps this off the shelf; the label will say refrigerate").
		Hinted("only tested recipes have a process: record the one you followed as recipe").Cited(srcCurd)
}

// keptCold: freezer, refrigerator and uncooked spreads are never shelf products.
func (c *calc) keptCold(v *verdict) bool {
	cooked, way, raw := c.b.Cook.Method, c.b.Process.Method, c.raw()
	switch {
	case way == "freezer", way == "" && cooked == "freezer":
		v.atLeast(Freezer, "freezer spread: never a shelf product", srcNCHFP)
	case way == "refrigerator", raw:
		v.atLeast(Refrigerator, "refrigerator or uncooked spread: never a shelf product", srcNCHFP)
	default:
		return false
	}
	if raw && way != "freezer" && way != "refrigerator" && way != "" {
		c.warnf("uncooked-processed", "process.method", "an uncooked spread is not made for the shelf by %s processing", way).
			Hinted("freeze or refrigerate it").Cited(srcNCHFP)
	}
	return true
}

func (c *calc) keepByProcess(v *verdict) {
	switch m := c.b.Process.Method; m {
	case "boiling water", "steam":
		c.processed(v)
	case "paraffin", "inversion", "open kettle":
		v.atLeast(Cold, m+" does not keep moulds out", srcMould)
		c.warnf("unsafe-method", "process.method", "%s does not make a jar keep on the shelf", m).
			Hinted("process in boiling water, or refrigerate; discard any jar with mould").Cited(srcMould)
	case "none":
		v.atLeast(Cold, "not processed", srcGuide1)
		c.warnf("not-processed", "process.method", "jars that were not processed are for the refrigerator").
			Hinted("process in boiling water for the time of your altitude").Cited(srcGuide1 + "; USDA AIB 539")
	default:
		v.atLeast(Cold, "no process is recorded", srcGuide1)
		c.warnf("process-not-said", "process", "no process is recorded, so the label will say refrigerate").
			Hinted(`add [process] with method = "boiling water", minutes and altitude`).Cited(srcGuide1 + "; USDA AIB 539")
	}
}

// altitude of the kitchen, 0 when not given.
func (c *calc) altitude() unit.Length {
	if c.b.Process.AltitudeOK || c.b.Process.Altitude > 0 {
		return c.b.Process.Altitude
	}
	return c.k.Altitude
}

// processed compares minutes with the table.
func (c *calc) processed(v *verdict) {
	p, alt := c.b.Process, c.altitude()
	row, _ := c.p.ProcessTime(c.processKey())
	need := row.At(alt)
	if !p.AltitudeOK && alt == 0 {
		c.warnf("altitude-not-said", "process", "no altitude is given; minutes are checked as up to 1000 ft").
			Hinted("write altitude in the kitchen file; above 1000 ft the minutes rise").Cited(row.Source)
	}
	switch {
	case p.Minutes == nil:
		v.atLeast(Cold, "process minutes are not recorded", row.Source)
		c.warnf("minutes-not-said", "process.minutes", "the minutes of the process are not recorded; %d are needed there for %s", need, row.Product).
			Hinted("record the minutes").Cited(row.Source)
	case !(*p.Minutes >= float64(need)):
		v.atLeast(Cold, "processed too short for the altitude", row.Source)
		c.warnf("process-too-short", "process.minutes", "%g min are too short: %s takes %d min at that altitude", *p.Minutes, row.Product, need).
			Hinted("treat the jars as not processed: refrigerate, or process again within 24 h").Cited(row.Source)
	case *p.Minutes < 10 && (p.Sterilised == nil || !*p.Sterilised):
		v.atLeast(Cold, "under 10 min and the jars were not sterilised, or nobody said so", srcGuide1)
		c.warnf("jars-not-sterile", "process.sterilised", "a process under 10 min needs sterile jars: boil them empty for %d min there", c.p.SteriliseMinutes(alt)).
			Hinted("record sterilised = true, or process 10 min").Cited(srcGuide1 + "; MSU Extension 1997")
	default:
		v.processed = true
		v.atLeast(Shelf, "processed for the time of the altitude", row.Source)
	}
}

// honey is a fact for babies, whatever the process.
func (c *calc) honey() {
	for _, ln := range c.r.Lines {
		if ln.Key == "honey" || slices.Contains(strings.Fields(strings.ToLower(ln.Name)), "honey") {
			c.notef("honey-infants", ln.Paths[0], "honey, raw or cooked, is not for children under 12 months").
				Hinted("the label says so; tell those you give it to").Cited(srcInfants)
			return
		}
	}
}
