package press

import (
	"fmt"
	"hash/maphash"
	"reflect"
	"slices"
	"sync"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
)

// manyTags is how many tags of other words are worth sharing what is under the
// words: fewer are whole frames.
const manyTags = 64

// grounds are what lies under the words of many tags: paper and drawings. Held
// once, they keep ten thousand tags in a tenth of the memory.
type grounds struct {
	mu   sync.Mutex
	made map[uint64][]*page.Frame
}

var hashing = maphash.MakeSeed()

// share parts a label into a frame that others may have too and an overlay of
// its own.
func (g *grounds) share(fr *page.Frame) sheet.Label {
	n := 0
	bare := *fr
	bare.Items = nil
	var key maphash.Hash
	key.SetSeed(hashing)
	fmt.Fprintf(&key, "%+v", bare)
	for ; n < len(fr.Items); n++ {
		p, ok := fr.Items[n].(*page.Path)
		if !ok {
			break
		}
		if p.Sealed() {
			maphash.WriteComparable(&key, p)
		}
	}
	under := bare
	under.Items = slices.Clone(fr.Items[:n])
	words := slices.Clone(fr.Items[n:])
	g.mu.Lock()
	defer g.mu.Unlock()
	for _, was := range g.made[key.Sum64()] {
		if alike(was, &under) {
			return sheet.Label{Frame: was, Overlay: words}
		}
	}
	if g.made == nil {
		g.made = map[uint64][]*page.Frame{}
	}
	g.made[key.Sum64()] = append(g.made[key.Sum64()], &under)
	return sheet.Label{Frame: &under, Overlay: words}
}

// alike compares what two frames of one key bear.
func alike(a, b *page.Frame) bool {
	return a.W == b.W && a.H == b.H && a.Name == b.Name && a.Design == b.Design && slices.EqualFunc(a.Items, b.Items, func(x, y page.Item) bool {
		p, q := x.(*page.Path), y.(*page.Path)
		return p == q || !p.Sealed() && !q.Sealed() && reflect.DeepEqual(p, q)
	})
}
