package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/ornament"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// drawing is an ornament whose spot is known; it is drawn once the type
// stands, so that it can keep clear of it.
type drawing struct {
	o    design.Ornament
	box  page.Rect
	on   roles
	flat unit.Length // least height it may flatten to, to stay whole
	flip bool        // mirrored, for the partner on the other side
}

// adornment is what a layout leaves for its ornaments.
type adornment struct {
	drawings []drawing
	pairs    []drawing   // for the blank beside the name
	sides    unit.Length // width kept free for them at each side of the name
	corner   page.Rect   // of the drawing in the upper right corner
	strewn   page.Rect   // what scattered drawings are strewn over
	nameBox  page.Rect   // ink of title and subtitle
	nameSize unit.Length // type size of the title
	netWide  unit.Length // width of the net quantity
	body     region      // the blank the name was set in
	squashed bool        // a ring of leaves is flatter than looks well
}

// reserve takes the room of the look's ornaments at the given spots from a
// region and remembers them for drawing.
func (l *layout) reserve(in region, on roles, short unit.Length, spots ...string) region {
	for _, o := range l.look.Ornaments {
		for _, p := range spots {
			if o.Spot == p {
				in = l.reserveOne(o, in, on, short)
			}
		}
	}
	return in
}

// flattest is how much wider than high a ring of leaves may be.
const flattest = 2.2

// reserveOne sets an ornament at its spot and gives what is left of the room.
func (l *layout) reserveOne(o design.Ornament, in region, on roles, short unit.Length) region {
	take := share(short, o.Size)
	reach := max(take, share(short, o.Reach))
	box := in.Rect
	switch o.Spot {
	case "top":
		box, in = atTop(in, take, reach, share(short, 0.015))
	case "bottom":
		box = in.Rect
		box.H = min(reach, in.H)
		box.Y = in.Y + in.H - box.H
		box, in = inOval(in, box), in.inset(0, 0, 0, take)
	case "left":
		box = page.Rect{X: in.X, Y: in.Y, W: min(reach, in.W), H: in.H}
		in = in.inset(take, 0, 0, 0)
	case "right":
		w := min(reach, in.W)
		box = page.Rect{X: in.X + in.W - w, Y: in.Y, W: w, H: in.H}
		in = in.inset(0, 0, take, 0)
	case "ends":
		w := min(reach, in.W/2)
		l.later(o, page.Rect{X: in.X, Y: in.Y, W: w, H: in.H}, on)
		box = page.Rect{X: in.X + in.W - w, Y: in.Y, W: w, H: in.H}
		o.Seed++
		in = in.inset(take, 0, take, 0)
	case "around":
		l.squashed = l.squashed || float64(in.W) > flattest*float64(in.H)
		box, in = within(in, take)
		if l.cell.Shape == page.Ellipse {
			box = box.Grow(-share(short, 0.02), -share(short, 0.02))
		}
	case "frame":
		in = in.inset(take, take, take, take)
	case "corner":
		side := min(reach, in.W/2, in.H)
		box = page.Rect{X: in.X + in.W - side, Y: in.Y, W: side, H: side}
		l.corner = box.Grow(share(short, 0.03), 0)
		in = in.less(l.corner)
	case "corners":
		l.corners(o, in.Rect, reach, on)
		return in
	case "beside":
		l.pairs = append(l.pairs, drawing{o: o, on: on})
		l.sides = max(l.sides, share(min(share(short, o.Size), in.W/5), 0.8))
		return in
	}
	l.later(o, box, on)
	if k := len(l.drawings); k > 0 && o.Spot == "top" {
		l.drawings[k-1].flat = take
	}
	return in
}

// atTop is the room of a garland, and what it leaves: a longer reach is of the ends,
// which hang down beside the name.
func atTop(in region, take, reach, gap unit.Length) (page.Rect, region) {
	box := in.Rect
	box.H = min(reach, in.H)
	box = inOval(in, box)
	in = in.inset(0, take+gap, 0, 0)
	if reach > take {
		end := page.Rect{X: box.X, Y: box.Y, W: box.W * 3 / 20, H: box.H}
		in = in.less(end)
		end.X = box.X + box.W - end.W
		in = in.less(end)
	}
	return box, in
}

// within is the room of a ring, and what lies inside it; in a cut oval the ring is as
// wide as the oval is at a fifth of its height.
func within(in region, take unit.Length) (page.Rect, region) {
	if in.oval.W > 0 && in.oval != in.Rect {
		half := min(halfChord(in.oval, in.Y+in.H/5), halfChord(in.oval, in.Y+in.H*4/5))
		mid := in.oval.X + in.oval.W/2
		x0, x1 := max(in.X, mid-half), min(in.X+in.W, mid+half)
		in.X, in.W = x0, max(0, x1-x0)
	}
	return in.Rect, in.inset(take, take, take, take).inscribed()
}

func (l *layout) corners(o design.Ornament, r page.Rect, side unit.Length, on roles) {
	side = min(side, r.W/2, r.H/2)
	for i, p := range []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W - side, Y: r.Y}, {X: r.X, Y: r.Y + r.H - side}, {X: r.X + r.W - side, Y: r.Y + r.H - side}} {
		one := o
		one.Seed += int64(i)
		l.later(one, page.Rect{X: p.X, Y: p.Y, W: side, H: side}, on)
	}
}

func (l *layout) later(o design.Ornament, box page.Rect, on roles) {
	if box.W > 0 && box.H > 0 {
		l.drawings = append(l.drawings, drawing{o: o, box: box, on: on})
	}
}

