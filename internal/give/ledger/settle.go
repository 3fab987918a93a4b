package ledger

import (
	"maps"
	"slices"
	"sort"
	"strconv"

	"jarmark/internal/kit/unit"
)

func (s *summing) add(k key, e Entry) {
	if e.Why == Eaten || e.Why == Broken || e.Why == Recalled && e.Who == "" {
		return
	}
	if s.accounts[k] == nil {
		s.accounts[k] = map[string]*account{}
	}
	a := s.accounts[k][fold(e.Who)]
	if a == nil {
		a = &account{who: e.Who, first: e.Date}
		s.accounts[k][fold(e.Who)] = a
	}
	a.rows = append(a.rows, e)
	if e.Date.Before(a.first) {
		a.first = e.Date
	}
	if a.last.Before(e.Date) {
		a.last = e.Date
	}
}

// of gives the rows of one kind by date, those without a date last.
func (a *account) of(why Why) (out []Entry) {
	for _, e := range a.rows {
		if e.Why == why {
			out = append(out, e)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		x, y := out[i].Date, out[j].Date
		if x.IsZero() || y.IsZero() {
			return !x.IsZero() && y.IsZero()
		}
		return x.Before(y)
	})
	return out
}

func some(rows []Entry) []Entry {
	return slices.DeleteFunc(rows, func(e Entry) bool { return e.Count == 0 })
}

func total(rows []Entry) (n int) {
	for _, e := range rows {
		n += e.Count
	}
	return n
}

// fulfil takes what was given, sold and brought home off the promises: those
// of the same day first, then earlier ones. A gift may also be handed over
// before the day that the promise bears. It returns the promises that are open
// and the rows beyond them. The sums do not depend on the order of the rows.
func (a *account) fulfil() (open, loose []Entry) {
	promised := a.of(Promised)
	var rest []Entry
	for _, why := range []Why{Given, Sold, CameHome} {
		rest = append(rest, a.of(why)...)
	}
	for _, may := range []func(p, e Entry) bool{
		func(p, e Entry) bool { return p.Date == e.Date },
		func(p, e Entry) bool {
			return e.Why == Given || p.Date.IsZero() || e.Date.IsZero() || p.Date.Before(e.Date)
		},
	} {
		for i := range rest {
			for k := range promised {
				if may(promised[k], rest[i]) {
					n := min(promised[k].Count, rest[i].Count)
					promised[k].Count -= n
					rest[i].Count -= n
				}
			}
		}
	}
	return some(promised), some(rest)
}

// settle turns accounts into holders. What came home settles an open promise
// first; beyond it, it is jars sold, then given, that came back.
func (s *summing) settle(b *Balance, k key) {
	names := slices.Sorted(maps.Keys(s.accounts[k]))
	for _, n := range names {
		a := s.accounts[k][n]
		given, sold, back := total(a.of(Given)), total(a.of(Sold)), total(a.of(Recalled))
		open, loose := a.fulfil()
		returned := 0
		for _, e := range loose {
			if e.Why == CameHome {
				returned += e.Count
			}
		}
		if over := returned + back - given - sold; over > 0 {
			s.errorAt(a.rows[len(a.rows)-1], "back-over", "%s of lot %s came back from %s than went there", more(over), b.Lot, orNobody(a.who)).
				Hinted("check the counts of came home and recalled")
			back = min(back, given+sold)
			returned = min(returned, given+sold-back)
		}
		gone := returned + back
		h := Holder{Who: a.who, Promised: total(open), Open: open, Loose: loose, CameHome: total(a.of(CameHome)), Recalled: back, First: a.first, Last: a.last,
			Sold: max(0, sold-gone), Given: given - max(0, gone-sold)}
		h.Days, h.Gifts = a.days(returned, back), a.less(Given, gone-sold)
		for _, d := range h.Days {
			for _, m := range d.Takings {
				b.Takings = Add(b.Takings, m, 1)
			}
			b.Unpriced += d.Unpriced
		}
		b.Promised += h.Promised
		b.Sold += h.Sold
		b.Given += h.Given
		b.Recalled += back
		b.Holders = append(b.Holders, h)
	}
	s.judge(b, k)
}

// judge tells of more jars gone or promised than there are.
func (s *summing) judge(b *Balance, k key) {
	if b.Home() < 0 {
		s.errorAt(s.at[k], "more-than-made", "%s of lot %s left than the %d that were filled", more(-b.Home()), b.Lot, b.Count).
			Hinted("check the counts of this lot's rows, and count under [[fill]]")
	} else if b.Free() < 0 {
		d := s.found.Warnf("promised-over", s.at[k].File, s.at[k].Path, "%s of lot %s promised than at home", more(-b.Free()), b.Lot)
		d.Pos = s.at[k].Pos
		d.Hinted("take back a promise, or cook again")
	}
}

// less gives the rows of one kind less jars that came back, off the last first.
func (a *account) less(why Why, back int) []Entry {
	rows := a.of(why)
	for i := len(rows) - 1; i >= 0 && back > 0; i-- {
		n := min(back, rows[i].Count)
		rows[i].Count -= n
		back -= n
	}
	return rows
}

// days sums sales by day. Jars that came back after they were sold, the last
// ones first, were paid back; of jars that were recalled the files know no such
// thing, and they stay among those paid for.
func (a *account) days(returned, recalled int) (out []Day) {
	on := func(d unit.Date) *Day {
		i := slices.IndexFunc(out, func(x Day) bool { return x.Date == d })
		if i < 0 {
			out = append(out, Day{Date: d})
			i = len(out) - 1
		}
		return &out[i]
	}
	for _, e := range a.less(Sold, returned) {
		d := on(e.Date)
		d.Sold += e.Count
		if e.Price.Currency == "" {
			d.Unpriced += e.Count
		} else {
			d.Takings = Add(d.Takings, e.Price, e.Count)
		}
	}
	for _, e := range a.less(Sold, returned+recalled) {
		on(e.Date).Kept += e.Count
	}
	for _, e := range a.of(CameHome) {
		on(e.Date).CameHome += e.Count
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Date.Before(out[j].Date) })
	return out
}

// Add adds the price of some jars to sums, one a currency.
func Add(sums []unit.Money, price unit.Money, jars int) []unit.Money {
	if jars == 0 {
		return sums
	}
	for i := range sums {
		if sums[i].Currency == price.Currency {
			sums[i].Minor += price.Minor * int64(jars)
			return sums
		}
	}
	return append(sums, unit.Money{Minor: price.Minor * int64(jars), Currency: price.Currency})
}

func orNobody(who string) string {
	if who == "" {
		return "nobody by name"
	}
	return who
}

// more is "1 more jar" or "2 more jars".
func more(n int) string {
	if n == 1 {
		return "1 more jar"
	}
	return strconv.Itoa(n) + " more jars"
}
