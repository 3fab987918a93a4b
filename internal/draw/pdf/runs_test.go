package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// wreathed is labels of 3000 points each, alike but for the colour of one
// shape; drawings are equal, never the same value.
func wreathed(n int) *page.Doc {
	d := &page.Doc{Title: "tags"}
	for i := range n {
		f := &page.Frame{W: 50 * unit.Millimetre, H: 80 * unit.Millimetre}
		for k := range 30 {
			c := page.Colour{R: 10, G: 90, B: 20}
			p := &page.Path{Fill: &c}
			for j := range 100 {
				op := page.LineTo
				if j == 0 {
					op = page.MoveTo
				}
				p.Ops, p.Pts = append(p.Ops, op), append(p.Pts, page.Point{X: unit.Length(j*j*7919%50_000_000 + k), Y: unit.Length(j * k * 104729 % 80_000_000)})
			}
			f.Items = append(f.Items, p)
		}
		own := page.Colour{R: uint8(i), G: uint8(i >> 8)}
		f.Items = append(f.Items, &page.Path{Fill: &own, Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo}, Pts: []page.Point{{}, {X: 1000}, {Y: 1000}}})
		d.Pages = append(d.Pages, page.Page{W: 210 * unit.Millimetre, H: 297 * unit.Millimetre, Places: []page.Placement{{Frame: f}}})
	}
	return d
}

// TestEqualDrawingsAreWrittenOnce: a hundred labels with one wreath are not
// much larger than five, and each draws it.
func TestEqualDrawingsAreWrittenOnce(t *testing.T) {
	size := func(n int) int {
		var b bytes.Buffer
		if err := Write(&b, wreathed(n), nil); err != nil {
			t.Fatal(err)
		}
		return b.Len()
	}
	if five, many := size(5), size(100); many > five+95*1500 {
		t.Errorf("5 labels take %d bytes, 100 take %d", five, many)
	}
	s, err := inspect(wreathed(6), nil)
	if err != nil {
		t.Fatal(err)
	}
	d := wreathed(6)
	if s, err = inspect(d, nil); err != nil {
		t.Fatal(err)
	}
	p := newPress(d, s, nil, images{})
	for i := range d.Pages {
		var c content
		p.page(&c, &d.Pages[i])
		if strings.Count(string(c.b), "/TPLR1 Do") != 1 || strings.Count(string(c.b), "f\n") != 1 {
			t.Errorf("page %d: %s", i, c.b)
		}
	}
	if n := len(p.parts); n != 6 || fmt.Sprint(len(p.parts[d.Pages[0].Places[0].Frame])) != "2" {
		t.Errorf("%d frames share", n)
	}
}
