package artwork

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"jarmark/internal/draw/page"
)

const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100">`

func drawing(body string) []byte { return []byte(head + body + "</svg>") }

// TestHostileDrawingsAreProblems: what is made to take time or memory, or is no
// drawing, is told at once and draws nothing.
func TestHostileDrawingsAreProblems(t *testing.T) {
	laughs := `<!DOCTYPE svg [<!ENTITY a "ha">`
	for c := 'b'; c < 'k'; c++ {
		laughs += fmt.Sprintf(`<!ENTITY %c "%s">`, c, strings.Repeat("&"+string(c-1)+";", 10))
	}
	for name, c := range map[string]struct{ data, what string }{
		"billion laughs":        {laughs + `]>` + head + "&j;</svg>", "entities"},
		"entity from outside":   {`<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>` + head + "&x;</svg>", "entities"},
		"parameter entity":      {`<!DOCTYPE svg SYSTEM "http://a.example/x.dtd" [%x;]>` + head + "</svg>", "entities"},
		"entity not declared":   {head + `<path d="&x;"/></svg>`, "broken"},
		"deep":                  {head + strings.Repeat("<g>", 70_000), "deep"},
		"deep in what is left":  {head + "<defs>" + strings.Repeat("<a>", 70_000), "deep"},
		"many elements":         {head + strings.Repeat("<g/>", 10_000) + "</svg>", "elements"},
		"many points":           {head + `<path d="M0 0` + strings.Repeat("h1", 40_001) + `"/></svg>`, "points"},
		"many points in parts":  {head + strings.Repeat(`<path d="M0 0`+strings.Repeat("h1", 9_000)+`"/>`, 5) + `</svg>`, "points"},
		"ten megabytes":         {head + strings.Repeat(" ", 10<<20) + "</svg>", "10241 kB"},
		"huge number":           {head + `<path d="M0 0L1e300 5"/></svg>`, "too large"},
		"huge exponent":         {head + `<path d="M0 0L1e99999999999 5"/></svg>`, "too large"},
		"huge length":           {head + `<circle r="1e9"/></svg>`, "no length"},
		"huge by transform":     {head + `<g transform="scale(9e6)"><g transform="scale(9e6)"><path d="M0 0h1v1"/></g></g></svg>`, "far outside"},
		"not a number":          {head + `<path d="M NaN 0 L 1 1"/></svg>`, "breaks off"},
		"infinite":              {head + `<rect width="Infinity" height="5"/></svg>`, "no length"},
		"garbage in a path":     {head + `<path d="M0 0 L 10 10 $ 5"/></svg>`, "no command"},
		"path without a move":   {head + `<path d="L 10 10"/></svg>`, "begin with a move"},
		"path cut short":        {head + `<path d="M0 0 C 1 1 2"/></svg>`, "breaks off"},
		"flag of an arc":        {head + `<path d="M0 0 A 1 1 0 2 0 5 5"/></svg>`, "breaks off"},
		"odd points":            {head + `<polygon points="1 2 3"/></svg>`, "pairs"},
		"cut short":             {head + `<path d="M0 0h1v1z"`, "broken"},
		"not closed":            {head + `<path d="M0 0h1v1z"/>`, "broken"},
		"wrongly nested":        {head + `<g><path d="M0 0h1v1z"/></svg></g>`, "broken"},
		"other letters":         {`<?xml version="1.0" encoding="utf-16"?>` + head + "</svg>", "broken"},
		"zero bytes":            {head + "<g>\x00</g></svg>", "broken"},
		"no size":               {`<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h1v1z"/></svg>`, "how large"},
		"flat box":              {`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 9"/>`, "viewBox"},
		"a thread":              {`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 9999"/>`, "no size"},
		"box of words":          {`<svg xmlns="http://www.w3.org/2000/svg" viewBox="a b c d"/>`, "viewBox"},
		"nothing in it":         {head + "<desc>logo</desc></svg>", "nothing to draw"},
		"another language":      {`<html><svg/></html>`, "<html>"},
		"another name for svg":  {`<svg xmlns="http://a.example/" viewBox="0 0 1 1"/>`, "no SVG"},
		"a list of transforms":  {head + `<g transform="spin(5)"><path d="M0 0h1v1z"/></g></svg>`, "transform"},
		"a transform cut short": {head + `<g transform="rotate(5"><path d="M0 0h1v1z"/></g></svg>`, "transform"},
	} {
		begin := time.Now()
		d, found := Read([]byte(c.data))
		if took := time.Since(begin); took > 3*time.Second {
			t.Errorf("%s: took %v", name, took)
		}
		if d != nil || len(found) == 0 || len(found) > mostProblems {
			t.Errorf("%s: %v, %d problems", name, d, len(found))
			continue
		}
		if p := found[0]; !strings.Contains(p.What, c.what) || p.Hint == "" || len(p.What) > 200 {
			t.Errorf("%s: %q, want a problem that says %q", name, p.What, c.what)
		}
	}
}

