package press

import (
	"cmp"
	"fmt"

	"jarmark/internal/draw/bend"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/cores"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Run is one print run: labels of one piece on one kind of sheet, or whole sets
// of several pieces ("front + info + lid").
type Run struct {
	Piece  label.Piece
	Sets   int // jars with all of their pieces on one sheet; 0: one piece alone
	Sheet  *sheet.Sheet
	Doc    *page.Doc
	Labels int
	Used   int // cells gone on the last sheet
	Cells  int // cells of one sheet
}

// shopBleed is what print shops ask for: common practice, no source.
const shopBleed = 3 * unit.Millimetre

// Stack is the labels of one piece for one kind of sheet.
type Stack struct {
	Piece  label.Piece
	sheet  *sheet.Sheet
	labels []sheet.Label
	jars   string // whose they are: batch and jar size
}

// work is one order on the press.
type work struct {
	*Press
	o *Order
}

// Set composes all labels of an order, one stack a piece and sheet. Findings
// tell what does not fit and what would take it; they know a path, and a file
// only where it is the order's or a gift list's.
func (p *Press) Set(o *Order) (out []Stack, found diag.List) {
	w := &work{p, o}
	if o.Paired {
		found.Notef("front-and-info", o.File, "label.kind", "with every statement on it the front would be text alone: an information label is printed for the back").
			Hinted("--kind front prints the front alone")
	}
	stacks, l := make([]*Stack, len(o.Pieces)*len(o.Jars)), make([]diag.List, len(o.Pieces)*len(o.Jars))
	cores.Each(len(stacks), func(k int) {
		piece, jar := o.Pieces[k/len(o.Jars)], k%len(o.Jars)
		stacks[k], l[k] = w.piece(piece, jar, o.needs(piece, jar))
	})
	for k, s := range stacks {
		found = append(found, l[k]...)
		if s != nil {
			s.jars = fmt.Sprintf("%s %d", o.File, k%len(o.Jars))
			out = append(out, *s)
		}
	}
	return out, found
}

// First sets the first label of a piece for one jar size as it would be
// printed, also where there is no jar yet.
func (p *Press) First(o *Order, piece label.Piece, jar int) (page.Placement, bool, diag.List) {
	need := o.needs(piece, jar)
	if len(need) == 0 {
		need = make([]Tag, 1)
	}
	s, found := (&work{p, o}).piece(piece, jar, need)
	if s == nil {
		return page.Placement{}, false, found
	}
	return page.Placement{Frame: s.labels[0].Frame, Overlay: s.labels[0].Overlay}, true, found
}

// piece sets one piece for one jar size; nil when there is nothing to print.
func (w *work) piece(p label.Piece, jar int, need []Tag) (*Stack, diag.List) {
	content := w.o.Jars[jar].Content
	if len(need) == 0 || content == nil {
		return nil, nil
	}
	x, l := w.setting(content, p, need)
	s, cell, first, found := w.stock(w.o.Jars[jar], x)
	if s == nil {
		return nil, found
	}
	var labels []sheet.Label
	if p == label.Tag && named(need) {
		labels, l = w.drawTags(content, cell, need)
	} else {
		var more diag.List
		labels, more = w.draw(x, cell, first, need)
		l = append(l, more...)
	}
	found = append(found, l...)
	if len(labels) == 0 {
		return nil, found
	}
	if !w.o.Trimmed {
		found = append(found, touching(s, labels[0].Frame)...)
	}
	return &Stack{Piece: p, sheet: s, labels: w.bent(labels, cell)}, found
}

// bent lays labels for a tapered jar round its cone.
func (w *work) bent(labels []sheet.Label, cell compose.Cell) []sheet.Label {
	if cell.Cone == (page.Cone{}) {
		return labels
	}
	done := map[*page.Frame]*page.Frame{}
	for i, l := range labels {
		if done[l.Frame] == nil {
			done[l.Frame] = bend.Frame(l.Frame, cell.Cone, w.Faces)
		}
		labels[i] = sheet.Label{Frame: done[l.Frame], Overlay: bend.Items(l.Overlay, l.Frame.W, l.Frame.H, cell.Cone, w.Faces)}
	}
	return labels
}

// setting is what the labels of one piece and jar size are composed from; its
// design is nil where nobody knows the one asked for.
func (w *work) setting(content *label.Content, p label.Piece, need []Tag) (*setting, diag.List) {
	d, l := w.design("")
	x := &setting{content, d, p, w.options()}
	if w.o.Serials && !(p == label.Tag && named(need)) {
		x.opt.Reserve = []label.Kind{label.Serial}
		x.content = withSerial(content, len(need))
	}
	return x, l
}

// gather lays stacks of the same piece and sheet together, so that batches
// printed in one go share sheets.
func gather(in []Stack) (out []Stack) {
	at := map[string]int{}
	for _, s := range in {
		key := string(s.Piece) + " " + s.sheet.ID
		if i, ok := at[key]; ok {
			out[i].labels = append(out[i].labels, s.labels...)
			continue
		}
		at[key] = len(out)
		out = append(out, s)
	}
	return out
}

// Impose puts stacks on paper. The order gives the documents their name and
// the printer its correction.
func (p *Press) Impose(stacks []Stack, o *Order) (out []Run, found diag.List) {
	stacks, sets, found := p.inSets(stacks, o)
	out = sets
	for _, s := range gather(stacks) {
		run, l := sheet.Fill(s.labels, s.sheet, o.printOptions(s.sheet))
		found = append(found, o.asked(l)...)
		if run.Doc == nil {
			continue
		}
		o.Describe(run.Doc, string(s.Piece))
		out = append(out, Run{Piece: s.Piece, Sheet: s.sheet, Doc: run.Doc, Labels: len(s.labels), Used: run.Used, Cells: run.Cells})
	}
	if found.HasErrors() {
		return nil, found
	}
	return out, found
}

// asked points what is wrong with a --skip at the command line.
func (o *Order) asked(l diag.List) diag.List {
	for i := range l {
		if o.Skip != 0 && l[i].Path == sheet.SkipPath {
			l[i].File, l[i].Path = diag.Command, ""
		}
	}
	return l
}

// printOptions adds the printer's measured correction and the part-used sheet.
func (o *Order) printOptions(s *sheet.Sheet) sheet.Options {
	by := o.Correction
	opt := sheet.Options{Skip: o.Skip, CutMarks: o.CutMarks || s.Cut, Trimmed: o.Trimmed,
		OffsetX: by.OffsetX, OffsetY: by.OffsetY, ScaleX: by.ScaleX, ScaleY: by.ScaleY}
	if opt.Skip == 0 {
		opt.Skip = o.PartSheets[s.ID]
	}
	return opt
}

// draw composes labels that are alike, with numbers laid over.
func (w *work) draw(x *setting, cell compose.Cell, first *composed, need []Tag) ([]sheet.Label, diag.List) {
	if x.design == nil {
		return nil, nil
	}
	r := w.fit(*x, cell, first)
	if r.Frame == nil || r.found.HasErrors() {
		return nil, r.found
	}
	var out []sheet.Label
	for i := range need {
		one := sheet.Label{Frame: r.Frame}
		if w.o.Serials {
			one.Overlay = w.number(r.Frame, i+1, len(need))
		}
		if w.o.wants(i + 1) {
			out = append(out, one)
		}
	}
	return out, append(r.found, inspect.Frame(r.Frame, r.content, w.Faces, inspect.Default())...)
}

// number sets a jar's number in the slot kept for it. The slot was measured
// for the widest number, so it always fits.
func (w *work) number(f *page.Frame, i, n int) []page.Item {
	for _, slot := range f.Slots {
		if slot.Kind == string(label.Serial) {
			items, _ := compose.Overlay(slot, serialText(i, n), w.Faces)
			return items
		}
	}
	return nil
}

// design picks a design; a name that is unknown is a finding.
func (w *work) design(wanted string) (*design.Design, diag.List) {
	return w.Design(w.o, wanted)
}

// Design picks a design: the one chosen for this run, else the one wanted,
// else the batch file's, else the default. A name that is unknown is a finding.
func (p *Press) Design(o *Order, wanted string) (*design.Design, diag.List) {
	var l diag.List
	id, path := cmp.Or(o.Choice.Design, wanted, o.Choice.OwnDesign, DefaultDesign), "label.design"
	if o.Choice.Design != "" {
		path = ""
	}
	d, ok := p.Designs.Get(id)
	if ok {
		return d.Set(o.Type), nil
	}
	l = append(l, p.Designs.Faults()...) // it may be one of ours that cannot be read
	o.unknown(&l, "unknown-design", id, path, p.Designs.IDs())
	return nil, l
}

// unknown reports a design or sheet nobody knows, with the nearest name.
func (o *Order) unknown(l *diag.List, code, id, path string, names []string) {
	what := code[len("unknown-"):]
	hint := "jarmark " + what + "s lists them"
	file := o.File
	if path == "" {
		file = diag.Command
	}
	d := l.Errorf(code, file, path, "no %s %q", what, id).Hinted(hint)
	if near, ok := diag.DidYouMean(id, names); ok {
		d.Meant(near).Hint += " " + hint
	}
}