// inOval narrows a box at the top or the foot of an oval to its chord there.
func inOval(in region, box page.Rect) page.Rect {
	if in.oval.W == 0 {
		return box
	}
	y := box.Y + box.H*2/5
	if 2*y > 2*in.oval.Y+in.oval.H {
		y = box.Y + box.H*3/5
	}
	half := halfChord(in.oval, y)
	box.X, box.W = in.oval.X+in.oval.W/2-half, 2*half
	return box
}

// adorn draws the ornaments behind the type, keeping clear of everything set
// so far, and says how many paths they are.
func (l *layout) adorn() int {
	drawn, keep := l.pictures(l.taken())
	seal, keep := l.stamps(keep)
	drawn = append(drawn, seal...)
	for _, p := range append(l.drawings, l.besides()...) {
		near := keep
		if p.o.Spot != "around" {
			near = append(near[:len(near):len(near)], l.beyond(l.cell.Safe)...)
		}
		drawn = append(drawn, l.whole(p, near)...)
	}
	l.put(drawn...)
	l.put(l.over...)
	return len(drawn) + l.scatter()
}

// leastBeside is the smallest drawing worth standing beside a name.
const leastBeside = 4 * unit.Millimetre

// besides places the drawings that take the blank at both sides of the name,
// or right of it when the name stands left.
func (l *layout) besides() (out []drawing) {
	for _, p := range l.pairs {
		in, name := l.body, l.nameBox
		if name.W == 0 {
			continue
		}
		air := share(l.short(), 0.04)
		top, bottom := in.Y, min(in.Y+in.H, name.Y+name.H+air/2)
		left := page.Rect{X: in.X, Y: top, W: name.X - in.X - air, H: bottom - top}
		right := page.Rect{X: name.X + name.W + air, Y: top, W: in.X + in.W - name.X - name.W - air, H: bottom - top}
		side := min(left.W, right.W, left.H)
		if l.align() != typeset.Centre {
			side = min(right.W, right.H)
		}
		side = min(side, share(l.short(), max(p.o.Size, p.o.Reach)))
		if side < leastBeside {
			continue
		}
		// Nearer the name than the edge, at half its height.
		y := max(top, min(bottom-side, name.Y+name.H/2-side/2))
		if l.align() == typeset.Centre {
			p.box = page.Rect{X: left.X + share(left.W-side, 0.6), Y: y, W: side, H: side}
			out = append(out, p)
			p.flip = true
			p.box.X = right.X + share(right.W-side, 0.4)
		} else {
			p.box = page.Rect{X: right.X + right.W - side, Y: y, W: side, H: side}
		}
		out = append(out, p)
	}
	return out
}

// whole draws an ornament as high as it can be without losing leaves to the
// type it must keep clear of; one that cannot be whole is drawn at its least.
func (l *layout) whole(p drawing, keep []page.Rect) []page.Item {
	if p.flat <= 0 || p.flat >= p.box.H || !meets(p.box, keep) {
		return l.draw(p, p.box, keep)
	}
	var best []page.Item
	lo, hi := 0, 4 // steps from the full height to the least
	for try := 0; lo < hi; try = (lo + hi) / 2 {
		box := p.box
		box.H -= (p.box.H - p.flat) * unit.Length(try) / 3
		if items := l.draw(p, box, nil); !touch(items, keep) {
			best, hi = items, try
		} else {
			lo = try + 1
		}
	}
	if best == nil {
		return l.draw(p, p.box, keep)
	}
	return best
}

// touch reports whether any drawing meets any of the boxes.
func touch(items []page.Item, keep []page.Rect) bool {
	for _, it := range items {
		if p, ok := it.(*page.Path); ok && crossesAny(p, keep) {
			return true
		}
	}
	return false
}

// meets reports whether a box meets any of a list.
func meets(r page.Rect, list []page.Rect) bool {
	for _, k := range list {
		if r.Overlaps(k) {
			return true
		}
	}
	return false
}

// draw draws a remembered ornament in a box.
func (l *layout) draw(p drawing, box page.Rect, keep []page.Rect) []page.Item {
	return l.opt.Drawings.Draw(p.o.Name, l.spec(p, box, keep))
}

func (l *layout) spec(p drawing, box page.Rect, keep []page.Rect) ornament.Spec {
	return ornament.Spec{
		Rect: box, Palette: l.pal, Seed: uint64(p.o.Seed), Density: p.o.Density,
		Dark: p.on.dark, Line: l.saver, Keep: keep, FlipX: p.flip,
		Engrave: l.look.Drawing == "engraved", Ground: p.on.ground,
	}
}

// taken lists what ornaments must stay away from: type with a little air, QR
// codes with their quiet zone, and the clear space of the net quantity.
func (l *layout) taken() []page.Rect {
	var keep []page.Rect
	for _, it := range l.items {
		switch t := it.(type) {
		case *page.Text:
			if b := inkBox(t, l.faces); b.W > 0 {
				air := min(max(t.Size/8, 700*unit.Micrometre), 2*unit.Millimetre)
				keep = append(keep, b.Grow(air, air))
			}
		case *page.Path:
			if !t.Bleed && t.Block != "frame" {
				keep = append(keep, t.Bounds().Grow(600*unit.Micrometre, 600*unit.Micrometre))
			}
		case *page.Picture:
			keep = append(keep, t.At.Grow(unit.Millimetre, unit.Millimetre))
		}
	}
	return append(keep, l.kept...)
}
