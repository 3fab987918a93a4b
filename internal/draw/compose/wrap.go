package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// wrap sets a wrap-around label: display panel left, information panel
// immediately right of it (21 CFR 101.2(a)).
func (s *setter) wrap() {
	info := s.on(s.look.Info)
	front, side := s.halves()
	s.fill(side, s.look.Info)
	ok := s.wrapFront(front, side)
	if e := s.look.Band.Edge; e == "top" || e == "bottom" || e == "both" {
		side.Y, side.H = s.display.Y, s.display.H
	} else {
		s.open = side
	}
	if ok {
		s.infoPanel(side, info, s.onPanel()...)
	}
	s.decorate()
	s.divide(side.X, info)
}

// halves are the display panel and the information panel of a wrap.
func (s *setter) halves() (front, side page.Rect) {
	front = page.Rect{W: s.cell.W, H: s.cell.H}
	side = front
	front.W = share(s.cell.W, s.part)
	side.X, side.W = front.W, s.cell.W-front.W
	return front, side
}

// wrapFront sets the display panel of a wrap, its band included.
func (s *setter) wrapFront(front, side page.Rect) bool {
	inner := front
	if e := s.look.Band.Edge; e == "top" || e == "bottom" || e == "both" {
		rest := s.band(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Band)
		inner.Y, inner.H = rest.Y, rest.H
	} else {
		inner = s.band(front, s.look.Band)
	}
	s.display = inner
	s.beyondPanel = s.factMargin(side)
	return s.panel(inner, s.colours, s.panelBlocks())
}

// onPanel lists the ids of the blocks the display panel already bears.
func (s *setter) onPanel() []string {
	var out []string
	for _, b := range s.panelBlocks() {
		out = append(out, b.ID)
	}
	return out
}

// divide draws the look's line between display and information panel.
func (s *setter) divide(x unit.Length, on roles) {
	if s.look.Divider == "none" || s.look.Divider == "" {
		return
	}
	m := max(share(s.short(), s.look.Margin), s.cell.Safe)
	c := on.text("accent", largeContrast)
	p := linePath(page.Point{X: x, Y: m}, page.Point{X: x, Y: s.cell.H - m}, hairline*3/2, c)
	if s.look.Divider == "dotted" {
		p.Width, p.Dash, p.Round = 2*hairline, []unit.Length{1, 5 * hairline}, true
	}
	s.put(p)
}

// infoLabel sets an information panel on a label of its own.
func (s *setter) infoLabel() {
	on := s.on(s.look.Info)
	area := page.Rect{W: s.cell.W, H: s.cell.H}
	s.fill(area, s.look.Info)
	s.open = area
	s.infoPanel(area, on)
	s.decorate()
}
