package weigh

import (
	"math"
	"testing"

	"jarmark/internal/kit/unit"
)

// studentCDF integrates the t density by Simpson's rule; the density is the
// textbook one (Student 1908; NIST/SEMATECH e-Handbook, 1.3.6.6.4).
func studentCDF(t float64, nu int) float64 {
	v := float64(nu)
	a, _ := math.Lgamma((v + 1) / 2)
	b, _ := math.Lgamma(v / 2)
	c := math.Exp(a-b) / math.Sqrt(v*math.Pi)
	f := func(x float64) float64 { return c * math.Pow(1+x*x/v, -(v+1)/2) }
	const n = 2_000
	h, sum := t/n, f(0)+f(t)
	for i := 1; i < n; i++ {
		sum += f(float64(i)*h) * float64(2+2*(i%2))
	}
	return 0.5 + sum*h/3
}

func quantile975(nu int) float64 {
	lo, hi := 0.0, 20.0
	for range 45 {
		if mid := (lo + hi) / 2; studentCDF(mid, nu) < 0.975 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// The quantile routine itself against printed t tables (NIST/SEMATECH
// e-Handbook 1.3.6.7.2: 12.706, 2.201, 2.069 at 0.975).
func TestQuantile(t *testing.T) {
	for nu, want := range map[int]float64{1: 12.706, 11: 2.201, 23: 2.069} {
		if got := quantile975(nu); math.Abs(got-want) > 0.001 {
			t.Errorf("t(0.975,%d) = %.4f, want %.3f", nu, got, want)
		}
	}
}

// Table 2-1 factors equal t(0.975, n-1)/sqrt(n) to the third decimal.
func TestFactorsAreStudents(t *testing.T) {
	for _, f := range factors {
		want := quantile975(f.n-1) / math.Sqrt(float64(f.n))
		if math.Abs(float64(f.scf)/1000-want) > 0.00105 {
			t.Errorf("n %d: factor %.3f, Student gives %.4f", f.n, float64(f.scf)/1000, want)
		}
	}
}

// NIST Handbook 133 Table 2-1, Category A (from memory, unverified).
func TestPlanFor(t *testing.T) {
	tests := []struct{ lot, n, scf, allowed int }{
		{-3, 1, 0, 0}, {0, 1, 0, 0}, {1, 1, 0, 0}, {2, 2, 8984, 0}, {6, 6, 1050, 0}, {11, 11, 672, 0},
		{12, 12, 635, 0}, {48, 12, 635, 0}, {250, 12, 635, 0}, {251, 24, 422, 0},
		{3200, 24, 422, 0}, {3201, 48, 291, 1}, {math.MaxInt, 48, 291, 1},
	}
	for _, c := range tests {
		if got := PlanFor(c.lot); got != (Plan{c.n, c.allowed}) || factor(got.Sample) != c.scf {
			t.Errorf("PlanFor(%d) = %+v, factor %d", c.lot, got, factor(got.Sample))
		}
	}
}

// NIST Handbook 133 Table 2-5 (from memory, unverified): the lookups, and the
// two columns against each other (g = lb x 453.59237, rounded down to 0.1 g or
// for the kilogram rows to the printed figure).
func TestMAV(t *testing.T) {
	lookups := []struct {
		label unit.Mass
		lb    int
	}{
		{4 * unit.Ounce, 16}, {8 * unit.Ounce, 28}, {12 * unit.Ounce, 36},
		{16 * unit.Ounce, 44}, {24 * unit.Ounce, 56}, {46 * unit.Pound / 100, 24}, {47 * unit.Pound / 100, 28},
	}
	for _, c := range lookups {
		got, ok := MAV(c.label)
		want := unit.Mass(c.lb) * unit.Pound / 1000 / decigram * decigram
		if !ok || got != want {
			t.Errorf("MAV(%s) = %s, want %s", c.label.InGrams(1), got.InGrams(1), want.InGrams(1))
		}
	}
	for _, r := range mavTable {
		if exact := float64(r.lb) * 4.5359237; exact-float64(r.dg) < 0 || exact-float64(r.dg) >= 1 {
			t.Errorf("row up to 0.%d lb: %.2f dg against %d", r.upTo, exact, r.dg)
		}
	}
	// Each row to its end, and a nanogram into the next: hundredths of a pound,
	// and thousandths allowed.
	rows := [][2]int{{12, 8}, {18, 12}, {26, 16}, {34, 20}, {46, 24}, {58, 28}, {70, 32}, {84, 36}, {94, 40}, {108, 44}, {126, 48}, {140, 52},
		{154, 56}, {170, 60}, {188, 64}, {214, 70}, {248, 78}, {276, 86}, {320, 94}}
	for i, r := range rows {
		end := unit.Mass(r[0]) * unit.Pound / 100
		for label, lb := range map[unit.Mass]int{end: r[1], end + 1: rows[min(i+1, len(rows)-1)][1]} {
			if got, ok := MAV(label); ok != (label == end || i < len(rows)-1) || ok && math.Abs(got.Grams()-float64(lb)*0.45359237) > 0.1 {
				t.Errorf("MAV(%d ng) = %s, want 0.0%d lb", label, got.InGrams(1), lb)
			}
		}
	}
	if got, ok := MAV(30 * unit.Gram); !ok || got != 3*unit.Gram {
		t.Errorf("below 0.08 lb: %s, want 10 %%", got.InGrams(1))
	}
	for _, m := range []unit.Mass{0, -1, 321 * unit.Pound / 100, math.MaxInt64} {
		if _, ok := MAV(m); ok {
			t.Errorf("MAV(%d) claims a row", m)
		}
	}
}
