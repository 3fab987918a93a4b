package pdf_test

import (
	"image"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

// picture draws items at 10 pixels to the millimetre.
func picture(t *testing.T, items ...page.Item) *image.RGBA {
	t.Helper()
	return openRender(t, write(t, one(items...)))
}

func openRender(t *testing.T, raw []byte) *image.RGBA {
	t.Helper()
	return presstest.Open(t, raw).Render(0, 254)
}

func wantColour(t *testing.T, img *image.RGBA, x, y float64, want page.Colour) {
	t.Helper()
	got := img.RGBAAt(int(x*10), int(y*10))
	if (page.Colour{R: got.R, G: got.G, B: got.B}) != want {
		t.Errorf("at %.1f, %.1f mm: %v, want %v", x, y, got, want)
	}
}

var white = page.Colour{R: 255, G: 255, B: 255}

func TestPathsAreDrawn(t *testing.T) {
	ring := filled(box(10, 10, 20, 20), berry)
	inner := box(15, 15, 10, 10)
	ring.Ops, ring.Pts, ring.EvenOdd = append(ring.Ops, inner.Ops...), append(ring.Pts, inner.Pts...), true
	solid := filled(box(40, 10, 20, 20), berry)
	solid.Ops, solid.Pts = append(solid.Ops, inner.Ops...), append(solid.Pts, at(45, 15), at(55, 15), at(55, 25), at(45, 25))
	dashed := &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{at(10, 50), at(50, 50)},
		Stroke: &ink, Width: mm(2), Dash: []unit.Length{mm(6), mm(4)}}
	round := &page.Path{Ops: dashed.Ops, Pts: []page.Point{at(10, 60), at(50, 60)}, Stroke: &ink, Width: mm(4), Round: true}
	butt := &page.Path{Ops: dashed.Ops, Pts: []page.Point{at(10, 70), at(50, 70)}, Stroke: &ink, Width: mm(4)}
	both := filled(box(70, 10, 20, 20), paper)
	both.Stroke, both.Width = &ink, mm(2)
	img := picture(t, ring, solid, dashed, round, butt, both)
	for _, c := range []struct {
		x, y float64
		want page.Colour
	}{
		{12, 20, berry}, {20, 20, white}, {50, 20, berry}, // even-odd leaves a hole, the other rule none
		{13, 50, ink}, {18, 50, white}, {23, 50, ink}, {28, 50, white}, // 6 mm on, 4 mm off
		{8.7, 60, ink}, {51.2, 60, ink}, {30, 60, ink}, // round caps reach past the end
		{8.7, 70, white}, {51.2, 70, white}, {18, 70, ink}, // plain ones do not; no dashes left over
		{80, 20, paper}, {70, 20, ink}, {69.3, 20, ink}, {71.5, 20, paper},
	} {
		wantColour(t, img, c.x, c.y, c.want)
	}
}

// TestCurvesAndBleed: a shared label shows its bleed and nothing beyond.
func TestCurvesAndBleed(t *testing.T) {
	const k = 0.5522847498
	disc := &page.Path{Fill: &berry,
		Ops: []page.Op{page.MoveTo, page.CubicTo, page.CubicTo, page.CubicTo, page.CubicTo, page.Close},
		Pts: []page.Point{at(10, 0), at(10, 10*k), at(10*k, 10), at(0, 10), at(-10*k, 10), at(-10, 10*k), at(-10, 0),
			at(-10, -10*k), at(-10*k, -10), at(0, -10), at(10*k, -10), at(10, -10*k), at(10, 0)}}
	fr := &page.Frame{W: mm(20), H: mm(20), Bleed: mm(2), Items: []page.Item{disc}}
	for _, n := range []int{1, 2} { // drawn in place, and as a shared form
		d := one()
		for i := range n {
			d.Pages[0].Places = append(d.Pages[0].Places, page.Placement{Frame: fr, At: at(20+30*float64(i), 20)})
		}
		img := presstest.Open(t, write(t, d)).Render(0, 254)
		wantColour(t, img, 22, 22, berry)
		wantColour(t, img, 28.5, 21, berry)
		wantColour(t, img, 28.5, 26, white) // beyond radius 10 from 20, 20
		wantColour(t, img, 18.5, 22, berry) // in the bleed
		wantColour(t, img, 17.5, 22, white) // beyond it
	}
}
