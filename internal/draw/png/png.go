// Package png draws pages as pictures: labels as files for a screen, and for
// tests that look at the result. Dots per inch exist only here; everything before
// is lengths. The same input gives the same pixels.
package png

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/draw"
	"image/png"
	"io"
	"math"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// maxPixels bounds a picture: 100 megapixels, 400 MB, is beyond any label or
// sheet at a sensible resolution.
const maxPixels = 100_000_000

// Page draws one page of a document, printer correction included.
func Page(d *page.Doc, i int, fs *face.Set, dpi float64) (*image.RGBA, error) {
	if d == nil || i < 0 || i >= len(d.Pages) {
		return nil, fmt.Errorf("png: no page %d", i+1)
	}
	p := &d.Pages[i]
	c, err := newCanvas(p.W, p.H, dpi, fs)
	if err != nil {
		return nil, err
	}
	draw.Draw(c.img, c.img.Bounds(), image.White, image.Point{}, draw.Src)
	base := scaling(c.dot).mul(affine{
		a: orOne(d.ScaleX), d: orOne(d.ScaleY), e: float64(d.OffsetX), f: float64(d.OffsetY),
	})
	for _, pl := range p.Places {
		if pl.Frame == nil {
			return nil, fmt.Errorf("png: page %d has a place without a label", i+1)
		}
		at := base.mul(placed(pl))
		c.clip = clipTo(base, pl.Reach())
		if err := c.items(pl.Frame.Items, at); err != nil {
			return nil, err
		}
		if err := c.items(pl.Overlay, at); err != nil {
			return nil, err
		}
	}
	c.clip = c.img.Bounds()
	if err := c.items(p.Marks, base); err != nil {
		return nil, err
	}
	return c.img, nil
}

// Encode writes the picture as PNG that knows its resolution, in dots per inch,
// so that it prints at true size: pHYs, in whole dots per metre (ISO/IEC 15948,
// 11.3.5.3).
func Encode(w io.Writer, img image.Image, dpi float64) error {
	var b bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := e.Encode(&b, img); err != nil {
		return err
	}
	const head = 8 + 12 + 13 // the signature and IHDR, which comes first
	chunk := []byte("\x00\x00\x00\x09pHYs")
	per := uint32(math.Round(dpi / 0.0254))
	chunk = binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(chunk, per), per)
	chunk = append(chunk, 1) // the unit is the metre
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(chunk[4:]))
	for _, part := range [][]byte{b.Bytes()[:head], chunk, b.Bytes()[head:]} {
		if _, err := w.Write(part); err != nil {
			return err
		}
	}
	return nil
}

// placed maps frame coordinates to page coordinates. Turned 90° clockwise,
// the top of the label faces right.
func placed(pl page.Placement) affine {
	at := translation(float64(pl.At.X), float64(pl.At.Y))
	if pl.Turn == 90 {
		return at.mul(affine{a: 0, b: 1, c: -1, d: 0, e: float64(pl.Frame.H)})
	}
	return at
}

// clipTo gives the pixels of what a placed label may paint.
func clipTo(base affine, r page.Rect) image.Rectangle {
	x0, y0 := base.apply(float64(r.X), float64(r.Y))
	x1, y1 := base.apply(float64(r.X+r.W), float64(r.Y+r.H))
	return image.Rect(
		int(math.Floor(min(x0, x1))), int(math.Floor(min(y0, y1))),
		int(math.Ceil(max(x0, x1))), int(math.Ceil(max(y0, y1))))
}

func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}

// pixels gives the whole pixels of a length.
func pixels(l unit.Length, dot float64) int {
	return max(1, int(math.Round(float64(l)*dot)))
}