// TestWhatCannotBeDrawnIsTold names the element, where it stands, and what helps.
func TestWhatCannotBeDrawnIsTold(t *testing.T) {
	const ok = `<path d="M0 0h9v9z"/>`
	for body, want := range map[string]string{
		"\n <text x='5'>Jam</text>":                                                    "2:2 <text> cannot be drawn: text into paths",
		"\n\n\n   <image href='http://a.example'/>":                                    "4:4 <image> cannot be drawn: export the whole as PNG",
		"\n<g>é<svg/></g>":                                                             "2:5 <svg> cannot be drawn: group",
		"\n<script>alert(1)</script>":                                                  "2:1 <script> cannot be drawn: nothing in a drawing is run",
		"<defs>\n<script/></defs>":                                                     "2:1 there is a <script> in it: nothing in a drawing is run",
		"\n<foreignObject/>":                                                           "2:1 <foreignObject> cannot be drawn: plain paths",
		"\n<switch/>":                                                                  "2:1 <switch> cannot be drawn: plain paths",
		"\n<a href='x'/>":                                                              "2:1 <a> cannot be drawn: plain paths",
		"<path d='M0 0h9v9z'>\n<animate/></path>":                                      "2:1 <animate> cannot be drawn: plain paths",
		"<path d='M0 0h9v9z'>\n<g/></path>":                                            "2:1 <g> cannot be drawn: plain paths",
		"\n<path fill='url(#a)' d='M0 0h9v9z'/>":                                       "2:1 <path> is painted with a gradient or a pattern (fill): one plain colour",
		"\n<path style='stroke:url(#a)' d='M0 0h9v9z'/>":                               "2:1 <path> is painted with a gradient or a pattern (stroke): one plain colour",
		"\n<g filter='url(#f)'/>":                                                      "2:1 <g> has a filter, which cannot be drawn: plain paths",
		"\n<g mask='url(#f)'/>":                                                        "2:1 <g> has a mask, which cannot be drawn: plain paths",
		"\n<g style='clip-path: url(#f)'/>":                                            "2:1 <g> has a clip-path, which cannot be drawn: plain paths",
		"\n<path marker-end='url(#f)' d='M0 0h9v9z'/>":                                 "2:1 <path> has a marker-end, which cannot be drawn: plain paths",
		"\n<g style='mix-blend-mode:multiply'/>":                                       "2:1 <g> has a mix-blend-mode, which cannot be drawn: plain paths",
		"\n<g opacity='.5'/>":                                                          "2:1 <g> is half clear (opacity): full colour",
		"\n<path fill-opacity='50%' d='M0 0h9v9z'/>":                                   "2:1 <path> is half clear (fill-opacity): full colour",
		"\n<path fill='#12345680' d='M0 0h9v9z'/>":                                     `2:1 <path>: fill="#12345680" is not read: plain colours`,
		"\n<path fill='hsl(9,9%,9%)' d='M0 0h9v9z'/>":                                  `2:1 <path>: fill="hsl(9,9%,9%)" is not read: plain colours`,
		"\n<path stroke='red' stroke-width='5%' d='M0 0h9v9z'/>":                       `2:1 <path>: stroke-width="5%" is not read: plain colours`,
		"\n<g transform='scale(1 2)'><path stroke='red' d='M0 0h9v9z'/></g>":           "2:27 <path> is stretched more one way, its line too: outline stroke",
		"\n<path vector-effect='non-scaling-stroke' stroke='red' d='M0 0h9v9z'/>":      "2:1 <path> has a line that keeps its width at every size: outline stroke",
		"\n<path stroke-dasharray='3' stroke-dashoffset='2' stroke='red' d='M0 0h9'/>": "2:1 <path> has dashes that begin elsewhere (stroke-dashoffset): outline stroke",
		"\n<rect width='50%' height='5'/>":                                             `2:1 <rect>: width="50%" is no length that can be read: number`,
		"\n<g style='transform:rotate(9deg)'/>":                                        "2:1 <g> has a style that is not read: transform: presentation attributes",
		"\n<g transform-origin='5 5'/>":                                                "2:1 <g> has a transform-origin or a condition, which are not read: plain paths",
		"\n<style>path{fill:red}</style>":                                              "2:8 a style sheet in it has more than classes: path: presentation attributes",
		"\n<style>@import 'http://a.example/x.css';</style>":                           "2:8 a style sheet in it is not read: @import 'http://a.example/x.css';: presentation attributes",
		ok + "\n<style>.a{fill:red}</style>":                                           "2:1 a style sheet stands where it is not read: presentation attributes",
		"\n<style>.a{rotate:5deg}</style>":                                             "2:8 a style sheet in it sets what is not read: rotate: presentation attributes",
	} {
		d, found := Read(drawing(body + ok))
		if d != nil || len(found) != 1 {
			t.Errorf("%q: drawn, or %d problems: %v", body, len(found), found)
			continue
		}
		p := found[0]
		what, hint, _ := strings.Cut(want, ": ")
		if at := strings.LastIndex(want, ": "); at >= 0 {
			what, hint = want[:at], want[at+2:]
		}
		if got := fmt.Sprintf("%d:%d %s", p.Line, p.Column, p.What); !strings.HasPrefix(got, what) || !strings.Contains(p.Hint, hint) {
			t.Errorf("%q:\n got %q, %q\nwant %q, %q", body, got, p.Hint, what, hint)
		}
	}
	if _, found := Read(drawing(strings.Repeat("<text/>", 50))); len(found) != mostProblems {
		t.Errorf("%d problems of fifty", len(found))
	}
}

