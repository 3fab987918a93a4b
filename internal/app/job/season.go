package job

import (
	"fmt"

	"jarmark/internal/give/pack"
	"jarmark/internal/give/season"
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
	o := pack.Options{}
	found := e.book(batches, &o)
	plan, l := pack.Build(results(batches), o)
	return season.Sum(plan, results(batches)), append(found, locateAll(batches, shortages(l, plan.Faults))...)
}
