package cook

import (
	"strings"

	"jarmark/internal/kitchen/pantry"
)

// stripsPH is up to where paper strips are fine enough.
const (
	stripsPH  = 4.0
	srcStrips = "extension text, read in a copy: below pH 4 test strips may do, between 4.0 and 4.6 a meter is needed; 21 CFR 114.90"
)

// metered reports whether a pH may be taken from what it was read with: by eye
// or by heart it is no reading; up to pH 4.0 strips will do; above, it takes a
// meter where anything is said of it.
func (c *calc) metered(ph float64) bool {
	said := strings.TrimSpace(c.b.Cook.PHMeter)
	const (
		use     = "above pH 4.0 it takes a meter, calibrated that day with buffers 4 and 7"
		measure = `measure the finished, cooled batch: ph_meter = "pocket meter, buffers 4 and 7 that day"`
	)
	refuse := func(what, hint string) bool {
		c.warnf("ph-not-read", "cook.ph_meter", "%s; the reading of pH %g is not used", what, ph).Hinted(hint).Cited(srcStrips)
		return false
	}
	switch {
	case ph > acidLimit: // the worse news is believed from anything
		return true
	case c.p.PHSays(said, pantry.PHNone):
		return refuse("that is no instrument a pH was read with", measure)
	case c.p.PHSays(said, pantry.PHUntrusted):
		return refuse("a meter that was not calibrated, or is not made for food, shows nothing", use)
	case ph <= stripsPH || said == "":
		return true
	case c.p.PHSays(said, pantry.PHStrips):
		c.warnf("ph-strips", "cook.ph_meter", "paper strips and colours are too coarse for a pH of %g; the reading is not used", ph).Hinted(use).Cited(srcStrips)
		return false
	case !c.p.PHSays(said, pantry.PHMeter):
		return refuse("nothing says that it was read with a meter", use)
	}
	return true
}
