package cook

import (
	"fmt"
	"slices"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

const (
	srcSteam = "University of Missouri Extension, after the University of Wisconsin and NCHFP: steam canning may not exceed 45 minutes, altitude included"
	srcJar   = "Kansas State University, You Asked It, 13 Sept 2019; USDA AIB 539"
	srcHead  = "USDA Complete Guide to Home Canning, Guide 1 (headspace); range around it our own"
)

// mostAltitude is above the highest town (from memory: about 5,100 m).
const mostAltitude = 5500 * unit.Metre

// roomAbove: no jar sold by a size holds more than this share of it to the brim,
// in percent; one that does is larger than its name (own reading of jars.csv).
const roomAbove = 130

// mostSteam is the longest steam process: the water in the base boils away.
// mostMinutes is more than any process of a sweet spread takes.
const (
	mostSteam   = 45
	mostMinutes = 120
)

func (c *calc) keepByProcess(v *verdict) {
	m := c.b.Process.Method
	said := func(fact, source string) Evidence { return Evidence{fact, Given, "process.method", source} }
	if x, unsafe := c.p.UnsafeMethod(m); unsafe {
		v.atLeast(Cold, said(m+": "+x.Reason, x.Source))
		c.warnf("unsafe-method", "process.method", "%s does not make a jar keep on the shelf: %s", m, x.Reason).Hinted(x.Hint).Cited(x.Source)
		return
	}
	switch m {
	case "boiling water", "steam":
		row := c.processRow()
		if c.noneSealed(v) {
			return
		}
		if c.timed(v, row) && c.jarsFit(v, row) && c.headroom(v, row) {
			v.processed = true
			v.atLeast(Shelf, Evidence{fmt.Sprintf("%g min by %s at %s, %s", *c.b.Process.Minutes, m, c.height(), row.Jar),
				Given, "process.minutes", row.Source})
		}
	case "none":
		v.atLeast(Cold, said("not processed", srcGuide1))
		c.warnf("not-processed", "process.method", "jars that were not processed are for the refrigerator").
			Hinted("process in boiling water for the time of your altitude").Cited(srcGuide1 + "; USDA AIB 539")
	default:
		v.atLeast(Cold, Evidence{"no process is recorded", Given, "process", srcGuide1})
		c.warnf("process-not-said", "process", "no process is recorded, so the label will say refrigerate").
			Hinted(`add [process] with method = "boiling water", minutes and altitude`).Cited(srcGuide1 + "; USDA AIB 539")
	}
}

// noneSealed: every jar was counted and none has a seal, so none is for the shelf.
func (c *calc) noneSealed(v *verdict) bool {
	if len(c.fills) == 0 || slices.ContainsFunc(c.fills, func(f batch.Fill) bool { return f.Count <= 0 || f.Sealed != 0 }) {
		return false
	}
	v.atLeast(Cold, Evidence{"no jar sealed", Given, "fill", srcSeal})
	c.warnf("none-sealed", "fill", "no jar is written down as sealed, so the label will say refrigerate").
		Hinted("count the lids that stay down after a day; process again within 24 h with new lids, or refrigerate").Cited(srcSeal)
	return true
}

// altitude of the kitchen, 0 when not given.
func (c *calc) altitude() unit.Length {
	if c.b.Process.AltitudeOK || c.b.Process.Altitude != 0 {
		return c.b.Process.Altitude
	}
	return c.k.Altitude
}

// height says the altitude as the kitchen measures.
func (c *calc) height() string {
	if c.k.Units != unit.Metric {
		return fmt.Sprintf("%.0f ft", float64(c.altitude())/float64(unit.Foot))
	}
	return fmt.Sprintf("%.0f m", float64(c.altitude())/float64(unit.Metre))
}

// foothill is where the minutes begin to rise (USDA Guide 7: 1,001 ft).
func (c *calc) foothill() string {
	if c.k.Units != unit.Metric {
		return "1000 ft"
	}
	return "300 m"
}

// processRow is the tested recipe's own process, or the row of the table.
// Quarts have a row of their own in the table.
func (c *calc) processRow() pantry.Process {
	row, _ := c.p.ProcessTime(c.processKey())
	if c.tested() && c.processKey() != "butter quart" {
		return c.recipe.Process
	}
	return row
}

// processKey is the row of the process table that fits the batch. The kind
// "spread" says nothing of the sugar; the sugar does.
func (c *calc) processKey() string {
	switch c.b.Product {
	case batch.Butter:
		for _, j := range c.r.Jars {
			if j.Jar.Nominal > 600*unit.Millilitre {
				return "butter quart"
			}
		}
		return "butter"
	case batch.Chutney, batch.Relish:
		return "chutney"
	case batch.Curd:
		return "curd"
	}
	read := c.r.Brix.How == Measured || c.r.Yield.How == Measured
	brix := c.sugarBrix()
	switch {
	case c.incomplete || c.fullSugar() || c.pectinSugar() || brix <= 0 || brix >= 60:
		return "jam"
	case read, c.sweetness() < leastSugar: // an estimate alone calls no recipe one of little sugar
		return "low sugar"
	}
	return "jam"
}

// timed compares the minutes with the table.
func (c *calc) timed(v *verdict, row pantry.Process) bool {
	p, alt := c.b.Process, c.altitude()
	need := row.At(alt)
	if !p.AltitudeOK && alt == 0 {
		c.warnf("altitude-not-said", "process", "no altitude is given; minutes are checked as up to %s", c.foothill()).
			Hinted("write altitude in the kitchen file; above " + c.foothill() + " the minutes rise").Cited(row.Source)
	}
	given := func(fact, source string) Evidence { return Evidence{fact, Given, "process.minutes", source} }
	switch {
	case alt > mostAltitude:
		v.atLeast(Cold, given("nobody cooks at that height", srcOwn))
		c.warnf("altitude-implausible", "process", "an altitude of %s is above all towns of the earth", alt.Format(c.k.Units)).
			Hinted("check the number and its unit: feet or metres").Cited(row.Source)
	case p.Minutes == nil:
		v.atLeast(Cold, given("process minutes are not recorded", row.Source))
		c.warnf("minutes-not-said", "process.minutes", "the minutes of the process are not recorded; %d are needed there for %s", need, row.Product).
			Hinted("record the minutes").Cited(row.Source)
	case !(*p.Minutes >= float64(need)):
		v.atLeast(Cold, given("processed too short for the altitude", row.Source))
		c.warnf("process-too-short", "process.minutes", "%g min are too short: %s takes %d min at that altitude", *p.Minutes, row.Product, need).
			Hinted("treat the jars as not processed: refrigerate, or process again within 24 h").Cited(row.Source)
	case *p.Minutes > mostMinutes:
		v.atLeast(Cold, given("no process of a sweet spread takes that long", srcOwn))
		c.warnf("minutes-implausible", "process.minutes", "%g min is no process of a sweet spread: the table asks %d", *p.Minutes, need).
			Hinted("write the minutes in the canner, not the day's work").Cited(row.Source)
	case p.Method == "steam" && *p.Minutes > mostSteam:
		v.atLeast(Cold, given("steamed longer than the water of a steam canner lasts", srcSteam))
		c.warnf("steam-too-long", "process.minutes", "%g min is over the %d min a steam canner may run", *p.Minutes, mostSteam).
			Hinted("process in boiling water").Cited(srcSteam)
	case *p.Minutes < 10 && (p.Sterilised == nil || !*p.Sterilised):
		v.atLeast(Cold, given("under 10 min and the jars were not sterilised, or nobody said so", srcGuide1))
		c.warnf("jars-not-sterile", "process.sterilised", "a process under 10 min needs sterile jars: boil them empty for %d min there", c.p.SteriliseMinutes(alt)).
			Hinted("record sterilised = true, or process 10 min").Cited(srcGuide1 + "; MSU Extension 1997")
	default:
		return true
	}
	return false
}

// jarsFit: a larger jar than was tested heats through too slowly.
func (c *calc) jarsFit(v *verdict, row pantry.Process) bool {
	for _, j := range c.r.Jars {
		if j.Jar.Nominal <= row.MostJar() && j.Jar.Brimful <= row.MostJar()*roomAbove/100 {
			continue
		}
		where := j.FillPath + ".jar"
		v.atLeast(Cold, Evidence{"a jar larger than the process was tested for: " + j.Jar.Description, Given, where, srcJar})
		c.warnf("jar-too-large", where, "%s was tested in %s jars, and %s is larger: its middle heats too slowly", row.Product, row.Jar, j.Jar.Description).
			Hinted("fill smaller jars, or refrigerate these; guessing at minutes does not do").Cited(srcJar)
		return false
	}
	return true
}

// headroom: too little and the food siphons out and fouls the seal, too much
// and air stays under the lid.
func (c *calc) headroom(v *verdict, row pantry.Process) bool {
	check := func(h unit.Length, where string) bool {
		if h == 0 || h >= row.LeastHead && h <= row.MostHead {
			return true
		}
		v.atLeast(Cold, Evidence{"headspace that leaves no good seal: " + h.Format(c.k.Units), Given, where, srcHead})
		c.warnf("headspace-off", where, "a headspace of %s is not that of the process, %s", h.Format(c.k.Units), row.Headspace.Format(c.k.Units)).
			Hinted("measure from the rim to the food; with too little it boils out under the lid, with too much air stays in").Cited(srcHead)
		return false
	}
	ok := check(c.b.Process.Headspace, "process.headspace")
	for _, f := range c.fills {
		ok = check(f.Headspace, f.Path+".headspace") && ok
	}
	return ok
}
