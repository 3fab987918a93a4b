package face

import (
	"testing"

	"jarmark/fonts"
	"jarmark/internal/kit/unit"
)

// A legal height is measured on the ink (21 CFR 101.7(h)), so a face never says
// that its letters are higher than they are drawn, and says it to a thousandth.
func TestHeightsAreNotRoundedUp(t *testing.T) {
	s, err := Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	const em = 1000 * unit.Nanometre
	for _, name := range s.Names() {
		f := s.Face(name)
		for _, c := range []struct {
			letter rune
			said   unit.Length
			whole  bool
		}{{'x', f.XHeight(em), false}, {'o', f.LowerO(em), true}, {'H', f.CapHeight(em), false}} {
			lo, hi := f.Outline(c.letter).bounds()
			high := -lo.Y
			if c.whole {
				high = hi.Y - lo.Y
			}
			if d := high*1000 - float64(c.said); d < -1e-3 || d >= 1 {
				t.Errorf("%s %c: said %d, drawn %.3f", name, c.letter, c.said, high*1000)
			}
		}
	}
}
