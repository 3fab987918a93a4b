package face

import (
	"encoding/binary"
	"fmt"
	"slices"
	"strings"
	"sync"

	"golang.org/x/image/font/sfnt"

	"jarmark/internal/draw/page"
)

// Subset is the part of a typeface that some letters need, as a file that may
// be embedded in a PDF (ISO 32000-1, 9.9: FontFile2 of a CIDFont needs no cmap).
type Subset struct {
	Name   page.Face
	PSName string          // PostScript name, OpenType name ID 6
	Data   []byte          // TrueType: glyf, head, hhea, hmtx, loca, maxp, and hints if any
	Runes  []rune          // ascending; glyph i+1 of Data draws Runes[i]
	glyphs map[rune]uint16 // glyph of a letter in Data
	face   *Face

	mu     sync.Mutex
	packed [2][]byte
}

// Packed gives a stream of a subset compressed: the first, its file, or the
// second, what its user makes of it. Each is packed once.
func (s *Subset) Packed(i int, data []byte, pack func(out, data []byte) ([]byte, error)) ([]byte, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.packed[i] == nil {
		var err error
		if s.packed[i], err = pack(nil, data); err != nil {
			return nil, err
		}
	}
	return s.packed[i], nil
}

// Glyph gives the glyph of a letter in Data; 0, the missing glyph, for others.
func (s *Subset) Glyph(r rune) uint16 { return s.glyphs[r] }

// Advance is the face's own, in 1/1000 em.
func (s *Subset) Advance(r rune) int { return s.face.Advance(r) }

// Metrics are what a font descriptor states (ISO 32000-1, table 122), in
// 1/1000 em: the box all glyphs fit in, ascent, descent (negative), capitals.
func (s *Subset) Metrics() (box [4]int, ascent, descent, capHeight int) {
	f := s.face
	return f.box, f.ascent, -f.descent, f.capHeight
}

// mostSubsets bounds the subsets of a face that are remembered, some 20 kB each.
const mostSubsets = 32

