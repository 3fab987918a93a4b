package job

import (
	"fmt"

	"jarmark/internal/give/pack"
	"jarmark/internal/give/season"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
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
	return season.Sum(plan, results(batches)), l
}

// SeasonLists are the season, where the jars are, and every row of the ledger.
func (e *Env) SeasonLists(batches []*Batch) (sums, book, rows *table.List, l diag.List) {
	plan, l := e.booking(batches)
	return season.Sum(plan, results(batches)).List(), plan.Book(), plan.BookRows(), l
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
