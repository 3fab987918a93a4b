package compose

import (
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// panel sets a principal display panel in area: name, maker and net quantity,
// with the look's ornaments. extra lists further blocks it must bear.
func (l *layout) panel(area page.Rect, on roles, extra []label.Block) bool {
	n, ok := l.panelName(area, on, extra)
	if ok {
		l.setName(n)
	}
	return ok
}

// panelName sets all of a display panel but the name, and decides on that.
func (l *layout) panelName(area page.Rect, on roles, extra []label.Block) (fitted, bool) {
	short := min(area.W, area.H)
	in := l.inner(area, on)
	if l.split > 0 {
		return l.splitName(l.reserve(in, on, short, "frame", "left", "right", "ends", "corners", "bottom"), area, on, extra)
	}
	in = l.reserve(in, on, short, "frame", "left", "right", "ends", "corners", "corner", "bottom", "beside")
	upper, net, ok := l.net(in, area, on, short)
	if !ok {
		return fitted{}, false
	}
	upper = l.reserve(upper, on, short, "top", "around")
	return l.decide(l.nameStack(upper, on, short, net, extra), "the name")
}

// splitName sets a low panel in two columns: the net quantity at the foot of the
// right one with the further blocks over it, and decides on the name in the left.
func (l *layout) splitName(in region, area page.Rect, on roles, extra []label.Block) (fitted, bool) {
	short, left, right := min(area.W, area.H), in, in
	left.W = share(in.W, l.split)
	right.X, right.W = in.X+left.W, in.W-left.W
	over, net, ok := l.net(right, area, on, short)
	if !ok {
		return fitted{}, false
	}
	k := stack{in: over, align: l.align(), rise: 0.4, spread: 1.5}
	for _, b := range extra {
		k.rows = append(k.rows, l.textRow(b, on, short))
	}
	f, ok := l.decide(k, "what must stand beside the name")
	if !ok {
		return fitted{}, false
	}
	items, _ := f.place(f.as)
	l.put(items...)
	edge := right.X
	if n := len(l.clear); n > 0 {
		edge = l.clear[n-1].X
	}
	left.W = min(left.W-share(short, 0.07), edge-left.X, l.inkOf(items).X-share(short, 0.07)-left.X)
	if left.W <= 0 {
		return fitted{}, false
	}
	left = l.reserve(left, on, short, "beside", "corner", "top", "around")
	name := l.nameStack(left, on, short, net, nil)
	for i := range name.rows { // a word parted because of what stands beside it is no gain
		name.rows[i].parted = typeset.Para{}
	}
	return l.decide(name, "the name")
}

// inner draws the frame and gives the region inside the margin.
func (l *layout) inner(area page.Rect, on roles) region {
	ellipse := l.cell.Shape == page.Ellipse
	short := min(area.W, area.H)
	_, inside := l.frameInset(short)
	if line := l.innerLine(short); line > 0 {
		inside = max(inside, line+share(short, 0.025))
	}
	m := max(share(short, l.look.Margin), l.cell.Safe, inside)
	l.frameLine(area, on, ellipse)
	return l.shaped(area.Grow(-m, -m))
}

func (l *layout) align() typeset.Align {
	if l.look.Align == "left" && l.cell.Shape != page.Ellipse {
		return typeset.Left
	}
	return typeset.Centre
}

// shaped is the part of a box that lies on the label: an oval's inside, what a
// tag's cut or a rounded corner leaves.
func (l *layout) shaped(r page.Rect) region {
	in := region{Rect: r}
	if l.cell.Shape == page.Ellipse {
		m := max(l.cell.Safe, min(r.X, r.Y, l.cell.W-r.X-r.W, l.cell.H-r.Y-r.H))
		in.oval = page.Rect{W: l.cell.W, H: l.cell.H}.Grow(-m, -m)
		return in
	}
	in.holes = l.beyond(max(l.cell.Safe, l.ringWidth()))
	if len(in.holes) == 0 {
		in.air = min(max(0, r.X-l.cell.Safe), 3*unit.Millimetre/2)
		if line := l.innerLine(l.short()); line > 0 {
			in.air = max(0, min(in.air, r.X-line-hairline))
		}
	}
	return in
}

// span gives a display voice's sizes on a panel.
func spanOf(v typeset.Voice, d design.Range, short, least unit.Length) (lo, hi unit.Length) {
	lo, hi = share(short, d.Least), share(short, d.Best)
	lo = max(lo, least)
	return lo, max(lo, hi)
}

// legible is the least size of type no law speaks of: 5 pt, common practice,
// no source.
var legible = unit.Points(5)

// leads is how much larger than the net quantity a name likes to be: common
// practice, no source.
const leads = 1.4

// leading is that size.
func leading(net unit.Length) unit.Length { return share(net, leads) + unit.Micrometre }

// nameStack is title, subtitle, maker and extra blocks in a region; net is the
// type size of the net quantity beside it.
func (l *layout) nameStack(in region, on roles, short, net unit.Length, extra []label.Block) stack {
	short = max(short, min(in.W*2/5, in.H)) // a low panel is wide
	k := stack{in: in, align: l.align(), rise: 0.46, spread: 1.9, largest: net, sides: max(l.sides, l.beyondFrame(short))}
	if k.rows = l.titleRows(on, short); len(k.rows) > 0 {
		k.rows[0].best = max(k.rows[0].best, leading(net))
	}
	if r, ok := l.ruleRow(on, short, k.align); ok && (l.has(label.Brand) || len(extra) > 0) {
		k.rows = append(k.rows, r)
	}
	if b, ok := l.block(label.Brand); ok && (l.look.Brand != "none" || b.Required) {
		r := l.displayRow(b, l.voices.Brand, on, short, 2, 1)
		r.gap, r.weight = 0.9, 0.6
		if l.look.Brand == "above" {
			k.rows = append([]row{r}, k.rows...)
			k.rows[1].gap = 0.55
		} else {
			k.rows = append(k.rows, r)
		}
	}
	for _, b := range extra {
		r := l.textRow(b, on, short)
		k.rows = append(k.rows, r)
	}
	return k
}

// beyondFrame is the blank a name keeps from a frame at its sides, more than smaller
// type does.
func (l *layout) beyondFrame(short unit.Length) unit.Length {
	if l.innerLine(short) == 0 || l.align() == typeset.Left {
		return 0
	}
	return share(short, 0.03)
}

// fitted is a stack and the setting chosen for it, not yet drawn.
type fitted struct {
	stack
	as setting
}

// title gives the type size of the first line of the name, and whether the
// design likes none better.
func (f fitted) title() (size unit.Length, atBest bool) {
	for i, r := range f.rows {
		if r.names && i < len(f.as.sizes) {
			return f.as.sizes[i], f.as.sizes[i] >= r.best
		}
	}
	return 0, false
}

// choose finds a stack's best setting, below the design's least sizes if it
// must.
func (k stack) choose() (fitted, bool) {
	if len(k.rows) == 0 {
		return fitted{stack: k}, true
	}
	k.rows[0].gap = 0
	best, ok := k.best()
	if !ok {
		k.relax()
		best, ok = k.best()
	}
	whole := fitted{k, best}
	if low, ok2 := k.lower(); ok2 { // the ends of a garland hang down beside the first lines
		size, _ := whole.title()
		if now, _ := low.title(); !ok || now*100 >= size*108 {
			whole, ok = low, true
		}
	}
	if size, _ := whole.title(); ok && size >= parts {
		return whole, true
	}
	if parted, ok2 := k.parted(); ok2 {
		size, _ := whole.title()
		if now, _ := parted.title(); !ok || now*10 >= size*13 {
			return parted, true
		}
	}
	return whole, ok
}

// lower is the best setting of a stack further down its region, where something
// leaves the upper part less wide.
func (k stack) lower() (fitted, bool) {
	if len(k.in.holes) == 0 || k.in.oval.W > 0 {
		return fitted{}, false
	}
	k.rise = 0.9
	best, ok := k.best()
	return fitted{k, best}, ok
}

// parts is the size of a name under which its words may be parted: a name is
// read whole, but not in small type (our own taste).
var parts = unit.Points(11)

// parted is the best setting with the words of the name parted.
func (k stack) parted() (fitted, bool) {
	k.rows = slices.Clone(k.rows)
	any := false
	for i := range k.rows {
		if r := &k.rows[i]; len(r.parted.Words) > 0 {
			r.para, r.narrow, r.boxes, any = r.parted, nil, nil, true
			r.lines = max(2, r.lines)
		}
	}
	if !any {
		return fitted{}, false
	}
	best, ok := k.best()
	return fitted{k, best}, ok
}

// decide is choose that reports what the stack lacks.
func (l *layout) decide(k stack, what string) (fitted, bool) {
	f, ok := k.choose()
	if !ok {
		l.lacksRoom(f.stack, what)
	}
	return f, ok
}

// fit places a stack's best setting or reports what it lacks.
func (l *layout) fit(k stack, what string) bool {
	f, ok := l.decide(k, what)
	if ok {
		l.setStack(f)
	}
	return ok
}

// setName places the name of a display panel.
func (l *layout) setName(f fitted) {
	l.body = f.in
	l.setStack(f)
}

// setStack places a stack and notes where the name stands.
func (l *layout) setStack(f fitted) {
	if len(f.rows) == 0 {
		return
	}
	items, _ := f.place(f.as)
	l.put(items...)
	if size, named := f.title(); size > 0 || named {
		l.nameSize = size
	}
	for i, r := range f.rows {
		if !r.names {
			continue
		}
		box := l.inkOf(items[f.from[i]:f.from[i+1]])
		if l.nameBox.W > 0 && box.W > f.in.W-2*l.sides {
			break // drawings stand beside the lines above it
		}
		l.nameBox = joined(l.nameBox, box)
	}
}

// joined is the box of two boxes, either of which may be empty.
func joined(a, b page.Rect) page.Rect {
	switch {
	case a.W == 0:
		return b
	case b.W == 0:
		return a
	}
	return a.Union(b)
}

// relax lets rows go below the design's least size, to the law's or to what
// can be read, and closes the gaps.
func (k *stack) relax() {
	for i := range k.rows {
		r := &k.rows[i]
		if r.draw == nil {
			r.least = min(r.least, max(r.legal, legible))
		}
		r.gap *= 0.6
	}
}

// lacksRoom notes that a stack does not fit its region.
func (l *layout) lacksRoom(k stack, what string) {
	l.lacks(what, k.in, func(r region) bool {
		k.in = r
		_, ok := k.lowest()
		return ok
	})
}
