package pantry

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"
)

// What makers write of how a pH was read, in three languages; our invention. The
// first word that fits counts as cook asks them: none, untrusted, strips, meter.
func TestPHWords(t *testing.T) {
	p := Default()
	first := func(said string) string {
		for _, m := range []string{PHNone, PHUntrusted, PHStrips, PHMeter} {
			if p.PHSays(said, m) {
				return m
			}
		}
		return ""
	}
	for said, want := range map[string]string{
		"none": PHNone, "no": PHNone, "N/A": PHNone, "keines": PHNone, "rien": PHNone, "guessed": PHNone, "by taste": PHNone, "looked up in a table": PHNone,
		"geschätzt": PHNone, "nach Geschmack": PHNone, "au pif": PHNone, "from the recipe": PHNone, "goût": PHNone, "estimée": PHNone,
		"no idea, meter": PHMeter, "non-contact probe": PHMeter, // "no" is none only alone
		"meter, not calibrated": PHUntrusted, "uncalibrated pen": PHUntrusted, "nicht kalibriert": PHUntrusted, "jamais étalonné": PHUntrusted, "pen, no buffers": PHUntrusted,
		"soil meter": PHUntrusted, "Gartenmessgerät": PHUntrusted, "Bodentester": PHUntrusted, "meter, calibrated last year": PHUntrusted, "pH-mètre cassé": PHUntrusted,
		"test strips": PHStrips, "litmus paper": PHStrips, "pH-Streifen": PHStrips, "Teststäbchen": PHStrips, "Lackmuspapier": PHStrips, "bandelettes": PHStrips, "red cabbage": PHStrips,
		"aquarium drops": PHStrips, "colour chart": PHStrips,
		"pocket meter, buffers 4 and 7 that day": PHMeter, "pH pen": PHMeter, "pHmeter": PHMeter, "Messgerät, Puffer 4 und 7": PHMeter, "pH-mètre, tampons": PHMeter, "at the lab": PHMeter,
		"PH20": PHMeter, "Elektrode": PHMeter, "": "", "my neighbour": "", "pencil": "",
	} {
		if got := first(said); got != want {
			t.Errorf("%q: %q, want %q", said, got, want)
		}
	}
}

// A slip in the table is told with its line and column.
func TestPHWordsMistakes(t *testing.T) {
	for row, want := range map[string]string{
		"en,metre,,pen,own":    "ph-words.csv: line 2: means",
		"english,meter,,pen,s": "ph-words.csv: line 2: lang",
		"en,meter,perhaps,p,s": "ph-words.csv: line 2: whole",
		"en,meter,,,s":         "ph-words.csv: line 2: words",
		"en,meter,,pen|*,s":    "ph-words.csv: line 2: words",
		"en,meter,,pen,":       "ph-words.csv: line 2: source",
	} {
		p := &Pantry{from: fstest.MapFS{"pantry/ph-words.csv": {Data: []byte("lang,means,whole,words,source\n" + row + "\n")}}}
		if err := errors.Join(p.loadPHWords()); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", row, err)
		}
	}
}
