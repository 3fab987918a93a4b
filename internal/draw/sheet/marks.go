package sheet

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Cut marks: 0.25 pt, clear of every label and its bleed, and no longer than
// they need be. Marks shorter than tickLeast would not be seen.
const (
	tickLine  = 88_194 * unit.Nanometre // 0.25 pt
	tickLong  = 4 * unit.Millimetre
	tickLeast = 500 * unit.Micrometre
	tickClear = 200 * unit.Micrometre
)

var black = page.Colour{}

// mark adds cut marks to every page: a tick at each corner of a label along
// both of its edges; round an ellipse and a part of a ring and across the corners of a tag, where
// ticks cannot guide the scissors, the line to cut along.
func mark(pages []page.Page) {
	var marks []page.Item
	for i := range pages {
		if i == 0 || !sameLayout(pages[i-1].Places, pages[i].Places) {
			marks = cutMarks(&pages[i])
		}
		pages[i].Marks = append(pages[i].Marks, marks...)
	}
}

// sameLayout reports whether labels of the same sizes lie in the same places.
func sameLayout(a, b []page.Placement) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].At != b[i].At || a[i].Turn != b[i].Turn || a[i].Frame.Shape != b[i].Frame.Shape || a[i].Frame.Arc != b[i].Frame.Arc || !sameSize(a[i].Frame, b[i].Frame) {
			return false
		}
	}
	return true
}

func cutMarks(pg *page.Page) []page.Item {
	p := &page.Path{Block: "cut", Stroke: &black, Width: tickLine}
	seen := map[[4]unit.Length]bool{}
	for i, pl := range pg.Places {
		if pl.Frame.Shape == page.Ellipse {
			ellipse(p, box(pl), tickLine)
			continue
		}
		if pl.Frame.Shape == page.Sector {
			around(p, pl)
			continue
		}
		if pl.Frame.Shape == page.TagShape {
			bevels(p, pl)
		}
		for _, t := range ticks(pl) {
			t.clip(pg, i)
			if x0, y0, x1, y1 := t.ends(); t.to-t.from >= tickLeast && !seen[[4]unit.Length{x0, y0, x1, y1}] {
				seen[[4]unit.Length{x0, y0, x1, y1}] = true
				segment(p, x0, y0, x1, y1)
			}
		}
	}
	if len(p.Ops) == 0 {
		return nil
	}
	return []page.Item{p}
}

// tick is a line from a corner outward: along x if flat, else along y, in
// direction sign, between two distances from the corner.
type tick struct {
	corner   page.Point
	flat     bool
	sign     unit.Length
	from, to unit.Length
}

func ticks(pl page.Placement) []tick {
	b, start := box(pl), pl.Frame.Bleed+tickClear
	var out []tick
	for _, x := range []struct{ at, sign unit.Length }{{b.X, -1}, {b.X + b.W, 1}} {
		for _, y := range []struct{ at, sign unit.Length }{{b.Y, -1}, {b.Y + b.H, 1}} {
			c := page.Point{X: x.at, Y: y.at}
			out = append(out, tick{c, true, x.sign, start, start + tickLong}, tick{c, false, y.sign, start, start + tickLong})
		}
	}
	return out
}

// clip ends a tick before the paper's edge and every other label's bleed.
func (t *tick) clip(pg *page.Page, own int) {
	start, across, edge := t.corner.X, t.corner.Y, pg.W
	if !t.flat {
		start, across, edge = t.corner.Y, t.corner.X, pg.H
	}
	if t.sign < 0 {
		t.to = min(t.to, start)
	} else {
		t.to = min(t.to, edge-start)
	}
	for i, pl := range pg.Places {
		if i == own {
			continue
		}
		b, grow := box(pl), pl.Frame.Bleed+tickClear
		lo, hi, side0, side1 := b.X-grow, b.X+b.W+grow, b.Y-grow, b.Y+b.H+grow
		if !t.flat {
			lo, hi, side0, side1 = side0, side1, lo, hi
		}
		if across <= side0 || across >= side1 {
			continue
		}
		if t.sign < 0 && lo < start {
			t.to = min(t.to, start-hi)
		}
		if t.sign > 0 && hi > start {
			t.to = min(t.to, lo-start)
		}
	}
}

// ends gives the end points from left to right or top to bottom.
func (t *tick) ends() (x0, y0, x1, y1 unit.Length) {
	a, b := t.sign*t.from, t.sign*t.to
	a, b = min(a, b), max(a, b)
	if t.flat {
		return t.corner.X + a, t.corner.Y, t.corner.X + b, t.corner.Y
	}
	return t.corner.X, t.corner.Y + a, t.corner.X, t.corner.Y + b
}

// bevels adds the two lines along which the corners of a tag are cut off, just
// outside of it.
func bevels(p *page.Path, pl page.Placement) {
	w, h := pl.Frame.W, pl.Frame.H
	dx, dy := page.TagCut(w, h)
	for _, l := range [][2]page.Point{{{X: 0, Y: dy - tickLine}, {X: dx - tickLine, Y: 0}}, {{X: w - dx + tickLine, Y: 0}, {X: w, Y: dy - tickLine}}} {
		a, b := on(pl, l[0]), on(pl, l[1])
		segment(p, a.X, a.Y, b.X, b.Y)
	}
}

// around adds the line to cut along round a part of a ring, just outside of it.
func around(p *page.Path, pl page.Placement) {
	o := pl.Frame.Around(tickLine)
	p.Ops = append(p.Ops, o.Ops...)
	for _, q := range o.Pts {
		p.Pts = append(p.Pts, on(pl, q))
	}
}

// on gives the place on the paper of a point of a label; turned clockwise, its
// top faces right.
func on(pl page.Placement, at page.Point) page.Point {
	if pl.Turn == 90 {
		at.X, at.Y = pl.Frame.H-at.Y, at.X
	}
	return page.Point{X: pl.At.X + at.X, Y: pl.At.Y + at.Y}
}

func segment(p *page.Path, x0, y0, x1, y1 unit.Length) {
	p.Ops = append(p.Ops, page.MoveTo, page.LineTo)
	p.Pts = append(p.Pts, page.Point{X: x0, Y: y0}, page.Point{X: x1, Y: y1})
}

// ellipse adds the outline of the ellipse in a box, grown by out on all sides:
// four cubic curves, within 0.03 % of the true line.
func ellipse(p *page.Path, b page.Rect, out unit.Length) {
	const k = 0.5522847498 // 4/3 (sqrt 2 - 1)
	cx, cy := b.X+b.W/2, b.Y+b.H/2
	rx, ry := b.W/2+out, b.H/2+out
	kx, ky := unit.Length(k*float64(rx)), unit.Length(k*float64(ry))
	at := func(dx, dy unit.Length) page.Point { return page.Point{X: cx + dx, Y: cy + dy} }
	p.Ops = append(p.Ops, page.MoveTo, page.CubicTo, page.CubicTo, page.CubicTo, page.CubicTo, page.Close)
	p.Pts = append(p.Pts, at(rx, 0),
		at(rx, ky), at(kx, ry), at(0, ry),
		at(-kx, ry), at(-rx, ky), at(-rx, 0),
		at(-rx, -ky), at(-kx, -ry), at(0, -ry),
		at(kx, -ry), at(rx, -ky), at(rx, 0))
}
