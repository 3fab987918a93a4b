package cook

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Figs are above pH 4.6 at times (FDA, Approximate pH of Foods, 2003), so a jam
// of them keeps by what was read alone: readings that contradict each other, and
// a pH from no meter, keep nothing; bad news is believed from anything.
func TestReadingsInDoubt(t *testing.T) {
	num := func(f float64) *float64 { return &f }
	ten := 10.0
	for name, x := range map[string]struct {
		brix, temp, pot, ph float64
		meter               string
		shelf               bool
	}{
		"full sugar":              {brix: 66, shelf: true},
		"boiled as full sugar":    {brix: 66, temp: 104.5, shelf: true},
		"boiled as water":         {brix: 66, temp: 100},
		"boiled as thin syrup":    {brix: 66, temp: 101.2},
		"far too hot":             {brix: 66, temp: 109, shelf: true},
		"little read, boiled hot": {brix: 64, temp: 101},
		"a pot as it should be":   {brix: 66, pot: 1620, shelf: true},
		"a pot that is too heavy": {brix: 66, pot: 1890},
		"a meter":                 {ph: 4.1, meter: "pH-Meter, Puffer 4 und 7", shelf: true},
		"strips, sour":            {ph: 3.8, meter: "pH strips", shelf: true},
		"strips, near the limit":  {ph: 4.1, meter: "pH strips"},
		"a guess":                 {ph: 3.5, meter: "guessed"},
		"not calibrated":          {ph: 3.5, meter: "pen, not calibrated"},
		"something else":          {ph: 4.1, meter: "Anna's"},
		"low acid by a meter":     {brix: 66, ph: 4.8, meter: "pen, buffers 4 and 7"},
		"low acid by strips":      {brix: 66, ph: 4.8, meter: "strips"},
		"low acid by guess":       {brix: 66, ph: 4.8, meter: "a guess"},
	} {
		b := &batch.Batch{Name: "Fig jam", Product: batch.Jam, Made: unit.Date{Year: 2026, Month: 6, Day: 14},
			Process: batch.Process{Method: "boiling water", Minutes: &ten, AltitudeOK: true}, Fills: []batch.Fill{{Jar: "us8", Count: -1, Sealed: -1}},
			Ingredients: []batch.Ingredient{ing(t, "figs", "1 kg", ""), ing(t, "sugar", "900 g", "")}}
		k := &b.Cook
		if x.brix > 0 {
			k.Brix = num(x.brix)
		}
		if x.temp > 0 {
			k.TempC = num(x.temp)
		}
		if x.ph > 0 {
			k.PH, k.PHDate, k.PHMeter = num(x.ph), unit.Date{Year: 2026, Month: 6, Day: 15}, x.meter
		}
		k.FinishedPot = unit.Grams(x.pot)
		r, _ := Compute(b, nil, pantry.Default())
		if got := r.Keeping.Class == Shelf || r.Keeping.Class == ShelfShort; got != x.shelf {
			t.Errorf("%s: %s, %v", name, r.Keeping.Class, r.Keeping.Reasons)
		}
	}
}
