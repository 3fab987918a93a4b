package job

import (
	"fmt"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
)

// PrintRun is the labels of one go: the files to print, and what is left of
// the last sheet of each kind.
type PrintRun struct {
	Files   []File
	Printed []Printed
}

// LabelFiles makes the labels of all batches in one format: one PDF, or one
// SVG or PNG a page. With an error among the findings there are no files.
func (e *Env) LabelFiles(in []Input, c Choices, format string) ([]File, diag.List, error) {
	run, found, err := e.Print(in, c, format)
	return run.Files, found, err
}

// Print is LabelFiles that also tells what is left of the sheets.
func (e *Env) Print(in []Input, c Choices, format string) (PrintRun, diag.List, error) {
	runs, found := e.runs(in, c)
	if len(runs) == 0 || found.HasErrors() {
		return PrintRun{}, found, nil
	}
	files, err := e.render(merge(runs), "labels", format)
	return PrintRun{files, runs}, found, err
}

func (e *Env) runs(in []Input, c Choices) ([]Printed, diag.List) {
	batches, found := e.LoadAll(in, c)
	for _, b := range batches {
		found = append(found, b.Findings...)
	}
	ready := printable(batches)
	found = append(found, e.allot(ready, &c)...)
	var stacks []stack
	var first *Batch
	for _, b := range ready {
		s, l := e.compose(b, c)
		found = append(append(found, l...), b.unfilled(b.pieces(c), c)...)
		stacks = append(stacks, s...)
		if first == nil && len(s) > 0 {
			first = b
		}
	}
	if found.HasErrors() {
		return nil, found
	}
	if first == nil {
		found.Errorf("no-labels", "", "", "there is no jar to label").Hinted("count sealed jars in [[fill]], or give --copies")
		return nil, found
	}
	runs, l := e.impose(stacks, first, c)
	return runs, append(found, first.locate(l)...)
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

// previewDPI is fine enough to judge type on a screen and to scan a code.
const previewDPI = 200

// render turns a document into files of one format.
func (e *Env) render(d *page.Doc, name, format string) ([]File, error) {
	switch format {
	case "", "pdf":
		data, err := e.PDF(d)
		return []File{{name + ".pdf", data}}, err
	case "svg", "png":
	default:
		return nil, fmt.Errorf("no format %q: pdf, svg or png", format)
	}
	var out []File
	for i := range d.Pages {
		var data []byte
		var err error
		if format == "svg" {
			data, err = e.SVG(d, i)
		} else {
			data, err = e.PNG(d, i, previewDPI)
		}
		if err != nil {
			return nil, err
		}
		out = append(out, File{pageName(name, i, len(d.Pages), format), data})
	}
	return out, nil
}

func pageName(name string, i, n int, format string) string {
	if n == 1 {
		return name + "." + format
	}
	return fmt.Sprintf("%s-%0*d.%s", name, len(fmt.Sprint(n)), i+1, strings.ToLower(format))
}
