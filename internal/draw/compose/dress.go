package compose

import (
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// dress is one way a piece may look: the look as written or a leaner one, and
// for a wrap-around the share of its length that is the display panel.
type dress struct {
	look design.Look
	part float64
	line bool // the whole name on one line
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

// most is how many dresses are tried before the piece does not fit.
const most = 4

// wardrobe lists what to try, best first. On a label with a display panel the
// fullest look that leaves the name its size comes first: the name is at least
// as large as the net quantity and well legible. When no look does, the one
// with the largest name.
func (s *setter) wardrobe() []dress {
	looks := s.look.Leaner()
	if s.piece != label.Wrap && s.piece != label.Front {
		var out []dress
		for _, l := range looks {
			out = append(out, dress{l, usualPart, false})
		}
		return out
	}
	ranked := s.rank(looks)
	out := ranked[:min(most, len(ranked))]
	bare := dress{looks[len(looks)-1], usualPart, false}
	out = append(out, bare)
	if s.piece == label.Wrap {
		for _, part := range []float64{0.36, 0.47, 0.32} {
			bare.part = part
			out = append(out, bare)
		}
	}
	return out
}

// tried is a dress and the size its name gets.
type tried struct {
	dress
	ok    bool
	title unit.Length
	of    int // percent of the size it should have, 100 when the design wants no more
}

// orFuller is a dress, or one with ornaments that comes fairly near it.
func (w dress) orFuller(all []tried) dress {
	adorned := func(l design.Look) bool { return len(l.Ornaments) > 0 || l.Band.Edge != "none" }
	if adorned(w.look) {
		return w
	}
	for _, t := range all {
		if t.of >= fairly && adorned(t.look) {
			return t.dress
		}
	}
	return w
}

// rank measures the display panel in every look and puts the best first.
func (s *setter) rank(looks []design.Look) []dress {
	parts := []float64{usualPart}
	if s.piece == label.Wrap {
		parts = append(parts, 0.47)
	}
	var all []tried
	for _, part := range parts {
		for _, w := range options(looks, part) {
			m := s.in(w).measure()
			m.dress = w
			if m.ok && m.of >= nearly {
				return append([]dress{w.orFuller(all)}, sorted(all)...)
			}
			if m.ok {
				all = append(all, m)
			}
		}
	}
	return sorted(all)
}

// options are the looks, and at last the leanest ones with the whole name on
// one line, for a low label.
func options(looks []design.Look, part float64) (out []dress) {
	for _, l := range looks {
		out = append(out, dress{l, part, false})
	}
	for _, l := range looks[max(0, len(looks)-2):] {
		out = append(out, dress{l, part, true})
	}
	return out
}

// sorted orders dresses by the size of the name, in steps of a tenth; of equal
// ones the fuller look stays first.
func sorted(all []tried) []dress {
	step := func(t tried) int { return int(t.title * 10 / goodTitle) }
	slices.SortStableFunc(all, func(a, b tried) int { return step(b) - step(a) })
	var out []dress
	for _, t := range all {
		out = append(out, t.dress)
	}
	return out
}

// measure sets the display panel alone and draws no ornament.
func (s *setter) measure() tried {
	var t tried
	s.measuring = true
	area := page.Rect{W: s.cell.W, H: s.cell.H}
	switch {
	case s.piece == label.Wrap:
		t.ok = s.wrapFront(s.halves())
	case s.opt.Alone:
		t.ok = s.alone(s.band(area, s.look.Band))
	default:
		t.ok = s.panel(s.band(area, s.look.Band), s.colours, s.panelBlocks())
	}
	t.ok = t.ok && len(s.over) == 0
	t.title = s.title1
	switch {
	case s.squashed:
	case s.atBest:
		t.of = 100
	default:
		t.of = int(s.title1 * 100 / max(goodTitle, s.netSize))
	}
	return t
}
