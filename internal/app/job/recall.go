package job

import (
	"bytes"
	"fmt"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/give/pack"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// Recall answers who has the jars of a lot, over every batch file that could
// be read; Unread are the files and folders that could not, and why.
type Recall struct {
	Batches []*Batch // those that were read and computed
	Unread  []Unread
	env     *Env
	today   unit.Date
	text    map[string][]byte // of files read and not understood
}

// Unread is a file or folder that was not read, and why.
type Unread struct{ Path, Why string }

// Recall loads batches to trace lots in. A file that cannot be understood does
// not hold up the others: it is told as unread, with its findings.
func (e *Env) Recall(in []Input, unread []Unread, c Choices) (*Recall, diag.List) {
	r := &Recall{env: e, today: c.Today, Unread: unread, text: map[string][]byte{}}
	var found diag.List
	for _, u := range unread {
		found.Errorf("unread", u.Path, "", "this could not be read: %s", u.Why).Hinted("jars of the lot may be in it too: mend it, or look into it by hand")
	}
	var batches []Input
	for _, i := range in {
		if !NoBatch(i.Batch) {
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
	return r, found.Once()
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

// batchKeys are the keys only a batch file has.
var batchKeys = []string{"made", "ingredient", "fill", "lot", "market", "cook", "process", "recipe"}

// NoBatch reports a TOML file that is plainly something else than a batch: a
// gift list, or a design or sheet in its folder. All else may be a batch.
func NoBatch(d Doc) bool {
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

// Sought is what a recall asks for: a lot, the lot on an ingredient's packet
// (Of narrows it to one ingredient), or the day of cooking.
type Sought struct{ What, Of string }

// History is where the jars of one lot went.
type History = pack.History

// Story is a history for a page: its heading, what is said of the lot, and the
// parts of the list as on paper.
type Story struct {
	Head  string
	Said  []string
	Parts []table.Part
}

// Traced is a history for a page.
func Traced(h *History) Story {
	l := h.List()
	return Story{Head: l.Head, Said: strings.Split(l.Sum, "\n"), Parts: l.Screen()}
}

// Histories is where the jars of the lots sought went, as values for a page;
// none, with a finding, when nothing that was read is meant.
func (r *Recall) Histories(s Sought) (list []*pack.History, found diag.List) {
	lots := pack.Seek(s.What, s.Of, results(r.Batches), table.WordsIn(r.language()))
	if len(lots) == 0 {
		lots = []pack.Sought{{Lot: s.What}} // told as unknown
		if s.Of != "" {
			lots[0].Lot = s.Of + " " + s.What
		}
	}
	for _, one := range lots {
		o := pack.Options{Pantry: r.env.Pantry, Unread: r.notes(one.Lot), Today: r.today}
		r.env.book(r.Batches, &o) // its findings were told in Recall
		h, l := pack.Trace(one.Lot, results(r.Batches), o)
		found = append(found, locateAll(r.Batches, l)...)
		if h != nil {
			h.Because = one.Why
			list = append(list, h)
		}
	}
	return list, found.Once()
}

func (r *Recall) language() string {
	for _, b := range r.Batches {
		return table.LanguageOf(b.Kitchen)
	}
	return ""
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

// File answers who has the jars sought: as text, as recall sheets in one PDF, or
// as the text of a notice.
func (r *Recall) File(s Sought, format string) (File, diag.List, error) {
	list, l := r.Histories(s)
	if len(list) == 0 {
		return File{}, l, nil
	}
	name := strings.ReplaceAll(strings.TrimSpace(s.What), " ", "-")
	switch format {
	case "", "text":
		return File{Name: "trace-" + name + ".txt", Data: []byte(traceText(list))}, l, nil
	case "notice":
		k := r.Batches[0].Kitchen
		reach := strings.Join(slices.DeleteFunc([]string{k.Name, k.Phone, k.Email}, func(s string) bool { return s == "" }), ", ")
		return File{Name: "notice-" + name + ".txt", Data: []byte(pack.Notice(list, reach))}, l, nil
	case "pdf":
		doc, m := r.sheets(list)
		f, err := r.env.listPDF(doc, "recall-"+name, r.Batches[0], Choices{})
		return f, append(l, m...), err
	}
	return File{}, l, fmt.Errorf("no format %q: pdf, text or notice", format)
}

func traceText(list []*pack.History) string {
	var b strings.Builder
	if len(list) > 1 {
		b.WriteString(pack.Sum(list) + "\n\n")
	}
	for i, h := range list {
		if i > 0 {
			b.WriteString("\n\n")
		}
		b.WriteString(h.Text())
	}
	return b.String()
}

// sheets lays the recall sheets of the lots one after another.
func (r *Recall) sheets(list []*pack.History) (all *page.Doc, found diag.List) {
	for _, h := range list {
		doc, l := h.RecallDoc(r.env.Faces, r.Batches[0].paper())
		found = append(found, l...)
		all = all.Followed(doc)
	}
	return all, locateAll(r.Batches, found)
}
