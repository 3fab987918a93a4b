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
	{{label.Words}},
}

// dense is how far the facts close up to fit a low panel.
type dense int

const (
	apart  dense = iota // a paragraph for each statement
	runIn               // a paragraph for each group
	noIdea              // and no serving idea
	solid               // one paragraph for all of a size, sentences of a larger one behind it
	single              // one paragraph for all
)

var densities = []dense{apart, runIn, noIdea, solid, single}

// facts makes the passages of an information panel; skip lists the ids of
// blocks set elsewhere on the piece.
func (l *layout) facts(on roles, d dense, skip ...string) []passage {
	var out []passage
	groups := factGroups
	if d >= solid {
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
			blocks := without(l.all(open...), skip)
			if d == solid {
				blocks = l.sentencesLast(blocks, on)
			}
			for _, p := range l.passages(blocks, len(kinds) > 1, d == single, on) {
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

// leastFact is the least size of a fact: the law's, the design's and what can be read.
func (l *layout) leastFact(v typeset.Voice, b label.Block) unit.Length {
	return max(leastSize(v, b, b.Text()), unit.Points(l.voices.Text.Size.Least), legible)
}

// sentencesLast puts prescribed sentences that must be larger than the first fact
// behind the others.
func (l *layout) sentencesLast(blocks []label.Block, on roles) []label.Block {
	v := l.voice(l.voices.Text, on)
	larger := func(b label.Block) int {
		if b.Kind == label.Statement && !alikeSizes(l.leastFact(v, blocks[0]), l.leastFact(v, b)) {
			return 1
		}
		return 0
	}
	out := slices.Clone(blocks)
	slices.SortStableFunc(out, func(a, b label.Block) int { return larger(a) - larger(b) })
	return out
}

// passages makes one passage per block, or when joined one of all of a size, or of
// all of whatever size.
func (l *layout) passages(blocks []label.Block, joined, whatever bool, on roles) []passage {
	var out []passage
	v := l.voice(l.voices.Text, on)
	size := l.voices.Text.Size
	for _, b := range blocks {
		least := l.leastFact(v, b)
		best := max(least, min(unit.Points(size.Best), l.short()/9))
		part := typeset.Say(b.ID, emphasised(b), b.Exact)
		if joined {
			part.Runs = bound(part.Runs)
		}
		if k := len(out); joined && k > 0 && (whatever || alikeSizes(out[k-1].least, least)) {
			last := &out[k-1]
			last.least, last.best = max(last.least, least), max(last.best, best)
			last.parts = append(last.parts, part)
			continue
		}
		out = append(out, passage{parts: []typeset.Part{part}, least: least, best: best, name: string(b.Kind), closes: l.closer})
	}
	for i := range out {
		out[i].para = typeset.New(v, out[i].parts...)
	}
	return out
}

// alikeSizes reports whether text of two least sizes may share a paragraph, which is
// set in the larger: a sentence of a height of its own would make all beside it large.
func alikeSizes(a, b unit.Length) bool { return max(a, b)*100 <= min(a, b)*115 }

// infoPanel sets the information panel in area: facts, and the QR code beside
// them. Facts that are too much for a paragraph each run on.
func (l *layout) infoPanel(area page.Rect, on roles, skip ...string) bool {
	m := l.factMargin(area)
	in := l.shaped(area.Grow(-m, -m))
	if in.oval.W > 0 { // no line stands at the very top of an oval
		in = in.inset(0, in.H/8, 0, in.H/8)
	}
	if l.titled {
		var headed bool
		in, headed = l.heading(in, on)
		l.headless = !headed
	}
	var least [][]passage
	for _, d := range densities {
		ps := l.facts(on, d, skip...)
		if l.infoAt(in, ps, on) {
			l.closed = d
			return true
		}
		measured(ps)
		least = append(least, ps)
	}
	what := "the facts"
	if plan, coded := l.planCode(min(in.W*2/5, in.H)); coded {
		what += " beside the QR code"
		if _, ok := l.codeAt(plan, in, plan.least, false, on); !ok {
			what = "the QR code"
		}
	}
	l.lacks(what, in, func(r region) bool {
		return slices.ContainsFunc(least, func(ps []passage) bool { return l.enlarged(in, r).infoFits(r, ps, on) })
	})
	return false
}

// infoFits reports whether infoAt would find room, at the least sizes.
func (l *layout) infoFits(in region, ps []passage, on roles) bool {
	plan, coded := l.planCode(min(in.W*2/5, in.H))
	if !coded {
		return flowAt(ps, in, typeset.Left, leastScale(ps), 1, false).fits
	}
	for _, column := range []bool{true, false} {
		code, ok := l.codeAt(plan, in, plan.least, column, on)
		with := in.less(code.hole)
		if ok && flowAt(ps, with, typeset.Left, leastScale(ps), 1, false).fits {
			return true
		}
	}
	return false
}

// infoAt sets facts and code in a region; false when they do not fit.
func (l *layout) infoAt(in region, ps []passage, on roles) bool {
	plan, coded := l.planCode(min(in.W*2/5, in.H))
	if !coded {
		f := flow(ps, in, typeset.Left)
		l.factScale = f.scale
		return f.fits && l.putFlow(f, in, "", true)
	}
	code, ok := l.codeSpot(plan, in, ps, on)
	if !ok {
		return false
	}
	in = in.less(code.hole)
	f := flow(ps, in, typeset.Left)
	if !f.fits {
		return false
	}
	l.codeStep = slices.Index(l.codeSides(plan), code.box.W)
	if in.oval.W == 0 { // stand in the middle, code and all
		low := max(f.bottom, code.hole.Y+code.hole.H-plan.blank(code.box.W))
		down := share(max(0, in.Y+in.H-low), 0.46)
		shift(f.items, 0, down)
		shift(code.caption, 0, down)
		code.box.Y += down
	}
	l.factScale = f.scale
	l.put(f.items...)
	l.put(code.caption...)
	l.putCode(plan, code.box, on)
	return true
}

// factMargin is the blank inside the edge of an information panel.
func (l *layout) factMargin(area page.Rect) unit.Length {
	short := min(area.W, area.H)
	m := max(share(short, l.look.Margin), l.cell.Safe)
	if line := l.innerLine(short); line > 0 && l.piece == label.InfoLabel {
		m = max(m, line+share(short, 0.035))
	}
	return m
}

// putFlow places flowed text, or reports what it lacks. Text with blank left
// under it stands a little below the top when middle is asked for.
func (l *layout) putFlow(f flowed, in region, what string, middle bool) bool {
	if !f.fits {
		l.lacks(what, in, f.again)
		return false
	}
	if spare := in.Y + in.H - f.bottom; middle && in.oval.W == 0 && spare > 0 {
		shift(f.items, 0, share(spare, 0.42))
	}
	l.put(f.items...)
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
func (l *layout) smallPassage(b label.Block, on roles, v design.Voice) passage {
	vc := l.voice(v, on)
	least := max(leastSize(vc, b, b.Text()), unit.Points(v.Size.Least), legible)
	return passage{
		para:  l.say(vc, b.ID, emphasised(b), b.Exact),
		least: least, best: max(least, unit.Points(v.Size.Best)), gap: 0.5, name: string(b.Kind),
	}
}
