package job

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/press"
	"jarmark/internal/kit/diag"
)

// Printed is one print run.
type Printed = press.Run

// Profile is how the inks of a print shop look.
type Profile = page.Profile

// ShopProfile reads the ICC profile of a print shop.
func ShopProfile(file string, data []byte) (*Profile, diag.List) { return press.Profile(file, data) }

// DefaultDPI is the resolution of PNG where none is asked for.
const DefaultDPI = press.DefaultDPI

// PrintRun is the labels of one go: the files to print, and what is left of
// the last sheet of each kind.
type PrintRun struct {
	Files   []File
	Printed []Printed
}

// LabelFiles makes the labels of all batches in one format: one PDF, or one
// SVG or PNG a page. With an error among the findings there are no files.
func (e *Env) LabelFiles(in []Input, c Choices, format string) ([]File, diag.List, error) {
	c.Whole = true
	run, found, err := e.Print(in, c, format)
	return run.Files, found, err
}

// Print is LabelFiles that also tells what is left of the sheets, and parts a
// long run into PDF files of some hundred pages.
func (e *Env) Print(in []Input, c Choices, format string) (PrintRun, diag.List, error) {
	runs, found := e.runs(in, c)
	if len(runs) == 0 || found.HasErrors() {
		return PrintRun{}, found, nil
	}
	doc := press.Merge(runs)
	doc.CutLines, doc.Profile = c.CutLines, c.Profile
	if c.Whole && (format == "pdf" || format == "") {
		data, err := e.PDF(doc)
		return PrintRun{[]File{{Name: "labels.pdf", Data: data}}, runs}, found, err
	}
	files, err := e.Files(doc, "labels", format, c.DPI)
	return PrintRun{files, runs}, found, err
}

func (e *Env) runs(in []Input, c Choices) ([]Printed, diag.List) {
	batches, found := e.LoadAll(in, c)
	for _, b := range batches {
		found = append(found, b.Findings...)
	}
	ready := printable(batches)
	found = append(found, e.allot(ready, &c)...)
	found = append(found, notThere(ready, c)...)
	var sheaves []*sheaf // one a kitchen
	for _, b := range ready {
		o := b.orderOf(c)
		home := e.of(b.Input)
		s, l := home.Press.Set(o)
		found = append(append(found, b.locate(l)...), b.unfilled(o.Pieces, c)...)
		if len(s) > 0 {
			x := into(&sheaves, home, b, o)
			x.stacks = append(x.stacks, s...)
		}
	}
	found = append(found, e.oneFile(sheaves)...)
	if found.HasErrors() {
		return nil, found
	}
	if len(sheaves) == 0 {
		found.Errorf("no-labels", "", "", "there is no jar to label").Hinted("count sealed jars in [[fill]], or give --copies")
		return nil, found
	}
	var runs []Printed
	for _, x := range sheaves {
		r, l := x.env.Impose(x.stacks, x.order)
		runs, found = append(runs, r...), append(found, x.first.locate(l)...)
	}
	return runs, found
}

// printable leaves out batches that cannot be printed.
func printable(batches []*Batch) (out []*Batch) {
	for _, b := range batches {
		if b.OK() && b.Cooked != nil {
			out = append(out, b)
		}
	}
	return out
}
