package compose

import (
	"encoding/binary"
	"fmt"
	"sync"

	"jarmark/internal/draw/ornament"
	"jarmark/internal/draw/page"
)

// Drawings remembers ornaments, so that labels that differ in a name share the
// very same paths: drawn once, held once, and written once by the PDF. The
// zero value is ready; it is safe for several goroutines.
type Drawings struct {
	mu   sync.Mutex
	made map[drawingKey][]page.Item
}

// drawingKey is all that decides a drawing.
type drawingKey struct {
	name, palette, motif     string
	rect                     page.Rect
	seed                     uint64
	density                  float64
	dark, line, flipX, flipY bool
	keep                     string
}

// maxDrawings bounds what is remembered.
const maxDrawings = 4096

// get draws an ornament, or gives the one drawn before. The items are shared
// and must not be changed.
func (d *Drawings) get(name string, s ornament.Spec) []page.Item {
	s.Keep = near(s.Keep, s.Rect)
	if d == nil {
		return ornament.Draw(name, s)
	}
	key := drawingKey{name: name, palette: fmt.Sprint(s.Palette), motif: s.Motif, rect: s.Rect, seed: s.Seed, density: s.Density,
		dark: s.Dark, line: s.Line, flipX: s.FlipX, flipY: s.FlipY, keep: packed(s.Keep)}
	d.mu.Lock()
	items, ok := d.made[key]
	d.mu.Unlock()
	if ok {
		return items
	}
	items = ornament.Draw(name, s)
	d.mu.Lock()
	defer d.mu.Unlock()
	if was, ok := d.made[key]; ok {
		return was
	}
	if d.made == nil || len(d.made) >= maxDrawings {
		d.made = map[drawingKey][]page.Item{}
	}
	d.made[key] = items
	return items
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

func packed(l []page.Rect) string {
	var b []byte
	for _, r := range l {
		for _, v := range [...]int64{int64(r.X), int64(r.Y), int64(r.W), int64(r.H)} {
			b = binary.LittleEndian.AppendUint64(b, uint64(v))
		}
	}
	return string(b)
}
