package job

import (
	"slices"

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
func makeRecord(_ *Env, b *Batch, _ Choices) ([]File, diag.List, error) {
	html, l := record.Page(b.Cooked, b.first(), record.Options{Net: b.nets()})
	return []File{{"record/" + record.Folder(b.Cooked.Lot) + "index.html", html}}, b.locate(l), nil
}

// Site writes the public pages of all batches and their index.
func (e *Env) Site(batches []*Batch) ([]File, diag.List) {
	var files []File
	var found diag.List
	var entries []record.Entry
	var index record.IndexOptions
	for _, b := range batches {
		if b.Cooked == nil {
			continue
		}
		if !slices.ContainsFunc(b.Cooked.Jars, func(j cook.JarPlan) bool { return !planned(j) }) {
			found.Notef("plan-not-published", b.Input.Batch.Name, "", "a plan has no public page yet: no jar is filled")
			continue
		}
		html, l := record.Page(b.Cooked, b.first(), record.Options{Index: "../index.html", Net: b.nets()})
		found = append(found, b.locate(l)...)
		files = append(files, File{record.Folder(b.Cooked.Lot) + "index.html", html})
		entries = append(entries, record.EntryOf(b.Cooked, b.first()))
		index.Kitchen = b.Kitchen
		if c := b.first(); c != nil {
			index.Lang = firstNonEmpty(index.Lang, c.Lang)
		}
	}
	html, l := record.Index(entries, index)
	return append(files, File{"index.html", html}), append(found, l...)
}
