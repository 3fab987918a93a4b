package page

import "jarmark/internal/kit/unit"

// Image is a picture of the maker's own as it is printed: its pixels, and a file
// of nothing but them. It is shared by all labels that bear it and never changes.
type Image struct {
	Name         string // of the file it came from
	Alt          string // what it shows, in words
	W, H         int    // pixels; of Art, micrometres
	Pix          []byte // R, G, B, A of each pixel, not multiplied by A, row by row
	Data         []byte // as a PNG or JPEG file, without anything but the picture
	JPEG         bool   // Data is JPEG
	FullW, FullH int    // pixels of the maker's file, upright

	// Art is a drawing in place of pixels: paths in a box of W x H, cut off at its
	// edge. Then there is neither Pix nor Data.
	Art []*Path
}

// Broken reports whether there is nothing to draw.
func (m *Image) Broken() bool {
	return m == nil || m.W < 1 || m.H < 1 || len(m.Art) == 0 && (len(m.Data) == 0 || len(m.Pix) < 4*m.W*m.H)
}

// Picture is an image in a box of its proportions.
type Picture struct {
	Block string
	At    Rect
	Image *Image
	Turn  float64 // degrees clockwise about the middle of At
}

func (*Picture) item() {}

// ArtUnit is what W and H of a drawn image count.
const ArtUnit = unit.Micrometre
