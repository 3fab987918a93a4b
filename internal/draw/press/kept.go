package press

import (
	"reflect"
	"slices"
	"sync"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/face"
	"jarmark/internal/kit/diag"
)

// kept remembers the labels composed last, so that what was looked at is
// printed, and looked at again beside other pieces, without being set anew.
type kept struct {
	mu     sync.Mutex
	labels []keptLabel // the last used first
}

// mostKept is how many labels are remembered: a batch's pieces, for some jar sizes.
const mostKept = 32

// keptLabel is a label with all that it was composed from. The frame is shared,
// and is only read.
type keptLabel struct {
	setting
	cell  compose.Cell
	faces *face.Set
	made  compose.Result
	found diag.List
}

// alike reports whether the same would be composed.
func (k keptLabel) alike(x *setting, cell compose.Cell, faces *face.Set) bool {
	a, b := k.opt, x.opt
	return k.piece == x.piece && k.cell == cell && k.faces == faces &&
		a.InkSaver == b.InkSaver && a.Alone == b.Alone && slices.Equal(a.Reserve, b.Reserve) &&
		reflect.DeepEqual(k.content, x.content) && reflect.DeepEqual(k.design, x.design) && reflect.DeepEqual(a.Picture, b.Picture)
}

// compose sets a label, or gives it as it was set before.
func (k *kept) compose(x *setting, cell compose.Cell, faces *face.Set) (compose.Result, diag.List) {
	k.mu.Lock()
	for i, was := range k.labels {
		if was.alike(x, cell, faces) {
			copy(k.labels[1:], k.labels[:i])
			k.labels[0] = was
			k.mu.Unlock()
			return was.made, slices.Clone(was.found)
		}
	}
	k.mu.Unlock()
	made, found := compose.Compose(x.content, x.design, x.piece, cell, faces, x.opt)
	k.mu.Lock()
	defer k.mu.Unlock()
	k.labels = slices.Insert(k.labels, 0, keptLabel{*x, cell, faces, made, slices.Clone(found)})
	k.labels = k.labels[:min(len(k.labels), mostKept)]
	return made, found
}
