package face_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/presstest"
)

// table gives where a table of a TrueType file lies, and how long it is.
func table(data []byte, tag string) (at, size int) {
	for i := range int(binary.BigEndian.Uint16(data[4:])) {
		if e := data[12+16*i:]; string(e[:4]) == tag {
			return int(binary.BigEndian.Uint32(e[8:])), int(binary.BigEndian.Uint32(e[12:]))
		}
	}
	return 0, 0
}

// patched is Go Regular with some bytes of a table written over.
func patched(tag string, at int, b ...byte) []byte {
	out := bytes.Clone(goregular.TTF)
	from, _ := table(out, tag)
	copy(out[from+at:], b)
	return out
}

// moved is Go Regular with a table's entry in the directory written over.
func moved(tag string, at, size uint32) []byte {
	out := bytes.Clone(goregular.TTF)
	for i := range int(binary.BigEndian.Uint16(out[4:])) {
		if e := out[12+16*i:]; string(e[:4]) == tag {
			binary.BigEndian.PutUint32(e[8:], at)
			binary.BigEndian.PutUint32(e[12:], size)
		}
	}
	return out
}

func renamed(from, to string) []byte {
	return bytes.Replace(goregular.TTF, []byte(from), []byte(to), 1)
}

// nested is Go Regular with a letter made of itself.
func nested() []byte {
	out := bytes.Clone(goregular.TTF)
	glyf, _ := table(out, "glyf")
	loca, _ := table(out, "loca")
	head, _ := table(out, "head")
	from := glyf + 2*int(binary.BigEndian.Uint16(out[loca+2*40:]))
	if binary.BigEndian.Uint16(out[head+50:]) != 0 {
		from = glyf + int(binary.BigEndian.Uint32(out[loca+4*40:]))
	}
	copy(out[from:], []byte{0xff, 0xff, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 40, 0, 0}) // -1 contours: parts; glyph 40
	return out
}

func TestOwnTypefacesRefused(t *testing.T) {
	good := goregular.TTF
	for name, c := range map[string]struct {
		data []byte
		what string
	}{
		"empty": {nil, "cut short"}, "words": {[]byte("hello, this is no typeface at all"), "no typeface"},
		"cff": {append([]byte("OTTO"), good[4:]...), "broken"}, "woff": {append([]byte("wOF2"), good[4:]...), "web pages"},
		"collection": {append([]byte("ttcf"), good[4:]...), "collection"}, "half": {good[:len(good)/2], "broken"}, "directory": {good[:60], "broken"},
		"no glyphs": {renamed("glyf", "xlyf"), "broken"}, "no letters": {renamed("cmap", "xmap"), "broken"},
		"past the end": {moved("glyf", 1<<31, 1<<31), "broken"}, "loca cut": {moved("loca", 200, 8), "broken"},
		"no em": {patched("head", 18, 0, 0), "broken"}, "loca mad": {patched("loca", 0, bytes.Repeat([]byte{0xff, 0, 0xff, 0xf0}, 300)...), "broken"},
		"a letter of itself": {nested(), "broken"},
		"restricted":         {patched("OS/2", 8, 0, 2), "does not let it be embedded"}, "whole only": {patched("OS/2", 8, 1, 0), "whole only"}, "bitmaps": {patched("OS/2", 8, 2, 0), "bitmaps"},
	} {
		f, err := face.Own("x.ttf", c.data)
		var r *face.Refusal
		if f != nil || !errors.As(err, &r) || !strings.Contains(r.What, c.what) || r.Hint == "" {
			t.Errorf("%s: %v, want a refusal that says %q", name, err, c.what)
		}
	}
	// OpenType specification, OS/2 fsType: installable, preview and print,
	// editable, and restricted beside editable in old files.
	for _, may := range [][]byte{{0, 0}, {0, 4}, {0, 8}, {0, 10}} {
		if _, err := face.Own("x.ttf", patched("OS/2", 8, may...)); err != nil {
			t.Errorf("fsType %v: %v", may, err)
		}
	}
}