// TestWhatIsNotSeenIsNoProblem: what a browser does not draw either.
func TestWhatIsNotSeenIsNoProblem(t *testing.T) {
	const ok = `<path d="M0 0h9v9z"/>`
	for _, body := range []string{
		`<title>a</title><desc>b</desc><metadata><x:y xmlns:x="http://b.example/"><x:z/></x:y></metadata>`,
		`<defs><linearGradient id="a"><stop/></linearGradient><filter id="f"/><text>no</text></defs>`,
		`<symbol><text/></symbol><clipPath id="c"><path d="M0 0h9v9z"/></clipPath>`,
		`<s:view xmlns:s="http://c.example/"><s:text/></s:view>`,
		`<g display="none"><text>hidden</text><path fill="url(#x)" d="M0 0"/></g>`, `<text style="display:none">x</text>`,
		`<g opacity="0"><image/></g>`, `<path visibility="hidden" fill="url(#x)" d="M0 0h9v9z"/>`,
		`<path fill="none" d="M0 0h9v9z"/>`, `<path fill="#1230" d="M0 0h9v9z"/>`, `<rect width="0" height="5"/>`, `<path d=""/>`, `<path d="none"/>`,
		`<path stroke-opacity=".5" fill-opacity="0" d="M0 0h9v9z"/>`, `<g transform="scale(0)"><path stroke="red" d="M0 0h9v9z"/></g>`,
		`<g style="-x-label:layer;font-family:serif;clip-path:none;isolation:auto;mix-blend-mode:normal;"/>`,
		`<g id="a" data-name="b" aria-label="c" xml:space="preserve"/>`,
		`<path fill="#000" d="M0 0"/>`,
	} {
		if d, found := Read(drawing(body + ok)); d == nil || len(d.Paths) != 1 {
			t.Errorf("%s: %v", body, found)
		}
	}
}

