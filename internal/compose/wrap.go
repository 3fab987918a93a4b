package compose

import (
	"jarmark/internal/label"
	"jarmark/internal/page"
	"jarmark/internal/unit"
)

// wrap sets a wrap-around label: display panel left, information panel
// immediately right of it (21 CFR 101.2(a)).
func (s *setter) wrap() {
	whole := page.Rect{W: s.cell.W, H: s.cell.H}
	info := s.on(s.look.Info)
	saved := *s
	items := len(s.frame.Items)
	for i, part := range []float64{0.41, 0.36, 0.46, 0.32} {
		frontW := share(whole.W, part)
		front, side := whole, whole
		front.W, side.X, side.W = frontW, frontW, whole.W-frontW
		if s.wrapAt(front, side, info) {
			return
		}
		if i == 3 {
			return // its findings stand
		}
		s.frame.Items, s.found, s.over = s.frame.Items[:items], saved.found, saved.over
		s.holes, s.clear, s.ornaments = nil, nil, nil
	}
}

func (s *setter) wrapAt(front, side page.Rect, info roles) bool {
	s.fill(side, s.look.Info)
	inner := front
	if e := s.look.Band.Edge; e == "top" || e == "bottom" || e == "both" {
		rest := s.band(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Band)
		inner.Y, inner.H, side.Y, side.H = rest.Y, rest.H, rest.Y, rest.H
	} else {
		inner = s.band(front, s.look.Band)
		s.open = side
	}
	s.display = inner
	s.beyondPanel = s.factMargin(side)
	ok := s.panel(inner, s.colours, s.panelBlocks())
	ps := s.facts(info, s.onPanel()...)
	ok = s.infoPanel(side, info, ps) && ok
	s.decorate()
	s.divide(front.X+front.W, info)
	return ok
}

// onPanel lists the kinds the display panel already bears.
func (s *setter) onPanel() []label.Kind {
	var out []label.Kind
	for _, b := range s.panelBlocks() {
		out = append(out, b.Kind)
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
	s.infoPanel(area, on, s.facts(on))
	s.decorate()
}
