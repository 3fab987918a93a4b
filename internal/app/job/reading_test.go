package job_test

import (
	"image"
	"math"
	"sort"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

// readBlock reads a block's words off the page by where the letters stand:
// PDFium's own order is upset by kerning. Blanks are not minded.
func readBlock(t *testing.T, f *presstest.File, pl page.Placement, block string) (words string) {
	t.Helper()
	chars, all := onLabel(f, pl), f.Squeezed(0)
	for _, it := range pl.Frame.Items {
		x, ok := it.(*page.Text)
		if !ok || x.Block != block {
			continue
		}
		got, whole := lineOn(chars, x.At, x.Box.W), presstest.Squeeze(x.String())
		if got == "" && (spaced(x) || x.Turn != 0) && strings.Contains(all, whole) {
			got = whole // read by its ActualText, which has no places
		}
		words += got
	}
	return words
}

// spaced tells a line set letter by letter.
func spaced(x *page.Text) bool { return len(x.Segs) >= 3 }

// onLabel gives the letters of the page in a label's own coordinates.
func onLabel(f *presstest.File, pl page.Placement) (out []presstest.Char) {
	for _, c := range f.Chars(0) {
		if c.Guessed || presstest.Squeeze(string(c.R)) == "" {
			continue
		}
		x, y := c.At.X-pl.At.X, c.At.Y-pl.At.Y
		if pl.Turn == 90 { // clockwise: (x, y) of the label went to (H - y, x)
			x, y = y, pl.Frame.H-x
		}
		c.At = page.Point{X: x, Y: y}
		out = append(out, c)
	}
	return out
}

// lineOn gives the letters on one baseline from a place on, left to right.
func lineOn(chars []presstest.Char, at page.Point, width unit.Length) string {
	const give = unit.Millimetre / 10
	var on []presstest.Char
	for _, c := range chars {
		if c.At.Y > at.Y-give && c.At.Y < at.Y+give && c.At.X > at.X-give && c.At.X < at.X+width-give {
			on = append(on, c)
		}
	}
	sort.Slice(on, func(i, j int) bool { return on[i].At.X < on[j].At.X })
	s := ""
	for _, c := range on {
		s += string(c.R)
	}
	return s
}

func anyBlock(t *testing.T, f *presstest.File, pl page.Placement, want string) bool {
	t.Helper()
	seen := map[string]bool{}
	for _, it := range pl.Frame.Items {
		if x, ok := it.(*page.Text); ok && !seen[x.Block] {
			seen[x.Block] = true
			if strings.Contains(readBlock(t, f, pl, x.Block), presstest.Squeeze(want)) {
				return true
			}
		}
	}
	return false
}

// box is a stretch of ink, in mm; zero when there is none.
type box struct{ left, top, right, bottom float64 }

func (b box) any() bool { return b != box{} }

// inkBox gives the extent of dark pixels in a part of the page, in mm.
func inkBox(img *image.RGBA, dpi, x0, y0, x1, y1 float64) (out box) {
	px := dpi / 25.4
	for y := int(y0 * px); y < int(y1*px); y++ {
		for x := int(x0 * px); x < int(x1*px); x++ {
			if c := img.RGBAAt(x, y); int(c.R)+int(c.G)+int(c.B) > 300 {
				continue
			}
			here := box{float64(x) / px, float64(y) / px, float64(x+1) / px, float64(y+1) / px}
			if !out.any() {
				out = here
			}
			out = box{min(out.left, here.left), min(out.top, here.top), max(out.right, here.right), max(out.bottom, here.bottom)}
		}
	}
	return out
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.1 {
		t.Errorf("%s at %.3f mm, want %.3f", what, got, want)
	}
}

// lineOf is the first line of a block on a label.
func lineOf(t *testing.T, f *page.Frame, block string) *page.Text {
	t.Helper()
	for _, it := range f.Items {
		if x, ok := it.(*page.Text); ok && x.Block == block {
			return x
		}
	}
	t.Fatalf("no line of %q in the frame", block)
	return nil
}

// inside checks that every letter PDFium finds stands in the safe area of one
// of the labels: an independent look at clipping.
func inside(t *testing.T, f *presstest.File, d *page.Doc) {
	t.Helper()
	const give = unit.Millimetre / 10
	for i, p := range d.Pages {
		chars := f.Chars(i)
		for _, c := range chars {
			if c.Guessed || presstest.Squeeze(string(c.R)) == "" || len(p.Marks) > 0 && !within(p, c.At, 0) {
				continue
			}
			if !within(p, c.At, -give) && !bogus(chars, c) {
				t.Errorf("page %d: %q at %.1f, %.1f mm stands outside every safe area", i, string(c.R), c.At.X.MM(), c.At.Y.MM())
				return
			}
		}
	}
}

// bogus tells a letter read from ActualText: PDFium gives all letters of such
// a line one place.
func bogus(all []presstest.Char, c presstest.Char) bool {
	n := 0
	for _, o := range all {
		if o.At == c.At {
			n++
		}
	}
	return n > 1
}

func within(p page.Page, at page.Point, give unit.Length) bool {
	for _, pl := range p.Places {
		w, h, s := pl.Frame.W, pl.Frame.H, pl.Frame.Safe
		if give == 0 {
			s = 0
		}
		if pl.Turn == 90 {
			w, h = h, w
		}
		x, y := at.X-pl.At.X, at.Y-pl.At.Y
		if x >= s+give && y >= s+give && x <= w-s-give && y <= h-s-give {
			return true
		}
	}
	return false
}
