package compose

import (
	"jarmark/internal/label"
	"jarmark/internal/page"
	"jarmark/internal/unit"
)

// front sets a front label: the principal display panel, and below the name
// every other statement when it stands alone on the jar.
func (s *setter) front() {
	area := s.band(page.Rect{W: s.cell.W, H: s.cell.H}, s.look.Band)
	if s.opt.Alone {
		s.alone(area)
	} else {
		s.panel(area, s.colours, s.panelBlocks())
	}
	s.decorate()
}

// panelBlocks are the further blocks that must stand on the display panel, or
// in the same field of view as the name.
func (s *setter) panelBlocks() []label.Block {
	var out []label.Block
	for _, b := range s.blocks {
		switch b.Kind {
		case label.Identity, label.Net, label.Brand, label.Caption:
			continue
		}
		if len(b.Runs) > 0 && (b.Zone == label.Panel || b.Zone == label.Bottom || with(b, label.Identity)) {
			out = append(out, b)
		}
	}
	return out
}

func with(b label.Block, k label.Kind) bool {
	for _, w := range b.With {
		if w == k {
			return true
		}
	}
	return false
}

// alone sets name, facts and net quantity on one label: the name above, as
// large as the facts allow.
func (s *setter) alone(area page.Rect) bool {
	on := s.colours
	short := min(area.W, area.H)
	in := s.inner(area, on, s.cell.Shape == page.Ellipse)
	in = s.reserve(in, on, short, "left", "right")
	above, ok := s.net(in, area, on, short)
	if !ok {
		return false
	}
	ps := s.facts(on)
	var got, need unit.Length
	for _, part := range []float64{0.5, 0.43, 0.36, 0.3, 0.24} {
		head := above
		head.H = share(in.H, part)
		gap := share(short, 0.04)
		body := above.inset(0, head.H+gap, 0, 0)
		f, place, ok := s.factsBesideCode(ps, body, in, on)
		if !ok {
			got, need = body.H, f.bottom-body.Y
			continue
		}
		mark := len(s.frame.Items)
		lines := len(s.found)
		lacking := len(s.over)
		if !s.name(head, on, short, nil) {
			s.frame.Items, s.found, s.over = s.frame.Items[:mark], s.found[:lines], s.over[:lacking]
			continue
		}
		s.put(f.items...)
		if place != nil {
			s.put(place.caption...)
			s.putCode(place.plan, place.box, on)
		}
		return true
	}
	s.overflow("name and facts together", max(need, got+100*unit.Micrometre), got, false)
	return false
}

// placed is a code with its spot.
type placed struct {
	spot
	plan codePlan
}

// factsBesideCode flows facts over body with the code in the lower right
// corner of the whole region, beside facts and net quantity.
func (s *setter) factsBesideCode(ps []passage, body, whole region, on roles) (flowed, *placed, bool) {
	plan, coded := s.planCode(whole.H / 2)
	if !coded {
		f := flow(ps, body, left)
		return f, nil, f.fits
	}
	room := whole.Y + whole.H - body.Y
	for _, side := range []unit.Length{min(share(whole.W, 0.24), room), (plan.least + min(share(whole.W, 0.24), room)) / 2, plan.least} {
		if side < plan.least || side > room {
			continue
		}
		quiet := plan.blank(side)
		box := page.Rect{X: whole.X + whole.W - side, Y: whole.Y + whole.H - side, W: side, H: side}
		sp := spot{box: box, hole: grow(box, quiet+quiet/3, quiet)}
		if s.hits(sp.hole) {
			continue
		}
		with := body
		with.holes = append(with.holes, sp.hole)
		if f := flow(ps, with, left); f.fits {
			return f, &placed{sp, plan}, true
		}
	}
	f := flow(ps, body, left)
	return f, nil, false
}

// hits reports whether a box meets the type set so far.
func (s *setter) hits(r page.Rect) bool {
	for _, it := range s.frame.Items {
		if t, ok := it.(*page.Text); ok && overlaps(inkBox(t, s.faces), r) {
			return true
		}
	}
	for _, h := range s.holes {
		if overlaps(h, r) {
			return true
		}
	}
	return false
}
