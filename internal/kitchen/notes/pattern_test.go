package notes

import (
	"regexp"
	"testing"
)

// TestEveryPatternCompiles: a pattern is compiled late, so a fault in one would
// show only in the line it reads.
func TestEveryPatternCompiles(t *testing.T) {
	if len(patterns) < 60 {
		t.Errorf("%d patterns known, want them all", len(patterns))
	}
	for _, p := range patterns {
		p()
		if _, err := regexp.Compile(spellOut(p().String(), "(?:", ")")); err != nil {
			t.Errorf("%s: %v", p(), err)
		}
	}
}

// A word that begins or ends with an accented letter stands between boundaries like
// any other: RE2's \b is "at ASCII word boundary" (google/re2, doc/syntax.txt, read 27 Nov 2026).
func TestAccentsAtBoundaries(t *testing.T) {
	for _, c := range []struct {
		text string
		p    pattern
	}{{"porter à ébullition", cooking}, {"cuire jusqu'à 105", tempWords}, {"es wird dick", finished}, {"bien épais", finished}, {"égoutter une nuit", strained}, {"ÉGOUTTER", strained}} {
		if !c.p.MatchString(c.text) {
			t.Errorf("%q is not matched by %s", c.text, c.p())
		}
	}
	for _, text := range []string{"donne 4 pots", "der Rand", "sterilised jars", "set"} {
		if counted.MatchString(text) || process.MatchString(text) {
			t.Errorf("%q is matched", text)
		}
	}
}
