package palette

import (
	"math"

	"jarmark/internal/draw/page"
)

// lab is a colour in Oklab (CSS Color Module Level 4, section 9), in which
// equal steps look equal: mixed colours keep their hue instead of greying.
type lab struct{ l, a, b float64 }

func toLab(c page.Colour) lab {
	r, g, b := linear(c.R), linear(c.G), linear(c.B)
	l := math.Cbrt(0.4122214708*r + 0.5363325363*g + 0.0514459929*b)
	m := math.Cbrt(0.2119034982*r + 0.6806995451*g + 0.1073969566*b)
	s := math.Cbrt(0.0883024619*r + 0.2817188376*g + 0.6299787005*b)
	return lab{
		0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

func (c lab) colour() page.Colour {
	l := cube(c.l + 0.3963377774*c.a + 0.2158037573*c.b)
	m := cube(c.l - 0.1055613458*c.a - 0.0638541728*c.b)
	s := cube(c.l - 0.0894841775*c.a - 1.2914855480*c.b)
	return page.Colour{
		R: encode(4.0767416621*l - 3.3077115913*m + 0.2309699292*s),
		G: encode(-1.2684380046*l + 2.6097574011*m - 0.3413193965*s),
		B: encode(-0.0041960863*l - 0.7034186147*m + 1.7076147010*s),
	}
}

func cube(v float64) float64 { return v * v * v }

// Mix blends a toward b, t = 0 giving a and 1 giving b, evenly to the eye.
func Mix(a, b page.Colour, t float64) page.Colour {
	t = min(max(t, 0), 1)
	if t == 0 {
		return a
	}
	if t == 1 {
		return b
	}
	x, y := toLab(a), toLab(b)
	return lab{x.l + (y.l-x.l)*t, x.a + (y.a-x.a)*t, x.b + (y.b-x.b)*t}.colour()
}

// atLightness gives the colour at another Oklab lightness (0 to 1), its
// colourfulness scaled by keep.
func atLightness(c page.Colour, lightness, keep float64) page.Colour {
	x := toLab(c)
	return lab{lightness, x.a * keep, x.b * keep}.colour()
}