// TestPlacesAndAreas: shapes have the areas of geometry and stand where the
// viewport puts them (SVG 2, 8.2: xMidYMid meet unless said otherwise).
func TestPlacesAndAreas(t *testing.T) {
	mm := func(v float64) float64 { return math.Round(v*1e4) / 1e4 }
	for body, want := range map[string]struct{ area, x, y, w, h float64 }{
		`<rect x="10" y="20" width="30" height="40"/>`:                                          {1200, 10, 20, 30, 40},
		`<rect x="10" y="20" width="30" height="40" rx="5"/>`:                                   {1200 - (4-math.Pi)*25, 10, 20, 30, 40},
		`<circle cx="50" cy="50" r="20"/>`:                                                      {math.Pi * 400, 30, 30, 40, 40},
		`<ellipse cx="50" cy="50" rx="20" ry="10"/>`:                                            {math.Pi * 200, 30, 40, 40, 20},
		`<ellipse cx="50" cy="50" rx="20"/>`:                                                    {math.Pi * 400, 30, 30, 40, 40},
		`<polygon points="0,0 10,0 0,10"/>`:                                                     {50, 0, 0, 10, 10},
		`<path d="M30 50A20 20 0 0 1 70 50z"/>`:                                                 {math.Pi * 200, 30, 30, 40, 20},
		`<path d="M30 50A20 20 0 0 0 70 50z"/>`:                                                 {math.Pi * 200, 30, 50, 40, 20},
		`<path d="M50 30A20 20 0 1 1 30 50L50 50z"/>`:                                           {math.Pi * 300, 30, 30, 40, 40},
		`<path d="M50 30A20 20 0 0 0 30 50L50 50z"/>`:                                           {math.Pi * 100, 30, 30, 20, 20},
		`<path d="M30 50a1 1 0 0 1 40 0z"/>`:                                                    {math.Pi * 200, 30, 30, 40, 20}, // radii too small
		`<path d="M30 50A20 10 90 0 1 30 90z"/>`:                                                {math.Pi * 100, 30, 50, 10, 40},
		`<path d="M0 0q10 20 20 0z"/>`:                                                          {20. * 20 / 3, 0, 0, 20, 10}, // a parabola: two thirds of its box
		`<path d="m10 10h10v10h-10z m20 0h10v10h-10z"/>`:                                        {200, 10, 10, 30, 10},
		`<path d="M10-5.5.5.5L1e1,1"/>`:                                                         {0.25 + 32.5 - 0, 0, 0, 0, 0},
		`<g transform="translate(10) scale(2) rotate(90 5 5)"><rect width="3" height="4"/></g>`: {48, 22, 0, 8, 6},
		`<g transform="matrix(1 0 0 2 5 6)"><rect width="3" height="4"/></g>`:                   {24, 5, 6, 3, 8},
		`<g transform="skewX(45)"><rect width="3" height="4"/></g>`:                             {12, 0, 0, 7, 4},
		`<rect x="1in" y="1cm" width="10mm" height="10pt"/>`:                                    {37.7953 * 13.3333, 96, 37.7953, 37.7953, 13.3333},
	} {
		d, found := Read(drawing(body))
		if len(found) > 0 {
			t.Errorf("%s: %v", body, found)
			continue
		}
		if strings.HasPrefix(body, `<path d="M10-5.5`) {
			if p := d.Paths[0].Pts; p[1].X != 500_000 || p[1].Y != 500_000 || p[2].X != 10_000_000 {
				t.Errorf("%s: %v", body, p)
			}
			continue
		}
		b := d.Paths[0].Bounds()
		got := [4]float64{mm(b.X.MM()), mm(b.Y.MM()), mm(b.W.MM()), mm(b.H.MM())}
		for i, w := range []float64{want.x, want.y, want.w, want.h} {
			if math.Abs(got[i]-w) > 0.01 && !strings.Contains(body, "q10") {
				t.Errorf("%s: stands at %v, want %v", body, got, want)
				break
			}
		}
		if a := area(d.Paths[0]); math.Abs(a-want.area) > 0.008*want.area {
			t.Errorf("%s: area %.3f, want %.3f", body, a, want.area)
		}
	}
}

