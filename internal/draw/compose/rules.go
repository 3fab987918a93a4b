package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// ruleRow is the look's rule as a row of a stack; ok is false when it has none.
func (l *layout) ruleRow(on roles, short unit.Length, a typeset.Align) (row, bool) {
	if l.look.Rule == "none" || l.look.Rule == "" {
		return row{}, false
	}
	c := on.text(l.look.RuleColour, largeContrast)
	high := max(share(short, 0.02), unit.Millimetre)
	kind := l.look.Rule
	if kind == "berry" {
		high = max(share(short, 0.055), 3*unit.Millimetre/2)
		return row{high: high, gap: 0.5, draw: func(box page.Rect) []page.Item {
			w := share(box.W, 0.62)
			box.X, box.W = box.X+a.Shift(box.W, w), w
			return l.draw(drawing{o: design.Ornament{Name: "rule-" + kind}, on: on}, box, nil)
		}}, true
	}
	return row{high: high, gap: 1.1, draw: func(box page.Rect) []page.Item {
		return rule(kind, box, a, c)
	}}, true
}

// rule draws a rule in a box, at its middle height.
func rule(kind string, box page.Rect, a typeset.Align, c page.Colour) []page.Item {
	part := 0.62
	switch {
	case kind == "short":
		part = 0.22
	case a == typeset.Left && kind != "lozenge":
		part = 1
	}
	w := share(box.W, part)
	x, y := box.X+a.Shift(box.W, w), box.Y+box.H/2
	from, to := page.Point{X: x, Y: y}, page.Point{X: x + w, Y: y}
	switch kind {
	case "double":
		d := 2 * hairline
		return []page.Item{
			linePath(page.Point{X: x, Y: y - d}, page.Point{X: x + w, Y: y - d}, 2*hairline, c),
			linePath(page.Point{X: x, Y: y + d}, page.Point{X: x + w, Y: y + d}, hairline, c),
		}
	case "dotted":
		p := linePath(from, to, 2*hairline, c)
		p.Dash, p.Round = []unit.Length{1, 5 * hairline}, true
		return []page.Item{p}
	case "short":
		return []page.Item{linePath(from, to, 3*hairline, c)}
	case "lozenge":
		return lozenge(page.Point{X: x + w/2, Y: y}, w, box.H, c)
	}
	return []page.Item{linePath(from, to, hairline*3/2, c)}
}

// lozenge is a rule with a small diamond at its middle.
func lozenge(mid page.Point, w, h unit.Length, c page.Colour) []page.Item {
	r := h / 2
	d := &page.Path{
		Ops:  []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts:  []page.Point{{X: mid.X, Y: mid.Y - r}, {X: mid.X + r, Y: mid.Y}, {X: mid.X, Y: mid.Y + r}, {X: mid.X - r, Y: mid.Y}},
		Fill: &c,
	}
	gap := r * 5 / 2
	return []page.Item{
		linePath(page.Point{X: mid.X - w/2, Y: mid.Y}, page.Point{X: mid.X - gap, Y: mid.Y}, hairline*3/2, c), d,
		linePath(page.Point{X: mid.X + gap, Y: mid.Y}, page.Point{X: mid.X + w/2, Y: mid.Y}, hairline*3/2, c),
	}
}
