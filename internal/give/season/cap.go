package season

import (
	"cmp"
	"slices"
	"strconv"

	"jarmark/internal/give/pack"
	"jarmark/internal/give/table"
)

// Cap is the most a kitchen may take in a calendar year under the rules it
// sells by. Zero: none is known.
type Cap struct {
	Amount      int64 // in minor units
	Each        bool  // of each jam, not of all together
	Moves       bool  // the law moves the sum with prices
	Memory      bool  // nobody has read it: it stands from memory
	Place, Cite string
}

// near is the share of a cap, in percent, from which it is told. Our own
// choice, no source.
const near = 80

// Year is what was sold in a calendar year, against the cap. Name is the jam
// where the cap is of each jam.
type Year struct {
	Year     int
	Name     string
	Takings  int64
	Cap      int64
	Unpriced int // jars sold without a price: not in Takings
}

// Left is how much may still be taken; less than nothing when the cap is passed.
func (y Year) Left() int64 { return y.Cap - y.Takings }

// Over reports that more was taken than the cap, Near that it is close.
func (y Year) Over() bool { return y.Takings > y.Cap }

// Near reports that four fifths of the cap are taken, and no more than it.
func (y Year) Near() bool { return !y.Over() && y.Takings*100 >= y.Cap*near }

// Against reckons the gross sales of each calendar year against a cap: what was
// paid for jars, nothing taken off. Only the ledger's sales that have a day and
// a price count.
func (s *Summary) Against(c Cap, p *pack.Plan) {
	if c.Amount <= 0 {
		return
	}
	s.Cap = c
	type key struct {
		year int
		name string
	}
	sums := map[key]*Year{}
	for i, b := range p.Balances {
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
					sums[k] = &Year{Year: k.year, Name: k.name, Cap: c.Amount}
				}
				sums[k].Takings += minor(d.Takings, s.Currency)
				sums[k].Unpriced += d.Unpriced
			}
		}
	}
	for _, y := range sums {
		s.Years = append(s.Years, *y)
	}
	slices.SortFunc(s.Years, func(a, b Year) int {
		return cmp.Or(cmp.Compare(b.Year, a.Year), cmp.Compare(a.Name, b.Name))
	})
}

// years is the part of the list that tells what is left of the cap.
func (s *Summary) years() table.Part {
	say := s.in.Say
	if len(s.Years) == 0 {
		return table.Part{}
	}
	p := table.Part{Title: say("Sales of a calendar year, and the most allowed"), Compact: true, Columns: []string{say("year"), say("takings"), say("at most"), say("left")}}
	for _, y := range s.Years {
		name := strconv.Itoa(y.Year)
		if y.Name != "" {
			name += "  " + y.Name
		}
		t := Tally{Sold: 1, Takings: y.Takings}
		if y.Unpriced > 0 {
			t.Sold, t.Unpriced = y.Unpriced+1, y.Unpriced
		}
		p.Rows = append(p.Rows, table.Row{What: name, Figures: []string{s.takings(t), s.money(y.Cap), s.money(y.Left())},
			Cells: table.Cells{"part": "year", "name": y.Name, "date": strconv.Itoa(y.Year), "takings": decimal(y.Takings, s.Currency), "unpriced": strconv.Itoa(y.Unpriced),
				"note": say("at most %s, left %s; %s", s.money(y.Cap), s.money(y.Left()), s.Cap.Cite)}})
	}
	words := say("%s allows so much in a calendar year (%s). Gross sales, and only those in the ledger with a day and a price: add what you sold besides.", s.Cap.Place, s.Cap.Cite)
	if s.Cap.Each {
		words = say("%s allows so much of each product in a calendar year (%s). Gross sales, and only those in the ledger with a day and a price: add what you sold besides.", s.Cap.Place, s.Cap.Cite)
	}
	if s.Cap.Moves {
		words += " " + say("The sum moves with prices: ask for this year's.")
	}
	if s.Cap.Memory {
		words += " " + say("The sum stands from memory: ask the agency.")
	}
	p.Rows = append(p.Rows, table.Row{Kind: table.Say, What: words})
	return p
}
