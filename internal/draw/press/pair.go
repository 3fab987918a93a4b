package press

import (
	"slices"

	"jarmark/internal/law/label"
)

// Pair adds an information label to an order of fronts alone where one of them, with
// every statement on it, has no room for its ornament, for a name as large as the net
// quantity, or for all it must say.
func (p *Press) Pair(o *Order) {
	if !slices.Equal(o.Pieces, []label.Piece{label.Front}) {
		return
	}
	w := &work{p, o}
	if o.Paired = slices.ContainsFunc(o.Jars, w.textAlone); o.Paired {
		o.Pieces = []label.Piece{label.Front, label.InfoLabel}
	}
}

// textAlone reports that of the front of a jar size.
func (w *work) textAlone(j Jars) bool {
	if j.Content == nil {
		return false
	}
	x, _ := w.setting(j.Content, label.Front, make([]Tag, 1))
	s, cell, first, found := w.stock(j, x)
	if s == nil || x.design == nil || found.HasErrors() {
		return false
	}
	if first == nil {
		first = w.compose(x, cell)
	}
	return len(first.Overflow) > 0 || first.Bare || first.Small
}
