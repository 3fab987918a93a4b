package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// net checks the zone and the clear space of blocks that ask for them
// (21 CFR 101.7(f)).
func (k *checker) net() {
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
			box = union(box, t.ink)
		}
		if top := share(k.fr.H, bottomZone); b.Zone == label.Bottom && box.Y+slack < top {
			k.found.Errorf("zone", "", b.Path, "%s begins %.1f mm from the top, its zone at %.1f mm", b.Kind, box.Y.MM(), top.MM()).Cited(b.Cite)
		}
		if b.Clear {
			k.clear(b, lines[0], box)
		}
	}
}

// clear checks that no information is printed in the clear space of a block,
// and no drawing close to the type.
func (k *checker) clear(b label.Block, line inked, box page.Rect) {
	f := k.faces.Face(line.Face)
	n, h := 2*at(f.Advance('N'), line.Size), f.CapHeight(line.Size)
	need := grow(box, n-slack, h-slack)
	for _, t := range k.texts {
		if t.Block != b.ID && overlaps(t.ink, need) {
			k.found.Errorf("clear-space", "", b.Path, "%q stands in the clear space of the %s", t.String(), b.Kind).Cited(b.Cite)
		}
	}
	for _, c := range k.codes {
		if overlaps(c.At, need) {
			k.found.Errorf("clear-space", "", b.Path, "the QR code stands in the clear space of the %s", b.Kind).Cited(b.Cite)
		}
	}
	near := grow(box, n/4-slack, h/2-slack)
	for _, p := range k.paths {
		if crosses(p, near) {
			k.found.Errorf("clear-space", "", b.Path, "a drawing stands in the clear space of the %s", b.Kind)
			return
		}
	}
}

// of gives the lines of a block.
func (k *checker) of(id string) []inked {
	var out []inked
	for _, t := range k.texts {
		if t.Block == id && id != "" {
			out = append(out, t)
		}
	}
	return out
}

// code checks module size and quiet zone of QR codes.
func (k *checker) code() {
	least := k.c.QR.MinModule
	if least <= 0 {
		least = leastModule
	}
	for _, c := range k.codes {
		if len(c.Modules) == 0 {
			k.found.Errorf("qr-empty", "", "", "the QR code has no modules")
			continue
		}
		if m := c.At.W / unit.Length(len(c.Modules)); m+unit.Micrometre < least {
			k.found.Errorf("qr-module", "", "", "QR modules are %.2f mm, least is %.2f mm", m.MM(), least.MM())
		}
		q := quietBox(c)
		trim := *k.fr
		trim.Safe = 0
		if c.Quiet < quiet || !within(&trim, q, slack) {
			k.found.Errorf("qr-quiet-zone", "", "", "the quiet zone of the QR code is cut off").Cited("ISO/IEC 18004")
		}
		q = grow(q, -slack, -slack)
		for _, p := range append(k.seen(q), k.paths...) {
			if p.Block != "qr" && edgeIn(p, q) {
				k.found.Errorf("qr-quiet-zone", "", "", "something is printed in the quiet zone of the QR code").Cited("ISO/IEC 18004")
				break
			}
		}
	}
}

// seen gives the backgrounds that show in a box: those above the last one
// that covers it whole.
func (k *checker) seen(r page.Rect) []*page.Path {
	from := 0
	for i, p := range k.under {
		if p.Fill != nil && !edgeIn(p, r) && holds(p, page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2}) {
			from = i
		}
	}
	return append([]*page.Path(nil), k.under[from:]...)
}

// together checks that no code stands between ingredients, allergens and the
// maker's name and address (21 CFR 101.2(d)), and that blocks that must share
// a field of view are on the piece together.
func (k *checker) together() {
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

func (k *checker) sameView(b label.Block) {
	if p := label.Piece(k.fr.Piece); p != label.Front && p != label.Wrap {
		return
	}
	for _, kind := range b.With {
		if other, ok := k.c.Find(kind); ok && len(k.of(other.ID)) == 0 && other.Text() != "" {
			k.found.Errorf("field-of-view", "", b.Path, "%s must be seen together with the %s, which is not here", b.Kind, kind).Cited(b.Cite)
		}
	}
}

// contrast compares every line with the ground under it (WCAG 2.2, 1.4.3).
func (k *checker) contrast() {
	for _, t := range k.texts {
		ratio := textContrast
		if pt := t.Size.Points(); pt >= 18 {
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
func (k *checker) groundAt(r page.Rect) page.Colour {
	ground := page.Colour{R: 255, G: 255, B: 255}
	mid := page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2}
	for _, p := range append(k.under[:len(k.under):len(k.under)], k.paths...) {
		if p.Fill != nil && holds(p, mid) {
			ground = *p.Fill
		}
	}
	return ground
}
