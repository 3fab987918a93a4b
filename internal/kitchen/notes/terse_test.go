package notes

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// Eighty terse lines, written with their readings before the first run, which had
// 41 right (51 %) and lost something without a word in two. A figure that goes into
// no key has been asked about since, and a line is cut where most of it is read.
func TestTerseLines(t *testing.T) { readStrictly(t, "testdata/terse.txt") }

// A line is read as several facts up to its limits, and not beyond them.
func TestLimitsOfFacts(t *testing.T) {
	p := pantry.Default()
	for _, c := range []struct {
		what, line string
		read       bool
	}{
		{"40 words", "2 kg plums, 1 kg sugar, boiled 20 min," + strings.Repeat(" w", 31), true},
		{"41 words", "2 kg plums, 1 kg sugar, boiled 20 min," + strings.Repeat(" w", 32), false},
		{"8 words", "2 kg plums; boiled hard in the old pan 20 min; 9 jars", true},
		{"9 words", "2 kg plums; boiled hard in the big old pan 20 min; 9 jars", false},
		{"40 places", "2 kg plums; 1 kg sugar; boiled 20 min" + strings.Repeat(";x", 35), true},
		{"41 places", "2 kg plums; 1 kg sugar; boiled 20 min" + strings.Repeat(";x", 36), false},
	} {
		l := Read(c.line, p).Lines[0]
		if got := l.find("cook.minutes") != nil; got != c.read {
			t.Errorf("%s: read %v, want %v\n%s", c.what, got, c.read, summary(l))
		}
	}
}
