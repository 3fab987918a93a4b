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
// above it, its clear space taken off. The space must be free of printed
// information: above and below the height of its lettering, at the sides
// twice the width of its N (21 CFR 101.7(f)). Drawings say nothing and may come
// nearer: half that height, half an N at the sides, a matter of taste.
func (s *setter) net(in region, area page.Rect, on roles, short unit.Length) (region, bool) {
	b, ok := s.block(label.Net)
	if !ok {
		return in, true
	}
	r := s.displayRow(b, s.d.Voices.Net, on, short, 2, 1)
	r.para = s.netPara(b, on)
	foot := in
	if b.Zone == label.Bottom {
		top := share(s.cell.H, bottomZone)
		foot = in.inset(0, max(0, top-in.Y), 0, 0)
	}
	big := clearing(r.para.Voice, b, r.best)
	side, under := s.clearAside(big, in, area), s.clearUnder(big, in, area)
	k := stack{in: foot.inset(side, 0, side, under), align: s.align(), rise: 1, rows: []row{r}}
	if k.align == typeset.Left {
		k.in = foot.inset(0, 0, side, under)
	}
	best, ok := k.lowest()
	if !ok {
		s.lacks(k, "the net quantity")
		return in, false
	}
	items, _ := k.place(best)
	s.put(items...)
	s.netSize = best.sizes[0]
	box, size := s.inkOf(items), best.sizes[0]
	gap := share(size, 0.5)
	if b.Clear {
		c := clearing(r.para.Voice, b, size)
		gap = c.Y
		s.clear = append(s.clear, box.Grow(c.X, c.Y))
		s.holes = append(s.holes, box.Grow(c.X/4, c.Y/2))
	}
	above := in
	above.H = max(0, box.Y-gap-in.Y)
	return above, true
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
func (s *setter) clearAside(need page.Point, in region, area page.Rect) unit.Length {
	side := unit.Length(0)
	gap := area.X + area.W - in.X - in.W
	if s.piece == label.Wrap { // the facts begin beyond the edge of the panel
		side = max(side, need.X-gap-s.beyondPanel)
	}
	if line := s.innerLine(min(area.W, area.H)); line > 0 {
		side = max(side, need.X/4-(gap-line))
	}
	for _, o := range s.look.Ornaments {
		switch o.Place {
		case "left", "right", "ends", "corners", "frame":
			side = max(side, need.X/4)
		}
	}
	return side
}

// clearUnder is the same for the foot of the region.
func (s *setter) clearUnder(need page.Point, in region, area page.Rect) unit.Length {
	gap, under := area.Y+area.H-in.Y-in.H, unit.Length(0)
	if line := s.innerLine(min(area.W, area.H)); line > 0 {
		under = max(under, need.Y/2-(gap-line))
	}
	if s.look.Band.Edge == "bottom" || s.look.Band.Edge == "both" {
		under = max(under, need.Y/2-gap)
	}
	for _, o := range s.look.Ornaments {
		switch o.Place {
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
func (s *setter) netPara(b label.Block, on roles) typeset.Para {
	vc := s.voice(s.d.Voices.Net, on)
	runs := append([]label.Run(nil), cased(vc, b)...)
	for i := range runs {
		runs[i].Text = bindNet(runs[i].Text)
	}
	return typeset.New(vc, typeset.Say(b.ID, runs, b.Exact))
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
func (s *setter) inkOf(items []page.Item) page.Rect {
	var box page.Rect
	for _, it := range items {
		t, ok := it.(*page.Text)
		if !ok {
			continue
		}
		b := inkBox(t, s.faces)
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
