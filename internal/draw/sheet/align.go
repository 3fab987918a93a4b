package sheet

import (
	"fmt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// The faces of the alignment page.
const (
	plainFace = page.Face("Figtree_400Regular")
	boldFace  = page.Face("Figtree_700Bold")
)

var (
	white = page.Colour{R: 255, G: 255, B: 255}
	grey  = page.Colour{R: 110, G: 110, B: 110}
)

// Align makes the page that shows whether a printer keeps its measure: the
// outlines of the sheet's cells, a ruler of 100 mm along each axis, a cross
// near each corner, and how to turn what is measured into the printer's
// offset and scale in kitchen.toml. On small paper the rulers are shorter, and
// the text says so. A nil sheet, or typefaces without the page's two, give an
// empty document.
func Align(s *Sheet, faces *face.Set) *page.Doc {
	d := &page.Doc{Lang: "en"}
	if s == nil || s.PaperW < minSide || s.PaperH < minSide || s.PaperW > maxSide || s.PaperH > maxSide {
		return d
	}
	a := aligner{s: s, plain: typeset.Voice{Regular: faces.Face(plainFace)}, bold: typeset.Voice{Regular: faces.Face(boldFace)},
		pg: page.Page{W: s.PaperW, H: s.PaperH}}
	if a.plain.Regular == nil || a.bold.Regular == nil {
		return d
	}
	d.Title = "Printer alignment: " + s.Title
	a.measure()
	a.cells()
	a.crosses()
	a.panel()
	a.ruler(true)
	a.ruler(false)
	a.words()
	d.Pages = []page.Page{a.pg}
	return d
}

// aligner draws one alignment page.
type aligner struct {
	s     *Sheet
	pg    page.Page
	plain typeset.Voice
	bold  typeset.Voice
	from  page.Point  // where the rulers meet
	long  unit.Length // of a ruler
	cross unit.Length // of a cross from the paper's edges
	pt    unit.Length // size of the text
}

// measure fits rulers, crosses and text to the paper.
func (a *aligner) measure() {
	short := min(a.pg.W, a.pg.H)
	a.cross = min(12*unit.Millimetre, short/8/unit.Millimetre*unit.Millimetre)
	a.from = page.Point{X: min(28*unit.Millimetre, short/5), Y: min(34*unit.Millimetre, short/5)}
	room := min(a.pg.W-a.from.X, a.pg.H-a.from.Y) - short/20
	a.long = min(100*unit.Millimetre, max(1, room/unit.Centimetre)*unit.Centimetre)
	a.pt = max(unit.Points(5), min(unit.Points(9), a.pg.W/66))
}

func (a *aligner) add(items ...page.Item) { a.pg.Marks = append(a.pg.Marks, items...) }

// cells outlines every cell, or the margins of plain paper.
func (a *aligner) cells() {
	p := &page.Path{Stroke: &grey, Width: tickLine}
	s := a.s
	if s.Auto {
		p.Dash = []unit.Length{unit.Millimetre, unit.Millimetre}
		rectangle(p, page.Rect{X: s.Left, Y: s.Top, W: s.PaperW - s.Left - s.Right, H: s.PaperH - s.Top - s.Bottom}, 0)
	}
	for i := range s.Cells() {
		at := s.At(i)
		b := page.Rect{X: at.X, Y: at.Y, W: s.W, H: s.H}
		if s.Shape == page.Ellipse {
			ellipse(p, b, 0)
		} else {
			rectangle(p, b, s.Corner)
		}
	}
	a.add(p)
}

// crosses stand at the same distance from both edges in each corner.
func (a *aligner) crosses() {
	p := &page.Path{Stroke: &black, Width: unit.Points(0.5)}
	arm := a.cross / 3
	for _, x := range []unit.Length{a.cross, a.pg.W - a.cross} {
		for _, y := range []unit.Length{a.cross, a.pg.H - a.cross} {
			segment(p, x-arm, y, x+arm, y)
			segment(p, x, y-arm, x, y+arm)
		}
	}
	a.add(p)
}

// panel clears the ground under rulers and text.
func (a *aligner) panel() {
	edge := a.from.X / 3
	p := &page.Path{Fill: &white, Stroke: &grey, Width: tickLine}
	rectangle(p, page.Rect{X: a.from.X - edge, Y: a.from.Y - edge,
		W: a.pg.W - 2*(a.from.X-edge), H: min(a.long+2*edge, a.pg.H-a.from.Y+edge)}, min(edge/3, 3*unit.Millimetre))
	a.add(p)
}

// ruler draws a scale of millimetres along x, or along y, with figures at each
// centimetre.
func (a *aligner) ruler(along bool) {
	p := &page.Path{Stroke: &black, Width: unit.Points(0.4)}
	line := func(u0, v0, u1, v1 unit.Length) {
		if !along {
			u0, v0, u1, v1 = v0, u0, v1, u1
		}
		segment(p, a.from.X+u0, a.from.Y+v0, a.from.X+u1, a.from.Y+v1)
	}
	line(0, 0, a.long, 0)
	for i := unit.Length(0); i <= a.long/unit.Millimetre; i++ {
		tick := 1500 * unit.Micrometre
		switch {
		case i%10 == 0:
			tick = 4 * unit.Millimetre
		case i%5 == 0:
			tick = 2500 * unit.Micrometre
		}
		line(i*unit.Millimetre, 0, i*unit.Millimetre, tick)
	}
	a.add(p)
	for i := unit.Length(10); i <= a.long/unit.Millimetre; i += 10 {
		u, v, figure := i*unit.Millimetre-unit.Millimetre/2, 6500*unit.Micrometre, fmt.Sprint(int(i))
		at := page.Point{X: a.from.X + u - a.plain.Measure(figure, a.pt*7/9)/2, Y: a.from.Y + v}
		if !along {
			at = page.Point{X: a.from.X + 4700*unit.Micrometre, Y: a.from.Y + u + a.pt/4}
		}
		a.text(a.plain, a.pt*7/9, at, figure)
	}
}

func (a *aligner) text(v typeset.Voice, size unit.Length, at page.Point, s string) {
	t, _ := v.Line("", false, s, size, at)
	a.add(t)
}

// words tells what to measure and what to write down, inside the rulers.
func (a *aligner) words() {
	ruler, cross := int(a.long/unit.Millimetre), fmt.Sprintf("%.0f mm", a.cross.MM())
	x, y := a.from.X+a.pt*4, a.from.Y+11*unit.Millimetre
	room := a.pg.W - a.from.X*2/3 - x - a.pt
	step := a.pt * 14 / 10
	end := a.from.Y + a.long
	for _, w := range []struct {
		voice typeset.Voice
		text  string
	}{
		{a.bold, "Printer alignment"},
		{a.plain, a.s.Title},
		{a.plain, ""},
		{a.plain, "Print this page on plain paper at actual size, 100 %, not fitted to the page. Hold it behind a label sheet against a window: the outlines should meet the labels."},
		{a.plain, ""},
		{a.plain, "If they do not, measure with a ruler and write in kitchen.toml:"},
		{a.bold, "[printer]"},
		{a.bold, fmt.Sprintf("scale_x = %d / length of the ruler across, in mm", ruler)},
		{a.bold, fmt.Sprintf("scale_y = %d / length of the ruler down, in mm", ruler)},
		{a.bold, fmt.Sprintf("offset_x = %s less the top left cross to the left edge", cross)},
		{a.bold, fmt.Sprintf("offset_y = %s less the top left cross to the top edge", cross)},
		{a.plain, ""},
		{a.plain, fmt.Sprintf("Example: a ruler of %d mm that prints %.1f mm long gives scale %.4f; a cross at %.1f mm gives offset %q. Where kitchen.toml already has values, add the offsets and multiply the scales.",
			ruler, float64(ruler)*0.992, 1/0.992, a.cross.MM()+0.8, "-0.8 mm")},
	} {
		if w.text == "" {
			y += step
			continue
		}
		for _, l := range w.voice.Lines(w.text, a.pt, room) {
			if y += step; y > end {
				return
			}
			a.text(w.voice, a.pt, page.Point{X: x, Y: y}, l)
		}
	}
}

// rectangle adds a box with rounded corners.
func rectangle(p *page.Path, b page.Rect, r unit.Length) {
	x0, y0, x1, y1 := b.X, b.Y, b.X+b.W, b.Y+b.H
	if r <= 0 {
		p.Ops = append(p.Ops, page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close)
		p.Pts = append(p.Pts, page.Point{X: x0, Y: y0}, page.Point{X: x1, Y: y0}, page.Point{X: x1, Y: y1}, page.Point{X: x0, Y: y1})
		return
	}
	c := unit.Length(0.4477152502 * float64(r)) // radius less the curve's handle
	at := func(x, y unit.Length) page.Point { return page.Point{X: x, Y: y} }
	p.Ops = append(p.Ops, page.MoveTo, page.LineTo, page.CubicTo, page.LineTo, page.CubicTo, page.LineTo, page.CubicTo, page.LineTo, page.CubicTo, page.Close)
	p.Pts = append(p.Pts, at(x0+r, y0),
		at(x1-r, y0), at(x1-c, y0), at(x1, y0+c), at(x1, y0+r),
		at(x1, y1-r), at(x1, y1-c), at(x1-c, y1), at(x1-r, y1),
		at(x0+r, y1), at(x0+c, y1), at(x0, y1-c), at(x0, y1-r),
		at(x0, y0+r), at(x0, y0+c), at(x0+c, y0), at(x0+r, y0))
}
