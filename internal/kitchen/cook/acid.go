package cook

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/pantry"
)

// acidLimit is the pH at and below which boiling water will do: USDA Complete
// Guide to Home Canning, Guide 1; 21 CFR 114. Up to safePH a reading passes;
// between the two it is too near the limit for a kitchen meter (own reading;
// Hawaii's master food preservers ask for 4.2 or lower).
const (
	acidLimit = 4.6
	safePH    = 4.2
)

// nearAcid: fruit tabled up to this pH counts as acid once lemon juice,
// vinegar or citric acid is added, as the published jam recipes for apricots
// do. Own cautious reading.
const nearAcid = 4.8

// mostWater is how much water acid fruit carries, by weight: marmalade has up
// to 2.5 parts, which boil away; the water of an infusion has no fruit to
// carry it. Own reading.
const mostWater = 3

// crystals is how many parts of lemon juice one of dry acid stands for.
const crystals = 10

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
	if bad(ph, leastPH, 10) {
		c.errorf("bad-ph", "cook.ph", "a pH of %g can't be", *ph).Hinted("jam lies between about 2.8 and 4.6; check the meter")
		return 0, false
	}
	if d := c.b.Cook.PHDate; !d.IsZero() && d.Before(c.b.Made) {
		c.warnf("bad-ph-date", "cook.ph_date", "%s is before the day it was made, %s; the reading is not used", d, c.b.Made).Hinted("measure the finished, cooled batch")
		return 0, false
	}
	if !c.metered(*ph) {
		return 0, false
	}
	if c.b.Cook.PHDate.IsZero() || strings.TrimSpace(c.b.Cook.PHMeter) == "" {
		c.notef("ph-not-dated", "cook.ph", "the pH reading has no day, or nobody says with what meter it was taken").
			Hinted(`write ph_date, and ph_meter = "pocket meter, buffers 4 and 7 that day"; paper strips are not fine enough near 4.6`).Cited("21 CFR 114.90")
	}
	return *ph, true
}

// leastPH is below any fruit: lime juice, the sourest of FDA, Approximate pH of
// Foods (2003), begins at 2.0.
const leastPH = 2.0

// produce is fruit, vegetables and juice, whose pH the tables speak of.
func produce(ln Line) bool {
	switch ln.Row.Class {
	case "fruit", "dried fruit", "vegetable", "juice":
		return !strings.HasSuffix(ln.Key, "_peel")
	}
	return false
}

// sourness is what is known of the acid of everything in the pot.
type sourness struct {
	base    float64      // g of plainly acid fruit, juice and acid
	water   float64      // g of water added
	low     []int        // numbers of the lines that may be above pH 4.6
	unknown []int        // of those of no known pH, and more than a trace
	trace   map[int]bool // lines within what acid-traces.csv allows
}

// ok reports plainly acid food.
func (s sourness) ok() bool { return len(s.low)+len(s.unknown) == 0 && !s.thin() }

// thin: there is no acid fruit, or too little for the water.
func (s sourness) thin() bool { return s.base <= 0 || s.water > mostWater*s.base }

// judgeAcid judges every line, what was lifted out included: an infusion
// leaves its water behind.
func (c *calc) judgeAcid() sourness {
	s := sourness{trace: map[int]bool{}}
	soured := c.acidAdded()
	rest := map[int]pantry.Trace{}
	sums := map[string]float64{}
	for i, ln := range c.r.Lines {
		ph, g := ln.Row.PHHigh, ln.Mass.Grams()
		t, traced := c.traceOf(ln)
		switch {
		case c.lowPart(ln):
			s.low = append(s.low, i)
		case ph > 0 && ph <= acidLimit && (produce(ln) || !traced || t.Percent < 0), ph > acidLimit && ph <= nearAcid && soured && produce(ln):
			s.base += g
		case traced && t.Group == "acid":
			s.base += g * strength(ln)
			s.trace[i] = true
		case traced && t.Percent < 0:
			s.trace[i] = true
			if ln.IsWater {
				s.water += g
			}
		case traced:
			rest[i] = t
			sums[t.Group] += g
		case ph > acidLimit, ln.Row.Class == "vegetable":
			s.low = append(s.low, i)
		default:
			s.unknown = append(s.unknown, i)
		}
	}
	var excess []int
	for i := range c.r.Lines {
		if t, ok := rest[i]; ok {
			if s.trace[i] = sums[t.Group] <= s.base*t.Percent/100; !s.trace[i] {
				excess = append(excess, i)
			}
		}
	}
	if s.base > 0 || len(s.low)+len(s.unknown) == 0 { // else the fruit is told of, not what stands beside it
		s.unknown = append(s.unknown, excess...)
	}
	return s
}

// lowPart reports a part, in a compound of the maker's, that is tabled as low
// in acid: "apple mix" of apples and pumpkin.
func (c *calc) lowPart(ln Line) bool {
	for _, x := range ln.Contains {
		if g, ok := c.p.Ingredient(x.Name); ok && g.PHHigh > nearAcid && produce(Line{Key: g.Key, Row: g}) {
			return true
		}
	}
	return false
}

// traceOf finds what acid-traces.csv says of a line the table knows. An own
// ingredient without a pH is no acid because its maker calls it one.
func (c *calc) traceOf(ln Line) (pantry.Trace, bool) {
	if ln.Key == "" && ln.Row.Class == "" {
		return pantry.Trace{}, false
	}
	t, ok := c.p.Trace(ln.Key, ln.Row.Class)
	if own := ln.Row.Own && ln.Row.PHHigh <= 0 && !slices.Contains(t.Keys, ln.Key); own && (t.Group == "acid" || t.Group == "water") && ln.Key != "citric_acid" {
		return pantry.Trace{}, false
	}
	return t, ok
}

// strength of an acid by lemon juice; ascorbic acid is none to count on.
func strength(ln Line) float64 {
	if ln.Row.WaterG >= 0 && ln.Row.WaterG < 5 {
		return crystals
	}
	return 1
}

// acidAdded reports acid that counts: 1 % of juice or vinegar, or a tenth of
// that in crystals (own threshold, no source).
func (c *calc) acidAdded() bool {
	sum := 0.0
	for _, ln := range c.r.Lines {
		if t, ok := c.traceOf(ln); ok && t.Group == "acid" {
			sum += strength(ln) * ln.Percent
		}
	}
	return sum >= 1
}
