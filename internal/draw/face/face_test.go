package face_test

import (
	"io/fs"
	"math"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/go-pdf/fpdf"
	"pgregory.net/rapid"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

func load(t testing.TB) *face.Set {
	t.Helper()
	s, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Reference library: fpdf v0.9.0 measures the same strings with its own
// reading of the same font files.
func TestWidthsAgreeWithFpdf(t *testing.T) {
	s := load(t)
	pdf := fpdf.New("P", "mm", "A4", "")
	for _, name := range s.Names() {
		data, err := fs.ReadFile(fonts.FS, string(name)+".ttf")
		if err != nil {
			t.Fatal(err)
		}
		pdf.AddUTF8FontFromBytes(string(name), "", data)
	}
	letters := []rune("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 .,;:&()/-–—’“”%°äöüßéèàçñœÆ€£¢½¼·")
	for _, name := range s.Names() {
		f := s.Face(name)
		rapid.Check(t, func(rt *rapid.T) {
			text := rapid.StringOfN(rapid.SampledFrom(letters), 1, 90, -1).Draw(rt, "text")
			for _, r := range text {
				if !f.Has(r) {
					return
				}
			}
			pt := rapid.Float64Range(4, 40).Draw(rt, "pt")
			pdf.SetFont(string(name), "", pt)
			want := pdf.GetStringWidth(text)
			got := f.Width(text, unit.Points(pt)).MM()
			if math.Abs(got-want) > 0.05 {
				rt.Fatalf("%s %.2f pt %q: %.3f mm, fpdf says %.3f mm", name, pt, text, got, want)
			}
		})
	}
	if err := pdf.Error(); err != nil {
		t.Fatal(err)
	}
}

// OpenType specification, OS/2 table: sxHeight and sCapHeight are the type
// designer's own statement of these heights; the glyphs measured here must
// match them within 15/1000 em (overshoot and slant aside). Handwriting is left
// out: its table states heights its letters do not keep to.
func TestHeightsMatchTheFontTables(t *testing.T) {
	s := load(t)
	for _, name := range s.Names() {
		if name == "Caveat_600SemiBold" {
			continue
		}
		f := s.Face(name)
		em := unit.Length(1_000_000)
		data, err := s.Bytes(name)
		if err != nil {
			t.Fatal(err)
		}
		x, c := os2Heights(data)
		if d := float64(f.XHeight(em))/1000 - x; math.Abs(d) > 15 {
			t.Errorf("%s: x-height off by %.0f/1000 em", name, d)
		}
		if d := float64(f.CapHeight(em))/1000 - c; math.Abs(d) > 15 {
			t.Errorf("%s: cap height off by %.0f/1000 em", name, d)
		}
		if f.LowerO(em) < f.XHeight(em) || f.DigitHeight(em) <= f.XHeight(em)*9/10 {
			t.Errorf("%s: o %v, x %v, digit %v", name, f.LowerO(em), f.XHeight(em), f.DigitHeight(em))
		}
	}
}

// os2Heights reads sxHeight and sCapHeight in 1/1000 em by hand (OpenType
// specification: table directory, head.unitsPerEm, OS/2 version 2 and later).
func os2Heights(data []byte) (x, c float64) {
	u16 := func(i int) int { return int(data[i])<<8 | int(data[i+1]) }
	u32 := func(i int) int { return u16(i)<<16 | u16(i+2) }
	var em float64
	var os2 int
	for i := range u16(4) {
		rec := 12 + 16*i
		switch string(data[rec : rec+4]) {
		case "head":
			em = float64(u16(u32(rec+8) + 18))
		case "OS/2":
			os2 = u32(rec + 8)
		}
	}
	return float64(u16(os2+86)) * 1000 / em, float64(u16(os2+88)) * 1000 / em
}

func TestKerning(t *testing.T) {
	s := load(t)
	for _, name := range []page.Face{"Fraunces_600SemiBold", "Figtree_400Regular"} {
		f := s.Face(name)
		if k := f.Kern('T', 'o'); k >= 0 {
			t.Errorf("%s: To kerns by %d, want it drawn together", name, k)
		}
		if k := f.Kern('n', 'n'); k != 0 {
			t.Errorf("%s: nn kerns by %d", name, k)
		}
		if f.Kern('T', 'o') != f.Kern('T', 'o') || f.Kern('é', 'é') != f.Kern('é', 'é') {
			t.Errorf("%s: the second answer differs", name)
		}
	}
}

func TestCoverage(t *testing.T) {
	f := load(t).Face("Figtree_400Regular")
	for _, r := range "aZ9 é€ßœ½" {
		if !f.Has(r) {
			t.Errorf("lacks %q", r)
		}
	}
	for _, r := range []rune{'🍓', '漢', '\n', 0, -1, 0x10FFFF} {
		if f.Has(r) || f.Advance(r) != 0 {
			t.Errorf("claims to have %U", r)
		}
	}
}

func TestOutlineMatchesInk(t *testing.T) {
	f := load(t).Face("Fraunces_600SemiBold")
	for _, r := range "HxogQ" {
		o, k := f.Outline(r), f.Ink(r)
		n, top := 0, 0.0
		for _, op := range o.Ops {
			n += [...]int{1, 1, 3, 0}[op]
		}
		for _, p := range o.Pts {
			top = min(top, p.Y)
		}
		if n != len(o.Pts) {
			t.Errorf("%q: %d points for operations that take %d", r, len(o.Pts), n)
		}
		if d := -top*1000 - float64(k.Top); d < -1 || d > 30 {
			t.Errorf("%q: outline top %.0f, ink top %d", r, -top*1000, k.Top)
		}
	}
	if len(f.Outline(' ').Ops) != 0 || len(f.Outline('🍓').Ops) != 0 {
		t.Error("a space or a missing glyph has an outline")
	}
}

func TestDamagedAndMissing(t *testing.T) {
	if _, err := face.Load(fstest.MapFS{}); err == nil {
		t.Error("an empty folder loads")
	}
	if _, err := face.Load(nil); err == nil {
		t.Error("nil loads")
	}
	s, err := face.Load(fstest.MapFS{"bad.ttf": {Data: []byte("not a font")}})
	if err != nil {
		t.Fatal(err)
	}
	if f, err := s.Open("bad"); f != nil || err == nil {
		t.Error("a damaged file opens")
	}
	if s.Face("none") != nil || s.Has("none") || !s.Has("bad") {
		t.Error("wrong answer on names")
	}
}

func TestConcurrentUse(t *testing.T) {
	s := load(t)
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			for _, name := range s.Names() {
				f := s.Face(name)
				for r := rune(' '); r < 0x2300; r += 3 {
					f.Advance(r)
					f.Kern(r, 'a')
					f.Ink(r)
				}
				f.Outline('&')
			}
		})
	}
	wg.Wait()
}

func BenchmarkWidth(b *testing.B) {
	f := load(b).Face("Figtree_400Regular")
	for b.Loop() {
		f.Width("strawberries, sugar, rhubarb, lemon juice, pectin", unit.Points(9))
	}
}
