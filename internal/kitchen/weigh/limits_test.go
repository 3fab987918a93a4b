package weigh

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// Two reports whole, worked by hand. Above: 12 of 48 jars of 8 oz (226.796 g),
// errors summing to -16.3 g, s 4.135 g, SEL 0.635 s (NIST Handbook 133 ch. 2).
// Below: five of 40 of 227 g, TNE 9 g (Directive 76/211/EEC Annex I, 2.4), one
// at 217.9 g, so 1 of 5 is more than 2.5 %. Weights are rounded down, never up.
func TestReportsWhole(t *testing.T) {
	label := 8 * unit.Ounce
	us, _ := US(label, sampleOf(label, 48, 1.2, -0.6, 0.4, -3.1, 2.0, 0.3, -1.5, -0.8, -0.2, 1.9, -2.4, -13.5))
	five := Sample{Lot: 40}
	for _, g := range []float64{228, 229.55, 230, 217.9, 231.25} {
		five.Net = append(five.Net, unit.Grams(g))
	}
	gb, _ := GB.Check(227*unit.Gram, five)
	one, _ := US(label, sampleOf(label, 1, -3))
	for _, c := range []struct {
		r    Report
		want string
	}{
		{us, `declared|226.7 g
weighed|12 of 48 jars
mean|225.43 g
lightest|213.2 g
heaviest|228.7 g
standard deviation|4.135 g
sample correction factor|0.635
sample error limit|2.626 g
sample the handbook asks for|12 of 48
maximum allowable variation|12.7 g
average test|pass: mean 225.43 g, error -1.358 g, limit 2.626 g
individual test|FAIL: lightest 213.2 g, 1 jar below 214.0 g, 0 allowed
verdict: the weights do not support 226.7 g`},
		{gb, `declared|227.0 g
weighed|5 of 40 jars
mean|227.34 g
lightest|217.9 g
heaviest|231.2 g
standard deviation|5.404 g
tolerable negative error|9.0 g
T1|218.0 g
T2|209.0 g
rule 1, average|pass: mean 227.3 g against 227.0 g
rule 2, few below T1|FAIL: 1 jar below 218.0 g, at most 2.5 % allowed
rule 3, none below T2|pass: lightest 217.9 g, 0 jars below 209.0 g
verdict: the weights do not support 227.0 g`},
		{one, `declared|226.7 g
weighed|1 of 1 jar
mean|223.79 g
lightest|223.7 g
heaviest|223.7 g
sample correction factor|0.000
sample error limit|0.000 g
sample the handbook asks for|1 of 1
maximum allowable variation|12.7 g
average test|pass: a lot of one jar is judged by the individual test alone
individual test|pass: lightest 223.7 g, 0 jars below 214.0 g, 0 allowed
verdict: the weights support 226.7 g`},
	} {
		lines := c.r.Lines()
		for i, l := range lines {
			l, _, _ = strings.Cut(l, "  [")
			if name := strings.TrimRight(l[:min(31, len(l))], " "); i < len(lines)-1 && len(l) > 31 {
				l = name + "|" + l[31:]
			}
			lines[i] = l
		}
		if got := strings.Join(lines, "\n"); got != c.want {
			t.Errorf("got:\n%s\nwant:\n%s", got, c.want)
		}
	}
}

