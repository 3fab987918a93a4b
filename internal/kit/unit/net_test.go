package unit

import (
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

// The tables are computed from the definitions of NIST Handbook 44 App. C with
// the rounding of the HB 130 UPLR as a NIST fact sheet tells it: never overstate,
// three digits. Form: 15 U.S.C. 1453(a)(3)(A)(i), FDA Food Labeling Guide 1999.
func TestNetWords(t *testing.T) {
	for _, x := range []struct {
		m          Mass
		fpla, dual string
	}{
		{Ounce * 3 / 2, "1.5 oz (42.5 g)", ""},
		{4 * Ounce, "4 oz (113 g)", ""},
		{8 * Ounce, "8 oz (226 g)", ""},
		{10 * Ounce, "10 oz (283 g)", ""},
		{12 * Ounce, "12 oz (340 g)", ""},
		{Pound, "1 lb (453 g)", "16 oz (1 lb) 453 g"},
		{18 * Ounce, "1 lb 2 oz (510 g)", "18 oz (1 lb 2 oz) 510 g"},
		{24 * Ounce, "1 lb 8 oz (680 g)", "24 oz (1 lb 8 oz) 680 g"},
		{68 * Ounce, "4 lb 4 oz (1.92 kg)", "4 lb 4 oz (1.92 kg)"},
		{250 * Gram, "8.8 oz (250 g)", ""},
		{300 * Gram, "10.5 oz (300 g)", ""},
		{340 * Gram, "11.9 oz (340 g)", ""},
		{Kilogram, "2 lb 3.2 oz (1 kg)", ""},
		{Ounce * 41 / 4, "10.25 oz (290 g)", ""}, // two decimals at most, 101.7(d)
	} {
		if got := NetWords(x.m, false); got != x.fpla {
			t.Errorf("%s: %q, want %q", x.m.Format(Metric), got, x.fpla)
		}
		if got := NetWords(x.m, true); x.dual != "" && got != x.dual {
			t.Errorf("%s dual: %q, want %q", x.m.Format(Metric), got, x.dual)
		}
	}
}

// Every tenth of an ounce a maker may write comes back as written, whichever
// way its half nanogram was rounded.
func TestOuncesComeBack(t *testing.T) {
	for n := int64(1); n <= 700; n++ {
		m, err := ParseMass(Decimals(n, 10) + " oz")
		if err != nil {
			t.Fatal(err)
		}
		if got, per := OunceUnits(m); got*10 != n*per {
			t.Fatalf("%s oz reads %d/%d", Decimals(n, 10), got, per)
		}
	}
}

// "227 g" is owed in full: the larger figure is enforced (NIST).
func TestOwed(t *testing.T) {
	if got := Owed(227 * Gram); got != 227*Gram {
		t.Errorf("227 g owes %d", got)
	}
	if got := Owed(8 * Ounce); got != 8*Ounce {
		t.Errorf("8 oz owes %d", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		m := Mass(rapid.Int64Range(1, int64(5*Kilogram)).Draw(t, "m"))
		if o := Owed(m); o > m || o < m-m/100-Ounce/10 {
			t.Fatalf("%d ng is printed as %q, which owes %d", m, NetWords(m, false), o)
		}
	})
}
