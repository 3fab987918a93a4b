package compose

import (
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
	look      design.Look
	part      float64
	oneLine   bool // the whole name on one line
	aside     bool // the net quantity stands right of the name, not under it
	narrow    bool // facts and net quantity are set in the design's narrow faces
	slim      bool // the net quantity alone is
	condensed bool // so is the name
	titled    bool // the name stands over the facts of an information label
	closer    bool // the lines of facts may close up to less than tight
	// split is the share of a low panel that name and maker take, left of the
	// statements and the net quantity; 0: all stand one under the other.
	split float64
	cost  int // of what the look gives up, in hundredths
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

// most is how many variants of each width of facts are tried before the piece
// does not fit.
const most = 4

// variants lists what to try, best first. On a label with a display panel the
// best gives up least of ornament, maker's sign and size of the name; after
// them, for facts that need the room, the bare ones.
func (b brief) variants(look design.Look, all bool) (out []variant) {
	if b.piece == label.InfoLabel {
		return b.infoVariants(look)
	}
	looks, narrow := look.Leaner(), b.narrows()
	if b.piece != label.Wrap && b.piece != label.Front {
		condense := b.condenses()
		for i, l := range looks {
			out = append(out, variant{look: l, part: usualPart, cost: i})
			if condense {
				out = append(out, variant{look: l, part: usualPart, condensed: true, cost: i + costCondensed})
			}
		}
		slices.SortStableFunc(out, func(a, b variant) int { return a.cost - b.cost })
		return out
	}
	ranked := b.rank(looks, narrow, all)
	if all {
		return upTo(ranked, 3*most)
	}
	out = upTo(ranked, most)
	if other := slices.DeleteFunc(slices.Clone(looks), func(l design.Look) bool { return !otherwise(l, look) }); len(other) > 0 {
		ranked = b.rank(other, narrow, all)
		for _, v := range ranked[:min(most/2, len(ranked))] {
			v.cost += costShrunk
			out = append(out, v)
		}
	}
	parts := []float64{usualPart, 0.36, 0.47, 0.32}
	if b.piece == label.Front {
		parts = parts[:1]
	}
	return append(out, barest(looks, narrow, parts)...)
}

// barest are the leanest looks, with the maker's sign and without.
func barest(looks []design.Look, narrow bool, parts []float64) (out []variant) {
	for _, part := range parts {
		bare := variant{look: looks[len(looks)-1], part: part, narrow: narrow, cost: costMost}
		named := bare
		named.look.Brand = looks[0].Brand
		out = append(out, named, bare)
	}
	return out
}

// lastResorts lists what to try where nothing fits: facts whose lines close up, and
// on a wrap-around more of its length for them.
func (b brief) lastResorts(look design.Look) (out []variant) {
	switch b.piece {
	case label.InfoLabel:
		all := b.infoVariants(look)
		out = all[len(all)-1:]
	case label.Front:
		out = barest(look.Leaner(), b.narrows(), []float64{usualPart})
	case label.Wrap:
		out = barest(look.Leaner(), b.narrows(), []float64{usualPart, 0.36, 0.32, 0.28, 0.25})
	}
	for i := range out {
		out[i].closer = true
	}
	return out
}

// upTo are the first of a ranked list, so many of each width of the panel with narrow
// facts and so many with others: where the facts of a wrap-around need the narrow ones
// or more of its length, no other variant fits, however well its panel ranks.
func upTo(ranked []variant, most int) (out []variant) {
	type class struct {
		narrow bool
		part   float64
	}
	taken := map[class]int{}
	for _, v := range ranked {
		k := class{v.narrow, v.part}
		if taken[k]++; taken[k] <= most {
			out = append(out, v)
		}
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

// condenses reports whether the design has narrow faces for the name that draw
// all of it.
func (b brief) condenses() bool {
	v := b.voices.Condensed()
	if v == b.voices {
		return false
	}
	id, _ := b.block(label.Identity)
	all := b.title + b.sub + id.Text()
	for _, x := range []design.Voice{v.Title, v.Subtitle} {
		if f := b.faces.Face(x.Face); f == nil || strings.ContainsFunc(recased(x, all), func(r rune) bool {
			return r != typeset.NBSP && r != typeset.SoftHyphen && r != typeset.LineEnd && !f.Has(r)
		}) {
			return false
		}
	}
	return true
}

// recased is a text in the case a voice sets it in, and as it is written.
func recased(v design.Voice, s string) string {
	if v.Case == "upper" {
		return s + strings.ToUpper(s)
	}
	return s
}