// area is that of a path's steps, by the shoelace formula; parts that wind alike.
func area(p *page.Path) float64 {
	sum := 0.0
	var start page.Point
	p.Trace(func(a, b page.Point) {
		if a == b {
			start = a
		}
		sum += (a.X-start.X).MM()*(b.Y-start.Y).MM() - (b.X-start.X).MM()*(a.Y-start.Y).MM()
	})
	return math.Abs(sum) / 2
}

// TestViewport: where a unit square at the origin stands (SVG 2, 8.7).
func TestViewport(t *testing.T) {
	for attrs, want := range map[string]string{
		`viewBox="0 0 100 50"`:                                                               "100 x 50, 0.00 0.00 1.00 1.00",
		`viewBox="-10 -20 100 50"`:                                                           "100 x 50, 10.00 20.00 1.00 1.00",
		`width="20mm" height="10mm"`:                                                         "100 x 50, 0.00 0.00 1.32 1.32",
		`width="100%" height="100%" viewBox="0 0 10 5"`:                                      "100 x 50, 0.00 0.00 10.00 10.00",
		`width="200" viewBox="0 0 100 50"`:                                                   "100 x 50, 0.00 0.00 1.00 1.00",
		`width="100" height="100" viewBox="0 0 100 50"`:                                      "100 x 100, 0.00 25.00 1.00 1.00",
		`width="100" height="100" viewBox="0 0 100 50" preserveAspectRatio="xMidYMin"`:       "100 x 100, 0.00 0.00 1.00 1.00",
		`width="100" height="100" viewBox="0 0 100 50" preserveAspectRatio="none"`:           "100 x 100, 0.00 0.00 1.00 2.00",
		`width="100" height="100" viewBox="0 0 100 50" preserveAspectRatio="xMaxYMax slice"`: "100 x 100, -100.00 0.00 2.00 2.00",
	} {
		d, found := Read([]byte(`<svg xmlns="http://www.w3.org/2000/svg" ` + attrs + `><rect width="1" height="1"/></svg>`))
		if len(found) > 0 {
			t.Errorf("%s: %v", attrs, found)
			continue
		}
		b := d.Paths[0].Bounds()
		if got := fmt.Sprintf("%.0f x %.0f, %.2f %.2f %.2f %.2f", d.W.MM(), d.H.MM(), b.X.MM(), b.Y.MM(), b.W.MM(), b.H.MM()); got != want {
			t.Errorf("%s: %s, want %s", attrs, got, want)
		}
	}
}

