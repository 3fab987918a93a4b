package presstest

import (
	"encoding/binary"
	"math"
	"slices"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// PostScript makes an OpenType file of PostScript outlines (Adobe Technical Notes
// 5176, CFF, and 5177, Type 2 charstrings) of a TrueType one: each quadratic curve as
// the cubic it is. Its glyphs begin with a width, stems and a hint mask, have their
// curves as flex where two follow each other, numbers in 1/65536, and end in a
// subroutine of a subroutine. All other tables are the file's own.
func PostScript(ttf []byte) ([]byte, error) { return PostScriptOf(ttf, 2./3, nil) }

// PostScriptOf is PostScript with the control points of a cubic so far from its ends to
// the control point of the quadratic (two thirds is the same curve, others no quadratic
// is), and with programs of its own for some glyphs.
func PostScriptOf(ttf []byte, reach float64, own map[sfnt.GlyphIndex][]byte) ([]byte, error) {
	programs, err := programs(ttf, reach, own)
	if err != nil {
		return nil, err
	}
	return opentype(ttf, compact(programs)), nil
}

// PostScriptKeyed is PostScript as fonts of character collections are made (5176,
// section 18): glyphs have the subroutines of one of three dictionaries, the first of
// which no glyph has and which has none. The format of what chooses them is 0 or 3.
func PostScriptKeyed(ttf []byte, format byte) ([]byte, error) {
	programs, err := programs(ttf, 2./3, nil)
	if err != nil {
		return nil, err
	}
	return opentype(ttf, keyed(programs, format)), nil
}

func programs(ttf []byte, reach float64, own map[sfnt.GlyphIndex][]byte) (programs [][]byte, err error) {
	font, err := sfnt.Parse(ttf)
	if err != nil {
		return nil, err
	}
	for g := range font.NumGlyphs() {
		s, err := font.LoadGlyph(nil, sfnt.GlyphIndex(g), fixed.I(int(font.UnitsPerEm())), nil)
		if err != nil {
			return nil, err
		}
		program := own[sfnt.GlyphIndex(g)]
		if program == nil {
			program = charstring(reversed(s), reach)
		}
		programs = append(programs, program)
	}
	return programs, nil
}

// opentype is a TrueType file with other outlines.
func opentype(ttf, cff []byte) []byte {
	tables := map[string][]byte{"CFF ": cff}
	for i := range int(binary.BigEndian.Uint16(ttf[4:])) {
		e := ttf[12+16*i:]
		at, size := binary.BigEndian.Uint32(e[8:]), binary.BigEndian.Uint32(e[12:])
		tables[string(e[:4])] = ttf[at : at+size]
	}
	for _, tag := range []string{"glyf", "loca", "cvt ", "fpgm", "prep", "gasp"} {
		delete(tables, tag)
	}
	tables["maxp"] = append([]byte{0, 0, 0x50, 0}, tables["maxp"][4:6]...)
	return Assembled(tables)
}

// Assembled lays tables out as an OpenType file, by tag, with no checksums.
func Assembled(tables map[string][]byte) []byte {
	var tags []string
	for tag := range tables {
		tags = append(tags, tag)
	}
	slices.Sort(tags)
	out := append([]byte("OTTO"), 0, byte(len(tags)), 0, 0, 0, 0, 0, 0)
	at := len(out) + 16*len(tags)
	var body []byte
	for _, tag := range tags {
		out = append(out, tag...)
		for _, v := range []int{0, at + len(body), len(tables[tag])} {
			out = binary.BigEndian.AppendUint32(out, uint32(v))
		}
		body = append(body, tables[tag]...)
		body = append(body, make([]byte, -len(body)&3)...)
	}
	return append(out, body...)
}

// compact lays out a CFF table; the numbers of the top dictionary take five bytes
// each, so that its length does not hang on them.
func compact(programs [][]byte) []byte {
	top := func(glyphs, private int) []byte {
		return slices.Concat(five(glyphs), []byte{17}, five(6), five(private), []byte{18})
	}
	front := func(glyphs, private int) []byte {
		return slices.Concat([]byte{1, 0, 4, 4}, list([]byte("Alder")), list(top(glyphs, private)), list(), list([]byte{14}))
	}
	at := len(front(0, 0))
	glyphs := list(programs...)
	return slices.Concat(front(at, at+len(glyphs)), glyphs, private())
}

func five(v int) []byte { return binary.BigEndian.AppendUint32([]byte{29}, uint32(v)) }

// private is a dictionary of six bytes and the subroutines it says follow it.
func private() []byte { return append(append(five(6), 19), list([]byte{32, 29, 11})...) }

func keyed(programs [][]byte, format byte) []byte {
	front := func(glyphs, choice, dicts int) []byte {
		top := slices.Concat(five(0), five(0), five(0), []byte{12, 30}, five(glyphs), []byte{17}, five(dicts), []byte{12, 36}, five(choice), []byte{12, 37})
		return slices.Concat([]byte{1, 0, 4, 4}, list([]byte("Alder")), list(top), list(), list([]byte{14}))
	}
	at, glyphs := len(front(0, 0, 0)), list(programs...)
	private, n := private(), len(programs)
	choice := []byte{3, 0, 2, 0, 0, 1, byte(n / 2 >> 8), byte(n / 2), 2, byte(n >> 8), byte(n)}
	if format == 0 {
		choice = append([]byte{0}, slices.Repeat([]byte{2}, n)...)
	}
	from := at + len(glyphs)
	dict := func(size int) []byte { return slices.Concat(five(size), five(from), []byte{18}) }
	return slices.Concat(front(at, from+len(private), from+len(private)+len(choice)), glyphs, private, choice, list(dict(0), dict(6), dict(6)))
}

func list(items ...[]byte) []byte {
	out := binary.BigEndian.AppendUint16(nil, uint16(len(items)))
	if len(items) == 0 {
		return out
	}
	out = append(out, 4)
	at := 1
	for _, item := range append([][]byte{nil}, items...) {
		at += len(item)
		out = binary.BigEndian.AppendUint32(out, uint32(at))
	}
	return append(out, slices.Concat(items...)...)
}

// reversed draws each contour the other way round: PostScript has the ink on the left
// of its contours, TrueType on the right.
func reversed(segments sfnt.Segments) (out sfnt.Segments) {
	for len(segments) > 0 {
		n := 1
		for n < len(segments) && segments[n].Op != sfnt.SegmentOpMoveTo {
			n++
		}
		one := segments[:n]
		out = append(out, sfnt.Segment{Op: sfnt.SegmentOpMoveTo, Args: [3]fixed.Point26_6{end(one[n-1])}})
		for i := n - 1; i > 0; i-- {
			s := one[i]
			s.Args = [3]fixed.Point26_6{end(one[i-1])}
			if s.Op == sfnt.SegmentOpQuadTo {
				s.Args = [3]fixed.Point26_6{one[i].Args[0], end(one[i-1])}
			}
			out = append(out, s)
		}
		segments = segments[n:]
	}
	return out
}

func end(s sfnt.Segment) fixed.Point26_6 {
	if s.Op == sfnt.SegmentOpQuadTo {
		return s.Args[1]
	}
	return s.Args[0]
}

// charstring is the program of a glyph given in 1/64 units, y down.
func charstring(segments sfnt.Segments, reach float64) []byte {
	var x, y int // the place, in 1/65536
	var out []byte
	step := func(px, py float64) []byte { // so that roundings do not add up
		nx, ny := int(math.Round(px*1024)), int(math.Round(-py*1024))
		b := binary.BigEndian.AppendUint32([]byte{255}, uint32(nx-x))
		b = binary.BigEndian.AppendUint32(append(b, 255), uint32(ny-y))
		x, y = nx, ny
		return b
	}
	f := func(p fixed.Point26_6) (float64, float64) { return float64(p.X), float64(p.Y) }
	out = append(out, 139, 139, 149, 18, 144, 149, 19, 0xc0) // width, hstemhm, an implied vstem, hintmask
	var waiting []byte                                       // a curve that may be half of a flex
	flush := func() {
		if waiting != nil {
			out, waiting = append(append(out, waiting...), 8), nil
		}
	}
	var lx, ly float64
	for _, s := range segments {
		ax, ay := f(s.Args[0])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			flush()
			out = append(append(out, step(ax, ay)...), 21)
		case sfnt.SegmentOpLineTo:
			flush()
			out = append(append(out, step(ax, ay)...), 5)
		case sfnt.SegmentOpQuadTo:
			bx, by := f(s.Args[1])
			curve := slices.Concat(step(lx+(ax-lx)*reach, ly+(ay-ly)*reach), step(bx+(ax-bx)*reach, by+(ay-by)*reach), step(bx, by))
			if waiting == nil {
				waiting = curve
			} else {
				out, waiting = append(slices.Concat(out, waiting, curve), 189, 12, 35), nil
			}
			ax, ay = bx, by
		}
		lx, ly = ax, ay
	}
	flush()
	return append(out, 32, 10) // callsubr of the first
}
