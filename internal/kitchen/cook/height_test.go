package cook

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
)

// A height is told as the kitchen measures: the reason of the shelf, and where
// the minutes begin to rise (USDA Complete Guide, Guide 7: 1,001 ft, 305 m).
func TestHeightInTheKitchensUnits(t *testing.T) {
	for units, want := range map[string][2]string{unit.US: {"656 ft", "1000 ft"}, "metric": {"200 m", "300 m"}} {
		c := &calc{b: &batch.Batch{}, k: &batch.Kitchen{}}
		c.k.Units, c.k.Altitude = units, 200*unit.Metre
		if c.height() != want[0] || c.foothill() != want[1] {
			t.Errorf("%s: %s, %s", units, c.height(), c.foothill())
		}
	}
}
