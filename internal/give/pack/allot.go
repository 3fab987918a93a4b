package pack

import (
	"sort"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// stop is a Stop being filled.
type stop struct {
	out  Stop
	tags []tagRun
}

// stopKey tells stops apart: a market noted as done is another than one to come.
type stopKey struct {
	kind    StopType
	to      string
	date    unit.Date
	settled bool
}

// tagRun is jars of one wish from one stock row.
type tagRun struct {
	wish  Wish
	to    string
	stock int
	count int

	file, path string
	pos        diag.Pos
}

// deal is a promise with the jars it gets.
type deal struct {
	promise
	choice *choice
	counts map[int]int // by stock row
	got    int

	fetched int // jars that were handed over already, by the ledger
}

// allot serves the promises, then tells who goes short. What is done comes
// first, then gifts and markets of the batches in order, then the gift list:
// rows that name a jam, lot, jar or allergy before those that take any.
func (b *builder) allot(all []promise) {
	deals, order := make([]*deal, len(all)), make([]*deal, 0, len(all))
	for i, p := range all {
		deals[i] = &deal{promise: p, choice: b.choose(p), counts: map[int]int{}}
		deals[i].fetched = b.fetched(p, deals[i].choice.rows)
		deals[i].jars -= deals[i].fetched
	}
	for rank := range 3 {
		for _, d := range deals {
			if d.rank() == rank {
				order = append(order, d)
			}
		}
	}
	m := b.matcher()
	for _, d := range order {
		m.serve(d)
	}
	for _, d := range deals {
		if d.fetched > 0 && d.jars == 0 {
			continue // nothing is to be packed
		}
		s := b.stopFor(d.promise)
		s.out.Wanted += d.jars
		if len(d.choice.rows) == 0 {
			b.refuse(d.promise, d.choice)
			continue
		}
		b.settle(s, d.promise, d.choice.rows, d.counts, d.home())
		b.careful(d)
		if d.got < d.jars {
			b.short(d.promise, d.got, d.choice.rows)
		}
	}
}

// home is how many of a market's jars came home.
func (d *deal) home() int { return min(max(d.cameHome, 0), d.got) }

// rank is when a promise is served: those of the batches, rows of the list
// that name something, the rest of the list.
func (d *deal) rank() int {
	switch {
	case d.batch >= 0:
		return 0
	case d.lot+d.jam+d.jar+d.allergy != "":
		return 1
	}
	return 2
}

// choice is the stock rows that promises of one wording may be served from, or
// why there are none.
type choice struct {
	class int
	rows  []int
	fault fault
	lots  []int // batches that would do but for the fault
}

// fault is why a promise has no jar to choose from.
type fault int

const (
	noJar     fault = iota // no such lot, or no jar of the size
	noJam                  // no jam of the name
	allOver                // all past their date
	allUnsafe              // all hold what the person must not eat
)

// wording is what decides a promise's choice.
type wording struct {
	batch                  int
	lot, jam, jar, allergy string
}

// choose finds the rows for a promise, once for each wording: first expiry
// first; a batch's own promises go by the order of its sizes.
func (b *builder) choose(p promise) *choice {
	key := wording{p.batch, p.lot, p.jam, p.jar, p.allergy}
	if c := b.choices[key]; c != nil {
		return c
	}
	c := &choice{class: len(b.choices)}
	if b.choices == nil {
		b.choices = map[wording]*choice{}
	}
	b.choices[key] = c
	c.rows = b.candidates(p)
	if p.batch >= 0 {
		return c
	}
	if p.jam != "" && len(c.rows) == 0 && len(b.jam(p.jam).batches) == 0 {
		c.fault = noJam
	}
	b.keepFresh(p, c)
	b.keepSafe(p, c)
	sort.SliceStable(c.rows, func(i, j int) bool {
		return b.sooner(b.plan.Stock[c.rows[i]], b.plan.Stock[c.rows[j]])
	})
	return c
}

// candidates are the rows that a promise's words mean.
func (b *builder) candidates(p promise) (out []int) {
	for i, s := range b.plan.Stock {
		switch {
		case p.batch >= 0 && s.batch != p.batch, p.lot != "" && !sameName(p.lot, s.Lot):
		case p.jam != "" && !b.jam(p.jam).has(s.batch):
		case p.jar != "" && !b.isJar(p.jar, s.Jar):
		default:
			out = append(out, i)
		}
	}
	return out
}

// keepFresh leaves out jars past their date, unless the lot is named.
func (b *builder) keepFresh(p promise, c *choice) {
	if p.lot != "" || b.jam(p.jam).lot {
		return
	}
	b.narrow(c, allOver, func(i int) bool { return !b.isOver(b.plan.Stock[i]) })
}

// narrow keeps the rows that pass; where none does, the fault says why.
func (b *builder) narrow(c *choice, why fault, pass func(row int) bool) {
	var kept []int
	for _, i := range c.rows {
		if pass(i) {
			kept = append(kept, i)
		}
	}
	if len(kept) == 0 && len(c.rows) > 0 {
		c.fault = why
		for _, i := range c.rows {
			c.lots = append(c.lots, b.plan.Stock[i].batch)
		}
	}
	c.rows = kept
}

// sooner orders stock by expiry, unknown dates last, then by lot.
func (b *builder) sooner(x, y Stock) bool {
	if x.BestBefore != y.BestBefore {
		if x.BestBefore.IsZero() || y.BestBefore.IsZero() {
			return y.BestBefore.IsZero()
		}
		return x.BestBefore.Before(y.BestBefore)
	}
	return x.Lot < y.Lot
}

// cameBack is which jars came home: the last rows' first, because the first to
// expire were on offer first.
func cameBack(cands []int, counts map[int]int, home int) map[int]int {
	back := map[int]int{}
	for k := len(cands) - 1; k >= 0 && home > 0; k-- {
		i := cands[k]
		back[i] = min(home, counts[i])
		home -= back[i]
	}
	return back
}

// settle books the jars.
func (b *builder) settle(s *stop, p promise, cands []int, counts map[int]int, home int) {
	back := cameBack(cands, counts, home)
	for _, i := range cands {
		n := counts[i]
		if n == 0 {
			continue
		}
		b.book(p, i, n, back[i])
		b.addLine(s, p, i, n, back[i])
	}
}

// stopFor finds or opens the stop of a promise: one a person, one an event
// and day.
func (b *builder) stopFor(p promise) *stop {
	key := stopKey{p.kind, FoldName(p.to), p.date, p.settled()}
	if s := b.byKey[key]; s != nil {
		b.joined(s, p)
		return s
	}
	s := &stop{out: Stop{Type: p.kind, To: p.to, Date: p.date, CameHome: -1, GrossHow: cook.Measured}}
	if p.settled() {
		s.out.CameHome = 0
	}
	b.stops = append(b.stops, s)
	if b.byKey == nil {
		b.byKey = map[stopKey]*stop{}
	}
	b.byKey[key] = s
	b.joined(s, p)
	return s
}

func (b *builder) joined(s *stop, p promise) {
	if p.settled() {
		s.out.CameHome += p.cameHome
	}
	if p.kind == Gift && !p.booked {
		p.wish.Design = b.design(p.wish)
		s.out.Wishes = append(s.out.Wishes, p.wish)
	}
}
