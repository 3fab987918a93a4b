package ornament

import (
	"encoding/binary"
	"slices"
	"sync"

	"jarmark/internal/draw/page"
)

// Memo remembers drawings, so that labels that differ in a name or a lot share
// the very same paths: drawn once, held once, and written once by the PDF. The
// zero value is ready; it is safe for several goroutines.
//
// Words of other lengths leave other zones free, so what is remembered is what
// grew before anything was left out for them; drawings that lost the same
// leaves are one.
type Memo struct {
	mu    sync.Mutex
	grown map[seed]*plant
	held  int // points, about
}

// seed is all that decides how a drawing grows; keep only where it grows
// around the free zones.
type seed struct {
	name, motif, palette          string
	rect                          page.Rect
	number                        uint64
	density, fine                 float64
	dark, line, cut, flipX, flipY bool
	ground                        page.Colour
	keep                          string
}

// mostHeld bounds the points remembered, some 50 MB with all that belongs to
// them; then all is forgotten.
const mostHeld = 1_000_000

// Draw draws an ornament, the same one once. All its paths, control points and
// stroke widths included, lie inside s.Rect and off s.Keep. An unknown name and
// an empty box draw nothing. The items are shared and must not be changed. A nil
// Memo remembers nothing.
func (m *Memo) Draw(name string, s Spec) []page.Item {
	draw, ok := drawings()[name]
	if !ok || s.Rect.W < smallest || s.Rect.H <= 0 {
		return nil
	}
	s.Keep = near(s.Keep, s.Rect)
	var best *plant
	var mask string
	least := 2.0
	for _, fine := range fineness {
		p := m.grow(draw, name, s, fine)
		left, cut := p.without(s.Keep)
		if cut < least-0.02 {
			best, mask, least = p, left, cut
		}
		if least == 0 {
			break
		}
	}
	return best.items(m, mask)
}

// near keeps the zones that meet the box of a drawing: nothing is drawn outside.
func near(keep []page.Rect, box page.Rect) (out []page.Rect) {
	for _, r := range keep {
		if r.Overlaps(box) {
			out = append(out, r)
		}
	}
	return out
}

// grow lets a drawing grow, or gives the one that grew before.
func (m *Memo) grow(draw func(*sketch), name string, s Spec, fine float64) *plant {
	key := seed{name, s.Motif, s.Palette.Key(), s.Rect, s.Seed, s.Density, fine, s.Dark, s.Line, s.Engrave, s.FlipX, s.FlipY, s.Ground, ""}
	around := key
	around.keep = "around " + zonesOf(s.Keep) // never empty: no zone is as good as any other
	if p := m.find(key, around); p != nil {
		return p
	}
	k := newSketch(name, s, fine)
	draw(k)
	if k.asked {
		key = around
	}
	return m.hold(key, k.finish())
}

// find looks for what grew wherever the free zones are, or around these.
func (m *Memo) find(keys ...seed) *plant {
	if m == nil {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, k := range keys {
		if p := m.grown[k]; p != nil {
			return p
		}
	}
	return nil
}

// hold remembers a plant, and gives the one to use: the first that grew.
func (m *Memo) hold(key seed, p *plant) *plant {
	if m == nil {
		return p
	}
	if was := m.find(key); was != nil {
		return was
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.grown == nil || m.held > mostHeld {
		m.grown, m.held = map[seed]*plant{}, 0
	}
	m.grown[key] = p
	m.held += p.points
	return p
}

func zonesOf(l []page.Rect) string {
	var b []byte
	for _, r := range l {
		for _, v := range [...]int64{int64(r.X), int64(r.Y), int64(r.W), int64(r.H)} {
			b = binary.LittleEndian.AppendUint64(b, uint64(v))
		}
	}
	return string(b)
}

// plant is a drawing that has grown: its elements in place, and the drawings
// made of it by what was left out.
type plant struct {
	elements [][]shape
	reach    [][]box // of each shape, rounding included
	points   int
	mu       sync.Mutex
	made     map[string][]page.Item
}

// without finds the elements that touch a free zone: one byte an element, 1
// where it stays. cut is the share that goes.
func (p *plant) without(keep []page.Rect) (mask string, cut float64) {
	zones := make([]box, len(keep))
	for i, r := range keep {
		zones[i] = boxOf(r)
	}
	b := make([]byte, len(p.elements))
	whole := 0
	for i, reach := range p.reach {
		if !meetsAny(reach, zones) {
			b[i] = 1
			whole++
		}
	}
	return string(b), 1 - float64(whole)/float64(max(1, len(p.elements)))
}

func meetsAny(a, b []box) bool {
	return slices.ContainsFunc(a, func(x box) bool { return slices.ContainsFunc(b, x.meets) })
}

// items hands over what stays, as page items.
func (p *plant) items(m *Memo, mask string) []page.Item {
	p.mu.Lock()
	defer p.mu.Unlock()
	if out, ok := p.made[mask]; ok {
		return out
	}
	var kept []shape
	for i, e := range p.elements {
		if mask[i] == 1 {
			kept = append(kept, e...)
		}
	}
	var out []page.Item
	points := 0
	for _, q := range merge(kept) {
		path := q.path()
		path.Seal()
		out = append(out, path)
		points += len(q.pts)
	}
	if p.made == nil {
		p.made = map[string][]page.Item{}
	}
	p.made[mask] = out
	if m != nil {
		m.mu.Lock()
		m.held += points
		m.mu.Unlock()
	}
	return out
}
