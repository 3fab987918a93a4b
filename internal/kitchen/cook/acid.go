package cook

import (
	"strings"

	"jarmark/internal/kitchen/batch"
)

// acidLimit is the pH at and below which boiling water will do: USDA Complete
// Guide to Home Canning, Guide 1; 21 CFR 114.
const acidLimit = 4.6

// nearAcid: fruit tabled up to this pH counts as acid once lemon juice,
// vinegar or citric acid is added, as the published jam recipes for apricots
// do. Own cautious reading.
const nearAcid = 4.8

// sour says what is known of the acidity of the batch.
type sour int

const (
	acidOK sour = iota
	acidUnknown
	lowAcid
)

// acidity fills in the pH range: measured, else of fruit and vegetables as
// tabled; zero when any of them is not tabled.
func (c *calc) acidity() {
	r := c.r
	if ph, ok := c.measuredPH(); ok {
		r.PHLow, r.PHHigh, r.PHMeasured = ph, ph, true
		return
	}
	for _, ln := range r.Lines {
		if !produce(ln) {
			continue
		}
		if ln.Row.PHHigh <= 0 {
			r.PHLow, r.PHHigh = 0, 0
			return
		}
		if r.PHLow == 0 || ln.Row.PHLow < r.PHLow {
			r.PHLow = ln.Row.PHLow
		}
		r.PHHigh = max(r.PHHigh, ln.Row.PHHigh)
	}
}

func (c *calc) measuredPH() (float64, bool) {
	ph := c.b.Cook.PH
	if ph == nil {
		return 0, false
	}
	if bad(ph, 1, 10) {
		c.errorf("bad-ph", "cook.ph", "a pH of %g can't be", *ph).Hinted("jam lies between about 2.8 and 4.6; check the meter")
		return 0, false
	}
	return *ph, true
}

// produce is what may be low in acid: fruit, vegetables, and what the table
// does not know, but no seasoning.
func produce(ln Line) bool {
	switch ln.Row.Kind {
	case "fruit", "dried fruit", "vegetable", "juice":
		return !strings.HasSuffix(ln.Key, "_peel")
	}
	return false
}

// acidFacts judges acidity and gives the lines that decide it.
func (c *calc) acidFacts() (sour, []Line) {
	r := c.r
	if r.PHMeasured {
		if r.PHHigh > acidLimit {
			return lowAcid, nil
		}
		return acidOK, nil
	}
	soured := c.acidAdded()
	var low, unknown []Line
	for _, ln := range r.Lines {
		own := (ln.Key == "" || ln.Row.Own && ln.Row.Kind == "") && ln.Row.PHHigh <= 0 && ln.Percent > 2
		switch {
		case !produce(ln) && !own:
		case ln.Row.Kind == "vegetable" && ln.Row.PHHigh <= 0, ln.Row.PHHigh > nearAcid || ln.Row.PHHigh > acidLimit && !soured:
			low = append(low, ln)
		case ln.Row.PHHigh <= 0 && (!soured || own):
			unknown = append(unknown, ln)
		}
	}
	switch {
	case len(low) > 0:
		return lowAcid, low
	case len(unknown) > 0:
		return acidUnknown, unknown
	}
	return acidOK, nil
}

// acidAdded reports acid that counts: 1 % of juice or vinegar, or a tenth of
// that in crystals (own threshold, no source).
func (c *calc) acidAdded() bool {
	sum := 0.0
	for _, ln := range c.r.Lines {
		if ln.Row.Kind == "acid" {
			weight := 1.0
			if ln.Row.WaterG >= 0 && ln.Row.WaterG < 5 {
				weight = 10
			}
			sum += weight * ln.Percent
		}
	}
	return sum >= 1
}

// fullSugar reports a spread that keeps by its sugar: 65 °Brix, measured or of
// a recipe with sugar enough to get there; or an added-pectin batch with as much
// sweetener as fruit whose Brix nobody read off a refractometer.
// Published full-sugar pectin recipes (USDA AIB 539) compute to 60-64 °Brix by
// the 5 % rule, so the estimate alone must not call them reduced.
func (c *calc) fullSugar() bool {
	r, ratio := c.r, c.sweetness()
	if r.Brix.How == Measured {
		return r.Brix.Value >= jamBrix-0.05
	}
	if r.Brix.Value >= jamBrix-0.05 {
		return ratio >= leastSugar || r.Yield.How == Measured
	}
	return r.Brix.Value >= 59 && c.hasPectin() && ratio >= 1
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
	if sweet == 0 {
		return 0
	}
	return sweet / max(fruit, 1)
}

// richLines gives egg and dairy.
func (c *calc) richLines() (out []Line) {
	for _, ln := range c.r.Lines {
		if ln.Row.Kind == "egg" || ln.Row.Kind == "dairy" {
			out = append(out, ln)
		}
	}
	return out
}

// naming lists lines by name, and gives the path of the first for a finding.
func naming(lines []Line) (names, where string) {
	var all []string
	for _, ln := range lines {
		all = append(all, ln.Name)
	}
	if len(lines) == 0 {
		return "", "ingredient"
	}
	return strings.Join(all, ", "), lines[0].Paths[0] + ".name"
}

// processKey is the row of the process table that fits the batch.
func (c *calc) processKey() string {
	switch c.b.Kind {
	case batch.Butter:
		for _, j := range c.r.Jars {
			if j.Jar.Nominal.ML() > 600 {
				return "butter quart"
			}
		}
		return "butter"
	case batch.Chutney, batch.Relish:
		return "chutney"
	case batch.Curd:
		return "curd"
	}
	if !c.incomplete && !c.fullSugar() && (c.b.Kind == batch.Spread || c.r.Brix.Value > 0 && c.r.Brix.Value < 60) {
		return "low sugar"
	}
	return "jam"
}
