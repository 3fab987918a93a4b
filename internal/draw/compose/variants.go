package compose

import (
	"math"
	"slices"
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// variant is one way a piece may look: the look as written or a leaner one, and
// for a wrap-around the share of its length that is the display panel.
type variant struct {
	look    design.Look
	part    float64
	oneLine bool // the whole name on one line
	aside   bool // the net quantity stands right of the name, not under it
	narrow  bool // facts and net quantity are set in the design's narrow faces
	cost    int  // of what the look gives up, in hundredths
}

// usualPart is the share of a wrap-around the display panel takes: the 40 % of
// the circumference that is presented at a glance (21 CFR 101.1(b)), and a
// little of the seam.
const usualPart = 0.41

// goodTitle is the size from which a name is read at arm's length: common
// practice, no source.
var goodTitle = unit.Points(16)

// displayLeast is the size under which a name is no display type any more:
// common practice, no source.
var displayLeast = unit.Points(9)

// nearly is how near, in percent, a name must come to its size.
const nearly = 98

// most is how many variants are tried before the piece does not fit.
const most = 4

// variants lists what to try, best first. On a label with a display panel the
// best gives up least of ornament, maker's sign and size of the name; after
// them, for facts that need the room, the bare ones.
func (b brief) variants(look design.Look) (out []variant) {
	looks, narrow := look.Leaner(), b.narrows()
	faces := []bool{false}
	if narrow && b.piece == label.InfoLabel { // the law binds the height of its type
		faces = append(faces, true)
	}
	if b.piece != label.Wrap && b.piece != label.Front {
		for _, narrow := range faces {
			for i, l := range looks {
				out = append(out, variant{look: l, part: usualPart, narrow: narrow, cost: i})
			}
		}
		return out
	}
	ranked := b.rank(looks, narrow)
	out = slices.Clip(ranked[:min(most, len(ranked))])
	if other := slices.DeleteFunc(slices.Clone(looks), func(l design.Look) bool { return !otherwise(l, look) }); len(other) > 0 {
		ranked = b.rank(other, narrow)
		for _, v := range ranked[:min(most/2, len(ranked))] {
			v.cost += costShrunk
			out = append(out, v)
		}
	}
	parts := []float64{usualPart, 0.36, 0.47, 0.32}
	if b.piece == label.Front {
		parts = parts[:1]
	}
	for _, part := range parts {
		bare := variant{look: looks[len(looks)-1], part: part, narrow: narrow, cost: costMost}
		named := bare
		named.look.Brand = look.Brand
		out = append(out, named, bare)
	}
	return out
}

// otherwise reports whether a look is another answer to a small label than a
// lesser one of the same: a band at the side, when the height is wanted for
// words, or drawings in a row where strewn ones find no room.
func otherwise(l, own design.Look) bool {
	if own.Band.Instead != nil {
		return l.Band.Size > 0 && l.Band.Edge != own.Band.Edge
	}
	strewn := func(o design.Ornament) bool { return o.Spot == "scatter" }
	return slices.ContainsFunc(own.Ornaments, strewn) && len(l.Ornaments) > 0 && !slices.ContainsFunc(l.Ornaments, strewn)
}

// narrows reports whether the design has narrow faces that draw all that is to
// be said.
func (b brief) narrows() bool {
	v := b.voices.Narrowed()
	if v == b.voices {
		return false
	}
	for _, name := range []page.Face{v.Net.Face, v.Text.Face, v.Text.Bold} {
		f := b.faces.Face(name)
		for _, k := range b.blocks {
			if f != nil && strings.ContainsFunc(k.Text(), func(r rune) bool { return r != typeset.NBSP && !f.Has(r) }) {
				return false
			}
		}
	}
	return true
}

// tried is a variant, the size its name gets and what that and the look cost.
type tried struct {
	variant
	ok   bool
	cost int
}

// What a display panel gives up, in hundredths of what it may: the whole
// drawing, the maker's sign, the frame, a name a hundredth smaller than it should be, or
// smaller than the net quantity. Ornament shrinks before the name does, the
// name before the maker's sign goes. Our own taste.
const (
	costBare   = 70
	costShrunk = 22
	costSign   = 36
	costFrame  = 12
	costNarrow = 1
	costPart   = 2
	costSquash = 30
	costLead   = 12 // a name less than leads times the net quantity
	costTiny   = 6
	costMost   = 1000 // what is tried when all else fails
	evenSize   = 71   // percent of its size at which a name equals the net quantity
)

// costOf is what a look gives up of the design's own.
func (b brief) costOf(l, own design.Look) (c int) {
	switch drawn := l.Drawn(own); {
	case drawn == 0:
		c += costBare
	default:
		c += int(costShrunk * (1 - drawn))
	}
	if own.Brand != "none" && l.Brand == "none" && b.has(label.Brand) {
		c += costSign
	}
	switch {
	case l.Frame == own.Frame:
	case l.Frame == "none":
		c += costFrame
	default:
		c += costFrame / 2
	}
	return c
}

// costOfName is what a name of a percentage of its size costs.
func costOfName(of int) int {
	return max(0, nearly-of) + max(0, evenSize-of)
}

// rank measures the display panel in the looks and puts the best first: the
// first that gives up next to nothing, else all by what they give up.
func (b brief) rank(looks []design.Look, narrow bool) (out []variant) {
	parts := []float64{usualPart, 0.47}
	if b.piece == label.Front {
		parts = []float64{1}
	}
	var all []tried
	for i, part := range parts {
		least := math.MaxInt
		for _, w := range b.options(looks, part, narrow) {
			w.cost += i * costPart
			if w.cost >= least {
				continue // even with the largest name
			}
			m := b.layout(w).measure()
			if !m.ok {
				continue
			}
			m.cost += w.cost
			least = min(least, m.cost)
			all = append(all, m)
		}
		if least <= costShrunk/2 {
			break
		}
	}
	slices.SortStableFunc(all, func(a, b tried) int { return a.cost - b.cost })
	for _, t := range all {
		t.variant.cost = t.cost
		out = append(out, t.variant)
	}
	return out
}

// lowPanel is how much wider than high a display panel is, in tenths, on which
// name and net quantity stand side by side.
const lowPanel = 22

// options are the looks in the design's faces, then in its narrow ones; each on a
// low panel first with the net quantity aside, and at last the leanest ones
// with the whole name on one line, for a low label.
func (b brief) options(looks []design.Look, part float64, narrow bool) (out []variant) {
	wide := share(b.cell.W, part)
	low := b.cell.Shape == page.Rectangle && !b.opt.Alone && b.has(label.Net) && wide*10 > b.cell.H*lowPanel
	add := func(v variant) {
		v.part, v.cost = part, b.costOf(v.look, looks[0])
		if out = append(out, v); narrow {
			v.narrow, v.cost = true, v.cost+costNarrow
			out = append(out, v)
		}
	}
	for _, l := range looks {
		if low {
			add(variant{look: l, aside: true})
		}
		add(variant{look: l})
	}
	for _, l := range looks[max(0, len(looks)-5):] {
		add(variant{look: l, oneLine: true})
	}
	return out
}

// measure decides on the display panel alone and draws no ornament.
func (l *layout) measure() tried {
	area := page.Rect{W: l.cell.W, H: l.cell.H}
	var name fitted
	t := tried{variant: l.variant}
	switch {
	case l.piece == label.Wrap:
		name, t.ok = l.panelName(l.displayPanel(), l.colours, l.panelBlocks())
	case l.opt.Alone:
		var plan sharedLabel
		plan, t.ok = l.aloneName(l.band(area, l.look.Band), factSizes...)
		name = plan.name
	default:
		name, t.ok = l.panelName(l.band(area, l.look.Band), l.colours, l.panelBlocks())
	}
	if !t.ok {
		return t
	}
	size, atBest := name.title()
	of := int(size * 100 / max(goodTitle, share(name.largest, leads)))
	if atBest {
		of = max(of, 100)
	}
	t.cost = costOfName(of)
	if size < share(name.largest, leads) {
		t.cost += costLead
	}
	if l.squashed {
		t.cost += costSquash
	}
	return t
}
