package compose

import (
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// infoLabel sets an information panel on a label of its own: in the design's
// frame, with a strip of its band, under the name of the food, as far as the facts
// leave them room.
func (l *layout) infoLabel() {
	on := l.on(l.look.Info)
	area := page.Rect{W: l.cell.W, H: l.cell.H}
	l.fill(area, l.look.Info)
	area = l.band(area, l.roundBand())
	l.frameLine(area, on, l.cell.Shape == page.Ellipse)
	l.infoPanel(area, on)
}

// infoBand is the most an information label gives of its shorter side to a band:
// the facts want the room.
const infoBand = 0.07

// What an information label gives up, in hundredths as in rank.go: all of the size
// its facts might have, or the name over them. Our own taste.
const (
	costFacts   = 60
	costClosed  = 12 // a step nearer one paragraph
	costCode    = 15 // a step smaller a code
	costNoHead  = 24
	costNarrows = 1000 // narrow facts, where no others fit
)

// infoVariants lists what to try for an information label: the design's frame and
// band and the name over the facts, then less.
func (b brief) infoVariants(look design.Look) (out []variant) {
	look.Band.Size = min(look.Band.Size, infoBand)
	unframed := look
	unframed.Frame = "none"
	plain := unframed
	plain.Band = design.Band{Edge: "none"}
	looks, leanest := []design.Look{look}, plain
	for _, l := range look.Leaner() {
		leanest.Margin = min(leanest.Margin, l.Margin)
	}
	for _, l := range []design.Look{unframed, plain, leanest} {
		if last := looks[len(looks)-1]; l.Frame != last.Frame || l.Band.Edge != last.Band.Edge || l.Margin != last.Margin {
			looks = append(looks, l)
		}
	}
	for _, narrow := range []bool{false, true} {
		if narrow && !b.narrows() {
			break
		}
		for _, head := range []bool{true, false} {
			for i, l := range looks {
				v := variant{look: l, part: usualPart, narrow: narrow, titled: head, cost: i * costFrame}
				if narrow { // the law binds the height of its type
					v.cost += costNarrows
				}
				if !head {
					v.cost += costNoHead
				}
				out = append(out, v)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b variant) int { return a.cost - b.cost })
	return out
}

// costOfInfo is what the facts of an information label give up.
func (l *layout) costOfInfo() int {
	c := int(costFacts*(1-l.factScale)) + int(l.closed)*costClosed + max(0, l.codeStep)*costCode
	if l.headless {
		c += costNoHead
	}
	return c
}

// heading sets the name over the facts, with a line under it, and gives the region
// below; ok is false where it would be too small to head anything.
func (l *layout) heading(in region, on roles) (region, bool) {
	text := l.called()
	if text == "" || in.oval.W > 0 {
		return in, false
	}
	v := l.voices.Title
	v.Size, v.Track = design.Range{Least: 0.05, Best: 0.095}, 0
	r := l.displayRow(label.Block{Runs: []label.Run{{Text: text}}}, v, on, l.short(), 1, 1)
	r.least = max(r.legal, displayLeast)
	r.best = max(r.least, min(r.best, unit.Points(15)))
	k := stack{in: in, align: typeset.Left, rows: []row{r}, spread: 1}
	best, ok := k.best()
	if !ok {
		return in, false
	}
	items, _ := k.place(best)
	l.put(items...)
	box := l.inkOf(items)
	y := max(box.Y+box.H, in.Y+best.high) + share(best.sizes[0], 0.22)
	if l.look.Rule != "none" {
		l.put(linePath(page.Point{X: in.X, Y: y}, page.Point{X: in.X + in.W, Y: y}, hairline*3/2, on.text(l.look.RuleColour, largeContrast)))
	}
	l.open.Y, l.open.H = y, l.open.Y+l.open.H-y // the quiet zone of a code ends here
	return in.inset(0, y+share(best.sizes[0], 0.4)-in.Y, 0, 0), true
}
