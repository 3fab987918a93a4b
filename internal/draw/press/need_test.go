package press

import (
	"fmt"
	"testing"

	"jarmark/internal/law/label"
)

// Jars that did not seal get no label: neither wrap nor lid, and no place in a
// box.
func TestUnsealedJarsGetNoLabel(t *testing.T) {
	o := &Order{PerBox: 4, Jars: []Jars{{Sealed: 8}}} // of 12 filled
	for piece, want := range map[label.Piece]int{label.Wrap: 8, label.Lid: 8, label.Front: 8, label.CaseLabel: 2, label.ShelfCard: 1} {
		if got := len(o.needs(piece, 0)); got != want {
			t.Errorf("%s: %d labels, want %d", piece, got, want)
		}
	}
	o.Copies = 3
	if got := len(o.needs(label.Wrap, 0)); got != 3 {
		t.Errorf("asked for 3 copies: %d", got)
	}
}

// Jar numbers as one writes them.
func TestParseNumbers(t *testing.T) {
	for text, want := range map[string]string{"17": "[17]", "17, 20-22": "[17 20 21 22]", "3–4": "[3 4]", "1-1,9": "[1 9]",
		"": "", "0": "", "5-3": "", "two": "", "1-": "", "-2": "", "1-999999999": ""} {
		got, err := ParseNumbers(text)
		if (want == "") != (err != nil) || err == nil && fmt.Sprint(got) != want {
			t.Errorf("%q: %v, %v; want %s", text, got, err, want)
		}
	}
}
