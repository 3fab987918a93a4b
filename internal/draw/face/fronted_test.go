package face

import (
	"io/fs"
	"maps"
	"slices"
	"testing"

	"jarmark/fonts"
)

// Patterns carried short are the same patterns, of every language there is, and
// take less room.
func TestFrontedPatterns(t *testing.T) {
	files, _ := fs.Glob(fonts.FS, "hyphen-*.txt")
	if len(files) < 4 {
		t.Fatal(files)
	}
	for _, name := range files {
		data, err := fs.ReadFile(fonts.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		short := Fronted(string(data))
		want, got := parseHyphens(string(data)), parseHyphens(short)
		same := maps.EqualFunc(want.levels, got.levels, func(a, b []byte) bool { return slices.Equal(a, b) }) && maps.EqualFunc(want.words, got.words, func(a, b []int) bool { return slices.Equal(a, b) })
		if !same || want.longest != got.longest || len(short) >= len(data)*4/5 || len(want.levels) < 1000 {
			t.Errorf("%s: %d and %d patterns, %d and %d bytes", name, len(want.levels), len(got.levels), len(data), len(short))
		}
	}
	if got := Fronted("% note\nab1c\nab1d\nta-ble\nb2\n"); got != "% note\nta-ble\n+Aab1cDdAb2\n" {
		t.Errorf("%q", got)
	}
	for _, odd := range []string{"+", "+ab", "+Zab", "+A", "+AB"} {
		parseHyphens(odd) // reads no further, and does not fail
	}
}
