package weigh

import (
	"math"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Limits that keep sums of nanograms inside 64 bits: 10 000 jars of 100 kg.
const (
	maxJars           = 10_000
	maxNet  unit.Mass = 100 * unit.Kilogram
)

// Sample is the jars weighed from one lot of one jar size. File and Path name
// the list of weights, for findings ("fill[0].net").
type Sample struct {
	Net  []unit.Mass // net weights off the scale, tare taken off
	Lot  int         // jars of this size in the lot; 0 = only the weighed ones
	File string
	Path string
	// Metric shows weights in grams where the law counts ounces: the maker's scale reads so.
	Metric bool
}

// stats are the figures of one sample.
type stats struct {
	n, lot   int
	sum      unit.Mass
	min, max unit.Mass
	mean     unit.Mass // rounded down to a whole nanogram
	sd       float64   // sample standard deviation, g; 0 for one jar
}

// measure checks the sample and computes its figures; ok is false when nothing
// can be said.
func (s Sample) measure() (st stats, l diag.List, ok bool) {
	l = s.check()
	if l.HasErrors() {
		return stats{}, l, false
	}
	st = stats{n: len(s.Net), lot: s.Lot, min: s.Net[0], max: s.Net[0]}
	if st.lot == 0 {
		st.lot = st.n
	}
	for _, m := range s.Net {
		st.sum += m
		st.min, st.max = min(st.min, m), max(st.max, m)
	}
	st.mean = st.sum / unit.Mass(st.n)
	st.sd = deviation(s.Net)
	return st, l, true
}

func (s Sample) check() (l diag.List) {
	switch {
	case len(s.Net) == 0:
		l.Errorf("no-weights", s.File, s.Path, "no jar was weighed").
			Hinted("weigh some jars and write their net weights; a computed weight can't be declared as weighed")
	case len(s.Net) > maxJars:
		l.Errorf("too-many-weights", s.File, s.Path, "%d weights are more than the %d this check takes", len(s.Net), maxJars).
			Hinted("check one lot and one jar size at a time")
	case s.Lot < 0 || s.Lot > 0 && s.Lot < len(s.Net):
		l.Errorf("lot-smaller-than-sample", s.File, s.Path, "%d jars were weighed, but the lot is said to have %d", len(s.Net), s.Lot).
			Hinted("give the number of jars of this size in the batch")
	}
	for i, m := range s.Net {
		if m <= 0 || m > maxNet {
			l.Errorf("bad-weight", s.File, index(s.Path, i), "a net weight of %s can't be right", m.InGrams(1)).
				Hinted("net weight is the full jar less the empty jar and lid")
			break
		}
	}
	return l
}

// deviation is the sample standard deviation in grams, divisor n-1
// (NIST Handbook 133, 2.3.6; formula common to all statistics texts).
func deviation(net []unit.Mass) float64 {
	if len(net) < 2 {
		return 0
	}
	mean := 0.0
	for _, m := range net {
		mean += m.Grams()
	}
	mean /= float64(len(net))
	sq := 0.0
	for _, m := range net {
		d := m.Grams() - mean
		sq += d * d
	}
	return math.Sqrt(sq / float64(len(net)-1))
}
