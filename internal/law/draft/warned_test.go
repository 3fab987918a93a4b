package draft

import (
	"strings"
	"testing"
)

// A clause that warns somebody off denies nothing; what stands beside it does.
func TestWarningsDenyNothing(t *testing.T) {
	for text, want := range map[string]string{
		"Not suitable for people with almond allergies.":           "",
		"Lovely on toast; not for those with nut allergies. Enjoy": "lovely on toast enjoy",
		"unsuitable for milk allergics but nut free":               "but nut free",
		"Not safe for children with egg allergies, free from milk": "free from milk",
		"Nicht für Nussallergiker geeignet! Glutenfrei":            "glutenfrei",
		"Ne convient pas aux allergiques – sans lait":              "sans lait",
		"For people with nut allergies":                            "for people with nut allergies",
		"Not only nut free":                                        "not only nut free",
		"Not for sale":                                             "not for sale",
		"Ⱥki not suitable for nut allergics but free of milk":      "ⱥki not suitable for nut allergics but free of milk",
		"Don't serve to guests with nut allergies":                 "",
		"": "",
	} {
		if got := strings.Join(strings.Fields(Spaced(unwarned(text))), " "); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