// TestPaints: colours as CSS Color 4 gives them, in the order of SVG 2, 6.6:
// attribute, class, style; what an element does not say it takes from above.
func TestPaints(t *testing.T) {
	for body, want := range map[string]string{
		`<path d="M0 0h9v9z"/>`:                                                                                  "#000000 -",
		`<path fill="#f80" d="M0 0h9v9z"/>`:                                                                      "#ff8800 -",
		`<path fill="#f80f" d="M0 0h9v9z"/>`:                                                                     "#ff8800 -",
		`<path fill="rgb(1, 2,3)" d="M0 0h9v9z"/>`:                                                               "#010203 -",
		`<path fill="rgb(100% 0% 50%)" d="M0 0h9v9z"/>`:                                                          "#ff0080 -",
		`<path fill="RebeccaPurple" d="M0 0h9v9z"/>`:                                                             "#663399 -",
		`<path fill="none" stroke="CornflowerBlue" d="M0 0h9v9z"/>`:                                              "- #6495ed",
		`<g fill="red"><g stroke="lime"><path d="M0 0h9v9z"/></g></g>`:                                           "#ff0000 #00ff00",
		`<g color="red"><path fill="currentColor" d="M0 0h9v9z"/></g>`:                                           "#ff0000 -",
		`<path fill="red" style="fill:lime" d="M0 0h9v9z"/>`:                                                     "#00ff00 -",
		`<style>.a,.b{fill:blue}/* x */ .a{stroke:red}</style><path class="c a" fill="red" d="M0 0h9v9z"/>`:      "#0000ff #ff0000",
		`<defs><style><![CDATA[.a{fill:blue}]]></style></defs><path class="a" style="fill:lime" d="M0 0h9v9z"/>`: "#00ff00 -",
		`<g fill="red"><path fill="inherit" d="M0 0h9v9z"/></g>`:                                                 "#ff0000 -",
		`<g visibility="hidden"><path visibility="visible" d="M0 0h9v9z"/></g>`:                                  "#000000 -",
		`<path stroke="red" stroke-width="0" d="M0 0h9v9z"/>`:                                                    "#000000 -",
	} {
		d, found := Read(drawing(body))
		if len(found) > 0 {
			t.Errorf("%s: %v", body, found)
			continue
		}
		say := func(c *page.Colour) string {
			if c == nil {
				return "-"
			}
			return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B)
		}
		if got := say(d.Paths[0].Fill) + " " + say(d.Paths[0].Stroke); got != want {
			t.Errorf("%s: %s, want %s", body, got, want)
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{sample, string(drawing(`<path d="M0 0 c1,2-3.4.5e1 5,6s1 2 3 4q1 2 3 4t5 6a1 2 3 014,5z"/>`)),
		string(drawing(`<symbol id="s" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></symbol><g id="g"><use href="#s" x="1" width="5"/></g><use href="#g"/>`)),
		string(drawing(`<style>.a{fill:red}</style><g class="a" style="opacity:1;x:y" transform="rotate(1 2 3) skewY(4)"><text/></g>`)),
		`<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">` + string(drawing("<g/>"))} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		d, found := Read(data)
		if (d == nil) != (len(found) > 0) {
			t.Fatal("a drawing and a problem, or neither")
		}
		for _, p := range found {
			if p.What == "" || p.Hint == "" || p.Line < 0 || p.Column < 0 {
				t.Fatalf("%+v", p)
			}
		}
		if d == nil {
			return
		}
		if d.W <= 0 || d.H <= 0 || d.W > long || d.H > long {
			t.Fatalf("%v x %v", d.W, d.H)
		}
		for _, p := range d.Paths {
			need := 0
			for _, op := range p.Ops {
				need += map[page.Op]int{page.MoveTo: 1, page.LineTo: 1, page.CubicTo: 3}[op]
			}
			if need != len(p.Pts) || p.Ops[0] != page.MoveTo || p.Fill == nil && p.Stroke == nil || p.Width < 0 {
				t.Fatalf("%+v", p)
			}
			for _, q := range p.Pts {
				if q.X.MM() > 1e5 || q.X.MM() < -1e5 || q.Y.MM() > 1e5 || q.Y.MM() < -1e5 {
					t.Fatalf("a point at %v", q)
				}
			}
		}
	})
}
