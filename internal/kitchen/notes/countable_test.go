package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// What is read without a question is weighed by the kitchen that reads it, whatever
// language it was written in: the batch it makes has no fault in an ingredient.
func TestAmountsReadAreWeighed(t *testing.T) {
	p := pantry.Default()
	tried := 0
	for s, read := range everyReading(t) {
		for _, l := range read {
			if len(l.Asks) > 0 || len(l.Ingredients) == 0 {
				continue
			}
			tried++
			b, found := batch.Parse("", Reading{Lines: []Line{l}}.TOML(head), nil)
			if b == nil {
				t.Fatalf("%q: %v", s, found)
			}
			_, more := cook.Compute(b, nil, p)
			for _, d := range append(found, more...) {
				if d.Severity.String() == "error" && strings.HasPrefix(d.Path, "ingredient") {
					t.Errorf("%q: %s: %s", s, d.Code, d.Message)
				}
			}
		}
	}
	t.Logf("%d lines", tried)
	if tried < enough(1500) {
		t.Errorf("%d lines", tried)
	}
}
