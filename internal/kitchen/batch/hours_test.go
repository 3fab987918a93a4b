package batch

import "testing"

// The hours a batch took are those written, and none where none are.
func TestHours(t *testing.T) {
	for text, want := range map[string]float64{"": 0, "hours = 2.5\n": 2.5, "hours = 0\n": 0} {
		b, _ := Parse("b.toml", []byte("name = \"Plum jam\"\nmade = 2026-06-14\n"+text), nil)
		if b.Hours != want {
			t.Errorf("%q: %g hours", text, b.Hours)
		}
	}
}
