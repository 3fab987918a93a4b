package cook

import (
	"regexp"
	"strings"
	"sync"
)

// stripsPH is up to where paper strips are fine enough.
const (
	stripsPH  = 4.0
	srcStrips = "extension text, read in a copy: below pH 4 test strips may do, between 4.0 and 4.6 a meter is needed; 21 CFR 114.90"
)

// What a maker writes of the instrument, in three languages (own lists): a
// number nobody read off anything, a meter nobody may trust, what shows a
// colour, and what is a meter. Compiled when a pH is first judged.
var (
	noReading = once(`(?i)^\W*(none|no|nothing|n/?a|unknown|keine[rs]?|nix|aucune?|non|rien)\W*$|\b(guess\w*|estimat\w+|assum\w+|tast\w+|tongue|internet|website|book|table|recipe|published|typical|looked up|` +
		`geschätzt|schätz\w+|geschmack|tabelle|internet|estim\w+|goût|livre|au pif)\b`)
	untrusted = once(`(?i)\b(un|not |never |nicht |non |pas |jamais |in)(calibrated|kalibriert|geeicht|étalonn\w+|calibr\w+)|\bwithout (calibration|buffers?)|\bno (calibration|buffers?)|` +
		`\b(broken|faulty|defekt|kaputt|cassé|soil|garden|boden\w*|pool)\b`)
	strips = once(`(?i)\b(strips?|paper|papers|litmus|(test|ph-?)?streifen|teststreifen|\w*papier|lackmus|tournesol|bandelettes?|languettes?|\w*stäbchen|` +
		`(dip)?sticks?|dip ?sticks?|cabbage|rotkohl|chou|drops?|tropfen|gouttes|aquarium|indicator|indikator|indicateur|colou?r\w*)\b`)
	meter = once(`(?i)meter|metre|mètre|messgerät|gerät|probe|electrode|elektrode|électrode|sonde|\blab\b|labor|\bpen\b|buffer|puffer|tampon|calibrat|kalibr|geeicht|étalon|digital|instrument|tester|\d`)
)

func once(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

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
	case noReading().MatchString(said):
		return refuse("that is no instrument a pH was read with", measure)
	case untrusted().MatchString(said):
		return refuse("a meter that was not calibrated, or is not made for food, shows nothing", use)
	case ph <= stripsPH || said == "":
		return true
	case strips().MatchString(said):
		c.warnf("ph-strips", "cook.ph_meter", "paper strips and colours are too coarse for a pH of %g; the reading is not used", ph).Hinted(use).Cited(srcStrips)
		return false
	case !meter().MatchString(said):
		return refuse("nothing says that it was read with a meter", use)
	}
	return true
}