// withGo is the built-in set with Go Regular and Go Bold laid over.
func withGo(t *testing.T, files ...[]byte) (*face.Set, []*face.Face) {
	t.Helper()
	var own []*face.Face
	for _, data := range files {
		f, err := face.Own("Go <\"&> Regular.ttf", data)
		if err != nil {
			t.Fatal(err)
		}
		own = append(own, f)
	}
	return load(t).With(own), own
}

// TestLettersStandIn: Greek and Cyrillic, which our faces lack, are drawn by the
// maker's; what it lacks by ours; and the widths are the drawing face's.
func TestLettersStandIn(t *testing.T) {
	s, own := withGo(t, goregular.TTF, gobold.TTF)
	ours, mine := s.Face("Figtree_400Regular"), s.Face(own[0].Name)
	for _, r := range "ЖячΩβ" {
		if load(t).Face("Figtree_400Regular").Has(r) {
			t.Fatalf("%q is ours: take another letter", r)
		}
		if !ours.Has(r) || ours.Owner(r).Name != own[0].Name || ours.Advance(r) != own[0].Advance(r) || len(ours.Outline(r).Ops) != len(own[0].Outline(r).Ops) {
			t.Errorf("%q is not drawn by the maker's face", r)
		}
		if b := s.Face("Figtree_700Bold"); b.Owner(r).Name != own[1].Name {
			t.Errorf("bold %q is drawn by %s", r, b.Owner(r).Name)
		}
		if ours.Kern('A', r) != 0 {
			t.Error("letters of two faces are kerned")
		}
	}
	for _, r := range "Aß" {
		if ours.Owner(r) != ours || mine.Owner(r) != mine {
			t.Errorf("%q changes its face", r)
		}
	}
	lone, _ := withGo(t, patchedCmap(t, 'ß'))
	f := lone.Face(lone.Names()[len(lone.Names())-1])
	if !strings.HasPrefix(string(f.Name), "own-") || !f.Has('ß') || f.Owner('ß') == f || f.Owner('ß').Name == "" {
		t.Errorf("ß is drawn by %s", f.Owner('ß').Name)
	}
	only, _ := withGo(t, goregular.TTF)
	b := only.Face("Figtree_700Bold")
	if !b.Has('Ж') || b.Owner('Ж').Name != own[0].Name || b.Stout('Ж') {
		t.Error("without a bold one a regular face draws the letter, and it does not stand out")
	}
	if !s.Face("Figtree_700Bold").Stout('Ж') || !b.Stout('A') || !only.Face("Figtree_400Regular").Stout('Ж') {
		t.Error("what is bold, or need not be, does not stand out")
	}
	if f := lone.Face(lone.Names()[len(lone.Names())-1]); f.Owner('ß').Name == f.Name {
		t.Error("ours do not stand in")
	}
	if n := own[0].Name; strings.ContainsAny(string(n), ` <>"&/()`) {
		t.Errorf("the name %q could not stand in a file", n)
	}
}

// patchedCmap is Go Regular that does not know one letter any more: the first
// segment delta or glyph of its format 4 cmap that leads to it is lost with
// the segment.
func patchedCmap(t *testing.T, gone rune) []byte {
	t.Helper()
	out := bytes.Clone(goregular.TTF)
	cmap, size := table(out, "cmap")
	for i := range int(binary.BigEndian.Uint16(out[cmap+2:])) {
		sub := out[cmap+int(binary.BigEndian.Uint32(out[cmap+4+8*i+4:])) : cmap+size]
		if binary.BigEndian.Uint16(sub) != 4 {
			continue
		}
		n := int(binary.BigEndian.Uint16(sub[6:])) / 2
		for k := range n {
			end, start := sub[14+2*k:], sub[16+2*n+2*k:]
			if from, to := rune(binary.BigEndian.Uint16(start)), rune(binary.BigEndian.Uint16(end)); from <= gone && gone <= to {
				binary.BigEndian.PutUint16(end, uint16(gone-1)) // the segment ends before it
				if from == gone {
					binary.BigEndian.PutUint16(start, uint16(gone-1))
				}
			}
		}
	}
	return out
}

