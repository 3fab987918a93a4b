package season

import (
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kitchen/batch"
)

// TestEveryJarIsSomewhere: whatever is promised by tables and lists, counted at
// markets in any order, given, eaten, broken and recalled, jars made are those
// given, sold, lost and at home, for every jam and all together; months and
// markets add up to the same.
func TestEveryJarIsSomewhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { // kept small: every step builds two plans
		rs, _ := aSeason()
		for i, r := range rs {
			r.Batch.Markets = nil
			for w := range rapid.IntRange(0, 3).Draw(t, "weeks") {
				r.Batch.Markets = append(r.Batch.Markets, batch.Market{Event: "fair", Date: date(8, 1+7*w), Jars: rapid.IntRange(0, 6).Draw(t, "jars"), CameHome: -1})
			}
			if rapid.Bool().Draw(t, "gift") {
				r.Batch.Gifts = []batch.Gift{{To: "Ada", Jars: 1 + i}}
			}
		}
		var book []ledger.Entry
		for range rapid.IntRange(0, 8).Draw(t, "steps") {
			book = append(book, step(t, rs[rapid.IntRange(0, 1).Draw(t, "lot")].Lot, pack.Options{Book: book}, func(o pack.Options) *pack.Plan { p, _ := pack.Build(rs, o); return p })...)
			p, _ := pack.Build(rs, pack.Options{Book: book})
			check(t, Sum(p, rs), p)
		}
	})
}

// step is what a maker may do next; what cannot be is refused, as the program
// refuses it, and adds no rows.
func step(t *rapid.T, lot string, o pack.Options, build func(pack.Options) *pack.Plan) []ledger.Entry {
	n := rapid.IntRange(1, 4).Draw(t, "n")
	row := ledger.Entry{Date: date(8, rapid.IntRange(1, 28).Draw(t, "day")), Lot: lot, Count: n, Who: rapid.SampledFrom([]string{"Ada", "Bo", "fair"}).Draw(t, "who")}
	switch rapid.IntRange(0, 6).Draw(t, "what") {
	case 0, 1:
		o.Event, o.Date = "fair", date(8, 1+7*rapid.IntRange(0, 2).Draw(t, "week"))
		rows, found := build(o).CameHome(lot + "=" + string(rune('0'+n-1)))
		if found.HasErrors() {
			return nil
		}
		return rows
	case 2:
		o.List, o.From = []pack.Entry{{To: "Cy", Jars: n}}, "list a.csv"
		return build(o).Promises
	case 3:
		row.Why = ledger.Given
	case 4:
		row.Why, row.Price = ledger.Sold, usd(900)
	case 5:
		row.Why = rapid.SampledFrom([]ledger.Why{ledger.Eaten, ledger.Broken}).Draw(t, "why")
		row.Who = ""
	case 6:
		row.Why = rapid.SampledFrom([]ledger.Why{ledger.CameHome, ledger.Recalled}).Draw(t, "back")
	}
	before := o.Book
	o.Book = append(append([]ledger.Entry(nil), before...), row)
	if p := build(o); len(p.Faults) > 0 {
		return nil
	}
	return []ledger.Entry{row}
}

func check(t *rapid.T, s *Summary, p *pack.Plan) {
	jams, months, visits := Tally{}, Tally{}, 0
	for _, j := range s.Jams {
		if j.Made != j.Given+j.Sold+j.Lost+j.Left || min(j.Given, j.Sold, j.Lost, j.Left) < 0 {
			t.Fatalf("%s: %+v", j.Name, j)
		}
		jams.plus(j)
	}
	for _, m := range s.Months {
		months.plus(m)
	}
	for _, v := range s.Visits {
		visits += v.Paid
	}
	all := s.All
	if jams.Made != all.Made || all.Made != all.Given+all.Sold+all.Lost+all.Left || all.Made != 30 || jams.Takings != all.Takings {
		t.Fatalf("jams %+v, all %+v", jams, all)
	}
	if back := all.Paid - all.Sold; months.Sold != all.Sold || back < 0 || back > all.Lost || visits != all.Paid || months.Takings != all.Takings || months.Cost != all.Cost {
		t.Fatalf("months sold %d, markets %d, all %d", months.Sold, visits, all.Sold)
	}
	if months.Given != all.Given || months.Made != all.Made || months.Lost != all.Lost {
		t.Fatalf("months given %d, lost %d; all %d, %d", months.Given, months.Lost, all.Given, all.Lost)
	}
	for i, st := range p.Stock {
		if b := p.Balances[i]; st.Given != b.Given || st.Sold != b.Sold || st.Lost != b.Lost() || st.Left < 0 || st.Left > b.Home() {
			t.Fatalf("%+v, balance %+v", st, b)
		}
	}
}

// TestWhatCameHomeIsNotFreedTwice: of 10 jars, 2 are given and 4 go to the
// first market; 3 are sold and 1 comes home, so 10 - 2 - 3 = 5 stand at home
// for the second, which wants 6.
func TestWhatCameHomeIsNotFreedTwice(t *testing.T) {
	rs, _ := aSeason()
	rs[0].Batch.Markets = nil
	rs[1].Batch.Markets = []batch.Market{{Event: "fair", Date: date(8, 1), Jars: 4, CameHome: -1}, {Event: "fair", Date: date(8, 8), Jars: 6, CameHome: -1}}
	book := []ledger.Entry{{Date: date(8, 1), Lot: "L2", Count: 2, Who: "Ada", Why: ledger.Given}}
	first, _ := pack.Build(rs, pack.Options{Book: book, Event: "fair", Date: date(8, 1)})
	rows, _ := first.CameHome("L2=1")
	second, _ := pack.Build(rs, pack.Options{Book: append(book, rows...), Event: "fair", Date: date(8, 8)})
	if n := second.Stops[0].Jars; n != 5 {
		t.Errorf("%d jars are packed for the second market, want 5", n)
	}
}

// TestRecalledAfterTheyWereSold: of lot L1 3 jars were sold at $9.00 and 2 of
// them recalled: 1 is sold, 2 are lost, in the month's row as in the jam's; the
// money of all 3 is among the takings, and a jar's profit is a third of theirs.
func TestRecalledAfterTheyWereSold(t *testing.T) {
	rs, _ := aSeason()
	for _, r := range rs {
		r.Batch.Markets, r.Batch.Gifts = nil, nil
	}
	row := func(why ledger.Why, n, day int, price int64) ledger.Entry {
		return ledger.Entry{Date: date(8, day), Lot: rs[0].Lot, Count: n, Why: why, Who: "fair", Price: usd(price)}
	}
	p, _ := pack.Build(rs, pack.Options{Book: []ledger.Entry{row(ledger.Sold, 3, 3, 900), row(ledger.Recalled, 2, 9, 0)}})
	s := Sum(p, rs)
	if all := s.All; all.Sold != 1 || all.Paid != 3 || all.Lost != 2 || all.Takings != 2700 {
		t.Errorf("%+v", all)
	}
	m := s.Months[len(s.Months)-1]
	if m.Sold != 1 || m.Lost != 2 || m.Takings != 2700 || s.Visits[0].Paid != 3 {
		t.Errorf("month %+v, market %+v", m, s.Visits[0])
	}
	for _, j := range s.Jams {
		if one := s.aJar(j); j.Paid == 3 && one != s.money(perJar(2700-j.Cost, 3)) {
			t.Errorf("%s a jar: %+v", one, j)
		}
	}
}
