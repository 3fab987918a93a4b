package unit

import (
	"strconv"
	"strings"
)

// The declared quantity of a packed food is rounded down, never up, so that a
// label never promises more than there is (NIST Handbook 130, Uniform Packaging
// and Labeling Regulation).

// NetWords prints a weight in both systems, each rounded down so that neither
// overstates (HB 130 UPLR): "10 oz (283 g)", "1 lb 8 oz (680 g)"; dual, from
// 1 lb to below 4 lb, "24 oz (1 lb 8 oz) 680 g".
func NetWords(m Mass, dual bool) string {
	n, per := OunceUnits(m)
	metric := m.MetricNet()
	pound := 16 * per
	switch {
	case n < pound:
		return Decimals(n, per) + " oz (" + metric + ")"
	case dual && n < 4*pound:
		return Decimals(n, per) + " oz (" + pounds(n, per) + ") " + metric
	}
	return pounds(n, per) + " (" + metric + ")"
}

// OunceUnits counts whole tenths of an ounce, or hundredths where the weight
// is exactly some (at most two decimals are allowed, 21 CFR 101.7(d)).
func OunceUnits(m Mass) (n, per int64) {
	if n := wholeUnits(m, 100); n%10 != 0 && m-ouncesAt(n, 100) <= 1 {
		return n, 100
	}
	return wholeUnits(m, 10), 10
}

// wholeUnits counts whole n/per ounces. A tenth of an ounce is no whole number
// of nanograms, so a weight that is its rounded value counts as the tenth.
func wholeUnits(m Mass, per int64) int64 {
	n := int64(m) * per / int64(Ounce)
	if ouncesAt(n+1, per) == m {
		n++
	}
	return n
}

// ouncesAt is n/per ounces, rounded down to a nanogram.
func ouncesAt(n, per int64) Mass { return Mass(n * int64(Ounce) / per) }

func pounds(n, per int64) string {
	lb, rest := n/(16*per), n%(16*per)
	if rest == 0 {
		return strconv.FormatInt(lb, 10) + " lb"
	}
	return strconv.FormatInt(lb, 10) + " lb " + Decimals(rest, per) + " oz"
}

// Decimals gives n/per in decimals without trailing zeros; per is a power of 10.
func Decimals(n, per int64) string {
	s := strconv.FormatInt(n/per, 10)
	if rest := n % per; rest != 0 {
		s += "." + strings.TrimRight(strconv.FormatInt(per+rest, 10)[1:], "0")
	}
	return s
}

// MetricNet prints grams below 1 kg and kilograms from there.
func (m Mass) MetricNet() string {
	return metricNet(int64(m), int64(Gram/1000), "g", "kg")
}

// Owed is what a label printed for m promises: where the two figures differ the
// larger is enforced (NIST, HB 130 UPLR).
func Owed(m Mass) Mass {
	n, per := OunceUnits(m)
	k, step := threeDigits(int64(m), int64(Gram/1000))
	return max(ouncesAt(n, per), Mass(k*step))
}

// MetricNet prints millilitres below a litre and litres from there, as
// Mass.MetricNet does.
func (v Volume) MetricNet() string { return metricNet(int64(v), int64(Millilitre/1000), "mL", "L") }

// metricNet prints three digits of n, rounded down; least is a thousandth of
// the small unit.
func metricNet(n, least int64, small, large string) string {
	k, step := threeDigits(n, least)
	whole := k * (step / least)
	if whole >= 1_000_000 {
		return Decimals(whole, 1_000_000) + " " + large
	}
	return Decimals(whole, 1000) + " " + small
}

// threeDigits cuts n to k steps, with k of at most three digits.
func threeDigits(n, least int64) (k, step int64) {
	step = least
	for n/step >= 1000 {
		step *= 10
	}
	return n / step, step
}
