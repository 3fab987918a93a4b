package job

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// LedgerHeader is a ledger without rows.
const LedgerHeader = ledger.HeaderLine

// LedgerWhys lists what may happen to jars, in the ledger's words.
func LedgerWhys() (out []string) {
	for _, w := range ledger.Whys() {
		out = append(out, string(w))
	}
	return out
}

// readLedgers reads the ledger of each kitchen once.
func readLedgers(batches []*Batch) {
	type read struct {
		ledger *ledger.Ledger
		found  diag.List
	}
	done := map[string]read{}
	for _, b := range batches {
		name := b.Input.Ledger.Name
		if name == "" || b.Kitchen == nil {
			continue
		}
		r, known := done[name]
		if !known {
			r.ledger, r.found = ledger.Read(name, b.Input.Ledger.Data, b.Kitchen.Currency, b.Kitchen.Place.US())
			r.found = r.found.Capped(maxFindings)
			done[name] = r
		}
		b.Ledger, b.Booked = r.ledger, r.found
	}
}

// book puts the ledgers of batches into the options of a plan, without what
// the gift list at hand has promised in them before.
func (e *Env) book(batches []*Batch, o *pack.Options) (found diag.List) {
	if len(o.List) > 0 {
		o.From = listName(o.List)
	}
	seen := map[string]bool{}
	for _, b := range batches {
		if b.Ledger == nil || seen[b.Ledger.File] {
			continue
		}
		seen[b.Ledger.File] = true
		found = append(found, b.Booked...)
		o.Book = append(o.Book, b.Ledger.Without(o.From).Entries...)
	}
	return found
}

// listName is how the ledger names a gift list: by its file, wherever it lies.
func listName(list []Entry) string { return "list " + filepath.Base(list[0].File) }

// Promises gives the ledgers as they are with a gift list's promises written
// in: those of the list's last time are replaced. Counts tell how many jars.
func (e *Env) Promises(batches []*Batch, list []Entry) (changes []Change, jars int, found diag.List) {
	if len(list) == 0 {
		return nil, 0, nil
	}
	plan, found := e.Pack(batches, pack.Options{List: list})
	if plan == nil || found.HasErrors() {
		return nil, 0, found
	}
	changes, jars = PromisesOf(plan, batches, list)
	return changes, jars, found
}

// PromisesOf is Promises for a plan the list was dealt in already.
func PromisesOf(plan *pack.Plan, batches []*Batch, list []Entry) (changes []Change, jars int) {
	rows := map[string][]ledger.Entry{}
	for _, p := range plan.Promises {
		jars += p.Count
		if b := ofLot(batches, p.Lot); b != nil && b.Ledger != nil {
			rows[b.Ledger.File] = append(rows[b.Ledger.File], p)
		}
	}
	from := listName(list)
	for _, l := range ledgers(batches) {
		if !samePromises(l, from, rows[l.File]) {
			changes = append(changes, change(l, l.Without(from).With(rows[l.File])))
		}
	}
	return changes, jars
}

// change is a ledger before and after; Was of one that is not there is nil.
func change(l *ledger.Ledger, now []byte) Change { return Change{l.File, l.Data(), now} }

// samePromises reports whether a list's promises stand in the ledger already,
// so that it need not be written for their date alone.
func samePromises(l *ledger.Ledger, from string, rows []ledger.Entry) bool {
	plain := func(e ledger.Entry) string {
		return strings.ToLower(fmt.Sprintf("%q %q %d %q", e.Lot, e.Jar, e.Count, e.Who))
	}
	var was, now []string
	for _, e := range l.Entries {
		if e.Why == ledger.Promised && strings.EqualFold(e.From, from) {
			was = append(was, plain(e))
		}
	}
	for _, e := range rows {
		now = append(now, plain(e))
	}
	return slices.Equal(was, now)
}

// ledgers are those of batches, each once.
func ledgers(batches []*Batch) (out []*ledger.Ledger) {
	for _, b := range batches {
		if b.Ledger != nil && !slices.ContainsFunc(out, func(l *ledger.Ledger) bool { return l.File == b.Ledger.File }) {
			out = append(out, b.Ledger)
		}
	}
	return out
}

func ofLot(batches []*Batch, lot string) *Batch {
	for _, b := range batches {
		if b.Cooked != nil && strings.EqualFold(strings.TrimSpace(lot), b.Cooked.Lot) {
			return b
		}
	}
	return nil
}

// BookRow is a row for the ledger in the maker's words.
type BookRow struct {
	Why, Lot, Jar, Who, Date, Price string
	Count                           int
}

