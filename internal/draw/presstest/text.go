package presstest

import (
	"sort"
	"strings"

	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Char is one letter as PDFium reads it.
type Char struct {
	R     rune
	At    page.Point  // on the baseline
	Size  unit.Length // em size before any transform
	Angle float64     // radians, as PDFium gives it
	// Guessed marks spaces and line breaks PDFium puts in between.
	Guessed bool
}

// Font is a typeface a page uses.
type Font struct {
	Name     string
	Embedded bool
}

// Chars reads the letters of page i in PDFium's order.
func (f *File) Chars(i int) []Char {
	f.t.Helper()
	_, height := f.Size(i)
	var out []Char
	f.withText(i, func(tp references.FPDF_TEXTPAGE, n int) {
		for k := 0; k < n; k++ {
			out = append(out, f.char(tp, k, height))
		}
	})
	return out
}

// withText runs do with the text page of page i and its number of letters.
func (f *File) withText(i int, do func(references.FPDF_TEXTPAGE, int)) {
	f.t.Helper()
	mu.Lock()
	defer mu.Unlock()
	loaded, err := f.pdf.FPDFText_LoadPage(&requests.FPDFText_LoadPage{Page: f.page(i)})
	f.must(err)
	defer f.pdf.FPDFText_ClosePage(&requests.FPDFText_ClosePage{TextPage: loaded.TextPage})
	n, err := f.pdf.FPDFText_CountChars(&requests.FPDFText_CountChars{TextPage: loaded.TextPage})
	f.must(err)
	do(loaded.TextPage, n.Count)
}

func (f *File) char(tp references.FPDF_TEXTPAGE, k int, height unit.Length) Char {
	f.t.Helper()
	code, err := f.pdf.FPDFText_GetUnicode(&requests.FPDFText_GetUnicode{TextPage: tp, Index: k})
	f.must(err)
	guessed, err := f.pdf.FPDFText_IsGenerated(&requests.FPDFText_IsGenerated{TextPage: tp, Index: k})
	f.must(err)
	c := Char{R: rune(code.Unicode), Guessed: guessed.IsGenerated}
	if c.Guessed {
		return c
	}
	at, err := f.pdf.FPDFText_GetCharOrigin(&requests.FPDFText_GetCharOrigin{TextPage: tp, Index: k})
	f.must(err)
	size, err := f.pdf.FPDFText_GetFontSize(&requests.FPDFText_GetFontSize{TextPage: tp, Index: k})
	f.must(err)
	angle, err := f.pdf.FPDFText_GetCharAngle(&requests.FPDFText_GetCharAngle{TextPage: tp, Index: k})
	f.must(err)
	c.At = page.Point{X: unit.Points(at.X), Y: height - unit.Points(at.Y)}
	c.Size, c.Angle = unit.Points(size.FontSize), float64(angle.CharAngle)
	return c
}

// Text reads page i as a person copying it would get it.
func (f *File) Text(i int) string {
	f.t.Helper()
	var b strings.Builder
	for _, c := range f.Chars(i) {
		b.WriteRune(c.R)
	}
	return strings.ReplaceAll(b.String(), "\r\n", "\n")
}

// Squeezed reads page i without any blanks: what is there whatever the
// letter-spacing, of which PDFium makes spaces.
func (f *File) Squeezed(i int) string {
	f.t.Helper()
	return Squeeze(f.Text(i))
}

// Squeeze takes the blanks out of a text.
func Squeeze(s string) string { return strings.Join(strings.Fields(s), "") }

// Find gives the first letter of every place on page i where a text stands,
// blanks not minded.
func (f *File) Find(i int, text string) []Char {
	f.t.Helper()
	var solid []Char
	var b strings.Builder
	offsets := map[int]int{}
	for _, c := range f.Chars(i) {
		if Squeeze(string(c.R)) == "" {
			continue
		}
		offsets[b.Len()] = len(solid)
		b.WriteRune(c.R)
		solid = append(solid, c)
	}
	all, want := b.String(), Squeeze(text)
	var out []Char
	for at := 0; want != ""; {
		k := strings.Index(all[at:], want)
		if k < 0 {
			break
		}
		out = append(out, solid[offsets[at+k]])
		at += k + len(want)
	}
	return out
}

// Fonts lists the typefaces the letters of page i are set in, by name.
func (f *File) Fonts(i int) []Font {
	f.t.Helper()
	seen := map[string]bool{}
	f.withText(i, func(tp references.FPDF_TEXTPAGE, n int) {
		for k := 0; k < n; k++ {
			obj, err := f.pdf.FPDFText_GetTextObject(&requests.FPDFText_GetTextObject{TextPage: tp, Index: k})
			if err != nil {
				continue // a guessed blank belongs to no object
			}
			font, err := f.pdf.FPDFTextObj_GetFont(&requests.FPDFTextObj_GetFont{PageObject: obj.TextObject})
			f.must(err)
			name, err := f.pdf.FPDFFont_GetBaseFontName(&requests.FPDFFont_GetBaseFontName{Font: font.Font})
			f.must(err)
			in, err := f.pdf.FPDFFont_GetIsEmbedded(&requests.FPDFFont_GetIsEmbedded{Font: font.Font})
			f.must(err)
			seen[name.BaseFontName] = in.IsEmbedded
		}
	})
	out := make([]Font, 0, len(seen))
	for name, in := range seen {
		out = append(out, Font{name, in})
	}
	sort.Slice(out, func(a, b int) bool { return out[a].Name < out[b].Name })
	return out
}
