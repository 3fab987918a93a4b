package compose

import (
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// align is where lines stand in their measure.
type align int

const (
	left align = iota
	centre
	right
)

// shift gives how far a line of width w moves right in a measure m.
func (a align) shift(m, w unit.Length) unit.Length {
	switch a {
	case centre:
		return (m - w) / 2
	case right:
		return m - w
	}
	return 0
}

// setLine places a line of a paragraph with its left end at origin.
func (p para) setLine(from, to int, size unit.Length, origin page.Point) []page.Item {
	var items []page.Item
	v := p.voice
	for _, s := range p.line(from, to) {
		segs, w := v.segs(s.bold, s.s, size)
		f := v.face(s.bold)
		pt := page.Point{X: origin.X + at(s.x, size), Y: origin.Y}
		items = append(items, &page.Text{
			Block: s.block, Face: f.Name, Size: size, At: pt, Segs: segs, Colour: v.colour,
			Box: page.Rect{
				X: pt.X, Y: pt.Y - f.Ascent(size),
				W: at(w-v.track, size), H: f.Ascent(size) + f.Descent(size),
			},
		})
	}
	return items
}

// segs splits s where kerning or tracking moves the pen.
func (v voice) segs(bold bool, s string, size unit.Length) ([]page.Seg, int) {
	f := v.face(bold)
	var out []page.Seg
	x, start, from := 0, 0, 0
	last := rune(-1)
	for i, r := range s {
		if last >= 0 {
			if k := v.kern(f, last, r) + v.track; k != 0 {
				out = append(out, page.Seg{X: at(start, size), S: s[from:i]})
				x += k
				start, from = x, i
			}
		}
		x += f.Advance(r)
		last = r
	}
	if s != "" {
		out = append(out, page.Seg{X: at(start, size), S: s[from:]})
		x += v.track
	}
	return out, x
}

// inkBox is the box of the ink a text item leaves, before turning.
func inkBox(t *page.Text, faces *face.Set) page.Rect {
	f := faces.Face(t.Face)
	if f == nil {
		return t.Box
	}
	var box page.Rect
	first := true
	for _, g := range t.Segs {
		x := 0
		for _, r := range g.S {
			if k := f.Ink(r); k.Right > k.Left {
				b := page.Rect{
					X: t.At.X + g.X + at(x+k.Left, t.Size), Y: t.At.Y - at(k.Top, t.Size),
					W: at(k.Right-k.Left, t.Size), H: at(k.Top+k.Bottom, t.Size),
				}
				if first {
					box, first = b, false
				} else {
					box = box.Union(b)
				}
			}
			x += f.Advance(r)
		}
	}
	return box
}
