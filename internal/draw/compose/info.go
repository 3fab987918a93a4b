package compose

import (
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// factGroups is the order of the facts on an information panel; each inner
// list shares a paragraph. Ingredients, allergens and the maker's name and
// address come first and together, with nothing between them (21 CFR
// 101.2(d)).
var factGroups = [][][]label.Kind{
	{{label.Ingredients}, {label.Allergens}, {label.Maker}, {label.Statement}},
	{{label.Fruit, label.Sugar}, {label.Storage}, {label.Caution}, {label.Advisory}},
	{{label.Date, label.Lot, label.Serial}},
	{{label.Serve}},
}

// dense is how far the facts close up to fit a low panel.
type dense int

const (
	apart  dense = iota // a paragraph for each statement
	runIn               // a paragraph for each group
	noIdea              // and no serving idea
	solid               // one paragraph for all
)

// facts makes the passages of an information panel; skip lists the ids of
// blocks set elsewhere on the piece.
func (s *setter) facts(on roles, d dense, skip ...string) []passage {
	var out []passage
	groups := factGroups
	if d == solid {
		groups = [][][]label.Kind{slices.Concat(factGroups...)}
	}
	for _, group := range groups {
		first := true
		if d >= runIn {
			group = [][]label.Kind{slices.Concat(group...)}
		}
		for _, kinds := range group {
			var open []label.Kind
			for _, k := range kinds {
				if d < noIdea || k != label.Serve {
					open = append(open, k)
				}
			}
			for _, p := range s.passages(without(s.all(open...), skip), len(kinds) > 1, on) {
				p.gap = 0.2
				if first && len(out) > 0 {
					p.gap = 0.62
				}
				first = false
				out = append(out, p)
			}
		}
	}
	return out
}

// without leaves out the blocks with these ids.
func without(blocks []label.Block, ids []string) []label.Block {
	return slices.DeleteFunc(blocks, func(b label.Block) bool { return slices.Contains(ids, b.ID) })
}

// passages makes one passage per block, or one of all of them when joined.
func (s *setter) passages(blocks []label.Block, joined bool, on roles) []passage {
	var out []passage
	v := s.voice(s.d.Voices.Text, on)
	size := s.d.Voices.Text.Size
	for _, b := range blocks {
		least := max(leastSize(v, b, b.Text()), unit.Points(size.Least), legible)
		best := max(least, min(unit.Points(size.Best), s.short()/9))
		part := typeset.Say(b.ID, emphasised(b), b.Exact)
		if joined {
			part.Runs = bound(part.Runs)
		}
		if k := len(out); joined && k > 0 {
			last := &out[k-1]
			last.least, last.best = max(last.least, least), max(last.best, best)
			last.parts = append(last.parts, part)
			continue
		}
		out = append(out, passage{parts: []typeset.Part{part}, least: least, best: best, name: string(b.Kind)})
	}
	for i := range out {
		out[i].para = typeset.New(v, out[i].parts...)
	}
	return out
}

// infoPanel sets the information panel in area: facts, and the QR code beside
// them. Facts that are too much for a paragraph each run on.
func (s *setter) infoPanel(area page.Rect, on roles, skip ...string) bool {
	m := s.factMargin(area)
	in := s.shaped(area.Grow(-m, -m))
	for _, d := range []dense{apart, runIn, noIdea, solid} {
		ps := s.facts(on, d, skip...)
		if d == solid {
			return s.infoAt(in, ps, on)
		}
		if s.quietly(func() bool { return s.infoAt(in, ps, on) }) {
			return true
		}
	}
	return false
}

func (s *setter) infoAt(in region, ps []passage, on roles) bool {
	plan, coded := s.planCode(min(in.W*2/5, in.H))
	if !coded {
		return s.put1(flow(ps, in, typeset.Left), in, "the facts", true)
	}
	spot, ok := s.codeSpot(plan, in, ps, on)
	if !ok {
		return false
	}
	in.holes = append(in.holes, spot.hole)
	f := flow(ps, in, typeset.Left)
	if f.fits && in.oval.W == 0 { // stand in the middle, code and all
		low := max(f.bottom, spot.hole.Y+spot.hole.H-plan.blank(spot.box.W))
		down := share(max(0, in.Y+in.H-low), 0.46)
		shift(f.items, 0, down)
		shift(spot.caption, 0, down)
		spot.box.Y += down
	}
	if !s.put1(f, in, "the facts", false) {
		return false
	}
	s.put(spot.caption...)
	s.putCode(plan, spot.box, on)
	return true
}

// factMargin is the blank inside the edge of an information panel.
func (s *setter) factMargin(area page.Rect) unit.Length {
	return max(share(min(area.W, area.H), s.look.Margin), s.cell.Safe)
}

// put1 places flowed text, or reports what it lacks. Text with blank left
// under it stands a little below the top when middle is asked for.
func (s *setter) put1(f flowed, in region, what string, middle bool) bool {
	if !f.fits {
		s.overflow(what, max(f.bottom-in.Y, in.H+100*unit.Micrometre), in.H, false)
		return false
	}
	if spare := in.Y + in.H - f.bottom; middle && in.oval.W == 0 && spare > 0 {
		shift(f.items, 0, share(spare, 0.42))
	}
	s.put(f.items...)
	return true
}

// shift moves text items.
func shift(items []page.Item, dx, dy unit.Length) {
	for _, it := range items {
		if t, ok := it.(*page.Text); ok {
			t.At.X, t.At.Y = t.At.X+dx, t.At.Y+dy
			t.Box.X, t.Box.Y = t.Box.X+dx, t.Box.Y+dy
		}
	}
}

// smallPassage sets a block in the small voice.
func (s *setter) smallPassage(b label.Block, on roles, v design.Voice) passage {
	vc := s.voice(v, on)
	least := max(leastSize(vc, b, b.Text()), unit.Points(v.Size.Least), legible)
	return passage{
		para:  typeset.New(vc, typeset.Say(b.ID, emphasised(b), b.Exact)),
		least: least, best: max(least, unit.Points(v.Size.Best)), gap: 0.5, name: string(b.Kind),
	}
}
