package unit

import (
	"math"
	"strings"
	"testing"
)

// The least number of 64 bits has no positive: it is told all the same.
func TestLeastNumbers(t *testing.T) {
	for _, system := range []string{US, Metric} {
		if m, v, l := Mass(math.MinInt64).Format(system), Volume(math.MinInt64).Format(system), Length(math.MinInt64).Format(system); !strings.HasPrefix(m, "-") || !strings.HasPrefix(v, "-") || !strings.HasPrefix(l, "-") {
			t.Errorf("%s: %s, %s, %s", system, m, v, l)
		}
	}
}
