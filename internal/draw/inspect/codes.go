package inspect

import "jarmark/internal/law/label"

// Codes are what an inspection can find, and what each says is wrong.
var Codes = map[string]string{
	"nothing-to-check": "there is no frame, no content or no typefaces",
	"unknown-typeface": "type is set in a face that is not there",
	"missing-glyph":    "a face has no drawing for a letter",
	"outside":          "type, a code or a drawing leaves the safe area or the shape",
	"overlap":          "type, codes or drawings meet",
	"too-small":        "a letter is lower than the law's least with the print reserve",
	"not-prominent":    "print that must be a part of the largest is less",
	"missing-block":    "a required statement is not on the piece that must bear it",
	"wrong-words":      "the printed words are not the statement's",
	"zone":             "a statement stands outside its zone",
	"clear-space":      "something stands in the clear space of a statement",
	"qr-empty":         "a code has no modules",
	"qr-module":        "a code's modules are too small to scan off paper",
	"qr-quiet-zone":    "a code's quiet zone is cut, too narrow or printed on",
	"qr-level":         "a code has less error correction than there is room for",
	"intervening":      "a code stands between statements that must be together",
	"field-of-view":    "a statement lacks another it must be seen with",
	"stretched":        "a picture has not the proportions of its file",
	"contrast":         "type or a code is too faint on its ground",
}

// What is verified; the sources are beside the checks.
const (
	bottomZone    = 70  // percent of the height the lowest zone begins at (21 CFR 101.7(f))
	textContrast  = 4.5 // WCAG 2.2, 1.4.3
	largeContrast = 3.0 // the same, from 18 pt
	largeText     = 18  // pt
)

// courtesy reports whether a piece repeats what the jar's label says, so that
// the letter heights of a package label do not bind it, a prescribed sentence's
// excepted: lids, tags and strips go with a label, the rest stands on a stall
// or a case.
func courtesy(p label.Piece) bool {
	return atStall(p) || p == label.Lid || p == label.Tag || p == label.SealStrip
}

// selling reports whether a piece has a display panel and is read by itself.
func selling(p label.Piece) bool {
	return p == label.Front || p == label.Wrap || p == label.BagCard
}

// atStall reports whether a piece stands on a stall or a case, not on a jar.
func atStall(p label.Piece) bool {
	return p == label.CaseLabel || p == label.ShelfCard || p == label.AllergCard || p == label.Sign
}
