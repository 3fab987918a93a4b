package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// bottomZone is the part of the panel's height the net quantity must stand
// below: its lowest 30 % (21 CFR 101.7(f)).
const bottomZone = 0.7

// net sets the net quantity at the foot of a region and gives the region
// above it, its clear space taken off, and its type size. The space must be free of printed
// information: above and below the height of its lettering, at the sides
// twice the width of its N (21 CFR 101.7(f)). Drawings say nothing and may come
// nearer: half that height, half an N at the sides, a matter of taste.
func (l *layout) net(in region, area page.Rect, on roles, short unit.Length) (above region, size unit.Length, ok bool) {
	b, ok := l.block(label.Net)
	if !ok {
		return in, 0, true
	}
	r := l.displayRow(b, l.voices.Net, on, short, 2, 1)
	r.para = l.netPara(b, on)
	foot := in
	if b.Zone == label.Bottom {
		top := share(l.cell.H, bottomZone)
		foot = in.inset(0, max(0, top-in.Y), 0, 0)
	}
	big := clearing(r.para.Voice, b, r.best)
	side, under := l.clearAside(big, in, area), l.clearUnder(big, in, area)
	k := stack{in: foot.inset(side, 0, side, under), align: l.align(), rise: 1, rows: []row{r}}
	if k.align == typeset.Left {
		k.in = foot.inset(0, 0, side, under)
	}
	if l.aside { // right of the name, at most two fifths of the panel
		k.in, k.align = k.in.inset(share(k.in.W, 0.6), 0, 0, 0), typeset.Right
	}
	best, ok := k.lowest()
	if !ok { // the lines of one statement may close up
		k.rows[0].para.Voice.Leading = 1
		best, ok = k.lowest()
	}
	if !ok {
		l.lacksRoom(k, "the net quantity")
		return in, 0, false
	}
	items, _ := k.place(best)
	l.put(items...)
	box, size := l.inkOf(items), best.sizes[0]
	l.netWide = box.W
	gap := share(size, 0.5)
	if b.Clear {
		c := clearing(r.para.Voice, b, size)
		gap = c.Y
		side = c.X
		l.clear = append(l.clear, box.Grow(c.X, c.Y))
		l.kept = append(l.kept, box.Grow(c.X/4, c.Y/2))
	}
	above = in
	if l.aside {
		above.W = max(0, box.X-max(gap, side)-in.X)
		return above, size, true
	}
	above.H = max(0, box.Y-gap-in.Y)
	return above, size, true
}

// clearing is the clear space of a net quantity at a size: X at each side, Y
// above and below.
func clearing(v typeset.Voice, b label.Block, size unit.Length) page.Point {
	if !b.Clear {
		return page.Point{X: size / 2, Y: size / 2}
	}
	f := v.Face(netBold(b))
	return page.Point{X: 2 * typeset.At(f.Advance('N'), size), Y: max(f.CapHeight(size), typeset.At(f.Ink('(').Top+f.Ink('(').Bottom, size))}
}

// clearAside is how far the net quantity must stand in from the sides of a
// region for its clear space.
func (l *layout) clearAside(need page.Point, in region, area page.Rect) unit.Length {
	side := unit.Length(0)
	gap := area.X + area.W - in.X - in.W
	if l.piece == label.Wrap { // the facts begin beyond the edge of the panel
		_, facts := l.halves()
		side = max(side, need.X-gap-l.factMargin(facts))
	}
	if line := l.innerLine(min(area.W, area.H)); line > 0 {
		side = max(side, need.X/4-(gap-line))
	}
	for _, o := range l.look.Ornaments {
		switch o.Spot {
		case "left", "right", "ends", "corners", "frame":
			side = max(side, need.X/4)
		}
	}
	return side
}

// clearUnder is the same for the foot of the region.
func (l *layout) clearUnder(need page.Point, in region, area page.Rect) unit.Length {
	gap, under := area.Y+area.H-in.Y-in.H, unit.Length(0)
	if line := l.innerLine(min(area.W, area.H)); line > 0 {
		under = max(under, need.Y/2-(gap-line))
	}
	if l.look.Band.Edge == "bottom" || l.look.Band.Edge == "both" {
		under = max(under, need.Y/2-gap)
	}
	for _, o := range l.look.Ornaments {
		switch o.Spot {
		case "bottom", "frame", "corners":
			under = max(under, need.Y/2)
		}
	}
	return under
}

// lowest sets a stack at the foot of its region; in an oval, where the foot is
// narrow, as far up as its size gains by it.
func (k *stack) lowest() (setting, bool) {
	if k.in.oval.W == 0 {
		return k.best()
	}
	var top setting
	at, found := k.rise, false
	for _, rise := range []float64{1, 0.75, 0.5, 0.25, 0} {
		k.rise = rise
		if s, ok := k.best(); ok && (!found || s.score > top.score*1.02) {
			top, at, found = s, rise, true
		}
	}
	k.rise = at
	return top, found
}

// netPara keeps the declaration together: it may break only before the
// bracket of its second measure.
func (l *layout) netPara(b label.Block, on roles) typeset.Para {
	vc := l.voice(l.voices.Net, on)
	runs := append([]label.Run(nil), cased(vc, b)...)
	for i := range runs {
		runs[i].Text = bindNet(runs[i].Text)
	}
	return l.say(vc, b.ID, runs, b.Exact)
}

func bindNet(s string) string {
	out := []rune(s)
	for i, r := range out {
		if r == ' ' && (i+1 >= len(out) || out[i+1] != '(') {
			out[i] = typeset.NBSP
		}
	}
	return string(out)
}

func netBold(b label.Block) bool { return len(b.Runs) > 0 && b.Runs[0].Bold }

// inkOf is the box of the ink of text items.
func (l *layout) inkOf(items []page.Item) page.Rect {
	var box page.Rect
	for _, it := range items {
		t, ok := it.(*page.Text)
		if !ok {
			continue
		}
		b := inkBox(t, l.faces)
		if b.W <= 0 {
			continue
		}
		if box.W == 0 {
			box = b
		} else {
			box = box.Union(b)
		}
	}
	return box
}
