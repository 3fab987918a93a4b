package web

import (
	"errors"
	"io/fs"
	"net/http"
	"net/url"
	"path/filepath"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// giftPage is a gift list and who gets which jar; Plan is a *pack.Plan, nil as
// long as no list is chosen or it cannot be read.
type giftPage struct {
	Lists      []string // the CSV files of the folder that may be one
	Name, Text string
	Mark       string // of the text on disk
	Plan       any
	Promised   bool // its jars stand in the ledger
	Findings   []job.Finding
}

// list reads a gift list of the folder.
func (f *folder) list(name string) ([]byte, error) {
	if !plainName(name, ".csv") || strings.EqualFold(name, store.LedgerName) {
		return nil, &problem{http.StatusNotFound, "there is no such gift list", "names end in .csv and stand in the folder itself; " + store.LedgerName + " is the ledger"}
	}
	if err := f.regular(name); err != nil {
		return nil, err
	}
	return f.whole(name)
}

// lists are the CSV files of the folder that read as gift lists.
func (f *folder) lists() (out []string) {
	names, _ := fs.Glob(f.root.FS(), "*.[cC][sS][vV]") // a constant pattern: cannot fail
	for _, n := range names {
		data, err := f.list(n)
		if err != nil {
			continue
		}
		if list, l := job.GiftList(job.Doc{Name: n, Data: data}); len(list) > 0 && !l.HasErrors() {
			out = append(out, n)
		}
	}
	return out
}

// gifts shows a list of presents kept apart from the batches.
func (s *site) gifts(w http.ResponseWriter, r *http.Request) error {
	p := giftPage{Lists: s.folder.lists(), Name: r.URL.Query().Get("list")}
	if p.Name == "" {
		return s.show(w, r, "gifts.html", s.view("Gift list", "pack", p))
	}
	text, err := s.folder.list(p.Name)
	if err != nil {
		return err
	}
	p.Text, p.Mark = string(text), mark(text)
	return s.showGifts(w, r, p)
}

// showGifts deals the jars of a list.
func (s *site) showGifts(w http.ResponseWriter, r *http.Request, p giftPage) error {
	batches, list, found, unread := s.dealt(p.Name, []byte(p.Text))
	found = append(found, unread...)
	if len(list) > 0 && len(batches) > 0 {
		plan, l := s.env().Plan(batches, job.PackChoices{Gifts: true, List: list})
		found = append(found, l...)
		if plan != nil {
			changes, _ := job.PromisesOf(plan, batches, list)
			p.Plan, p.Promised = plan, len(changes) == 0
		}
	}
	p.Findings = findingRows(found)
	return s.show(w, r, "gifts.html", s.view("Gift list", "pack", p))
}

// dealt reads a list, and the batches its jars come from; unread is what may
// hold jars too.
func (s *site) dealt(name string, text []byte) (batches []*job.Batch, list []job.Entry, found, unread diag.List) {
	all, unread := s.recall()
	list, found = job.GiftList(job.Doc{Name: name, Data: text})
	if found.HasErrors() {
		list = nil
	}
	return all.Batches, list, found, unread
}

// giftsDo keeps a list in the folder, or writes its promises into the ledger.
func (s *site) giftsDo(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return err
	}
	name := strings.TrimSpace(r.PostFormValue("list"))
	if r.PostFormValue("do") == "promise" {
		return s.promise(w, r, name)
	}
	if !strings.EqualFold(filepath.Ext(name), ".csv") {
		name += ".csv"
	}
	text := []byte(strings.ReplaceAll(r.PostFormValue("text"), "\r\n", "\n"))
	if len(strings.TrimSpace(string(text))) == 0 {
		return badRequest("the list is empty: write or choose one")
	}
	was, err := s.folder.list(name)
	if _, err = s.folder.put(name, r.PostFormValue("mark"), was, err, text, false); errors.Is(err, errConflict) {
		return &problem{http.StatusConflict, "there is another " + name + " in the folder by now", "open it from the packing page, or take another name"}
	}
	if err != nil {
		return err
	}
	return seeOther(w, "./gifts?list="+url.QueryEscape(name))
}

// promise writes what a list promises into the ledger, in the place of what it
// promised before.
func (s *site) promise(w http.ResponseWriter, r *http.Request, name string) error {
	found, err := s.note(func() ([]job.Change, diag.List, error) {
		text, err := s.folder.list(name)
		if err != nil {
			return nil, nil, err
		}
		batches, list, found, unread := s.dealt(name, text)
		if found = append(found, unread...); found.HasErrors() {
			return nil, found, nil
		}
		changes, _, l := s.env().Promises(batches, list)
		return changes, append(found, l...), nil
	})
	if err != nil {
		return err
	}
	to := "./gifts?list=" + url.QueryEscape(name)
	if found.HasErrors() {
		return s.showFaults(w, r, found, to)
	}
	return seeOther(w, to)
}

// giftsFile is the list's packing list, or its tags.
func (s *site) giftsFile(w http.ResponseWriter, r *http.Request) error {
	file := r.PathValue("file")
	k, ok := listKinds[file]
	if tags := file == "tags.pdf"; !tags && !ok || k.format == "notice" {
		return errNotFound
	}
	name := r.URL.Query().Get("list")
	text, err := s.folder.list(name)
	if err != nil {
		return err
	}
	batches, list, found, _ := s.dealt(name, text)
	if found.HasErrors() || len(batches) == 0 {
		return &problem{Status: http.StatusNotFound, What: firstError(found)}
	}
	if ok {
		f, l, err := s.env().PackFile(batches, job.PackChoices{Gifts: true, List: list, Format: k.format})
		return s.sendList(w, f, k.kind, l, err)
	}
	c := s.choices()
	c.Pieces, c.List = []label.Piece{label.Tag}, list
	var in []job.Input
	for _, b := range batches {
		in = append(in, b.Input)
	}
	files, l, err := s.env().LabelFiles(in, c, "pdf")
	if err != nil || len(files) == 0 {
		return firstFault(err, &problem{Status: http.StatusNotFound, What: firstError(l)})
	}
	return sendFile(w, strings.TrimSuffix(name, filepath.Ext(name))+"-tags.pdf", pdfType, files[0].Data)
}

// seeOther leads on after something was done; http.Redirect would make the
// address absolute, which is wrong below another one.
func seeOther(w http.ResponseWriter, to string) error {
	w.Header().Set("Location", to)
	w.WriteHeader(http.StatusSeeOther)
	return nil
}
