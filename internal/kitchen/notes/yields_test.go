package notes

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// allPots are the sets of published recipes.
var allPots = []string{"yields-unseen.txt", "yields-causes.txt", "yields-heldout.txt", "yields-chutneys.txt", "yields-later.txt", "yields-tested.txt"}

// typedTwice are two chutneys of yields-later.txt that stand in two sets before
// it too; what all sets together say counts them once.
var typedTwice = regexp.MustCompile(`RecipeID=(?:321|377),`)

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
			if !typedTwice.MatchString(p.where) {
				rows[h.row].add(h)
			}
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

// Recipes of extension services, the USDA and the national centre alone, typed
// when the model was done and before it was tried on them. On the first trial it
// came within 12 % of 15 of the 23 that can be, and 17 lay in the range: of 12
// with added pectin 9 and 11. After it water that was added no longer counts
// among what is not boiled away where there is little sugar (the quinces), what is
// not cooked has a range at all, and preserves lie where eleven of them, these
// quinces among them, are printed.
func TestTestedYields(t *testing.T) {
	all, can, rows := tallied(t, "yields-tested.txt")
	for k, c := range rows {
		c.of(t, k)
	}
	if all.n != 24 || can.n < 23 || can.near < 15 || can.in < 18 {
		t.Errorf("%+v %+v", all, can)
	}
}

// tested are the sources that try a recipe before they print it.
var tested = regexp.MustCompile(`xtension|USDA|NCHFP|So Easy|Ministry|University|master food`)

// A yield that was tried before it was printed is met oftener than one that was
// not: who prints a recipe decides more than anything in it.
func TestTestedSourcesAreMetOftener(t *testing.T) {
	var of [2]tally
	for _, f := range allPots {
		for _, p := range potsOf(t, f) {
			if h := p.cooked(t); h.can() && !typedTwice.MatchString(p.where) {
				if tested.MatchString(p.where) {
					of[0].add(h)
				} else {
					of[1].add(h)
				}
			}
		}
	}
	of[0].of(t, "of tested sources")
	of[1].of(t, "of other sources")
	if of[0].n < 35 || pct(of[0].in, of[0].n) < 80 || pct(of[0].near, of[0].n) < 68 || pct(of[0].in, of[0].n) < pct(of[1].in, of[1].n) {
		t.Errorf("%+v", of)
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
