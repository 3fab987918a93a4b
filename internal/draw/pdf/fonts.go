package pdf

import (
	"bytes"
	"fmt"
	"sort"
	"strings"
	"unicode/utf16"

	"github.com/go-pdf/fpdf"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// embed adds the used faces to the file, tells fpdf which letters to keep in
// each subset, and gives the resource name ("F1c2…") of each face.
//
// fpdf notes used letters in Text and names a font only in its output, so
// both are had from a template that is never placed.
func embed(f *fpdf.Fpdf, s *survey, faces *face.Set) (map[page.Face]string, error) {
	used := make([]page.Face, 0, len(s.runes))
	for name := range s.runes {
		used = append(used, name)
	}
	sort.Slice(used, func(i, j int) bool { return used[i] < used[j] })
	names := make(map[page.Face]string, len(used))
	for _, name := range used {
		data, err := faces.Bytes(name)
		if err != nil {
			return nil, err
		}
		f.AddUTF8FontFromBytes(string(name), "", data)
		probe := f.CreateTemplate(func(t *fpdf.Tpl) {
			t.SetFont(string(name), "", 1)
			t.Text(0, 0, s.runes[name].String())
		})
		id, ok := fontName(probe.Bytes())
		if err := f.Error(); err != nil || !ok {
			return nil, fmt.Errorf("typeface %s cannot be embedded: %v", name, err)
		}
		names[name] = id
	}
	return names, nil
}

// fontName finds the resource name in "BT /F… 1.00 Tf ET".
func fontName(content []byte) (string, bool) {
	_, rest, ok := bytes.Cut(content, []byte("BT /"))
	if !ok {
		return "", false
	}
	name, _, ok := bytes.Cut(rest, []byte(" "))
	return string(name), ok && len(name) > 1
}

// runeSet is a set of letters of the Basic Multilingual Plane.
type runeSet [1 << 16 / 64]uint64

func (s *runeSet) has(r rune) bool { return s[r>>6]>>(r&63)&1 == 1 }
func (s *runeSet) add(r rune)      { s[r>>6] |= 1 << (r & 63) }

func (s *runeSet) String() string {
	var b strings.Builder
	for i, w := range s {
		for j := 0; w != 0; j, w = j+1, w>>1 {
			if w&1 == 1 {
				b.WriteRune(rune(i*64 + j))
			}
		}
	}
	return b.String()
}

// infoString is text as the information dictionary wants it: UTF-16BE with a
// byte order mark (ISO 32000-1, 7.9.2.2). fpdf's own conversion breaks on
// letters above U+FFFF.
func infoString(s string) string {
	if s == "" {
		return ""
	}
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(s)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}

func sizeOf(w, h unit.Length) fpdf.SizeType {
	return fpdf.SizeType{Wd: w.MM(), Ht: h.MM()}
}
