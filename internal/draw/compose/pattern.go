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
func (l *layout) scallop(box page.Rect, edge string, c page.Colour) {
	p := &page.Path{Fill: &c, Bleed: true}
	for _, lobe := range lobes(box, edge, 3*unit.Millimetre) {
		addRect(p, lobe.body)
		addPath(p, ellipsePath(lobe.round))
	}
	l.put(p)
}

// awning is the striped cloth of a stall: stripes across the band, each with a
// half round for its hem, the outermost two of the full colour.
func (l *layout) awning(box page.Rect, edge string, c page.Colour) {
	pale := palette.Mix(l.on(l.look.Paper).ground, c, 0.14)
	full, light := &page.Path{Fill: &c, Bleed: true}, &page.Path{Fill: &pale, Bleed: true}
	for i, lobe := range lobes(box, edge, 4*unit.Millimetre) {
		p := full
		if i%2 == 1 {
			p = light
		}
		addRect(p, lobe.body)
		addPath(p, ellipsePath(lobe.round))
	}
	l.put(light, full)
}

// lobe is a stripe across a band, and the round at its end.
type lobe struct{ body, round page.Rect }

// lobes cuts a band into stripes that end in half rounds of at most a radius,
// as many as fit evenly between its ends, and an odd number, so that both ends
// are alike.
func lobes(box page.Rect, edge string, most unit.Length) (out []lobe) {
	along := edge == "top" || edge == "bottom"
	long, short := box.W, box.H
	if !along {
		long, short = box.H, box.W
	}
	n := max(1, int(long/(2*min(share(short, 0.4), most)))) | 1
	r := long / unit.Length(2*n)
	for i := range unit.Length(n) {
		d, w := i*2*r, 2*r
		if int(i) == n-1 {
			w = long - d // what dividing left over
		}
		b := lobe{body: page.Rect{X: box.X + d, Y: box.Y, W: w, H: box.H - r}}
		if !along {
			b.body = page.Rect{X: box.X, Y: box.Y + d, W: box.W - r, H: w}
		}
		b.round = page.Rect{X: b.body.X, Y: b.body.Y + b.body.H - r, W: w, H: 2 * r}
		switch edge {
		case "bottom":
			b.body.Y += r
			b.round.Y = box.Y
		case "left":
			b.round = page.Rect{X: b.body.X + b.body.W - r, Y: b.body.Y, W: 2 * r, H: w}
		case "right":
			b.body.X += r
			b.round = page.Rect{X: box.X, Y: b.body.Y, W: 2 * r, H: w}
		}
		out = append(out, b)
	}
	return out
}

func addRect(p *page.Path, r page.Rect) { addPath(p, rectPath(r)) }

func addPath(p, q *page.Path) {
	p.Ops = append(p.Ops, q.Ops...)
	p.Pts = append(p.Pts, q.Pts...)
}
