package web

import (
	"net/http"

	"jarmark/internal/app/job"
)

// scalePage is a recipe for other jars.
type scalePage struct {
	File, Name, Jars string
	Scaled           *job.Scaled
	Findings         []job.Finding
}

// scale shows a recipe scaled to exact jars, with its cost.
func (s *site) scale(w http.ResponseWriter, r *http.Request) error {
	file := r.PathValue("file")
	in, err := s.folder.input(file, nil)
	if err != nil {
		return err
	}
	b := s.env().Load(in, s.choices())
	p := scalePage{File: file, Name: b.Facts().Name, Jars: r.URL.Query().Get("jars")}
	if p.Name == "" {
		p.Name = stem(file)
	}
	if p.Jars != "" {
		scaled, l := s.env().Scale(b, p.Jars)
		if scaled == nil {
			l = append(b.Findings, l...)
		}
		p.Scaled, p.Findings = scaled, findingRows(l)
	}
	return s.show(w, r, "scale.html", s.view("Scale "+p.Name, "batches", p))
}

// align answers with the page that shows how a printer is off.
func (s *site) align(w http.ResponseWriter, r *http.Request) error {
	f, l, err := s.env().Align(r.PathValue("sheet"))
	return s.sendList(w, f, pdfType, l, err)
}

// tape answers with the paper tape that measures jars.
func (s *site) tape(w http.ResponseWriter, r *http.Request) error {
	f, l, err := s.env().Tape(r.PathValue("sheet"))
	return s.sendList(w, f, pdfType, l, err)
}

// stall answers with the allergen sheet of a market's stall.
func (s *site) stall(w http.ResponseWriter, r *http.Request) error {
	all, _ := s.recall()
	f, l, err := s.env().StallSheet(all.Batches, r.URL.Query().Get("event"))
	return s.sendList(w, f, pdfType, l, err)
}

// ledger shows where the jars are, as text or as a table for a spreadsheet.
func (s *site) ledger(w http.ResponseWriter, r *http.Request) error {
	k, ok := listKinds[r.PathValue("file")]
	if !ok || k.format == "pdf" {
		return errNotFound
	}
	all, _ := s.recall()
	f, l, err := s.env().LedgerFile(all.Batches, r.URL.Query().Get("rows") != "", k.format)
	return s.sendList(w, f, k.kind, l, err)
}

// rulesPage is every value of a place's rules, with its source.
type rulesPage struct {
	Place, Day string
	Rows       [][]string
	Findings   []job.Finding
}

// rules shows what the labels obey.
func (s *site) rules(w http.ResponseWriter, r *http.Request) error {
	p := rulesPage{Place: r.PathValue("place"), Day: s.opts.Today().String()}
	rows, l := s.env().PlaceEffective(p.Place, s.opts.Today())
	p.Rows, p.Findings = rows, findingRows(l)
	if rows == nil {
		return &problem{Status: http.StatusNotFound, What: firstError(l), Hint: "choose a place in the kitchen"}
	}
	return s.show(w, r, "rules.html", s.view("Rules of "+p.Place, "kitchen", p))
}
