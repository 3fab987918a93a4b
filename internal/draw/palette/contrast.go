package palette

import (
	"math"

	"jarmark/internal/draw/page"
)

// Luminance is the relative luminance of a colour, 0 (black) to 1 (white).
// WCAG 2.2, "relative luminance" (with the corrected threshold 0.04045, which
// no 8-bit colour tells from the older 0.03928).
func Luminance(c page.Colour) float64 {
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

// The curve of sRGB (IEC 61966-2-1) as tables: the light of each of the 256
// steps, and the light from which a step is the nearest.
var lights, nearest = func() (l, n [256]float64) {
	light := func(s float64) float64 {
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	for i := range l {
		l[i], n[i] = light(float64(i)/255), light((float64(i)-0.5)/255)
	}
	return l, n
}()

func linear(v uint8) float64 { return lights[v] }

func encode(v float64) uint8 {
	lo, hi := 0, 256
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; v >= nearest[mid] {
			lo = mid
		} else {
			hi = mid
		}
	}
	return uint8(lo)
}

// Contrast is the contrast ratio of two colours, 1 to 21 (WCAG 2.2,
// "contrast ratio").
func Contrast(a, b page.Colour) float64 {
	la, lb := Luminance(a), Luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// Ensure gives fg itself when it has the ratio on bg, else the nearest tone
// of it, darker or lighter, that has. When no tone can (a ratio above what
// black and white reach on bg) it gives the better of black and white.
func Ensure(fg, bg page.Colour, ratio float64) page.Colour {
	if Contrast(fg, bg) >= ratio {
		return fg
	}
	end := page.Colour{}
	white := page.Colour{R: 255, G: 255, B: 255}
	if Contrast(white, bg) > Contrast(end, bg) {
		end = white
	}
	if Contrast(end, bg) <= ratio {
		return end
	}
	lo, hi := 0.0, 1.0 // Mix at lo fails, at hi holds
	for range 24 {
		mid := (lo + hi) / 2
		if Contrast(Mix(fg, end, mid), bg) >= ratio {
			hi = mid
		} else {
			lo = mid
		}
	}
	return Mix(fg, end, hi)
}

// Lift gives a colour light enough to stand off a dark ground with the ratio,
// keeping its colourfulness as far as the screen can show it: a lit fruit,
// not a pale one. Where that cannot reach the ratio, Ensure does.
func Lift(c, ground page.Colour, ratio float64) page.Colour {
	for l := toLab(c).l; l < 0.9; l += 0.01 {
		if lit := atLightness(c, l, 1.05); Contrast(lit, ground) >= ratio {
			return lit
		}
	}
	return Ensure(c, ground, ratio)
}
