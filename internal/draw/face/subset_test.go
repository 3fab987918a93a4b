package face_test

import (
	"bytes"
	"encoding/binary"
	"testing"
	"testing/fstest"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"jarmark/internal/draw/face"
)

// Reference library: x/image/font/sfnt reads whole face and subset, and draws
// every letter of both alike, composed letters (é, Å, ½) too.
func TestSubsetDrawsTheSameLetters(t *testing.T) {
	s := load(t)
	letters := []rune("aéÅçœ½gQ& ñß–“0R…𝄞漢")
	for _, name := range s.Names() {
		f := s.Face(name)
		sub, err := f.Subset(letters)
		if err != nil {
			t.Fatal(err)
		}
		data, _ := s.Bytes(name)
		whole, err := sfnt.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		cut, err := sfnt.Parse(withCmap(sub.Data))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if len(sub.Data)*3 > len(data) || len(sub.Runes) != 17 || sub.Glyph('漢') != 0 || sub.Glyph('z') != 0 {
			t.Errorf("%s: %d of %d bytes, %d letters", name, len(sub.Data), len(data), len(sub.Runes))
		}
		for i, r := range sub.Runes {
			if sub.Glyph(r) != uint16(i+1) {
				t.Errorf("%s: %q is glyph %d", name, r, sub.Glyph(r))
			}
			sameGlyph(t, whole, cut, r, sfnt.GlyphIndex(sub.Glyph(r)))
		}
		again, _ := f.Subset(append(letters, letters...))
		if !bytes.Equal(again.Data, sub.Data) {
			t.Errorf("%s: the same letters give other bytes", name)
		}
	}
}

func sameGlyph(t *testing.T, whole, cut *sfnt.Font, r rune, to sfnt.GlyphIndex) {
	t.Helper()
	var b sfnt.Buffer
	em := fixed.I(1000)
	from, err := whole.GlyphIndex(&b, r)
	if err != nil {
		t.Fatal(err)
	}
	wide, _ := whole.GlyphAdvance(&b, from, em, font.HintingNone)
	if got, err := cut.GlyphAdvance(&b, to, em, font.HintingNone); err != nil || got != wide {
		t.Errorf("%q: advance %v, want %v: %v", r, got, wide, err)
	}
	segs, err := whole.LoadGlyph(&b, from, em, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := append(sfnt.Segments(nil), segs...)
	got, err := cut.LoadGlyph(&b, to, em, nil)
	if err != nil || len(got) != len(want) {
		t.Fatalf("%q: %d segments, want %d: %v", r, len(got), len(want), err)
	}
	for i := range got {
		if got[i] != want[i] {
			t.Fatalf("%q: segment %d differs", r, i)
		}
	}
}

// withCmap adds the tables that the reader asks for and an embedded file need
// not have: an empty cmap, name, OS/2 and post.
func withCmap(data []byte) []byte {
	extra := map[string][]byte{
		"OS/2": make([]byte, 96), "cmap": {0, 0, 0, 1, 0, 3, 0, 1, 0, 0, 0, 12, 0, 4, 0, 24, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, 0xff, 0xff, 0, 0, 0xff, 0xff, 0, 1, 0, 0},
		"name": {0, 0, 0, 0, 0, 6}, "post": append([]byte{0, 3, 0, 0}, make([]byte, 28)...),
	}
	type entry struct {
		tag  string
		data []byte
	}
	var all []entry
	n := int(binary.BigEndian.Uint16(data[4:]))
	at := map[string][]byte{}
	for i := range n {
		rec := data[12+16*i:]
		from, size := binary.BigEndian.Uint32(rec[8:]), binary.BigEndian.Uint32(rec[12:])
		at[string(rec[:4])] = data[from : from+size]
	}
	for tag, d := range extra {
		at[tag] = d
	}
	for _, tag := range []string{"OS/2", "cmap", "cvt ", "fpgm", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post", "prep"} {
		if d, ok := at[tag]; ok {
			all = append(all, entry{tag, d})
		}
	}
	out := append([]byte{0, 1, 0, 0, 0, byte(len(all))}, make([]byte, 6)...)
	pos := 12 + 16*len(all)
	var body []byte
	for _, e := range all {
		out = append(append(out, e.tag...), 0, 0, 0, 0)
		out = binary.BigEndian.AppendUint32(out, uint32(pos+len(body)))
		out = binary.BigEndian.AppendUint32(out, uint32(len(e.data)))
		body = append(body, e.data...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	return append(out, body...)
}

// A damaged file gives an error or another face, never a fault.
func FuzzSubset(f *testing.F) {
	s := load(f)
	data, _ := s.Bytes("Figtree_400Regular")
	f.Add(uint32(100), byte(1))
	f.Add(uint32(len(data)/2), byte(0xff))
	f.Fuzz(func(t *testing.T, at uint32, v byte) {
		broken := bytes.Clone(data)
		broken[int(at)%len(broken)] ^= v
		openSubset(broken)
		openSubset(broken[:int(at)%len(broken)])
	})
}

// openSubset opens a file and cuts a subset from it.
func openSubset(data []byte) {
	s, err := face.Load(fstest.MapFS{"x.ttf": {Data: data}})
	if err != nil {
		return
	}
	if f, err := s.Open("x"); err == nil {
		_, _ = f.Subset([]rune("aÅ½&"))
	}
}
