package job

import (
	"bytes"
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// Recall answers who has the jars of a lot, over every batch file that could
// be read; Unread are the files and folders that could not, and why.
type Recall struct {
	Batches []*Batch // those that were read and computed
	Unread  []Unread
	env     *Env
	text    map[string][]byte // of files read and not understood
}

// Unread is a file or folder that was not read, and why.
type Unread struct{ Path, Why string }

// Recall loads batches to trace lots in. A file that cannot be understood does
// not hold up the others: it is told as unread, with its findings.
func (e *Env) Recall(in []Input, unread []Unread, c Choices) (*Recall, diag.List) {
	r := &Recall{env: e, Unread: unread, text: map[string][]byte{}}
	var found diag.List
	for _, u := range unread {
		found.Errorf("unread", u.Path, "", "this could not be read: %s", u.Why).Hinted("jars of the lot may be in it too: mend it, or look into it by hand")
	}
	var batches []Input
	for _, i := range in {
		if !elsewise(i.Batch) {
			batches = append(batches, i)
		}
	}
	loaded, across := e.LoadAll(batches, c)
	found = append(found, across...)
	for _, b := range loaded {
		l := b.Findings.Against(diag.Packing)
		found = append(append(found, l...), b.Booked...)
		name := b.Input.Batch.Name
		switch {
		case b.Cooked == nil:
			r.Unread = append(r.Unread, Unread{name, first(l)})
			r.text[name] = b.Input.Batch.Data
			continue
		case b.Cooked.Lot == "":
			r.Unread = append(r.Unread, Unread{name, "it has no lot, and no date to make one of"})
		}
		r.Batches = append(r.Batches, b)
	}
	return r, once(found)
}

func first(l diag.List) string {
	if len(l) == 0 {
		return "it is no batch file"
	}
	if l[0].Pos.Line > 0 {
		return fmt.Sprintf("line %d: %s", l[0].Pos.Line, l[0].Message)
	}
	return l[0].Message
}

// once drops findings told before: those of a kitchen come with every batch.
func once(l diag.List) (out diag.List) {
	seen := map[diag.Diagnostic]bool{}
	for _, d := range l {
		if !seen[d] {
			seen[d] = true
			out = append(out, d)
		}
	}
	return out
}

// batchKeys are the keys only a batch file has.
var batchKeys = []string{"made", "ingredient", "fill", "lot", "market", "cook", "process", "recipe"}

// elsewise reports a TOML file that is plainly something else than a batch: a
// gift list, or a design or sheet in its folder. All else may be a batch.
func elsewise(d Doc) bool {
	f, l := source.Parse(d.Name, d.Data)
	if f == nil || l.HasErrors() {
		return false
	}
	for _, k := range batchKeys {
		if holds(f, k) {
			return false
		}
	}
	folder := path.Base(path.Dir(filepath.ToSlash(d.Name)))
	return holds(f, "gift") && !holds(f, "name") || folder == "designs" || folder == "sheets"
}

// History is where the jars of a lot went as a value, for a page; nil with a
// finding when no batch that was read has the lot.
func (r *Recall) History(lot string) (*pack.History, diag.List) {
	o := pack.Options{Pantry: r.env.Pantry, Unread: r.notes(lot)}
	r.env.book(r.Batches, &o) // its findings were told in Recall
	h, l := pack.Trace(lot, results(r.Batches), o)
	return h, locateAll(r.Batches, l)
}

// notes words what was not read; a text that names the lot is pointed at.
func (r *Recall) notes(lot string) (out []string) {
	low := bytes.ToLower([]byte(strings.TrimSpace(lot)))
	for _, u := range r.Unread {
		s := u.Path + ": " + u.Why
		if len(low) > 0 && bytes.Contains(bytes.ToLower(r.text[u.Path]), low) {
			s += "; its text names this lot"
		}
		out = append(out, s)
	}
	return out
}

// File answers who has the jars of a lot, as text or a recall sheet.
func (r *Recall) File(lot, format string) (File, diag.List, error) {
	h, l := r.History(lot)
	if h == nil {
		return File{}, l, nil
	}
	switch format {
	case "", "text":
		return File{Name: "trace-" + lot + ".txt", Data: []byte(h.Text())}, l, nil
	case "pdf":
		doc, m := h.RecallDoc(r.env.Faces, r.Batches[0].paper())
		f, err := r.env.listPDF(doc, "recall-"+lot, r.Batches[0], Choices{})
		return f, append(l, m...), err
	}
	return File{}, l, fmt.Errorf("no format %q: pdf or text", format)
}
