package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// scatter strews a look's small ornaments (snow crystals, stars, fruit) over
// the paper, clear of type and of the label's edge.
func (l *layout) scatter() (n int) {
	for _, o := range l.look.Ornaments {
		if o.Spot != "scatter" {
			continue
		}
		m := max(l.cell.Safe, unit.Millimetre)
		if line := l.innerLine(l.short()); line > 0 {
			m = line + share(l.short(), 0.01)
		}
		drawn := l.draw(drawing{o: o, on: l.colours}, l.strewn.Grow(-m, -m), append(l.taken(), l.beyond(l.cell.Safe)...))
		n += len(drawn)
		l.put(drawn...)
	}
	return n
}

// beyond covers with boxes what lies less than edge inside a label that is not
// a rectangle.
func (b brief) beyond(edge unit.Length) []page.Rect {
	f := b.blank()
	if f.Shape == page.Rectangle && f.Corner <= edge {
		return nil
	}
	const steps = 48
	var out []page.Rect
	for i := range unit.Length(steps) {
		y, y1 := f.H*i/steps, f.H*(i+1)/steps
		free := b.freeFrom(y, y1, edge)
		if free > 0 {
			out = append(out, page.Rect{Y: y, W: free, H: y1 - y}, page.Rect{X: f.W - free, Y: y, W: free, H: y1 - y})
		}
	}
	return out
}

// freeFrom is how far in from the left the outline, moved in by edge, lies
// between two heights.
func (b brief) freeFrom(y0, y1, edge unit.Length) unit.Length {
	f := b.blank()
	if f.Shape == page.Ellipse {
		oval := page.Rect{W: f.W, H: f.H}.Grow(-edge, -edge)
		return f.W/2 - min(halfChord(oval, y0), halfChord(oval, y1))
	}
	if f.Shape == page.Rectangle {
		c, d := f.Corner-edge, max(0, min(y0, f.H-y1)-edge)
		if d >= c {
			return 0
		}
		round := page.Rect{Y: 0, W: 2 * c, H: 2 * c}
		return edge + c - halfChord(round, d)
	}
	dx, dy := page.TagCut(f.W, f.H)
	if y0 >= dy+edge || dy <= 0 {
		return 0
	}
	return share(dx, 1-float64(y0)/float64(dy)) + edge
}
