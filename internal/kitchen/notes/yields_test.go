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

// allPots are the sets of published recipes, and when each was seen.
var allPots = []string{"yields-unseen.txt", "yields-causes.txt", "yields-heldout.txt", "yields-chutneys.txt"}

// tallied counts one set: all, those whose yield can be, and the latter by the
// row of boil.csv that decides.
func tallied(t *testing.T, file string) (all, can tally, rows map[string]*tally) {
	t.Helper()
	rows = map[string]*tally{}
	for _, p := range potsOf(t, file) {
		h := p.cooked(t)
		why := "heavier than all that goes in"
		if all.add(h); h.can() {
			can.add(h)
			why = ""
			if rows[h.row] == nil {
				rows[h.row] = &tally{}
			}
			rows[h.row].add(h)
		}
		t.Logf("%-9s %-38s %7.1f-%.1f, printed %g-%g, ratio %.2f %s %s %.50s %s", p.kind, h.rule, h.low, h.top, h.pot.low, h.pot.high,
			h.mid/h.printed(), map[bool]string{true: "near"}[h.near()], map[bool]string{true: "in"}[h.inside()], p.where, why)
	}
	all.of(t, "all of "+file)
	can.of(t, "that can be")
	return all, can, rows
}

// Recipes collected after the first model of the pot was set; they were seen
// since. Run with -v for the table.
func TestUnseenYields(t *testing.T) {
	_, can, _ := tallied(t, "yields-unseen.txt")
	if mean := math.Exp(can.log / float64(can.n)); can.n < 45 || math.Abs(mean-1) > 0.05 || pct(can.near, can.n) < 55 || pct(can.in, can.n) < 70 {
		t.Errorf("%+v, mean %.3f", can, mean)
	}
}

// Recipes that the model before this one had not seen: it came within 12 % of
// 12 of 39, and 21 lay in its range. The causes of the misses were looked for
// in them, so what holds now shows no more than that it stays.
func TestCausesYields(t *testing.T) {
	_, can, _ := tallied(t, "yields-causes.txt")
	if can.n < 36 || pct(can.near, can.n) < 50 || pct(can.in, can.n) < 65 {
		t.Errorf("%+v", can)
	}
}

// Recipes that this model had not seen when they were typed, none left out. On
// the first trial it came within 12 % of 18 of the 43 that can be, 26 lay in the
// range; of all but the chutneys, which it took for thick at 36 °Brix, within 16
// and in it 23 of 30. After it the chutneys were changed, a cup of chopped
// vegetables was no longer taken a tenth heavier, and the range may reach above
// what goes in where that was measured in cups.
func TestHeldOutYields(t *testing.T) {
	all, can, rows := tallied(t, "yields-heldout.txt")
	c := rows["chutney, "]
	strangers := tally{n: can.n - c.n, near: can.near - c.near, in: can.in - c.in, log: can.log - c.log}
	strangers.of(t, "all but chutneys")
	if mean := math.Exp(strangers.log / float64(strangers.n)); all.n != 48 || math.Abs(mean-1) > 0.06 || pct(strangers.near, strangers.n) < 50 || pct(strangers.in, strangers.n) < 70 {
		t.Errorf("%+v, mean %.3f", strangers, mean)
	}
}

// Recipes typed after all of the above, tried once, with nothing changed for them:
// what a new recipe may expect.
func TestLaterYields(t *testing.T) {
	all, can, rows := tallied(t, "yields-later.txt")
	for k, c := range rows {
		c.of(t, k)
	}
	if all.n != 24 || can.n < 1 {
		t.Errorf("%+v %+v", all, can)
	}
}

// What boil.csv states of each row, how many printed yields lie in its range and
// of how many recipes, is what comes out.
func TestCoverageIsWhatIsStated(t *testing.T) {
	sum := map[string]*tally{}
	add := func(rows map[string]*tally) {
		for k, c := range rows {
			if sum[k] == nil {
				sum[k] = &tally{}
			}
			sum[k].n, sum[k].near, sum[k].in, sum[k].log = sum[k].n+c.n, sum[k].near+c.near, sum[k].in+c.in, sum[k].log+c.log
		}
	}
	for _, f := range allPots {
		_, _, rows := tallied(t, f)
		add(rows)
	}
	for _, h := range caseFiles(t) {
		one := tally{}
		one.add(h)
		add(map[string]*tally{h.row: &one})
	}
	for k, c := range sum {
		c.of(t, k)
		kind, method, _ := strings.Cut(k, ", ")
		row, ok := pantry.Default().Boil(kind, method)
		if got := pct(c.in, c.n); c.n > 3 && (!ok || math.Abs(got-row.Coverage) > 3 || c.n != row.Recipes) {
			t.Errorf("%s: %.0f %% of %d lie in the range, the table states %g %% of %d", k, got, c.n, row.Coverage, row.Recipes)
		}
	}
}

// No number can be near two that contradict each other: recipes that were
// printed twice, alike but for what is written beside them, with two yields.
// Even who knew which of the two is meant by one number for each recipe is
// within 12 % of no more than this.
func TestCeilingOfPublishedYields(t *testing.T) {
	best, between, inside, n, sum := 0, 0, 0, 0, 0.0
	for _, r := range csvOf(t, "twice-printed.csv") {
		one, other := figure(t, r[1]), figure(t, r[2])*figure(t, r[3])/figure(t, r[4]) // of the same pot
		low, high := min(one, other), max(one, other)
		apart := math.Log(high / low)
		n, sum = n+2, sum+apart*apart/2
		if best++; apart <= math.Log(1.12/0.88) { // a number between them is within 12 % of both
			best, between = best+1, between+2
		}
		if inside++; high-0.5 <= (low+0.5)*1.125/0.875 { // one range holds both
			inside++
		}
		t.Logf("%-60s %g and %g, %.2f apart", r[0], one, figure(t, r[2]), high/low)
	}
	sd := math.Sqrt(sum / float64(n/2))
	t.Logf("%d printed yields of %d recipes: standard deviation %.2f, one number each is within 12 %% of %.0f %% at the very best, the middle of both of %.0f %%; one range each holds %.0f %%", n, n/2, sd, pct(best, n), pct(between, n), pct(inside, n))
	if n < 40 || pct(best, n) > 80 || pct(between, n) > 60 || pct(inside, n) > 90 {
		t.Errorf("%d: %.0f %%, %.0f %%, %.0f %%", n, pct(best, n), pct(between, n), pct(inside, n))
	}
}
