package pantry

import (
	"math"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// Process is one row of process-times.csv: minutes in boiling water.
type Process struct {
	Key          string // "jam", "butter", "butter quart", "chutney", "low sugar", "curd"
	Product      string
	Jar          string
	Minutes      [3]int // to 1000 ft, to 6000 ft, above
	Headspace    unit.Length
	LeastHead    unit.Length // less or more headspace than these is a finding
	MostHead     unit.Length
	Presterilise bool
	Source       string
	Note         string
	Memory       bool
}

func (p *Pantry) loadProcess() error {
	t := readTable(p.from, "process-times")
	t.each(func(r row) {
		x := Process{Key: r.need("key"), Product: r.need("product"), Jar: r.need("jar"), Source: r.need("source"), Note: r.text("note")}
		x.read(r)
		x.LeastHead, x.MostHead = r.inches("headspace_min_in"), r.inches("headspace_max_in")
		x.Memory = memory(x.Source)
		p.process = append(p.process, x)
	})
	return t.err
}

// read fills in minutes, headspace and sterilising. USDA names one headspace;
// the range around it is our own reading of "about".
func (x *Process) read(r row) {
	for i, col := range []string{"min_0_1000ft", "min_1001_6000ft", "min_above_6000ft"} {
		x.Minutes[i] = int(r.number(col, 0))
		if x.Minutes[i] <= 0 {
			r.fail(col, "no minutes")
		}
	}
	x.Headspace = r.inches("headspace_in")
	x.LeastHead, x.MostHead = x.Headspace-unit.Inch/8, x.Headspace+unit.Inch/4
	r.need("presterilise")
	x.Presterilise = r.yes("presterilise")
	if x.MostJar() == 0 {
		r.fail("jar", "names no size")
	}
}

// inches reads "1/4".
func (r row) inches(col string) unit.Length {
	over, under, _ := strings.Cut(r.need(col), "/")
	a, err := strconv.Atoi(over)
	b, err2 := strconv.Atoi(under)
	if err != nil || err2 != nil || b <= 0 {
		r.fail(col, "is not a fraction of an inch")
		return 0
	}
	return unit.Inch * unit.Length(a) / unit.Length(b)
}

func (p *Pantry) loadAltitude() error {
	t := readTable(p.from, "altitude")
	t.each(func(r row) {
		r.need("source")
		p.steril = append(p.steril, point{r.number("altitude_ft", 0), r.number("sterilise_empty_jars_min", 0)})
		jelly := r.number("jelly_point_F_USDA_table", 0)
		if jelly == 0 { // the table ends at 8000 ft
			jelly = r.number("jelly_point_F_computed_plus8F", 0)
		}
		p.jelly = append(p.jelly, point{r.number("altitude_ft", 0), jelly})
	})
	return t.err
}

// ProcessTime gives the row of a product key.
func (p *Pantry) ProcessTime(key string) (Process, bool) {
	for _, x := range p.process {
		if x.Key == key {
			return x, true
		}
	}
	return Process{}, false
}

// At gives the minutes at an altitude.
func (x Process) At(altitude unit.Length) int {
	switch {
	case altitude <= 1000*unit.Foot:
		return x.Minutes[0]
	case altitude <= 6000*unit.Foot:
		return x.Minutes[1]
	}
	return x.Minutes[2]
}

// SteriliseMinutes gives how long empty jars boil at an altitude (USDA Guide
// 1: 10 minutes, and one more for each 1000 ft above the first).
func (p *Pantry) SteriliseMinutes(altitude unit.Length) int {
	ft := float64(altitude) / float64(unit.Foot)
	return int(between(p.steril, ft) + 0.999)
}

// thermometerC is how far a kitchen thermometer may be off, in °C: one degree
// Fahrenheit (common practice, no source).
const thermometerC = 5.0 / 9

// Finished reports whether jam that boils at tC °C has reached the jelly point
// of the altitude: 8 °F above boiling water, by the USDA jelly-point table (220
// °F at sea level, 218 at 1000 ft ... 205 at 8000 ft), which rounds to whole
// degrees, within the thermometer's own accuracy.
func (p *Pantry) Finished(tC float64, altitude unit.Length) bool {
	ft := float64(altitude) / float64(unit.Foot)
	tabled := (between(p.jelly, ft) - 32) * 5 / 9
	computed := BoilingPoint(altitude) + 8*5.0/9
	return tC >= math.Min(tabled, computed)-thermometerC
}
