package page

import (
	"slices"

	"jarmark/internal/kit/unit"
)

// CutColour is of no label, for a machine and a print shop to find.
var CutColour = Colour{R: 255, B: 255}

// CutWidth is thin: a line to follow, not to print.
const CutWidth = 100 * unit.Micrometre

// CutLines gives the outline of every label of the page, the hole of a tag too.
func (p *Page) CutLines() (out []*Path) {
	for _, pl := range p.Places {
		line := pl.Frame.Outline()
		line.Stroke, line.Width = &CutColour, CutWidth
		for i, at := range line.Pts {
			if pl.Turn == 90 {
				at.X, at.Y = pl.Frame.H-at.Y, at.X
			}
			line.Pts[i] = Point{X: pl.At.X + at.X, Y: pl.At.Y + at.Y}
		}
		out = append(out, line)
	}
	return out
}

// Contoured reports whether a label of the page is cut otherwise than straight from
// corner to corner, so that a trim box alone does not tell how.
func (p *Page) Contoured() bool {
	return slices.ContainsFunc(p.Places, func(pl Placement) bool { return pl.Frame.Shape != Rectangle || pl.Frame.Corner > 0 })
}

// A cutting machine finds the printed page by black corners: as far from the edge as
// most printers reach, and bold enough for its eye (common practice, no source).
const (
	CornerInset = 9 * unit.Millimetre / 2
	CornerArm   = 8 * unit.Millimetre
	CornerWidth = unit.Millimetre / 2
)

// Corners gives the black corners of the page; one that would lie on a label is left out.
func (p *Page) Corners() (out []*Path) {
	black := Colour{}
	for i := range 4 {
		at, x, y := Point{X: CornerInset, Y: CornerInset}, CornerArm, CornerArm
		if i%2 == 1 {
			at.X, x = p.W-CornerInset, -x
		}
		if i >= 2 {
			at.Y, y = p.H-CornerInset, -y
		}
		mark := &Path{Ops: []Op{MoveTo, LineTo, LineTo}, Pts: []Point{{X: at.X + x, Y: at.Y}, at, {X: at.X, Y: at.Y + y}}, Stroke: &black, Width: CornerWidth}
		if 2*(CornerInset+CornerArm) < min(p.W, p.H) && !slices.ContainsFunc(p.Places, func(pl Placement) bool { return mark.EdgeIn(pl.Reach()) }) {
			out = append(out, mark)
		}
	}
	return out
}

// Reach is where a placed label lies with its bleed.
func (pl Placement) Reach() Rect {
	r := Rect{X: pl.At.X, Y: pl.At.Y, W: pl.Frame.W, H: pl.Frame.H}
	if pl.Turn == 90 {
		r.W, r.H = r.H, r.W
	}
	r = r.Grow(pl.Frame.Bleed, pl.Frame.Bleed)
	if pl.Within.W > 0 {
		r = r.Common(pl.Within)
	}
	return r
}

// Clipped reports whether the label may not paint all of its bleed.
func (pl Placement) Clipped() bool {
	whole := pl
	whole.Within = Rect{}
	return pl.Reach() != whole.Reach()
}
