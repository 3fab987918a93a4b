package sheet

import (
	"fmt"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// MaxLabels is the most labels of one document.
const MaxLabels = 100_000

const leastLabel = unit.Millimetre // on a side

// Label is one label to print; Overlay is what it alone bears (its number,
// its code), in the coordinates of the frame.
type Label struct {
	Frame   *page.Frame
	Overlay []page.Item
}

// Options of a print run. The zero value prints from the first cell on.
type Options struct {
	Skip     int  // cells of the first sheet already used
	CutMarks bool // in margins and gutters
	Trimmed  bool // no sheet: a page for each different label, its bleed around it

	// On plain paper: other margins and gutter than the sheet's. nil keeps it.
	MarginLeft, MarginTop, MarginRight, MarginBottom, Gutter *unit.Length

	OffsetX, OffsetY unit.Length // printer correction, see page.Doc
	ScaleX, ScaleY   float64     // 0 = 1
}

// Run is an imposed print run. Used counts the cells gone on the last sheet,
// from its first cell: what the next run must skip. Cells is how many that
// sheet has. On plain paper with labels of several sizes the rest of the last
// sheet has no cells to count, and Used = Cells.
type Run struct {
	Doc         *page.Doc
	Used, Cells int
}

// Fill puts labels on sheets in reading order: along the rows from the left,
// rows from the top, page after page. A label stands upright in its cell. A
// label that fits a cell only on its side, and one that plain paper takes more
// of that way, is turned by 90 degrees clockwise: its top points right.
//
// The document carries no title, author, language or date: they are the
// caller's. On an error the document is nil. The run also tells what is left of
// the last sheet.
func Fill(labels []Label, s *Sheet, o Options) (Run, diag.List) {
	var l diag.List
	checkRun(&l, labels, s, o)
	if l.HasErrors() {
		return Run{}, l
	}
	var r Run
	if o.Trimmed {
		return fillTrimmed(labels), l
	}
	if s.Auto {
		r = fillPlain(&l, labels, withOptions(s, o), o.Skip)
	} else {
		r = fillGrid(&l, labels, s, o.Skip)
	}
	if l.HasErrors() {
		return Run{}, l
	}
	r.Doc.OffsetX, r.Doc.OffsetY, r.Doc.ScaleX, r.Doc.ScaleY = o.OffsetX, o.OffsetY, o.ScaleX, o.ScaleY
	checkCorrection(&l, r.Doc, s)
	if o.CutMarks {
		mark(r.Doc.Pages)
	}
	return r, l
}

// SkipPath is where the cells gone on a part-used sheet are written.
const SkipPath = "supplies.part_sheets"

func checkRun(l *diag.List, labels []Label, s *Sheet, o Options) {
	switch {
	case s == nil || s.PaperW <= 0 || s.PaperH <= 0 || !s.Auto && (s.Cols < 1 || s.Rows < 1):
		l.Errorf("no-sheet", "", "", "no usable sheet to print on").Hinted("see `jarmark sheets`")
		return
	case len(labels) == 0:
		l.Errorf("no-labels", "", "", "no labels to print").Hinted("give at least one copy")
	case len(labels) > MaxLabels:
		l.Errorf("too-many-labels", "", "", "%d labels, %d is the most of one document", len(labels), MaxLabels).
			Hinted("print in several runs")
	}
	if o.Skip < 0 || !s.Auto && o.Skip >= s.Cells() {
		l.Errorf("skip-beyond-sheet", "", SkipPath, "cannot skip %d of the %d labels of sheet %s", o.Skip, s.Cells(), s.ID).
			Hinted(fmt.Sprintf("skip 0 to %d; put a whole used sheet away", max(0, s.Cells()-1)))
	}
	for _, v := range []float64{o.ScaleX, o.ScaleY} {
		if v != 0 && !(v >= 0.9 && v <= 1.1) {
			l.Errorf("printer-scale", "", "", "printer scale %g is not near 1", v).
				Hinted("measure the 100 mm rulers of `jarmark align`; a factor of 0.9 to 1.1 is corrected")
		}
	}
	for _, v := range []unit.Length{o.OffsetX, o.OffsetY} {
		if v > 25*unit.Millimetre || v < -25*unit.Millimetre {
			l.Errorf("printer-offset", "", "", "printer offset of %.1f mm is more than 25 mm", v.MM()).
				Hinted("check the paper size in the print dialog, then print `jarmark align` again")
		}
	}
	for i, b := range labels {
		if f := b.Frame; f == nil || f.W < leastLabel || f.H < leastLabel || f.Bleed < 0 || f.W > maxSide || f.H > maxSide || f.Bleed > maxSide {
			l.Errorf("empty-label", "", "", "label %d of the run has no size that can be printed", i+1).Hinted("make the label again, and report this if it stays")
			return
		}
	}
}

// fillTrimmed makes a page of each different label, as a print shop wants it:
// the page is the label and its bleed, and says where to trim.
func fillTrimmed(labels []Label) Run {
	doc := &page.Doc{}
	done := map[*page.Frame]bool{}
	for _, b := range labels {
		f := b.Frame
		if done[f] && len(b.Overlay) == 0 {
			continue
		}
		done[f] = true
		doc.Pages = append(doc.Pages, page.Page{W: f.W + 2*f.Bleed, H: f.H + 2*f.Bleed, Trim: page.Rect{X: f.Bleed, Y: f.Bleed, W: f.W, H: f.H},
			Places: []page.Placement{{Frame: f, Overlay: b.Overlay, At: page.Point{X: f.Bleed, Y: f.Bleed}}}})
	}
	return Run{Doc: doc, Used: 1, Cells: 1}
}

// fillGrid fills the cells of a label sheet.
func fillGrid(l *diag.List, labels []Label, s *Sheet, skip int) Run {
	turns := map[*page.Frame]int{}
	for _, b := range labels {
		if _, done := turns[b.Frame]; !done {
			turns[b.Frame] = fitCell(l, b.Frame, s)
		}
	}
	n := s.Cells()
	doc := &page.Doc{Pages: make([]page.Page, 0, (skip+len(labels)+n-1)/n)}
	for i, b := range labels {
		k := (skip + i) % n
		if i == 0 || k == 0 {
			doc.Pages = append(doc.Pages, page.Page{W: s.PaperW, H: s.PaperH,
				Places: make([]page.Placement, 0, min(n, len(labels)-i))})
		}
		pg := &doc.Pages[len(doc.Pages)-1]
		pg.Places = append(pg.Places, page.Placement{Frame: b.Frame, Overlay: b.Overlay, At: s.At(k), Turn: turns[b.Frame], Within: s.around(k)})
	}
	return Run{Doc: doc, Used: (skip+len(labels)-1)%n + 1, Cells: n}
}

// exact is how far a label may differ from its cell: rounding, no more.
const exact = 10 * unit.Micrometre

// fitCell tells how a frame must be turned to fill a cell.
func fitCell(l *diag.List, f *page.Frame, s *Sheet) int {
	turn := 0
	switch {
	case near(f.W, s.W) && near(f.H, s.H):
	case near(f.W, s.H) && near(f.H, s.W):
		turn = 90
	default:
		l.Errorf("label-size", "", "", "label of %s does not match the cells of sheet %s, %s", size(f.W, f.H), s.ID, size(s.W, s.H)).
			Hinted("make the label for this sheet, or print it on plain paper")
		return 0
	}
	if f.Bleed > s.Bleed+exact {
		l.Errorf("bleed-too-wide", "", "", "background reaches %.1f mm past the label, the cells of sheet %s leave room for %.1f mm",
			f.Bleed.MM(), s.ID, s.Bleed.MM()).Hinted("make the label for this sheet")
	}
	return turn
}

func near(a, b unit.Length) bool { return a-b <= exact && b-a <= exact }

func size(w, h unit.Length) string { return fmt.Sprintf("%.1f x %.1f mm", w.MM(), h.MM()) }

// checkCorrection warns when the correction pushes labels off the paper.
func checkCorrection(l *diag.List, d *page.Doc, s *Sheet) {
	const slack = unit.Millimetre / 2
	sx, sy := orOne(d.ScaleX), orOne(d.ScaleY)
	for _, pg := range d.Pages {
		for _, pl := range pg.Places {
			b := box(pl)
			x0, x1 := along(b.X, sx, d.OffsetX), along(b.X+b.W, sx, d.OffsetX)
			y0, y1 := along(b.Y, sy, d.OffsetY), along(b.Y+b.H, sy, d.OffsetY)
			if over := max(-x0, -y0, x1-pg.W, y1-pg.H); over > slack {
				l.Warnf("off-paper", "", "", "the printer correction moves labels %.1f mm over the edge of sheet %s", over.MM(), s.ID).
					Hinted("print `jarmark align` and measure offset and scale again")
				return
			}
		}
	}
}

func along(l unit.Length, scale float64, offset unit.Length) unit.Length {
	return unit.Length(float64(l)*scale) + offset
}

func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}

// box is where a placed label lies, without its bleed.
func box(p page.Placement) page.Rect {
	if p.Turn == 90 {
		return page.Rect{X: p.At.X, Y: p.At.Y, W: p.Frame.H, H: p.Frame.W}
	}
	return page.Rect{X: p.At.X, Y: p.At.Y, W: p.Frame.W, H: p.Frame.H}
}
