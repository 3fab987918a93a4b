package inspect

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

const (
	// quiet is the blank a QR code needs on all sides, in modules (ISO/IEC
	// 18004, clause "quiet zone").
	quiet = 4
	// leastModule is the smallest module that scans off paper when the content
	// names none: common practice, no source.
	leastModule = 350 * unit.Micrometre
)

// code checks level, module size and quiet zone of QR codes.
func (k *inspector) code() {
	least := k.c.QR.MinModule
	if least <= 0 {
		least = leastModule
	}
	for _, c := range k.codes {
		if len(c.Modules) == 0 {
			k.found.Errorf("qr-empty", "", "", "the QR code has no modules")
			continue
		}
		if m := c.At.W / unit.Length(len(c.Modules)); m+unit.Micrometre < least {
			k.found.Errorf("qr-module", "", "", "QR modules are %.2f mm, least is %.2f mm", m.MM(), least.MM())
		}
		k.level(c, least)
		k.quietZone(c)
	}
}

// level asks for error correction M (15 %) or more. L (7 %) may stand where a
// code of level M would not scan: M is one or two sizes larger, each of four
// modules more a side (ISO/IEC 18004, capacity of symbols).
func (k *inspector) level(c *page.Code, least unit.Length) {
	if levelOf(c.Modules) == 'L' && c.At.W >= least*unit.Length(len(c.Modules)+8) {
		k.found.Errorf("qr-level", "", "", "the QR code has error correction L where there is room for M").Cited("ISO/IEC 18004")
	}
}

// levelOf reads the error correction level off a code: the first two bits of
// its format information, left of the upper left finder pattern, less the
// mask 10 (ISO/IEC 18004, clause "format information"). 0 = no code.
func levelOf(m [][]bool) byte {
	if len(m) < 21 || len(m[8]) < 2 {
		return 0
	}
	switch high, low := !m[8][0], m[8][1]; {
	case high && low:
		return 'Q'
	case high:
		return 'H'
	case low:
		return 'L'
	}
	return 'M'
}

// quietZone checks that the blank round a code is wide enough, on the label,
// and blank.
func (k *inspector) quietZone(c *page.Code) {
	q := c.WithQuiet()
	trim := *k.fr
	trim.Safe = 0
	if c.Quiet < quiet || !trim.Within(q, slack) {
		k.found.Errorf("qr-quiet-zone", "", "", "the quiet zone of the QR code is cut off").Cited("ISO/IEC 18004")
	}
	q = q.Grow(-slack, -slack)
	for _, p := range append(k.seen(q), k.paths...) {
		if p.Block != "qr" && p.EdgeIn(q) {
			k.found.Errorf("qr-quiet-zone", "", "", "something is printed in the quiet zone of the QR code").Cited("ISO/IEC 18004")
			return
		}
	}
}
