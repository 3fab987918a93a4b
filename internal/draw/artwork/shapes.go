package artwork

import (
	"encoding/xml"
	"math"
)

// geometry reads the measures of one element.
type geometry struct {
	r *reader
	e xml.StartElement
}

// of gives a length; without the attribute it is 0.
func (g geometry) of(name string) float64 {
	v, _ := g.maybe(name)
	return v
}

func (g geometry) maybe(name string) (v float64, there bool) {
	s := attr(g.e, name)
	if s == "" || s == "auto" {
		return 0, false
	}
	v, ok := length(s)
	if !ok {
		g.r.problem("write it as a number, or save it as plain SVG", "<%s>: %s=%q is no length that can be read", g.e.Name.Local, name, clip(s))
	}
	return v, true
}

// shapes are the elements that draw (SVG 2, 9.2 and 10).
var shapes = map[string]func(*pen, geometry){
	"path":    func(p *pen, g geometry) { p.data(attr(g.e, "d")) },
	"rect":    rect,
	"circle":  func(p *pen, g geometry) { r := g.of("r"); ellipse(p, g.of("cx"), g.of("cy"), r, r) },
	"ellipse": oval,
	"line": func(p *pen, g geometry) {
		p.move(g.of("x1"), g.of("y1"))
		p.line(g.of("x2"), g.of("y2"))
	},
	"polyline": func(p *pen, g geometry) { polygon(p, g, false) },
	"polygon":  func(p *pen, g geometry) { polygon(p, g, true) },
}

func rect(p *pen, g geometry) {
	x, y, w, h := g.of("x"), g.of("y"), g.of("width"), g.of("height")
	rx, isX := g.maybe("rx")
	ry, isY := g.maybe("ry")
	switch {
	case w <= 0 || h <= 0:
		return
	case !isX:
		rx = ry
	case !isY:
		ry = rx
	}
	rx, ry = min(max(rx, 0), w/2), min(max(ry, 0), h/2)
	if rx == 0 || ry == 0 {
		p.move(x, y)
		p.line(x+w, y)
		p.line(x+w, y+h)
		p.line(x, y+h)
		p.close()
		return
	}
	corner := func(cx, cy, from, toX, toY float64) {
		p.round(matrix{a: rx, d: ry, e: cx, f: cy}, from, math.Pi/2, toX, toY)
	}
	p.move(x+rx, y)
	p.line(x+w-rx, y)
	corner(x+w-rx, y+ry, -math.Pi/2, x+w, y+ry)
	p.line(x+w, y+h-ry)
	corner(x+w-rx, y+h-ry, 0, x+w-rx, y+h)
	p.line(x+rx, y+h)
	corner(x+rx, y+h-ry, math.Pi/2, x, y+h-ry)
	p.line(x, y+ry)
	corner(x+rx, y+ry, math.Pi, x+rx, y)
	p.close()
}

func oval(p *pen, g geometry) {
	rx, isX := g.maybe("rx")
	ry, isY := g.maybe("ry")
	if !isX { // SVG 2, 10.4: auto is the other
		rx = ry
	}
	if !isY {
		ry = rx
	}
	ellipse(p, g.of("cx"), g.of("cy"), rx, ry)
}

func ellipse(p *pen, cx, cy, rx, ry float64) {
	if rx <= 0 || ry <= 0 {
		return
	}
	p.move(cx+rx, cy)
	p.round(matrix{a: rx, d: ry, e: cx, f: cy}, 0, 2*math.Pi, cx+rx, cy)
	p.close()
}

func polygon(p *pen, g geometry, closed bool) {
	v, ok := numbers(attr(g.e, "points"))
	if !ok || len(v)%2 == 1 {
		p.wrong = "its points are no pairs of numbers"
		return
	}
	for i := 0; i < len(v); i += 2 {
		if i == 0 {
			p.move(v[0], v[1])
		} else {
			p.line(v[i], v[i+1])
		}
	}
	if closed && len(v) > 0 {
		p.close()
	}
}

// clip keeps what a message can hold of a text.
func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}
