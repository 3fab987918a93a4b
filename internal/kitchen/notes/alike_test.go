package notes

import (
	"fmt"
	"math/rand"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// What a reading comes to: the foods and amounts, the keys and the jars, in figures.
func worth(l Line) string {
	var out []string
	g := &grammar{p: pantry.Default(), found: rows, tongues: tongues()}
	for _, in := range l.Ingredients {
		for _, n := range append(slices.Clone(in.Names), in.Name) {
			row, _ := g.row(n)
			out = append(out, row.Key)
		}
		for _, a := range append(slices.Clone(in.Amounts), in.Amount) {
			q, err := unit.ParseQuantity(a)
			switch {
			case a == "":
			case err != nil:
				out = append(out, a)
			default:
				out = append(out, fmt.Sprintf("%d/%.0f %.3f %d", q.Dim, float64(q.Mass)/1e4, float64(q.Volume)/float64(unit.Cup), int(1000*q.Count+0.5)))
			}
		}
	}
	for _, k := range l.Keys {
		out = append(out, k.Path+" "+strings.ReplaceAll(k.Value, ",", "."))
	}
	for _, f := range l.Fills {
		out = append(out, fmt.Sprintf("%s %s %g %g %v", f.Jar, strings.ReplaceAll(f.Said, ",", "."), f.Low, f.High, f.Planned))
	}
	slices.Sort(out)
	return strings.Join(out, "; ")
}

var (
	rows    = map[string]*pantry.Ingredient{}
	tongues = sync.OnceValue(func() []*pantry.Pantry {
		p := pantry.Default()
		return []*pantry.Pantry{p, p.Speaking("de"), p.Speaking("fr")}
	})
)

var (
	aHalf  = regexp.MustCompile(`(^|[^\d.,/-]|\d )(1/2|1/4|3/4|1/3|2/3|1/8)([^\d/]|$)`)
	glyphs = map[string]string{"1/2": "½", "1/4": "¼", "3/4": "¾", "1/3": "⅓", "2/3": "⅔", "1/8": "⅛"}
	aPoint = regexp.MustCompile(`(^|[^\d.,/:°])(\d{1,2})\.(\d)( ?(?:kg|lb|l|g|cups?|oz|cm)\b)`)
	aTenth = regexp.MustCompile(`(^|[^\d.,/])(\d{1,2})\.5( ?(?:kg|lb|l|cups?|oz)\b)`)
)

// The same line in another hand: fractions as one sign or with the slash of Unicode, a
// comma for the point, spaces no one sees, signs before and behind, a bullet.
var hands = []struct {
	name string
	turn func(string) string
}{
	{"fraction signs", func(s string) string {
		return aHalf.ReplaceAllStringFunc(s, func(m string) string {
			f := aHalf.FindStringSubmatch(m)
			return strings.TrimSuffix(f[1], " ") + map[bool]string{true: " "}[f[1] == " "] + glyphs[f[2]] + f[3]
		})
	}},
	{"fraction slash", func(s string) string {
		return aHalf.ReplaceAllStringFunc(s, func(m string) string { return strings.Replace(m, "/", "⁄", 1) })
	}},
	{"decimal comma", func(s string) string { return aPoint.ReplaceAllString(s, "$1$2,$3$4") }},
	{"a half for .5", func(s string) string { return aTenth.ReplaceAllString(s, "$1$2 1/2$3") }},
	{"hard spaces", func(s string) string { return strings.ReplaceAll(s, " ", "\u00A0") }},
	{"wide spaces", func(s string) string {
		if strings.Contains(s, "   ") {
			return s // columns of its own
		}
		return "  " + strings.ReplaceAll(s, " ", "   ") + " \t"
	}},
	{"a bullet", func(s string) string { return "• " + s }},
	{"a box", func(s string) string { return "☐ " + s }},
	{"a full stop", func(s string) string { return strings.TrimRight(s, " .,;:!?") + "." }},
	{"a comma", func(s string) string { return strings.TrimRight(s, " .,;:!?") + "," }},
	{"a semicolon", func(s string) string { return strings.TrimRight(s, " .,;:!?") + ";" }},
	{"quotes", func(s string) string { return `"` + s + `"` }},
	{"long dashes", func(s string) string { return strings.ReplaceAll(s, "-", "–") }},
	{"curly quotes", func(s string) string { return strings.ReplaceAll(s, "'", "’") }},
}

// enough is how many are tried at least; under -short an eighth of the lines is read.
func enough(n int) int {
	if testing.Short() {
		return n / 10
	}
	return n
}

// A line in another hand is worth the same, or asks.
func TestTheSameInAnotherHand(t *testing.T) {
	p := pantry.Default()
	tried := 0
	for s, read := range everyReading(t) {
		if len(read) != 1 || !read[0].Read() || len([]rune(s)) > 200 || strings.ContainsAny(s, "\"|") {
			continue
		}
		for i, h := range hands {
			other := h.turn(s)
			if other == s || (len(s)+i)%12 != 0 { // a twelfth of all, or it would take a minute
				continue
			}
			tried++
			got := Read(other, p).Lines
			if len(got) != 1 {
				t.Fatalf("%s: %q is %d lines", h.name, other, len(got))
			}
			if worth(got[0]) != worth(read[0]) && len(got[0].Asks) <= len(read[0].Asks) && (got[0].Read() || len(got[0].Says)+len(got[0].Asks) == 0) {
				t.Errorf("%s: %q is worth\n%q, but %q is worth\n%q", h.name, other, worth(got[0]), s, worth(read[0]))
			} else if worth(got[0]) != worth(read[0]) {
				t.Logf("%s: %q is not read as %q is (%q)", h.name, other, s, got[0].Asks)
			}
		}
	}
	t.Logf("%d lines", tried)
	if tried < enough(2500) {
		t.Errorf("%d lines tried", tried)
	}
}

// Words that change nothing, our invention, before and behind a line.
var idle = []struct{ before, behind string }{
	{"", " (picked this morning)"}, {"", ", lovely ones"}, {"", " from the market"}, {"we used ", ""}, {"then ", ""}, {"", " - very good"}, {"", ". Lovely colour."}, {"", " (see below)"}, {"", ", as always"}, {"this year: ", ""}, {"ok, ", ""}, {"", " !!"}, {"", " (thanks Ida)"}, {"NB ", ""},
}

// Words that change nothing change nothing, or the line asks.
func TestIdleWords(t *testing.T) {
	p := pantry.Default()
	tried, unread := 0, 0
	for s, read := range everyReading(t) {
		if len(read) != 1 || !read[0].Read() || len([]rune(s)) > 120 || strings.ContainsAny(s, "\"|[]") {
			continue
		}
		for i, w := range idle {
			if (len(s)+i)%16 != 0 {
				continue
			}
			tried++
			other := w.before + strings.TrimRight(s, " .,;:") + w.behind
			got := Read(other, p).Lines[0]
			switch {
			case worth(got) == worth(read[0]):
			case !got.Read() || len(got.Asks) > 0:
				unread++
			default:
				t.Errorf("%q is worth\n%q, but %q is worth\n%q", other, worth(got), s, worth(read[0]))
			}
		}
	}
	t.Logf("%d lines, %d of them not read or asked about more", tried, unread)
	if tried < enough(3000) {
		t.Errorf("%d lines tried", tried)
	}
}

// Facts of one line each, our invention; joined on one line all of them are read, or
// the line asks. What is asked of alone may be.
var facts1 = strings.Split(`2 lb plums, stoned|1.2 kg apricots|3 cups sugar|900 g jam sugar|juice of 2 lemons|1/2 tsp cinnamon|250 ml water|1 (1.75 oz) package pectin|2 apples, grated|500 g onions, sliced|1 knob of butter|
boiled 12 min|simmered 25 minutes|boil hard 1 minute|set at 104.5 °C|pH 3.2|65 Brix|process 10 min in boiling water|BWB 15 min|headspace 1/4 in|
got 7 half-pints|made 9 jars of 250 ml|filled 5 pints|14 June 2026|lot L26-165|finished pot 3.1 kg|tare 1240 g`, "|")

func TestFactsOnOneLine(t *testing.T) {
	p := pantry.Default()
	r := rand.New(rand.NewSource(1))
	silent, asked, all := 0, 0, 0
	for n := 2; n <= 4; n++ {
		for range enough(250) {
			var parts []string
			want := map[string]int{}
			for _, i := range r.Perm(len(facts1))[:n] {
				s := strings.TrimSpace(facts1[i])
				for _, w := range strings.Split(worth(Read(s, p).Lines[0]), "; ") {
					want[w]++
				}
				parts = append(parts, s)
			}
			line := strings.Join(parts, []string{"; ", ". ", ", ", " - ", " / ", "  "}[r.Intn(5)])
			l := Read(line, p).Lines[0]
			all++
			for _, w := range strings.Split(worth(l), "; ") {
				want[w]--
			}
			missed := slices.Collect(func(yield func(string) bool) {
				for w, k := range want {
					if k != 0 && w != `process.method "boiling water"` && !yield(fmt.Sprintf("%+d %s", -k, w)) {
						return
					}
				}
			})
			switch {
			case len(missed) == 0:
			case len(l.Asks) > 0 || !l.Read():
				asked++
			default:
				silent++
				t.Errorf("%q: %v\n%s", line, missed, summary(l))
			}
		}
	}
	t.Logf("%d lines: %d read whole, %d asked or unread, %d lose something", all, all-silent-asked, asked, silent)
}
