package batch

import (
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
	"sync"
)

var cookMethods = []string{"long boil", "added pectin", "freezer", "no cook"}

var cookMethodSynonyms = map[string]string{
	"pectin": "added pectin", "with pectin": "added pectin", "short boil": "added pectin", "no pectin": "long boil", "without pectin": "long boil",
}

var setTests = []string{"thermometer", "cold plate", "sheet", "refractometer", "none"}

var setTestSynonyms = map[string]string{
	"wrinkle": "cold plate", "wrinkle test": "cold plate", "plate": "cold plate", "saucer": "cold plate", "cold saucer": "cold plate",
	"sheeting": "sheet", "spoon": "sheet", "sheet test": "sheet", "temperature": "thermometer",
}

func (r *reader) cook(raw *rawCook) Cook {
	if raw == nil {
		return Cook{}
	}
	c := Cook{
		Method:  r.choice(raw.Method, "cook.method", "way of cooking", cookMethods, cookMethodSynonyms),
		Minutes: r.minutes(raw.Minutes, "cook.minutes", longCook),
		SetTest: r.choice(raw.SetTest, "cook.set_test", "set test", setTests, setTestSynonyms),
		TempC:   r.temperature(raw.Temperature, "cook.temperature"),
		Brix:    r.number(raw.Brix, "cook.brix", "brix", 1, 100),
		PH:      r.number(raw.PH, "cook.ph", "pH", 0, 14),
		PHDate:  r.date(raw.PHDate, "cook.ph_date"),
		PHMeter: r.text(raw.PHMeter, "cook.ph_meter"),
		Skimmed: r.mass(raw.Skimmed, "cook.skimmed"),
	}
	c.BrixTempC = r.temperature(raw.BrixTemperature, "cook.brix_temperature")
	pot, tare := r.mass(raw.FinishedPot, "cook.finished_pot"), r.mass(raw.PotTare, "cook.pot_tare")
	switch {
	case tare > 0 && !has(raw.FinishedPot):
		r.errorf("pot-not-weighed", "cook.pot_tare", "the empty pot is weighed, the full one not").Hinted(`add finished_pot = "5.2 kg", pot and jam together`)
	case pot > 0 && pot <= tare:
		r.errorf("tare-over-gross", "cook.pot_tare", "the empty pot (%s) weighs no less than the full one (%s)", *raw.PotTare, *raw.FinishedPot).
			Hinted("finished_pot is pot and jam together; pot_tare the empty pot")
	default:
		c.FinishedPot = pot - tare
	}
	return c
}

// ProcessMethods are the ways of processing, and those that make no jar keep,
// as unsafe-methods.csv has them.
var ProcessMethods = sync.OnceValue(func() []string {
	out := []string{"boiling water", "steam", "none", "refrigerator", "freezer"}
	for _, m := range pantry.Default().UnsafeMethods() {
		out = append(out, m.Method)
	}
	return out
})

var processSynonyms = map[string]string{
	"boiling water bath": "boiling water", "water bath": "boiling water", "boiling water canner": "boiling water", "bwb": "boiling water",
	"steam canner": "steam", "atmospheric steam": "steam", "fridge": "refrigerator", "wax": "paraffin", "upside down": "inversion", "no": "none",
	"inverted": "inversion", "turned over": "inversion", "hot fill": "open kettle", "hot filled": "open kettle", "oven canning": "oven", "dish washer": "dishwasher",
	"microwave oven": "microwave", "pressure": "pressure canner", "pressure canning": "pressure canner", "pressure cooker": "pressure canner",
	"solar": "sun", "sun canning": "sun", "vacuum sealer": "vacuum", "vacuum sealed": "vacuum", "vacuum sealing": "vacuum", "vacuum seal": "vacuum", "vacuum packed": "vacuum", "multi cooker": "multicooker", "electric pressure cooker": "multicooker",
	"instant canner": "multicooker", "rice cooker": "multicooker", "crock pot": "slow cooker", "crockpot": "slow cooker", "canned in the oven": "oven", "air fryer": "oven", "paraffin wax": "paraffin", "beeswax": "paraffin", "wax seal": "paraffin",
	"turned upside down": "inversion", "inversion method": "inversion", "flipped": "inversion", "hot pack": "open kettle", "hot packed": "open kettle", "self-sealed": "open kettle", "self sealed": "open kettle",
}

func (r *reader) process(raw *rawProcess) Process {
	if raw == nil {
		return Process{}
	}
	p := Process{
		Method:     r.choice(raw.Method, "process.method", "way of processing", ProcessMethods(), processSynonyms),
		Minutes:    r.minutes(raw.Minutes, "process.minutes", longProcess),
		Headspace:  r.headspace(raw.Headspace, "process.headspace"),
		Sterilised: raw.Sterilised,
	}
	if p.Sterilised == nil {
		p.Sterilised = raw.Sterilized
	}
	p.Altitude, p.AltitudeOK = r.altitude(raw.Altitude, "process.altitude")
	return p
}

// Minutes beyond these are more likely a slip than a long day (common practice,
// no source).
const (
	longCook    = 720
	longProcess = 180
)

// minutes reads a time, and asks about one nobody would stand at the stove.
func (r *reader) minutes(p *float64, path string, usual float64) *float64 {
	m := r.number(p, path, "minutes", 0, 1440)
	if m != nil && *m > usual {
		r.l.Warnf("long-time", r.file, path, "%s minutes are %.1f hours", number(*m), *m/60).Hinted("check the number: it counts minutes")
	}
	return m
}

// altitude reads a height above the sea; ok is false when it wasn't given.
func (r *reader) altitude(p *string, path string) (h unit.Length, ok bool) {
	before := len(r.l)
	h = r.length(p, path, -1500*unit.Foot, 30_000*unit.Foot, "an altitude between -1500 and 30000 ft")
	return h, has(p) && *p != "" && len(r.l) == before
}

func (r *reader) headspace(p *string, path string) unit.Length {
	return r.length(p, path, unit.Millimetre, 2*unit.Inch, "a headspace between 1 mm and 2 in")
}
