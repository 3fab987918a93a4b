package sheet

import (
	"fmt"
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// withOptions gives plain paper the margins and gutter of the run.
func withOptions(s *Sheet, o Options) *Sheet {
	t := *s
	for _, v := range []struct {
		to   *unit.Length
		from *unit.Length
	}{{&t.Left, o.MarginLeft}, {&t.Top, o.MarginTop}, {&t.Right, o.MarginRight}, {&t.Bottom, o.MarginBottom}, {&t.Gutter, o.Gutter}} {
		if v.from != nil {
			*v.to = min(max(*v.from, 0), maxSide)
		}
	}
	return &t
}

// grid is how many labels of one size plain paper takes, and how they lie.
type grid struct {
	cols, rows int
	w, h       unit.Length // of the label as it lies
	gap        unit.Length
	turn       int
}

// plan finds the grid that takes most labels of a size; upright wins a draw.
func plan(s *Sheet, f *page.Frame) grid {
	gap := max(s.Gutter, 2*f.Bleed)
	room := func(side, label unit.Length) int { return max(0, int((side+gap)/(label+gap))) }
	w, h := s.PaperW-s.Left-s.Right, s.PaperH-s.Top-s.Bottom
	up := grid{room(w, f.W), room(h, f.H), f.W, f.H, gap, 0}
	side := grid{room(w, f.H), room(h, f.W), f.H, f.W, gap, 90}
	if s.Endless && side.cols > 0 && side.rows > 0 && (up.cols == 0 || side.h < up.h) || !s.Endless && side.cols*side.rows > up.cols*up.rows {
		return side
	}
	return up
}

// Holds is how many labels of a size one sheet of plain paper takes.
func (s *Sheet) Holds(w, h, bleed unit.Length) int {
	g := plan(s, &page.Frame{W: w, H: h, Bleed: bleed})
	return g.cols * g.rows
}

// fillPlain lays labels on plain paper in rows. Labels of one size share rows
// of equal length, centred across the paper; another size starts a new row.
// The free rest lies at the bottom of the last sheet.
func fillPlain(l *diag.List, labels []Label, s *Sheet, skip int) Run {
	doc := &page.Doc{}
	var r Run
	for from := 0; from < len(labels); {
		f := labels[from].Frame
		to := from + 1
		for to < len(labels) && sameSize(labels[to].Frame, f) {
			to++
		}
		g := plan(s, f)
		if g.cols == 0 || g.rows == 0 {
			tooBig(l, s, f)
			return Run{}
		}
		if s.Endless {
			r.Cells = 1
			offRoll(doc, s, g, labels[from:to])
			from = to
			continue
		}
		if from == 0 {
			if skip >= g.cols*g.rows {
				l.Errorf("skip-beyond-sheet", "", SkipPath, "cannot skip %d of the %d labels of %s that sheet %s takes", skip, g.cols*g.rows, size(f.W, f.H), s.ID).
					Hinted(fmt.Sprintf("skip 0 to %d", g.cols*g.rows-1))
				return Run{}
			}
			r = Run{Cells: g.cols * g.rows}
		}
		layRows(doc, s, g, labels[from:to], skip)
		skip, from = 0, to
	}
	r.Doc, r.Used = doc, r.Cells
	if !s.Endless && sameSize(labels[0].Frame, labels[len(labels)-1].Frame) && onlySize(labels) {
		r.Used = used(doc, s, plan(s, labels[0].Frame))
	}
	return r
}

// offRoll gives each label a page as long as it needs.
func offRoll(doc *page.Doc, s *Sheet, g grid, labels []Label) {
	at := page.Point{X: s.Left + (s.PaperW-s.Left-s.Right-g.w)/2, Y: s.Top}
	for _, b := range labels {
		doc.Pages = append(doc.Pages, page.Page{W: s.PaperW, H: s.Top + g.h + s.Bottom,
			Places: []page.Placement{{Frame: b.Frame, Overlay: b.Overlay, At: at, Turn: g.turn}}})
	}
}

func sameSize(a, b *page.Frame) bool { return a.W == b.W && a.H == b.H && a.Bleed == b.Bleed }

func onlySize(labels []Label) bool {
	return !slices.ContainsFunc(labels, func(b Label) bool { return !sameSize(b.Frame, labels[0].Frame) })
}

// used counts the cells of the grid up to the last label.
func used(doc *page.Doc, s *Sheet, g grid) int {
	places := doc.Pages[len(doc.Pages)-1].Places
	last := places[len(places)-1].At
	left := startX(s, g)
	return int((last.Y-s.Top)/(g.h+g.gap))*g.cols + int((last.X-left)/(g.w+g.gap)) + 1
}

func startX(s *Sheet, g grid) unit.Length {
	row := unit.Length(g.cols)*(g.w+g.gap) - g.gap
	return s.Left + (s.PaperW-s.Left-s.Right-row)/2
}

// layRows appends labels of one size below what the last page already has.
func layRows(doc *page.Doc, s *Sheet, g grid, labels []Label, skip int) {
	y := s.PaperH // no page yet: the first row opens one
	if n := len(doc.Pages); n > 0 {
		y = below(doc.Pages[n-1], g.gap)
	}
	col := skip % g.cols
	for i, b := range labels {
		if i == 0 || col == g.cols {
			if i > 0 {
				y, col = y+g.h+g.gap, 0
			}
			if y+g.h > s.PaperH-s.Bottom {
				doc.Pages = append(doc.Pages, page.Page{W: s.PaperW, H: s.PaperH})
				y = s.Top
				if i == 0 {
					y += unit.Length(skip/g.cols) * (g.h + g.gap)
				}
			}
		}
		pg := &doc.Pages[len(doc.Pages)-1]
		x := startX(s, g) + unit.Length(col)*(g.w+g.gap)
		pg.Places = append(pg.Places, page.Placement{Frame: b.Frame, Overlay: b.Overlay, At: page.Point{X: x, Y: y}, Turn: g.turn})
		col++
	}
}

// below is where the next row may start on a page: clear of every bleed.
func below(p page.Page, gap unit.Length) unit.Length {
	var y unit.Length
	for _, pl := range p.Places {
		b := box(pl)
		y = max(y, b.Y+b.H+max(gap, 2*pl.Frame.Bleed))
	}
	return y
}

// tooBig says by how much a label misses the paper, the better way round.
func tooBig(l *diag.List, s *Sheet, f *page.Frame) {
	w, h := s.PaperW-s.Left-s.Right, s.PaperH-s.Top-s.Bottom
	ow, oh := max(0, f.W-w), max(0, f.H-h)
	if tw, th := max(0, f.H-w), max(0, f.W-h); tw+th < ow+oh {
		ow, oh = tw, th
	}
	why := ""
	switch {
	case ow > 0 && oh > 0:
		why = fmt.Sprintf("%.1f mm too wide and %.1f mm too high", ow.MM(), oh.MM())
	case ow > 0:
		why = fmt.Sprintf("%.1f mm too wide", ow.MM())
	default:
		why = fmt.Sprintf("%.1f mm too high", oh.MM())
	}
	l.Errorf("label-too-big", "", "", "label of %s is %s for sheet %s, which has %s between its margins", size(f.W, f.H), why, s.ID, size(w, h)).
		Hinted("choose larger paper or a smaller label")
}
