package face_test

import (
	"slices"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/presstest"
)

// TestKeyedFonts: a font of a character collection draws the same letters, in either
// format of FDSelect (Adobe Technical Note 5176, section 19).
func TestKeyedFonts(t *testing.T) {
	plain, err := face.Own("x.otf", postScript(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, format := range []byte{0, 3} {
		data, err := presstest.PostScriptKeyed(goregular.TTF, format)
		if err != nil {
			t.Fatal(err)
		}
		own, err := face.Own("x.otf", data)
		if err != nil {
			t.Fatalf("format %d: %v", format, err)
		}
		for _, r := range cffLetters {
			if !slices.Equal(own.Outline(r).Pts, plain.Outline(r).Pts) {
				t.Errorf("format %d: another %q", format, r)
			}
		}
	}
}

// TestLettersThatCannotBeRead: a letter whose program is broken, or is put together of
// two others (5177, appendix C), or calls without end, is one the face lacks: another
// face draws it, and the rest of the file is used.
func TestLettersThatCannotBeRead(t *testing.T) {
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	q, _ := font.GlyphIndex(nil, 'Q')
	line := []byte{139, 239, 5} // 0 100 rlineto
	for name, program := range map[string][]byte{
		"put together": {139, 139, 204, 205, 14}, "no end": {139, 139, 21}, "operator": {139, 139, 21, 12, 99, 14},
		"no start": {139, 239, 5, 14}, "subroutine": {250, 0, 10, 14}, "cut": {139, 139, 21, 28, 1},
		"long": append(append([]byte{139, 139, 21}, slices.Concat(slices.Repeat([][]byte{line}, 40_000)...)...), 14),
		"far":  append(append([]byte{139, 139, 21}, slices.Concat(slices.Repeat([][]byte{{139, 28, 0x7f, 0xff, 5}}, 9)...)...), 14),
	} {
		data, err := presstest.PostScriptOf(goregular.TTF, 2./3, map[sfnt.GlyphIndex][]byte{q: program})
		if err != nil {
			t.Fatal(err)
		}
		own, err := face.Own("x.otf", data)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if own.Has('Q') || !own.Has('O') {
			t.Errorf("%s: it says it has the letter, or lacks another", name)
		}
		over := load(t).With([]*face.Face{own}).Face(own.Name)
		if o := over.Owner('Q'); o == over || !over.Has('Q') || len(over.Outline('Q').Ops) == 0 {
			t.Errorf("%s: nothing else draws the letter", name)
		}
		if s, err := over.Subset([]rune("OQ")); err != nil || s.Glyph('Q') != 0 || s.Glyph('O') == 0 {
			t.Errorf("%s: embedded: %v", name, err)
		}
	}
}
