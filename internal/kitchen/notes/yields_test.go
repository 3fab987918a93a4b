package notes

import (
	"math"
	"regexp"
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

func unseenPots(t *testing.T) (out []pot) {
	t.Helper()
	for _, s := range linesOf(t, "../../../testdata/published/yields-unseen.txt")[1:] {
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

// Recipes collected after the model of the pot was set, from notes to jars.
func TestUnseenYields(t *testing.T) {
	near, inside, n := 0, 0, 0
	sum := 0.0
	seen, held := map[string]int{}, map[string]int{}
	for _, p := range unseenPots(t) {
		r := Read(strings.Join(p.lines, "\n"), pantry.Default())
		if r.Asked() > 0 {
			t.Errorf("%s: asks %v", p.where, allAsks(r))
		}
		b, l := batch.Parse("", r.TOML(Head{Name: p.kind, Product: p.kind, Made: "2026-06-14"}), nil)
		got, found := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
		for _, d := range append(l, found...) {
			if d.Severity == diag.Error {
				t.Errorf("%s: %s: %s", p.where, d.Code, d.Message)
			}
		}
		each := pantry.Density(got.Brix.Value, 85) * 236.588 / 1000
		if p.grams {
			each = 1
		}
		if most := got.Input.Grams() / each; p.low-0.5 > most {
			t.Logf("%-9s printed %g of what fills %.1f: not counted  %.60s", p.kind, p.low, most, p.where)
			continue
		}
		mid := math.Sqrt(got.Range.Low.Grams()*got.Range.High.Grams()) / each
		ratio := mid / ((p.low + p.high) / 2)
		half := 0.5 // a printed yield counts whole jars
		if p.grams {
			half = 0.05 * p.low
		}
		in := got.Range.Low.Grams()/each <= p.high+half && got.Range.High.Grams()/each >= p.low-half
		n++
		rule := strings.Fields(got.YieldRule)[0]
		seen[rule]++
		if in {
			held[rule]++
		}
		sum += math.Log(ratio)
		if math.Abs(ratio-1) <= 0.12 {
			near++
		}
		if in {
			inside++
		}
		t.Logf("%-9s in %5.0f out %5.0f %-34s %6.1f, printed %g-%g, ratio %.2f %v  %.60s", p.kind, got.Input.Grams(), got.Yield.Mass.Grams(), got.YieldRule, mid, p.low, p.high, ratio, in, p.where)
	}
	t.Logf("of %v in the range: %v", seen, held)
	for rule, least := range map[string]float64{"added": 0.80, "long": 0.45, "chutney,": 0.60} { // boil.csv states what all recipes come to
		if float64(held[rule]) < least*float64(seen[rule]) || seen[rule] < 10 {
			t.Errorf("%s: %d of %d in the range", rule, held[rule], seen[rule])
		}
	}
	if mean := math.Exp(sum / float64(n)); n < 40 || math.Abs(mean-1) > 0.05 || float64(near) < 0.45*float64(n) || float64(inside) < 0.70*float64(n) {
		t.Errorf("%d recipes, mean %.3f, %d near, %d inside", n, mean, near, inside)
	}
	t.Logf("%d recipes: mean ratio %.3f, within 12 %%: %d (%.0f %%), in the range: %d (%.0f %%)", n, math.Exp(sum/float64(n)), near, 100*float64(near)/float64(n), inside, 100*float64(inside)/float64(n))
}
