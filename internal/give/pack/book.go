package pack

import (
	"cmp"
	"slices"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// creditKey is jars that one name has had already.
type creditKey struct {
	stock int
	who   string
	date  unit.Date // of a market; zero for a person
}

// open reads the ledger before any jar is dealt: what it says has left the
// house or is promised is not dealt again.
func (b *builder) open() {
	b.markets = map[string]bool{}
	for _, r := range b.results {
		for _, m := range r.Batch.Markets {
			b.markets[FoldName(m.Event)] = true
		}
	}
	lots := map[string]unit.Date{} // when they were made
	for _, s := range b.plan.Stock {
		if d, twice := lots[FoldName(s.Lot)]; !twice || s.Made.Before(d) {
			lots[FoldName(s.Lot)] = s.Made
		}
	}
	for _, e := range b.o.Book {
		if e.Why == ledger.Sold || e.From == FromMarket {
			b.markets[FoldName(e.Who)] = true
		}
		if made, here := lots[FoldName(e.Lot)]; here {
			b.rows = append(b.rows, e)
			b.strange(e, made)
		}
	}
	b.base, _ = ledger.Balances(b.made(), b.rows) // told of in balance
	b.credit = map[creditKey]int{}
	for i, base := range b.base {
		s := &b.plan.Stock[i]
		s.Unsealed = max(0, s.Unsealed-base.Lost()) // the first to be eaten
		for _, h := range base.Holders {
			for _, e := range h.Loose {
				b.credit[b.creditOf(i, h.Who, e.Date)] += e.Count
			}
		}
	}
}

// strange tells of a day on which no jar of a row can have moved. A promise may
// bear any day.
func (b *builder) strange(e ledger.Entry, made unit.Date) {
	what, of := "", ""
	switch {
	case e.Date.IsZero() || e.Why == ledger.Promised:
	case !made.IsZero() && e.Date.Before(made):
		of = FoldName(e.Lot)
		what = "before lot " + e.Lot + " was made, on " + b.day(made)
	case !b.o.Today.IsZero() && b.o.Today.Before(e.Date):
		what = "still to come"
	}
	if what == "" || b.again(e.Pos.Line, "row-day", e.File, of) {
		return
	}
	d := b.found.Warnf("row-day", e.File, "", "%s of lot %s %s on %s: that day is %s", table.Jars(e.Count), e.Lot, e.Why, b.day(e.Date), what).
		Hinted("check the date of this row")
	d.Pos = e.Pos
}

// FromMarket says in the ledger that a row is a market's.
const FromMarket = "market"

func (b *builder) creditOf(i int, who string, date unit.Date) creditKey {
	k := creditKey{stock: i, who: FoldName(who)}
	if b.markets[k.who] {
		k.date = date
	}
	return k
}

// made is the stock as the ledger counts it.
func (b *builder) made() (out []ledger.Made) {
	for _, s := range b.plan.Stock {
		out = append(out, ledger.Made{Lot: s.Lot, Jar: s.Jar.Key, Count: s.Count, Words: []string{s.Jar.Description, shortJar(s.Jar), s.JarText}})
	}
	return out
}

// fetched is how many of the jars promised the ledger says were handed over
// or sold: the promise is booked for them too, and nothing is packed.
func (b *builder) fetched(p promise, cands []int) (got int) {
	if p.settled() {
		return 0
	}
	for _, i := range cands {
		for _, k := range b.credits(i, p) {
			n := min(p.jars-got, b.credit[k])
			if n <= 0 {
				continue
			}
			b.credit[k] -= n
			got += n
			b.book(p, i, n, 0)
		}
	}
	return got
}

// credits are where jars of a promise may be noted: at its own day, and those of
// a market without a day at any day on which no other market of its name is.
func (b *builder) credits(i int, p promise) []creditKey {
	own := b.creditOf(i, p.to, p.date)
	keys := []creditKey{own}
	if p.kind != Market || !p.date.IsZero() {
		return keys
	}
	for k := range b.credit {
		if k.stock == i && k.who == own.who && k != own && !b.held(k) {
			keys = append(keys, k)
		}
	}
	slices.SortFunc(keys[1:], func(x, y creditKey) int { return cmp.Compare(x.date.String(), y.date.String()) })
	return keys
}

// held reports whether a market of a name is planned for a day.
func (b *builder) held(k creditKey) bool {
	return slices.ContainsFunc(b.promised, func(p promise) bool { return p.kind == Market && p.date == k.date && FoldName(p.to) == k.who })
}

// book writes jars of a table or a list as rows of the ledger. A market noted
// as done took n jars and brought back some.
func (b *builder) book(p promise, i, n, back int) {
	s := b.plan.Stock[i]
	e := ledger.Entry{Date: p.date, Lot: s.Lot, Jar: s.Jar.Key, Count: n, Why: ledger.Promised, Who: p.to, From: "batch file",
		Price: s.Price, File: p.file, Path: p.path, Of: i + 1}
	if p.price.Minor > 0 {
		e.Price = p.price
	}
	if p.kind == Market {
		e.From = FromMarket
	}
	if p.entry != nil {
		e.Date, e.From, e.Path, e.Pos, e.Price = b.o.Today, b.o.From, p.entry.Path, p.entry.Pos, unit.Money{}
		b.plan.Promises = append(b.plan.Promises, e)
	}
	b.rows = append(b.rows, e)
	if p.settled() {
		sold, home := e, e
		sold.Why, sold.Count = ledger.Sold, n-back
		home.Why, home.Count = ledger.CameHome, back
		b.rows = append(b.rows, sold, home)
	}
}

// booked opens stops for the promises that stand in the ledger.
func (b *builder) booked() {
	for i, base := range b.base {
		for _, h := range base.Holders {
			for _, e := range h.Open {
				p := promise{kind: Gift, to: e.Who, cameHome: -1, booked: true, price: e.Price}
				if b.markets[FoldName(e.Who)] {
					p.kind, p.date = Market, e.Date
				}
				s := b.stopFor(p)
				s.out.Wanted += e.Count
				b.addLine(s, p, i, e.Count, 0)
			}
		}
	}
}

// balance takes every sum of the stock from the ledger's own arithmetic.
func (b *builder) balance() {
	all, found := ledger.Balances(b.made(), b.rows)
	b.found = append(b.found, found...)
	b.plan.Faults = found.Errors()
	b.plan.Balances, b.plan.Rows = all, b.rows
	for i, x := range all {
		s := &b.plan.Stock[i]
		s.Promised, s.Sold, s.Given, s.Lost = x.Promised, x.Sold, x.Given, x.Lost()
		s.Left = max(0, x.Free()-s.Unsealed)
	}
}
