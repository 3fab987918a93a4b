package pantry

import (
	"slices"
	"testing"

	"jarmark/internal/kit/unit"
)

// Two letters of five may be wrong, three not (a quarter and one).
func TestSuggestAtItsLimit(t *testing.T) {
	for words, want := range map[string]bool{"plums": true, "plumz": true, "plzzs": true, "pzzzs": false} {
		if got := slices.Contains(Default().Suggest(words), "plums"); got != want {
			t.Errorf("%q: %v", words, Default().Suggest(words))
		}
	}
}

// A size in millilitres is a jar's to two of them; a finish from memory says so.
func TestSizesToTwoMillilitres(t *testing.T) {
	j := Jar{Description: "own", Nominal: 250 * unit.Millilitre}
	for words, want := range map[string]bool{"250 ml": true, "252 ml": true, "248 ml": true, "253 ml": false, "247 ml": false, "25 cl": true, "0.25 l": true, "26 cl": false} {
		if got := j.called(words); got != want {
			t.Errorf("%q: %v", words, got)
		}
	}
	for _, f := range Default().finishes {
		if f.Memory != memory(f.Source) {
			t.Errorf("%s: from memory %v, %q", f.Name, f.Memory, f.Source)
		}
	}
}
