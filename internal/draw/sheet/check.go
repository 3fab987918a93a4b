package sheet

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Measured sheets need not add up to the hair: a ruler reads to 0.2 mm.
const slack = 200 * unit.Micrometre

// check tests that the geometry of a read sheet is possible.
func (s *Sheet) check(l *diag.List) {
	if s.Safe*2 >= min(s.PaperW, s.PaperH) {
		l.Errorf("sheet-safe", s.File, "safe", "a safe edge of %.1f mm leaves nothing of the paper", s.Safe.MM()).Hinted("1 to 3 mm is usual; common practice, no source")
	}
	if s.Auto {
		s.checkPlain(l)
		return
	}
	s.checkAxis(l, "x", "left", "right", "columns", s.PaperW, s.W, s.PitchX, s.Left, s.Right, s.Cols)
	s.checkAxis(l, "y", "top", "bottom", "rows", s.PaperH, s.H, s.PitchY, s.Top, s.Bottom, s.Rows)
	half := min(s.W, s.H) / 2
	if s.Corner > half {
		l.Errorf("sheet-corner", s.File, "corner", "a corner of %.1f mm is more than half a label side of %.1f mm", s.Corner.MM(), 2*half.MM()).
			Hinted("the corner is the radius of the rounding")
	}
	if s.Corner > 0 && s.Shape == page.Ellipse {
		l.Errorf("sheet-corner", s.File, "corner", "an ellipse has no corners").Hinted("remove corner")
	}
	if s.Safe >= half {
		l.Errorf("sheet-safe", s.File, "safe", "a safe edge of %.1f mm leaves nothing of a label of %s", s.Safe.MM(), size(s.W, s.H)).
			Hinted("1 to 3 mm is usual; common practice, no source")
	}
	if room := s.roomForBleed(); s.Bleed > room+exact {
		l.Errorf("sheet-bleed", s.File, "bleed", "a bleed of %.1f mm is more than any side of a label has: there is room for %.1f mm", s.Bleed.MM(), room.MM()).
			Hinted("leave bleed out")
	}
}

// checkAxis checks one direction: cells on the paper, apart, and adding up.
func (s *Sheet) checkAxis(l *diag.List, axis, before, after, many string, paper, cell, pitch, first, last unit.Length, n int) {
	if n > 1 && pitch < cell-exact {
		l.Errorf("sheet-overlap", s.File, "pitch", "%s overlap: the pitch of %.2f mm is %.2f mm less than the label", many, pitch.MM(), (cell - pitch).MM()).
			Hinted("the pitch is from a label's edge to the same edge of the next")
		return
	}
	end := first + unit.Length(n-1)*pitch + cell
	if first < 0 || end > paper+exact {
		over := max(-first, end-paper)
		l.Errorf("sheet-off-paper", s.File, "margin."+before, "%d %s of %.1f mm are %.1f mm more than the paper's %.1f mm takes", n, many, cell.MM(), over.MM(), paper.MM()).
			Hinted("check paper, cell, pitch and margin." + before)
		return
	}
	if gap := paper - end - last; gap > slack || gap < -slack {
		l.Errorf("sheet-sum", s.File, "margin."+after, "%s add up to %.1f mm of %.1f mm paper: margin.%s is off by %.1f mm", many, (end + last).MM(), paper.MM(), after, gap.MM()).
			Hinted("measure again, or leave margin." + after + " out")
	}
	if d := first - last; s.Symmetric && (d > slack || d < -slack) {
		l.Errorf("sheet-symmetry", s.File, "symmetric", "margins %s and %s differ by %.1f mm on a sheet said to be symmetric", before, after, max(d, -d).MM()).
			Hinted("remove symmetric, or correct the margins")
	}
}

func (s *Sheet) checkPlain(l *diag.List) {
	if s.Left+s.Right > s.PaperW-minSide/2 || s.Top+s.Bottom > s.PaperH-minSide/2 {
		l.Errorf("sheet-margin", s.File, "margin", "the margins leave less than 10 mm of the paper").Hinted("make the margins smaller")
	}
	if s.Gutter < 2*s.Bleed {
		l.Errorf("sheet-bleed", s.File, "bleed", "a bleed of %.1f mm needs a gutter of %.1f mm", s.Bleed.MM(), 2*s.Bleed.MM()).Hinted("widen gutter")
	}
}
