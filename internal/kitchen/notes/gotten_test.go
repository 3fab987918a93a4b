package notes

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// What was filled stands beside what the recipe promised: the jars are the
// recipe's where it knows one size, and the promise is no second plan. Our own
// invention.
func TestWhatWasFilledBesideWhatWasPromised(t *testing.T) {
	for text, want := range map[string]string{
		"makes 8 half-pints\ngot 7 and a bit":   "8 fl oz 7",
		"makes 8 half-pints\ngot 7 half-pints":  "8 fl oz 7",
		"got 7\nmakes 8 half-pints":             "8 fl oz 7",
		"makes 4 pints\ngot 3 half-pints":       "8 fl oz 3",
		"makes 4 pints and 2 half-pints\ngot 5": " 5",
		"makes 8 half-pints":                    "8 fl oz -1",
		"ergibt 6 Gläser à 200 ml\nbekam 5":     "200 ml 5",
		"got 4 pints\ngot 2 more":               "16 fl oz 4",
	} {
		r := Read("2 lb plums\n2 lb sugar\n"+text, pantry.Default())
		src := r.TOML(Head{Name: "Plum", Product: "jam", Made: "2026-06-14"})
		for _, l := range r.Lines {
			if !strings.Contains(string(src), "line "+string(rune('0'+l.No))+": "+l.Text) {
				t.Errorf("%q: line %d is lost in\n%s", text, l.No, src)
			}
		}
		b, _ := batch.Parse("", src, nil)
		var got []string
		for _, f := range b.Fills {
			got = append(got, f.Jar+" "+strconv.Itoa(f.Count))
		}
		if s := strings.Join(got, ", "); strings.TrimSpace(s) != strings.TrimSpace(want) {
			t.Errorf("%q: %q, want %q\n%s", text, s, want, src)
		}
	}
}

// Temperatures and weights in the words of a notebook.
func TestReadingsInTheWordsOfANotebook(t *testing.T) {
	for line, want := range map[string]string{
		"222 F at the end": "cook.temperature \"222 °F\"", "got to 218 F, plate ok": "cook.temperature \"218 °F\"", "off at 104 C": "cook.temperature \"104 °C\"", "end temp 105 °C": "cook.temperature \"105 °C\"",
		"am Ende 104,5 °C": "cook.temperature \"104,5 °C\"", "105 °C à la fin": "cook.temperature \"105 °C\"",
		"finished 2.6 kg": "cook.finished_pot \"2.6 kg\"", "finished weight: 5 lb 3 oz": "cook.finished_pot \"5 lb 3 oz\"",
		"oven 220 F": "", "222 F at the back of the oven": "",
	} {
		r := Read(line, pantry.Default())
		got := ""
		for _, k := range r.Lines[0].Keys {
			if k.Path == "cook.temperature" || k.Path == "cook.finished_pot" {
				got = k.Path + " " + k.Value
			}
		}
		if got != want {
			t.Errorf("%q: %q, want %q (%v)", line, got, want, r.Lines[0].Asks)
		}
	}
}

// What was done with jars tells that they were filled; what a recipe has one do does
// not, nor does what went into the pot. Our own invention.
func TestWordsOfFilling(t *testing.T) {
	for line, want := range map[string]string{
		"ladled into 5 pint jars": "5 16 fl oz", "potted hot into 6 x 1lb jars": "6 1 lb", "in 7 Gläser (je 212 ml) abgefüllt": "7 212 ml", "abgefüllt in 6 Gläser zu 370 ml": "6 370 ml",
		"bottled: 10 x 190 ml, 2 x 110 ml": "10 190 ml; 2 110 ml", "packed into 4 pints + 3 half-pints": "4 16 fl oz; 3 8 fl oz", "jarred 11 (8 oz)": "11 8 fl oz",
		"ended up with nine 8-ounce jars plus a 4-ounce jar": "9 8 fl oz; 1 4 fl oz", "poured into 6 hot jars of 250 ml": "6 250 ml", "mis en pots: 6 x 324 ml": "6 324 ml",
		"j'ai rempli 5 pots de 370 g et 1 de 250 g": "5 370 g; 1 250 g", "ich habe in 6 Gläser à 230 ml abgefüllt": "6 230 ml",
		"8 half-pints filled": "8 8 fl oz", "6 Gläser à 230 ml eingefüllt": "6 230 ml", "2 kg plums bottled": "",
		"ladle into 5 pint jars": "", "Pour into 6 hot half-pint jars": "", "bottled lemon juice 250 ml": "", "packed 2 cups berries": "", "put in 500 ml water": "", "poured in 2 cups of water": "", "in 2 l Wasser abgefüllt": "",
	} {
		l := Read(line, pantry.Default()).Lines[0]
		var got []string
		for _, f := range l.Fills {
			if !f.Planned {
				got = append(got, fmt.Sprintf("%g %s%s", f.Low, f.Jar, f.Said))
			}
		}
		if strings.Join(got, "; ") != want {
			t.Errorf("%q filled %q, want %q (asks %q)", line, got, want, l.Asks)
		}
	}
}
