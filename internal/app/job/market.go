package job

import (
	"cmp"
	"fmt"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/press"
	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/edit"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// Entry is one line of a gift list kept apart from the batches.
type Entry = pack.Entry

// GiftList reads a gift list, CSV or TOML.
func GiftList(d Doc) ([]Entry, diag.List) {
	list, l := pack.ReadList(d.Name, d.Data)
	return list, l.Brief()
}

// IsGiftList reports whether a TOML file among batches is a gift list.
func IsGiftList(d Doc) bool { return pack.IsList(d.Data) }

// PackChoices says which packing list to make, and in which format.
type PackChoices struct {
	Event  string
	Date   unit.Date
	Gifts  bool
	List   []Entry
	Format string // "pdf", "csv", "text"
}

// PackFile makes one packing list for batches together.
func (e *Env) PackFile(batches []*Batch, c PackChoices) (File, diag.List, error) {
	plan, l := e.Pack(batches, pack.Options{Event: c.Event, Date: c.Date, Gifts: c.Gifts || c.Event == "" && c.Date.IsZero() && len(c.List) > 0, List: c.List})
	if plan == nil {
		return File{}, l, nil
	}
	switch c.Format {
	case "csv":
		return File{Name: "packing-list.csv", Data: plan.CSV()}, l, nil
	case "", "text":
		return File{Name: "packing-list.txt", Data: []byte(plan.Text())}, l, nil
	case "pdf":
		doc, m := plan.Doc(e.Faces, batches[0].paper())
		f, err := e.listPDF(doc, "packing-list", batches[0], Choices{})
		return f, append(l, locateAll(batches, m)...), err
	}
	return File{}, l, fmt.Errorf("no format %q: pdf, csv or text", c.Format)
}

// StallSheet makes the allergen sheet of a market stall, over all batches.
func (e *Env) StallSheet(batches []*Batch, event string) (File, diag.List, error) {
	var products []pack.Product
	var over diag.List
	for _, b := range batches {
		if b.Cooked != nil {
			products = append(products, pack.Product{Result: b.Cooked, Content: b.first()})
			over = append(over, b.past(Choices{Today: b.today})...)
		}
	}
	k := batches[0].Kitchen
	doc, l := pack.AllergenDoc(pack.Allergens(products, event), k.Name, k.Units, e.Faces, batches[0].paper())
	f, err := e.listPDF(doc, "stall-allergens", batches[0], Choices{})
	return f, locateAll(batches, append(l, over...)), err
}

// listPDF renders a list to carry; its title stays when it has one.
func (e *Env) listPDF(d *page.Doc, name string, b *Batch, c Choices) (File, error) {
	if d == nil {
		return File{}, nil // findings say why
	}
	title := d.Title
	b.orderOf(c).Describe(d, name)
	d.Title = cmp.Or(title, d.Title)
	data, err := e.PDF(d)
	return File{Name: name + ".pdf", Data: data}, err
}

func results(batches []*Batch) (out []*cook.Result) {
	for _, b := range batches {
		if b.Cooked != nil {
			out = append(out, b.Cooked)
		}
	}
	return out
}

// Change is one file before and after an edit.
type Change struct {
	Name     string
	Was, Now []byte
}

// CameHome gives the ledgers with what was sold and what came home at a market
// on a day written in.
func (e *Env) CameHome(batches []*Batch, event string, day unit.Date, counts string) ([]Change, diag.List) {
	plan, l := e.Pack(batches, pack.Options{Event: event, Date: day})
	if plan == nil || len(plan.Stops) == 0 {
		return nil, l.Errors()
	}
	rows, l := plan.CameHome(counts)
	if l.HasErrors() {
		return nil, l
	}
	return e.booked(batches, rows), l
}

// booked gives the ledgers of batches with rows at their ends.
func (e *Env) booked(batches []*Batch, rows []ledger.Entry) (changes []Change) {
	by := map[string][]ledger.Entry{}
	for _, r := range rows {
		if b := ofLot(batches, r.Lot); b != nil && b.Ledger != nil {
			by[b.Ledger.File] = append(by[b.Ledger.File], r)
		}
	}
	for _, l := range ledgers(batches) {
		if len(by[l.File]) > 0 {
			changes = append(changes, change(l, l.With(by[l.File])))
		}
	}
	return changes
}

// RememberSheets notes in a kitchen file which cells of the open sheets are
// used up; a sheet that came out even is noted as 0.
func RememberSheets(kitchen Doc, runs []press.Run) ([]byte, diag.List) {
	now := string(kitchen.Data)
	var found diag.List
	for _, r := range runs {
		if r.Sheet.Auto || r.Cells == 0 {
			continue
		}
		next, l := edit.Set(now, fmt.Sprintf("supplies.part_sheets.%q", r.Sheet.ID), r.Used%r.Cells)
		found = append(found, l...)
		now = next
	}
	return []byte(now), found
}
