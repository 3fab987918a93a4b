package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/kit/unit"
)

// gingham weaves two tones of c into the checked cloth of jam lids: stripes
// both ways, darkest where they cross.
func (l *layout) gingham(box page.Rect, c page.Colour) {
	ground := l.on(l.look.Paper).ground
	tones := []page.Colour{palette.Mix(ground, c, 0.12), palette.Mix(ground, c, 0.5), c}
	base := rectPath(box)
	base.Fill, base.Bleed = &tones[0], true
	l.put(base)
	short := min(box.W, box.H)
	cell := max(min(short/5, share(l.short(), 0.04)), 600*unit.Micrometre)
	half, dark := &page.Path{Fill: &tones[1], Bleed: true}, &page.Path{Fill: &tones[2], Bleed: true}
	for y, row := box.Y, 0; y < box.Y+box.H; y, row = y+cell, row+1 {
		for x, col := box.X, 0; x < box.X+box.W; x, col = x+cell, col+1 {
			r := page.Rect{X: x, Y: y, W: min(cell, box.X+box.W-x), H: min(cell, box.Y+box.H-y)}
			switch {
			case row%2 == 0 && col%2 == 0:
				addRect(dark, r)
			case row%2 == 0 || col%2 == 0:
				addRect(half, r)
			}
		}
	}
	l.put(half, dark)
}

// stripes draws awning stripes across a band of some thickness.
func (l *layout) stripes(box page.Rect, thick unit.Length, c page.Colour) {
	p := &page.Path{Fill: &c, Bleed: true}
	along := box.W >= box.H
	long := max(box.W, box.H)
	step := max(share(thick, 0.6), unit.Millimetre)
	for d := unit.Length(0); d < long; d += 2 * step {
		w := min(step, long-d)
		if along {
			addRect(p, page.Rect{X: box.X + d, Y: box.Y, W: w, H: box.H})
		} else {
			addRect(p, page.Rect{X: box.X, Y: box.Y + d, W: box.W, H: w})
		}
	}
	l.put(p)
}

// scallop ends the band in a row of half rounds, like the edge of a doily.
// They are as many as fit evenly between the trimmed edges.
func (l *layout) scallop(box page.Rect, edge string, c page.Colour) {
	p := &page.Path{Fill: &c, Bleed: true}
	along := edge == "top" || edge == "bottom"
	long, short := box.W, box.H
	if !along {
		long, short = box.H, box.W
	}
	r := min(share(short, 0.4), 3*unit.Millimetre)
	n := max(1, int(long/(2*r)))
	r = long / unit.Length(2*n)
	body := box
	switch edge {
	case "top":
		body.H -= r
	case "bottom":
		body.Y, body.H = body.Y+r, body.H-r
	case "left":
		body.W -= r
	case "right":
		body.X, body.W = body.X+r, body.W-r
	}
	addRect(p, body)
	for i := range unit.Length(n) {
		d := i * 2 * r
		round := page.Rect{X: box.X + d, Y: body.Y + body.H - r, W: 2 * r, H: 2 * r}
		switch edge {
		case "bottom":
			round.Y = box.Y
		case "left":
			round = page.Rect{X: body.X + body.W - r, Y: box.Y + d, W: 2 * r, H: 2 * r}
		case "right":
			round = page.Rect{X: box.X, Y: box.Y + d, W: 2 * r, H: 2 * r}
		}
		addPath(p, ellipsePath(round))
	}
	l.put(p)
}

func addRect(p *page.Path, r page.Rect) { addPath(p, rectPath(r)) }

func addPath(p, q *page.Path) {
	p.Ops = append(p.Ops, q.Ops...)
	p.Pts = append(p.Pts, q.Pts...)
}
