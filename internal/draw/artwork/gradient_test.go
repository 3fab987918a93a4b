package artwork

import (
	"strings"
	"testing"

	"jarmark/internal/draw/page"
)

// shaded is painted with every gradient that is read.
const shaded = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="120mm" height="90mm" viewBox="-10 -10 200 150">
<defs>
<linearGradient id="dusk"><stop offset="0" stop-color="#9b2226"/><stop offset=".4" style="stop-color:goldenrod"/><stop offset="1" stop-color="#2d6a4f"/></linearGradient>
<linearGradient id="down" xlink:href="#dusk" x2="0" y2="1"/>
<linearGradient id="slant" href="#dusk" gradientUnits="userSpaceOnUse" x1="5%" y1="70" x2="60" y2="80%" gradientTransform="rotate(8)"/>
<linearGradient id="steep"><stop offset="30%" stop-color="navy"/><stop offset="45%" stop-color="#fff"/><stop offset="60%" stop-color="#fff"/><stop offset="75%" stop-color="teal"/></linearGradient>
<radialGradient id="sun"><stop offset=".1" stop-color="#fff3b0"/><stop offset="1" stop-color="#e09f3e"/></radialGradient>
<radialGradient id="berry" gradientUnits="userSpaceOnUse" cx="150" cy="100" r="30" gradientTransform="translate(0 20) scale(1 .8)"><stop stop-color="#fff"/><stop offset=".5" stop-color="#a4133c"/><stop offset="1" stop-color="#590d22"/></radialGradient>
<linearGradient id="one"><stop stop-color="#74a57f"/></linearGradient>
</defs>
<rect x="-5" y="-5" width="60" height="40" rx="8" fill="url(#dusk)" transform="rotate(3)"/>
<path fill="url('#down')" d="M70 0C90-20 120-20 130 0S100 40 70 0z"/>
<path fill="url(#slant)" stroke="#1b4332" stroke-width="2" fill-rule="evenodd" d="M5 60h60v60H5zM20 75h30v30H20z"/>
<g transform="translate(80 60) rotate(20)"><path fill="url(#steep)" d="M0 15L20 0 40 15 20 30z"/></g>
<circle cx="160" cy="20" r="22" fill="url(#sun)"/>
<ellipse cx="150" cy="100" rx="32" ry="24" style="fill:url(#berry)"/>
<path fill="url(#one)" d="M80 110h30l-10 20z"/>
</svg>`

// TestGradients: what Chromium makes of gradients and what our PNG and our PDF in PDFium
// make of them look alike, to the steps that stand for them.
func TestGradients(t *testing.T) {
	_, _, drawn := printedAlike(t, "-shaded", shaded)
	sameBut(t, "Chromium's picture of the drawing and the PNG", inBrowser(t, "-shaded", shaded), drawn, 40) // edges bear two steps, so they are a shade fuller
}

// TestGradientsThatAreTold: what of gradients is not drawn is told; one without stops
// paints nothing, one of one stop its colour (SVG 2, 14.2.4).
func TestGradientsThatAreTold(t *testing.T) {
	with := func(g string) ([]*page.Path, []Problem) {
		d, found := Read([]byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><defs>` + g + `</defs><path d="M0 0h1v1z"/><path fill="url(#a)" d="M0 0h9v9z"/></svg>`))
		if d == nil {
			return nil, found
		}
		return d.Paths, found
	}
	two := `<stop stop-color="red"/><stop offset="1" stop-color="blue"/>`
	for g, want := range map[string]string{
		`<linearGradient id="a" spreadMethod="reflect">` + two + `</linearGradient>`:                     "not read: #a",
		`<radialGradient id="a" fx="20%">` + two + `</radialGradient>`:                                   "not read: #a",
		`<radialGradient id="a" fr=".1">` + two + `</radialGradient>`:                                    "not read: #a",
		`<linearGradient id="a" x1="left">` + two + `</linearGradient>`:                                  "not read: #a",
		`<linearGradient id="a" gradientTransform="scale(0)">` + two + `</linearGradient>`:               "not read: #a",
		`<linearGradient id="a"><stop stop-color="red" stop-opacity=".5"/></linearGradient>`:             "half clear",
		`<linearGradient id="a"><stop stop-color="var(--x)"/></linearGradient>`:                          "not read",
		`<linearGradient id="a">` + strings.Repeat(`<stop stop-color="red"/>`, 20) + `</linearGradient>`: "not read",
		`<pattern id="a"><path d="M0 0h1"/></pattern>`:                                                   "a gradient or a pattern",
		`<linearGradient id="b">` + two + `</linearGradient>`:                                            "a gradient or a pattern",
	} {
		if _, found := with(g); len(found) != 1 || !strings.Contains(found[0].What, want) || found[0].Hint == "" {
			t.Errorf("%s: %v, want %q", g, found, want)
		}
	}
	for g, want := range map[string]int{`<linearGradient id="a"/>`: 1, `<linearGradient id="a"><stop stop-color="red"/></linearGradient>`: 2,
		`<linearGradient id="a" href="#a"/>`: 1, `<linearGradient id="a" x2="0">` + two + `</linearGradient>`: 2} {
		if paths, found := with(g); len(found) > 0 || len(paths) != want {
			t.Errorf("%s: %d paths, want %d, %v", g, len(paths), want, found)
		}
	}
}

