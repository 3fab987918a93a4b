package weigh

import (
	"fmt"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Clauses of the average quantity system.
const (
	citeRules  = "Directive 76/211/EEC Annex I; SI 2006/659 reg 4"
	citeTNE    = "Directive 76/211/EEC Annex I, 2.4; German FPackV s. 9"
	citeSample = "the rules bind the whole batch; twelve jars are common practice, no source"
	citeStrict = "stricter than the packers' rules of Directive 76/211/EEC; common practice, no source"
	citeRule2  = "UK packers' guidance (2.5 %); German FPackV s. 9(3) (2 %)"
)

// Packers are the parameters of the packers' rules that differ by country.
type Packers struct {
	System string // "eu", "gb", "de", …
	// PerMille is how many packs in a thousand may fall below T1: 25 in UK
	// practice, 20 in German law (FPackV s. 9(3)).
	PerMille int
	// DoubleRounded rounds the doubled percentage itself (German FPackV
	// s. 9(4)); otherwise T2 doubles the rounded tolerance.
	DoubleRounded bool
	// Largest is the largest nominal quantity of the system: 10 kg under the
	// Directive, 25 kg in Great Britain. 0 = 10 kg.
	Largest unit.Mass
	// Record is what the law says of a record of the weighing.
	Record string
}

// tneRow: up to this nominal, either a percentage (in tenths) or fixed tenths
// of a gram. The values meet at every boundary, so inclusivity is no matter.
type tneRow struct {
	upTo    unit.Mass
	perMil  int // tolerance in thousandths of the nominal; 0 = fixed
	fixedDg int // tolerance in tenths of a gram
}

var tneTable = []tneRow{
	{50 * unit.Gram, 90, 0}, {100 * unit.Gram, 0, 45}, {200 * unit.Gram, 45, 0},
	{300 * unit.Gram, 0, 90}, {500 * unit.Gram, 30, 0}, {unit.Kilogram, 0, 150},
	{10 * unit.Kilogram, 15, 0}, {15 * unit.Kilogram, 0, 1500}, {25 * unit.Kilogram, 10, 0},
}

// TNE is the tolerable negative error of a nominal quantity: the table's
// percentage rounded up to the next 0.1 g. ok is false outside 5 g to 25 kg.
func TNE(nominal unit.Mass) (tne unit.Mass, ok bool) { return tolerance(nominal, 1) }

func tolerance(q unit.Mass, times int) (unit.Mass, bool) {
	if q < 5*unit.Gram {
		return 0, false
	}
	for _, r := range tneTable {
		if q > r.upTo {
			continue
		}
		if r.perMil == 0 {
			return unit.Mass(r.fixedDg*times) * decigram, true
		}
		t := q * unit.Mass(r.perMil*times) // thousandths of a nanogram
		step := 1000 * decigram
		return (t + step - 1) / step * decigram, true
	}
	return 0, false
}

// T1 is the weight only few packs may fall below: nominal less the TNE.
func (p Packers) T1(nominal unit.Mass) (unit.Mass, bool) {
	t, ok := TNE(nominal)
	return nominal - t, ok && nominal <= p.largest()
}

// T2 is the weight no pack may fall below: nominal less twice the TNE.
func (p Packers) T2(nominal unit.Mass) (unit.Mass, bool) {
	ok := nominal <= p.largest()
	if p.DoubleRounded {
		t, known := tolerance(nominal, 2)
		return nominal - t, ok && known
	}
	t, known := TNE(nominal)
	return nominal - 2*t, ok && known
}

func (p Packers) largest() unit.Mass {
	if p.Largest > 0 {
		return p.Largest
	}
	return 10 * unit.Kilogram
}

// Check runs the three packers' rules on a sample. The law puts them on the
// batch; for a sample smaller than the batch this is a screening, and the
// findings say so.
func (p Packers) Check(nominal unit.Mass, s Sample) (Report, diag.List) {
	r := Report{metric: true, System: p.System, Label: nominal}
	st, l, ok := s.measure()
	if !ok {
		return r, l
	}
	t1, ok1 := p.T1(nominal)
	t2, ok2 := p.T2(nominal)
	if !ok1 || !ok2 {
		l.Errorf("nominal-outside-system", s.File, s.Path, "a nominal quantity of %s is outside the average system", nominal.InGrams(0)).
			Hinted("the system covers 5 g to " + p.largest().InGrams(0)).Cited(citeRules)
		return r, l
	}
	r.fill(st)
	r.TNE, _ = TNE(nominal)
	r.T1, r.T2 = t1, t2
	r.rules(p, st, s.Net)
	r.conclude()
	return r, append(l, caution(s, st, min(st.lot, 12), citeSample)...)
}

func (r *Report) rules(p Packers, st stats, net []unit.Mass) {
	below2 := 0
	for _, m := range net {
		if m < r.T1 {
			r.Below++
		}
		if m < r.T2 {
			below2++
		}
	}
	r.figure("tolerable negative error", r.TNE.InGrams(1), citeTNE)
	r.figure("T1", r.T1.InGrams(1), citeTNE)
	r.figure("T2", r.T2.InGrams(1), citeTNE)
	r.check("rule 1, average", st.sum >= unit.Mass(st.n)*r.Label,
		"mean "+r.Mean.InGrams(1)+" against "+r.Label.InGrams(1), citeRules)
	r.check("rule 2, few below T1", r.Below*1000 <= p.PerMille*st.n,
		fmt.Sprintf("%s below %s, at most %g %% allowed", jars(r.Below), r.T1.InGrams(1), float64(p.PerMille)/10), citeRule2)
	r.check("rule 3, none below T2", below2 == 0, fmt.Sprintf("lightest %s, %s below %s", r.Min.InGrams(1), jars(below2), r.T2.InGrams(1)), citeRules)
}
