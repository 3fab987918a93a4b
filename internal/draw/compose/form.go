package compose

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// A jar need not be a cylinder. Round a flat-sided one a label folds at the
// corners; on a tapered one, whose side is part of a cone, a straight label does
// not lie level: unrolled, level lines are arcs about the cone's tip.

// level is how far the ends of a straight label may stand off level before the
// eye sees it: our own taste.
const level = 3 * unit.Millimetre / 2

// coneRadius is how far the middle of a tapered side is from the tip of its
// cone; 0 when the jar is not tapered or not measured.
func coneRadius(c *label.Content) float64 {
	more, less := max(c.Around, c.Foot).MM(), min(c.Around, c.Foot).MM()
	if c.Foot <= 0 || c.Straight <= 0 || more <= less {
		return 0
	}
	turn := (more - less) / c.Straight.MM() // the angle of the unrolled side
	return (more + less) / 2 / turn
}

// rise is how far the ends of a straight label of a width stand off level on
// the jar.
func rise(c *label.Content, w unit.Length) unit.Length {
	r, half := coneRadius(c), w.MM()/2
	if r <= half {
		if r > 0 {
			return unit.MM(r)
		}
		return 0
	}
	return unit.MM(r - math.Sqrt(r*r-half*half))
}

// straightEnough is how far the piece for a tapered jar may differ from a
// rectangle before it is cut as a part of a ring.
const straightEnough = unit.Millimetre / 2

// Unrolled is the side of a tapered jar for a label of a height in its middle and
// of a share of the way around, less a gap. A frustum with circumferences C and c
// and slant s unrolls to a part of a ring with radii sC/(C-c) and sc/(C-c) and the
// angle (C-c)/s (The Math Forum, Ask Dr. Math, "Designing and Building a Cone
// Frustum", 24 March 2004, mathforum.org/library/drmath/view/65796.html, read 27
// November 2026, there with radii R and r: Rs/(R-r), rs/(R-r), 360(R-r)/s degrees).
// W is the label's length along its narrow edge. It is not ok on a straight jar, on
// one with flat sides, and where a rectangle serves as well or the piece would be
// more than a half ring.
func Unrolled(c *label.Content, h unit.Length, share float64, gap unit.Length) (w unit.Length, cone page.Cone, ok bool) {
	more, less, slant := float64(max(c.Around, c.Foot)), float64(min(c.Around, c.Foot)), float64(c.Straight)
	if c.Foot <= 0 || c.Around <= 0 || c.Straight <= 0 || more <= less || c.Face > 0 {
		return 0, cone, false
	}
	turn := (more - less) / slant
	cone.Inner, cone.Up = unit.Length(math.Round(less/turn))+(c.Straight-h)/2, c.Foot > c.Around
	if cone.Inner <= 0 {
		return 0, page.Cone{}, false
	}
	w = unit.Length(turn*share*float64(cone.Inner)) - gap
	arc := cone.Arc(w, h)
	if w <= 0 || arc.Angle > math.Pi || Sagitta(arc) < straightEnough {
		return 0, page.Cone{}, false
	}
	return w, cone, true
}

// Sagitta is how far the ends of a piece stand off level from its middle.
func Sagitta(a page.Arc) unit.Length {
	return unit.Length(float64(a.Outer) * (1 - math.Cos(a.Angle/2)))
}

// LevelWidth is the widest straight label that lies level on the jar; 0: any.
func LevelWidth(c *label.Content) unit.Length {
	r := coneRadius(c)
	if r == 0 {
		return 0
	}
	d := min(level.MM(), r)
	return unit.MM(2 * math.Sqrt(d*(2*r-d)))
}

// checkForm tells where a label folds over a corner or stands off level.
func (b brief) checkForm(found *diag.List) {
	c, w := b.content, b.cell.W
	if c.Face > 0 && w > c.Face && b.piece != label.Wrap {
		found.Notef("wider-than-face", "", "label.sheet", "label is %.1f mm wide, one flat side of %s %.1f mm: it folds at the corners",
			w.MM(), b.jarName(), c.Face.MM()).Hinted("a label of at most the width of one side lies flat; else fold it before the backing comes off")
	}
	if up := rise(c, w); up > level && b.cell.Cone == (page.Cone{}) {
		found.Warnf("off-level", "", "label.sheet", "%s is tapered: a straight label of %.0f mm stands %.1f mm off level at its ends",
			b.jarName(), w.MM(), up.MM()).
			Hinted("one of at most " + LevelWidth(c).Format("mm") + " looks level; without a sheet or a size of your own it is cut from plain paper, bent to the jar; measure your jar and write circumference, foot and panel under [[jar]]")
	}
}
