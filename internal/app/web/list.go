package web

import (
	"net/http"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// card is one batch in the list.
type card struct {
	File, Name, Lot, Made, BestBefore string
	Jars                              int
	Planned                           bool
	Errors, Warnings                  int
	Picture                           bool
}

type listPage struct {
	Cards   []card
	Kitchen bool // there is a kitchen file
}

func (s *site) list(w http.ResponseWriter, r *http.Request) error {
	batches, across, err := s.loadAll()
	if err != nil {
		return err
	}
	k, _, err := s.folder.kitchen()
	if err != nil {
		return err
	}
	page := listPage{Kitchen: k.Data != nil}
	for _, b := range batches {
		page.Cards = append(page.Cards, cardOf(b, about(across, b.Input.Batch.Name)))
	}
	return s.show(w, "list.html", s.view("Batches", "batches", page))
}

// loadAll loads every batch of the folder.
func (s *site) loadAll() ([]*job.Batch, diag.List, error) {
	names, err := s.folder.batches()
	if err != nil {
		return nil, nil, err
	}
	k, _, err := s.folder.kitchen()
	if err != nil {
		return nil, nil, err
	}
	var in []job.Input
	for _, n := range names {
		data, err := s.folder.read(n)
		if err != nil {
			return nil, nil, err
		}
		in = append(in, job.Input{Kitchen: k, Batch: job.Doc{Name: n, Data: data}})
	}
	batches, across := s.env.LoadAll(in, s.choices())
	return batches, across, nil
}

func cardOf(b *job.Batch, across diag.List) card {
	f := b.Facts()
	found := append(append(diag.List(nil), b.Findings...), across...)
	c := card{File: b.Input.Batch.Name, Name: f.Name, Lot: f.Lot, Made: f.Made, BestBefore: f.BestBefore,
		Errors: found.Count(diag.Error), Warnings: found.Count(diag.Warning), Picture: len(b.Contents) > 0}
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
