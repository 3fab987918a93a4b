package typeset

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Align is where lines stand in their measure.
type Align int

// Where lines stand.
const (
	Left Align = iota
	Centre
	Right
)

// Shift gives how far a line of width w moves right in a measure m.
func (a Align) Shift(m, w unit.Length) unit.Length {
	switch a {
	case Centre:
		return (m - w) / 2
	case Right:
		return m - w
	}
	return 0
}

// SetLine places a line of a paragraph with its left end at origin.
func (p Para) SetLine(from, to int, size unit.Length, origin page.Point) []page.Item {
	var items []page.Item
	for _, s := range p.line(from, to) {
		t, _ := p.Voice.Line(s.Block, s.Bold, s.S, size, page.Point{X: origin.X + At(s.x, size), Y: origin.Y})
		t.Hyphen = s.hyphen
		items = append(items, t)
	}
	return items
}

// Segs splits s where kerning or tracking moves the pen.
func (v Voice) Segs(bold bool, s string, size unit.Length) ([]page.Seg, int) {
	f := v.Face(bold)
	var out []page.Seg
	x, start, from := 0, 0, 0
	last := rune(-1)
	for i, r := range s {
		if last >= 0 {
			if k := v.kern(f, last, r) + v.Track; k != 0 {
				out = append(out, page.Seg{X: At(start, size), S: s[from:i]})
				x += k
				start, from = x, i
			}
		}
		x += f.Advance(r)
		last = r
	}
	if s != "" {
		out = append(out, page.Seg{X: At(start, size), S: s[from:]})
		x += v.Track
	}
	return out, x
}
