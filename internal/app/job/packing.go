package job

import (
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
)

// Pack plans where the jars of the batches go.
func (e *Env) Pack(batches []*Batch, o pack.Options) (*pack.Plan, diag.List) {
	for _, b := range batches {
		if b.Cooked != nil && o.Pantry == nil {
			o.Pantry = b.Pantry
		}
		o.Today = b.today
	}
	found := e.book(batches, &o)
	plan, l := pack.Build(results(batches), o)
	return plan, locateAll(batches, append(found, l.Brief()...))
}

// locateAll fills in the places of findings about any of the batches.
func locateAll(batches []*Batch, l diag.List) diag.List {
	for _, b := range batches {
		l = b.locate(l)
	}
	return l
}

// makePacking writes the packing list of one batch three ways.
func makePacking(e *Env, b *Batch, c Choices) ([]File, diag.List, error) {
	if b.Booked.HasErrors() {
		return nil, b.noList(), nil
	}
	plan, l := e.Pack([]*Batch{b}, pack.Options{List: c.List})
	if plan == nil {
		return nil, l, nil
	}
	doc, m := plan.Doc(e.Faces, b.paper())
	l = append(l, b.locate(m)...)
	if doc == nil || c.dry {
		return nil, l, nil
	}
	f, err := e.listPDF(doc, "packing-list", b, c)
	return []File{f, {Name: "packing-list.csv", Data: plan.CSV()}, {Name: "packing-list.txt", Data: []byte(plan.Text())}}, l, err
}

// noList tells that rows of the ledger cannot be counted. A list that leaves
// them out would give jars away twice, so none is made; the labels and the rest
// do not depend on it.
func (b *Batch) noList() (l diag.List) {
	for _, d := range b.Booked {
		d.Severity = min(d.Severity, diag.Warning)
		l = append(l, d)
	}
	l.Warnf("no-list", b.Ledger.File, "", "no packing list is made until these rows are mended").Hinted("the labels and all else are as they should be")
	return l
}
