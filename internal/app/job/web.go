package job

import (
	"fmt"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// Shown is one label as a page on a screen shows it.
type Shown struct {
	Piece  label.Piece
	Sheet  string      // id of the sheet it would be printed on
	Labels int         // how many would be printed
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
func (e *Env) Show(b *Batch, c Choices) ([]Shown, diag.List) {
	if b.Batch == nil || b.Cooked == nil || len(b.Contents) == 0 {
		return nil, nil
	}
	found := e.allot([]*Batch{b}, &c)
	stacks, l := e.compose(b, c) // without the labels that do not fit
	found = append(found, l...)
	runs, l := e.impose(stacks, b, c)
	found = append(found, b.locate(l)...)
	var out []Shown
	for _, r := range runs {
		shown, err := e.showRun(b, r)
		if err != nil {
			found.Errorf("no-picture", b.Input.Batch.Name, "label", "the %s label could not be drawn: %v", r.Piece, err)
			continue
		}
		out = append(out, shown...)
	}
	return out, found
}

// showRun draws the different frames of one print run.
func (e *Env) showRun(b *Batch, r Printed) (out []Shown, err error) {
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
		svg, err := e.FrameSVG(pl.Frame, pl.Overlay)
		if err != nil {
			return nil, err
		}
		f := pl.Frame
		out = append(out, Shown{Piece: r.Piece, Sheet: r.Sheet.ID, Labels: count[f], SVG: svg, Paths: b.paths(),
			W: f.W, H: f.H})
	}
	return out, nil
}

// paths says which TOML path each block of the labels came from.
func (b *Batch) paths() map[string]string {
	out := map[string]string{}
	for _, c := range b.Contents {
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

// Plan is the packing list of batches together as a value, for a page.
func (e *Env) Plan(batches []*Batch, c PackChoices) (*pack.Plan, diag.List) {
	return e.Pack(batches, pack.Options{Event: c.Event, Gifts: c.Gifts, List: c.List})
}

// DefaultDesign is the design used where none is chosen.
func DefaultDesign() string { return defaultDesign }

// PaperOf is the paper a kitchen prints on, as sheet ids begin: "letter", "a4".
func (e *Env) PaperOf(kitchen Doc) string {
	k, _ := batch.ParseKitchen(kitchen.Name, kitchen.Data, e.Book.Find)
	return (&Batch{Kitchen: k}).paper()
}

// KindWords lists the kinds of preserve a batch may be.
func KindWords() (out []string) {
	for _, k := range batch.Kinds {
		out = append(out, string(k))
	}
	return out
}

// SheetPicture draws a sheet small: its paper and its labels.
func (e *Env) SheetPicture(id string) ([]byte, bool) {
	s, ok := e.Sheets.Get(id)
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

// FindingRows gives findings as `check --json` words them, for a page, which
// has no command line.
func FindingRows(l diag.List) []Finding {
	out := findings(l)
	for i := range out {
		if out[i].File == diag.Command {
			out[i].File = ""
		}
	}
	return out
}
