package pdf_test

import (
	"bytes"
	"fmt"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

const (
	regular = page.Face("Figtree_400Regular")
	display = page.Face("Fraunces_600SemiBold")
)

var (
	mm    = unit.MM
	ink   = page.Colour{R: 20, G: 20, B: 20}
	berry = page.Colour{R: 176, G: 30, B: 50}
	paper = page.Colour{R: 255, G: 248, B: 238}
)

func faces(t testing.TB) *face.Set {
	t.Helper()
	s, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func write(t testing.TB, d *page.Doc) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := pdf.Write(&b, d, faces(t)); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func at(x, y float64) page.Point { return page.Point{X: mm(x), Y: mm(y)} }

func line(f page.Face, pt, x, y float64, c page.Colour, s string) *page.Text {
	return &page.Text{Face: f, Size: unit.Points(pt), At: at(x, y), Colour: c, Segs: []page.Seg{{S: s}}}
}

func box(x, y, w, h float64) *page.Path {
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{at(x, y), at(x+w, y), at(x+w, y+h), at(x, y+h)},
	}
}

func filled(p *page.Path, c page.Colour) *page.Path { p.Fill = &c; return p }

func code(t testing.TB, x, y, side float64, payload string) *page.Code {
	t.Helper()
	m, err := presstest.Matrix(payload)
	if err != nil {
		t.Fatal(err)
	}
	return &page.Code{At: page.Rect{X: mm(x), Y: mm(y), W: mm(side), H: mm(side)},
		Modules: m, Quiet: 4, Dark: ink, Payload: payload}
}

// label is a label of 100 x 50 mm as compose would make one: ground, leaves,
// kerned name, small print and a QR code.
func label(t testing.TB, payload string) *page.Frame {
	leaf := func(x, y float64) *page.Path {
		green := page.Colour{R: 60, G: 110, B: 70}
		return &page.Path{
			Ops:  []page.Op{page.MoveTo, page.CubicTo, page.CubicTo, page.Close},
			Pts:  []page.Point{at(x, y), at(x+1, y-2), at(x+4, y-2), at(x+5, y), at(x+4, y+2), at(x+1, y+2), at(x, y)},
			Fill: &green, Stroke: &ink, Width: mm(0.1), Round: true,
		}
	}
	name := line(display, 20, 8, 20, berry, "")
	name.Segs = []page.Seg{{S: "Gooseberry "}, {X: mm(40), S: "Wa"}, {X: mm(51), S: "ter"}}
	items := []page.Item{
		filled(box(-1, -1, 102, 52), paper), name,
		line(regular, 7, 8, 30, ink, "Ingredients: gooseberries, sugar, crème fraîche (milk)"),
		line(regular, 7, 8, 34, ink, "Keep sealed jars cool and dark."),
		line(regular, 9, 8, 44, ink, "NET WT 10 OZ (283 g)"),
	}
	for i := range 12 {
		items = append(items, leaf(8+6*float64(i), 8))
	}
	if payload != "" {
		items = append(items, code(t, 72, 26, 18, payload))
	}
	return &page.Frame{W: mm(100), H: mm(50), Shape: page.Rectangle, Bleed: mm(1), Items: items, Name: "label"}
}

// sheetOf lays labels on A4 pages, two by five.
func sheetOf(places []page.Placement) *page.Doc {
	d := &page.Doc{Title: "Gooseberry water (labels)", Author: "Thornfield Lane Preserves", Lang: "en-US", Created: 1_790_000_000}
	for i, p := range places {
		if i%10 == 0 {
			d.Pages = append(d.Pages, page.Page{W: mm(210), H: mm(297)})
		}
		p.At = at(4+101*float64(i%2), 10+55*float64(i%10/2))
		pg := &d.Pages[len(d.Pages)-1]
		pg.Places = append(pg.Places, p)
	}
	return d
}

func repeated(t testing.TB, n int) *page.Doc {
	fr := label(t, "https://example.org/r/L26165-GW")
	places := make([]page.Placement, n)
	for i := range places {
		places[i].Frame = fr
	}
	return sheetOf(places)
}

// serials gives n labels of one frame, each with its number and a QR code of
// its own.
func serials(t testing.TB, n int) *page.Doc {
	fr := label(t, "")
	places := make([]page.Placement, n)
	for i := range places {
		places[i] = page.Placement{Frame: fr, Overlay: []page.Item{
			line(regular, 7, 72, 22, ink, fmt.Sprintf("Jar %05d / %d", i+1, n)),
			code(t, 72, 26, 18, fmt.Sprintf("https://example.org/r/L26165-GW/%05d", i+1)),
		}}
	}
	return sheetOf(places)
}