// Subset gives the part of the face that draws the letters; letters that it
// lacks are left out. The same letters give the same bytes. It is remembered.
func (f *Face) Subset(letters []rune) (*Subset, error) {
	key := string(letters)
	f.mu.RLock()
	s := f.subsets[key]
	f.mu.RUnlock()
	if s != nil {
		return s, nil
	}
	s, err := f.subset(letters)
	if err != nil {
		return nil, err
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	if was := f.subsets[key]; was != nil {
		return was, nil
	}
	if f.subsets == nil || len(f.subsets) >= mostSubsets {
		f.subsets = map[string]*Subset{}
	}
	f.subsets[key] = s
	return s, nil
}

func (f *Face) subset(letters []rune) (*Subset, error) {
	s := &Subset{Name: f.Name, face: f, glyphs: map[rune]uint16{}}
	b := f.buffer()
	defer f.pool.Put(b)
	said, err := f.font.Name(b, sfnt.NameIDPostScript)
	if s.PSName = plainName(said); err != nil || s.PSName == "" {
		s.PSName = strings.ReplaceAll(string(f.Name), "_", "-")
	}
	s.Runes = slices.Clone(letters)
	slices.Sort(s.Runes)
	s.Runes = slices.DeleteFunc(slices.Compact(s.Runes), func(r rune) bool { return !f.draws(r) })
	old := []uint16{0} // glyph of the whole face for each of the subset
	for _, r := range s.Runes {
		g, err := f.font.GlyphIndex(b, r)
		if err != nil {
			return nil, fmt.Errorf("%s: %U: %w", f.Name, r, err)
		}
		s.glyphs[r] = uint16(len(old))
		old = append(old, uint16(g))
	}
	if f.cff != nil {
		s.Data, err = f.cutCFF(old)
	} else {
		s.Data, err = f.tables.cut(old)
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", f.Name, err)
	}
	return s, nil
}

// plainName is a name as a PDF may write it (ISO 32000-1, 7.3.5).
func plainName(s string) string {
	return strings.Map(func(r rune) rune {
		if r <= ' ' || r > '~' || strings.ContainsRune("()<>[]{}/%#", r) {
			return -1
		}
		return r
	}, s[:min(len(s), 63)])
}

// Owner is the face that draws a letter in the place of this one.
func (s *Subset) Owner(r rune) page.Face { return s.face.Owner(r).Name }

// glyph is the outline of one glyph as it stands in the file.
func (t tables) glyph(g uint16) ([]byte, error) {
	loca, glyf := t["loca"], t["glyf"]
	var from, to int
	if i := int(g); u16(t["head"][50:]) == 0 {
		if 2*i+4 > len(loca) {
			return nil, errShort
		}
		from, to = 2*int(u16(loca[2*i:])), 2*int(u16(loca[2*i+2:]))
	} else {
		if 4*i+8 > len(loca) {
			return nil, errShort
		}
		from, to = int(u32(loca[4*i:])), int(u32(loca[4*i+4:]))
	}
	if from > to || to > len(glyf) {
		return nil, errShort
	}
	return glyf[from:to], nil
}

// metric is advance and left side bearing of a glyph, as hmtx has them.
func (t tables) metric(g uint16) ([4]byte, error) {
	var out [4]byte
	hmtx, full := t["hmtx"], int(u16(t["hhea"][34:]))
	i := int(g)
	if full < 1 || 4*full > len(hmtx) {
		return out, errShort
	}
	if i < full {
		copy(out[:], hmtx[4*i:])
		return out, nil
	}
	copy(out[:2], hmtx[4*full-4:])
	if at := 4*full + 2*(i-full); at+2 <= len(hmtx) {
		copy(out[2:], hmtx[at:])
	}
	return out, nil
}

// Flags of a component of a composite glyph (OpenType specification, glyf).
const (
	wideArguments = 1 << 0
	oneScale      = 1 << 3
	moreParts     = 1 << 5
	twoScales     = 1 << 6
	matrix        = 1 << 7
)

// parts calls f with the place of every component's glyph number.
func parts(glyph []byte, f func(at int)) error {
	if len(glyph) < 10 || i16(glyph) >= 0 {
		return nil
	}
	for at := 10; ; {
		if at+4 > len(glyph) {
			return errShort
		}
		flags := u16(glyph[at:])
		f(at + 2)
		at += 6
		for bit, size := range map[uint16]int{wideArguments: 2, oneScale: 2, twoScales: 4, matrix: 8} {
			if flags&bit != 0 {
				at += size
			}
		}
		if flags&moreParts == 0 {
			return nil
		}
	}
}

// cut makes a file of the glyphs in old, renumbered in that order; what they
// are composed of is added after them.
func (t tables) cut(old []uint16) ([]byte, error) {
	number := map[uint16]uint16{}
	for i, g := range old {
		if _, twice := number[g]; !twice {
			number[g] = uint16(i)
		}
	}
	var glyf, loca, hmtx []byte
	for i := 0; i < len(old); i++ {
		data, err := t.glyph(old[i])
		if err != nil {
			return nil, err
		}
		data = slices.Clone(data)
		err = parts(data, func(at int) {
			part := u16(data[at:])
			if _, known := number[part]; !known {
				number[part] = uint16(len(old))
				old = append(old, part)
			}
			binary.BigEndian.PutUint16(data[at:], number[part])
		})
		m, err2 := t.metric(old[i])
		if err != nil || err2 != nil {
			return nil, errShort
		}
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		glyf = append(glyf, data...)
		for len(glyf)%4 != 0 {
			glyf = append(glyf, 0)
		}
		hmtx = append(hmtx, m[:]...)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	out := tables{"glyf": glyf, "loca": loca, "hmtx": hmtx,
		"head": slices.Clone(t["head"]), "hhea": slices.Clone(t["hhea"]), "maxp": slices.Clone(t["maxp"])}
	binary.BigEndian.PutUint16(out["head"][50:], 1) // long offsets
	binary.BigEndian.PutUint16(out["hhea"][34:], uint16(len(old)))
	binary.BigEndian.PutUint16(out["maxp"][4:], uint16(len(old)))
	for _, hint := range []string{"cvt ", "fpgm", "prep"} {
		if h, ok := t[hint]; ok {
			out[hint] = h
		}
	}
	return out.file(), nil
}
