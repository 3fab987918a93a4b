package weigh

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

func sampleOf(label unit.Mass, lot int, errs ...float64) Sample {
	s := Sample{Lot: lot, Path: "fill[0].net", Metric: true}
	for _, e := range errs {
		s.Net = append(s.Net, label+unit.Grams(e))
	}
	return s
}

// Worked examples A and B: 48 jars, 8 oz, n = 12. The arithmetic is that of
// NIST Handbook 133 ch. 2 (average and individual test); the weights are ours.
func TestUSWorkedExamples(t *testing.T) {
	tests := []struct {
		name         string
		errs         []float64
		xbar, s, sel float64
		below        int
		avg, ind     bool
	}{
		{"A", []float64{1.2, -0.6, 0.4, -3.1, 2.0, 0.3, -1.5, -0.8, -0.2, 1.9, -2.4, -2.0}, -0.40, 1.653, 1.049, 0, true, true},
		{"B", []float64{-3, -2, -4, -1, -5, -2, -3, -4, -1, -2, -3, -13}, -3.583, 3.204, 2.034, 1, false, false},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			label := 8 * unit.Ounce
			r, l := US(label, sampleOf(label, 48, c.errs...))
			if len(l) > 0 {
				t.Fatalf("findings: %v", l)
			}
			if xbar := (r.Mean - label).Grams(); math.Abs(xbar-c.xbar) > 0.0005 {
				t.Errorf("mean error %.4f, want %.3f", xbar, c.xbar)
			}
			if math.Abs(r.SD-c.s) > 0.0005 || math.Abs(r.SEL-c.sel) > 0.001 {
				t.Errorf("s %.4f SEL %.4f, want %.3f and %.3f", r.SD, r.SEL, c.s, c.sel)
			}
			if r.Below != c.below || r.MAV != unit.Grams(12.7) {
				t.Errorf("below %d, MAV %s", r.Below, r.MAV.InGrams(1))
			}
			if r.Checks[0].Pass != c.avg || r.Checks[1].Pass != c.ind || r.Pass != (c.avg && c.ind) {
				t.Errorf("verdict: %s", r)
			}
		})
	}
}

// Two rules of the handbook that hold without numbers: a lot at the label
// passes, and one jar of many cannot average out a shortage.
func TestUSEdges(t *testing.T) {
	label := 8 * unit.Ounce
	if r, _ := US(label, sampleOf(label, 12, make([]float64, 12)...)); !r.Pass {
		t.Errorf("twelve exact jars fail:\n%s", r)
	}
	if r, l := US(label, sampleOf(label, 48, -0.1)); r.Pass || len(l) != 1 || l[0].Code != "small-sample" {
		t.Errorf("one short jar of 48 passes: %v\n%s", l, r)
	}
	if r, _ := US(label, sampleOf(label, 1, -3)); !r.Pass {
		t.Errorf("a lot of one is judged by the individual test alone:\n%s", r)
	}
	// 50 weighed of 5000: one jar beyond the MAV is allowed, two are not.
	errs := make([]float64, 50)
	for i := range errs {
		errs[i] = 1
	}
	errs[0] = -13
	if r, _ := US(label, sampleOf(label, 5000, errs...)); !r.Pass {
		t.Errorf("one of 50 beyond the MAV:\n%s", r)
	}
	errs[1] = -13
	if r, _ := US(label, sampleOf(label, 5000, errs...)); r.Pass {
		t.Errorf("two of 50 beyond the MAV pass:\n%s", r)
	}
}

func TestReportSaysEverything(t *testing.T) {
	label := 8 * unit.Ounce
	r, _ := US(label, sampleOf(label, 48, -3, -2, -4, -1, -5, -2, -3, -4, -1, -2, -3, -13))
	text := r.String()
	for _, want := range []string{"226.7 g", "12 of 48 jars", "3.204 g", "0.635", "2.034 g", "12.7 g",
		"error -3.583 g", "1 jar below 214.0 g, 0 allowed", "NIST Handbook 133, Table 2-5", "do not support"} {
		if !strings.Contains(text, want) {
			t.Errorf("report lacks %q:\n%s", want, text)
		}
	}
	if empty := (Report{}).String(); !strings.Contains(empty, "nothing could be judged") {
		t.Errorf("empty report: %q", empty)
	}
}

func TestBadSamples(t *testing.T) {
	tests := []struct {
		name string
		s    Sample
		code string
	}{
		{"none", Sample{}, "no-weights"},
		{"negative", Sample{Net: []unit.Mass{-1}}, "bad-weight"},
		{"zero", Sample{Net: []unit.Mass{226 * unit.Gram, 0}}, "bad-weight"},
		{"huge", Sample{Net: []unit.Mass{math.MaxInt64}}, "bad-weight"},
		{"lot", Sample{Net: make([]unit.Mass, 5), Lot: 3}, "lot-smaller-than-sample"},
		{"negative lot", Sample{Net: []unit.Mass{unit.Gram}, Lot: -1}, "lot-smaller-than-sample"},
		{"many", Sample{Net: make([]unit.Mass, maxJars+1)}, "too-many-weights"},
	}
	for _, c := range tests {
		if r, l := US(8*unit.Ounce, c.s); r.Pass || !l.HasErrors() || l[0].Code != c.code {
			t.Errorf("%s: pass %v, findings %v", c.name, r.Pass, l)
		}
		if r, l := EU.Check(250*unit.Gram, c.s); r.Pass || !l.HasErrors() {
			t.Errorf("%s (eu): pass %v, findings %v", c.name, r.Pass, l)
		}
	}
	if r, l := US(4*unit.Pound, Sample{Net: []unit.Mass{4 * unit.Pound}}); r.Pass || !l.HasErrors() {
		t.Errorf("a label outside the table was judged: %s", r)
	}
}

// In the United States a report speaks in ounces, as the label does. By hand:
// 10.3 and 10.1 oz against 10 oz: mean 10.2, error +0.2, standard deviation
// 0.2/√2 = 0.141 oz.
func TestOunces(t *testing.T) {
	s := Sample{Net: []unit.Mass{103 * unit.Ounce / 10, 101 * unit.Ounce / 10}, Lot: 2}
	r, _ := US(10*unit.Ounce, s)
	text := r.String()
	for _, want := range []string{"declared                       10 oz", "mean                           10.2 oz", "lightest                       10.1 oz", "0.141 oz", "error +0.200 oz", "support 10 oz"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	if strings.Contains(text, " g") && strings.Contains(text, "283") {
		t.Errorf("grams:\n%s", text)
	}
	if got := r.Off(103 * unit.Ounce / 10); got != "+0.30" {
		t.Errorf("off %s", got)
	}
	s.Metric = true
	if r, _ = US(10*unit.Ounce, s); !strings.Contains(r.String(), "289.1") || r.Off(103*unit.Ounce/10) != "+8.5" {
		t.Errorf("a metric scale:\n%s", r)
	}
}
