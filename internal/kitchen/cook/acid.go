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

// acidity fills in the highest pH: measured, else of fruit and vegetables as
// tabled; zero when any of them is not tabled.
func (c *calc) acidity() {
	r := c.r
	if ph := c.measuredPH(); ph != nil {
		r.PHHigh, r.PHMeasured = *ph, true
		return
	}
	for _, ln := range r.Lines {
		if !produce(ln) {
			continue
		}
		if ln.Row.PHHigh == 0 {
			r.PHHigh = 0
			return
		}
		r.PHHigh = max(r.PHHigh, ln.Row.PHHigh)
	}
}

// measuredPH is the maker's reading, nil when there is none that counts.
func (c *calc) measuredPH() *float64 {
	ph := c.b.Cook.PH
	if ph == nil {
		return nil
	}
	if bad(ph, leastPH, 10) {
		c.errorf("bad-ph", "cook.ph", "a pH of %g can't be", *ph).Hinted("jam lies between about 2.8 and 4.6; check the meter")
		return nil
	}
	day := c.b.Cook.PHDate
	if !day.IsZero() && day.Before(c.b.Made) {
		c.warnf("bad-ph-date", "cook.ph_date", "%s is before the day it was made, %s; the reading is not used", day, c.b.Made).Hinted("measure the finished, cooled batch")
		return nil
	}
	if !c.metered(*ph) {
		return nil
	}
	if day.IsZero() || strings.TrimSpace(c.b.Cook.PHMeter) == "" {
		c.notef("ph-not-dated", "cook.ph", "the pH reading has no day, or nobody says with what meter it was taken").
			Hinted(`write ph_date, and ph_meter = "pocket meter, buffers 4 and 7 that day"; paper strips are not fine enough near 4.6`).Cited("21 CFR 114.90")
	}
	return ph
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
func (s sourness) ok() bool { return s.known() && !s.thin() }

// known: every line is acid, or a trace.
func (s sourness) known() bool { return s.low == nil && s.unknown == nil }

// thin: there is no acid fruit, or too little for the water.
func (s sourness) thin() bool { return s.base == 0 || s.water > mostWater*s.base }

// judgeAcid judges every line, what was lifted out included: an infusion
// leaves its water behind.
func (c *calc) judgeAcid() sourness {
	s := sourness{trace: map[int]bool{}}
	soured := c.acidAdded()
	rest := map[int]pantry.Trace{}
	sums := map[string]float64{}
	for i, ln := range c.r.Lines {
		ph, g := ln.Row.PHHigh, ln.Mass.Grams()
		t := c.traceOf(ln)
		traced := t.Group != ""
		switch {
		case c.lowPart(ln):
			s.low = append(s.low, i)
		case ph != 0 && ph <= acidLimit && (produce(ln) || !traced || t.Any), ph > acidLimit && ph <= nearAcid && soured && produce(ln):
			s.base += g
		case t.Group == "acid":
			s.base += g * strength(ln)
			s.trace[i] = true
		case t.Any:
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
	if s.base != 0 || s.known() { // else the fruit is told of, not what stands beside it
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

// traceOf finds what acid-traces.csv says of a line the table knows; no Group:
// nothing. An own ingredient without a pH is no acid because its maker calls it
// one, but for what the row names.
func (c *calc) traceOf(ln Line) pantry.Trace {
	t := c.p.Trace(ln.Key, ln.Row.Class)
	if ln.Row.Own && ln.Row.PHHigh == 0 && (t.Group == "acid" || t.Group == "water") && !slices.Contains(t.Keys, ln.Key) {
		return pantry.Trace{}
	}
	return t
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
		if c.traceOf(ln).Group == "acid" {
			sum += strength(ln) * ln.Percent
		}
	}
	return sum >= 1
}
