package press

import (
	"bytes"
	"cmp"
	"fmt"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/png"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/draw/svg"
	"jarmark/internal/kit/diag"
)

// File is one finished output; Name is relative with forward slashes.
type File struct {
	Name string
	Data []byte
}

// DefaultDPI is fine enough to judge type on a screen and to scan a code.
const DefaultDPI = 200

// MostPages is where a long run goes on in another file, so that a printer, its
// spooler and a reader of PDF take it (common practice, no source).
const MostPages = 400

// Files turns a document into files of one format: one PDF for some hundred
// pages, or one SVG or PNG a page, the latter at a resolution in dots per inch
// (0: DefaultDPI).
func (p *Press) Files(d *page.Doc, name, format string, dpi float64) ([]File, error) {
	switch format {
	case "", "pdf":
		return p.pdfs(d, name, MostPages)
	case "svg", "png":
	default:
		return nil, fmt.Errorf("no format %q: pdf, svg or png", format)
	}
	var out []File
	for i := range d.Pages {
		var data []byte
		var err error
		if format == "svg" {
			data, err = p.SVG(d, i)
		} else {
			data, err = p.PNG(d, i, cmp.Or(dpi, DefaultDPI))
		}
		if err != nil {
			return nil, err
		}
		out = append(out, File{pageName(name, i, len(d.Pages), format), data})
	}
	return out, nil
}

// pdfs writes a document as PDF files of at most so many pages each.
func (p *Press) pdfs(d *page.Doc, name string, most int) (out []File, err error) {
	n := (len(d.Pages) + most - 1) / most
	for i := range n {
		part := *d
		part.Pages = d.Pages[i*len(d.Pages)/n : (i+1)*len(d.Pages)/n]
		data, err := p.PDF(&part)
		if err != nil {
			return nil, err
		}
		out = append(out, File{pageName(name, i, n, "pdf"), data})
	}
	return out, nil
}

func pageName(name string, i, n int, format string) string {
	if n == 1 {
		return name + "." + format
	}
	return fmt.Sprintf("%s-%0*d.%s", name, len(fmt.Sprint(n)), i+1, strings.ToLower(format))
}

// Merge puts documents of several runs into one, page after page.
func Merge(runs []Run) *page.Doc {
	if len(runs) == 0 {
		return nil
	}
	out := *runs[0].Doc
	out.Pages = nil
	for _, r := range runs {
		out.Pages = append(out.Pages, r.Doc.Pages...)
	}
	return &out
}

// PDF renders a document.
func (p *Press) PDF(d *page.Doc) ([]byte, error) {
	var buf bytes.Buffer
	err := pdf.Write(&buf, d, p.Faces)
	return buf.Bytes(), err
}

// SVG renders one page of a document.
func (p *Press) SVG(d *page.Doc, i int) ([]byte, error) {
	var buf bytes.Buffer
	err := svg.Page(&buf, d, i, p.Faces)
	return buf.Bytes(), err
}

// FrameSVG renders one label alone, for previews.
func (p *Press) FrameSVG(f *page.Frame, overlay []page.Item) ([]byte, error) {
	var buf bytes.Buffer
	err := svg.Frame(&buf, f, overlay, p.Faces)
	return buf.Bytes(), err
}

// PNG renders one page of a document at a resolution in dots per inch.
func (p *Press) PNG(d *page.Doc, i int, dpi float64) ([]byte, error) {
	img, err := png.Page(d, i, p.Faces, dpi)
	if err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	err = png.Encode(&buf, img, dpi)
	return buf.Bytes(), err
}

// Describe gives a document its title, maker, language and date.
func (o *Order) Describe(d *page.Doc, what string) {
	d.Title = fmt.Sprintf("%s, %s, lot %s", o.Name, what, o.Lot)
	d.Author = o.Maker
	d.Lang = "en"
	for _, j := range o.Jars {
		if j.Content != nil && j.Content.Lang != "" {
			d.Lang = j.Content.Lang
			break
		}
	}
	d.Created = o.Created
}

// sheetOf finds the sheet of an id of the command line.
func (p *Press) sheetOf(id string) (s *sheet.Sheet, l diag.List) {
	s, ok := p.Sheets.Get(id)
	if !ok {
		l.Errorf("unknown-sheet", diag.Command, "", "no sheet %q", id).Hinted("jarmark sheets lists them")
	}
	return s, l
}

// Align makes the printer alignment page of a sheet as PDF.
func (p *Press) Align(id string) (File, diag.List, error) {
	s, l := p.sheetOf(id)
	if l.HasErrors() {
		return File{}, l, nil
	}
	doc := sheet.Align(s, p.Faces)
	doc.Title, doc.Lang = "printer alignment, "+s.ID, "en"
	data, err := p.PDF(doc)
	return File{Name: "align-" + id + ".pdf", Data: data}, l, err
}

// Tape makes the page of a paper tape that measures jars, on the paper of a sheet,
// as PDF.
func (p *Press) Tape(id string) (File, diag.List, error) {
	s, l := p.sheetOf(id)
	if l.HasErrors() {
		return File{}, l, nil
	}
	doc := sheet.Tape(s, p.Faces)
	if len(doc.Pages) == 0 {
		l.Errorf("tape-paper", diag.Command, "", "the paper of %s is too small for a tape", s.ID).Hinted("letter-plain and a4-plain are large enough")
		return File{}, l, nil
	}
	data, err := p.PDF(doc)
	return File{Name: "jar-tape.pdf", Data: data}, l, err
}
