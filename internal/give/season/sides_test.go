package season

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// told writes a list out: its heads, and every part with its rows, figures,
// bars and cells.
func told(l *table.List) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s / %s / %s / %s\n", l.Head, l.Title, l.Maker, l.Sum)
	for _, p := range l.Parts {
		fmt.Fprintf(&b, "== %s %v %v %v%s\n", p.Title, p.Columns, p.Legend, p.Not, flags(map[string]bool{"compact": p.Compact, "barred": p.Barred, "beside": p.Beside}))
		for _, r := range p.Rows {
			fmt.Fprintf(&b, "%s%s%v %v", strings.TrimSpace(string(r.Type)+" "+r.Amount+" "+r.What+" "+r.Note), flags(map[string]bool{"tick": r.Tick, "strong": r.Strong}), r.Figures, r.Not)
			for _, x := range r.Bars {
				fmt.Fprintf(&b, " %q%v%q", x.Name, x.Parts, x.Note)
			}
			fmt.Fprintf(&b, "%v%d\n", r.Legend, r.Group)
			for _, k := range slices.Sorted(maps.Keys(r.Cells)) {
				if r.Cells[k] != "" {
					fmt.Fprintf(&b, "  %s=%s", k, r.Cells[k])
				}
			}
			if r.Cells != nil {
				b.WriteString("\n")
			}
		}
	}
	return b.String()
}

func flags(m map[string]bool) (out string) {
	for _, k := range slices.Sorted(maps.Keys(m)) {
		if m[k] {
			out += " +" + k
		}
	}
	return out
}

// whole compares a list with the one written out in testdata, line by line.
func whole(t *testing.T, name string, l *table.List) {
	t.Helper()
	data, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	got, want := strings.Split(told(l), "\n"), strings.Split(string(data), "\n")
	for i := range max(len(got), len(want)) {
		if g, w := line(got, i), line(want, i); g != w {
			t.Errorf("%s:%d: %s\nwant %s", name, i+1, g, w)
		}
	}
}

func line(all []string, i int) string {
	if i < len(all) {
		return all[i]
	}
	return "nothing"
}

// The season of [TestSums] whole, as the page, the paper and the spreadsheet say
// it. By hand, besides what stands there: 4 July leaves $48.00 - $19.50 - $5.00 =
// $23.50, $3.92 a jar; 30 jars were filled and 12 stand in the cupboard.
func TestTheWholeSeason(t *testing.T) {
	s := sums(t, nil)
	whole(t, "season.want", s.List())
	if m := s.Months; m[0].Fee != 0 || m[1].Fee != 2500 || m[2].Fee != 0 || s.All.Fee != 2500 || !slices.Equal(s.Uncounted, []string(nil)) {
		t.Errorf("%+v %v", m, s.Uncounted)
	}
}

// The same season with what makers forget: six jars without a price, one sale in
// another currency, three jars without a day, no fee, no label, hours of one
// batch alone. Plum costs 90 + 25 + $2.00 / 2 + $1.00 = $3.15 a jar. The years are
// laid beside it.
func TestAllThatIsForgotten(t *testing.T) {
	s := sums(t, func(rs []*cook.Result, rows []ledger.Entry) []ledger.Entry {
		k := rs[0].Kitchen
		k.Costs.Fee, k.Costs.Label = unit.Money{}, unit.Money{}
		k.Supplies.Lids = map[string]int{"70-450 CT": 0}
		rs[0].Batch.Markets, rs[0].Batch.Made = nil, unit.Date{Year: 2025, Month: 12, Day: 30}
		rs[1].Batch.Hours = 0
		rs[1].Lines[0].Cost = unit.Money{}
		rows[0].Price, rs[0].Jars[0].Price = unit.Money{}, unit.Money{}
		rows[3].Price.Currency = "CAD"
		return append(rows, ledger.Entry{Lot: "L1", Count: 1, Why: ledger.Given, Who: "Bo"}, ledger.Entry{Lot: "L1", Count: 1, Why: ledger.Eaten}, ledger.Entry{Lot: "L1", Count: 1, Why: ledger.Sold, Who: "gate", Price: usd(700)})
	})
	s.Caps = []Cap{{Amount: 10000, Place: "Washington", Cite: "law 1", Currency: "USD", Kitchen: "one"}, {Amount: 500, Place: "Colorado", Cite: "law 2", Currency: "USD", Kitchen: "two", Each: true, Moves: true, Memory: true}}
	s.Years = []Year{{Year: 2026, Takings: 700, Cap: 10000}, {Year: 2026, Name: "Fig jam", Takings: 600, Cap: 500, Unpriced: 1, Of: 1}, {Year: 2025, Name: "Plum jam", Takings: 100, Cap: 500, Foreign: true, Of: 1}}
	whole(t, "lacking.want", s.List())
}

