package sheet

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// usualBleed is how far a ground is painted past the edge of a label that is cut
// already, so that a printer a little off leaves none of it white: common practice,
// no source.
const usualBleed = 1500 * unit.Micrometre

// roomForBleed is the most a ground may reach past any side of any cell: half the
// gap to the next one, the margin beside the last.
func (s *Sheet) roomForBleed() unit.Length {
	room := max(s.Left, s.Right, s.Top, s.Bottom, 0)
	if s.Cols > 1 {
		room = max(room, (s.PitchX-s.W)/2)
	}
	if s.Rows > 1 {
		room = max(room, (s.PitchY-s.H)/2)
	}
	return room
}

// around is what of the paper the ground of cell k may be painted on: no nearer to
// the next cell than halfway, and where cells touch, not past the edge.
func (s *Sheet) around(k int) page.Rect {
	at := s.At(k)
	x0, x1 := reach(k%s.Cols, s.Cols, at.X, s.W, s.PitchX, s.PaperW)
	y0, y1 := reach(k/s.Cols, s.Rows, at.Y, s.H, s.PitchY, s.PaperH)
	return page.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
}

// reach is the same in one direction, for the i-th of n cells.
func reach(i, n int, at, cell, pitch, paper unit.Length) (from, to unit.Length) {
	half := max(0, pitch-cell) / 2
	from, to = at-half, at+cell+half
	if i == 0 {
		from = min(at, 0)
	}
	if i == n-1 {
		to = max(at+cell, paper)
	}
	return from, to
}

// Touch reports whether cells lie without a gap beside and below each other.
func (s *Sheet) Touch() (beside, below bool) {
	return s.Cols > 1 && s.PitchX <= s.W+exact, s.Rows > 1 && s.PitchY <= s.H+exact
}
