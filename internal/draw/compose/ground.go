package compose

import (
	"math"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// ground paints the paper of the whole piece.
func (l *layout) ground() { l.fill(page.Rect{W: l.cell.W, H: l.cell.H}, l.look.Paper) }

// fill paints a box of the label, past the trim where the box touches it.
// Ink saving and bare paper leave it white.
func (l *layout) fill(r page.Rect, role string) {
	bare := (role == "none" || role == "white") && !l.painted
	if l.saver || bare {
		return
	}
	l.painted = true
	c := l.on(role).ground
	p := rectPath(l.bleeding(r))
	p.Fill, p.Bleed = &c, true
	l.put(p)
}

// bleeding extends a box over the bleed where it touches the trim.
func (l *layout) bleeding(r page.Rect) page.Rect {
	b := l.cell.Bleed
	if r.X <= 0 {
		r.X, r.W = r.X-b, r.W+b
	}
	if r.Y <= 0 {
		r.Y, r.H = r.Y-b, r.H+b
	}
	if r.X+r.W >= l.cell.W {
		r.W += b
	}
	if r.Y+r.H >= l.cell.H {
		r.H += b
	}
	return r
}

// bandBox cuts a band off an edge of area; rest is what remains of it.
func bandBox(edge string, area page.Rect, w unit.Length) (band, rest page.Rect) {
	band, rest = area, area
	switch edge {
	case "left":
		band.W, rest.X, rest.W = w, area.X+w, area.W-w
	case "right":
		band.X, band.W, rest.W = area.X+area.W-w, w, area.W-w
	case "top":
		band.H, rest.Y, rest.H = w, area.Y+w, area.H-w
	case "bottom":
		band.Y, band.H, rest.H = area.Y+area.H-w, w, area.H-w
	}
	return band, rest
}

// band paints the look's band on area and gives what remains of it.
func (l *layout) band(area page.Rect, b design.Band) page.Rect {
	defer func() { l.open = area }()
	w := share(min(area.W, area.H), b.Size)
	if w <= 0 || b.Edge == "none" || b.Edge == "" {
		return area
	}
	if b.Edge == "around" {
		l.ring(area, w, b)
		area = area.Grow(-w, -w)
		return area
	}
	edges := []string{b.Edge}
	if b.Edge == "both" {
		edges = []string{"top", "bottom"}
	}
	for _, e := range edges {
		var box page.Rect
		box, area = bandBox(e, area, w)
		l.pattern(l.bleeding(box), e, b)
	}
	return area
}

// ring paints the pattern all round, with the look's paper inside it.
func (l *layout) ring(area page.Rect, w unit.Length, b design.Band) {
	inner := area.Grow(-w, -w)
	shape := roundPath(inner, max(0, l.cell.Corner-w))
	if l.cell.Shape == page.Ellipse {
		shape = ellipsePath(inner)
	}
	if l.saver {
		black := l.pal.Text
		shape.Stroke, shape.Width, shape.Block = &black, 2*hairline, "frame"
		if w > l.cell.Safe+hairline {
			l.put(shape)
		}
		return
	}
	l.pattern(l.bleeding(area), "", b)
	paper := l.colours.ground
	shape.Fill, shape.Bleed = &paper, true
	l.put(shape)
}

// ringWidth is how far a band painted all round reaches in; 0 without one.
func (l *layout) ringWidth() unit.Length {
	if l.look.Band.Edge == "around" {
		return l.open.X
	}
	return 0
}

// pattern fills a band. Ink saving draws its outline patterns in hairlines.
func (l *layout) pattern(box page.Rect, edge string, b design.Band) {
	c := l.on(l.look.Paper).named(b.Fill)
	if l.saver {
		l.plainEdge(box, edge)
		return
	}
	thick := min(box.W, box.H)
	if edge == "" { // all round: what is seen is a ring
		if thick = share(thick, b.Size); l.cloth > 0 {
			thick = l.cloth
		}
	}
	switch {
	case b.Pattern == "gingham":
		l.gingham(box, c)
	case b.Pattern == "stripes":
		l.stripes(box, thick, c)
	case b.Pattern == "scallop" && edge != "":
		l.scallop(box, edge, c)
	case b.Pattern == "awning" && edge != "":
		l.awning(box, edge, c)
	default:
		p := rectPath(box)
		p.Fill, p.Bleed = &c, true
		l.put(p)
	}
}

// plainEdge stands for a band when ink is saved: a double line at its edge.
func (l *layout) plainEdge(box page.Rect, edge string) {
	black := l.pal.Text
	in := box
	safe := l.cell.Safe
	low, high := safe+2*hairline, safe+2*hairline
	x0, x1 := max(low, in.X), min(l.cell.W-high, in.X+in.W)
	y0, y1 := max(low, in.Y), min(l.cell.H-high, in.Y+in.H)
	if x1 <= x0 || y1 <= y0 {
		return
	}
	if l.cell.Shape != page.Rectangle {
		return
	}
	if min(x1-x0, y1-y0) < unit.Millimetre {
		return // the band lies in the safe edge
	}
	for i := range unit.Length(2) {
		d := i * 700 * unit.Micrometre
		a, z := page.Point{X: x0, Y: y1 - d}, page.Point{X: x1, Y: y1 - d}
		switch edge {
		case "bottom":
			a, z = page.Point{X: x0, Y: y0 + d}, page.Point{X: x1, Y: y0 + d}
		case "left":
			a, z = page.Point{X: x1 - d, Y: y0}, page.Point{X: x1 - d, Y: y1}
		case "right":
			a, z = page.Point{X: x0 + d, Y: y0}, page.Point{X: x0 + d, Y: y1}
		}
		l.put(linePath(a, z, hairline*(1+2*i), black))
	}
}

// hairline is the finest line that prints evenly on an office printer:
// common practice, no source.
const hairline = 180 * unit.Micrometre

// frameInset is how far the look's frame and the blank inside it reach in
// from the edge of the printable area.
func (l *layout) frameInset(short unit.Length) (line, inside unit.Length) {
	switch l.look.Frame {
	case "none", "":
		return 0, 0
	case "inset":
		line = share(short, 0.035)
	default:
		line = share(short, 0.022)
	}
	return line, line + share(short, 0.045)
}

// innerLine is how far the inner edge of the frame's ink stands from the edge
// of an area; 0 without a frame.
func (l *layout) innerLine(short unit.Length) unit.Length {
	line, _ := l.frameInset(short)
	if line <= 0 {
		return 0
	}
	d := max(line, l.cell.Safe) + 6*hairline
	if l.look.Frame == "double" {
		d += share(short, 0.017)
	}
	return d
}

// frameLine draws the look's frame inside area (inside the safe edge).
func (l *layout) frameLine(area page.Rect, on roles, ellipse bool) {
	line, _ := l.frameInset(min(area.W, area.H))
	if line <= 0 {
		return
	}
	c := on.text(l.look.FrameColour, largeContrast)
	draw := func(d, width unit.Length, dash []unit.Length) {
		box := area.Grow(-d, -d)
		p := roundPath(box, max(0, l.cell.Corner-d))
		switch {
		case ellipse:
			p = ellipsePath(box)
		case l.cell.Shape == page.TagShape:
			p = l.tagLine(d)
		}
		p.Stroke, p.Width, p.Dash, p.Round, p.Block = &c, width, dash, dash != nil, "frame"
		l.put(p)
	}
	half := max(line, l.cell.Safe) + 2*hairline // the stroke, too, stays inside
	short := min(area.W, area.H)
	switch l.look.Frame {
	case "double":
		draw(half, 3*hairline, nil)
		draw(half+share(short, 0.017)+2*hairline, hairline, nil)
	case "thick":
		draw(half+hairline*2, 4*hairline, nil)
	case "dotted":
		draw(half, 2*hairline, []unit.Length{1, 5 * hairline})
	default:
		draw(half, hairline*3/2, nil)
	}
}

// tagLine is the outline of a tag moved in by d, its cut corners too.
func (l *layout) tagLine(d unit.Length) *page.Path {
	dx, dy := page.TagCut(l.cell.W, l.cell.H)
	x, y, in := float64(dx), float64(dy), float64(d)
	over := 1 + in*math.Hypot(1/x, 1/y) // the cut edge is where X/x + Y/y = over
	cx, cy := unit.Length(x*(over-in/y))-d, unit.Length(y*(over-in/x))-d
	return cutPath(page.Rect{X: d, Y: d, W: l.cell.W - 2*d, H: l.cell.H - 2*d}, cx, cy)
}
