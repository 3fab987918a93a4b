package pdf_test

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

func one(items ...page.Item) *page.Doc {
	return &page.Doc{Pages: []page.Page{{W: mm(100), H: mm(100), Marks: items}}}
}

// TestRefusals: what cannot be drawn truly is an error that says why, never a
// panic and never a page with a hole.
func TestRefusals(t *testing.T) {
	at0 := page.Point{}
	text := func(s string) *page.Text { return line(regular, 10, 10, 10, ink, s) }
	turned := text("x")
	turned.Turn = math.NaN()
	placed := func(p page.Placement) *page.Doc {
		d := one()
		d.Pages[0].Places = []page.Placement{p}
		return d
	}
	frame := &page.Frame{W: mm(10), H: mm(10)}
	for _, c := range []struct {
		name string
		d    *page.Doc
		says string
	}{
		{"nothing", nil, "needs a page"},
		{"no pages", &page.Doc{}, "needs a page"},
		{"emoji", one(text("strawberry \U0001F353")), "up to U+FFFF"},
		{"missing letter", one(text("苺")), "not in typeface Figtree_400Regular"},
		{"control letter", one(text("a\x01b")), "not in typeface"},
		{"broken UTF-8", one(text("a\xffb")), "not in typeface"},
		{"unknown face", one(line("Nowhere_400", 10, 0, 0, ink, "a")), `no typeface "Nowhere_400"`},
		{"no size", one(line(regular, 0, 0, 0, ink, "a")), "no usable size"},
		{"NaN turn", one(turned), "no usable size, place or turn"},
		{"nil item", one(nil), "unknown item"},
		{"nil text", one((*page.Text)(nil)), "empty text"},
		{"nil path", one((*page.Path)(nil)), "empty path"},
		{"nil code", one((*page.Code)(nil)), "empty QR"},
		{"path without move", one(&page.Path{Ops: []page.Op{page.LineTo}, Pts: []page.Point{at0}}), "start with a move"},
		{"path short of points", one(&page.Path{Ops: []page.Op{page.MoveTo, page.CubicTo}, Pts: []page.Point{at0, at0}}), "take 4 points, 2 given"},
		{"unknown operation", one(&page.Path{Ops: []page.Op{page.MoveTo, 9}, Pts: []page.Point{at0}}), "operation 9"},
		{"far away", one(&page.Path{Ops: []page.Op{page.MoveTo}, Pts: []page.Point{{X: math.MaxInt64}}}), "outside any paper"},
		{"negative dash", one(&page.Path{Dash: []unit.Length{-1}}), "dash"},
		{"oblong code", one(&page.Code{At: page.Rect{W: 9, H: 9}, Modules: [][]bool{{true, false}, {true}}}), "square"},
		{"flat code", one(&page.Code{Modules: [][]bool{{true}}}), "no usable size"},
		{"no frame", placed(page.Placement{}), "no frame"},
		{"odd turn", placed(page.Placement{Frame: frame, Turn: 45}), "turn of 45"},
		{"empty frame", placed(page.Placement{Frame: &page.Frame{}}), "frame of 0.0"},
		{"tiny page", &page.Doc{Pages: []page.Page{{W: 1, H: 1}}}, "outside 3 to 14400 pt"},
		{"vast page", &page.Doc{Pages: []page.Page{{W: 6 * unit.Metre, H: 1 * unit.Metre}}}, "outside 3 to 14400 pt"},
		{"scale", &page.Doc{Pages: one().Pages, ScaleX: math.Inf(1)}, "scale"},
		{"language", &page.Doc{Pages: one().Pages, Lang: "en) /X ("}, "BCP 47"},
		{"date", &page.Doc{Pages: one().Pages, Created: math.MaxInt64}, "date"},
	} {
		var b bytes.Buffer
		err := pdf.Write(&b, c.d, faces(t))
		if err == nil || !strings.Contains(err.Error(), c.says) || strings.Contains(err.Error(), "fault") {
			t.Errorf("%s: %v, want %q", c.name, err, c.says)
		}
		if b.Len() > 0 {
			t.Errorf("%s: wrote %d bytes", c.name, b.Len())
		}
	}
	if err := pdf.Write(&bytes.Buffer{}, one(text("a")), nil); err == nil {
		t.Error("text without typefaces")
	}
}

type fullDisk struct{ left int }

var errFull = errors.New("disk full")

func (w *fullDisk) Write(p []byte) (int, error) {
	if w.left -= len(p); w.left < 0 {
		return 0, errFull
	}
	return len(p), nil
}

func TestWriterErrorComesBack(t *testing.T) {
	for _, left := range []int{0, 100, 10_000} {
		if err := pdf.Write(&fullDisk{left}, repeated(t, 1), faces(t)); !errors.Is(err, errFull) {
			t.Errorf("after %d bytes: %v", left, err)
		}
	}
}

// TestStrangeButSound: odd input that can be drawn is drawn.
func TestStrangeButSound(t *testing.T) {
	d := one(line(regular, 10, 10, 20, ink, "(a\\b) < > é"),
		&page.Text{Face: regular, Size: mm(3), Colour: ink},
		&page.Path{}, &page.Path{Ops: []page.Op{page.MoveTo}, Pts: []page.Point{{}}, Fill: &ink})
	d.Title, d.Author, d.Created = "Jam \U0001F353 (1) \\", "Élodie \r\n", -1
	d.Pages = append(d.Pages, page.Page{W: mm(50), H: mm(20)})
	f := presstest.Open(t, write(t, d))
	if got := f.Text(0); got != "(a\\b) < > é" {
		t.Errorf("read back %q", got)
	}
	if f.Meta("Title") != d.Title || f.Meta("Author") != d.Author || f.Meta("CreationDate") != "D:19691231235959" {
		t.Errorf("facts %q, %q, %q", f.Meta("Title"), f.Meta("Author"), f.Meta("CreationDate"))
	}
	if w, h := f.Size(1); math.Abs(w.MM()-50) > 0.01 || math.Abs(h.MM()-20) > 0.01 {
		t.Errorf("second page of %.2f x %.2f mm", w.MM(), h.MM())
	}
}
