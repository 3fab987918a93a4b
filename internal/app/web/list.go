package web

import (
	"net/http"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// card is one batch in the list.
type card struct {
	File, Name, Lot, Made, BestBefore string
	Jars                              int
	Planned                           bool
	Errors                            int
	Picture                           bool
}

type listPage struct {
	Cards    []card
	Kitchen  bool          // there is a kitchen file
	Findings []job.Finding // what could not be read
}

func (s *site) list(w http.ResponseWriter, r *http.Request) error {
	all, err := s.loadAll()
	if err != nil {
		return err
	}
	page := listPage{Kitchen: all.kitchen, Findings: findingRows(append(all.unread, s.ownFound()...))}
	for _, b := range all.batches {
		page.Cards = append(page.Cards, cardOf(b, about(all.across, b.Input.Batch.Name)))
	}
	return s.show(w, r, "list.html", s.view("Batches", "batches", page))
}

// loaded are the batches of the folder, findings about them together, and what
// could not be read.
type loaded struct {
	batches []*job.Batch
	across  diag.List
	unread  diag.List
	kitchen bool // there is a kitchen file, read or not
}

// loadAll loads every batch of the folder. A file that cannot be read hides no
// other: it is told. An error is about the folder itself.
func (s *site) loadAll() (all loaded, err error) {
	names, left, err := s.folder.batches()
	if err != nil {
		return all, err
	}
	tell := func(name string, err error) {
		all.unread.Errorf("unread", name, "", "%s could not be read, and is left out: %s", name, s.explain(err).What).
			Hinted("mend it on the disk; the other files are shown")
	}
	for _, n := range left {
		tell(n, s.folder.ordinary(n))
	}
	k, _, err := s.folder.kitchen()
	all.kitchen = k.Data != nil || err != nil
	if err != nil {
		tell("kitchen.toml", err)
	}
	book, err := s.folder.ledger(k)
	if err != nil {
		tell(store.LedgerName, err)
	}
	var in []job.Input
	for _, n := range names {
		data, err := s.folder.read(n)
		if err != nil {
			tell(n, err)
			continue
		}
		if d := (job.Doc{Name: n, Data: data}); !job.IsGiftList(d) {
			in = append(in, job.Input{Kitchen: k, Batch: d, Ledger: book})
		}
	}
	all.batches, all.across = s.env().LoadAll(in, s.choices())
	return all, nil
}

// names are the batch files, those that could not be read too.
func (all loaded) names() (out []string) {
	for _, b := range all.batches {
		out = append(out, b.Input.Batch.Name)
	}
	for _, d := range all.unread {
		if store.IsBatchName(d.File) {
			out = append(out, d.File)
		}
	}
	return out
}

func cardOf(b *job.Batch, across diag.List) card {
	f := b.Facts()
	found := append(append(diag.List(nil), b.Findings...), across...)
	c := card{File: b.Input.Batch.Name, Name: f.Name, Lot: f.Lot, Made: f.Made, BestBefore: f.BestBefore,
		Errors: found.Count(diag.Error), Picture: len(b.Contents) > 0}
	if c.Name == "" {
		c.Name = stem(c.File)
	}
	if b.Cooked != nil {
		c.Jars = b.Cooked.Count()
		for _, j := range f.Jars {
			c.Planned = c.Planned || j.Estimated
		}
	}
	return c
}
