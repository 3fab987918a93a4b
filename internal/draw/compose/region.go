package compose

import (
	"math"
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// region is where type may stand: a box, or the part of it inside an oval,
// less holes.
type region struct {
	page.Rect
	oval  page.Rect   // box of an ellipse; zero = none
	holes []page.Rect // kept free, with their clear space already added
	air   unit.Length // blank left of the window that a letter's swash may hang into
}

// chord gives the free stretch for type between two heights; the stretch is
// empty (x1 <= x0) when there is none.
func (r region) chord(top, bottom unit.Length) (x0, x1 unit.Length) {
	x0, x1 = r.X, r.X+r.W
	if r.oval.W > 0 {
		half := min(halfChord(r.oval, top), halfChord(r.oval, bottom))
		mid := r.oval.X + r.oval.W/2
		x0, x1 = max(x0, mid-half), min(x1, mid+half)
	}
	mid := (x0 + x1) / 2
	for _, h := range r.holes {
		if h.Y >= bottom || h.Y+h.H <= top || h.X >= x1 || h.X+h.W <= x0 {
			continue
		}
		if h.X+h.W/2 >= mid {
			x1 = min(x1, h.X)
		} else {
			x0 = max(x0, h.X+h.W)
		}
	}
	return x0, x1
}

// halfChord is half the width of the ellipse in a box at a height.
func halfChord(o page.Rect, y unit.Length) unit.Length {
	ry := float64(o.H) / 2
	if ry <= 0 {
		return 0
	}
	d := (float64(y-o.Y) - ry) / ry
	if d <= -1 || d >= 1 {
		return 0
	}
	return unit.Length(float64(o.W) / 2 * math.Sqrt(1-d*d))
}

// less gives the region without one more hole. The list is a new one: regions
// are tried side by side, and what one keeps free is not the other's.
func (r region) less(hole page.Rect) region {
	r.holes = append(slices.Clone(r.holes), hole)
	return r
}

// inset moves the sides of the window in; the oval stays.
func (r region) inset(left, top, right, bottom unit.Length) region {
	r.X, r.Y = r.X+left, r.Y+top
	r.W, r.H = max(0, r.W-left-right), max(0, r.H-top-bottom)
	return r
}

// inscribed is the ellipse that touches the region's sides.
func (r region) inscribed() region { r.oval = r.Rect; return r }
