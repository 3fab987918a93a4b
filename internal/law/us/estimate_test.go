package us

import (
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
)

// A tested recipe is not condemned by an estimate: USDA AIB 539 (1994), the
// strawberry-rhubarb jelly, computes to 59.8 °Brix (testdata/published, Y12).
// Measured, 59.8 is too low for 21 CFR 150.160; an estimate of 55 asks for a
// reading.
func TestEstimatedBrixWarns(t *testing.T) {
	for _, c := range []struct {
		brix float64
		how  cook.How
		want diag.Severity
	}{{59.8, cook.Estimated, diag.Warning}, {59.8, cook.Measured, diag.Error}, {55, cook.Estimated, diag.Warning}, {55, cook.Measured, diag.Error}} {
		r := pot(t, batch.Jam, "Strawberry jam", measured(c.brix), part{"strawberries", 500}, part{"sugar", 500})
		r.Brix.How = c.how
		_, l := declare(t, r, "us", draft.Options{})
		got := diag.Note
		for _, d := range l {
			if d.Path == "cook.brix" {
				got = max(got, d.Severity)
			}
		}
		if got != c.want {
			t.Errorf("%.1f %s: %v, want %v", c.brix, c.how, got, c.want)
		}
	}
}
