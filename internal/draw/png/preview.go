package png

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Mockup is how a label lies on a table in a preview.
type Mockup struct {
	Table  page.Colour // what it lies on
	Margin unit.Length // of table around it
	Shadow bool        // a soft shadow and a hairline edge, so that white paper shows on a light table
}

// Table is a mockup as shop pictures have it: warm grey, soft shadow.
var Table = Mockup{Table: page.Colour{R: 0xe8, G: 0xe6, B: 0xdf}, Margin: 4 * unit.Millimetre, Shadow: true}

// Preview draws one label cut out and laid on a table.
func Preview(f *page.Frame, overlay []page.Item, fs *face.Set, dpi float64, m Mockup) (*image.RGBA, error) {
	label, err := Frame(f, overlay, fs, dpi)
	if err != nil {
		return nil, err
	}
	margin := max(0, m.Margin)
	c, err := newCanvas(f.W+2*margin, f.H+2*margin, dpi, fs)
	if err != nil {
		return nil, err
	}
	draw.Draw(c.img, c.img.Bounds(), image.NewUniform(rgba(m.Table)), image.Point{}, draw.Src)
	off := int(math.Round(float64(margin) * c.dot))
	at := translation(float64(off), float64(off)).mul(scaling(c.dot))
	mask, err := c.mask(f, at)
	if err != nil {
		return nil, err
	}
	if m.Shadow {
		drop := c.dot * 0.5 * float64(unit.Millimetre)
		shade(c.img, blur(mask, max(1, int(drop))), int(drop*0.5), 0.13)
		shade(c.img, blur(mask, 1), 0, 0.16)
	}
	draw.DrawMask(c.img, c.img.Bounds(), label, image.Point{X: -off, Y: -off}, mask, image.Point{}, draw.Over)
	return c.img, nil
}

// shade darkens a picture under a mask moved down by some pixels.
func shade(img *image.RGBA, mask *image.Alpha, down int, strength float64) {
	dark := image.NewUniform(color.RGBA{A: uint8(255 * strength)})
	draw.DrawMask(img, img.Bounds(), dark, image.Point{}, mask, image.Point{Y: -down}, draw.Over)
}

// blur softens a mask: three box blurs are near enough to a Gaussian.
func blur(m *image.Alpha, radius int) *image.Alpha {
	for range 3 {
		m = boxBlur(boxBlur(m, radius, 1, 0), radius, 0, 1)
	}
	return m
}

func boxBlur(m *image.Alpha, radius, dx, dy int) *image.Alpha {
	b := m.Bounds()
	out := image.NewAlpha(b)
	lines, length := b.Dy(), b.Dx()
	if dy == 1 {
		lines, length = length, lines
	}
	get := func(l, i int) int {
		if i < 0 || i >= length {
			return 0
		}
		return int(m.AlphaAt(b.Min.X+i*dx+l*dy, b.Min.Y+i*dy+l*dx).A)
	}
	for l := range lines {
		sum := 0
		for i := -radius; i <= radius; i++ {
			sum += get(l, i)
		}
		for i := range length {
			out.SetAlpha(b.Min.X+i*dx+l*dy, b.Min.Y+i*dy+l*dx, color.Alpha{A: uint8(sum / (2*radius + 1))})
			sum += get(l, i+radius+1) - get(l, i-radius)
		}
	}
	return out
}
