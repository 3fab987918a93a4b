package pack

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// CameHome turns what came home from the one market that the plan is filtered
// to into rows of the ledger: what was sold, and what came home. counts is one
// number when jars of a single lot and size were there, else one a lot:
// "L26165-SR=3, L26201-AP=0", and one a size, "L26165-SR 8 fl oz=3", where a lot
// was there in several. Zero is a count too: all were sold.
func (p *Plan) CameHome(counts string) ([]ledger.Entry, diag.List) {
	var found diag.List
	open := p.toCome()
	if len(open) != 1 {
		p.whichDay(open, &found)
		return nil, found
	}
	s := open[0]
	want, ok := readCounts(counts, &found)
	if !ok {
		return nil, found
	}
	at := p.taken(s)
	if n, single := want[""]; single {
		if len(at) > 1 {
			found.Errorf("which-lot", diag.Command, "", "%s had jars of several lots or sizes, and %d came home of which is not said", s.To, n).
				Hinted("write " + example(at))
			return nil, found
		}
		want = map[string]int{FoldName(at[0].words[0]): n}
	}
	return backRows(s, at, want, found)
}

// toCome are the markets of the plan of which it is not noted what came home.
func (p *Plan) toCome() (out []Stop) {
	for _, s := range p.Stops {
		if s.Type == Market && s.CameHome < 0 && s.Jars > 0 {
			out = append(out, s)
		}
	}
	return out
}

func (p *Plan) whichDay(open []Stop, found *diag.List) {
	var days []string
	for _, s := range open {
		days = append(days, s.Date.String())
	}
	if len(open) > 1 {
		found.Errorf("which-day", diag.Command, "", "%s is held on several days, and it is not said which", open[0].To).Hinted("add --date with one of " + table.Join(days))
		return
	}
	for _, s := range p.Stops {
		if s.CameHome < 0 && s.Jars == 0 {
			found.Errorf("came-home", diag.Command, "", "no jars were left for %s: others have them", p.Filter).Hinted("correct the promises of these lots, or count under [[fill]]")
			return
		}
	}
	found.Errorf("came-home", diag.Command, "", "all jars that went to %s are noted already", p.Filter).Hinted("jarmark ledger --undo takes the last change back")
}

// taken is jars of one size and lot at a market.
type taken struct {
	words []string // what a maker may call it, the shortest first that tells it apart
	lines []Line
	jars  int
}

// Taken is jars of one size and lot that went to a market, of which it is not
// noted how many came home.
type Taken struct {
	Word string // what CameHome calls them
	Name string // of the jam, and of the size where the lot has several
	Jars int
}

// OpenMarket is a market of which it is not noted what came home.
type OpenMarket struct {
	To   string
	Date unit.Date
	Jars []Taken
}

// Open is the one market of the plan that is not noted yet; nil when there is
// none, or several are.
func (p *Plan) Open() *OpenMarket {
	open := p.toCome()
	if len(open) != 1 {
		return nil
	}
	out := &OpenMarket{To: open[0].To, Date: open[0].Date}
	for _, t := range p.taken(open[0]) {
		l := t.lines[0]
		name := l.Name
		if t.words[0] != l.Lot {
			name += ", " + l.JarText
		}
		out.Jars = append(out.Jars, Taken{t.words[0], name, t.jars})
	}
	return out
}

func (p *Plan) taken(s Stop) (out []taken) {
	at := map[int]int{}
	lots := map[string]int{}
	for _, l := range s.Lines {
		i, seen := at[l.stock]
		if !seen {
			i = len(out)
			at[l.stock] = i
			out = append(out, taken{})
			lots[l.Lot]++
		}
		out[i].lines = append(out[i].lines, l)
		out[i].jars += l.Count
	}
	for i := range out {
		l := out[i].lines[0]
		out[i].words = []string{l.Lot + " " + l.JarText, l.Lot + " " + l.Jar.Key}
		if lots[l.Lot] == 1 {
			out[i].words = append([]string{l.Lot}, out[i].words...)
		}
	}
	return out
}

func example(at []taken) string {
	var out []string
	for _, t := range at {
		out = append(out, t.words[0]+"=N")
	}
	return `"` + strings.Join(out, ", ") + `"`
}

// readCounts reads "5" (key "") or "LOT=5, LOT=0" (folded words).
func readCounts(s string, found *diag.List) (map[string]int, bool) {
	bad := func(word string) (map[string]int, bool) {
		found.Errorf("bad-count", diag.Command, "", "%q is not a number of jars", word).Hinted("write a whole number, or LOT=NUMBER for each lot")
		return nil, false
	}
	out := map[string]int{}
	for _, f := range strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ';' }) {
		lot, num, named := strings.Cut(f, "=")
		if !named {
			lot, num = "", f
		}
		n, err := strconv.Atoi(strings.TrimSpace(num))
		if err != nil || n < 0 || n > maxJars {
			return bad(strings.TrimSpace(num))
		}
		if _, twice := out[FoldName(lot)]; twice {
			return bad(strings.TrimSpace(s))
		}
		out[FoldName(lot)] = n
	}
	if _, single := out[""]; len(out) == 0 || single && len(out) > 1 {
		return bad(strings.TrimSpace(s))
	}
	return out, true
}

// backRows are the rows of the ledger. Jars that came home are those packed
// last; every row names its price, so that takings can be summed.
func backRows(s Stop, at []taken, want map[string]int, found diag.List) (out []ledger.Entry, _ diag.List) {
	used := map[string]bool{}
	for _, t := range at {
		for _, w := range t.words {
			n, said := want[FoldName(w)]
			if !said {
				continue
			}
			used[FoldName(w)] = true
			if n > t.jars {
				found.Errorf("came-home", diag.Command, "", "%d jars of lot %s came home from %s, but only %d went", n, t.lines[0].Lot, s.To, t.jars).Hinted("check the count, or correct jars")
				continue
			}
			out = append(out, t.rows(s, n)...)
			break
		}
	}
	for _, w := range sortedLots(want) {
		if !used[w] {
			found.Errorf("unknown-lot", diag.Command, "", "no jars of lot %q went to %s", strings.ToUpper(w), s.To).Hinted(fmt.Sprintf("write %s", example(at)))
		}
	}
	if found.HasErrors() {
		return nil, found
	}
	return out, found
}

func (t taken) rows(s Stop, back int) (out []ledger.Entry) {
	home := back
	for i := len(t.lines) - 1; i >= 0; i-- {
		l := t.lines[i]
		n := min(back, l.Count)
		back -= n
		if l.Count > n {
			out = append(out, entryOf(s, l, ledger.Sold, l.Count-n, l.Price))
		}
	}
	if home > 0 {
		out = append(out, entryOf(s, t.lines[0], ledger.CameHome, home, unit.Money{}))
	}
	return out
}

func entryOf(s Stop, l Line, why ledger.Why, n int, price unit.Money) ledger.Entry {
	return ledger.Entry{Date: s.Date, Lot: l.Lot, Jar: l.Jar.Key, Count: n, Why: why, Who: s.To, Price: price, From: FromMarket}
}

func sortedLots(m map[string]int) []string {
	set := map[string]bool{}
	for k := range m {
		set[k] = true
	}
	return slices.Sorted(maps.Keys(set))
}
