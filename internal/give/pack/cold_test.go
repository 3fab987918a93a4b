package pack

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/cook"
)

// Jars of a freezer spread are not said to stand on a shelf, and have no seal
// to press (NCHFP: freezer jams are never shelf products).
func TestColdJarsStayCold(t *testing.T) {
	r := plum(kitchen())
	r.Keeping.Class = cook.Freezer
	for i := range r.Jars {
		r.Jars[i].Checked = false
	}
	p, found := Build([]*cook.Result{r}, Options{})
	if !strings.Contains(p.Text(), "kept cold") || has(found, "seals-unchecked") {
		t.Errorf("%v\n%s", found, p.Text())
	}
	h, _ := Trace(r.Lot, []*cook.Result{r}, Options{})
	if strings.Contains(h.Text(), "shelf") || !strings.Contains(h.Text(), "kept cold") {
		t.Error(h.Text())
	}
}
