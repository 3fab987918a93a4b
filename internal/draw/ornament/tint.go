package ornament

import (
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// tint is the set of colours of one drawing, resolved for its ground.
type tint struct {
	leaves, veins, unders         []page.Colour // of leaves: their tones, midribs, shaded halves
	stem                          page.Colour
	fruit, light, shade           page.Colour // of the main fruit
	berry, berryLight, berryShade page.Colour // of filler berries: gold on dark
	gold, ground, cream           page.Colour
	ink, paper                    page.Colour // of an engraving
	line, dark, cut               bool
}

func tintOf(s Spec) tint {
	p := s.Palette
	if len(p.Leaves) == 0 || len(p.DeepLeaves) == 0 {
		p = palette.Default()
	}
	t := tint{
		leaves: p.Leaves, stem: p.Stem,
		fruit: p.Berry, light: p.Highlight, shade: p.Shade,
		berry: p.Berry, berryLight: p.Highlight, berryShade: p.Shade,
		gold: p.Gold, ground: p.Paper, cream: p.OnDeep, line: s.Line || p.Mono, dark: s.Dark && !s.Line && !p.Mono,
	}
	if t.dark {
		t.leaves, t.stem, t.ground = p.DeepLeaves, p.DeepStem, p.Deep
		// The fruit must stand off the ground: lift what is too dark.
		t.fruit = palette.Lift(p.Berry, p.Deep, 2.3)
		t.shade = palette.Mix(t.fruit, p.Deep, 0.42)
		t.light = palette.Mix(t.fruit, p.OnDeep, 0.85)
		t.berry = p.Gold
		t.berryShade = palette.Mix(p.Gold, page.Colour{R: 0x6a, G: 0x3a, B: 0x10}, 0.4)
		t.berryLight = palette.Mix(p.Gold, page.Colour{R: 255, G: 252, B: 240}, 0.85)
	}
	if s.Engrave {
		t.engraved(s, p)
	}
	for _, l := range t.leaves {
		t.veins, t.unders = append(t.veins, t.veinOf(l)), append(t.unders, t.underOf(l))
	}
	return t
}

// engraved turns the tint into that of an engraving: line work on the paper it
// stands on.
func (t *tint) engraved(s Spec, p palette.Palette) {
	t.ink, t.paper = palette.Mix(p.Ink, p.Text, 0.45), s.Ground
	switch {
	case s.Line || p.Mono:
		t.ink, t.paper = black, white
	case t.dark:
		t.ink = p.OnDeep
	}
	t.line, t.cut = true, true
}

var black, white = page.Colour{}, page.Colour{R: 255, G: 255, B: 255}

// leaf gives a leaf's tone by index, any integer.
func (t tint) leaf(i int) page.Colour {
	n := len(t.leaves)
	return t.leaves[((i%n)+n)%n]
}

// vein is the midrib's tone: lighter on paper, darker on a dark ground.
func (t tint) vein(leaf page.Colour) page.Colour {
	return t.toned(leaf, t.veins, t.veinOf)
}

// toned is the tone of a leaf in a list, worked out where the leaf is none of ours.
func (t tint) toned(leaf page.Colour, tones []page.Colour, of func(page.Colour) page.Colour) page.Colour {
	if i := slices.Index(t.leaves, leaf); i >= 0 {
		return tones[i]
	}
	return of(leaf)
}

func (t tint) veinOf(leaf page.Colour) page.Colour {
	if t.dark {
		return palette.Mix(leaf, t.ground, 0.42)
	}
	return palette.Mix(leaf, t.ground, 0.5)
}

// under is the shaded half of a leaf.
func (t tint) under(leaf page.Colour) page.Colour {
	return t.toned(leaf, t.unders, t.underOf)
}

func (t tint) underOf(leaf page.Colour) page.Colour {
	if t.dark {
		return palette.Mix(leaf, t.ground, 0.2)
	}
	return palette.Mix(leaf, page.Colour{R: 0x12, G: 0x22, B: 0x1c}, 0.17)
}

// rule is the colour of lines and frames.
func (t tint) rule() page.Colour {
	switch {
	case t.cut:
		return t.ink
	case t.line:
		return black
	case t.dark:
		return t.gold
	}
	return palette.Mix(t.fruit, t.shade, 0.25)
}
