package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
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
	in := s.inner(area, on)
	in = s.reserve(in, on, short, "frame", "left", "right", "corner")
	above, ok := s.net(in, area, on, short)
	if !ok {
		return false
	}
	above = s.reserve(above, on, short, "top", "beside")
	idea, _ := s.block(label.Serve)
	need, best, least := unit.Length(0), unit.Length(0), -1
	type half struct {
		ps   []passage
		f    flowed
		at   *placed
		head region
	}
	var chosen half
	want := max(goodTitle, s.netSize)
	var ps []passage
	for step := range 18 { // paragraphs from large to small, then run on
		if step%9 == 0 {
			ps = s.facts(on, dense(step/9), idea.ID)
		}
		f, at, ok := s.factsAbove(ps, above, in, on, 1-float64(step%9)/8)
		need = f.bottom - f.top
		if !ok {
			continue
		}
		head := above
		head.H = max(0, f.top-above.Y-share(short, 0.035))
		if at != nil {
			head.holes = append(head.holes[:len(head.holes):len(head.holes)], at.hole)
		}
		if !s.nameFits(head, on, short) {
			continue
		}
		if s.title1 > best*11/10 {
			chosen, best, least = half{ps, f, at, head}, s.title1, step
		}
		if s.title1*100 >= want*nearly {
			break
		}
	}
	if least < 0 {
		s.overflow("name and facts together", max(need+share(short, 0.15), above.H+100*unit.Micrometre), above.H, false)
		return false
	}
	s.name(chosen.head, on, short, nil)
	if s.measuring {
		return true
	}
	f := chosen.f
	s.put(flowAt(chosen.ps, f.region, typeset.Left, f.scale, 1, true).items...)
	if chosen.at != nil {
		s.putCode(chosen.at.plan, chosen.at.box, on)
	}
	return true
}

// nameFits measures the name in a region without setting it.
func (s *setter) nameFits(in region, on roles, short unit.Length) bool {
	was := s.measuring
	s.measuring = true
	ok := s.quietly(func() bool { return s.name(in, on, short, nil) })
	s.measuring = was
	return ok
}

// quietly runs a step and undoes it, findings included, when it fails.
func (s *setter) quietly(step func() bool) bool {
	items, found, over, holes := len(s.frame.Items), len(s.found), len(s.over), len(s.holes)
	if step() {
		return true
	}
	s.frame.Items, s.found, s.over, s.holes = s.frame.Items[:items], s.found[:found], s.over[:over], s.holes[:holes]
	return false
}

// placed is a code with its spot.
type placed struct {
	spot
	plan codePlan
}

// factsAbove flows facts at a scale so that they end at the foot of body, with
// the code in the lower right corner of the whole region.
func (s *setter) factsAbove(ps []passage, body, whole region, on roles, t float64) (flowed, *placed, bool) {
	plan, coded := s.planCode(whole.H / 2)
	var at *placed
	if coded {
		most := max(plan.least, min(share(whole.W, 0.22), share(whole.H, 0.42)))
		side := plan.least + share(most-plan.least, t)
		quiet := plan.blank(side)
		edge := max(0, quiet-s.blankFoot(whole))
		box := page.Rect{X: whole.X + whole.W - side - edge, Y: whole.Y + whole.H - side - edge, W: side, H: side}
		at = &placed{spot{box: box, hole: box.Grow(quiet+quiet/3, quiet)}, plan}
		if s.hits(at.hole) || !s.codeFits(box, quiet) { // beside the net quantity, or above it
			up := body.Y + body.H - side - quiet - box.Y
			at.box.Y, at.hole.Y = at.box.Y+up, at.hole.Y+up
		}
		if s.hits(at.hole) || !s.codeFits(at.box, quiet) || at.box.Y < body.Y {
			return flowed{top: body.Y, bottom: body.Y + body.H}, nil, false
		}
		body.holes = append(body.holes, at.hole)
	}
	measured(ps)
	f := flowAt(ps, body, typeset.Left, t, 1, false)
	for range 4 { // lines beside the code are shorter, so moving down may add some
		top := body
		d := max(0, body.Y+body.H-f.bottom)
		if d == 0 {
			break
		}
		top.Y, top.H = top.Y+d, top.H-d
		g := flowAt(ps, top, typeset.Left, t, 1, false)
		if !g.fits {
			body.H -= share(body.H, 0.02)
			continue
		}
		g.top, g.region = top.Y, top
		return g, at, true
	}
	return f, at, false
}

// blankFoot is the blank between a region and whatever is printed or cut at
// its lower right corner.
func (s *setter) blankFoot(in region) unit.Length {
	blank := min(s.open.X+s.open.W-in.X-in.W, s.open.Y+s.open.H-in.Y-in.H)
	if line := s.innerLine(min(s.open.W, s.open.H)); line > 0 {
		blank -= line + hairline
	}
	return max(0, blank)
}

// hits reports whether a box meets the type set so far.
func (s *setter) hits(r page.Rect) bool {
	for _, it := range s.frame.Items {
		if t, ok := it.(*page.Text); ok && inkBox(t, s.faces).Overlaps(r) {
			return true
		}
	}
	for _, h := range s.clear {
		if h.Overlaps(r) {
			return true
		}
	}
	return false
}
