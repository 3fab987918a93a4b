package face

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"

	"jarmark/internal/draw/page"
)

// Refusal says why a typeface of the maker's cannot be used, and what helps.
type Refusal struct{ What, Hint string }

func (r *Refusal) Error() string { return r.What }

// OwnFolder is where the maker's typefaces lie, beside kitchen.toml.
const OwnFolder = "fonts"

const bold = 600 // weight from which a face stands out (OS/2 usWeightClass: 600 semi-bold, 700 bold)

// Own reads a typeface of the maker's: a TrueType file, or one of PostScript
// outlines (OpenType with CFF 1), whose licence lets it be embedded in what is
// printed. The file may be broken in any way.
func Own(file string, data []byte) (f *Face, err error) {
	broken := &Refusal{"the file is broken", "fetch it anew from where it came, or take another typeface"}
	defer func() {
		if recover() != nil { // x/image/font/sfnt trusts some of what it reads
			f, err = nil, broken
		}
	}()
	if r := outward(data); r != nil {
		return nil, r
	}
	t, err := readTables(data)
	switch {
	case t["CFF2"] != nil && t["CFF "] == nil:
		return nil, &Refusal{"its letters are variable PostScript outlines (CFF2)", "take one weight of it as a static TTF or OTF file"}
	case err != nil:
		return nil, broken
	}
	if r := t.licence(); r != nil {
		return nil, r
	}
	if !postScript(data) && !t.sound() { // PostScript glyphs are looked at when they are asked for
		return nil, broken
	}
	f, err = parse(page.Face(ownName(file, data)), data, t)
	var lacks *Refusal
	switch {
	case errors.As(err, &lacks):
		return nil, lacks
	case err != nil:
		return nil, broken
	}
	if f.ascent+f.descent > 6000 || f.ascent < 0 || f.descent < -1000 || f.xHeight > 3000 || f.capHeight > 3000 {
		return nil, broken // measures no letters have
	}
	for r := ' '; r <= '~'; r++ {
		f.Advance(r)
		f.Outline(r)
	}
	return f, nil
}

// outward refuses what is neither TrueType nor OpenType by how it begins.
func outward(data []byte) *Refusal {
	ask := "ask for its TTF or OTF file: most typefaces have one"
	switch {
	case len(data) < 12:
		return &Refusal{"the file is empty or cut short", "fetch it anew from where it came"}
	case string(data[:4]) == "wOFF", string(data[:4]) == "wOF2":
		return &Refusal{"it is a typeface for web pages (WOFF)", ask}
	case string(data[:4]) == "ttcf":
		return &Refusal{"it is a collection of typefaces", "take one of them out as a TTF or OTF file"}
	case string(data[:4]) != "\x00\x01\x00\x00" && string(data[:4]) != "true" && !postScript(data):
		return &Refusal{"it is no typeface", "put TTF and OTF files into " + OwnFolder + ", and nothing else"}
	}
	return nil
}

// licence reads whether the maker of a typeface lets it be embedded (OpenType
// specification, OS/2, fsType). Only the letters used are embedded here.
func (t tables) licence() *Refusal {
	os2 := t["OS/2"]
	if len(os2) < 10 {
		return nil
	}
	const restricted, forms, noSubset, bitmaps = 0x0002, 0x000c, 0x0100, 0x0200
	ask := "ask its maker for a licence to embed it, or take a free typeface"
	switch v := u16(os2[8:]); {
	case v&restricted != 0 && v&forms == 0:
		return &Refusal{"its maker does not let it be embedded in a document (OS/2 fsType: restricted licence)", ask}
	case v&noSubset != 0:
		return &Refusal{"its maker lets it be embedded whole only (OS/2 fsType: no subsetting), and labels hold the letters they use", ask}
	case v&bitmaps != 0:
		return &Refusal{"its maker lets only its bitmaps be embedded (OS/2 fsType)", ask}
	}
	return nil
}

// weight is how bold a face says it is: 400 is regular, 700 bold.
func (t tables) weight() int {
	if os2 := t["OS/2"]; len(os2) >= 6 {
		return int(u16(os2[4:]))
	}
	return 400
}

// mostParts is how many parts a letter may be made of, all told: a file may
// nest them without end.
const mostParts = 200

// sound reports whether the glyphs lie in the file and are made of few parts.
func (t tables) sound() bool {
	n := int(u16(t["maxp"][4:]))
	size := 2
	if u16(t["head"][50:]) != 0 {
		size = 4
	}
	if n == 0 || len(t["loca"]) < size*(n+1) || len(t["glyf"]) == 0 {
		return false
	}
	counted := make([]int, n)
	var count func(g, deep int) int
	count = func(g, deep int) int {
		switch {
		case g >= n || deep > 6:
			return mostParts + 1
		case counted[g] > 0:
			return counted[g]
		}
		data, err := t.glyph(uint16(g))
		if err != nil {
			return mostParts + 1
		}
		sum := 1
		err = parts(data, func(at int) {
			if sum <= mostParts {
				sum += count(int(u16(data[at:])), deep+1)
			}
		})
		if err != nil {
			return mostParts + 1
		}
		counted[g] = sum
		return sum
	}
	for g := range n {
		if count(g, 0) > mostParts {
			return false
		}
	}
	return true
}