// Each limit from both sides. The system begins at 5 g (Directive 76/211/EEC
// Art. 1) and ends at 10 kg, in Great Britain at 25 kg (gov.uk guidance).
func TestLimitsFromBothSides(t *testing.T) {
	for g, want := range map[float64][3]bool{4.999: {}, 5: {true, true, true}, 10_000: {true, true, true},
		10_000.001: {false, true, false}, 25_000: {false, true, false}, 25_000.001: {}} {
		q := unit.Grams(g)
		for i, p := range []Packers{EU, GB, {}} { // no largest named: the Directive's
			_, one := p.T1(q)
			_, two := p.T2(q)
			if one != want[i] || two != want[i] {
				t.Errorf("%g g in %q: T1 %v, T2 %v, want %v", g, p.System, one, two, want[i])
			}
		}
	}
	if r, l := (Packers{}).Check(12*unit.Kilogram, same(12_000, 3)); r.Pass || len(l) != 1 || l[0].Hint != "the system covers 5 g to 10000 g" ||
		!strings.Contains(l[0].Message, "of 12000 g is outside") {
		t.Errorf("12 kg: %v", l)
	}
	// Table 2-5 ends at 3.20 lb, and begins at 0.08 lb (from memory, unverified)
	for m, want := range map[unit.Mass]float64{320 * unit.Pound / 100: 42.6, 8 * unit.Pound / 100: 3.6, 8*unit.Pound/100 - 10: 3.628, 12 * unit.Pound / 100: 3.6, 12*unit.Pound/100 + 1: 5.4, 1: 0} {
		if got, ok := MAV(m); !ok || math.Abs(got.Grams()-want) > 0.001 {
			t.Errorf("MAV of %d ng: %s, want %g g", m, got.InGrams(3), want)
		}
	}
	if _, ok := MAV(320*unit.Pound/100 + 1); ok {
		t.Error("the table goes on past 3.20 lb")
	}
}

// Short by exactly the allowance is not beyond it; a hair more is.
func TestJarsAtTheAllowance(t *testing.T) {
	label := 8 * unit.Ounce
	for below, want := range map[unit.Mass]int{0: 0, 1: 1} {
		s := same(230, 11)
		s.Net = append(s.Net, label-unit.Grams(12.7)-below)
		if r, _ := US(label, s); r.Below != want || r.Checks[1].Pass != (want == 0) {
			t.Errorf("MAV and %d ng: %d below", below, r.Below)
		}
		s.Net[11] = 209*unit.Gram - below
		if r, _ := GB.Check(227*unit.Gram, s); r.Checks[2].Pass != (want == 0) {
			t.Errorf("T2 and %d ng: %s", below, r)
		}
	}
	// mean at the label, and a hair under: the packers' first rule has no limit of error
	for less, want := range map[unit.Mass]bool{0: true, 1: false} {
		if r, _ := EU.Check(227*unit.Gram, Sample{Net: []unit.Mass{228 * unit.Gram, 226*unit.Gram - less}}); r.Checks[0].Pass != want {
			t.Errorf("mean and %d ng: %v", less, !want)
		}
	}
	// two jars, short by 1 g and 3 g: s = sqrt 2, SEL = 8.984 s = 12.7 g; one jar of two has none
	if r, _ := US(label, sampleOf(label, 2, -1, -3)); !r.Checks[0].Pass || math.Abs(r.SEL-8.984*math.Sqrt2) > 1e-6 {
		t.Errorf("two jars: %s", r)
	}
	// exactly the plan's sample lets one of a lot over 3200 fall short, one less does not
	for n, want := range map[int]bool{48: true, 47: false} {
		s := same(230, n)
		s.Net[0], s.Lot = 200*unit.Gram, 3201
		r, l := US(label, s)
		if r.Checks[1].Pass != want || (len(l) == 0) != want {
			t.Errorf("%d of 3201: %v, %v", n, r.Checks[1].Pass, l)
		}
	}
}

// A screening is called one up to the last jar that is missing.
func TestWhatIsAScreening(t *testing.T) {
	for _, c := range []struct {
		n, lot int
		said   bool
	}{{12, 40, false}, {11, 40, true}, {5, 5, false}, {5, 0, false}, {4, 5, true}, {11, 11, false}, {11, 12, true}} {
		s := same(230, c.n)
		s.Lot = c.lot
		if _, l := EU.Check(227*unit.Gram, s); (len(l) == 1 && l[0].Code == "small-sample") != c.said {
			t.Errorf("%d of %d: %v", c.n, c.lot, l)
		}
		if _, l := US(8*unit.Ounce, s); (len(l) == 1 && l[0].Code == "small-sample") != c.said {
			t.Errorf("us, %d of %d: %v", c.n, c.lot, l)
		}
	}
}