// Scripts whose letters join, stack or, but for Hebrew, run from the right are not set, whatever
// typeface has them; others are.
func TestScriptsNotSet(t *testing.T) {
	for _, r := range "\u05b8״ابकதกខ\u0302\u0301" {
		if !face.Shaped(r) {
			t.Errorf("%q", r)
		}
	}
	for _, r := range "AéẤΩЖשע日あ한!–" {
		if face.Shaped(r) {
			t.Errorf("%q", r)
		}
	}
}

// small is a typeface with the outlines of its first glyphs alone and without
// hints: a tenth of the bytes, so that a fuzzer tries ten times as many.
func small(t testing.TB, data []byte, glyphs int) []byte {
	t.Helper()
	var dir, body bytes.Buffer
	long := data[mustTable(t, data, "head")+51] != 0
	loca, glyf := mustTable(t, data, "loca"), mustTable(t, data, "glyf")
	end := 2 * uint32(binary.BigEndian.Uint16(data[loca+2*glyphs:]))
	if long {
		end = binary.BigEndian.Uint32(data[loca+4*glyphs:])
	}
	keep := []string{"OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"}
	for _, tag := range keep {
		at, size := table(data, tag)
		part := bytes.Clone(data[at : at+size])
		switch tag {
		case "glyf":
			part = bytes.Clone(data[glyf : glyf+int(end)])
		case "loca": // the others are blank
			for i := glyphs; long && 4*i < size; i++ {
				binary.BigEndian.PutUint32(part[4*i:], end)
			}
			for i := glyphs; !long && 2*i < size; i++ {
				binary.BigEndian.PutUint16(part[2*i:], uint16(end/2))
			}
		}
		dir.WriteString(tag)
		for _, v := range []uint32{0, uint32(12 + 16*len(keep) + body.Len()), uint32(len(part))} {
			_ = binary.Write(&dir, binary.BigEndian, v)
		}
		body.Write(part)
		body.Write(make([]byte, -len(part)&3))
	}
	head := append(bytes.Clone(data[:4]), 0, byte(len(keep)), 0, 128, 0, 3, 0, 32) // of ten tables: the search range of the directory
	return slices.Concat(head, dir.Bytes(), body.Bytes())
}

func mustTable(t testing.TB, data []byte, tag string) int {
	t.Helper()
	at, size := table(data, tag)
	if size == 0 {
		t.Fatalf("the typeface has no table %s", tag)
	}
	return at
}

func FuzzOwn(f *testing.F) {
	little := small(f, goregular.TTF, 120)
	if own, err := face.Own("x.ttf", little); err != nil || own.Advance('A') == 0 || len(little) > 40<<10 {
		f.Fatalf("the seed of %d bytes is not read: %v", len(little), err)
	}
	for _, seed := range [][]byte{little, small(f, nested(), 120), small(f, patched("head", 18, 0, 0), 120), small(f, moved("hmtx", 200, 8), 120), goregular.TTF[:3000]} {
		f.Add(seed)
	}
	cubic, err := presstest.PostScript(small(f, goregular.TTF, 95))
	if err != nil {
		f.Fatal(err)
	}
	if own, err := face.Own("x.otf", cubic); err != nil || len(own.Outline('g').Ops) == 0 || len(cubic) > 60<<10 {
		f.Fatalf("the seed of %d bytes is not read: %v", len(cubic), err)
	}
	f.Add(cubic)
	f.Fuzz(func(t *testing.T, data []byte) {
		own, err := face.Own("x.ttf", data)
		if err != nil {
			return
		}
		for _, r := range "AgÅßЖ– 9ﬁ" {
			own.Advance(r)
			own.Kern('A', r)
			own.Ink(r)
		}
		_, _ = own.Subset([]rune("AgÅßЖ– 9"))
	})
}
