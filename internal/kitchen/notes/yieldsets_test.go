package notes

import (
	"cmp"
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// pot is a published recipe with its printed yield in half-pints.
type pot struct {
	where, kind string
	low, high   float64
	grams       bool
	lines       []string
}

var potHead = regexp.MustCompile(`^# (\w+), ([\d.]+)(?:-([\d.]+))? (hp|g)\. Source: (.*)$`)

func potsOf(t *testing.T, file string) (out []pot) {
	t.Helper()
	for _, s := range linesOf(t, "../../../testdata/published/"+file)[1:] {
		m := potHead.FindStringSubmatch(s)
		if m == nil {
			out[len(out)-1].lines = append(out[len(out)-1].lines, s)
			continue
		}
		p := pot{where: m[5], kind: m[1], grams: m[4] == "g"}
		p.low, _ = strconv.ParseFloat(m[2], 64)
		if p.high = p.low; m[3] != "" {
			p.high, _ = strconv.ParseFloat(m[3], 64)
		}
		out = append(out, p)
	}
	return out
}

// trial is one published yield beside the range computed for its recipe, both in
// the unit it is printed in.
type trial struct {
	pot
	rule, row     string // the row of boil.csv, as its kind and method
	low, mid, top float64
	most          float64 // what all that goes in would fill
	half          float64 // half a jar: a printed yield counts whole ones
}

// cooked reads a recipe from notes to jars.
func (p pot) cooked(t *testing.T) trial {
	t.Helper()
	r := Read(strings.Join(p.lines, "\n"), pantry.Default())
	if r.Asked() > 0 {
		t.Errorf("%s: asks %v", p.where, allAsks(r))
	}
	src := r.TOML(Head{Name: p.kind, Product: p.kind, Made: "2026-06-14"})
	if slices.Contains(p.lines, "uncooked") { // a key of the batch file, which the maker writes
		src = []byte(strings.Replace(string(src), "[cook]", "[cook]\nmethod = \"no cook\"", 1))
	}
	return p.computed(t, src)
}

// computed works out a batch file.
func (p pot) computed(t *testing.T, src []byte) trial {
	t.Helper()
	b, l := batch.Parse("", src, nil)
	got, found := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
	for _, d := range append(l, found...) {
		if d.Severity == diag.Error {
			t.Errorf("%s: %s: %s", p.where, d.Code, d.Message)
		}
	}
	each := pantry.Density(got.Brix.Value, 85) * 236.588 / 1000
	method := "long boil"
	switch {
	case strings.HasPrefix(got.YieldRule, "added pectin"):
		method = "added pectin"
	case strings.HasPrefix(got.YieldRule, "not cooked"):
		method = "no cook"
	case p.kind == "chutney" || p.kind == "relish" || p.kind == "curd":
		method = ""
	}
	row, _ := pantry.Default().Boil(p.kind, method)
	h := trial{pot: p, rule: got.YieldRule, row: rowName(row), half: 0.5}
	if p.grams {
		each, h.half = 1, 0.05*p.low
	}
	h.low, h.top, h.most = got.Range.Low.Grams()/each, got.Range.High.Grams()/each, got.Input.Grams()/each
	h.mid = (h.low + h.top) / 2
	if w := h.top - h.low; w > 0.25*h.mid {
		t.Errorf("%s: a range of %.2f to %.2f is wider than a quarter of its middle", p.where, h.low, h.top)
	}
	return h
}

// rowName is a row of boil.csv by its kind and method; jam stands for any kind.
func rowName(b pantry.Boil) string {
	return cmp.Or(b.Product, "jam") + ", " + b.Method
}

// printed is the middle of what is printed.
func (h trial) printed() float64 { return (h.pot.low + h.pot.high) / 2 }

func (h trial) near() bool {
	return math.Abs(h.mid/h.printed()-1) <= 0.12 || h.mid >= h.pot.low && h.mid <= h.pot.high
}

func (h trial) inside() bool { return h.low <= h.pot.high+h.half && h.top >= h.pot.low-h.half }

// can reports a yield that water, sugar and fruit can have given: printed ones
// that are heavier than all that goes in can't.
func (h trial) can() bool { return h.pot.low-h.half <= h.most }

// tally counts a set of recipes, and those of one rule.
type tally struct {
	n, near, in int
	log         float64
}

func (c *tally) add(h trial) {
	c.n, c.log = c.n+1, c.log+math.Log(h.mid/h.printed())
	if h.near() {
		c.near++
	}
	if h.inside() {
		c.in++
	}
}

func (c tally) of(t *testing.T, what string) {
	t.Logf("%-28s %2d recipes, mean %.3f, within 12 %% %2d (%2.0f %%), in the range %2d (%2.0f %%)", what, c.n, math.Exp(c.log/float64(max(c.n, 1))), c.near, pct(c.near, c.n), c.in, pct(c.in, c.n))
}

func pct(k, n int) float64 { return 100 * float64(k) / float64(max(n, 1)) }

// caseFiles are the recipes written as batch files.
func caseFiles(t *testing.T) (out []trial) {
	t.Helper()
	for _, r := range csvOf(t, "yields/cases.csv") {
		src, err := os.ReadFile("../../../testdata/published/yields/" + r[0] + ".toml")
		if err != nil {
			t.Fatal(err)
		}
		kind := regexp.MustCompile(`(?m)^kind = "(\w+)"`).FindSubmatch(src)
		p := pot{where: r[0], kind: string(kind[1]), low: figure(t, r[2]), high: figure(t, r[3]), grams: r[4] == "g"}
		out = append(out, p.computed(t, src))
	}
	return out
}

func csvOf(t *testing.T, file string) [][]string {
	t.Helper()
	f, err := os.Open("../../../testdata/published/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func figure(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
