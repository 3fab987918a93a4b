package press

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
)

// darkGround is the contrast to bare paper from which a ground shows at the edge of
// a label it does not belong to (WCAG 2.2, 1.4.11: what must be seen).
const darkGround = 3

// touching tells of a dark ground on labels that touch. The paper beside them is
// painted a little way too, but the next label has a ground of its own.
func touching(s *sheet.Sheet, f *page.Frame) (l diag.List) {
	beside, below := s.Touch()
	if f.Bleed == 0 || !(below && darkAt(f, false) || beside && darkAt(f, true)) {
		return nil
	}
	l.Notef("labels-touch", "", "label.sheet", "the labels of sheet %s touch, and their ground is dark: a printer a little off leaves an edge of another label or of white", s.ID).
		Hinted("print `jarmark align` and correct the printer first, or take a sheet whose labels stand apart")
	return l
}

// darkAt reports whether a dark ground reaches past two sides of a label: the left
// and right one, or the upper and lower.
func darkAt(f *page.Frame, across bool) bool {
	white := page.Colour{R: 255, G: 255, B: 255}
	for _, it := range f.Items {
		p, ok := it.(*page.Path)
		if !ok || !p.Bleed || p.Fill == nil || palette.Contrast(*p.Fill, white) < darkGround {
			continue
		}
		b := p.Bounds()
		if across && (b.X < 0 || b.X+b.W > f.W) || !across && (b.Y < 0 || b.Y+b.H > f.H) {
			return true
		}
	}
	return false
}
