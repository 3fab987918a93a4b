package sheet_test

import (
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/unit"
)

// TestGroundsReachPastEveryFreeEdge: on every sheet of cells the ground of a label is
// painted 1.5 mm past each side, or halfway to the next cell where that is nearer, or to
// the edge of the paper; never into another cell, be it free or used. So a printer 1 mm
// off leaves no white edge but where cells touch, where the next label's ground stands
// (common practice, no source).
func TestGroundsReachPastEveryFreeEdge(t *testing.T) {
	const usual = 3 * unit.Millimetre / 2
	touching := 0
	for _, s := range builtin(t).List() {
		if s.Auto {
			continue
		}
		cell := s.Cell()
		want := func(i, n int, gap, before, after unit.Length) (lo, hi unit.Length) {
			lo, hi = min(cell.Bleed, gap/2), min(cell.Bleed, gap/2)
			if i == 0 {
				lo = min(cell.Bleed, before)
			}
			if i == n-1 {
				hi = min(cell.Bleed, after)
			}
			return lo, hi
		}
		if free := max(s.Left, s.Top, s.Right, s.Bottom); cell.Bleed != min(usual, max(free, 0)) {
			t.Errorf("%s: labels are made with %.2f mm of bleed", s.ID, cell.Bleed.MM())
		}
		d, l := impose(labels(s.Cells(), s.W, s.H, cell.Bleed), s, sheet.Options{})
		if l.HasErrors() {
			t.Fatal(l)
		}
		for k, p := range d.Pages[0].Places {
			b, r := placed(p, 0), p.Reach()
			x0, x1 := want(k%s.Cols, s.Cols, s.PitchX-s.W, s.Left, s.Right)
			y0, y1 := want(k/s.Cols, s.Rows, s.PitchY-s.H, s.Top, s.Bottom)
			got := page.Rect{X: b.X - r.X, Y: b.Y - r.Y, W: r.X + r.W - b.X - b.W, H: r.Y + r.H - b.Y - b.H}
			for _, d := range []unit.Length{got.X - x0, got.Y - y0, got.W - x1, got.H - y1} {
				if d > 10*unit.Micrometre || d < -10*unit.Micrometre {
					t.Fatalf("%s: label %d reaches %v past its sides, want %v %v %v %v", s.ID, k, got, x0, y0, x1, y1)
				}
			}
			if got.H == 0 && s.PitchY == s.H {
				touching++
			}
		}
	}
	if touching < 100 {
		t.Errorf("%d labels touch the one below: the sheets most makers own are not looked at", touching)
	}
}
