package face

import (
	"encoding/binary"
	"fmt"
	"math"
	"slices"

	"golang.org/x/image/font/sfnt"
)

// cutCFF makes a TrueType file of PostScript glyphs, in the order of old; the tables are
// those that cut gives, in the finer em. A glyph 0 that cannot be read is blank. It
// fails where another cannot.
func (f *Face) cutCFF(old []uint16) ([]byte, error) {
	var body, loca, hmtx []byte
	most := glyf{box: [4]int{math.MaxInt, math.MaxInt, math.MinInt, math.MinInt}}
	for i, n := range old {
		g, err := f.quadratic(sfnt.GlyphIndex(n))
		if err != nil && i > 0 {
			return nil, fmt.Errorf("glyph %d: %w", n, err)
		}
		if err != nil {
			g = glyf{}
		}
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(body)))
		body = append(body, g.data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
		hmtx = binary.BigEndian.AppendUint16(hmtx, uint16(g.advance))
		hmtx = binary.BigEndian.AppendUint16(hmtx, uint16(g.box[0])) // a bearing that is not the box's left would move the glyph
		most = most.with(g)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(body)))
	out := tables{"glyf": body, "loca": loca, "hmtx": hmtx, "head": f.headOf(most), "hhea": f.hheaOf(most, len(old)), "maxp": maxpOf(most, len(old))}
	return out.file(), nil
}

// with is the most of each measure of two glyphs.
func (g glyf) with(o glyf) glyf {
	g.points, g.contours, g.advance = max(g.points, o.points), max(g.contours, o.contours), max(g.advance, o.advance)
	if len(o.data) > 0 {
		g.box = [4]int{min(g.box[0], o.box[0]), min(g.box[1], o.box[1]), max(g.box[2], o.box[2]), max(g.box[3], o.box[3])}
	}
	return g
}

// headOf is the file's table with the finer em, the box of the glyphs and long offsets.
func (f *Face) headOf(most glyf) []byte {
	head := slices.Clone(f.tables["head"])
	binary.BigEndian.PutUint16(head[18:], uint16(f.unitsPerEm()*f.finer()))
	for i, v := range most.box {
		if most.contours == 0 {
			v = 0
		}
		binary.BigEndian.PutUint16(head[36+2*i:], uint16(v))
	}
	binary.BigEndian.PutUint16(head[50:], 1)
	return head
}

// hheaOf is the file's table in the finer em.
func (f *Face) hheaOf(most glyf, glyphs int) []byte {
	hhea := slices.Clone(f.tables["hhea"])
	for _, at := range []int{4, 6, 8, 12, 14, 16} { // ascender, descender, line gap, least bearings, largest extent
		v := i16(hhea[at:]) * f.finer()
		binary.BigEndian.PutUint16(hhea[at:], uint16(max(math.MinInt16, min(v, math.MaxInt16))))
	}
	binary.BigEndian.PutUint16(hhea[10:], uint16(most.advance))
	binary.BigEndian.PutUint16(hhea[34:], uint16(glyphs))
	return hhea
}

// maxpOf is the table of a TrueType file (version 1.0): no instructions, no glyphs made
// of others.
func maxpOf(most glyf, glyphs int) []byte {
	out := make([]byte, 32)
	for at, v := range map[int]int{0: 1, 4: glyphs, 6: most.points, 8: most.contours, 14: 2} { // 14: zones, of which 2 is common
		binary.BigEndian.PutUint16(out[at:], uint16(v))
	}
	return out
}
