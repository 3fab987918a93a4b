// Package ornament draws the decoration of labels: wreaths, garlands,
// crystals, stars, fruit. A drawing is a pure function of its name and Spec:
// the same Spec gives the same paths, in any program, on any day.
package ornament

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// Spec says where and how to draw.
type Spec struct {
	Rect    page.Rect       // nothing is drawn outside; round ornaments take the circle or ellipse in it
	Palette palette.Palette //
	Seed    uint64          // another seed, another hand; the same seed, the same drawing
	Density float64         // 1 is usual and what 0 means; useful from 0.4 to 2
	Dark    bool            // for a dark ground (Palette.Deep): light leaves, gold berries
	Line    bool            // ink saver: black outlines, knocked out in white so that nothing shows through
	Engrave bool            // lines alone, in the palette's ink
	Ground  page.Colour     // what an engraving stands on
	Keep    []page.Rect     // zones that stay free: text, QR code
	FlipX   bool            // mirrored left to right, for the partner of a drawing on the other side
	FlipY   bool            // mirrored top to bottom
	Motif   string          // the fruit drawn; "" takes Palette.Motif
}
