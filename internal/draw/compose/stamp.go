package compose

import (
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

const (
	ownStamp    = "stamp" // its name among a look's drawings
	usualStamp  = 0.42    // of the shorter side of the piece
	mostStamp   = 26 * unit.Millimetre
	leastStamp  = 12 * unit.Millimetre
	stampMargin = 0.085 // of its width, blank inside its rings
)

// wantsStamp gives the maker's words in a seal, where the piece bears them: on
// what is seen of a jar.
func (b brief) wantsStamp() (label.Block, bool) {
	if b.piece != label.Front && b.piece != label.Wrap {
		return label.Block{}, false
	}
	return b.block(label.Stamp)
}

// stamped is a look with the seal in its corner, in the place of what the
// design draws in the corners.
func (b brief) stamped(look design.Look) design.Look {
	if _, ok := b.wantsStamp(); !ok {
		return look
	}
	across := min(max(share(b.short(), usualStamp), leastStamp*3/2), mostStamp)
	spot := "corner"
	if b.cell.Shape == page.Ellipse {
		spot = "right"
	}
	look.Ornaments = append(slices.DeleteFunc(slices.Clone(look.Ornaments), func(o design.Ornament) bool {
		return (o.Spot == "corner" || o.Spot == "corners") && o.Name != ownPicture
	}), design.Ornament{Name: ownStamp, Spot: spot, Size: float64(across) / float64(b.short()), Own: true})
	return look
}

// stamps draws the seal: two rings and the words in them, clear of what keep
// holds.
func (l *layout) stamps(keep []page.Rect) (drawn []page.Item, _ []page.Rect) {
	b, _ := l.wantsStamp()
	for _, p := range l.drawings {
		if p.o.Name != ownStamp {
			continue
		}
		for d := min(p.box.W, p.box.H); d >= leastStamp; d = d * 19 / 20 {
			at := page.Rect{X: p.box.X + p.box.W - d, Y: p.box.Y, W: d, H: d}
			if p.o.Spot != "corner" {
				at.Y += (p.box.H - d) / 2
			}
			if !l.blank().Within(at, 0) || meets(at, keep) || l.crossed(at) {
				continue
			}
			words, ok := l.sealWords(b, at)
			if !ok {
				break
			}
			drawn = append(append(drawn, l.rings(at)...), words...)
			keep = append(keep, at.Grow(unit.Millimetre/2, unit.Millimetre/2))
			break
		}
	}
	l.drawings = slices.DeleteFunc(l.drawings, func(p drawing) bool { return p.o.Name == ownStamp })
	return drawn, keep
}

// rings are a thick and a fine circle.
func (l *layout) rings(at page.Rect) (out []page.Item) {
	c := l.colours.text("accent", largeContrast)
	for i, width := range []unit.Length{3 * hairline, hairline} {
		in := width/2 + unit.Length(i)*share(at.W, 0.05)
		p := ellipsePath(at.Grow(-in, -in))
		p.Stroke, p.Width = &c, width
		out = append(out, p)
	}
	return out
}

// sealWords sets the words as large as the rings allow.
func (l *layout) sealWords(b label.Block, at page.Rect) ([]page.Item, bool) {
	v := l.voice(l.voices.Small, l.colours)
	in := at.Grow(-share(at.W, stampMargin), -share(at.W, stampMargin))
	k := stack{in: region{Rect: in}.inscribed(), align: typeset.Centre, rise: 0.5, spread: 1}
	k.rows = []row{{para: typeset.New(v, typeset.Say(b.ID, b.Runs, true)), legal: legible, least: legible, best: max(legible, share(at.W, 0.22)),
		lines: 7, ragged: typeset.Balanced, weight: 1, name: "the stamp"}}
	f, ok := k.choose()
	if !ok {
		return nil, false
	}
	items, _ := f.place(f.as)
	return items, true
}

// unstamped tells of a seal that has no room on a finished label.
func (b brief) unstamped(f *page.Frame) (found diag.List) {
	s, ok := b.wantsStamp()
	if !ok || f == nil || slices.ContainsFunc(f.Items, func(it page.Item) bool { t, ok := it.(*page.Text); return ok && t.Block == s.ID }) {
		return nil
	}
	found.Warnf("no-room-for-stamp", "", s.Path, "the %s label has no room for your stamp", b.as).
		Hinted("shorten its words, or take a larger label")
	return found
}
