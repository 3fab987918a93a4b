package compose

import (
	"jarmark/internal/draw/typeset"
	"strings"
	"unicode"

	"jarmark/internal/draw/face"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// letter gives the height of the letter a law measures, in 1/1000 em, or 0
// when the size itself is meant. Text without a lower-case letter is measured
// on its capitals (21 CFR 101.7(h)(2)).
func letter(on label.Measure, text string, f *face.Face) int {
	const thousand = 1000 * unit.Nanometre
	switch on {
	case label.XHeight:
		return int(f.XHeight(thousand))
	case label.LowerO:
		return int(f.LowerO(thousand))
	case label.Capital:
		return int(f.CapHeight(thousand))
	case label.Digit:
		return int(f.DigitHeight(thousand))
	case label.AnyCase:
		if hasLower(text) {
			return int(f.LowerO(thousand))
		}
		return int(min(f.CapHeight(thousand), f.DigitHeight(thousand)))
	}
	return 0
}

func hasLower(s string) bool { return strings.ContainsFunc(s, unicode.IsLower) }

// sizeFor is the smallest type size whose measured letter reaches h with the
// reserve for printing.
func sizeFor(h label.Height, text string, f *face.Face) unit.Length {
	h = h.With(label.PrintReserve)
	if h.Length <= 0 || f == nil {
		return 0
	}
	k := letter(h.On, text, f)
	if k <= 0 {
		return h.Length
	}
	return (h.Length*1000 + unit.Length(k) - 1) / unit.Length(k)
}

// leastSize is the smallest size a block may be set at in a voice: the law's, on
// the smaller of its faces.
func leastSize(v typeset.Voice, b label.Block, text string) unit.Length {
	size := sizeFor(b.Min, text, v.Regular)
	if v.Bold != nil {
		size = max(size, sizeFor(b.Min, text, v.Bold))
	}
	return size
}

// courtesy reports whether a piece repeats what the jar's label says, so that
// the letter heights of a package label do not bind it: lids, tags and strips
// go with a label, the rest stands on a stall or a case.
func courtesy(p label.Piece) bool {
	switch p {
	case label.Lid, label.Tag, label.SealStrip, label.CaseLabel, label.ShelfCard, label.AllergCard, label.Sign:
		return true
	}
	return false
}
