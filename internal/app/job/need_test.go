package job

import (
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Jars that did not seal are not ordered a label for: see press.Order.
func TestOrderCountsSealedJars(t *testing.T) {
	b := &Batch{Notes: &batch.Batch{}, Kitchen: &batch.Kitchen{}, Contents: []*label.Content{{}},
		Cooked: &cook.Result{Jars: []cook.JarPlan{{Count: 12, Sealed: 8}}}}
	if got := b.orderOf(Choices{}).Jars[0].Sealed; got != 8 {
		t.Errorf("%d jars to label, want 8", got)
	}
}