// AddRow gives the ledger with a row more. A row that cannot be, because there
// are not so many jars, is refused.
func (e *Env) AddRow(batches []*Batch, r BookRow, today unit.Date) (Change, diag.List) {
	var found diag.List
	row := r.entry(ofLot(batches, r.Lot), today, &found)
	b := ofLot(batches, r.Lot)
	if b == nil || b.Ledger == nil {
		var lots []string
		for _, b := range batches {
			if b.Cooked != nil {
				lots = append(lots, b.Cooked.Lot)
			}
		}
		found.Errorf("unknown-lot", diag.Command, "", "no batch here has the lot %q", r.Lot).Hinted("lots here: " + strings.Join(lots, ", "))
	}
	if found.HasErrors() {
		return Change{}, found
	}
	o := pack.Options{}
	booked := e.book(batches, &o)
	if found = append(found, booked...); found.HasErrors() {
		return Change{}, found
	}
	before, l := pack.Build(results(batches), o)
	told := shortages(l, before.Faults)
	o.Book = append(slices.Clone(o.Book), row)
	after, l := pack.Build(results(batches), o)
	for _, d := range shortages(l, after.Faults) {
		if !slices.Contains(told, d) {
			found = append(found, d)
		}
	}
	if l := found.Errors(); len(l) > 0 {
		found = l
	}
	return change(b.Ledger, b.Ledger.With([]ledger.Entry{row})), locateAll(batches, found)
}

// shortages softens what follows from true rows: a jar that broke is broken,
// whoever goes short. Faults of the sums themselves stay errors.
func shortages(l, faults diag.List) (out diag.List) {
	for _, d := range l {
		if d.Severity == diag.Error && !slices.Contains(faults, d) {
			d.Severity = diag.Warning
		}
		if d.Severity != diag.Note {
			out = append(out, d)
		}
	}
	return out
}

// entry reads the words of a row.
func (r BookRow) entry(b *Batch, today unit.Date, found *diag.List) ledger.Entry {
	e := ledger.Entry{Lot: r.Lot, Jar: r.Jar, Count: r.Count, Who: strings.TrimSpace(r.Who), From: "hand", Date: today, File: diag.Command}
	var ok bool
	var hint string
	if e.Why, hint, ok = ledger.ReadWhy(r.Why); !ok {
		found.Errorf("unknown-why", diag.Command, "", "%q is not what happens to jars", r.Why).Hinted(hint)
	}
	if r.Count < 1 || r.Count > ledger.MaxJars {
		found.Errorf("bad-count", diag.Command, "", "%d is not a number of jars", r.Count).Hinted("write --count 2")
	}
	var err error
	if r.Date != "" {
		if e.Date, err = unit.ParseDate(r.Date); err != nil {
			found.Errorf("bad-date", diag.Command, "", "%v", err).Hinted("write year-month-day, like 2026-06-14")
		}
	}
	if today.Before(e.Date) && e.Why != ledger.Promised {
		found.Warnf("row-day", diag.Command, "", "the day %s is still to come", e.Date.Words(b != nil && b.Kitchen.US())).Hinted("check the day")
	}
	if r.Price != "" && b != nil {
		if e.Price, err = unit.ParseMoney(r.Price, b.Kitchen.Currency); err != nil {
			found.Errorf("bad-price", diag.Command, "", "%v", err).Hinted("write the price of one jar, like 9.50")
		}
	}
	if e.Who == "" && slices.Contains([]ledger.Why{ledger.Promised, ledger.Given, ledger.Sold, ledger.CameHome}, e.Why) {
		found.Errorf("no-name", diag.Command, "", "jars that are %s need a name", e.Why).Hinted(`write --who "NAME": a person or a market`)
	}
	return e
}

// LedgerFile shows where the jars of batches are (balances), or every row of
// their ledgers, tables of batch files among them, as text or CSV.
func (e *Env) LedgerFile(batches []*Batch, rows bool, format string) (File, diag.List, error) {
	plan, found := e.booking(batches)
	known := map[string]bool{}
	for _, s := range plan.Stock {
		known[strings.ToLower(s.Lot)] = true
	}
	for _, l := range ledgers(batches) {
		for _, r := range l.Entries {
			if lot := strings.ToLower(r.Lot); !known[lot] {
				known[lot] = true
				d := found.Warnf("lot-elsewhere", r.File, "", "no batch here has the lot %q", r.Lot).Hinted("check the lot; a batch in another folder is not read")
				d.Pos = r.Pos
			}
		}
	}
	list := plan.Book()
	if rows {
		list = plan.BookRows()
	}
	if format == "csv" {
		return File{Name: "ledger-list.csv", Data: list.CSV()}, found, nil
	}
	return File{Name: "ledger-list.txt", Data: []byte(list.Text())}, found, nil
}
