package season

import (
	"cmp"
	"slices"
	"strconv"

	"jarmark/internal/give/pack"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// Cap is the most a kitchen may take in a calendar year under the rules it
// sells by. Zero: none is known.
type Cap struct {
	Amount      int64 // in minor units
	Each        bool  // of each jam, not of all together
	Moves       bool  // the law moves the sum with prices
	Memory      bool  // nobody has read it: it stands from memory
	Place, Cite string
	Currency    string // of the law
	Kitchen     string // whose sales it binds
}

// near is the share of a cap, in percent, from which it is told. Our own
// choice, no source.
const near = 80

// Year is what was sold in a calendar year, against the cap. Name is the jam
// where the cap is of each jam, Of the place among the summary's caps.
type Year struct {
	Year     int
	Name     string
	Takings  int64
	Cap      int64
	Unpriced int  // jars sold without a price: not in Takings
	Foreign  bool // some was paid in another currency: not in Takings
	Of       int
}

// Left is how much may still be taken; less than nothing when the cap is passed.
func (y Year) Left() int64 { return y.Cap - y.Takings }

// Over reports that more was taken than the cap, Near that it is close.
func (y Year) Over() bool { return y.Takings > y.Cap }

// Near reports that four fifths of the cap are taken, and no more than it.
func (y Year) Near() bool { return !y.Over() && y.Takings*100 >= y.Cap*near }

// Against reckons the gross sales of each calendar year against a cap: what was
// paid for jars, nothing taken off. Only the ledger's sales that have a day and
// a price count. mine tells the jars of the kitchen the cap binds; nil: all.
func (s *Summary) Against(c Cap, p *pack.Plan, mine func(pack.Stock) bool) {
	if c.Amount <= 0 {
		return
	}
	s.Caps = append(s.Caps, c)
	type key struct {
		year int
		name string
	}
	sums := map[key]*Year{}
	for i, b := range p.Balances {
		if mine != nil && !mine(p.Stock[i]) {
			continue
		}
		for _, h := range b.Holders {
			for _, d := range h.Days {
				k := key{year: d.Date.Year}
				if c.Each {
					k.name = p.Stock[i].Name
				}
				if d.Sold == 0 || k.year == 0 {
					continue
				}
				if sums[k] == nil {
					sums[k] = &Year{Year: k.year, Name: k.name, Cap: c.Amount, Of: len(s.Caps) - 1}
				}
				sums[k].Takings += minor(d.Takings, c.Currency)
				sums[k].Unpriced += d.Unpriced
				sums[k].Foreign = sums[k].Foreign || foreign(d.Takings, c.Currency)
			}
		}
	}
	var years []Year
	for _, y := range sums {
		years = append(years, *y)
	}
	slices.SortFunc(years, func(a, b Year) int {
		return cmp.Or(cmp.Compare(b.Year, a.Year), cmp.Compare(a.Name, b.Name))
	})
	s.Years = append(s.Years, years...)
}

// years is the part of the list that tells what is left of the caps.
func (s *Summary) years() table.Part {
	say := s.in.Say
	if len(s.Years) == 0 {
		return table.Part{}
	}
	p := table.Part{Title: say("Sales of a calendar year, and the most allowed"), Compact: true, Columns: []string{say("year"), say("takings"), say("at most"), say("left")}}
	told := map[int]bool{}
	for _, y := range s.Years {
		c := s.Caps[y.Of]
		money := func(n int64) string { return s.in.Money([]unit.Money{{Minor: n, Currency: c.Currency}}) }
		name := strconv.Itoa(y.Year)
		if len(s.Caps) > 1 {
			name += "  " + c.Kitchen
		}
		if y.Name != "" {
			name += "  " + y.Name
		}
		takings := money(y.Takings)
		if y.Unpriced > 0 || y.Foreign {
			takings += " *"
		}
		p.Rows = append(p.Rows, table.Row{What: name, Figures: []string{takings, money(y.Cap), money(y.Left())},
			Cells: table.Cells{"part": "year", "name": y.Name, "date": strconv.Itoa(y.Year), "takings": decimal(y.Takings, c.Currency), "unpriced": strconv.Itoa(y.Unpriced),
				"note": say("at most %s, left %s; %s", money(y.Cap), money(y.Left()), c.Cite)}})
	}
	for _, y := range s.Years {
		if !told[y.Of] {
			told[y.Of] = true
			p.Rows = append(p.Rows, table.Row{Type: table.Say, What: s.capWords(s.Caps[y.Of])})
		}
	}
	return p
}

// capWords says which law a cap is of, and what it counts.
func (s *Summary) capWords(c Cap) string {
	words := s.in.Say("%s allows so much in a calendar year (%s). Gross sales, and only those in the ledger with a day and a price: add what you sold besides.", c.Place, c.Cite)
	if c.Each {
		words = s.in.Say("%s allows so much of each product in a calendar year (%s). Gross sales, and only those in the ledger with a day and a price: add what you sold besides.", c.Place, c.Cite)
	}
	if c.Moves {
		words += " " + s.in.Say("The sum moves with prices: ask for this year's.")
	}
	if c.Memory {
		words += " " + s.in.Say("The sum stands from memory: ask the agency.")
	}
	return words
}
