package compose

import (
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
	"slices"
)

// front sets a front label: the principal display panel, and below the name
// every other statement when it stands alone on the jar.
func (l *layout) front() {
	area := l.band(page.Rect{W: l.cell.W, H: l.cell.H}, l.roundBand())
	if l.opt.Alone {
		l.alone(area)
	} else {
		l.panel(area, l.colours, l.panelBlocks())
	}
}

// roundBand is the look's band; on an oval one at a side, of which the edge would
// leave a sliver, runs all around.
func (l *layout) roundBand() design.Band {
	b := l.look.Band
	if l.cell.Shape == page.Ellipse && (b.Edge == "left" || b.Edge == "right") {
		b.Edge, b.Size = "around", min(b.Size, ringShare)
	}
	return b
}

// ringShare is the most a ring around an oval takes of its shorter side.
const ringShare = 0.045

// panelBlocks are the further blocks that must stand on the display panel, or
// in the same field of view as the name.
func (l brief) panelBlocks() []label.Block {
	var out []label.Block
	for _, b := range l.blocks {
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
	return slices.Contains(b.With, k)
}

// sharedLabel is a label of name and facts decided on, not yet drawn.
type sharedLabel struct {
	name  fitted
	facts []passage
	flow  flowed
	code  *placed
}

// alone sets name, facts and net quantity on one label.
func (l *layout) alone(area page.Rect) bool {
	plan, ok := l.aloneName(area, factSizes...)
	if !ok {
		return false
	}
	l.setName(plan.name)
	l.put(flowAt(plan.facts, plan.flow.region, typeset.Left, plan.flow.scale, 1, true).items...)
	if plan.code != nil {
		l.putCode(plan.code.plan, plan.code.box, l.colours)
	}
	return true
}

// factSizes are the steps in which facts are tried beside a name: a paragraph
// each, from large to small, then run on, from large to small.
var factSizes = []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17}

// aloneName sets the net quantity and decides on the rest: the name above, as
// large as the facts allow at one of the sizes.
func (l *layout) aloneName(area page.Rect, sizes ...int) (best sharedLabel, ok bool) {
	on := l.colours
	short := min(area.W, area.H)
	in := l.inner(area, on)
	in = l.reserve(in, on, short, "frame", "left", "right", "corner")
	above, net, ok := l.net(in, area, on, short)
	if !ok {
		return best, false
	}
	above = l.reserve(above, on, short, "top", "beside")
	idea, _ := l.block(label.Serve)
	most, found := unit.Length(0), false
	want := max(goodTitle, net)
	var ps []passage
	for i, step := range sizes {
		if i == 0 || step/9 != sizes[i-1]/9 {
			ps = l.facts(on, dense(step/9), idea.ID)
		}
		f, at, ok := l.factsAbove(ps, above, in, on, 1-float64(step%9)/8)
		if !ok {
			continue
		}
		head := above
		head.H = max(0, f.top-above.Y-share(short, 0.035))
		if at != nil {
			head = head.less(at.hole)
		}
		name, ok := l.nameStack(head, on, short, net, nil).choose()
		if !ok {
			continue
		}
		size, _ := name.title()
		if !found || size > most*11/10 {
			best, most, found = sharedLabel{name, ps, f, at}, size, true
		}
		if size*100 >= want*nearly {
			break
		}
	}
	if !found {
		whole := region{Rect: page.Rect{W: l.cell.W, H: l.cell.H}}
		if l.cell.Shape == page.Ellipse {
			whole.oval = whole.Rect
		}
		l.lacks("name and facts together", whole, func(r region) bool {
			n := l.enlarged(whole, r).layout(l.variant)
			_, ok := n.aloneName(n.band(page.Rect{W: n.cell.W, H: n.cell.H}, n.roundBand()), 8, 17)
			return ok
		})
	}
	return best, found
}

// placed is a code and where it stands.
type placed struct {
	codeBox
	plan codePlan
}

// factsAbove flows facts at a scale so that they end at the foot of body, with
// the code in the lower right corner of the whole region.
func (l *layout) factsAbove(ps []passage, body, whole region, on roles, t float64) (flowed, *placed, bool) {
	plan, coded := l.planCode(whole.H / 2)
	var at *placed
	if coded {
		sides := l.codeSides(plan)
		side := sides[min(len(sides)-1, int((1-t)*float64(len(sides))))]
		quiet := plan.blank(side)
		edge := max(0, quiet-l.blankFoot(whole))
		box := page.Rect{X: whole.X + whole.W - side - edge, Y: whole.Y + whole.H - side - edge, W: side, H: side}
		at = &placed{codeBox{box: box, hole: box.Grow(quiet+quiet/3, quiet)}, plan}
		if l.hits(at.hole) || !l.codeFits(box, quiet) { // beside the net quantity, or above it
			up := body.Y + body.H - side - quiet - box.Y
			at.box.Y, at.hole.Y = at.box.Y+up, at.hole.Y+up
		}
		if l.hits(at.hole) || !l.codeFits(at.box, quiet) || at.box.Y < body.Y {
			return flowed{top: body.Y, bottom: body.Y + body.H}, nil, false
		}
		body = body.less(at.hole)
	}
	measured(ps)
	f := flowAt(ps, body, typeset.Left, t, 1, false)
	for range 14 { // lines beside the code are shorter, so moving down may add some
		top := body
		d := max(0, body.Y+body.H-f.bottom)
		if d == 0 {
			break
		}
		top.Y, top.H = top.Y+d, top.H-d
		g := flowAt(ps, top, typeset.Left, t, 1, false)
		if !g.fits {
			body.H -= share(body.H, 0.006)
			continue
		}
		g.top, g.region = top.Y, top
		return g, at, true
	}
	return f, at, false
}

// blankFoot is the blank between a region and whatever is printed or cut at
// its lower right corner.
func (l *layout) blankFoot(in region) unit.Length {
	blank := min(l.open.X+l.open.W-in.X-in.W, l.open.Y+l.open.H-in.Y-in.H)
	if line := l.innerLine(min(l.open.W, l.open.H)); line > 0 {
		blank -= line + hairline
	}
	return max(0, blank)
}

// hits reports whether a box meets the type set so far.
func (l *layout) hits(r page.Rect) bool {
	for _, it := range l.items {
		if t, ok := it.(*page.Text); ok && inkBox(t, l.faces).Overlaps(r) {
			return true
		}
	}
	return slices.ContainsFunc(l.clear, func(h page.Rect) bool { return h.Overlaps(r) })
}
