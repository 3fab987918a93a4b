package notes

import "testing"

// TestEveryPatternCompiles: a pattern is compiled late, so a fault in one would
// show only in the line it reads.
func TestEveryPatternCompiles(t *testing.T) {
	if len(patterns) < 60 {
		t.Errorf("%d patterns known, want them all", len(patterns))
	}
	for _, p := range patterns {
		p()
	}
}
