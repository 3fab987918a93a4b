package job

import (
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Jars that did not seal get no label: neither wrap nor lid, and no place in a
// box.
func TestUnsealedJarsGetNoLabel(t *testing.T) {
	b := &Batch{Batch: &batch.Batch{}, Kitchen: &batch.Kitchen{Supplies: batch.Supplies{BoxHolds: 4}},
		Cooked: &cook.Result{Jars: []cook.JarPlan{{Count: 12, Sealed: 8}}}}
	for piece, want := range map[label.Piece]int{label.Wrap: 8, label.Lid: 8, label.Front: 8, label.CaseLabel: 2, label.ShelfCard: 1} {
		if got := len(b.needs(piece, 0, Choices{})); got != want {
			t.Errorf("%s: %d labels, want %d", piece, got, want)
		}
	}
	if got := len(b.needs(label.Wrap, 0, Choices{Copies: 3})); got != 3 {
		t.Errorf("asked for 3 copies: %d", got)
	}
}
