package inspect

import (
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// pictured puts a picture of 20 x 10 pixels on a sound label: at a place, or
// where x is 0 on the maker's line, -1 by the code, -2 on the bar, -3 right of
// the net quantity.
func pictured(x, y, w, h unit.Length) func(*testing.T, *sample) {
	return func(t *testing.T, s *sample) {
		at := page.Rect{X: x, Y: y, W: w, H: h}
		switch x {
		case 0:
			at.X, at.Y = s.maker.At.X, s.maker.At.Y-h/2
		case -1:
			at.X, at.Y = s.qr.At.X-w-unit.Length(mm)/2, s.qr.At.Y
		case -2:
			at.X, at.Y = s.bar.Bounds().X, s.bar.Bounds().Y-h/2
		case -3:
			ink := inkOf(s.net, typefaces(t).Face(s.net.Face))
			at.X, at.Y = ink.X+ink.W+mm/2, ink.Y
		}
		s.fr.Items = append(s.fr.Items, &page.Picture{At: at, Image: &page.Image{W: 20, H: 10, Pix: make([]byte, 800)}})
	}
}
