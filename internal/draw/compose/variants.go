package compose

import (
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
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
}

// usualPart is the share of a wrap-around the display panel takes: the 40 % of
// the circumference that is presented at a glance (21 CFR 101.1(b)), and a
// little of the seam.
const usualPart = 0.41

// goodTitle is the size from which a name is read at arm's length: common
// practice, no source.
var goodTitle = unit.Points(16)

// How near, in percent, a name must come to its size: as a rule, and where the
// ornaments would have to go otherwise.
const (
	nearly = 98
	fairly = 92
)

// most is how many variants are tried before the piece does not fit.
const most = 4

// variants lists what to try, best first. On a label with a display panel the
// fullest look that leaves the name its size comes first: the name is at least
// as large as the net quantity and well legible. When no look does, the one
// with the largest name.
func (b brief) variants(look design.Look) []variant {
	looks := look.Leaner()
	if b.piece != label.Wrap && b.piece != label.Front {
		var out []variant
		for _, l := range looks {
			out = append(out, variant{look: l, part: usualPart})
		}
		return out
	}
	ranked := b.rank(looks)
	out := ranked[:min(most, len(ranked))]
	bare := variant{look: looks[len(looks)-1], part: usualPart}
	named := bare
	named.look.Brand = look.Brand
	out = append(out, named, bare)
	if b.piece == label.Wrap {
		for _, part := range []float64{0.36, 0.47, 0.32} {
			bare.part = part
			named := bare
			named.look.Brand = look.Brand
			out = append(out, named, bare)
		}
	}
	return out
}

// tried is a variant and the size its name gets.
type tried struct {
	variant
	ok    bool
	title unit.Length
	of    int // percent of the size it should have, 100 when the design wants no more
}

// orFuller is a variant, or one with ornaments that comes fairly near it.
func (w variant) orFuller(all []tried) variant {
	adorned := func(l design.Look) bool { return len(l.Ornaments) > 0 || l.Band.Edge != "none" }
	if adorned(w.look) {
		return w
	}
	for _, t := range all {
		if t.of >= fairly && adorned(t.look) {
			return t.variant
		}
	}
	return w
}

// rank measures the display panel in every look and puts the best first.
func (b brief) rank(looks []design.Look) []variant {
	parts := []float64{usualPart, 0.47}
	if b.piece == label.Front {
		parts = []float64{1}
	}
	var all []tried
	for _, part := range parts {
		options := b.options(looks, part)
		for i, w := range options {
			m := b.layout(w).measure()
			if m.ok && m.of >= nearly { // or leaner, where the facts beside it want room
				return slices.Concat([]variant{w.orFuller(all)}, sorted(all), options[i+1:])
			}
			if m.ok {
				all = append(all, m)
			}
		}
	}
	return sorted(all)
}

// lowPanel is how much wider than high a display panel is, in tenths, on which
// name and net quantity stand side by side.
const lowPanel = 22

// options are the looks, on a low panel first with the net quantity aside, and at last the leanest ones with the whole name on
// one line, for a low label.
func (b brief) options(looks []design.Look, part float64) (out []variant) {
	if wide := share(b.cell.W, part); b.cell.Shape == page.Rectangle && !b.opt.Alone && b.has(label.Net) && wide*10 > b.cell.H*lowPanel {
		for _, l := range looks {
			out = append(out, variant{look: l, part: part, aside: true})
		}
	}
	for _, l := range looks {
		out = append(out, variant{look: l, part: part})
	}
	for _, l := range looks[max(0, len(looks)-2):] {
		out = append(out, variant{look: l, part: part, oneLine: true})
	}
	return out
}

// sorted orders variants by the size of the name, in steps of a tenth; of equal
// ones the fuller look stays first.
func sorted(all []tried) []variant {
	step := func(t tried) int { return int(t.title * 10 / goodTitle) }
	slices.SortStableFunc(all, func(a, b tried) int { return step(b) - step(a) })
	var out []variant
	for _, t := range all {
		out = append(out, t.variant)
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
	t.title = size
	switch {
	case l.squashed:
	case atBest:
		t.of = 100
	default:
		t.of = int(size * 100 / max(goodTitle, name.largest))
	}
	return t
}
