package pdf_test

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/goregular"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/png"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/draw/svg"
)

// TestOwnTypefaceIsReadBack: a line in our face with Greek and Cyrillic letters
// that the maker's draws, and one in the maker's: PDFium reads the words, both
// typefaces are embedded, and the PNG and the SVG have the same letters.
func TestOwnTypefaceIsReadBack(t *testing.T) {
	own, err := face.Own("Go.ttf", goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	set := faces(t).With([]*face.Face{own})
	said := []string{"Plum Сливы jam Ωβγ 9", "Сливы and Ωβγ alone"}
	d := one(line("Figtree_400Regular", 14, 10, 20, ink, said[0]), line(own.Name, 14, 10, 40, ink, said[1]))
	var out bytes.Buffer
	if err := pdf.Write(&out, d, set); err != nil {
		t.Fatal(err)
	}
	got := presstest.Open(t, out.Bytes()).Text(0)
	for _, s := range said {
		if !strings.Contains(got, s) {
			t.Errorf("PDFium reads %q, not %q", got, s)
		}
	}
	if n := bytes.Count(out.Bytes(), []byte("/FontFile2")); n != 2 {
		t.Errorf("%d typefaces are embedded", n)
	}
	read := presstest.Open(t, out.Bytes()).Render(0, 100)
	drawn, err := png.Page(d, 0, set, 100)
	if err != nil {
		t.Fatal(err)
	}
	differ, inked := 0, 0
	for i := 0; i < len(drawn.Pix); i += 4 {
		a, b := int(drawn.Pix[i]), int(read.Pix[i])
		if a < 128 || b < 128 {
			inked++
		}
		if max(a, b)-min(a, b) > 150 {
			differ++
		}
	}
	if inked < 300 || differ*20 > inked {
		t.Errorf("%d of %d inked dots differ from PDFium's", differ, inked)
	}
	var pic bytes.Buffer
	if err := svg.Page(&pic, d, 0, set); err != nil || !strings.Contains(pic.String(), string(own.Name)+"-3a9") {
		t.Errorf("the SVG has no Ω of the maker's face: %v", err)
	}
	if err := pdf.Write(new(bytes.Buffer), one(line("Figtree_400Regular", 14, 10, 20, page.Colour{}, "שלום")), set); err == nil {
		t.Error("Hebrew is set from the left")
	}
}
