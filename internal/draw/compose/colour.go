package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/draw/typeset"
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

// colour chooses the palette and the grounds of the piece.
func (s *setter) colour() {
	pal, found := palette.For(s.c.MainFruit, s.c.Colours)
	s.found = append(s.found, found...)
	if s.opt.InkSaver {
		pal = pal.InkSaver()
	}
	s.pal = pal
	s.colours = s.on(s.look.Paper)
}

// on gives the roles on a ground named by a design.
func (s *setter) on(ground string) roles {
	r := roles{pal: s.pal}
	r.ground = r.named(ground)
	if s.opt.InkSaver {
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

// voice makes a design's voice speak on a ground.
func (s *setter) voice(v design.Voice, on roles) typeset.Voice {
	out := typeset.Voice{
		Regular: s.faces.Face(v.Face), Track: int(v.Track * 1000),
		Leading: v.Leading, Colour: on.text(v.Colour, textContrast), KernMin: 4,
		Upper: v.Case == "upper", Lower: v.Case == "lower",
	}
	if v.Bold != "" {
		out.Bold = s.faces.Face(v.Bold)
	}
	return out
}
