package weigh

import "jarmark/internal/kit/unit"

// Clauses of NIST Handbook 133. The two tables could not be read in an
// official copy; they are from memory. The correction factors are recomputed
// in the tests from Student's t, and the two columns of the weight table are
// checked against each other.
const (
	citePlan    = "NIST Handbook 133, Table 2-1 Category A (from memory, unverified)"
	citeMAV     = "NIST Handbook 133, Table 2-5 (from memory, unverified)"
	citeAverage = "NIST Handbook 133, ch. 1 and 2: the lot average must at least equal the label"
	citeInHouse = "stricter than NIST Handbook 133; common practice, no source"
)

// Plan is a row of the Category A sampling table.
type Plan struct {
	Sample  int // packages to weigh
	Allowed int // packages that may be short by more than the MAV
}

// factors are the correction factors by sample size, in thousandths: Table 2-1,
// equal to t(0.975, n-1)/sqrt(n).
var factors = []struct{ n, scf int }{
	{2, 8984}, {3, 2484}, {4, 1591}, {5, 1241}, {6, 1050}, {7, 925}, {8, 836},
	{9, 769}, {10, 715}, {11, 672}, {12, 635}, {24, 422}, {48, 291},
}

// PlanFor gives the sampling plan for a lot; a lot below 1 counts as 1.
func PlanFor(lot int) Plan {
	switch {
	case lot <= 1:
		return Plan{Sample: 1}
	case lot < 12:
		return Plan{Sample: lot}
	case lot <= 250:
		return Plan{Sample: 12}
	case lot <= 3200:
		return Plan{Sample: 24}
	}
	return Plan{Sample: 48, Allowed: 1}
}

// factor gives the factor of the smallest tabled sample not below n, which is
// never milder than the true one; 0 for a single jar.
func factor(n int) int {
	if n < 2 {
		return 0
	}
	for _, f := range factors {
		if n <= f.n {
			return f.scf
		}
	}
	return factors[len(factors)-1].scf
}

// mavRow is a row of Table 2-5: labels up to UpTo hundredths of a pound may be
// short by at most Lb thousandths of a pound, which the metric column gives as
// Dg tenths of a gram.
type mavRow struct{ upTo, lb, dg int }

var mavTable = []mavRow{
	{12, 8, 36}, {18, 12, 54}, {26, 16, 72}, {34, 20, 90}, {46, 24, 108},
	{58, 28, 127}, {70, 32, 145}, {84, 36, 163}, {94, 40, 181}, {108, 44, 199},
	{126, 48, 217}, {140, 52, 235}, {154, 56, 254}, {170, 60, 272},
	{188, 64, 290}, {214, 70, 317}, {248, 78, 353}, {276, 86, 390}, {320, 94, 426},
}

// MAV is the maximum allowable variation of one package labelled by weight, in
// the table's metric figure (rounded down, so the stricter). Labels below
// 0.08 lb have 10 %. ok is false above 3.20 lb, where this table ends, and for
// labels that are no weight.
func MAV(label unit.Mass) (mav unit.Mass, ok bool) {
	if label <= 0 {
		return 0, false
	}
	if label < 8*unit.Pound/100 {
		return label / 10, true
	}
	for _, r := range mavTable {
		if label <= unit.Mass(r.upTo)*unit.Pound/100 {
			return unit.Mass(r.dg) * decigram, true
		}
	}
	return 0, false
}

// decigram is the step both systems round to.
const decigram = unit.Gram / 10
