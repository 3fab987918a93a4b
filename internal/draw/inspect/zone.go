package inspect

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/law/label"
	"slices"
)

// net checks the zone and the clear space of blocks that ask for them
// (21 CFR 101.7(f)).
func (k *inspector) net() {
	if atStall(label.Piece(k.fr.Piece)) {
		return
	}
	for _, b := range k.c.Blocks {
		lines := k.of(b.ID)
		if len(lines) == 0 {
			continue
		}
		box := lines[0].ink
		for _, t := range lines[1:] {
			box = box.Union(t.ink)
		}
		if top := k.fr.H * bottomZone / 100; b.Zone == label.Bottom && box.Y+slack < top {
			k.found.Errorf("zone", "", b.Path, "%s begins %.1f mm from the top, its zone at %.1f mm", b.Kind, box.Y.MM(), top.MM()).Cited(b.Cite)
		}
		if b.Clear {
			k.clear(b, lines[0], box)
		}
	}
}

// clear checks that no information is printed in the clear space of a block,
// and no drawing close to the type.
func (k *inspector) clear(b label.Block, line inked, box page.Rect) {
	f := k.faces.Face(line.Face)
	n, h := 2*f.Width("N", line.Size), measured(label.Capital, "", f, line.Size)
	need := box.Grow(n-slack, h-slack)
	for _, t := range k.texts {
		if t.Block != b.ID && t.ink.Overlaps(need) {
			k.found.Errorf("clear-space", "", b.Path, "%q stands in the clear space of the %s", t.String(), b.Kind).Cited(b.Cite)
		}
	}
	for _, c := range k.codes {
		if c.At.Overlaps(need) {
			k.found.Errorf("clear-space", "", b.Path, "the QR code stands in the clear space of the %s", b.Kind).Cited(b.Cite)
		}
	}
	for _, p := range k.own {
		if p.At.Overlaps(need) {
			k.found.Errorf("clear-space", "", b.Path, "the picture stands in the clear space of the %s", b.Kind).Cited(b.Cite)
		}
	}
	near := box.Grow(n/4-slack, h/2-slack)
	for _, p := range k.paths {
		if p.Crosses(near) {
			k.found.Errorf("clear-space", "", b.Path, "a drawing stands in the clear space of the %s", b.Kind)
			return
		}
	}
}

// of gives the lines of a block.
func (k *inspector) of(id string) []inked {
	var out []inked
	for _, t := range k.texts {
		if t.Block == id && id != "" {
			out = append(out, t)
		}
	}
	return out
}

// seen gives the backgrounds that show in a box: those above the last one
// that covers it whole.
func (k *inspector) seen(r page.Rect) []*page.Path {
	from := 0
	for i, p := range k.under {
		if p.Fill != nil && !p.EdgeIn(r) && p.Covers(page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2}) {
			from = i
		}
	}
	return append([]*page.Path(nil), k.under[from:]...)
}

// together checks that no code stands between ingredients, allergens and the
// maker's name and address (21 CFR 101.2(d)), and that blocks that must share
// a field of view are on the piece together.
func (k *inspector) together() {
	var group []page.Rect
	for _, b := range k.c.Blocks {
		switch b.Kind {
		case label.Ingredients, label.Allergens, label.Maker:
			for _, t := range k.of(b.ID) {
				group = append(group, t.ink)
			}
		}
		if len(k.of(b.ID)) > 0 {
			k.sameView(b)
		}
	}
	for _, c := range k.codes {
		above, below := false, false
		for _, g := range group {
			if g.X < c.At.X+c.At.W && c.At.X < g.X+g.W {
				above = above || g.Y+g.H <= c.At.Y
				below = below || g.Y >= c.At.Y+c.At.H
			}
		}
		if above && below && !atStall(label.Piece(k.fr.Piece)) {
			k.found.Errorf("intervening", "", "", "the QR code stands between ingredients and maker").Cited("21 CFR 101.2(d)")
		}
	}
}

func (k *inspector) sameView(b label.Block) {
	if !selling(label.Piece(k.fr.Piece)) {
		return
	}
	for _, kind := range b.With {
		if other, ok := k.c.Find(kind); ok && len(k.of(other.ID)) == 0 && other.Text() != "" {
			k.found.Errorf("field-of-view", "", b.Path, "%s must be seen together with the %s, which is not here", b.Kind, kind).Cited(b.Cite)
		}
	}
}

// contrast compares every line with the ground under it (WCAG 2.2, 1.4.3).
func (k *inspector) contrast() {
	for _, t := range k.texts {
		ratio := textContrast
		if t.Size.Points() >= largeText {
			ratio = largeContrast
		}
		if got := palette.Contrast(t.Colour, k.groundAt(t.ink)); got < ratio-0.01 {
			k.found.Errorf("contrast", "", "label.colours", "%q has a contrast of %.1f:1, least is %.1f:1", t.String(), got, ratio).
				Cited("WCAG 2.2, 1.4.3")
		}
	}
	for _, c := range k.codes {
		if got := palette.Contrast(c.Dark, k.groundAt(c.At)); got < textContrast {
			k.found.Errorf("contrast", "", "label.colours", "the QR code has a contrast of %.1f:1, least is %.1f:1", got, textContrast)
		}
	}
}

// groundAt is the colour printed last under the middle of a box.
func (k *inspector) groundAt(r page.Rect) page.Colour {
	mid := page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2}
	for _, list := range [][]*page.Path{k.paths, k.under} {
		for _, p := range slices.Backward(list) {
			if p.Fill != nil && p.Covers(mid) {
				return *p.Fill
			}
		}
	}
	return page.Colour{R: 255, G: 255, B: 255}
}