// TestCutKeepsTheArea: a half cut off has the area that is left, with holes, bays and
// outlines of either turn, by the shoelace formula of what is inside by hand.
func TestCutKeepsTheArea(t *testing.T) {
	box := func(x, y, w, h float64) []spot { return []spot{{x, y}, {x + w, y}, {x + w, y + h}, {x, y + h}} }
	turned := func(p []spot) []spot { return []spot{p[3], p[2], p[1], p[0]} }
	comb := []spot{{0, 0}, {10, 0}, {10, 10}, {8, 10}, {8, 2}, {6, 2}, {6, 10}, {4, 10}, {4, 2}, {2, 2}, {2, 10}, {0, 10}}
	for name, c := range map[string]struct {
		parts   [][]spot
		evenOdd bool
		at      float64 // y at least
		want    float64
		pieces  int
	}{
		"a box":                      {[][]spot{box(0, 0, 10, 10)}, false, 4, 60, 1},
		"all of it":                  {[][]spot{box(0, 0, 10, 10)}, false, -1, 100, 1},
		"nothing":                    {[][]spot{box(0, 0, 10, 10)}, false, 11, 0, 0},
		"a hole":                     {[][]spot{box(0, 0, 10, 10), box(2, 2, 6, 6)}, true, 5, 50 - 18, 1},
		"a hole the other way round": {[][]spot{box(0, 0, 10, 10), turned(box(2, 2, 6, 6))}, false, 5, 50 - 18, 1},
		"a hole that is not cut":     {[][]spot{box(0, 0, 10, 10), box(2, 6, 2, 2)}, true, 5, 50 - 4, 2},
		"the teeth of a comb":        {[][]spot{comb}, false, 5, 30, 3},
		"two that overlap, by turns": {[][]spot{box(0, 0, 10, 10), box(0, 0, 10, 10)}, false, 5, 100, 1},
		"a comb, even and odd":       {[][]spot{comb}, true, 5, 30, 3},
	} {
		got := cut(c.parts, c.evenOdd, func(q spot) float64 { return q.y - c.at })
		sum := 0.0
		for _, part := range got {
			twice := 0.0
			for i, q := range part {
				n := part[(i+1)%len(part)]
				twice += q.x*n.y - n.x*q.y
			}
			if c.evenOdd && name == "a hole that is not cut" { // outlines of one turn
				twice = max(twice, -twice)
				if len(part) == 4 && twice == 8 {
					twice = -twice
				}
			}
			sum += twice / 2
		}
		if max(sum, -sum) != c.want || len(got) != c.pieces {
			t.Errorf("%s: %v, %.1f of area, want %.1f in %d pieces", name, got, sum, c.want, c.pieces)
		}
	}
}

// TestGradientsAreBounded: a file of many large areas with gradients is told, in a moment.
func TestGradientsAreBounded(t *testing.T) {
	var b strings.Builder
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100"><radialGradient id="a"><stop stop-color="#000"/><stop offset="1" stop-color="#fff"/></radialGradient>`)
	for range 500 {
		b.WriteString(`<path fill="url(#a)" d="M0 0` + strings.Repeat("l9 9-9 0", 40) + `z"/>`)
	}
	b.WriteString("</svg>")
	if d, found := Read([]byte(b.String())); d != nil || len(found) != 1 || found[0].Hint == "" || !strings.Contains(found[0].What, "gradients") {
		t.Errorf("%v", found)
	}
}
