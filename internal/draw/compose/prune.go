package compose

import "jarmark/internal/draw/page"

// prune takes away drawings that would touch type, a code or the safe edge:
// a label may lack an ornament, never the words under it.
func (s *setter) prune() {
	var keep []page.Rect
	for _, it := range s.frame.Items {
		switch t := it.(type) {
		case *page.Text:
			if b := inkBox(t, s.faces); b.W > 0 {
				keep = append(keep, b)
			}
		case *page.Code:
			keep = append(keep, t.WithQuiet())
		}
	}
	keep = append(keep, s.holes...)
	kept := s.frame.Items[:0]
	for _, it := range s.frame.Items {
		if p, ok := it.(*page.Path); ok && !p.Bleed && p.Block != "qr" && p.Block != "hole" && s.harms(p, keep) {
			continue
		}
		kept = append(kept, it)
	}
	s.frame.Items = kept
}

func (s *setter) harms(p *page.Path, keep []page.Rect) bool {
	if s.frame.Leaves(p, 0) {
		return true
	}
	return crossesAny(p, keep)
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
