package compose

import (
	"math"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// ground paints the paper of the whole piece.
func (s *setter) ground() { s.fill(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Paper) }

// fill paints a box of the label, past the trim where the box touches it.
// Ink saving and bare paper leave it white.
func (s *setter) fill(r page.Rect, role string) {
	bare := (role == "none" || role == "white") && !s.painted
	if s.opt.InkSaver || bare {
		return
	}
	s.painted = true
	c := s.on(role).ground
	p := rectPath(s.bleeding(r))
	p.Fill, p.Bleed = &c, true
	s.put(p)
}

// bleeding extends a box over the bleed where it touches the trim.
func (s *setter) bleeding(r page.Rect) page.Rect {
	b := s.cell.Bleed
	if r.X <= 0 {
		r.X, r.W = r.X-b, r.W+b
	}
	if r.Y <= 0 {
		r.Y, r.H = r.Y-b, r.H+b
	}
	if r.X+r.W >= s.cell.W {
		r.W += b
	}
	if r.Y+r.H >= s.cell.H {
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
func (s *setter) band(area page.Rect, b design.Band) page.Rect {
	defer func() { s.open = area }()
	w := share(min(area.W, area.H), b.Size)
	if w <= 0 || b.Edge == "none" || b.Edge == "" {
		return area
	}
	if b.Edge == "around" {
		s.ring(area, w, b)
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
		s.pattern(s.bleeding(box), e, b)
	}
	return area
}

// ring paints the pattern all round, with the look's paper inside it.
func (s *setter) ring(area page.Rect, w unit.Length, b design.Band) {
	inner := area.Grow(-w, -w)
	shape := roundPath(inner, max(0, s.cell.Corner-w))
	if s.cell.Shape == page.Ellipse {
		shape = ellipsePath(inner)
	}
	if s.opt.InkSaver {
		black := s.pal.Text
		shape.Stroke, shape.Width, shape.Block = &black, 2*hairline, "frame"
		if w > s.cell.Safe+hairline {
			s.put(shape)
		}
		return
	}
	s.pattern(s.bleeding(area), "", b)
	paper := s.colours.ground
	shape.Fill, shape.Bleed = &paper, true
	s.put(shape)
}

// pattern fills a band. Ink saving draws its outline patterns in hairlines.
func (s *setter) pattern(box page.Rect, edge string, b design.Band) {
	c := s.on(s.look.Paper).named(b.Fill)
	if s.opt.InkSaver {
		s.plainEdge(box, edge)
		return
	}
	switch b.Pattern {
	case "gingham":
		s.gingham(box, c)
	case "stripes":
		s.stripes(box, c)
	case "scallop":
		s.scallop(box, edge, c)
	default:
		p := rectPath(box)
		p.Fill, p.Bleed = &c, true
		s.put(p)
	}
}

// plainEdge stands for a band when ink is saved: a double line at its edge.
func (s *setter) plainEdge(box page.Rect, edge string) {
	black := s.pal.Text
	in := box
	safe := s.cell.Safe
	low, high := safe+2*hairline, safe+2*hairline
	x0, x1 := max(low, in.X), min(s.cell.W-high, in.X+in.W)
	y0, y1 := max(low, in.Y), min(s.cell.H-high, in.Y+in.H)
	if x1 <= x0 || y1 <= y0 {
		return
	}
	if s.cell.Shape != page.Rectangle {
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
		s.put(linePath(a, z, hairline*(1+2*i), black))
	}
}

// hairline is the finest line that prints evenly on an office printer:
// common practice, no source.
const hairline = 180 * unit.Micrometre

// frameInset is how far the look's frame and the blank inside it reach in
// from the edge of the printable area.
func (s *setter) frameInset(short unit.Length) (line, inside unit.Length) {
	switch s.look.Frame {
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
func (s *setter) innerLine(short unit.Length) unit.Length {
	line, _ := s.frameInset(short)
	if line <= 0 {
		return 0
	}
	d := max(line, s.cell.Safe) + 6*hairline
	if s.look.Frame == "double" {
		d += share(short, 0.017)
	}
	return d
}

// frameLine draws the look's frame inside area (inside the safe edge).
func (s *setter) frameLine(area page.Rect, on roles, ellipse bool) {
	line, _ := s.frameInset(min(area.W, area.H))
	if line <= 0 {
		return
	}
	c := on.text(s.look.FrameColour, largeContrast)
	draw := func(d, width unit.Length, dash []unit.Length) {
		box := area.Grow(-d, -d)
		p := roundPath(box, max(0, s.cell.Corner-d))
		switch {
		case ellipse:
			p = ellipsePath(box)
		case s.cell.Shape == page.TagShape:
			p = s.tagLine(d)
		}
		p.Stroke, p.Width, p.Dash, p.Round, p.Block = &c, width, dash, dash != nil, "frame"
		s.put(p)
	}
	half := max(line, s.cell.Safe) + 2*hairline // the stroke, too, stays inside
	short := min(area.W, area.H)
	switch s.look.Frame {
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
func (s *setter) tagLine(d unit.Length) *page.Path {
	dx, dy := page.TagCut(s.cell.W, s.cell.H)
	x, y, in := float64(dx), float64(dy), float64(d)
	over := 1 + in*math.Hypot(1/x, 1/y) // the cut edge is where X/x + Y/y = over
	cx, cy := unit.Length(x*(over-in/y))-d, unit.Length(y*(over-in/x))-d
	return cutPath(page.Rect{X: d, Y: d, W: s.cell.W - 2*d, H: s.cell.H - 2*d}, cx, cy)
}
