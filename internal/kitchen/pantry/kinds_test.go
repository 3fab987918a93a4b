package pantry

import "testing"

// The names are those makers write, in the three languages of the labels; which
// product they are: Directive 2001/113/EC Annex I and 21 CFR 150. That German
// makers call jam of other fruit Marmelade: common practice, no source.
func TestKindInAName(t *testing.T) {
	for name, want := range map[string][2]string{
		"Plum & anise jam":           {"jam", "plum & anise"},
		"Fig preserves":              {"preserve", "fig"},
		"hot pepper jelly":           {"jelly", "hot pepper"},
		"Quittengelee":               {"jelly", "quitten"},
		"Holunderblüten-Gelee":       {"jelly", "holunderblüten"},
		"Gelée de framboises":        {"jelly", "framboises"},
		"Confiture d'abricots":       {"jam", "abricots"},
		"Erdbeermarmelade":           {"jam", "erdbeer"},
		"Orangenmarmelade":           {"marmalade", "orangen"},
		"Zitronen-Marmelade":         {"marmalade", "zitronen"},
		"Marmelade d’oranges":        {"marmalade", "oranges"},
		"Onion marmalade":            {"marmalade", "onion"},
		"Pflaumenmus":                {"butter", "pflaumen"},
		"Apple butter":               {"butter", "apple"},
		"Sirop de menthe":            {"syrup", "menthe"},
		"Holundersirup":              {"syrup", "holunder"},
		"Aprikosenaufstrich":         {"spread", "aprikosen"},
		"Mango chutney with raisins": {"chutney", "mango"},
		"Rumtopf":                    {"", "rumtopf"},
		"Muskat":                     {"", "muskat"},
		"Mus":                        {"butter", ""},
		"":                           {"", ""},
	} {
		if kind, fruit, ok := Default().KindIn(name); kind != want[0] || fruit != want[1] || ok != (want[0] != "") {
			t.Errorf("%q: %q of %q", name, kind, fruit)
		}
	}
}
