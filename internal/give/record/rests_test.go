package record

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/cook"
)

// The page says what somebody measured or did, in its own language, and tells
// nothing assumed as a fact.
func TestPageSaysWhatKeepingRestsOn(t *testing.T) {
	minutes := 12.5
	for lang, want := range map[string][]string{
		"en": {"Measured: 65.5 °Brix", "Measured: pH 3.4.", "processed for 12.5 min in boiling water"},
		"de": {"Gemessen: 65,5 °Brix", "Gemessen: pH 3,4.", "12,5 Minuten im kochenden Wasserbad"},
		"fr": {"Mesuré\u00a0: 65,5 °Brix", "Mesuré\u00a0: pH 3,4.", "traités 12,5 min à l’eau bouillante"},
	} {
		r, c := sample()
		r.Brix = cook.Reading{Value: 65.5, How: cook.Measured}
		r.PHMeasured, r.PHHigh = true, 3.4
		r.Batch.Process.Method, r.Batch.Process.Minutes = "boiling water", &minutes
		html, _ := Page(r, c, Options{Lang: lang})
		for _, w := range want {
			if !strings.Contains(string(html), w) {
				t.Errorf("%s: no %q", lang, w)
			}
		}
		r.Brix.How, r.PHMeasured, r.Batch.Process.Method = cook.Estimated, false, "open kettle"
		html, _ = Page(r, c, Options{Lang: lang})
		for _, w := range want {
			if strings.Contains(string(html), w) {
				t.Errorf("%s: tells %q of what was not measured or done so", lang, w)
			}
		}
	}
}
