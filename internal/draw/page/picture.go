package page

// Image is a picture of the maker's own as it is printed: its pixels, and a file
// of nothing but them. It is shared by all labels that bear it and never changes.
type Image struct {
	Name         string // of the file it came from
	Alt          string // what it shows, in words
	W, H         int    // pixels
	Pix          []byte // R, G, B, A of each pixel, not multiplied by A, row by row
	Data         []byte // as a PNG or JPEG file, without anything but the picture
	JPEG         bool   // Data is JPEG
	FullW, FullH int    // pixels of the maker's file, upright
}

// Picture is an image in a box of its proportions.
type Picture struct {
	Block string
	At    Rect
	Image *Image
}

func (*Picture) item() {}
