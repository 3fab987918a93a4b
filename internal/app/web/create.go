package web

import (
	"net/http"
	"net/url"
	"slices"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/edit"
	"jarmark/internal/kit/unit"
)

// newPage is the form for a new batch; Problems stand beside their fields.
type newPage struct {
	Name, Product, Made string
	Notes               string // pasted, to be read; may be empty
	Products            []option
	Problems            map[string]string
}

func (s *site) newBatch(w http.ResponseWriter, r *http.Request) error {
	return s.showNew(w, r, newPage{Product: "jam", Made: s.opts.Today().String()})
}

func (s *site) showNew(w http.ResponseWriter, r *http.Request, p newPage) error {
	p.Products = optionsOf(job.ProductWords()...)
	if len(p.Problems) > 0 {
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.WriteHeader(http.StatusUnprocessableEntity)
	}
	return s.show(w, r, "new.html", s.view("New batch", "new", p))
}

// createBatch writes a starter file and opens it.
func (s *site) createBatch(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return err
	}
	p := newPage{Name: strings.TrimSpace(r.PostFormValue("name")), Product: r.PostFormValue("kind"), Made: r.PostFormValue("made"), Notes: r.PostFormValue("notes"), Problems: map[string]string{}}
	doc, made := p.starter()
	if len(p.Problems) > 0 {
		return s.showNew(w, r, p)
	}
	text, l := string(doc.Data), diag.List(nil)
	if strings.TrimSpace(p.Notes) == "" { // notes bring a kind and a day of their own
		text, l = edit.Set(text, "kind", p.Product)
		var m diag.List
		text, m = edit.Set(text, "made", made)
		l = append(l, m...)
	}
	if l.HasErrors() {
		return badRequest("the new file could not be written: %v", l[0].Message)
	}
	file, err := s.saveAsNew(stem(doc.Name), []byte(text))
	if err != nil {
		return err
	}
	return seeOther(w, rootOf(r)+"batch/"+url.PathEscape(file))
}

// starter makes the file, or says what is wrong with what was typed.
func (p *newPage) starter() (job.Doc, unit.Date) {
	made, err := unit.ParseDate(p.Made)
	if err != nil {
		p.Problems["made"] = err.Error()
	}
	if p.Name == "" {
		p.Problems["name"] = "give it a name, such as Plum jam"
		return job.Doc{}, made
	}
	if len(p.Name) > maxName {
		p.Problems["name"] = "that is too long for a label"
		return job.Doc{}, made
	}
	if strings.TrimSpace(p.Notes) != "" {
		return p.fromNotes(made), made
	}
	doc, err := job.StarterBatch(p.Name, made)
	if err != nil {
		p.Problems["name"] = "use some letters of the alphabet, so that the file has a name"
	}
	return doc, made
}

// fromNotes reads the pasted notes, as the command line does.
func (p *newPage) fromNotes(made unit.Date) job.Doc {
	kind := ""
	if slices.Contains(job.ProductWords(), p.Product) {
		kind = p.Product
	}
	doc, _, err := job.BatchFromNotes(p.Name, kind, []byte(p.Notes), made)
	if err != nil {
		p.Problems["notes"] = err.Error()
	}
	return doc
}
