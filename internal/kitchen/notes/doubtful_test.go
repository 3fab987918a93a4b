package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// A number that may be grams, and a hot reading, are asked about; fewer pieces
// and cooled samples are not. Our own invention.
func TestDoubtfulFigures(t *testing.T) {
	for line, want := range map[string]string{
		"strawberries 1200": "1200 g, or", "strawberries 1200 rhubarb 300": "300 g, or", "plums 100": "100 g, or", "plums 99": "", "12 lemons": "", "strawberries 1200 g": "", "1.2 kg plums": "",
		"brix 63 hot": "cooled", "63 °Brix, heiß gemessen": "cooled", "Brix 64 à chaud": "cooled", "brix 65 at 20 C": "", "65 brix cooled": "",
	} {
		r := Read(line, pantry.Default())
		asks := strings.Join(r.Lines[0].Asks, "; ")
		if want == "" && (asks != "" || !r.Lines[0].Read()) || !strings.Contains(asks, want) {
			t.Errorf("%q: asks %q, want %q", line, asks, want)
		}
		for _, k := range r.Lines[0].Keys {
			if k.Path == "cook.brix" && k.Asked != (want == "cooled") {
				t.Errorf("%q: %+v", line, k)
			}
		}
	}
}

// Cups of a food the table weighs by the piece alone are asked about; crushed, or of
// a food with a cup, they are not. Our own invention.
func TestCupsWithoutAWeight(t *testing.T) {
	for line, want := range map[string]bool{
		"2 cups kumquats, sliced": true, "1/2 cup maraschino cherries, chopped": true, "2 tsp cinnamon stick, broken": true,
		"2 cups crushed kumquats": false, "6 kumquats": false, "4 cups saskatoons": false, "4 cups chopped quince": false, "3 tbsp crystallized ginger": false, "300 g kumquats": false,
	} {
		asks := strings.Join(Read(line, pantry.Default()).Lines[0].Asks, "; ")
		if strings.Contains(asks, "weigh?") != want {
			t.Errorf("%q asks %q", line, asks)
		}
	}
}
