package compose

import (
	"jarmark/internal/label"
	"jarmark/internal/page"
	"jarmark/internal/unit"
)

// bottomZone is the part of the panel's height the net quantity must stand
// below: its lowest 30 % (21 CFR 101.7(f)).
const bottomZone = 0.7

// net sets the net quantity at the foot of a region and gives the region
// above it, its clear space taken off (21 CFR 101.7(f): above and below the
// height of its lettering, at the sides twice the width of its N).
func (s *setter) net(in region, area page.Rect, on roles, short unit.Length) (region, bool) {
	b, ok := s.block(label.Net)
	if !ok {
		return in, true
	}
	r := s.displayRow(b, s.d.Voices.Net, on, short, 2, 1)
	r.para = s.netPara(b, on)
	foot := in
	if b.Zone == label.Bottom {
		top := area.Y + share(area.H, bottomZone)
		foot = in.inset(0, max(0, top-in.Y), 0, 0)
	}
	side := unit.Length(0)
	if b.Clear {
		n := 2 * at(r.para.voice.face(netBold(b)).Advance('N'), r.best)
		side = max(0, n-s.blankAside(in, area))
	}
	k := stack{in: foot.inset(side, 0, side, 0), align: s.align(), rise: 1, rows: []row{r}}
	if k.align == left && side > 0 {
		k.in = foot.inset(0, 0, side, 0)
	}
	best, ok := k.lowest()
	if !ok {
		s.lacks(k, "the net quantity")
		return in, false
	}
	items, _ := k.place(best)
	s.put(items...)
	box := s.inkOf(items)
	size := best.sizes[0]
	clear := share(size, 0.5)
	if b.Clear {
		h := max(r.para.voice.regular.CapHeight(size), box.H/unit.Length(best.lines[0]))
		n := 2 * at(r.para.voice.face(netBold(b)).Advance('N'), size)
		clear = h
		s.holes = append(s.holes, grow(box, n, h))
	}
	above := in
	above.H = max(0, box.Y-clear-in.Y)
	return above, true
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
func (s *setter) netPara(b label.Block, on roles) para {
	vc := s.voice(s.d.Voices.Net, on)
	runs := append([]label.Run(nil), vc.cased(b)...)
	for i := range runs {
		runs[i].Text = bindNet(runs[i].Text)
	}
	return newPara(vc, said{b.ID, runs, b.Exact})
}

func bindNet(s string) string {
	out := []rune(s)
	for i, r := range out {
		if r == ' ' && (i+1 >= len(out) || out[i+1] != '(') {
			out[i] = nbsp
		}
	}
	return string(out)
}

func netBold(b label.Block) bool { return len(b.Runs) > 0 && b.Runs[0].Bold }

// blankAside is the blank from a region to whatever is printed beside it. The
// edge of the label is not printed matter.
func (s *setter) blankAside(in region, area page.Rect) unit.Length {
	blank := unit.Length(1 << 40)
	if _, inside := s.frameInset(min(area.W, area.H)); inside > 0 {
		blank = share(min(area.W, area.H), 0.04)
	}
	if s.piece == label.Wrap || s.look.Band.Edge == "left" || s.look.Band.Edge == "right" {
		blank = min(blank, area.X+area.W-in.X-in.W)
	}
	for _, o := range s.look.Ornaments {
		switch o.Place {
		case "left", "right", "ends", "corners":
			return 0
		}
	}
	return blank
}

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
			box = union(box, b)
		}
	}
	return box
}
