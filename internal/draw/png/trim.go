package png

import (
	"image"
	"image/color"
	"image/draw"

	"jarmark/internal/draw/page"
)

// trim paints white over everything outside the outline.
func (c *canvas) trim(f *page.Frame, at affine) error {
	if f.Shape != page.Ellipse && f.Shape != page.TagShape && f.Corner <= 0 {
		return nil
	}
	mask, err := c.mask(f, at)
	if err != nil {
		return err
	}
	for i := range mask.Pix {
		mask.Pix[i] = 255 - mask.Pix[i]
	}
	draw.DrawMask(c.img, c.img.Bounds(), image.White, image.Point{}, mask, image.Point{}, draw.Over)
	return nil
}

// mask is the coverage of the label's outline, a tag's hole left out.
func (c *canvas) mask(f *page.Frame, at affine) (*image.Alpha, error) {
	lines, err := flatten(f.Outline(), at)
	if err != nil {
		return nil, err
	}
	mask := image.NewAlpha(c.img.Bounds())
	for i, l := range lines {
		r, ok := c.cover([]line{l})
		if !ok {
			continue
		}
		paint := image.NewUniform(color.Alpha{A: 255})
		if i == 0 {
			c.ras.Draw(mask, r, paint, image.Point{})
			continue
		}
		hole := image.NewAlpha(r)
		c.ras.Draw(hole, r, paint, image.Point{})
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				m, h := mask.AlphaAt(x, y).A, hole.AlphaAt(x, y).A
				mask.SetAlpha(x, y, color.Alpha{A: uint8(int(m) * (255 - int(h)) / 255)})
			}
		}
	}
	return mask, nil
}
