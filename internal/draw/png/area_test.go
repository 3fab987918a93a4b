package png

import (
	"image"
	"image/color"
	"math"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// ink sums how dark a picture of black on white is, in mm².
func ink(img *image.RGBA, dpi float64) float64 {
	sum := 0.0
	for i := 0; i < len(img.Pix); i += 4 {
		sum += 1 - float64(img.Pix[i])/255
	}
	side := 25.4 / dpi
	return sum * side * side
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: %.4f, want %.4f ± %.4f", what, got, want, tolerance)
	}
}

func ruled(stroke unit.Length, pts ...page.Point) *page.Path {
	p := &page.Path{Pts: pts, Stroke: &black, Width: stroke}
	for i := range pts {
		p.Ops = append(p.Ops, map[bool]page.Op{true: page.MoveTo, false: page.LineTo}[i == 0])
	}
	return p
}

func circle(c page.Point, r unit.Length) *page.Path {
	k := unit.Length(math.Round(float64(r) * 0.5522847498))
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.CubicTo, page.CubicTo, page.CubicTo, page.CubicTo, page.Close},
		Pts: []page.Point{
			{X: c.X + r, Y: c.Y}, {X: c.X + r, Y: c.Y + k}, {X: c.X + k, Y: c.Y + r}, {X: c.X, Y: c.Y + r},
			{X: c.X - k, Y: c.Y + r}, {X: c.X - r, Y: c.Y + k}, {X: c.X - r, Y: c.Y},
			{X: c.X - r, Y: c.Y - k}, {X: c.X - k, Y: c.Y - r}, {X: c.X, Y: c.Y - r},
			{X: c.X + k, Y: c.Y - r}, {X: c.X + r, Y: c.Y - k}, {X: c.X + r, Y: c.Y},
		},
	}
}

// Areas of plane figures (geometry): the picture's ink must weigh the same.
func TestAreas(t *testing.T) {
	c := page.Point{X: 10 * mm, Y: 10 * mm}
	disc := circle(c, 7*mm)
	disc.Fill = &black
	ring := circle(c, 7*mm)
	ring.Stroke, ring.Width = &black, 2*mm
	hole := circle(c, 7*mm)
	small := circle(c, 3*mm)
	hole.Ops, hole.Pts, hole.Fill, hole.EvenOdd = append(hole.Ops, small.Ops...), append(hole.Pts, small.Pts...), &black, true
	both := circle(c, 7*mm)
	both.Ops, both.Pts, both.Fill = append(both.Ops, small.Ops...), append(both.Pts, small.Pts...), &black
	a, b := page.Point{X: 3 * mm, Y: 4 * mm}, page.Point{X: 15 * mm, Y: 13 * mm} // 15 mm apart: 9-12-15
	plain, round := ruled(2*mm, a, b), ruled(2*mm, a, b)
	round.Round = true
	corner := ruled(2*mm, page.Point{X: 3 * mm, Y: 3 * mm}, page.Point{X: 13 * mm, Y: 3 * mm}, page.Point{X: 13 * mm, Y: 13 * mm})
	roundCorner := ruled(2*mm, corner.Pts...)
	roundCorner.Round = true
	dashes := ruled(2*mm, page.Point{X: 1 * mm, Y: 5 * mm}, page.Point{X: 19 * mm, Y: 5 * mm})
	dashes.Dash = []unit.Length{2 * mm, 1 * mm}
	odd := ruled(2*mm, dashes.Pts...)
	odd.Dash = []unit.Length{2 * mm}
	dot := ruled(4*mm, c, c)
	dot.Round = true
	// A round corner: two strips that overlap in 1 mm² at the inner side, a
	// quarter disc outside, two half discs as caps.
	for name, k := range map[string]struct {
		p    *page.Path
		want float64
	}{
		"disc":                      {disc, math.Pi * 49},
		"stroked circle":            {ring, math.Pi * (64 - 36)},
		"even-odd ring":             {hole, math.Pi * (49 - 9)},
		"non-zero disc in disc":     {both, math.Pi * 49},
		"butt line":                 {plain, 15 * 2},
		"round line":                {round, 15*2 + math.Pi},
		"mitred corner":             {corner, 10*2 + 10*2},
		"round corner":              {roundCorner, 2*(10*2) - 1 + math.Pi/4 + math.Pi},
		"dashes 2 on 1 off":         {dashes, 6 * 2 * 2},
		"one dash length for both":  {odd, 5 * 2 * 2},
		"line without length, dots": {dot, math.Pi * 4},
	} {
		for _, dpi := range []float64{150, 300} {
			near(t, name, ink(render(t, frame(20*mm, 20*mm, k.p), dpi), dpi), k.want, 0.004*k.want+0.05)
		}
	}
}

// A box on pixel borders is exact to the pixel.
func TestBoxIsPixelExact(t *testing.T) {
	q := unit.Inch / 100 // one pixel at 100 dpi
	p := &page.Path{
		Ops:  []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts:  []page.Point{{X: 10 * q, Y: 20 * q}, {X: 40 * q, Y: 20 * q}, {X: 40 * q, Y: 30 * q}, {X: 10 * q, Y: 30 * q}},
		Fill: &red,
	}
	img := render(t, frame(unit.Inch, unit.Inch/2, p), 100)
	if img.Bounds() != image.Rect(0, 0, 100, 50) {
		t.Fatalf("picture is %v", img.Bounds())
	}
	for y := range 50 {
		for x := range 100 {
			want := color.RGBA{255, 255, 255, 255}
			if image.Pt(x, y).In(image.Rect(10, 20, 40, 30)) {
				want = color.RGBA{200, 30, 40, 255}
			}
			if got := img.RGBAAt(x, y); got != want {
				t.Fatalf("pixel %d,%d is %v, want %v", x, y, got, want)
			}
		}
	}
}
