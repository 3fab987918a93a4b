package artwork

import (
	"image/color"
	"math"
	"strconv"
	"strings"

	"golang.org/x/image/colornames"

	"jarmark/internal/draw/page"
)

type kind uint8

const (
	none        kind = iota
	plainColour      // a colour
	inkOfText        // currentColor
	reference        // a gradient or a pattern
)

// paint is what an area or a line is painted with.
type paint struct {
	kind   kind
	colour page.Colour
	id     string // of a reference
}

// readPaint reads a paint (SVG 2, 13.2; CSS Color 4).
func readPaint(s string) (p paint, ok bool) {
	low := strings.ToLower(s)
	switch {
	case low == "none" || low == "transparent":
		return p, true
	case low == "currentcolor":
		return paint{kind: inkOfText}, true
	case strings.HasPrefix(low, "url("):
		inside, _, _ := strings.Cut(s[len("url("):], ")")
		id, _ := strings.CutPrefix(strings.Trim(inside, `"' `), "#")
		return paint{kind: reference, id: id}, true
	case strings.HasPrefix(low, "#"):
		return hex(low[1:])
	case strings.HasPrefix(low, "rgb(") && strings.HasSuffix(low, ")"):
		return rgb(low[4 : len(low)-1])
	}
	c, ok := colornames.Map[low] // the names of SVG 1.1; CSS Color 4, 6.1, has one more
	if low == "rebeccapurple" {
		c, ok = color.RGBA{0x66, 0x33, 0x99, 0xff}, true
	}
	return coloured(c), ok
}

func coloured(c color.RGBA) paint {
	return paint{kind: plainColour, colour: page.Colour{R: c.R, G: c.G, B: c.B}}
}

// hex reads 3, 4, 6 or 8 digits; the clear part of 4 and 8 must be full or nothing.
func hex(s string) (p paint, ok bool) {
	if len(s) == 3 || len(s) == 4 {
		var b strings.Builder
		for i := range len(s) {
			b.WriteByte(s[i])
			b.WriteByte(s[i])
		}
		s = b.String()
	}
	alpha := "ff"
	if len(s) == 8 {
		s, alpha = s[:6], s[6:]
	}
	v, err := strconv.ParseUint(s, 16, 32)
	if err != nil || len(s) != 6 || alpha != "ff" && alpha != "00" {
		return p, false
	}
	if alpha == "00" {
		return p, true
	}
	return coloured(color.RGBA{uint8(v >> 16), uint8(v >> 8), uint8(v), 255}), true
}

// rgb reads three numbers to 255 or three shares in percent.
func rgb(s string) (p paint, ok bool) {
	whole := 255.
	if n := strings.Count(s, "%"); n == 3 {
		s, whole = strings.ReplaceAll(s, "%", " "), 100
	} else if n > 0 {
		return p, false
	}
	v, ok := numbers(s)
	if !ok || len(v) != 3 {
		return p, false
	}
	of := func(v float64) uint8 { return uint8(math.Round(min(max(v*255/whole, 0), 255))) }
	return coloured(color.RGBA{of(v[0]), of(v[1]), of(v[2]), 255}), true
}
