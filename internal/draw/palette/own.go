package palette

import (
	"fmt"
	"strconv"
	"strings"

	"golang.org/x/image/colornames"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
)

// For gives the colours of a main fruit (a pantry key or a common word for
// it; an unknown one gets the default) with the maker's own choice on top:
// own[0] colours title and fruit, own[1] the leaves, own[2] the paper. Each
// is "#b3202a", a fruit's word ("plum") or a CSS colour name ("teal"); an
// empty one keeps the fruit's colour. Findings carry the path
// label.colours[i].
func For(mainFruit string, own []string) (Palette, diag.List) {
	var found diag.List
	r, ok := fruits().find(mainFruit)
	if !ok {
		r = fruits().rows[0]
	}
	p := r.palette()
	for i, words := range own {
		path := fmt.Sprintf("label.colours[%d]", i)
		if i > 2 {
			found.Warnf("too-many-colours", "", path, "%d colours given, only three are used", len(own)).
				Hinted("give up to three: title and fruit, leaves, paper")
			break
		}
		if strings.TrimSpace(words) == "" {
			continue
		}
		c, from, ok := parse(words)
		if !ok {
			found.Errorf("unknown-colour", "", path, "%q is not a colour", clip(words)).
				Hinted(`write "#b3202a", a fruit such as "plum", or a plain colour name such as "teal"`)
			continue
		}
		p = p.with(i, c, from)
	}
	return p.settle(), found
}

// with puts one own colour in its role; from is the fruit it was named by.
func (p Palette) with(role int, c page.Colour, from *row) Palette {
	switch role {
	case 0:
		if from != nil {
			p.Ink, p.Berry, p.Highlight, p.Shade = from.ink, from.berry, from.highlight, from.shade
			return p
		}
		p.Ink, p.Berry = c, c
		p.Highlight = Mix(c, page.Colour{R: 255, G: 248, B: 240}, 0.72)
		p.Shade = Mix(c, page.Colour{R: 20, G: 8, B: 16}, 0.35)
	case 1:
		x := toLab(c)
		p.Leaves = []page.Colour{
			atLightness(c, max(0.24, x.l-0.12), 0.95), c, atLightness(c, min(0.8, x.l+0.13), 0.85),
		}
		p.DeepLeaves = deepLeaves(p.Leaves)
		p.Stem, p.DeepStem = stems(p.Leaves)
	case 2:
		// A dark paper would swallow the text of a design made for light
		// paper: keep the tint, at the lightness of paper.
		if toLab(c).l < 0.9 {
			c = atLightness(c, 0.955, 0.28)
		}
		p.Paper, p.Second = c, Mix(c, page.Colour{R: 246, G: 243, B: 230}, 0.6)
	}
	return p
}

// parse reads one colour; from is set when a fruit's word named it.
func parse(words string) (c page.Colour, from *row, ok bool) {
	s := strings.TrimSpace(words)
	if h, isHex := strings.CutPrefix(s, "#"); isHex {
		c, ok = hex(h)
		return c, nil, ok
	}
	if r, found := fruits().find(s); found && r.key != fallback {
		return r.berry, r, true
	}
	if n, found := colornames.Map[strings.ToLower(strings.ReplaceAll(s, " ", ""))]; found {
		return page.Colour{R: n.R, G: n.G, B: n.B}, nil, true
	}
	return c, nil, false
}

// hex reads the digits of #rgb and #rrggbb (CSS Color Module Level 4, 5.2).
func hex(h string) (page.Colour, bool) {
	if len(h) == 3 {
		h = string([]byte{h[0], h[0], h[1], h[1], h[2], h[2]})
	}
	if len(h) != 6 {
		return page.Colour{}, false
	}
	v, err := strconv.ParseUint(h, 16, 32)
	if err != nil {
		return page.Colour{}, false
	}
	return page.Colour{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v)}, true
}

// clip keeps a message short when a whole paragraph was given as a colour.
func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
