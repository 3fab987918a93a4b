package compose

import (
	"math"
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

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
	costBare      = 70
	costShrunk    = 22
	costSign      = 80
	costFrame     = 12
	costNarrow    = 1
	costCondensed = 3
	costPart      = 2
	costSplit     = 4
	costFlat      = 25 // an arch that lies flat, a twig over the name
	costSquash    = 30
	costLead      = 60 // a name less than leads times the net quantity
	costNear      = 25 // all but
	costWide      = 2  // a net quantity wider than the name, in the wide face
	costCramped   = 2  // facts near their least size
	costInstead   = 3  // a band at another edge than the design's
	costTiny      = 6
	costMost      = 1000 // what is tried when all else fails
	evenSize      = 71   // percent of its size at which a name equals the net quantity
)

// cramped is the scale under which facts are near their least size.
const cramped = 0.45

// costOf is what a look gives up of the design's own.
func (b brief) costOf(l, own design.Look) (c int) {
	switch drawn := l.Drawn(own); {
	case drawn == 0:
		c += costBare
	default:
		c += int(costShrunk * (1 - drawn))
	}
	if l.Flattened(own) {
		c += costFlat
	}
	if own.Brand != "none" && l.Brand == "none" && b.has(label.Brand) {
		c += costSign
	}
	if l.Band.Edge != "none" && l.Band.Edge != own.Band.Edge {
		c += costInstead
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
	return max(0, nearly-of) + 3*max(0, evenSize-of)
}

// costOfLead is what a name costs that does not lead the net quantity: more than
// a smaller drawing where a hair's breadth lacks, all at an eighth.
func costOfLead(size, net unit.Length) int {
	want := share(net, leads)
	if size >= want || want <= 0 {
		return 0
	}
	lacks := int((want - size) * 100 / want)
	return min(costLead, costNear+max(0, lacks-3)*costLead/12)
}

// costOfTiny is what a name costs that is no display type any more. A lid or a tag
// says little else, and gives up what stands beside the name for it.
func (l *layout) costOfTiny() int {
	if l.piece == label.Front || l.piece == label.Wrap {
		return costTiny
	}
	return costMost
}

// onCard is the size a name likes to have on a card or an envelope, as a share of its
// height: that of the handwriting under it (our own taste).
const onCard = 0.1

// costOnCard is what a name costs that is smaller there: the drawing shrinks first.
func (l *layout) costOnCard() int {
	want := share(l.cell.H, onCard)
	if l.piece != label.Tag || l.cell.W < l.cell.H || l.nameSize == 0 || l.nameSize >= want {
		return 0
	}
	return int(costShrunk * 2 * (want - l.nameSize) / want)
}

// rank measures the display panel in the looks and puts the best first: the
// first that gives up next to nothing, else all by what they give up.
func (b brief) rank(looks []design.Look, narrow, whole bool) (out []variant) {
	parts := []float64{usualPart, 0.47}
	if b.piece == label.Front {
		parts = []float64{1}
	} else if whole {
		parts = append(parts, 0.32, 0.28) // for facts that want more
	}
	classes := narrow && !(b.piece == label.Front && b.slims())
	var all []tried
	for i, part := range parts {
		least := map[bool]int{false: math.MaxInt, true: math.MaxInt} // with wide and with narrow facts
		for _, w := range b.options(looks, part, narrow) {
			w.cost += i * costPart
			if !whole && w.cost >= least[w.narrow] {
				continue // even with the largest name
			}
			m := b.layout(w).measure()
			if !m.ok {
				continue
			}
			m.cost += w.cost
			least[w.narrow] = min(least[w.narrow], m.cost)
			all = append(all, m)
			if w.slim && b.piece == label.Wrap { // the panel is the same with narrow facts
				m.narrow, m.slim, m.cost = true, false, m.cost+costNarrow
				least[true] = min(least[true], m.cost)
				all = append(all, m)
			}
		}
		if !whole && least[false] <= costShrunk/2 && (!classes || least[true] <= costShrunk/2) {
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

// splitPanel is the same for a panel that must bear a sentence too, which then
// stands over the net quantity, and splits are the shares the name may take.
const splitPanel = 18

var splits = []float64{0.56, 0.48}

// options are the looks in the design's faces, then in its narrow ones; each on a
// low panel first with the net quantity aside, and at last the leanest ones
// with the whole name on one line, for a low label.
func (b brief) options(looks []design.Look, part float64, narrow bool) (out []variant) {
	wide := share(b.cell.W, part)
	low := b.cell.Shape == page.Rectangle && !b.opt.Alone && b.has(label.Net) && wide*10 > b.cell.H*lowPanel
	condense := b.condenses()
	slim := b.slims()
	add := func(v variant) {
		v.part, v.cost = part, b.costOf(v.look, looks[0])
		if v.split > 0 {
			v.cost += costSplit
		}
		all := []variant{v}
		if narrow {
			if slim {
				v.slim = true
			} else {
				v.narrow = true
			}
			v.cost += costNarrow
			all = append(all, v)
		}
		if condense {
			v.condensed, v.cost = true, v.cost+costCondensed
			all = append(all, v)
		}
		out = append(out, all...)
	}
	sentence := b.cell.Shape == page.Rectangle && !b.opt.Alone && b.has(label.Net) && wide*10 > b.cell.H*splitPanel && len(b.panelBlocks()) > 0
	for _, l := range looks {
		if low {
			add(variant{look: l, aside: true})
		}
		for _, left := range splits {
			if sentence {
				add(variant{look: l, split: left})
			}
		}
		add(variant{look: l})
	}
	for _, l := range looks[max(0, len(looks)-6):] {
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
		plan, t.ok = l.aloneName(l.band(area, l.roundBand()), factSizes...)
		name = plan.name
	default:
		name, t.ok = l.panelName(l.band(area, l.roundBand()), l.colours, l.panelBlocks())
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
	if !l.aside && l.split == 0 && !l.slim && !l.narrow && l.netWide > l.wideOf(name) {
		t.cost += costWide
	}
	t.cost += costOfLead(size, name.largest)
	if l.squashed {
		t.cost += costSquash
	}
	return t
}

// slims reports whether a display panel bears nothing in the narrow faces but the
// net quantity, so that facts elsewhere may be set in others.
func (b brief) slims() bool {
	return !b.opt.Alone && len(b.panelBlocks()) == 0
}

// wideOf is the width of the name as it is to be set.
func (l *layout) wideOf(f fitted) (wide unit.Length) {
	items, _ := f.place(f.as)
	for i, r := range f.rows {
		if r.names {
			wide = max(wide, l.inkOf(items[f.from[i]:f.from[i+1]]).W)
		}
	}
	return wide
}
