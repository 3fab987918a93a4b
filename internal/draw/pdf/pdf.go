// Package pdf writes a page.Doc as PDF. It draws what it is given, exactly
// where it is told, and decides nothing: no margins, no page breaks, no
// measuring. It is the only importer of fpdf, which contributes the file
// structure; the drawing operators are written here, because fpdf rounds to
// 0.01 pt and formats every call with fmt, and the fonts, because fpdf spends
// three quarters of a run on them (see embed).
//
// How it stays fast and small:
//   - A frame that is placed more than once becomes one form XObject and is
//     stamped (ISO 32000-1, 8.10).
//   - fpdf holds all page content until the end of the file. Each page is
//     therefore a form that writes its operators only while the file is being
//     written (see form), so that the content of one page at a time is held.
//     Pages alike share one.
//   - Compressors are used again, from form to form and file to file.
package pdf

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"time"

	"github.com/go-pdf/fpdf"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
)

// Write writes the document as PDF 1.6 with the used part of each typeface
// embedded. The same document gives the same bytes; dates come from d.Created
// alone. The catalog asks the print dialog for true size
// (/PrintScaling /None, ISO 32000-1, 12.2).
//
// It fails, before it writes anything, on what cannot be drawn truly: a
// letter the typeface lacks, a letter above U+FFFF, a broken path, a page of
// impossible size. A failing w gives w's error.
func Write(w io.Writer, d *page.Doc, faces *face.Set) error {
	t := tradeOf(d)
	raw, fonts, err := build(d, faces, t)
	if err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if err := finish(w, raw, fonts, t); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// build makes the file as fpdf writes it. fpdf panics where it meets what it
// does not expect; survey rules the known causes out, recover is the net.
func build(d *page.Doc, faces *face.Set, t *trade) (raw []byte, fonts []*typeface, err error) {
	defer func() {
		if r := recover(); r != nil {
			raw, fonts, err = nil, nil, fmt.Errorf("internal fault: %v", r)
		}
	}()
	s, err := inspect(d, faces)
	if err != nil {
		return nil, nil, err
	}
	f := open(d)
	named, err := embed(f, s, faces)
	if err != nil {
		return nil, nil, err
	}
	pictures, err := illustrate(f, s.images)
	if err != nil {
		return nil, nil, err
	}
	t.tree = treeOf(d, s)
	p := newPress(d, s, named, pictures)
	p.layered = t.layers
	sheets := p.sheets()
	for i, pg := range d.Pages {
		f.AddPageFormat("P", sizeOf(pg.W, pg.H))
		if t.tree != nil {
			f.RawWriteBuf(p.words(t.tree, i))
		} else {
			f.UseTemplate(sheets[i])
		}
		if t := pg.Trim; t.W > 0 { // ISO 32000-1, 14.11.2; y up
			f.SetPageBox("trim", t.X.MM(), (pg.H - t.Y - t.H).MM(), t.W.MM(), t.H.MM())
			f.SetPageBox("bleed", 0, 0, pg.W.MM(), pg.H.MM())
		}
	}
	var out capture
	if err := f.Output(&out); err != nil {
		return nil, nil, err
	}
	if p.err != nil {
		return nil, nil, p.err
	}
	for _, name := range slices.Sorted(maps.Keys(named)) {
		fonts = append(fonts, named[name])
	}
	return out.b, fonts, nil
}

// open starts a file of the document's facts and no defaults of fpdf's own.
func open(d *page.Doc) *fpdf.Fpdf {
	first := d.Pages[0]
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: sizeOf(first.W, first.H)})
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCatalogSort(true)
	f.SetCompression(false) // forms come packed
	at := time.Unix(d.Created, 0).UTC()
	f.SetCreationDate(at)
	f.SetModificationDate(at)
	f.SetLang(d.Lang)
	f.SetTitle(infoString(d.Title), false)
	f.SetAuthor(infoString(d.Author), false)
	f.SetCreator(creator, false)
	f.SetProducer(producer, false)
	return f
}

// capture keeps what fpdf writes. fpdf hands over its whole buffer in one
// call, which is kept as it is, not copied.
type capture struct{ b []byte }

func (c *capture) Write(p []byte) (int, error) {
	if c.b == nil {
		c.b = p
	} else {
		c.b = append(c.b[:len(c.b):len(c.b)], p...)
	}
	return len(p), nil
}
