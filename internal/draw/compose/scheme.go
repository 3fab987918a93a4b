package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// Contrast ratios of WCAG 2.2, 1.4.3: text, and large text (18 pt, or 14 pt
// bold).
const (
	textContrast  = 4.5
	largeContrast = 3.0
)

// roles is the palette by the words designs use, on one ground.
type roles struct {
	pal    palette.Palette
	ground page.Colour
	dark   bool // the ground is darker than mid-grey
}

// scheme is the colours a label is printed in.
type scheme struct {
	pal   palette.Palette
	saver bool // black on bare paper
}

// newScheme takes the colours of the main fruit, or the maker's own.
func newScheme(c *label.Content, saver bool) (scheme, diag.List) {
	pal, found := palette.For(c.MainFruit, c.Colours)
	if saver {
		pal = pal.InkSaver()
	}
	return scheme{pal, saver}, found
}

// on gives the roles on a ground named by a design.
func (s scheme) on(ground string) roles {
	r := roles{pal: s.pal}
	r.ground = r.named(ground)
	if s.saver {
		r.ground = s.pal.White // nothing is filled, whatever the design asks
	}
	r.dark = palette.Luminance(r.ground) < 0.18
	return r
}

// named gives the plain colour of a role. Roles of type differ by ground.
func (r roles) named(role string) page.Colour {
	p := r.pal
	switch role {
	case "paper":
		return p.Paper
	case "tint":
		return p.Second
	case "deep":
		return p.Deep
	case "berry":
		return p.Berry
	case "leaf":
		return r.leaf()
	case "ink":
		return pick(r.dark, p.OnDeep, p.Text)
	case "soft":
		return pick(r.dark, p.OnDeep, p.Soft)
	case "main":
		return pick(r.dark, p.OnDeep, p.Ink)
	case "accent":
		return pick(r.dark, p.Gold, p.Berry)
	}
	return p.White
}

func (r roles) leaf() page.Colour {
	set := r.pal.Leaves
	if r.dark {
		set = r.pal.DeepLeaves
	}
	if len(set) == 0 {
		return r.pal.Text
	}
	return set[0]
}

func pick(dark bool, a, b page.Colour) page.Colour {
	if dark {
		return a
	}
	return b
}

// text gives a role's colour, moved until it can be read on the ground.
func (r roles) text(role string, ratio float64) page.Colour {
	return palette.Ensure(r.named(role), r.ground, ratio)
}
