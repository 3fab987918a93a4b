package job

import (
	"cmp"
	"fmt"
	"slices"

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
		return f, append(l, locateAll(batches, m)...), err
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
// of a kitchen allows it, or pass it.
func summed(plan *pack.Plan, batches []*Batch) (*season.Summary, diag.List) {
	s := season.Sum(plan, results(batches))
	var kitchens []string // by result
	first := map[string]*Batch{}
	for _, b := range batches {
		if b.Cooked == nil {
			continue
		}
		home := b.Input.Kitchen.Name
		kitchens = append(kitchens, home)
		if first[home] == nil && b.Set != nil && b.Kitchen != nil {
			first[home] = b
		}
	}
	var l diag.List
	for i, home := range kitchens {
		b := first[home]
		if b == nil || slices.Index(kitchens, home) < i || b.Kitchen.Currency != b.Set.Currency {
			continue
		}
		c := b.Set.SalesCap(b.Kitchen.Programme)
		one := int64(unit.Money{Currency: b.Set.Currency}.PerUnit())
		told := len(s.Years)
		s.Against(season.Cap{Amount: c.Amount * one, Each: c.Each, Moves: c.Moves, Memory: c.Confidence == "memory", Place: b.Set.Name, Cite: c.Cite,
			Currency: b.Set.Currency, Kitchen: cmp.Or(b.Kitchen.Name, home)}, plan, func(st pack.Stock) bool { return kitchens[st.Result()] == home })
		for _, y := range s.Years[told:] {
			capFinding(&l, b, s.Caps[y.Of], y)
		}
	}
	return s, locateAll(batches, l)
}

func capFinding(l *diag.List, b *Batch, c season.Cap, y season.Year) {
	what := "sales"
	if y.Name != "" {
		what = "sales of " + y.Name
	}
	sum := func(n int64) string { return unit.Money{Minor: n, Currency: c.Currency}.String() }
	file := cmp.Or(b.Input.Kitchen.Name, "kitchen.toml")
	switch {
	case y.Over():
		l.Warnf("sales-cap", file, "place", "%s in %d are %s, %s more than the %s that %s allows", what, y.Year, sum(y.Takings), sum(-y.Left()), sum(y.Cap), c.Place).
			Hinted("ask the agency which licence you need before you sell more").Cited(c.Cite)
	case y.Near():
		l.Warnf("sales-cap", file, "place", "%s in %d are %s: %s are left of the %s that %s allows", what, y.Year, sum(y.Takings), sum(y.Left()), sum(y.Cap), c.Place).
			Hinted("only sales in the ledger with a day and a price count here: add what you sold besides").Cited(c.Cite)
	}
}

// SeasonLists are the season, where the jars are, and every row of the ledger.
func (e *Env) SeasonLists(batches []*Batch) (sums, book, rows *table.List, l diag.List) {
	plan, l := e.booking(batches)
	s, m := summed(plan, batches)
	return s.List(), plan.Book(), plan.BookRows(), append(l, m...)
}

// Screen is what a page shows of a list, or of a plan's packing list.
func Screen(of any) []table.Part {
	if p, ok := of.(*pack.Plan); ok {
		of = p.List()
	}
	if l, ok := of.(*table.List); ok {
		return l.Screen()
	}
	return nil
}

// Open is the one market of a plan that is not noted yet, nil without.
func Open(p *pack.Plan) *pack.OpenMarket { return p.Open() }

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
