package sheet

import (
	"fmt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// Measures of a paper tape for jars: it goes around the largest jar anyone labels
// (some 125 mm across), in strips that are glued end to end.
const (
	tapeLong  = 400 * unit.Millimetre
	tapeStrip = 250 * unit.Millimetre // the longest strip, as Letter and A4 both take
	tapeLeast = 100 * unit.Millimetre
	tapeWide  = 22 * unit.Millimetre
	tapeGap   = 5 * unit.Millimetre
	tapeTab   = 10 * unit.Millimetre // of a strip under the next, for glue
	tapeEdge  = 9 * unit.Millimetre  // that printers cannot print on
	tapeWords = 60 * unit.Millimetre
)

// Tape makes the page of a paper tape that measures jars: strips with millimetres
// on one edge and inches on the other, and what to write into kitchen.toml. On
// paper too small for a strip of 100 mm beside the words it is an empty document.
func Tape(s *Sheet, faces *face.Set) *page.Doc {
	d := &page.Doc{Lang: "en", Title: "Paper tape for jars"}
	if s == nil || s.PaperW > maxSide || s.PaperH > maxSide {
		return d
	}
	t := tape{aligner: aligner{s: s, plain: typeset.Voice{Regular: faces.Face(plainFace)}, bold: typeset.Voice{Regular: faces.Face(boldFace)},
		pg: page.Page{W: min(s.PaperW, s.PaperH), H: max(s.PaperW, s.PaperH)}, pt: unit.Points(9.5)}}
	t.strip = min(tapeStrip, (t.pg.H-2*tapeEdge-tapeTab)/unit.Centimetre*unit.Centimetre)
	n := unit.Length(1)
	if t.strip > 0 {
		n = (tapeLong + t.strip - 1) / t.strip
	}
	x := tapeEdge
	if t.plain.Regular == nil || t.bold.Regular == nil || t.strip < tapeLeast || x+n*(tapeWide+tapeGap)+tapeWords+tapeEdge > t.pg.W {
		return d
	}
	for i := range n {
		t.draw(x, i*t.strip, min(t.strip, tapeLong-i*t.strip))
		x += tapeWide + tapeGap
	}
	t.explain(x+tapeGap, n)
	d.Pages = []page.Page{t.pg}
	return d
}

// tape draws the page of a tape.
type tape struct {
	aligner
	strip unit.Length
}

// draw draws a strip that begins at a measure, its left edge at x, from the top of
// the page down: a tab for glue where another comes before it, scales, and the
// line to cut along.
func (t *tape) draw(x, from, long unit.Length) {
	top := tapeEdge + tapeTab
	cut := &page.Path{Block: "cut", Stroke: &grey, Width: tickLine}
	box := page.Rect{X: x, Y: top, W: tapeWide, H: long}
	if from > 0 {
		box.Y, box.H = top-tapeTab, long+tapeTab
		segment(cut, x, top, x+tapeWide, top)
		t.text(t.plain, unit.Points(6), page.Point{X: x + unit.Millimetre, Y: top - tapeTab/2}, "glue under "+fmt.Sprint(int(from/unit.Millimetre)))
	}
	rectangle(cut, box, 0)
	scale := &page.Path{Stroke: &black, Width: unit.Points(0.4)}
	for mm := unit.Length(0); mm <= long/unit.Millimetre; mm++ {
		y := top + mm*unit.Millimetre
		tick := 2 * unit.Millimetre
		switch {
		case mm%10 == 0:
			tick = 5 * unit.Millimetre
			t.figure(x+unit.Millimetre*11/2, y, fmt.Sprint(int(from/unit.Millimetre+mm)), mm == 0, mm*unit.Millimetre == long)
		case mm%5 == 0:
			tick = 7 * unit.Millimetre / 2
		}
		segment(scale, x, y, x+tick, y)
	}
	const eighth = unit.Inch / 8
	for k := (from + eighth - 1) / eighth; k*eighth <= from+long; k++ {
		y := top + k*eighth - from
		tick := 3 * unit.Millimetre / 2
		switch {
		case k%8 == 0:
			tick = 4 * unit.Millimetre
			if k > 0 {
				t.figure(x+tapeWide-unit.Millimetre*8, y, fmt.Sprint(int(k/8)), y-top < unit.Millimetre*3/2, top+long-y < unit.Millimetre*3/2)
			}
		case k%4 == 0:
			tick = 5 * unit.Millimetre / 2
		}
		segment(scale, x+tapeWide-tick, y, x+tapeWide, y)
	}
	t.add(scale, cut)
}

// figure writes a number beside its tick, below it at the beginning of a strip and
// above it at the end.
func (t *tape) figure(x, y unit.Length, s string, first, last bool) {
	const size = 2540 * unit.Micrometre // 7.2 pt
	switch {
	case first:
		y += size * 9 / 10
	case last:
		y -= size / 5
	default:
		y += size * 7 / 20
	}
	t.text(t.plain, size, page.Point{X: x, Y: y}, s)
}

// explain tells how to measure and what to write down.
func (t *tape) explain(x, strips unit.Length) {
	seam := fmt.Sprint(int(t.strip / unit.Millimetre))
	y, room := tapeEdge+tapeTab, t.pg.W-tapeEdge-x
	step := t.pt * 14 / 10
	lines := []struct {
		voice typeset.Voice
		text  string
	}{
		{t.bold, "Paper tape for jars"},
		{t.plain, "Print on plain paper at actual size, 100 %. By a ruler, from 0 to 100 on the tape must be 100 mm; if not, the tape does not tell the truth."},
		{},
		{t.plain, "Cut along the grey lines. Glue each strip to the one before: its tab under the end, so that " + seam + " lies on " + seam + "."},
		{},
		{t.plain, "1. Lay the tape around the jar where the label goes, flat and snug. What meets the 0 is the circumference; on a tapered jar measure at the top of the straight side, and once more at its foot."},
		{},
		{t.plain, "2. Hold the tape upright against the jar. The height over which the glass is straight, from the end of one curve to the beginning of the next, is the panel: no label should be higher."},
		{},
		{t.plain, "3. On a square or six-sided jar, the flat of one side is the face."},
		{},
		{t.plain, "Write what you read in kitchen.toml, for instance:"},
		{t.bold, "[[jar]]"},
		{t.bold, `key = "us8"`},
		{t.bold, `circumference = "227 mm"`},
		{t.bold, `panel = "49 mm"`},
		{},
		{t.plain, "Inches do too: 8 15/16 in. What is not written is taken from the built-in jar of that key, where there is one; foot and face are keys as well."},
	}
	if strips == 1 {
		lines[3].text = "Cut along the grey line."
	}
	for _, w := range lines {
		if w.text == "" {
			y += step / 2
			continue
		}
		for _, l := range w.voice.Lines(w.text, t.pt, room) {
			if y += step; y > t.pg.H-tapeEdge {
				return
			}
			t.text(w.voice, t.pt, page.Point{X: x, Y: y}, l)
		}
	}
}
