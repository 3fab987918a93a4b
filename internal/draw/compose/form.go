package compose

import (
	"math"

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
	if up := rise(c, w); up > level {
		found.Warnf("off-level", "", "label.sheet", "%s is tapered: a straight label of %.0f mm stands %.1f mm off level at its ends",
			b.jarName(), w.MM(), up.MM()).
			Hinted("one of at most " + LevelWidth(c).Format("mm") + " looks level: take a front and an information label instead of a wrap; measure your jar and write circumference, foot and panel under [[jar]]")
	}
}
