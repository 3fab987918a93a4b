// Package palette gives each label its colours: taken from the main fruit,
// or from the maker's own choice, and always with enough contrast to read.
// The colours of the fruits are data, in fruit-colours.csv.
package palette

import "jarmark/internal/draw/page"

// Palette is one set of colours with a role each. Ink, Text and Soft keep
// AA contrast (4.5:1) on Paper, Second and White; OnDeep and Gold keep it on
// Deep.
type Palette struct {
	Fruit string // pantry key the colours come from; "default" when none
	Motif string // the drawing that stands for the fruit: "strawberry", "berry"

	Ink  page.Colour // titles: the fruit's deep tone
	Text page.Colour // body text and codes: pure black, which a printer does not screen
	Soft page.Colour // second-rank text: captions, lot

	Berry     page.Colour // the fruit itself; also rules and accents
	Highlight page.Colour // where light falls on the fruit
	Shade     page.Colour // the fruit's shadow side and rim

	Leaves     []page.Colour // two to four tones on paper, darkest first
	DeepLeaves []page.Colour // the same on Deep, darkest first
	Stem       page.Colour   // twigs on paper
	DeepStem   page.Colour   // twigs on Deep

	Paper  page.Colour // warm ground
	Second page.Colour // ground of a second panel beside Paper
	White  page.Colour // bare paper
	Deep   page.Colour // ground of dark designs
	OnDeep page.Colour // text on Deep: cream
	Gold   page.Colour // berries, rules and small words on Deep

	Mono bool // black ink only
}

// Key tells palettes apart: it holds all of one.
func (p Palette) Key() string {
	b := make([]byte, 0, 120)
	b = append(append(append(append(b, p.Fruit...), 0), p.Motif...), 0)
	for _, c := range [...]page.Colour{p.Ink, p.Text, p.Soft, p.Berry, p.Highlight, p.Shade, p.Stem, p.DeepStem,
		p.Paper, p.Second, p.White, p.Deep, p.OnDeep, p.Gold} {
		b = append(b, c.R, c.G, c.B)
	}
	for _, list := range [...][]page.Colour{p.Leaves, p.DeepLeaves} {
		b = append(b, byte(len(list)))
		for _, c := range list {
			b = append(b, c.R, c.G, c.B)
		}
	}
	if p.Mono {
		b = append(b, 1)
	}
	return string(b)
}

// Default is the palette of a food without a fruit of its own.
func Default() Palette {
	p, _ := For("", nil)
	return p
}

// InkSaver gives the palette with every ink black and every ground bare
// paper; the motif stays.
func (p Palette) InkSaver() Palette {
	black, white := page.Colour{}, page.Colour{R: 255, G: 255, B: 255}
	return Palette{
		Fruit: p.Fruit, Motif: p.Motif,
		Ink: black, Text: black, Soft: black,
		Berry: black, Highlight: white, Shade: black,
		Leaves: []page.Colour{black, black}, DeepLeaves: []page.Colour{black, black},
		Stem: black, DeepStem: black,
		Paper: white, Second: white, White: white, Deep: white,
		OnDeep: black, Gold: black,
		Mono: true,
	}
}

// readable is the contrast of text that everybody should be able to read:
// WCAG 2.2, 1.4.3 Contrast (Minimum), level AA, text below 18 pt.
const readable = 4.5

// settle moves the text colours until they can be read on all their grounds.
func (p Palette) settle() Palette {
	for _, ground := range []page.Colour{p.White, p.Second, p.Paper} {
		p.Ink = Ensure(p.Ink, ground, readable)
		p.Text = Ensure(p.Text, ground, 7)
		p.Soft = Ensure(p.Soft, ground, readable)
	}
	p.OnDeep = Ensure(p.OnDeep, p.Deep, 7)
	p.Gold = Ensure(p.Gold, p.Deep, readable)
	return p
}
