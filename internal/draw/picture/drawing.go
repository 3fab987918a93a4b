package picture

import (
	"image/color"

	"jarmark/internal/draw/artwork"
	"jarmark/internal/draw/page"
)

// drawing reads an SVG file.
func drawing(data []byte) (*Decoded, error) {
	art, found := artwork.Read(data)
	var first *Problem
	for _, f := range found {
		p := &Problem{What: f.What, Hint: f.Hint, Line: f.Line, Column: f.Column}
		if first == nil {
			first = p
		} else {
			first.More = append(first.More, p)
		}
	}
	if first != nil {
		return nil, first
	}
	return &Decoded{art: art, turn: 1, W: int(art.W / page.ArtUnit), H: int(art.H / page.ArtUnit)}, nil
}

// drawn is a drawing as it is printed; grey is for black ink alone.
func (d *Decoded) drawn(grey bool) *page.Image {
	out := &page.Image{W: d.W, H: d.H, Art: d.art.Paths}
	if !grey {
		return out
	}
	out.Art = nil
	for _, p := range d.art.Paths {
		q := *p
		q.Fill, q.Stroke = greyOf(p.Fill), greyOf(p.Stroke)
		out.Art = append(out.Art, &q)
	}
	return out
}

// greyOf is how light a colour is, as of the pixels of a picture.
func greyOf(c *page.Colour) *page.Colour {
	if c == nil {
		return nil
	}
	v := color.GrayModel.Convert(color.RGBA{c.R, c.G, c.B, 255}).(color.Gray).Y
	return &page.Colour{R: v, G: v, B: v}
}
