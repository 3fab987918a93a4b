package pantry

import (
	"jarmark/internal/kit/unit"
)

// Process is one row of process-times.csv: minutes in boiling water.
type Process struct {
	Key          string // "jam", "butter", "butter quart", "chutney", "low sugar", "curd"
	Product      string
	Jar          string
	Minutes      [3]int // to 1000 ft, to 6000 ft, above
	Headspace    unit.Length
	Presterilise bool
	Source       string
	Note         string
	Memory       bool
}

func (p *Pantry) loadProcess() error {
	t := readTable("process-times")
	t.each(func(r row) {
		x := Process{Key: r.need("key"), Product: r.need("product"), Jar: r.need("jar"), Source: r.need("source"), Note: r.text("note")}
		for i, col := range []string{"min_0_1000ft", "min_1001_6000ft", "min_above_6000ft"} {
			x.Minutes[i] = int(r.number(col, 0))
		}
		x.Headspace = unit.Inch / 4
		if r.need("headspace_in") == "1/2" {
			x.Headspace = unit.Inch / 2
		}
		x.Presterilise = r.need("presterilise") == "yes"
		x.Memory = memory(x.Source)
		p.process = append(p.process, x)
	})
	return t.err
}

func (p *Pantry) loadAltitude() error {
	t := readTable("altitude")
	t.each(func(r row) {
		r.need("source")
		p.steril = append(p.steril, point{r.number("altitude_ft", 0), r.number("sterilise_empty_jars_min", 0)})
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

// ProcessMinutes gives the boiling-water minutes of a product key at an
// altitude; false when there is no such product.
func (p *Pantry) ProcessMinutes(key string, altitude unit.Length) (int, bool) {
	x, ok := p.ProcessTime(key)
	return x.At(altitude), ok
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
