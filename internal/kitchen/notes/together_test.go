package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// Two things of which one was cooked in the other are two things, each with its
// amount; what was soaked is asked about, and a time is no amount. Our own invention.
func TestThingsCookedTogether(t *testing.T) {
	for line, want := range map[string]string{
		"5 lb elderberries simmered with 1 c water":                  "5 lb elderberries, 1 c water",
		"3 lb quinces boiled with 2 l water until soft":              "3 lb quinces, 2 l water",
		"4 lb crabapples, simmered gently in 4 cups water":           "4 lb crabapples, 4 cups water",
		"1 kg strawberries macerated overnight with 800 g sugar":     "1 kg strawberries, 800 g sugar",
		"1.5 kg Erdbeeren mit 750 g Gelierzucker 2:1 gemischt":       "1.5 kg strawberries, 750 g Gelierzucker 2:1",
		"1 kg groseilles cuites avec 200 ml d'eau":                   "1 kg redcurrants, 200 ml water",
		"3 lb figs tossed with 1/4 cup lemon juice":                  "3 lb figs, 1/4 cup lemon juice",
		"5 lb grapes mashed with a cup of water":                     "5 lb grapes, 1 cup water",
		"2 lb apricots soaked in 3 cups water":                       "2 lb apricots, 3 cups water, asked",
		"6 oranges, sliced thin, soaked overnight in 2 quarts water": "6 oranges, 2 quarts water, asked",
		"2 kg plums cooked in 20 minutes":                            "2 kg plums",
		"simmer 5 lb elderberries with 1 c water":                    "",
	} {
		l := Read(line, pantry.Default()).Lines[0]
		var got []string
		for _, in := range l.Ingredients {
			got = append(got, in.Amount+" "+in.Name)
		}
		if len(l.Asks) > 0 && strings.Contains(strings.Join(l.Asks, " "), "poured off") {
			got = append(got, "asked")
		}
		if want != "" && strings.Join(got, ", ") != want {
			t.Errorf("%q: %q, want %q (asks %q)", line, got, want, l.Asks)
		}
	}
}
