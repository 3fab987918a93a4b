package press

import (
	"fmt"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/cores"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Shown is one label as a page on a screen shows it.
type Shown struct {
	Piece  label.Piece
	Sheet  string      // id of the sheet it would be printed on
	Labels int         // how many would be printed
	Cells  int         // labels of one sheet; 0: cut from plain paper
	Sheets int         // of the run this label is of
	Gone   int         // of them, used up on the sheet the run begins on
	W, H   unit.Length // trim size
	SVG    []byte
	Paths  map[string]string // block id -> TOML path it came from
}

// Size is the trim size in words: "204 × 46 mm".
func (s Shown) Size() string { return fmt.Sprintf("%.0f × %.0f mm", s.W.MM(), s.H.MM()) }

// maxShown bounds the pictures of one piece: tags differ from gift to gift.
const maxShown = 6

// Show draws every different label of the pieces chosen, from the same frames
// a PDF would hold. A piece that cannot be printed leaves a finding and does
// not hide the others.
func (p *Press) Show(o *Order) ([]Shown, diag.List) {
	stacks, found := p.Set(o) // without the labels that do not fit
	runs, l := p.Impose(stacks, o)
	found = append(found, l...)
	shown, faults := make([][]Shown, len(runs)), make([]error, len(runs))
	cores.Each(len(runs), func(i int) { shown[i], faults[i] = p.showRun(o, runs[i]) })
	var out []Shown
	for i, err := range faults {
		if err != nil {
			found.Errorf("no-picture", o.File, "label", "the %s label could not be drawn: %v", runs[i].Piece, err)
			continue
		}
		out = append(out, shown[i]...)
	}
	return out, found
}

// showRun draws the different frames of one print run.
func (p *Press) showRun(o *Order, r Run) (out []Shown, err error) {
	count := map[*page.Frame]int{}
	var first []page.Placement
	for _, pg := range r.Doc.Pages {
		for _, pl := range pg.Places {
			if count[pl.Frame]++; count[pl.Frame] == 1 {
				first = append(first, pl)
			}
		}
	}
	for _, pl := range first[:min(len(first), maxShown)] {
		svg, err := p.FrameSVG(pl.Frame, pl.Overlay)
		if err != nil {
			return nil, err
		}
		f := pl.Frame
		s := Shown{Piece: r.Piece, Sheet: r.Sheet.ID, Labels: count[f], SVG: svg, Paths: o.paths(), W: f.W, H: f.H, Sheets: len(r.Doc.Pages)}
		if !r.Sheet.Auto {
			s.Cells, s.Gone = r.Cells, o.printOptions(r.Sheet).Skip
		}
		out = append(out, s)
	}
	return out, nil
}

// paths says which TOML path each block of the labels came from.
func (o *Order) paths() map[string]string {
	out := map[string]string{}
	for _, j := range o.Jars {
		c := j.Content
		if c == nil {
			continue
		}
		for _, bl := range c.Blocks {
			if bl.Path != "" && out[bl.ID] == "" {
				out[bl.ID] = bl.Path
			}
		}
	}
	return out
}

// pictureCell is the label of a design's picture: landscape, as most labels on
// jars are.
var pictureCell = compose.Cell{W: 76 * unit.Millimetre, H: 57 * unit.Millimetre, Shape: page.Rectangle,
	Corner: 2 * unit.Millimetre, Safe: 2 * unit.Millimetre, Bleed: unit.Millimetre}

// Picture draws the front label of the first jar size in a design; an empty id
// takes the order's own. It gives nil with a finding when that can't be done.
func (p *Press) Picture(o *Order, id string) ([]byte, diag.List) {
	d, l := p.Design(o, id)
	if d == nil {
		return nil, l
	}
	f, l := compose.Label(o.Jars[0].Content, d, label.Front, pictureCell, p.Faces, compose.Options{InkSaver: o.InkSaver, Picture: o.Picture})
	if f == nil {
		return nil, l
	}
	svg, err := p.FrameSVG(f, nil)
	if err != nil {
		l.Errorf("no-picture", "", "", "the label could not be drawn: %v", err)
	}
	return svg, l
}

// SheetPicture draws a sheet small: its paper and its labels.
func (p *Press) SheetPicture(id string) ([]byte, bool) {
	s, ok := p.Sheets.Get(id)
	if !ok {
		return nil, false
	}
	var b strings.Builder
	w, h := s.PaperW.MM(), s.PaperH.MM()
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-2 -2 %.2f %.2f" width="%.0f" height="%.0f">`, w+4, h+4, w, h)
	fmt.Fprintf(&b, `<rect width="%.2f" height="%.2f" rx="2" fill="#fffdf8" stroke="#cbbfae" stroke-width="1.6"/><g fill="#efe2cf" stroke="#a98f6c" stroke-width="1.2">`, w, h)
	for i := range s.Cells() {
		at := s.At(i)
		x, y, cw, ch := at.X.MM(), at.Y.MM(), s.W.MM(), s.H.MM()
		switch s.Shape {
		case page.Ellipse:
			fmt.Fprintf(&b, `<ellipse cx="%.2f" cy="%.2f" rx="%.2f" ry="%.2f"/>`, x+cw/2, y+ch/2, cw/2, ch/2)
		case page.TagShape:
			fmt.Fprintf(&b, `<path d="M%.2f %.2fh%.2fl%.2f %.2fv%.2fh%.2fv%.2fz"/>`, x+cw*.18, y, cw*.64, cw*.18, ch*.12, ch*.88, -cw, -ch*.88)
		default:
			fmt.Fprintf(&b, `<rect x="%.2f" y="%.2f" width="%.2f" height="%.2f" rx="%.2f"/>`, x, y, cw, ch, s.Corner.MM())
		}
	}
	if s.Auto {
		fmt.Fprintf(&b, `<rect x="%.2f" y="%.2f" width="%.2f" height="%.2f" stroke-dasharray="5 4" fill="none"/>`, w*.12, h*.1, w*.76, h*.2)
	}
	b.WriteString("</g></svg>\n")
	return []byte(b.String()), true
}
