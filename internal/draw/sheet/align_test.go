package sheet_test

import (
	"bytes"
	"image"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/draw/sheet"
)

func alignment(t *testing.T, s *sheet.Sheet) (*page.Doc, *presstest.File) {
	t.Helper()
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	d := sheet.Align(s, fs)
	var b bytes.Buffer
	if err := pdf.Write(&b, d, fs); err != nil {
		t.Fatal(err)
	}
	return d, presstest.Open(t, b.Bytes())
}

// TestAlignmentRulers measures the printed rulers in PDFium's picture at
// 10 pixels to the millimetre.
func TestAlignmentRulers(t *testing.T) {
	for _, id := range []string{"letter-2x5-4x2in", "a4-round-40", "letter-wrap-210x60", "a4-plain"} {
		_, f := alignment(t, get(t, id))
		img := f.Render(0, 254)
		x0, x1 := darkRun(img, true)
		y0, y1 := darkRun(img, false)
		if d := x1 - x0 - 1000; d < -3 || d > 3 {
			t.Errorf("%s: ruler across is %.1f mm long", id, float64(x1-x0)/10)
		}
		if d := y1 - y0 - 1000; d < -3 || d > 3 {
			t.Errorf("%s: ruler down is %.1f mm long", id, float64(y1-y0)/10)
		}
		for _, at := range []image.Point{{120, 120}, {img.Bounds().Dx() - 120, img.Bounds().Dy() - 120}} {
			if !dark(img, at.X, at.Y) && !dark(img, at.X-1, at.Y-1) {
				t.Errorf("%s: no cross 12 mm from the edges", id)
			}
		}
	}
}

func dark(img *image.RGBA, x, y int) bool { return img.RGBAAt(x, y).R < 100 }

// darkRun finds the longest unbroken black line across (or down) a picture.
func darkRun(img *image.RGBA, across bool) (from, to int) {
	w, h := img.Bounds().Dx(), img.Bounds().Dy()
	if !across {
		w, h = h, w
	}
	for v := range h {
		start := -1
		for u := 0; u <= w; u++ {
			on := u < w && (across && dark(img, u, v) || !across && dark(img, v, u))
			switch {
			case on && start < 0:
				start = u
			case !on && start >= 0:
				if u-start > to-from {
					from, to = start, u
				}
				start = -1
			}
		}
	}
	return from, to
}

func TestAlignmentTellsWhatToWrite(t *testing.T) {
	s := get(t, "a4-3x8-70x36")
	_, f := alignment(t, s)
	for _, want := range []string{"Printer alignment", s.Title, "[printer]", "scale_x = 100 /", "offset_y = 12 mm less", "actual size"} {
		if len(f.Find(0, want)) != 1 {
			t.Errorf("%q is not on the page once: %q", want, f.Text(0))
		}
	}
}

// TestAlignmentOfSmallPaper: nothing leaves the paper, whatever its size.
func TestAlignmentOfSmallPaper(t *testing.T) {
	for _, wh := range [][2]float64{{62, 100}, {100, 150}, {20, 20}, {40, 300}, {420, 297}} {
		s := &sheet.Sheet{ID: "own", Title: "Own", Auto: true, PaperW: mm(wh[0]), PaperH: mm(wh[1])}
		d, _ := alignment(t, s)
		for _, m := range d.Pages[0].Marks {
			if p, ok := m.(*page.Path); ok {
				for _, q := range p.Pts {
					if q.X < 0 || q.Y < 0 || q.X > s.PaperW || q.Y > s.PaperH {
						t.Fatalf("%v: mark at %.1f, %.1f mm", wh, q.X.MM(), q.Y.MM())
					}
				}
			}
			if x, ok := m.(*page.Text); ok && (x.Box.X+x.Box.W > s.PaperW || x.At.Y > s.PaperH) {
				t.Errorf("%v: text %q runs to %.1f mm", wh, x.String(), (x.Box.X + x.Box.W).MM())
			}
		}
	}
	if d := sheet.Align(nil, nil); len(d.Pages) != 0 {
		t.Error("page for no sheet")
	}
}
