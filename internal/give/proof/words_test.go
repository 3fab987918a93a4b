package proof

import (
	"testing"

	"jarmark/internal/give/table"
)

// The names of statements and the marks of how a rule was read are in the table of words too.
func TestProofWordsAreInTheTable(t *testing.T) {
	de := table.WordsIn("de")
	for kind, name := range lineNames {
		if !de.Knows(name) {
			t.Errorf("%s: no word for %q", kind, name)
		}
	}
	for mark, words := range readHow {
		if !de.Knows(words) {
			t.Errorf("%s: no words for %q", mark, words)
		}
	}
}
