// Package svg draws frames and pages as SVG 1.1 with millimetres as units: no
// script, no style sheet, nothing loaded from elsewhere. Letters are outlines,
// so the picture needs no fonts; pages share them through <defs> and <use>. Ids
// name what they hold (typeface and letter, or a hash of the content), so
// several pictures can stand in one HTML page.
package svg

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Frame draws one label, clipped to its outline, overlay on top, for a screen:
// every element stands on a line of its own, so that what changed from one
// drawing to the next can be told and drawn alone. It fails, before writing anything, on a missing typeface or letter, a broken path, or
// a label without size; a failing w gives w's error.
func Frame(w io.Writer, f *page.Frame, overlay []page.Item, fs *face.Set) error {
	if f == nil {
		return errors.New("svg: no frame")
	}
	d := newDrawing(fs)
	d.whole = true
	clip := d.clip(f)
	paper := *f.Outline()
	paper.Fill = &page.Colour{R: 255, G: 255, B: 255}
	d.line()
	d.path(&paper)
	d.line()
	d.b = append(d.b, `<g clip-path="url(#`+clip+`)">`...)
	d.items(f.Items)
	d.items(overlay)
	d.line()
	d.b = append(d.b, "</g>"...)
	d.line()
	return d.write(w, f.W, f.H, f.Name, spoken(f.Items, overlay))
}

// Page draws one page of a document, printer correction included.
func Page(w io.Writer, doc *page.Doc, i int, fs *face.Set) error {
	if doc == nil || i < 0 || i >= len(doc.Pages) {
		return fmt.Errorf("svg: no page %d", i+1)
	}
	p := &doc.Pages[i]
	d := newDrawing(fs)
	white := page.Colour{R: 255, G: 255, B: 255}
	d.path(&page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{{}, {X: p.W}, {X: p.W, Y: p.H}, {Y: p.H}}, Fill: &white,
	})
	closing := d.correct(doc)
	for _, pl := range p.Places {
		if pl.Frame == nil {
			return fmt.Errorf("svg: page %d has a place without a label", i+1)
		}
		d.place(pl)
	}
	d.items(p.Marks)
	if doc.CutLines {
		d.cutLines(p)
		d.register(p)
	}
	d.b = append(d.b, closing...)
	title := fmt.Sprintf("%s, page %d of %d", doc.Title, i+1, len(doc.Pages))
	return d.write(w, p.W, p.H, strings.TrimPrefix(title, ", "), fmt.Sprintf("%d labels", len(p.Places)))
}

// correct opens the group that carries the printer correction, if there is
// one, and gives what closes it.
func (d *drawing) correct(doc *page.Doc) string {
	sx, sy := orOne(doc.ScaleX), orOne(doc.ScaleY)
	if sx == 1 && sy == 1 && doc.OffsetX == 0 && doc.OffsetY == 0 {
		return ""
	}
	d.b = append(d.b, `<g transform="translate(`...)
	d.pair(micro(doc.OffsetX), micro(doc.OffsetY))
	d.b = append(d.b, ") scale("...)
	d.float(sx)
	d.b = append(d.b, ' ')
	d.float(sy)
	d.b = append(d.b, `)">`...)
	return "</g>"
}

// place stamps a label; the same label on many places is drawn once.
func (d *drawing) place(pl page.Placement) {
	id := d.label(pl.Frame)
	if pl.Clipped() {
		d.b = append(d.b, `<g clip-path="url(#`+d.clipPath(boxPath(pl.Reach()))+`)">`...)
		defer func() { d.b = append(d.b, "</g>"...) }()
	}
	d.b = append(d.b, `<g transform="`...)
	at := pl.At
	if pl.Turn == 90 {
		at.X += pl.Frame.H
	}
	d.b = append(d.b, "translate("...)
	d.pair(micro(at.X), micro(at.Y))
	d.b = append(d.b, ')')
	if pl.Turn == 90 {
		d.b = append(d.b, " rotate(90)"...)
	}
	d.b = append(d.b, `"><use href="#`+id+`"/>`...)
	d.items(pl.Overlay)
	d.b = append(d.b, "</g>"...)
}

// write puts the picture together.
func (d *drawing) write(w io.Writer, width, height unit.Length, title, desc string) error {
	if d.err != nil {
		return fmt.Errorf("svg: %w", d.err)
	}
	if width <= 0 || height <= 0 {
		return fmt.Errorf("svg: %g mm x %g mm is not a size", width.MM(), height.MM())
	}
	head := drawing{whole: d.whole}
	head.b = append(head.b, `<svg xmlns="http://www.w3.org/2000/svg" version="1.1" role="img" width="`...)
	head.number(micro(width))
	head.b = append(head.b, `mm" height="`...)
	head.number(micro(height))
	head.b = append(head.b, `mm" viewBox="0 0 `...)
	head.pair(micro(width), micro(height))
	head.b = append(head.b, `" stroke-miterlimit="10">`...)
	if title != "" {
		head.line()
		head.b = append(head.b, "<title>"+escape(title)+"</title>"...)
	}
	if desc != "" {
		head.line()
		head.b = append(head.b, "<desc>"+escape(desc)+"</desc>"...)
	}
	if len(d.defs) > 0 {
		head.line()
		head.b = append(append(append(head.b, "<defs>"...), d.defs...), "</defs>"...)
	}
	head.b = append(append(head.b, d.b...), "</svg>\n"...)
	_, err := w.Write(head.b)
	return err
}

// spoken is the text of a label in drawing order, for those who listen.
func spoken(lists ...[]page.Item) string {
	var out []string
	for _, items := range lists {
		for _, it := range items {
			switch it := it.(type) {
			case *page.Text:
				if n := len(out) - 1; n >= 0 && strings.HasSuffix(out[n], " ") {
					out[n] += it.String() // a word of a line that is bent
				} else {
					out = append(out, it.String())
				}
			case *page.Code:
				out = append(out, "QR code: "+it.Payload)
			case *page.Picture:
				if it.Image != nil && it.Image.Alt != "" {
					out = append(out, it.Image.Alt)
				}
			}
		}
	}
	return strings.Join(out, " · ")
}

func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}
