// Package season sums up what became of the jars of a season: how many were
// made, given, sold and are left, what was taken at each market, and what is
// known of the costs. Every number of jars comes from the ledger's balances. A
// cost that nobody wrote down is said; it never counts as nothing.
package season

import (
	"fmt"
	"slices"
	"sort"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// Tally is jars and money of a jam, a month or all. Money is in minor units of
// the kitchen's currency.
type Tally struct {
	Name                          string
	Made, Given, Sold, Lost, Left int
	Paid                          int // jars sold, those recalled afterwards too: their money is among the takings
	Takings                       int64
	Unpriced                      int   // jars sold without a price: their takings are not known
	Cost                          int64 // of the jars sold, as far as it is known
	NoCost                        int   // jars sold whose cost is not known
	Fee                           int64
	Foreign                       bool // some was paid in another currency, and is not among the takings
}

// Profit is takings less costs; false where either is not wholly known.
func (t Tally) Profit() (int64, bool) {
	return t.Takings - t.Cost - t.Fee, t.Unpriced == 0 && t.NoCost == 0 && !t.Foreign
}

// Visit is a market on one day.
type Visit struct {
	Tally
	Date     unit.Date
	CameHome int
	NoFee    bool // nobody wrote down what the stall cost
}

// Need is a supply to buy for a season like this one; Have is -1 when not said.
type Need struct {
	What       string
	Used, Have int
}

// Buy is how many are missing.
func (n Need) Buy() int { return max(0, n.Used-max(0, n.Have)) }

// Summary is a season.
type Summary struct {
	Maker, Currency string
	First, Last     unit.Date // days of cooking
	All             Tally
	Jams            []Tally // by name
	Months          []Tally // in order; Made in the month it was cooked, the rest in the month it left
	Undated         int     // jars that left on a day nobody wrote down
	Visits          []Visit
	Buy             []Need
	Unpriced        []string // ingredients without a cost, by jam: "Plum jam: star anise"
	Caps            []Cap    // of the gross sales of a year, one a kitchen that has one
	Years           []Year   // against them, the last first
	Uncounted       []string // what no cost is written for: "jars", "lids", "labels", "work"

	in    table.Words
	told  []table.Told
	costs []jarCost // by row of the plan's stock
}

// jarCost is what one jar cost; known is false when an ingredient has no cost.
type jarCost struct {
	minor int64
	known bool
}

// Sum sums up a plan of all batches of a kitchen.
func Sum(p *pack.Plan, results []*cook.Result) *Summary {
	s := &Summary{Maker: p.Maker, told: p.Told()}
	k := kitchenOf(results)
	if k != nil {
		s.Currency, s.in = k.Currency, table.WordsIn(table.LanguageOf(k))
	} else {
		k = &batch.Kitchen{}
	}
	s.price(p, results, k)
	jams, months, visits := map[string]*Tally{}, map[string]*Tally{}, map[visitKey]*Visit{}
	for i, b := range p.Balances {
		st := p.Stock[i]
		s.span(st.Made)
		t := s.of(b, i)
		t.Name = st.Name
		add(jams, st.Name, t)
		s.All.plus(t)
		monthOf(months, st.Made).Made += b.Count
		s.days(months, visits, b, i)
	}
	s.gone(months, p)
	s.Jams = sorted(jams, func(t *Tally) string { return t.Name })
	s.Months = sorted(months, func(t *Tally) string { return t.Name })
	s.fees(visits, results, k)
	s.needs(p, k)
	return s
}

func kitchenOf(results []*cook.Result) *batch.Kitchen {
	for _, r := range results {
		if r != nil && r.Kitchen != nil {
			return r.Kitchen
		}
	}
	return nil
}

func (s *Summary) span(d unit.Date) {
	if d.IsZero() {
		return
	}
	if s.First.IsZero() || d.Before(s.First) {
		s.First = d
	}
	if s.Last.Before(d) {
		s.Last = d
	}
}

// of is the tally of one row of stock.
func (s *Summary) of(b ledger.Balance, i int) Tally {
	t := Tally{Made: b.Count, Given: b.Given, Sold: b.Sold, Lost: b.Lost(), Left: b.Home(), Takings: minor(b.Takings, s.Currency), Unpriced: b.Unpriced, Foreign: foreign(b.Takings, s.Currency)}
	for _, h := range b.Holders {
		for _, d := range h.Days {
			t.Paid += d.Sold
		}
	}
	if s.costs[i].known {
		t.Cost = s.costs[i].minor * int64(t.Paid)
	} else {
		t.NoCost = t.Paid
	}
	return t
}

func (t *Tally) plus(o Tally) {
	t.Made, t.Given, t.Sold, t.Lost, t.Left = t.Made+o.Made, t.Given+o.Given, t.Sold+o.Sold, t.Lost+o.Lost, t.Left+o.Left
	t.Paid += o.Paid
	t.Takings, t.Unpriced, t.Cost, t.NoCost, t.Fee = t.Takings+o.Takings, t.Unpriced+o.Unpriced, t.Cost+o.Cost, t.NoCost+o.NoCost, t.Fee+o.Fee
	t.Foreign = t.Foreign || o.Foreign
}

func add(m map[string]*Tally, name string, t Tally) {
	if m[name] == nil {
		m[name] = &Tally{Name: name}
	}
	m[name].plus(t)
}

// monthOf is the tally of a day's month, named "2026-06"; days nobody wrote
// down come last.
func monthOf(m map[string]*Tally, d unit.Date) *Tally {
	name := monthName(d)
	if m[name] == nil {
		m[name] = &Tally{Name: name}
	}
	return m[name]
}

func monthName(d unit.Date) string {
	if d.IsZero() {
		return undated
	}
	return fmt.Sprintf("%04d-%02d", d.Year, d.Month)
}

const undated = "~"

func sorted(m map[string]*Tally, key func(*Tally) string) (out []Tally) {
	for _, t := range m {
		out = append(out, *t)
	}
	sort.Slice(out, func(i, j int) bool { return key(&out[i]) < key(&out[j]) })
	return out
}

func minor(sums []unit.Money, currency string) (n int64) {
	for _, m := range sums {
		if m.Currency == currency {
			n += m.Minor
		}
	}
	return n
}

// foreign reports money of another currency.
func foreign(sums []unit.Money, currency string) bool {
	return slices.ContainsFunc(sums, func(m unit.Money) bool { return m.Currency != currency && m.Minor != 0 })
}

type visitKey struct {
	who  string
	date unit.Date
}

// days adds what each name bought of a row of stock on each day.
func (s *Summary) days(months map[string]*Tally, visits map[visitKey]*Visit, b ledger.Balance, i int) {
	for _, h := range b.Holders {
		for _, d := range h.Days {
			t := Tally{Sold: d.Kept, Paid: d.Sold, Takings: minor(d.Takings, s.Currency), Unpriced: d.Unpriced, Foreign: foreign(d.Takings, s.Currency)}
			if s.costs[i].known {
				t.Cost = s.costs[i].minor * int64(d.Sold)
			} else {
				t.NoCost = d.Sold
			}
			monthOf(months, d.Date).plus(t)
			k := visitKey{pack.FoldName(h.Who), d.Date}
			if visits[k] == nil {
				visits[k] = &Visit{Tally: Tally{Name: h.Who}, Date: d.Date}
			}
			visits[k].plus(t)
			visits[k].CameHome += d.CameHome
		}
	}
}

// gone adds what was given away and lost to its months.
func (s *Summary) gone(months map[string]*Tally, p *pack.Plan) {
	for _, b := range p.Balances {
		for _, h := range b.Holders {
			for _, e := range h.Gifts {
				if e.Count > 0 {
					monthOf(months, e.Date).Given += e.Count
				}
			}
		}
	}
	for _, e := range p.Rows {
		switch e.Why {
		case ledger.Eaten, ledger.Broken, ledger.Recalled:
			monthOf(months, e.Date).Lost += e.Count
		}
	}
	if m := months[undated]; m != nil {
		s.Undated = m.Given + m.Lost + m.Sold
	}
}