// A jar's share of a profit is rounded to the coin, halves up, below nothing too.
func TestShareOfAProfit(t *testing.T) {
	for _, x := range []struct {
		n    int64
		jars int
		want int64
	}{{10, 4, 3}, {9, 4, 2}, {11, 4, 3}, {-10, 4, -2}, {-11, 4, -3}, {-9, 4, -2}, {-8, 4, -2}, {-1, 2, 0}, {-3, 2, -1}, {0, 3, 0}, {7, 7, 1}, {-2, 4, 0}, {1, 1, 1}, {-1, 1, -1}} {
		if got := perJar(x.n, x.jars); got != x.want {
			t.Errorf("%d over %d jars: %d, want %d", x.n, x.jars, got, x.want)
		}
	}
	for _, x := range []struct {
		jars  int
		hours float64
		want  int64
	}{{20, 2, 100}, {3, 1, 333}, {6, 1, 167}, {8, 1, 125}, {16, 1, 63}, {0, 2, 0}, {20, 0, 0}, {20, -1, 0}, {1, 0.5, 500}, {1, 0.0004, 0}, {1, 0.0006, 1}} {
		r := &cook.Result{Batch: &batch.Batch{Hours: x.hours}, Jars: []cook.JarPlan{{Count: x.jars}}}
		if got := work(r, batch.Costs{Hour: usd(1000)}); got != x.want {
			t.Errorf("%g h over %d jars: %d, want %d", x.hours, x.jars, got, x.want)
		}
	}
}

// The title names the years of cooking, one alone or from the first to the last.
func TestYearsOfTheTitle(t *testing.T) {
	day := func(y, m, d int) unit.Date { return unit.Date{Year: y, Month: m, Day: d} }
	for want, days := range map[string][]unit.Date{
		"The season": {{}}, "The season 2026": {day(2026, 6, 1), {}, day(2026, 1, 1)}, "The season 2025 – 2026": {day(2026, 6, 1), day(2025, 12, 1), day(2026, 3, 1)}, "The season 2025 – 2027": {day(2026, 6, 1), day(2025, 12, 1), day(2027, 3, 1)},
	} {
		s := &Summary{}
		for _, d := range days {
			s.span(d)
		}
		if got := s.title(); got != want {
			t.Errorf("%v: %s, want %s", days, got, want)
		}
	}
	s := &Summary{}
	for name, want := range map[string]string{"2026-06": "Jun 2026", undated: "no date", "2026-x": "no date", "": "no date"} {
		if got := s.month(name, " "); got != want {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
	if some(0) != "" || some(1) != "1" || monthName(day(2026, 6, 1)) != "2026-06" || monthName(unit.Date{}) != undated {
		t.Error("words of a month")
	}
}

// What of a season's takings is told: nothing sold, no price, some without one
// or in other money, all.
func TestWhatIsToldOfTakings(t *testing.T) {
	s := &Summary{Currency: "USD"}
	for want, x := range map[string]Tally{"–": {Takings: 5}, "not said": {Paid: 2, Unpriced: 2}, "$0.05 *": {Paid: 2, Unpriced: 1, Takings: 5}, "$0.06 *": {Paid: 2, Foreign: true, Takings: 6}, "$0.07": {Paid: 1, Takings: 7}} {
		if got := s.takings(x); got != want {
			t.Errorf("%+v: %s, want %s", x, got, want)
		}
	}
	for _, x := range []struct{ used, have, want int }{{5, -1, 5}, {5, 0, 5}, {5, 1, 4}, {5, 5, 0}, {5, 6, 0}} {
		if got := (Need{Used: x.used, Have: x.have}).Buy(); got != x.want {
			t.Errorf("%+v: %d", x, got)
		}
	}
	if foreign([]unit.Money{{Minor: 5, Currency: "USD"}, {Currency: "EUR"}}, "USD") || !foreign([]unit.Money{{Minor: 1, Currency: "EUR"}}, "USD") || minor([]unit.Money{{Minor: 5, Currency: "USD"}, {Minor: 7, Currency: "EUR"}, {Minor: 2, Currency: "USD"}}, "USD") != 7 {
		t.Error("money of another currency")
	}
	s.Against(Cap{Amount: 1}, &pack.Plan{}, nil)
	s.Against(Cap{Amount: 0}, &pack.Plan{}, nil)
	if len(s.Caps) != 1 {
		t.Errorf("%d caps", len(s.Caps))
	}
}

// Of a year against its cap: jars without a price and in other money are told,
// one jar of either is enough.
func TestYearsThatAreNotWhole(t *testing.T) {
	rs, rows := aSeason()
	rows[0].Price, rs[0].Jars[0].Price, rows[3].Price.Currency = unit.Money{}, unit.Money{}, "CAD"
	p, found := pack.Build(rs, pack.Options{Book: rows})
	if found.HasErrors() {
		t.Fatal(found)
	}
	s := Sum(p, rs)
	s.Against(Cap{Amount: 10000, Currency: "USD"}, p, nil)
	if want := []Year{{Year: 2026, Takings: 3400, Cap: 10000, Unpriced: 6, Foreign: true}}; !slices.Equal(s.Years, want) {
		t.Errorf("%+v", s.Years)
	}
	if s := Sum(&pack.Plan{}, []*cook.Result{nil, {}, {Batch: &batch.Batch{Markets: []batch.Market{{Event: "fair"}}}}}); len(s.Visits) != 0 || s.Currency != "" || s.List().Sum == "" {
		t.Errorf("%+v", s)
	}
}
