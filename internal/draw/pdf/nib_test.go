package pdf_test

import (
	"testing"

	"bytes"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
)

// corner is a sharp corner of a thick line, its point to the right at (x, y).
func corner(x, y float64, n *page.Nib) *page.Path {
	return &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo}, Pts: []page.Point{{X: mm(x - 20), Y: mm(y - 5)}, {X: mm(x), Y: mm(y)}, {X: mm(x - 20), Y: mm(y + 5)}},
		Stroke: &berry, Width: mm(4), Nib: n}
}

// TestNibs: PDFium ends and turns a stroke as its nib says (ISO 32000-1, 8.4.3), and
// what is drawn after it as before: butt ends, mitres of up to ten widths.
func TestNibs(t *testing.T) {
	img := openRender(t, write(t, one(corner(30, 20, nil), corner(30, 40, &page.Nib{Join: page.BevelJoin, Mitre: 10}), corner(30, 60, &page.Nib{Cap: page.SquareCap, Mitre: 2}),
		corner(30, 80, &page.Nib{Cap: page.RoundCap, Join: page.RoundJoin, Mitre: 1}), corner(70, 20, nil), corner(70, 40, &page.Nib{Mitre: 9}))))
	for _, c := range []struct {
		what string
		x, y float64
		ink  bool
	}{
		{"a mitre, 8.2 mm long", 35, 20, true}, {"a bevel", 33, 40, false}, {"a mitre cut off", 33, 60, false}, {"a round corner", 31.5, 80, true},
		{"a round corner's mitre", 34, 80, false}, {"a mitre after nibs", 75, 20, true}, {"a mitre of a nib", 75, 40, true},
		{"a butt end", 8.7, 14.7, false}, {"a square end", 8.7, 54.7, true}, {"a butt end after nibs", 48.7, 14.7, false},
	} {
		if p := img.RGBAAt(int(c.x*10), int(c.y*10)); (p.G < 200) != c.ink {
			t.Errorf("%s: ink %v", c.what, !c.ink)
		}
	}
	for name, n := range map[string]*page.Nib{"end": {Cap: 3, Mitre: 1}, "corner": {Join: 3, Mitre: 1}, "mitre": {Mitre: 0.5}} {
		if err := pdf.Write(new(bytes.Buffer), one(corner(30, 20, n)), faces(t)); err == nil {
			t.Errorf("an unknown %s is written", name)
		}
	}
}
