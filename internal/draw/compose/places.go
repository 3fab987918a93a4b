package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/ornament"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// pending is an ornament whose place is known; it is drawn once the type
// stands, so that it can keep clear of it.
type pending struct {
	o    design.Ornament
	box  page.Rect
	on   roles
	flat unit.Length // least height it may flatten to, to stay whole
	flip bool        // mirrored, for the partner on the other side
}

// reserve takes the room of the look's ornaments at the given places from a
// region and remembers them for drawing.
func (s *setter) reserve(in region, on roles, short unit.Length, places ...string) region {
	for _, o := range s.look.Ornaments {
		for _, p := range places {
			if o.Place == p {
				in = s.reserveOne(o, in, on, short)
			}
		}
	}
	return in
}

// flattest is how much wider than high a ring of leaves may be.
const flattest = 2.2

func (s *setter) reserveOne(o design.Ornament, in region, on roles, short unit.Length) region {
	take := share(short, o.Size)
	reach := max(take, share(short, o.Reach))
	box := in.Rect
	switch o.Place {
	case "top":
		box.H = min(reach, in.H)
		if in.oval.W > 0 {
			box = inOval(in, box)
		}
		in = in.inset(0, take+share(short, 0.015), 0, 0)
		if reach > take { // the ends hang down beside the name
			end := page.Rect{X: box.X, Y: box.Y, W: box.W * 3 / 20, H: box.H}
			in.holes = append(in.holes, end)
			end.X = box.X + box.W - end.W
			in.holes = append(in.holes, end)
		}
	case "bottom":
		box.H = min(reach, in.H)
		box.Y = in.Y + in.H - box.H
		in = in.inset(0, 0, 0, take)
	case "left":
		box.W = min(reach, in.W)
		in = in.inset(take, 0, 0, 0)
	case "right":
		box.W = min(reach, in.W)
		box.X = in.X + in.W - box.W
		in = in.inset(0, 0, take, 0)
	case "ends":
		s.later(o, page.Rect{X: in.X, Y: in.Y, W: min(reach, in.W/2), H: in.H}, on)
		box = page.Rect{X: in.X + in.W - min(reach, in.W/2), Y: in.Y, W: min(reach, in.W/2), H: in.H}
		o.Seed++
		in = in.inset(take, 0, take, 0)
	case "around":
		s.squashed = s.squashed || float64(in.W) > flattest*float64(in.H)
		if in.oval.W > 0 && in.oval != in.Rect {
			half := min(halfChord(in.oval, in.Y+in.H/5), halfChord(in.oval, in.Y+in.H*4/5))
			mid := in.oval.X + in.oval.W/2
			x0, x1 := max(in.X, mid-half), min(in.X+in.W, mid+half)
			in.X, in.W = x0, max(0, x1-x0)
			box = in.Rect
		}
		in = in.inset(take, take, take, take).inscribed()
	case "frame":
		in = in.inset(take, take, take, take)
	case "corner":
		side := min(reach, in.W/2, in.H)
		box = page.Rect{X: in.X + in.W - side, Y: in.Y, W: side, H: side}
		s.cornerBox = box.Grow(share(short, 0.03), 0)
		in.holes = append(in.holes, s.cornerBox)
	case "corners":
		s.corners(o, in.Rect, reach, on)
		return in
	case "beside":
		s.pairs = append(s.pairs, pending{o: o, on: on})
		s.sides = max(s.sides, share(min(share(short, o.Size), in.W/5), 0.8))
		return in
	}
	if s.cell.Shape == page.Ellipse && o.Place == "around" {
		box = box.Grow(-share(short, 0.02), -share(short, 0.02))
	}
	s.later(o, box, on)
	if k := len(s.ornaments); k > 0 && o.Place == "top" {
		s.ornaments[k-1].flat = take
	}
	return in
}

func (s *setter) corners(o design.Ornament, r page.Rect, side unit.Length, on roles) {
	side = min(side, r.W/2, r.H/2)
	for i, p := range []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W - side, Y: r.Y}, {X: r.X, Y: r.Y + r.H - side}, {X: r.X + r.W - side, Y: r.Y + r.H - side}} {
		one := o
		one.Seed += int64(i)
		s.later(one, page.Rect{X: p.X, Y: p.Y, W: side, H: side}, on)
	}
}

func (s *setter) later(o design.Ornament, box page.Rect, on roles) {
	if box.W > 0 && box.H > 0 {
		s.ornaments = append(s.ornaments, pending{o: o, box: box, on: on})
	}
}

// inOval narrows a box at the top of an oval to its chord there.
func inOval(in region, box page.Rect) page.Rect {
	half := halfChord(in.oval, box.Y+box.H*2/5)
	box.X, box.W = in.oval.X+in.oval.W/2-half, 2*half
	return box
}

