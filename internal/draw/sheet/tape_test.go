package sheet_test

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/draw/sheet"
)

func tapeOf(t *testing.T, s *sheet.Sheet) (*page.Doc, *presstest.File) {
	t.Helper()
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	d := sheet.Tape(s, fs)
	if len(d.Pages) == 0 {
		return d, nil
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, d, fs); err != nil {
		t.Fatal(err)
	}
	return d, presstest.Open(t, b.Bytes())
}

// TestTapeTellsTheTruth looks at PDFium's picture at 10 pixels to the millimetre:
// every millimetre of both strips has its tick on the left edge, every eighth of
// an inch (25.4 mm by the international yard and pound agreement of 1959, from
// memory) on the right, and the strips go on where the one before ends.
func TestTapeTellsTheTruth(t *testing.T) {
	for _, id := range []string{"letter-plain", "a4-plain", "letter-wrap-210x60"} {
		d, f := tapeOf(t, get(t, id))
		if len(d.Pages) != 1 || d.Pages[0].W > d.Pages[0].H {
			t.Fatalf("%s: %d pages", id, len(d.Pages))
		}
		img := f.Render(0, 254)
		at := 0.0 // measure on the whole tape
		for strip, long := range []int{250, 150} {
			left, top := 9.0+27*float64(strip), 19.0
			tick := func(x, y float64) bool { // within 0.1 mm
				for dy := -1; dy <= 1; dy++ {
					if img.RGBAAt(int(x*10), int(y*10)+dy).R < 160 {
						return true
					}
				}
				return false
			}
			for mm := 0; mm <= long; mm++ {
				if y := top + float64(mm); !tick(left+1, y) {
					t.Fatalf("%s: no tick at %.0f mm of the tape", id, at+float64(mm))
				} else if tick(left+1, y+0.5) && mm < long {
					t.Fatalf("%s: a tick between %.0f mm and the next", id, at+float64(mm))
				}
			}
			for k := 0; float64(k)*3.175 <= at+float64(long); k++ {
				if y := top + float64(k)*3.175 - at; y >= top && !tick(left+21.3, y) {
					t.Fatalf("%s: no tick at %d/8 in", id, k)
				}
			}
			at += float64(long)
		}
		for _, want := range []string{"[[jar]]", `panel = "49 mm"`, "actual size"} {
			if len(f.Find(0, want)) != 1 {
				t.Errorf("%s: %q is not there once", id, want)
			}
		}
		for mm := 10; mm < 400; mm += 10 { // each figure stands at its tick
			if mm == 250 {
				continue // twice, at the seam
			}
			found := false
			for _, m := range d.Pages[0].Marks {
				x, ok := m.(*page.Text)
				if !ok || strings.TrimSpace(x.String()) != fmt.Sprint(mm) {
					continue
				}
				v, _ := strconv.Atoi(x.String())
				y := 19 + float64(v)
				if v > 250 {
					y -= 250
				}
				mid := x.At.Y.MM() - 0.9
				found = found || mid > y-1 && mid < y+1
			}
			if !found {
				t.Errorf("%s: %d stands elsewhere or nowhere", id, mm)
			}
		}
	}
}

// TestTapeOfOtherPaper: nothing leaves the paper, and paper that is too small
// gives none.
func TestTapeOfOtherPaper(t *testing.T) {
	for _, c := range []struct {
		w, h float64
		want int
	}{{297, 420, 1}, {210, 148, 0}, {279.4, 215.9, 1}, {62, 100, 0}, {100, 150, 0}, {20, 20, 0}, {200, 120, 0}} {
		s := &sheet.Sheet{ID: "own", Title: "Own", Auto: true, PaperW: mm(c.w), PaperH: mm(c.h)}
		d, _ := tapeOf(t, s)
		if len(d.Pages) != c.want {
			t.Fatalf("%v: %d pages", c, len(d.Pages))
		}
		for _, pg := range d.Pages {
			for _, m := range pg.Marks {
				switch x := m.(type) {
				case *page.Path:
					b := x.Bounds()
					if b.X < 0 || b.Y < 0 || b.X+b.W > pg.W || b.Y+b.H > pg.H {
						t.Errorf("%v: a line leaves the paper", c)
					}
				case *page.Text:
					if x.Box.X < 0 || x.Box.X+x.Box.W > pg.W || x.At.Y > pg.H {
						t.Errorf("%v: %q leaves the paper", c, x.String())
					}
				}
			}
		}
	}
	if d := sheet.Tape(nil, nil); len(d.Pages) != 0 {
		t.Error("a tape on no paper")
	}
}
