package job

import (
	"fmt"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// defaultDesign is used when neither the files nor the maker choose one.
const defaultDesign = "orchard"

// Printed is one print run: labels of one or more pieces on one kind of sheet.
type Printed struct {
	Piece  label.Piece
	Sheet  *sheet.Sheet
	Doc    *page.Doc
	Labels int
	Used   int // cells gone on the last sheet
	Cells  int // cells of one sheet
}

// stack is the labels of one piece for one kind of sheet.
type stack struct {
	piece  label.Piece
	sheet  *sheet.Sheet
	labels []sheet.Label
}

// Labels composes the pieces asked for and puts them on sheets. Findings tell
// what does not fit and what would take it; with an error nothing is returned.
func (e *Env) Labels(b *Batch, c Choices) ([]Printed, diag.List) {
	found := e.allot([]*Batch{b}, &c)
	stacks, l := e.compose(b, c)
	found = append(found, l...)
	found = append(found, b.unfilled(b.pieces(c), c)...)
	if found.HasErrors() {
		return nil, found
	}
	runs, l := e.impose(stacks, b, c)
	return runs, append(found, b.locate(l)...)
}

// compose sets all labels of a batch, one stack a piece and sheet.
func (e *Env) compose(b *Batch, c Choices) (out []stack, found diag.List) {
	for _, p := range b.pieces(c) {
		s, l := e.composePiece(b, p, c)
		out = append(out, s...)
		found = append(found, l...)
	}
	return out, b.locate(found)
}

// gather lays stacks of the same piece and sheet together, so that batches
// printed in one go share sheets.
func gather(in []stack) (out []stack) {
	at := map[string]int{}
	for _, s := range in {
		key := string(s.piece) + " " + s.sheet.ID
		if i, ok := at[key]; ok {
			out[i].labels = append(out[i].labels, s.labels...)
			continue
		}
		at[key] = len(out)
		out = append(out, s)
	}
	return out
}

// impose puts stacks on paper. The batch gives the documents their name and
// the printer its correction.
func (e *Env) impose(stacks []stack, b *Batch, c Choices) (out []Printed, found diag.List) {
	for _, s := range gather(stacks) {
		run, l := sheet.Fill(s.labels, s.sheet, e.printOptions(b, s.sheet, c))
		found = append(found, l...)
		if run.Doc == nil {
			continue
		}
		b.describe(run.Doc, string(s.piece), c)
		out = append(out, Printed{s.piece, s.sheet, run.Doc, len(s.labels), run.Used, run.Cells})
	}
	if found.HasErrors() {
		return nil, found
	}
	return out, found
}

// pieces says which labels to print: those chosen, else the batch file's,
// else a wrap-around that carries everything.
func (b *Batch) pieces(c Choices) []label.Piece {
	switch {
	case len(c.Pieces) > 0:
		return c.Pieces
	case b.Batch.Label.Kind != "":
		return []label.Piece{label.Piece(b.Batch.Label.Kind)}
	}
	return []label.Piece{label.Wrap}
}

// composePiece sets one piece for every jar size.
func (e *Env) composePiece(b *Batch, p label.Piece, c Choices) (out []stack, found diag.List) {
	for i, content := range b.Contents {
		need := b.needs(p, i, c)
		if len(need) == 0 || content == nil {
			continue
		}
		s, cell, l := e.stock(b, content, p, c)
		found = append(found, l...)
		if s == nil {
			continue
		}
		labels, l := e.draw(b, content, p, cell, need, c)
		found = append(found, l...)
		if len(labels) > 0 {
			out = append(out, stack{p, s, labels})
		}
	}
	return out, found
}

// printOptions adds the printer's measured correction and the part-used sheet.
func (e *Env) printOptions(b *Batch, s *sheet.Sheet, c Choices) sheet.Options {
	pr := b.Kitchen.Printer
	o := sheet.Options{Skip: c.Skip, CutMarks: c.CutMarks || s.Cut,
		OffsetX: pr.OffsetX, OffsetY: pr.OffsetY, ScaleX: pr.ScaleX, ScaleY: pr.ScaleY}
	if o.Skip == 0 {
		o.Skip = b.Kitchen.Supplies.PartSheets[s.ID]
	}
	return o
}

// describe gives a document its title, maker, language and date.
func (b *Batch) describe(d *page.Doc, what string, c Choices) {
	d.Title = fmt.Sprintf("%s, %s, lot %s", b.Batch.Name, what, b.Cooked.Lot)
	d.Author = b.Kitchen.Name
	d.Lang = "en"
	if len(b.Contents) > 0 && b.Contents[0] != nil && b.Contents[0].Lang != "" {
		d.Lang = b.Contents[0].Lang
	}
	d.Created = b.created(c)
}

// draw composes the labels of one piece and jar size: one frame where all are
// alike, one each where names differ, with numbers laid over.
func (e *Env) draw(b *Batch, content *label.Content, p label.Piece, cell compose.Cell, need []pack.Tag, c Choices) ([]sheet.Label, diag.List) {
	if p == label.Tag && named(need) {
		return e.drawTags(b, content, cell, need, c)
	}
	d, l := e.design(b, "", c)
	if d == nil {
		return nil, l
	}
	o := compose.Options{InkSaver: b.inkSaver(c), Alone: b.frontAlone(c), Codes: &b.codes, Drawings: &b.drawings}
	if b.serials(c) {
		o.Reserve = []label.Kind{label.Serial}
	}
	content = withSerial(content, len(need), b.serials(c))
	r, content, found := e.fit(b, content, d, p, cell, o)
	found = append(l, found...)
	if r.Frame == nil || found.HasErrors() {
		return nil, found
	}
	found = append(found, inspect.Frame(r.Frame, content, e.Faces, inspect.Default())...)
	out := make([]sheet.Label, len(need))
	for i := range out {
		out[i] = sheet.Label{Frame: r.Frame}
		if b.serials(c) {
			out[i].Overlay = e.number(r.Frame, i+1, len(need))
		}
	}
	return out, found
}

// number sets a jar's number in the slot kept for it. The slot was measured
// for the widest number, so it always fits.
func (e *Env) number(f *page.Frame, i, n int) []page.Item {
	for _, slot := range f.Slots {
		if slot.Kind == string(label.Serial) {
			items, _ := compose.Overlay(slot, serialText(i, n), e.Faces)
			return items
		}
	}
	return nil
}

// design picks a design; a name that is unknown is a finding.
func (e *Env) design(b *Batch, wanted string, c Choices) (*design.Design, diag.List) {
	var l diag.List
	id, path := firstNonEmpty(c.Design, wanted, b.Batch.Label.Design, defaultDesign), "label.design"
	if c.Design != "" {
		path = ""
	}
	d, ok := e.Designs.Get(id)
	if ok {
		return d, nil
	}
	var names []string
	for _, d := range e.Designs.List() {
		names = append(names, d.ID)
	}
	b.unknown(&l, "unknown-design", id, path, names)
	return nil, l
}

// unknown reports a design or sheet nobody knows, with the nearest name.
func (b *Batch) unknown(l *diag.List, code, id, path string, names []string) {
	what := strings.TrimPrefix(code, "unknown-")
	hint := "jarmark " + what + "s lists them"
	if near, ok := diag.DidYouMean(id, names); ok {
		hint = "did you mean " + near + "? " + hint
	}
	file := b.Input.Batch.Name
	if path == "" {
		file = diag.Command
	}
	l.Errorf(code, file, path, "no %s %q", what, id).Hinted(hint)
}

func firstNonEmpty(s ...string) string {
	for _, v := range s {
		if v != "" {
			return v
		}
	}
	return ""
}
