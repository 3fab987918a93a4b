package job

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"

	"jarmark/internal/give/record"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// first is the content of the first jar size; nil when there is none.
func (b *Batch) first() *label.Content {
	if len(b.Contents) == 0 {
		return nil
	}
	return b.Contents[0]
}

// nets lists the net contents of every jar size, each once.
func (b *Batch) nets() (out []string) {
	for _, c := range b.Contents {
		if n, ok := c.Find(label.Net); ok && !slices.Contains(out, n.Text()) {
			out = append(out, n.Text())
		}
	}
	return out
}

// makeRecord writes the public page of one batch.
func makeRecord(e *Env, b *Batch, _ Choices) ([]File, diag.List, error) {
	photos, found := e.photos(b)
	html, l := record.Page(b.Cooked, b.first(), record.Options{Net: b.nets(), Photos: photos})
	l = append(found, l...)
	return []File{{Name: "record/" + record.Folder(b.Cooked.Lot) + "index.html", Data: html}}, b.locate(l), nil
}

// Site is the public pages of some batches, still without their index.
type Site struct {
	Pages   []File
	Of      []*Batch // whose page each is
	entries []record.Entry
	index   record.IndexOptions
}

// LotsName is the hidden file beside the index that keeps its lines, so that a
// run for one batch leaves the other lots in the index. It holds what the index
// shows and nothing else.
const LotsName = ".jarmark-lots.json"

// Site writes the public pages of all batches.
func (e *Env) Site(batches []*Batch) (s Site, found diag.List) {
	for _, b := range batches {
		if b.Cooked == nil {
			continue
		}
		if !slices.ContainsFunc(b.Cooked.Jars, func(j cook.JarPlan) bool { return !j.Planned() }) {
			found.Notef("plan-not-published", b.Input.Batch.Name, "", "a plan has no public page yet: no jar is filled")
			continue
		}
		photos, unread := e.of(b.Input).photos(b)
		html, l := record.Page(b.Cooked, b.first(), record.Options{Index: "../index.html", Net: b.nets(), Photos: photos})
		l = append(unread, l...)
		found = append(found, b.locate(l)...)
		s.Pages, s.Of = append(s.Pages, File{Name: record.Folder(b.Cooked.Lot) + "index.html", Data: html}), append(s.Of, b)
		s.entries = append(s.entries, record.EntryOf(b.Cooked, b.first()))
		s.index.Kitchen = b.Kitchen
		if c := b.first(); c != nil {
			s.index.Lang = cmp.Or(s.index.Lang, c.Lang)
		}
	}
	_, l := record.Index(s.entries, s.index)
	return s, append(found, l...)
}

// Index writes the index and its lines. earlier are the lines of the run
// before (LotsName), may be nil; they stay as long as their page is there.
func (s Site) Index(earlier []byte, there func(page string) bool) []File {
	var before []record.Entry
	_ = json.Unmarshal(earlier, &before) // lines we cannot read are written anew by the next full run
	all := slices.Clone(s.entries)
	for _, e := range before {
		same := func(o record.Entry) bool { return strings.EqualFold(o.File, e.File) }
		if !slices.ContainsFunc(all, same) && there(e.File+"index.html") {
			all = append(all, e)
		}
	}
	html, _ := record.Index(all, s.index)        // told by Site
	lots, _ := json.MarshalIndent(all, "", "  ") // plain values: cannot fail
	return []File{{Name: "index.html", Data: html}, {Name: LotsName, Data: append(lots, '\n')}}
}
