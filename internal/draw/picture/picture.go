// Package picture reads the maker's own pictures, photos and drawings. What it gives
// is paths, or pixels and a file made anew of them: where a photo was taken, by which camera
// and on which day stays behind. A file is weighed before it is read and its
// measures are known before it is decoded, so that none can fill the memory.
//
// Colours are taken for sRGB; a colour profile in the file is not read.
package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/draw"
	"image/jpeg"
	"image/png"
	"strings"

	"jarmark/internal/draw/artwork"
	"jarmark/internal/draw/page"
)

// Limits. A photo of a telephone has 12 to 50 megapixels in 2 to 20 MB.
const (
	MostBytes   = 20 << 20  // of a file
	mostDecoded = 200 << 20 // bytes of memory its pixels take: 50 megapixels of 8-bit colours
	mostSide    = 30_000    // pixels
)

// Problem is what is wrong with a file, and what helps.
type Problem struct {
	What, Hint   string
	Line, Column int        // in a drawing, from 1; else 0
	More         []*Problem // what else is wrong with it
}

func (p *Problem) Error() string { return p.What }

func problem(hint, format string, args ...any) *Problem {
	return &Problem{What: fmt.Sprintf(format, args...), Hint: hint}
}

const saveAnew = "open it in a picture program and save it as PNG or JPEG"

// Decoded is a file as read, upright.
type Decoded struct {
	img    image.Image
	turn   int // EXIF orientation, 1 to 8
	photo  bool
	W, H   int    // upright
	Beside string // something that is not as the maker may think; may be empty

	art *artwork.Drawing // in place of img
}

// Decode reads a PNG or JPEG file, or an SVG drawing.
func Decode(data []byte) (d *Decoded, err error) {
	defer func() { // the decoders are the standard library's: a fault of theirs must not end a run
		if r := recover(); r != nil {
			d, err = nil, problem(saveAnew, "the picture is broken")
		}
	}()
	if len(data) > MostBytes {
		return nil, tooHeavy(int64(len(data)))
	}
	read, config, kind := png.Decode, png.DecodeConfig, "PNG"
	switch {
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
	case bytes.HasPrefix(data, []byte("\xff\xd8\xff")):
		read, config, kind = jpeg.Decode, jpeg.DecodeConfig, "JPEG"
	case artwork.Is(data):
		return drawing(data)
	default:
		return nil, unknown(data)
	}
	c, err := config(bytes.NewReader(data))
	if err != nil {
		return nil, broken(kind, err)
	}
	if p := affordable(c, data); p != nil {
		return nil, p
	}
	d = &Decoded{turn: 1, photo: kind == "JPEG", W: c.Width, H: c.Height}
	if d.img, err = read(bytes.NewReader(data)); err != nil {
		return nil, broken(kind, err)
	}
	switch {
	case d.photo:
		d.turn = orientation(data)
		if _, ok := d.img.(*image.CMYK); ok {
			d.Beside = "is in printing colours (CMYK), which are turned into RGB roughly"
		}
	case bytes.Contains(data[:min(len(data), 4096)], []byte("acTL")):
		d.Beside = "moves; its first picture alone is printed"
	}
	if d.turn >= 5 {
		d.W, d.H = d.H, d.W
	}
	return d, nil
}

func tooHeavy(n int64) *Problem {
	return problem("save it smaller: 2000 pixels are enough for any label", "the file has %d MB, more than %d", (n+1<<20-1)>>20, MostBytes>>20)
}

func broken(kind string, err error) *Problem {
	why := strings.TrimPrefix(strings.TrimPrefix(err.Error(), "png: "), "jpeg: ")
	return problem(saveAnew, "the %s file is broken: %s", kind, strings.TrimPrefix(why, "invalid format: "))
}

// affordable refuses measures that cost more memory than any label needs.
func affordable(c image.Config, data []byte) *Problem {
	if c.Width < 1 || c.Height < 1 {
		return problem(saveAnew, "the picture has no size")
	}
	per := 4 // bytes of a pixel
	switch {
	case wide(c):
		per = 8
	case progressive(data):
		per = 12
	}
	if c.Width > mostSide || c.Height > mostSide || c.Width*c.Height > mostDecoded/per {
		return problem("save it smaller: 2000 pixels are enough for any label", "the picture has %d x %d pixels, more than can be read", c.Width, c.Height)
	}
	return nil
}

// kinds are the beginnings of files that are pictures and cannot be read here.
var kinds = []struct{ at, sign, name string }{
	{"", "GIF8", "a GIF"}, {"", "BM", "a BMP"}, {"", "II*\x00", "a TIFF"}, {"", "MM\x00*", "a TIFF"}, {"", "%PDF", "a PDF"}, {"", "%!PS", "a PostScript file"},
	{"8", "WEBP", "a WebP file"}, {"4", "ftypavif", "an AVIF file"}, {"4", "ftyp", "a HEIC file"}, {"", "\x1f\x8b", "a packed file (SVGZ)"},
}

func unknown(data []byte) *Problem {
	head := data[:min(len(data), 512)]
	for _, k := range kinds {
		from := 0
		if k.at != "" {
			from = int(k.at[0] - '0')
		}
		if len(head) > from && bytes.HasPrefix(head[from:], []byte(k.sign)) {
			return problem(saveAnew, "it is %s; PNG, JPEG and SVG are read", k.name)
		}
	}
	if len(data) == 0 {
		return problem(saveAnew, "the file is empty")
	}
	return problem(saveAnew, "it is no PNG or JPEG picture and no SVG drawing")
}

// Photo is a JPEG file of a photo for a page, no side over most pixels, on
// white, and its measures.
func (d *Decoded) Photo(most int) (data []byte, w, h int, err error) {
	if d.art != nil {
		return nil, 0, 0, problem(saveAnew, "it is a drawing; photos of the page are PNG or JPEG")
	}
	pix := d.reduced(most)
	flat := image.NewRGBA(pix.Rect)
	draw.Draw(flat, flat.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(flat, flat.Rect, pix, image.Point{}, draw.Over)
	var b bytes.Buffer
	err = jpeg.Encode(&b, flat, &jpeg.Options{Quality: 80})
	return b.Bytes(), flat.Rect.Dx(), flat.Rect.Dy(), err
}

// Image makes of a decoded file what is printed, no side over most pixels. Grey
// is for black ink alone: without colours, on white.
func (d *Decoded) Image(most int, grey bool) (*page.Image, error) {
	if d.art != nil {
		return d.drawn(grey), nil
	}
	pix := d.reduced(most)
	w, h := pix.Rect.Dx(), pix.Rect.Dy()
	out := &page.Image{W: w, H: h, Pix: pix.Pix, FullW: d.W, FullH: d.H, JPEG: d.photo}
	var img image.Image = pix
	if grey {
		g := image.NewGray(pix.Rect)
		draw.Draw(g, g.Rect, image.White, image.Point{}, draw.Src)
		draw.Draw(g, g.Rect, pix, image.Point{}, draw.Over)
		for i, v := range g.Pix {
			copy(pix.Pix[4*i:], []byte{v, v, v, 255})
		}
		img = g
	}
	var b bytes.Buffer
	var err error
	if d.photo {
		err = jpeg.Encode(&b, img, &jpeg.Options{Quality: 90})
	} else {
		err = png.Encode(&b, img)
	}
	out.Data = b.Bytes()
	return out, err
}
