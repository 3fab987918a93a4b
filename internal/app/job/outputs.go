package job

import (
	"fmt"
	"sync"

	"jarmark/internal/draw/press"
	"jarmark/internal/kit/cores"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// File is one finished output; Name is relative with forward slashes.
type File = press.File

// output is one row of the table of what `make` writes. To add an output: one
// package that makes it, and one row here; command line and local page follow.
type output struct {
	name string // as progress shows it
	make func(*Env, *Batch, Choices) ([]File, diag.List, error)
}

func outputs() []output {
	return []output{
		{"labels", makeLabels},
		{"gift tags", makeTags},
		{"market cards", makeCards},
		{"packing list", makePacking},
		{"public record", makeRecord},
		{"facts", makeFacts},
	}
}

// Make runs every output of one batch, on all cores. With an error among the
// findings there are no files.
func (e *Env) Make(b *Batch, c Choices) ([]File, diag.List, error) {
	if !b.OK() || b.Cooked == nil {
		return nil, nil, nil
	}
	var files []File
	var found diag.List
	for _, m := range e.makeOutputs(b, c) {
		if m.err != nil {
			return nil, found, m.err
		}
		files = append(files, m.files...)
		found = append(found, m.found...)
	}
	if found.HasErrors() {
		return nil, found, nil
	}
	return files, found, nil
}

type made struct {
	files []File
	found diag.List
	err   error
}

// makeOutputs makes all rows of the table on all cores, in the table's order.
func (e *Env) makeOutputs(b *Batch, c Choices) []made {
	table := outputs()
	out := make([]made, len(table))
	var mu sync.Mutex
	done := 0
	cores.Each(len(table), func(i int) {
		m := &out[i]
		m.files, m.found, m.err = table[i].make(e, b, c)
		if m.err != nil {
			m.err = fmt.Errorf("%s: %w", table[i].name, m.err)
		}
		if c.Progress != nil {
			mu.Lock()
			defer mu.Unlock()
			done++
			c.Progress(done, len(table))
		}
	})
	return out
}

// makeLabels prints the jars' labels.
func makeLabels(e *Env, b *Batch, c Choices) ([]File, diag.List, error) {
	return e.printed(b, c, "labels")
}

// makeTags prints one hang tag a gift jar, when there are gifts.
func makeTags(e *Env, b *Batch, c Choices) ([]File, diag.List, error) {
	if len(b.Notes.Gifts) == 0 && len(c.List) == 0 {
		return nil, nil, nil
	}
	c.Pieces, c.Sheet, c.Size, c.Skip, c.Copies, c.Serials = []label.Piece{label.Tag}, "", "", 0, 0, false
	return e.printed(b, c, "gift-tags")
}

// makeCards prints the price card and allergen card, when there is a market and
// the jars are not given away, and the sign where the place has words for one.
func makeCards(e *Env, b *Batch, c Choices) ([]File, diag.List, error) {
	if len(b.Notes.Markets) == 0 || c.Gift {
		return nil, nil, nil
	}
	c.Sheet, c.Size, c.Skip, c.Copies, c.Serials = "", "", 0, 0, false
	c.Pieces = []label.Piece{label.ShelfCard}
	files, found, err := e.printed(b, c, "price-card")
	if err != nil {
		return nil, found, err
	}
	c.Pieces = []label.Piece{label.AllergCard}
	more, l, err := e.printed(b, c, "allergen-card")
	files, found = append(files, more...), append(found, l...)
	if first := b.first(); err != nil || first == nil || !has(first, label.SignWords) {
		return files, found, err
	}
	c.Pieces = []label.Piece{label.Sign}
	more, l, err = e.printed(b, c, "stall-sign")
	return append(files, more...), append(found, l...), err
}

func has(c *label.Content, k label.Kind) bool {
	_, ok := c.Find(k)
	return ok
}

// printed renders the runs of the chosen pieces as PDF files. Each kind of
// sheet is a file of its own, because it is another stack in the printer.
func (e *Env) printed(b *Batch, c Choices, name string) ([]File, diag.List, error) {
	runs, found := e.Labels(b, c)
	var files []File
	for i, r := range runs {
		if c.dry {
			break
		}
		n := name
		if i > 0 {
			n = fmt.Sprintf("%s-%s", name, r.Sheet.ID)
		}
		parts, err := e.Files(r.Doc, n, "pdf", 0)
		if err != nil {
			return nil, found, err
		}
		files = append(files, parts...)
	}
	return files, found, nil
}

// makeFacts writes what `check --json` prints.
func makeFacts(_ *Env, b *Batch, c Choices) ([]File, diag.List, error) {
	if c.dry {
		return nil, nil, nil
	}
	data, err := b.Facts().JSON()
	return []File{{Name: "facts.json", Data: data}}, nil, err
}
