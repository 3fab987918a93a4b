package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// Fruit for a jelly is cooked, its juice strained, and the juice boiled with the
// sugar: that boil is the cook's time (the order of a jelly made without added
// pectin in the USDA Complete Guide to Home Canning, Guide 7). Lines of our own.
func TestTimesBeforeStraining(t *testing.T) {
	for text, want := range map[string]string{
		"2 lb quinces\nBoil then simmer for 5 mins.\nStrain overnight.\n2 lb sugar\nBoil 12 minutes to a set.":                              "12",
		"1 kg Quitten\nAufkochen und 20 Minuten köcheln.\nDurch ein Tuch abtropfen lassen.\n1 kg Zucker\n10 Minuten kochen, bis es geliert": "10",
		"2 lb plums\n2 lb sugar\nBoil then simmer for 15 mins.\nLadle into jars.":                                                           "15",
		"2 lb plums\nSimmer for 15 mins with the sugar.\nStrain through a sieve.":                                                           "15",
		"Strain the juice.\n2 lb sugar\nBoil 9 minutes.":                                                                                    "9",
		"2 lb plums\nSimmer 15 mins.\njuice of 2 lemons, strained\n2 lb sugar":                                                              "15",
		"2 lb apples\nSimmer 30 minutes.\nHang in a jelly bag.":                                                                             "",
	} {
		got, told := "", false
		for _, l := range Read(text, pantry.Default()).Lines {
			if k := l.find("cook.minutes"); k != nil && !k.Asked {
				got += k.Value
			}
			told = told || strings.Contains(strings.Join(l.Says, " "), "draws the juice")
		}
		if early := strings.Count(text, "inute")+strings.Count(text, "mins") > 1 || want == ""; got != want || told != early {
			t.Errorf("%q: %q, want %q, told %t", text, got, want, told)
		}
	}
}
