package unit

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

// A plain decimal is read as math/big reads it, and as decimalForm finds it.
func TestPlainDecimal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[0-9.,/ -]{1,18}( ?kg| in)?`).Draw(t, "text")
		v, n := plainDecimal(s)
		if n == 0 {
			return
		}
		want, ok := new(big.Rat).SetString(s[:n])
		if !ok || want.Cmp(v) != 0 || decimalForm.FindString(s) != s[:n] || mixedForm.MatchString(s) || fractionForm.MatchString(s) {
			t.Fatalf("%q: %v of %q", s, v, s[:n])
		}
	})
	for s, n := range map[string]int{"2.625 in": 5, "12": 2, "1 1/2 cups": 0, "1/4 in": 0, "1.": 0, ".5": 0, "": 0, "x": 0, "1,5 kg": 0} {
		if _, got := plainDecimal(s); got != n {
			t.Errorf("%q: %d characters, want %d", s, got, n)
		}
	}
}
