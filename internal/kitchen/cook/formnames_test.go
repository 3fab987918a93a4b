package cook

import (
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// What the form says of a name is what was cooked and what the label names.
func TestTheFormNamesTheFood(t *testing.T) {
	b, _ := batch.Parse("", []byte(`name = "Relish"
kind = "relish"
made = 2026-06-14
[[ingredient]]
name = "peppers"
form = "red bell"
amount = "2 lb"
[[ingredient]]
name = "tomatoes"
form = "green"
amount = "2 lb"
[[ingredient]]
name = "apples"
form = "peeled, cored"
amount = "2 lb"
`), nil)
	got, _ := Compute(b, &batch.Kitchen{}, pantry.Default())
	keys := map[string]bool{}
	for _, l := range got.Lines {
		keys[l.Key] = true
	}
	for _, k := range []string{"bell_pepper_red", "tomato_green", "apple"} {
		if !keys[k] {
			t.Errorf("no %s in %v", k, keys)
		}
	}
}
