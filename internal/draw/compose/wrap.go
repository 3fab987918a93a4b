package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// wrap sets a wrap-around label: display panel left, information panel
// immediately right of it (21 CFR 101.2(a)).
func (l *layout) wrap() {
	info := l.on(l.look.Info)
	_, side := l.halves()
	l.fill(side, l.look.Info)
	l.strewn = l.displayPanel()
	ok := l.panel(l.strewn, l.colours, l.panelBlocks())
	if e := l.look.Band.Edge; e == "top" || e == "bottom" || e == "both" {
		side.Y, side.H = l.strewn.Y, l.strewn.H
	} else {
		l.open = side
	}
	if ok {
		l.infoPanel(side, info, l.onPanel()...)
	}
	l.divide(side.X, info)
}

// halves are the display panel and the information panel of a wrap.
func (l *layout) halves() (front, side page.Rect) {
	front = page.Rect{W: l.cell.W, H: l.cell.H}
	side = front
	front.W = share(l.cell.W, l.part)
	side.X, side.W = front.W, l.cell.W-front.W
	return front, side
}

// displayPanel draws the band of a wrap and gives the rest of its display panel.
func (l *layout) displayPanel() page.Rect {
	front, _ := l.halves()
	if e := l.look.Band.Edge; e == "top" || e == "bottom" || e == "both" {
		rest := l.band(page.Rect{W: l.cell.W, H: l.cell.H}, l.look.Band)
		front.Y, front.H = rest.Y, rest.H
		return front
	}
	return l.band(front, l.look.Band)
}

// onPanel lists the ids of the blocks the display panel already bears.
func (l *layout) onPanel() []string {
	var out []string
	for _, b := range l.panelBlocks() {
		out = append(out, b.ID)
	}
	return out
}

// divide draws the look's line between display and information panel.
func (l *layout) divide(x unit.Length, on roles) {
	if l.look.Divider == "none" || l.look.Divider == "" {
		return
	}
	m := max(share(l.short(), l.look.Margin), l.cell.Safe)
	c := on.text("accent", largeContrast)
	p := linePath(page.Point{X: x, Y: m}, page.Point{X: x, Y: l.cell.H - m}, hairline*3/2, c)
	if l.look.Divider == "dotted" {
		p.Width, p.Dash, p.Round = 2*hairline, []unit.Length{1, 5 * hairline}, true
	}
	l.over = append(l.over, p)
}