// decorate draws the remembered ornaments behind the type, keeping clear of
// everything set so far.
func (s *setter) decorate() {
	keep := s.kept()
	var drawn []page.Item
	for _, p := range append(s.ornaments, s.besides()...) {
		near := keep
		if p.o.Place != "around" {
			near = append(near[:len(near):len(near)], s.beyond()...)
		}
		drawn = append(drawn, s.whole(p, near)...)
	}
	s.frame.Items = append(s.frame.Items, drawn...)
	s.adorned += len(drawn)
	s.ornaments = nil
}

// leastBeside is the smallest drawing worth standing beside a name.
const leastBeside = 5 * unit.Millimetre

// besides places the drawings that take the blank at both sides of the name,
// or right of it when the name stands left.
func (s *setter) besides() (out []pending) {
	for _, p := range s.pairs {
		in, name := s.body, s.nameBox
		if name.W == 0 {
			continue
		}
		air := share(s.short(), 0.04)
		top, bottom := in.Y, min(in.Y+in.H, name.Y+name.H+air/2)
		left := page.Rect{X: in.X, Y: top, W: name.X - in.X - air, H: bottom - top}
		right := page.Rect{X: name.X + name.W + air, Y: top, W: in.X + in.W - name.X - name.W - air, H: bottom - top}
		side := min(left.W, right.W, left.H)
		if s.align() != typeset.Centre {
			side = min(right.W, right.H)
		}
		side = min(side, share(s.short(), max(p.o.Size, p.o.Reach)))
		if side < leastBeside {
			continue
		}
		// Nearer the name than the edge, at half its height.
		y := max(top, min(bottom-side, name.Y+name.H/2-side/2))
		if s.align() == typeset.Centre {
			p.box = page.Rect{X: left.X + share(left.W-side, 0.6), Y: y, W: side, H: side}
			out = append(out, p)
			p.flip = true
			p.box.X = right.X + share(right.W-side, 0.4)
		} else {
			p.box = page.Rect{X: right.X + right.W - side, Y: y, W: side, H: side}
		}
		out = append(out, p)
	}
	s.pairs = nil
	return out
}

// whole draws an ornament as high as it can be without losing leaves to the
// type it must keep clear of; one that cannot be whole is drawn at its least.
func (s *setter) whole(p pending, keep []page.Rect) []page.Item {
	if p.flat <= 0 || p.flat >= p.box.H || !meets(p.box, keep) {
		return s.drawn1(p, p.box, keep)
	}
	var best []page.Item
	lo, hi := 0, 4 // steps from the full height to the least
	for try := 0; lo < hi; try = (lo + hi) / 2 {
		box := p.box
		box.H -= (p.box.H - p.flat) * unit.Length(try) / 3
		if items := s.drawn1(p, box, nil); !touch(items, keep) {
			best, hi = items, try
		} else {
			lo = try + 1
		}
	}
	if best == nil {
		return s.drawn1(p, p.box, keep)
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

// drawn1 draws a remembered ornament in a box.
func (s *setter) drawn1(p pending, box page.Rect, keep []page.Rect) []page.Item {
	return s.opt.Drawings.get(p.o.Name, s.spec(p.o, box, p.on, keep, p.flip))
}

func (s *setter) drawing(o design.Ornament, box page.Rect, on roles, keep []page.Rect) []page.Item {
	return s.opt.Drawings.get(o.Name, s.spec(o, box, on, keep, false))
}

func (s *setter) spec(o design.Ornament, box page.Rect, on roles, keep []page.Rect, flip bool) ornament.Spec {
	return ornament.Spec{
		Rect: box, Palette: s.pal, Seed: uint64(o.Seed), Density: o.Density,
		Dark: on.dark, Line: s.opt.InkSaver, Keep: keep, FlipX: flip,
	}
}

// kept lists what ornaments must stay away from: type with a little air, QR
// codes with their quiet zone, and the clear space of the net quantity.
func (s *setter) kept() []page.Rect {
	var keep []page.Rect
	for _, it := range s.frame.Items {
		switch t := it.(type) {
		case *page.Text:
			if b := inkBox(t, s.faces); b.W > 0 {
				air := min(max(t.Size/8, 700*unit.Micrometre), 2*unit.Millimetre)
				keep = append(keep, b.Grow(air, air))
			}
		case *page.Path:
			if !t.Bleed && t.Block != "frame" {
				keep = append(keep, t.Bounds().Grow(600*unit.Micrometre, 600*unit.Micrometre))
			}
		}
	}
	return append(keep, s.holes...)
}
