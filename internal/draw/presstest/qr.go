package presstest

import (
	"fmt"
	"image"
	"math"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"golang.org/x/image/draw"

	"jarmark/internal/draw/page"
)

// Pixels gives the pixels a box on the page covers at a resolution, grown by
// a margin of the box's own width / grow (0: none).
func Pixels(r page.Rect, dpi float64, grow int) image.Rectangle {
	px := func(l float64) float64 { return l * dpi / 25.4 }
	x0, y0 := px(r.X.MM()), px(r.Y.MM())
	x1, y1 := px((r.X + r.W).MM()), px((r.Y + r.H).MM())
	if grow > 0 {
		m := (x1 - x0) / float64(grow)
		x0, y0, x1, y1 = x0-m, y0-m, x1+m, y1+m
	}
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1)))
}

// DecodeQR reads the one QR code inside a part of a picture; the part should
// take in the quiet zone.
func DecodeQR(img *image.RGBA, part image.Rectangle) (string, error) {
	part = part.Intersect(img.Bounds())
	if part.Empty() {
		return "", fmt.Errorf("the part lies outside the picture")
	}
	hints := map[gozxing.DecodeHintType]any{
		gozxing.DecodeHintType_TRY_HARDER:    true,
		gozxing.DecodeHintType_CHARACTER_SET: "UTF-8",
	}
	var first error
	for _, bmp := range exposures(img.SubImage(part)) {
		res, err := qrcode.NewQRCodeReader().Decode(bmp, hints)
		if err == nil {
			return res.GetText(), nil
		}
		if first == nil {
			first = err
		}
	}
	return "", first
}

// exposures gives a picture as a phone would see it in a few frames: ZXing's
// finder can miss a sound code at one size and threshold and get it at the
// next. Only a code that fails in all of them counts as unreadable.
func exposures(img image.Image) []*gozxing.BinaryBitmap {
	b := img.Bounds()
	double := image.NewRGBA(image.Rect(0, 0, 2*b.Dx(), 2*b.Dy()))
	draw.BiLinear.Scale(double, double.Bounds(), img, b, draw.Src, nil)
	var out []*gozxing.BinaryBitmap
	for _, one := range []image.Image{img, double} {
		src := gozxing.NewLuminanceSourceFromImage(one)
		for _, bin := range []gozxing.Binarizer{gozxing.NewHybridBinarizer(src), gozxing.NewGlobalHistgramBinarizer(src)} {
			if bmp, err := gozxing.NewBinaryBitmap(bin); err == nil {
				out = append(out, bmp)
			}
		}
	}
	return out
}

// Codes lists where the QR codes of a page stand, in page coordinates, with
// the payload each should carry.
func Codes(p *page.Page) []page.Code {
	var out []page.Code
	for _, pl := range p.Places {
		for _, it := range append(append([]page.Item{}, pl.Frame.Items...), pl.Overlay...) {
			if c, ok := it.(*page.Code); ok {
				k := *c
				k.At = placed(pl, c.At)
				out = append(out, k)
			}
		}
	}
	return out
}

// placed moves a box of a frame to where the placement puts it.
func placed(pl page.Placement, r page.Rect) page.Rect {
	if pl.Turn == 90 {
		return page.Rect{X: pl.At.X + pl.Frame.H - r.Y - r.H, Y: pl.At.Y + r.X, W: r.H, H: r.W}
	}
	return page.Rect{X: pl.At.X + r.X, Y: pl.At.Y + r.Y, W: r.W, H: r.H}
}

// DecodePage reads every QR code of a rendered page and tells where one says
// something else than its payload, or nothing.
func DecodePage(img *image.RGBA, p *page.Page, dpi float64) []error {
	var bad []error
	for i, c := range Codes(p) {
		n := max(len(c.Modules), 1)
		got, err := DecodeQR(img, Pixels(c.At, dpi, max(1, n/4)))
		switch {
		case err != nil:
			bad = append(bad, fmt.Errorf("code %d at %.1f, %.1f mm: %w", i, c.At.X.MM(), c.At.Y.MM(), err))
		case got != c.Payload:
			bad = append(bad, fmt.Errorf("code %d says %q, want %q", i, got, c.Payload))
		}
	}
	return bad
}
