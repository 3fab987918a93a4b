package web

import (
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"path/filepath"
	"strconv"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// ledgerDo notes in the ledger what happened to jars, or takes the last change
// back, as `jarmark ledger` and `jarmark pack --came-home` do.
func (s *site) ledgerDo(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return err
	}
	to, found, err := "./season", diag.List(nil), error(nil)
	switch r.PostFormValue("do") {
	case "add":
		found, err = s.noteRow(r.PostForm)
	case "home":
		to = "./pack?event=" + url.QueryEscape(r.PostFormValue("shown"))
		found, err = s.noteHome(r.PostForm)
	case "undo":
		err = s.undoLedger()
	default:
		err = badRequest("there is no such thing to do with the ledger")
	}
	if err != nil {
		return err
	}
	if found.HasErrors() {
		return s.showFaults(w, r, found, to)
	}
	return seeOther(w, to)
}

// noteRow writes one row at the end of the ledger.
func (s *site) noteRow(form url.Values) (diag.List, error) {
	lot, jar, _ := strings.Cut(form.Get("jars"), "/")
	n, err := strconv.Atoi(strings.TrimSpace(form.Get("count")))
	if err != nil {
		return nil, badRequest("write how many jars as a whole number, such as 2")
	}
	row := job.BookRow{Why: form.Get("why"), Lot: lot, Jar: jar, Who: form.Get("who"), Date: form.Get("date"), Price: form.Get("price"), Count: n}
	return s.note(func() ([]job.Change, diag.List, error) {
		recall, _ := s.recall()
		c, found := s.env().AddRow(recall.Batches, row, s.opts.Today())
		return []job.Change{c}, found, nil
	})
}

// noteHome writes what was sold at a market and what came home.
func (s *site) noteHome(form url.Values) (diag.List, error) {
	var day unit.Date
	if text := form.Get("date"); text != "" {
		var err error
		if day, err = unit.ParseDate(text); err != nil {
			return nil, badRequest("%v", err)
		}
	}
	var counts []string
	for key, n := range form {
		if word, ok := strings.CutPrefix(key, "home "); ok {
			counts = append(counts, fmt.Sprintf("%s=%s", word, strings.TrimSpace(n[0])))
		}
	}
	return s.note(func() ([]job.Change, diag.List, error) {
		all, _ := s.recall()
		changes, found := s.env().CameHome(all.Batches, form.Get("event"), day, strings.Join(counts, ", "))
		return changes, found, nil
	})
}

// note writes changes of the ledger. When another program wrote it meanwhile
// they are made anew, so that neither is lost.
func (s *site) note(make func() ([]job.Change, diag.List, error)) (diag.List, error) {
	for range maxCopies {
		changes, found, err := make()
		if err != nil || found.HasErrors() {
			return found, err
		}
		var edits []store.Edit
		for _, c := range changes {
			if !filepath.IsLocal(c.Name) { // beside a kitchen further up
				return nil, &problem{http.StatusForbidden, "the ledger lies outside this folder: " + c.Name, "serve the folder of its kitchen"}
			}
			edits = append(edits, store.Edit{Path: s.folder.path(c.Name), Was: c.Was, Now: c.Now})
		}
		if err := store.SaveAll(edits); !errors.Is(err, store.ErrChanged) {
			return found, err
		}
	}
	return nil, &problem{http.StatusConflict, "the ledger is being written by another program", "do it again in a moment"}
}

// undoLedger puts the version before the last change back; done again, it is
// there again.
func (s *site) undoLedger() error {
	k, _, err := s.folder.kitchen()
	if err != nil {
		return err
	}
	book, err := s.folder.ledger(k)
	if err != nil {
		return err
	}
	if book.Data == nil || filepath.Dir(book.Name) != "." {
		return badRequest("there is no ledger in this folder yet")
	}
	return store.PutBack(s.folder.path(book.Name), book.Data, []byte(job.LedgerHeader))
}

// faultPage says why nothing was written, and leads back.
type faultPage struct {
	Back     string
	Findings []job.Finding
}

func (s *site) showFaults(w http.ResponseWriter, r *http.Request, found diag.List, back string) error {
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(http.StatusUnprocessableEntity)
	return s.show(w, r, "faults.html", s.view("Nothing was noted", "", faultPage{back, findingRows(found)}))
}
