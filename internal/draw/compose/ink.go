package compose

import (
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
)

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
					X: t.At.X + g.X + typeset.At(x+k.Left, t.Size), Y: t.At.Y - typeset.At(k.Top, t.Size),
					W: typeset.At(k.Right-k.Left, t.Size), H: typeset.At(k.Top+k.Bottom, t.Size),
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
