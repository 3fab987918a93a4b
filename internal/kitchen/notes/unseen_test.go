package notes

import (
	"flag"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

var (
	oneSet   = flag.String("set", "*", "the set of testdata/notes/unseen to try")
	strictly = flag.Bool("strictly", false, "count every key and jar that is not wanted, in the sets of testdata/notes/unseen")
)

// unseen is one published recipe of testdata/notes/unseen: its kind, the lines
// as printed, and what a person reads in each.
type unseen struct {
	where, kind string
	lines, want []string
}

// setNumber gives the number of a set.
func setNumber(set string) int {
	n, _ := strconv.Atoi(set)
	return n
}

// firstStrict is the first set of which no key may be read that is not wanted.
const firstStrict = 18

func unseenRecipes(t *testing.T) (out []unseen) {
	t.Helper()
	files, _ := filepath.Glob(published + "unseen/" + *oneSet + ".txt")
	for _, file := range files {
		for _, s := range linesOf(t, file)[1:] {
			if kind, source, ok := strings.Cut(strings.TrimPrefix(s, "# "), ". Source: "); ok && strings.HasPrefix(s, "# ") {
				out = append(out, unseen{where: filepath.Base(file) + " " + source, kind: kind})
				continue
			}
			line, want, ok := strings.Cut(s, " => ")
			if !ok || len(out) == 0 {
				t.Fatalf("%s: %q has no reading", file, s)
			}
			u := &out[len(out)-1]
			u.lines, u.want = append(u.lines, line), append(u.want, want)
		}
	}
	return out
}

// Recipes collected after the grammar was written, typed with their wanted reading
// before the first run. Set 4 (27 recipes, 27 Nov 2026): the first run had 156 of
// 186 lines right (83.9 %), 163 (87.6 %) once five readings typed wrongly and the
// judging of asked keys were put right; 3 lines were read wrong without a word.
// Set 5 (12 recipes, typed after the grammar was mended on set 4): 72 of 85 at the
// first run (84.7 %), 74 (87.1 %) after two wanted readings were put right, 2 wrong
// without a word. Set 6 (24 recipes, four extension services among them, typed before
// the first run on the grammar of set 5): 135 of 165 at the first run (81.8 %), 143
// (86.7 %) once eight readings typed wrongly were put right; 4 wrong without a word.
// Set 7 (33 recipes, British, Austrian, Swiss, Australian and French pages among them):
// 185 of 235 at the first run (78.7 %), 193 (82.1 %) once eight readings typed wrongly
// were put right; 7 wrong without a word. Set 8 (30 recipes, on the grammar mended
// after set 7, gone over by class in part): 186 of 217 at the first run (85.7 %), 190
// (87.6 %) once four readings typed wrongly were put right; 6 wrong without a word.
// Set 9 (40 recipes, on the grammar that reads lines of several facts): 185 of 218 at
// the first run (84.9 %), 187 (85.8 %) once two readings typed wrongly were put right;
// 2 wrong without a word ("between 2 and 3 hours"; a British pint taken for another).
// Set 10 (30 recipes, on the grammar mended after set 9): 158 of 180 at the first run
// (87.8 %), 163 (90.6 %) once five readings typed wrongly were put right; 3 wrong without
// a word ("forty-five minutes" read as 5; an amount in a bracket; a whole afternoon's time).
// Set 11 (19 recipes, on the grammar mended after set 10): 82 of 92 at the first run
// (89.1 %), 84 (91.3 %) once two readings typed wrongly were put right; 1 wrong without a
// word (two pints whose bracket says that they are British).
// Set 12 (22 recipes, on the grammar mended after set 11): 132 of 152 at the first run
// (86.8 %), 136 (89.5 %) once four readings typed wrongly were put right; 4 wrong without
// a word (a time in water before the sugar, twice; "fifteen or twenty minutes" read as 20;
// a peeled weight in a bracket).
// Set 13 (20 recipes, on the grammar mended after set 12): 110 of 130 at the first run
// (84.6 %), 116 (89.2 %) once six readings typed wrongly were put right; 1 wrong without
// a word ("( I put in 4-5 cups)"). Of the rest half was a word beside a known food.
// Set 14 (25 recipes, on the grammar mended after set 13): 94 of 117 at the first run
// (80.3 %), 102 (87.2 %) once eight readings typed wrongly were put right; 1 wrong without
// a word (two sachets, 18 g in all, read as 18 g each).
// Set 15 (25 recipes, on the grammar mended after set 14): 89 of 102 at the first run
// (87.3 %), 95 (93.1 %) once six readings typed wrongly were put right; 1 wrong without
// a word (a minute with half of the sugar read as the boil).
// Set 16 (24 recipes, on the grammar mended after set 15): 95 of 106 at the first run
// (89.6 %), 98 (92.5 %) once three readings typed wrongly were put right; 2 wrong without
// a word ("the last 5 minutes of cooking"; five minutes before a jelly is strained).
// Set 17 (13 recipes, on the grammar mended after set 16): 62 of 68 at the first run
// (91.2 %), none wrong without a word.
// Set 18 (28 recipes, paragraphs as they stand, judged by every key): 147 of 171 at the
// first run (86.0 %), 151 (88.3 %) once four readings typed wrongly were put right; 5
// wrong without a word (an amount printed twice and summed; two boils of 5 minutes; 30
// minutes before the sugar; the pectin's minute of a jam that is not boiled, twice).
// Set 19 (32 recipes, whole steps as they stand, on the grammar mended after set 18): 174
// of 198 at the first run (87.9 %), 177 (89.4 %) once three readings typed wrongly were
// put right; 4 wrong without a word (minutes before sugar that is called "except sugar",
// of berries for their juice, of a head "Cook Time30 minutes", of jars in the canner).
// Since then a time in a longer line is taken for the boil only where jam, sugar or set
// are spoken of; else it is asked about.
// Set 20 (26 recipes, on the grammar mended after set 19): 115 of 130 at the first run
// (88.5 %), 117 (90.0 %) once two readings typed wrongly were put right; 2 wrong without
// a word (jars upside down for a quarter of an hour, a word of cooking seen within another;
// three weeks in the refrigerator of a jam for the freezer).
// Set 21 (21 recipes, on the grammar mended after set 20): 85 of 92 at the first run
// (92.4 %), 86 (93.5 %) once a reading typed wrongly was put right; 2 wrong without a word
// (a boil of five minutes, and five again; of half an hour, and half an hour more).
// Set 22 (7 recipes, German steps the most of them, on the grammar mended after set 21 and
// the fifth scribbles): 21 of 28 at the first run (75.0 %), 23 (82.1 %) once two readings
// typed wrongly were put right; 1 wrong without a word (half an hour until a pulp is thick,
// before the sugar, whose line was typed after the run).
// Set 23 (25 recipes, Austrian, Swiss, German and French, on the grammar mended after
// set 22): 123 of 144 at the first run (85.4 %), 125 (86.8 %) once two readings typed
// wrongly were put right, a page that set 7 has too left out after the run; 4 wrong
// without a word (minutes of a syrup before its fruit, the same again in the next step,
// juice of a lemon read as one of it, jars "sterilised at 100 °C" taken for the set).
// Set 24 (28 recipes, English all of them, whole steps, on the grammar mended after set 22):
// 153 of 173 at the first run (88.4 %), 157 (90.8 %) once four readings typed wrongly were
// put right; 3 wrong without a word (minutes at which testing begins; fruit boiled before its
// sugar, after a line that speaks of sugar; another dried fruit in a bracket).
// Set 25 (24 recipes, Austrian, Swiss, German and French, on the grammar mended after sets
// 23 and 24): 102 of 126 at the first run (81.0 %), 103 (81.7 %) once a reading typed
// wrongly was put right; 6 wrong without a word (brackets that tell what went in instead,
// four of them; 7/10 minutes; oranges boiled whole).
// Set 26 (26 recipes, on the grammar mended after set 24): 122 of 145 at the first run
// (84.1 %), 126 (86.9 %) once four readings typed wrongly were put right; 4 wrong without a
// word (another sweetener with its amount in a bracket; less sugar so; "between ten and 15
// minutes"; minutes in the canner and as many more).
// Set 27 (18 recipes, German, Swiss and French, on the grammar mended after sets 25 and
// 26): 71 of 82 at the first run (86.6 %), 73 (89.0 %) once two readings typed wrongly
// were put right, three pages of set 10 left out after the run; 1 wrong without a word
// (the net weight in a bracket).
// Set 28 (23 recipes, on the grammar mended after sets 25 and 26): 98 of 115 at the first
// run (85.2 %), 102 (88.7 %) once four readings typed wrongly were put right; 4 wrong
// without a word (minutes of sugar and water; "30/45 minutes"; a container that is safe for
// the freezer; minutes in water behind a list of what goes in).
// Set 29 (17 recipes, German, Swiss, French and Canadian, on the grammar mended after sets
// 27 and 28 and the sixth scribbles): 58 of 68 at the first run (85.3 %), two pages of set
// 12 left out after the run; 4 wrong without a word ("Prune" taken for the English prune; a
// bracket with what was got; minutes "sans faire bouillir"; a thermometer's advice).
// Set 30 (21 recipes, on the grammar mended after sets 27 and 28): 87 of 99 at the first run
// (87.9 %), 89 (89.9 %) once two readings typed wrongly were put right; 1 wrong without a
// word (minutes more if it has not set).
// Set 31 (12 recipes, German, Austrian and French, on the grammar mended after set 29): 49
// of 52 at the first run (94.2 %), a page of set 13 left out after the run; 1 wrong without
// a word (bitter oranges in a bracket behind oranges).
// Set 32 (16 recipes, on the grammar mended after sets 30 and 31): 62 of 69 at the first run
// (89.9 %), 63 (91.3 %) once a reading typed wrongly was put right; 3 wrong without a word
// (jars sealed "or" kept in the fridge; pectin that may be loose, in a bracket; five minutes
// before the sugar, whose line was typed after the run).
// Set 33 (12 recipes, German, Austrian, French and Belgian, on the grammar mended after set
// 31): 59 of 68 at the first run (86.8 %), 60 (88.2 %) once a reading typed wrongly was put
// right; 2 wrong without a word (fruit before it goes through a "chinois"; half an hour's
// boil taken for one of jars because another step says "dick einkochen").
// Set 35 (8 recipes, German and French, on the grammar mended after set 33): 30 of 32 at
// the first run (93.8 %), 31 (96.9 %) once a reading typed wrongly was put right, a page of
// set 11 left out after the run; none wrong without a word.
// Set 37 (10 recipes, German, Austrian and French, on the grammar mended after set 35): 36
// of 40 at the first run (90.0 %), 38 (95.0 %) once two readings typed wrongly were put
// right, two pages of set 20 left out after the run; 2 wrong without a word (fruit boiled
// before it goes through a sieve in the same sentence; the stove's time behind another).
// Set 38 (15 recipes, salsa and syrup among them, on the grammar mended after sets 32 and
// 37): 91 of 106 at the first run (85.8 %), 92 (86.8 %) once the line was added that shows
// a page's pints British; 5 wrong without a word (what may be taken instead, in a bracket;
// a boil before straining in the same line; jars canned "if"; an inch of a stick; words
// run together).
// Set 40 (15 recipes, relish, curd and cordial among them, on the grammar mended after set
// 38): 97 of 107 at the first run (90.7 %), 100 (93.5 %) once three readings typed wrongly
// were put right; 2 wrong without a word (minutes that "probably will be less"; what may be
// kept cold "alternatively").
// Set 42 (17 recipes, plum sauce, mustard butter and flowers among them, on the grammar
// mended after set 40): 69 of 78 at the first run (88.5 %), 71 (91.0 %) once two readings
// typed wrongly were put right; 1 wrong without a word (25 minutes, where "mine took longer").
// Set 44 (19 recipes, tomato jam, feijoas and pickle relish among them, on the grammar
// mended after set 42): 68 of 79 at the first run (86.1 %), 71 (89.9 %) once three readings
// typed wrongly were put right; 1 wrong without a word (jars in the canner "if you are going
// to preserve the jam").
// Set 46 (8 recipes, rose petals and plum butter among them, on the grammar mended after set
// 44): 43 of 49 lines at the first run (87.8 %), three pages of set 1 left out after it, of
// which 18 of 19 were right; none wrong without a word.
// The grammar was mended after each. Cups whose weight stands beside them have been
// read by the weight since set 12; three readings of sets 2, 3 and 9 say so. Of set 2 jars
// that a recipe "serves" are read since set 24.
//
// From firstStrict on the committed judge is the strict one.
func TestUnseenRecipes(t *testing.T) {
	p := pantry.Default()
	total, right := map[string]int{}, map[string]int{}
	for _, u := range unseenRecipes(t) {
		set, _, _ := strings.Cut(u.where, ".")
		if testing.Short() && setNumber(set)%6 != 0 {
			continue // the race detector makes each ten times as long
		}
		r := Read(strings.Join(u.lines, "\n"), p)
		for i, l := range r.Lines {
			total[set]++
			verdict := judge(l, u.want[i])
			if more := strict(l, u.want[i]); verdict == "" && more != "" && (*strictly || setNumber(set) >= firstStrict) {
				verdict = more
			}
			switch verdict {
			case "":
				right[set]++
			case "unread":
				t.Logf("unread: %s: %q (%s; %s)", u.where, l.Text, strings.Join(l.Says, "; "), strings.Join(l.Asks, "; "))
			default:
				t.Errorf("%s: %q: %s", u.where, l.Text, verdict)
			}
		}
	}
	for set, n := range total {
		t.Logf("set %s: %d of %d lines right (%.1f %%)", set, right[set], n, 100*float64(right[set])/float64(n))
		if float64(right[set]) < 0.95*float64(n) {
			t.Errorf("set %s: %d of %d lines right, less than 95 %%", set, right[set], n)
		}
	}
}
