package table

import (
	"strings"
	"testing"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"

	"jarmark/internal/kit/unit"
)

// Sums are grouped as Unicode CLDR groups figures (golang.org/x/text carries its
// tables); the euro sign stands before them in English, behind in German and
// French (CLDR currency formats ¤#,##0.00 and #,##0.00 ¤, from memory).
func TestSumsAsCLDR(t *testing.T) {
	for lang, behind := range map[string]bool{"en": false, American: false, "de": true, "fr": true} {
		p := message.NewPrinter(language.Make(lang))
		for _, minor := range []int64{0, 5, 99999, 100000, 4900000, 123456789, 100000000000, -4900050} {
			figure := p.Sprint(number.Decimal(float64(minor)/100, number.Scale(2)))
			want := strings.Replace("€"+figure, "€-", "-€", 1)
			if behind {
				want = figure + "\u00a0€"
			}
			if got := WordsIn(lang).Money([]unit.Money{{Minor: minor, Currency: "EUR"}}); got != want {
				t.Errorf("%s: %q, CLDR has %q", lang, got, want)
			}
		}
	}
}
