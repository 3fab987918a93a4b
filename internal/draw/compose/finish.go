package compose

import (
	"slices"

	"jarmark/internal/draw/page"
)

// finish makes the draft a label.
func (l *layout) finish() *page.Frame {
	f := l.blank()
	f.Items = l.prune(layered(l.items))
	l.slots(f)
	return f
}

// layered sorts items into layers, keeping their order inside each:
// backgrounds, drawings, codes, type.
func layered(items []page.Item) (out []page.Item) {
	layers := [4][]page.Item{}
	for _, it := range items {
		n := 3
		switch t := it.(type) {
		case *page.Path:
			n = 1
			if t.Bleed {
				n = 0
			}
		case *page.Picture:
			n = 1
		case *page.Code:
			n = 2
		}
		layers[n] = append(layers[n], it)
	}
	return slices.Concat(layers[:]...)
}

// prune takes away drawings that would touch type, a code or the safe edge:
// a label may lack an ornament, never the words under it.
func (l *layout) prune(items []page.Item) []page.Item {
	keep := slices.Clone(l.kept)
	for _, it := range items {
		switch t := it.(type) {
		case *page.Text:
			if b := inkBox(t, l.faces); b.W > 0 {
				keep = append(keep, b)
			}
		case *page.Code:
			keep = append(keep, t.WithQuiet())
		}
	}
	f := l.blank()
	return slices.DeleteFunc(items, func(it page.Item) bool {
		p, ok := it.(*page.Path)
		return ok && !p.Bleed && p.Block != "qr" && p.Block != "hole" && (f.Leaves(p, 0) || crossesAny(p, keep))
	})
}

// crossesAny reports whether a drawing leaves ink in any of the boxes.
func crossesAny(p *page.Path, boxes []page.Rect) bool {
	reach := p.Bounds()
	for _, r := range boxes {
		if (reach.Overlaps(r) || reach.W <= 0 || reach.H <= 0) && p.Crosses(r) {
			return true
		}
	}
	return false
}
