package ornament

import (
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// A garland in a low box is a short one of leaves that touch, and no thread of
// leaves far apart.
func TestLowGarlandIsShort(t *testing.T) {
	for _, h := range []float64{1.5, 2, 3, 8} {
		s := spec("plum", rect(5, 5, 70, h))
		var box page.Rect
		for i, it := range Draw("garland", s) {
			if b := it.(*page.Path).Bounds(); i == 0 {
				box = b
			} else {
				box = box.Union(b)
			}
		}
		if most := unit.MM(h * (mostArch + 0.5)); box.W > most || box.W < min(most, unit.MM(70))*7/10 {
			t.Errorf("%.1f mm high: %.1f mm wide", h, box.W.MM())
		}
		if off := box.X + box.W/2 - unit.MM(40); max(off, -off) > unit.Millimetre {
			t.Errorf("%.1f mm high: %.2f mm off the middle", h, off.MM())
		}
	}
}
