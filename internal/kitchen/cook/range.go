package cook

import (
	"fmt"
	"math"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// Range is what a pot that nobody weighed may come to. Low and High are equal,
// and Coverage 0, where it was weighed.
type Range struct {
	Low, High unit.Mass
	Coverage  float64 // % of published yields that lie in such a range
	Recipes   int     // how many those are
	Source    string
	Own       Habit // of the maker's own pots, when it moved the range
}

// Habit is how the maker's own weighed pots lie beside the computed ones: 1.06
// is 6 % above. The zero Habit knows of none.
type Habit struct {
	Ratio float64
	Pots  int
}

// Past pots tell a habit from two on; none is believed beyond these bounds
// (own assumption: what lies farther off is a slip in a file).
const (
	fewestPots = 2
	leastHabit = 0.75
	mostHabit  = 1.33
)

// Learn gives the habit of the weighed pots among past batches: the geometric
// mean of what the scale said over what the kind of batch would have given.
func Learn(past []*Result) (h Habit) {
	sum := 0.0
	for _, r := range past {
		if r == nil || r.unweighed <= 0 || r.Yield.How != Measured {
			continue
		}
		ratio := r.Yield.Mass.Grams() / r.unweighed
		if ratio < leastHabit || ratio > mostHabit {
			continue
		}
		sum, h.Pots = sum+math.Log(ratio), h.Pots+1
	}
	if h.Pots < fewestPots {
		return Habit{}
	}
	h.Ratio = math.Exp(sum / float64(h.Pots))
	return h
}

// Say words a habit: "your 3 weighed pots come out 6 % above".
func (h Habit) Say() string {
	off := math.Round(100 * (h.Ratio - 1))
	switch {
	case off > 0:
		return fmt.Sprintf("your %d weighed pots come out %.0f %% above", h.Pots, off)
	case off < 0:
		return fmt.Sprintf("your %d weighed pots come out %.0f %% below", h.Pots, -off)
	}
	return fmt.Sprintf("your %d weighed pots come out as computed", h.Pots)
}

// foresee sets the range of the yield, and how many jars that is.
func (c *calc) foresee() {
	r := c.r
	r.Range = Range{Low: r.Yield.Mass, High: r.Yield.Mass}
	if r.Yield.How == Measured {
		if !c.incomplete {
			r.unweighed = c.unweighed()
		}
		r.countRange()
		return
	}
	s, ok := c.pot.boil, c.pot.boil.Factor > 0
	if !ok {
		s, ok = c.p.Boil(string(c.b.Product), c.method())
	}
	if !ok || r.Yield.Mass <= 0 {
		r.countRange()
		return
	}
	if c.pot.loss < 0 && r.Brix.How == Measured || c.b.Cook.TempC != nil {
		s.Shift = 1 // the finish was measured: no kind's own finish moves it
	}
	s.Brix = c.pot.boil.Brix // 0 where a finish was measured: no clock decides then
	r.unweighed = c.expects(r.Yield.Mass.Grams(), s)
	r.spread = s.Factor
	r.Range.Coverage, r.Range.Recipes, r.Range.Source = s.Coverage, s.Recipes, s.Source
	r.widen(1)
}

// method is how the pot is taken to be cooked, in the words of boil.csv.
func (c *calc) method() string {
	switch m := c.b.Cook.Method; {
	case c.raw():
		return "no cook"
	case m != "":
		return m
	case c.hasPectin():
		return "added pectin"
	}
	return "long boil"
}

// unweighed is what the kind of batch would have given, in grams, had nobody
// weighed the pot.
func (c *calc) unweighed() float64 {
	quiet := *c
	quiet.l = nil
	m := c.mix()
	o, _ := quiet.byKind(m) // a kind always gives one
	return c.expects(math.Min(o.pot, m.in)-m.foam, o.boil)
}

// expects gives the pot to expect, without its foam, of the one that the finish
// of its kind gives: published pots lie beside that, and one that was not boiled
// long enough has not come so far.
func (c *calc) expects(pot float64, b pantry.Boil) float64 {
	if b.Shift > 0 {
		pot *= b.Shift
	}
	m := c.mix()
	if b.Brix > 0 && b.Minutes <= 0 { // no pot comes to the boil, is stirred and ladled without loss
		pot = math.Min(math.Max(pot, c.notYetBoiled(m)-m.foam), math.Max(m.in*(1-warmUp), m.soluble+m.insoluble)-m.foam)
	}
	return math.Max(0, pot)
}

// Expect moves the range of a pot not weighed by the maker's habit. The yield
// itself, and all that rests on it, stays.
func (r *Result) Expect(h Habit) {
	if r.Yield.How == Measured || h.Pots == 0 || r.unweighed <= 0 {
		return
	}
	r.Range.Own = h
	r.widen(h.Ratio)
}

// widen lays the range around the expected yield.
func (r *Result) widen(by float64) {
	most := r.mostInput()
	mid := math.Min(r.unweighed*by, most)
	r.Range.Low, r.Range.High = grams(mid*(2-r.spread)), grams(math.Min(mid*r.spread, most))
	r.countRange()
}

// cupsOff is how much heavier a cup may be than the table's: recipes that print
// cups and pounds too hold 0.8 to 1.3 of USDA SR28's cup of chopped apples,
// tomatoes, pears, peppers, zucchini and onions, the middle half of twelve 0.93 to
// 1.2 (testdata/published/yields-*.txt; So Easy to Preserve and others).
const cupsOff = 0.12

// mostInput is what may have gone in, in grams: all, and more of what was not
// weighed. No pot gives more.
func (r *Result) mostInput() float64 {
	most := r.Input.Grams()
	for _, ln := range r.Lines {
		if ln.Estimated && !ln.Removed && !ln.IsSweet && !ln.IsWater {
			most += cupsOff * ln.Mass.Grams()
		}
	}
	return most
}

// countRange counts the jars of both ends of the range; counted jars are what
// they are.
func (r *Result) countRange() {
	low, high := r.jarsOf(r.Range.Low.Grams()), r.jarsOf(r.Range.High.Grams())
	for i := range r.Jars {
		j := &r.Jars[i]
		j.Low, j.High = j.Count, j.Count
		if j.How == Estimated && r.Yield.How != Measured {
			j.Low, j.High = min(low[i], high[i], j.Count), max(low[i], high[i], j.Count)
		}
	}
}

// jarsOf shares a pot of some grams over the uncounted sizes as the plan does:
// each size in the part it has of the plan, to the nearest jar.
func (r *Result) jarsOf(pot float64) []int {
	out := make([]int, len(r.Jars))
	planned := 0.0
	for _, j := range r.Jars {
		if j.How == Estimated {
			planned += float64(j.Count)*j.each() + j.Part.Grams()
		}
	}
	if planned <= 0 {
		return out
	}
	by := math.Max(0, pot-r.held()) / planned
	for i, j := range r.Jars {
		if each := j.each(); j.How == Estimated && each > 0 {
			out[i] = int(math.Min(mostJars, math.Floor((float64(j.Count)*each+j.Part.Grams())*by/each+0.5)))
		}
	}
	return out
}

// RangeText is "7-9 jars: have 9 lids ready"; "" where the jars are counted or
// the pot weighed.
func (r *Result) RangeText() string {
	low, high := 0, 0
	for _, j := range r.Jars {
		if j.How != Estimated {
			return ""
		}
		low, high = low+j.Low, high+j.High
	}
	switch {
	case r.Range.Coverage == 0 || high == 0:
		return ""
	case low == high:
		return fmt.Sprintf("about %s: have %d lids ready", jarCount(high), high+1)
	}
	return fmt.Sprintf("%d-%d jars: have %s ready", low, high, strings.Replace(jarCount(high), "jar", "lid", 1))
}

func jarCount(n int) string {
	if n == 1 {
		return "1 jar"
	}
	return fmt.Sprintf("%d jars", n)
}