// The sums stay inside 64 bits at the largest sample taken; one more jar or
// one nanogram more is refused, and the finding names the jar.
func TestLargestSample(t *testing.T) {
	if maxNet*unit.Mass(maxJars) <= 0 || int64(maxNet) > math.MaxInt64/maxJars {
		t.Fatal("the largest sample overflows")
	}
	full := same(100_000, 10_000)
	if st, l, ok := full.measure(); !ok || st.mean != 100*unit.Kilogram {
		t.Errorf("10 000 jars of 100 kg: %v, %v", st.mean, l)
	}
	if _, l, _ := same(100, 10_001).measure(); len(l) != 1 || l[0].Code != "too-many-weights" {
		t.Errorf("10 001 jars: %v", l)
	}
	over := Sample{Net: []unit.Mass{unit.Gram, 100*unit.Kilogram + 1, -1}, Path: "fill[2].net"}
	if _, l, _ := over.measure(); len(l) != 1 || l[0].Code != "bad-weight" || l[0].Path != "fill[2].net[1]" {
		t.Errorf("over 100 kg: %v", l)
	}
	if _, l, _ := (Sample{Net: []unit.Mass{0}}).measure(); len(l) != 1 || l[0].Path != "" {
		t.Errorf("without a path: %v", l)
	}
}

// Correction factors to the printed third decimal: Student's t at three
// decimals over sqrt n. The last row is the handbook's own figure, a
// thousandth above Student's 0.2904 (from memory, unverified).
func TestFactorsToTheThirdDecimal(t *testing.T) {
	for _, f := range factors[:len(factors)-1] {
		if want := math.Round(quantile975(f.n-1)*1000) / math.Sqrt(float64(f.n)); math.Abs(float64(f.scf)-want) > 0.6 {
			t.Errorf("n %d: %d, Student gives %.1f", f.n, f.scf, want)
		}
	}
	if f := factors[len(factors)-1]; f.n != 48 || f.scf != 291 {
		t.Errorf("last row: %+v", f)
	}
	for n, want := range map[int]int{1: 0, 13: 422, 24: 422, 25: 291, 49: 291} { // between rows the next, which allows less
		if factor(n) != want {
			t.Errorf("factor of %d: %d, want %d", n, factor(n), want)
		}
	}
}

// Three digits, cut: 1 kg is printed in kilograms, a gram less in grams.
func TestMetricAtAKilogram(t *testing.T) {
	for m, want := range map[unit.Mass]string{unit.Kilogram: "1\u00a0kg", unit.Kilogram - 1: "999\u00a0g", unit.Grams(99.99): "99.9\u00a0g",
		unit.Grams(1239.999): "1.23\u00a0kg", unit.Grams(9.999): "9.99\u00a0g"} {
		if got := together.Replace(m.MetricNet()); got != want {
			t.Errorf("%d ng: %q, want %q", m, got, want)
		}
	}
}

// Nothing that can be declared is an error, with what to do.
func TestTooSmallToDeclare(t *testing.T) {
	if a, l := EU.Recommend(same(0.9, 3)); a.Declared != 0 || !l.HasErrors() || l[0].Code != "weight-too-small" || !strings.Contains(l[0].Message, "of 0.9 g") {
		t.Errorf("%+v %v", a, l)
	}
	if a, _ := RecommendUS(same(2.84, 3)); a.Text != "0.1\u00a0oz (2.83\u00a0g)" {
		t.Errorf("a tenth of an ounce: %q", a.Text)
	}
	// no allowance is tabled under 5 g and over 10 kg: no jar may be lighter
	s := Sample{Net: []unit.Mass{4 * unit.Gram, 6 * unit.Gram}}
	if a, _ := EU.Recommend(s); a.Declared != 4*unit.Gram || !strings.Contains(a.Rule, "no allowance is tabled") {
		t.Errorf("under 5 g: %+v", a)
	}
	if a, _ := EU.Recommend(same(300, 12)); !strings.Contains(a.Rule, "no jar short by more") {
		t.Errorf("300 g: %q", a.Rule)
	}
}

// A report in which nothing was checked says nothing good.
func TestNothingCheckedIsNoPass(t *testing.T) {
	for want, checks := range map[bool][]Check{false: nil, true: {{Pass: true}}} {
		r := Report{Checks: checks}
		if r.conclude(); r.Pass != want {
			t.Errorf("%v: pass %v", checks, r.Pass)
		}
	}
}
