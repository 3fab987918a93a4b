package job

import (
	"cmp"
	"fmt"

	"jarmark/internal/give/pack"
	"jarmark/internal/give/season"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// SeasonFile sums up the season of batches: text, CSV or a page to print.
func (e *Env) SeasonFile(batches []*Batch, format string) (File, diag.List, error) {
	s, l := e.Season(batches)
	list := s.List()
	switch format {
	case "csv":
		return File{Name: "season.csv", Data: list.CSV()}, l, nil
	case "", "text":
		return File{Name: "season.txt", Data: []byte(list.Text())}, l, nil
	case "pdf":
		doc, m := list.Doc(e.Faces, batches[0].paper())
		f, err := e.listPDF(doc, "season", batches[0], Choices{})
		return f, append(l, m...), err
	}
	return File{}, l, fmt.Errorf("no format %q: pdf, csv or text", format)
}

// Season is the summary as a value. What goes short in the plan does not
// matter to it; faults of the sums do.
func (e *Env) Season(batches []*Batch) (*season.Summary, diag.List) {
	plan, l := e.booking(batches)
	s, m := summed(plan, batches)
	return s, append(l, m...)
}

// summed sums up, and tells when the sales of a year come near what the place
// allows, or pass it.
func summed(plan *pack.Plan, batches []*Batch) (*season.Summary, diag.List) {
	s := season.Sum(plan, results(batches))
	var l diag.List
	for _, b := range batches {
		if b.Set == nil || b.Kitchen == nil {
			continue
		}
		c := b.Set.SalesCap(b.Kitchen.Programme)
		one := int64(unit.Money{Currency: b.Set.Currency}.PerUnit())
		if s.Currency == b.Set.Currency {
			s.Against(season.Cap{Amount: c.Amount * one, Each: c.Each, Moves: c.Moves, Memory: c.Confidence == "memory", Place: b.Set.Name, Cite: c.Cite}, plan)
		}
		for _, y := range s.Years {
			capFinding(&l, b, s, y)
		}
		break // one kitchen's rules: the season is summed for the first
	}
	return s, locateAll(batches, l)
}

func capFinding(l *diag.List, b *Batch, s *season.Summary, y season.Year) {
	what := "sales"
	if y.Name != "" {
		what = "sales of " + y.Name
	}
	sum := func(n int64) string { return unit.Money{Minor: n, Currency: s.Currency}.String() }
	file := cmp.Or(b.Input.Kitchen.Name, "kitchen.toml")
	switch {
	case y.Over():
		l.Warnf("sales-cap", file, "place", "%s in %d are %s, %s more than the %s that %s allows", what, y.Year, sum(y.Takings), sum(-y.Left()), sum(y.Cap), s.Cap.Place).
			Hinted("ask the agency which licence you need before you sell more").Cited(s.Cap.Cite)
	case y.Near():
		l.Warnf("sales-cap", file, "place", "%s in %d are %s: %s are left of the %s that %s allows", what, y.Year, sum(y.Takings), sum(y.Left()), sum(y.Cap), s.Cap.Place).
			Hinted("only sales in the ledger with a day and a price count here: add what you sold besides").Cited(s.Cap.Cite)
	}
}

// SeasonLists are the season, where the jars are, and every row of the ledger.
func (e *Env) SeasonLists(batches []*Batch) (sums, book, rows *table.List, l diag.List) {
	plan, l := e.booking(batches)
	s, m := summed(plan, batches)
	return s.List(), plan.Book(), plan.BookRows(), append(l, m...)
}

// booking is a plan for its sums alone.
func (e *Env) booking(batches []*Batch) (*pack.Plan, diag.List) {
	o := pack.Options{}
	for _, b := range batches {
		o.Today = b.today
	}
	found := e.book(batches, &o)
	plan, l := pack.Build(results(batches), o)
	return plan, append(found, locateAll(batches, shortages(l, plan.Faults))...)
}
