package scale_test

import (
	"testing"

	"jarmark/internal/kitchen/scale"
)

// FuzzParse: no words break the reader of "24 x 8 fl oz, 6 x 4 fl oz";
// what it takes are jars that exist, in numbers that can be cooked.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"24 x 8 fl oz, 6 x 4 fl oz", "us8", "1 × 250 ml", "1e12 x us8", "-1 x us8", "x", ",,", "24 x", "\xff", "9999999999999999999999 x us8"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		wants, found := scale.Parse(s)
		for _, w := range wants {
			if w.Count < 1 || w.Count > 10_000 || w.Jar == "" {
				t.Fatalf("%q gives %+v", s, w)
			}
		}
		if len(wants) == 0 && !found.HasErrors() {
			t.Fatalf("%q gives neither jars nor words", s)
		}
	})
}