// ownName is what a face of the maker's is called: by its file, and by what is
// in it, so that no two files and no built-in face share a name.
func ownName(file string, data []byte) string {
	stem := strings.TrimSuffix(path.Base(file), path.Ext(file))
	plain := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9':
			return r
		}
		return '-'
	}, stem)
	sum := sha256.Sum256(data)
	return fmt.Sprintf("own-%s-%s", plain[:min(len(plain), 40)], hex.EncodeToString(sum[:4]))
}

// With lays the maker's faces over a set. A letter that a face lacks is drawn by
// another: the set's by one of the maker's, the maker's by the others and then
// by the set's; for a bold face by a bold one where there is one (see Stout).
func (s *Set) With(own []*Face) *Set {
	if len(own) == 0 {
		return s
	}
	out := &Set{fsys: s.fsys, faces: map[page.Face]*entry{}}
	for _, name := range s.names {
		out.names = append(out.names, name)
		out.faces[name] = &entry{make: func() (*Face, error) {
			f, err := s.Open(name)
			if err != nil {
				return nil, err
			}
			alike, other := stand(own, f)
			return f.backed(append(alike, other...)), nil
		}}
	}
	for _, f := range own {
		alike, other := stand(own, f)
		f = f.backed(slices.Concat(alike, s.stand(f), other))
		out.names = append(out.names, f.Name)
		out.faces[f.Name] = &entry{make: func() (*Face, error) { return f, nil }}
	}
	slices.Sort(out.names)
	return out
}

// stand are the faces that may stand in for one, the nearest in weight first; other
// are those that are not bold, for a bold one.
func stand(list []*Face, f *Face) (alike, other []func() *Face) {
	w := f.tables.weight()
	near := slices.DeleteFunc(slices.Clone(list), func(o *Face) bool { return o == f })
	slices.SortStableFunc(near, func(a, b *Face) int {
		return cmp.Compare(max(a.tables.weight()-w, w-a.tables.weight()), max(b.tables.weight()-w, w-b.tables.weight()))
	})
	for _, o := range near {
		if w >= bold && o.tables.weight() < bold {
			other = append(other, func() *Face { return o })
		} else {
			alike = append(alike, func() *Face { return o })
		}
	}
	return alike, other
}

// stand are the set's faces in their order; they are read when they are needed.
func (s *Set) stand(f *Face) (out []func() *Face) {
	heavy := f.tables.weight() >= bold
	for _, name := range s.names {
		out = append(out, func() *Face {
			o := s.Face(name)
			if o == nil || (o.tables.weight() >= bold) != heavy {
				return nil
			}
			return o
		})
	}
	return out
}

// Stout reports whether a letter stands out where the face does: a bold face has it
// drawn by a bold one. What the law wants bold may not be drawn otherwise; a name may.
func (f *Face) Stout(r rune) bool {
	return f.tables.weight() < bold || f.Owner(r).tables.weight() >= bold
}

// backed is a face with others that stand in for it.
func (f *Face) backed(back []func() *Face) *Face {
	out := fresh(f.Name, f.data, f.tables, f.font)
	out.cff = f.cff
	out.box, out.ascent, out.descent = f.box, f.ascent, f.descent
	out.xHeight, out.lowerO, out.capHeight, out.digit = f.xHeight, f.lowerO, f.capHeight, f.digit
	out.back = back
	return out
}

// Owner is the face that draws a letter: this one, or one that stands in for
// it.
func (f *Face) Owner(r rune) *Face {
	if len(f.back) == 0 || f.draws(r) {
		return f
	}
	f.mu.RLock()
	o := f.owners[r]
	f.mu.RUnlock()
	if o != nil {
		return o
	}
	o = f
	for _, b := range f.back {
		if g := b(); g != nil && g.draws(r) {
			o = g
			break
		}
	}
	f.mu.Lock()
	f.owners[r] = o
	f.mu.Unlock()
	return o
}

// draws reports whether the file itself has a glyph for r.
func (f *Face) draws(r rune) bool {
	if r < ' ' || r > 0xFFFF || Shaped(r) {
		return false
	}
	b := f.buffer()
	defer f.pool.Put(b)
	g, err := f.font.GlyphIndex(b, r)
	return err == nil && g != 0 && f.legible(g)
}

// shapedScripts are where letters join or stack, or run from the right: Hebrew but for
// its letters, to the Arabic extensions, the scripts of India and South-East Asia, Khmer and
// Mongolian, and the forms of Hebrew and Arabic (The Unicode Standard, blocks).
var shapedScripts = [][2]rune{{0x0590, 0x05cf}, {0x05eb, 0x109f}, {0x1780, 0x18af}, {0x1900, 0x1cff}, {0xa800, 0xabff}, {0xfb1d, 0xfdff}, {0xfe70, 0xfefe}}

// Mark reports a mark for letters that exist with none (U+0300 to U+036F): each
// face says where they go, in tables that are not read here.
func Mark(r rune) bool { return r >= 0x0300 && r <= 0x036f }

// Shaped reports whether a letter is of a script that is not set here, whatever
// typeface has it: a mark, or its letters join, stack or, but for Hebrew, run from the right.
func Shaped(r rune) bool {
	return Mark(r) || slices.ContainsFunc(shapedScripts, func(s [2]rune) bool { return r >= s[0] && r <= s[1] })
}
