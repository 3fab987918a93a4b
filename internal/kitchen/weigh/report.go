package weigh

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Figure is one number of a report with its clause.
type Figure struct{ Name, Value, Cite string }

// Check is one test with its verdict and clause.
type Check struct {
	Name   string
	Pass   bool
	Detail string
	Cite   string
}

// Report is the outcome of checking one label against one sample. Masses are
// exact; SD and SEL are grams. Fields a system does not use stay zero. Pass is
// false when nothing could be judged.
type Report struct {
	System         string
	Label          unit.Mass
	N, Lot         int
	Mean, Min, Max unit.Mass
	SD             float64
	SEL            float64   // us: sample error limit
	MAV            unit.Mass // us: maximum allowable variation
	TNE, T1, T2    unit.Mass // eu, gb
	Below          int       // jars below label - MAV, or below T1
	Figures        []Figure
	Checks         []Check
	Pass           bool

	metric bool // weights are shown in grams
}

func (r *Report) fill(st stats) {
	r.N, r.Lot, r.Mean, r.Min, r.Max, r.SD = st.n, st.lot, st.mean, st.min, st.max, st.sd
	r.figure("declared", r.Mass(r.Label, 1), "")
	r.figure("weighed", fmt.Sprintf("%d of %s", st.n, jars(st.lot)), "")
	r.figure("mean", r.Mass(st.mean, 2), "")
	r.figure("lightest", r.Mass(st.min, 1), "")
	r.figure("heaviest", r.Mass(st.max, 1), "")
	if st.n > 1 {
		r.figure("standard deviation", r.grams("%.3f", st.sd), "")
	}
}

// Mass shows a weight as the maker reads it off the scale: ounces to the
// hundredth in the United States, grams to some decimals elsewhere.
func (r Report) Mass(m unit.Mass, decimals int) string {
	if r.metric {
		return m.InGrams(decimals)
	}
	return m.Exact(unit.US)
}

// grams shows a number of grams, in ounces where those are read.
func (r Report) grams(verb string, g float64) string {
	if r.metric {
		return fmt.Sprintf(verb+" g", g)
	}
	return fmt.Sprintf(verb+" oz", g/unit.Ounce.Grams())
}

// Off is how far a weight lies over (+) or under (-) the declaration, without
// its unit.
func (r Report) Off(m unit.Mass) string {
	if r.metric {
		return fmt.Sprintf("%+.1f", (m - r.Label).Grams())
	}
	return fmt.Sprintf("%+.2f", (m - r.Label).Ounces())
}

func (r *Report) figure(name, value, cite string) {
	r.Figures = append(r.Figures, Figure{name, value, cite})
}

func (r *Report) check(name string, pass bool, detail, cite string) {
	r.Checks = append(r.Checks, Check{name, pass, detail, cite})
}

func (r *Report) conclude() {
	r.Pass = len(r.Checks) > 0
	for _, c := range r.Checks {
		r.Pass = r.Pass && c.Pass
	}
}

// Lines gives the report as text, one line a figure, then one a check, then
// the verdict; without trailing full stops.
func (r Report) Lines() []string {
	var out []string
	for _, f := range r.Figures {
		out = append(out, fmt.Sprintf("%-30s %s%s", f.Name, f.Value, source(f.Cite)))
	}
	for _, c := range r.Checks {
		out = append(out, fmt.Sprintf("%-30s %s: %s%s", c.Name, passed(c.Pass), c.Detail, source(c.Cite)))
	}
	switch {
	case len(r.Checks) == 0:
		return append(out, "verdict: none, nothing could be judged")
	case r.Pass:
		return append(out, "verdict: the weights support "+r.Mass(r.Label, 1))
	}
	return append(out, "verdict: the weights do not support "+r.Mass(r.Label, 1))
}

// String joins the lines.
func (r Report) String() string { return strings.Join(r.Lines(), "\n") }

// caution warns when a sample is smaller than the plan, and notes a small lot.
func caution(s Sample, st stats, want int, cite string) (l diag.List) {
	if st.n < want {
		l.Warnf("small-sample", s.File, s.Path, "only %d of %s weighed; this is a screening, a full check weighs %d", st.n, jars(st.lot), want).
			Hinted("weigh more jars before you print; jars nobody weighed may be lighter").Cited(cite)
	}
	return l
}

func source(cite string) string {
	if cite == "" {
		return ""
	}
	return "  [" + cite + "]"
}

func passed(ok bool) string {
	if ok {
		return "pass"
	}
	return "FAIL"
}

func jars(n int) string {
	if n == 1 {
		return "1 jar"
	}
	return strconv.Itoa(n) + " jars"
}

func index(path string, i int) string {
	if path == "" {
		return ""
	}
	return path + "[" + strconv.Itoa(i) + "]"
}
