package inspect

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"strconv"
	"strings"
	"testing"

	qrcode "github.com/skip2/go-qrcode"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// broken are frames broken on purpose, by the code that must be found. Each
// breaks one thing of a sound label.
var broken = []struct {
	code, what string
	with       func(*testing.T, *sample)
}{
	{"nothing-to-check", "no content", func(_ *testing.T, s *sample) { s.c = nil }},
	{"nothing-to-check", "no frame", func(_ *testing.T, s *sample) { s.fr = nil }},
	{"unknown-typeface", "a face nobody has", func(_ *testing.T, s *sample) { s.maker.Face = "Nobody" }},
	{"missing-glyph", "an emoji", func(_ *testing.T, s *sample) { s.maker.Segs[0].S = "Millbrook 🍓" }},
	{"outside", "type past the safe edge", func(_ *testing.T, s *sample) { s.maker.At.X = mm }},
	{"outside", "type past the right edge", func(_ *testing.T, s *sample) { s.identity.At.X = 45 * mm }},
	{"outside", "a code past the safe edge", func(_ *testing.T, s *sample) { s.qr.At.X = 63 * mm }},
	{"outside", "a drawing past the safe edge", func(_ *testing.T, s *sample) { s.bar.Pts[0].X = mm }},
	{"outside", "corners past an oval", func(_ *testing.T, s *sample) { s.fr.Shape = page.Ellipse }},
	{"overlap", "two lines", func(_ *testing.T, s *sample) { s.maker.At.Y = 24 * mm }},
	{"overlap", "type in the quiet zone", func(_ *testing.T, s *sample) { s.qr.At.X = 43 * mm }},
	{"overlap", "a drawing on type", func(_ *testing.T, s *sample) { s.bar.Pts[0].Y = 27 * mm }},
	{"outside", "a picture past the safe edge", pictured(1*mm, 3*mm, 6*mm, 3*mm)},
	{"overlap", "type on a picture", pictured(0, 0, 6*mm, 3*mm)},
	{"overlap", "a picture in the quiet zone", pictured(-1, 0, 6*mm, 3*mm)},
	{"overlap", "a drawing on a picture", pictured(-2, 0, 6*mm, 3*mm)},
	{"stretched", "a picture too wide", pictured(3*mm, 3*mm, 7*mm, 3*mm)},
	{"stretched", "a picture without pixels", func(_ *testing.T, s *sample) {
		s.fr.Items = append(s.fr.Items, &page.Picture{At: page.Rect{X: 3 * mm, Y: 3 * mm, W: mm, H: mm}})
	}},
	{"clear-space", "a picture beside the net quantity", pictured(-3, 0, mm, mm/2)},
	{"too-small", "a line of ingredients", func(_ *testing.T, s *sample) { s.ingredients.Size = 3 * mm }},
	{"too-small", "the net quantity", func(_ *testing.T, s *sample) { s.net.Size = 6 * mm }},
	{"too-small", "lawful, without the print reserve", reserved},
	{"too-small", "x under its least where o is not", between(label.XHeight, 'x', 'o')},
	{"too-small", "figures under their least where capitals are not", between(label.Digit, '1', 'H')},
	{"too-small", "type under its points", func(_ *testing.T, s *sample) {
		s.say("maker", func(b *label.Block) { b.Min = label.Height{On: label.PointSize, Length: unit.Points(10)} })
	}},
	{"too-small", "a prescribed sentence on a tag", func(_ *testing.T, s *sample) {
		s.fr.Piece = string(label.Tag)
		s.maker.Size = 3 * mm
		s.say("maker", func(b *label.Block) { b.Kind = label.Statement })
	}},
	{"not-prominent", "a name beside larger print", func(_ *testing.T, s *sample) { s.identity.Size = 3200 * unit.Micrometre }},
	{"missing-block", "no net quantity", func(_ *testing.T, s *sample) { s.drop(s.net) }},
	{"missing-block", "no ingredients", func(_ *testing.T, s *sample) { s.drop(s.ingredients) }},
	{"missing-block", "no name on a front", func(_ *testing.T, s *sample) { s.fr.Piece = string(label.Front); s.drop(s.identity) }},
	{"wrong-words", "a word left out", func(_ *testing.T, s *sample) { s.ingredients.Segs[0].S = "Ingredients: plums" }},
	{"wrong-words", "prescribed words re-cased", func(_ *testing.T, s *sample) {
		s.maker.Segs[0].S = "MILLBROOK 97000"
		s.say("maker", func(b *label.Block) { b.Exact = true })
	}},
	{"zone", "the net quantity at half height", func(_ *testing.T, s *sample) { s.net.At.Y = 44 * mm }},
	{"clear-space", "a line beside the net quantity", func(_ *testing.T, s *sample) { s.maker.At.Y = 42 * mm }},
	{"clear-space", "a code close above it", func(_ *testing.T, s *sample) { s.qr.At.Y, s.qr.At.X = 30*mm, 48*mm }},
	{"clear-space", "a drawing close above it", func(_ *testing.T, s *sample) {
		for i := range s.bar.Pts {
			s.bar.Pts[i].X, s.bar.Pts[i].Y = s.bar.Pts[i].X+8*mm, s.bar.Pts[i].Y+12*mm
		}
	}},
	{"qr-empty", "no modules", func(_ *testing.T, s *sample) { s.qr.Modules = nil }},
	{"qr-module", "modules too fine", func(_ *testing.T, s *sample) { s.qr.At.W, s.qr.At.H = 8*mm, 8*mm }},
	{"qr-module", "finer than the content asks", func(_ *testing.T, s *sample) { s.c.QR.MinModule = mm }},
	{"qr-quiet-zone", "three modules", func(_ *testing.T, s *sample) { s.qr.Quiet = 3 }},
	{"qr-quiet-zone", "past the trim", func(_ *testing.T, s *sample) { s.qr.At.X = 62 * mm }},
	{"qr-quiet-zone", "a bar in it", func(_ *testing.T, s *sample) { s.bar.Pts[1].X, s.bar.Pts[2].X = 57*mm, 57*mm }},
	{"qr-quiet-zone", "the edge of a ground in it", func(_ *testing.T, s *sample) {
		edge := bar(57*mm, 10*mm, 23*mm, 30*mm, page.Colour{R: 250, G: 250, B: 250})
		edge.Bleed = true
		s.fr.Items = append(s.fr.Items, edge)
	}},
	{"qr-level", "L where M has room", func(t *testing.T, s *sample) {
		s.qr.Modules = modules(t, "https://thornfield.example/r/1", qrcode.Low)
	}},
	{"intervening", "a code between ingredients and maker", func(_ *testing.T, s *sample) {
		s.qr.At.X, s.qr.At.Y, s.qr.At.W, s.qr.At.H = 20*mm, 26*mm, 11*mm, 11*mm
		s.maker.At.Y = 57 * mm
		s.net.At.Y = 75 * mm
		s.fr.H = 90 * mm
	}},
	{"field-of-view", "no name beside the net quantity", func(_ *testing.T, s *sample) { s.drop(s.identity) }},
	{"contrast", "grey type", func(_ *testing.T, s *sample) { s.maker.Colour = page.Colour{R: 150, G: 150, B: 150} }},
	{"contrast", "dark type on a dark ground", func(_ *testing.T, s *sample) { s.fr.Items[0].(*page.Path).Fill = &page.Colour{R: 60} }},
	{"contrast", "a pale code", func(_ *testing.T, s *sample) { s.qr.Dark = page.Colour{R: 150, G: 150, B: 150} }},
}

// reserved sets a line as high as the law asks, and no more.
func reserved(t *testing.T, s *sample) {
	o, _ := extentOf(typefaces(t).Face(plain), 'o')
	s.ingredients.Size = unit.Length(float64(unit.Inch/16) / (o.bottom - o.top) * 1.01)
}

// between sets a line at a size where one letter is lower than its least and
// another, which must not be measured in its place, is not.
func between(on label.Measure, low, high rune) func(*testing.T, *sample) {
	return func(t *testing.T, s *sample) {
		fs := typefaces(t)
		const least = 2 * mm
		for _, name := range fs.Names() {
			l, _ := extentOf(fs.Face(name), low)
			h, _ := extentOf(fs.Face(name), high)
			x, y := -l.top, h.bottom-h.top
			if y > x*1.01 {
				s.maker.Face, s.maker.Size = name, unit.Length(float64(least)*1.031/(x*0.4+y*0.6))
				s.say("maker", func(b *label.Block) { b.Min = label.Height{On: on, Length: least} })
				return
			}
		}
		t.Fatalf("no face has a %c higher than its %c", high, low)
	}
}

func codesOf(l diag.List) map[string]int {
	out := map[string]int{}
	for _, d := range l {
		out[d.Code]++
	}
	return out
}

// TestEveryCodeIsFound breaks sound frames on purpose, and every code of the
// table must have a frame that brings it out.
func TestEveryCodeIsFound(t *testing.T) {
	fs := typefaces(t)
	whole := newSample(t)
	for _, d := range Frame(whole.fr, whole.c, fs, Default()) {
		t.Fatalf("a sound label: %s: %s", d.Code, d.Message)
	}
	tried := map[string]bool{}
	for _, x := range broken {
		s := newSample(t)
		x.with(t, s)
		tried[x.code] = true
		if got := codesOf(Frame(s.fr, s.c, fs, Default())); got[x.code] == 0 {
			t.Errorf("%s (%s): found only %v", x.code, x.what, got)
		}
	}
	for code := range Codes {
		if !tried[code] {
			t.Errorf("no frame is broken to bring out %q", code)
		}
	}
}

// TestCodesAreListed compares the table with the code strings of the source.
func TestCodesAreListed(t *testing.T) {
	said := map[string]bool{}
	notTests := func(f fs.FileInfo) bool { return !strings.HasSuffix(f.Name(), "_test.go") }
	pkgs, err := parser.ParseDir(token.NewFileSet(), ".", notTests, 0)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(pkgs["inspect"], func(n ast.Node) bool {
		c, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		if f, ok := c.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Errorf" {
			if lit, ok := c.Args[0].(*ast.BasicLit); ok {
				code, _ := strconv.Unquote(lit.Value)
				said[code] = true
			}
		}
		return true
	})
	for code := range said {
		if Codes[code] == "" {
			t.Errorf("%q is reported and not in the table", code)
		}
	}
	for code := range Codes {
		if !said[code] {
			t.Errorf("%q is in the table and never reported", code)
		}
	}
}

// A larger frame of the same kinds says that a fault is not seen where there
// is none: level L is right where M would not scan, a lawful height passes
// without the reserve, a stall's card may be small.
func TestSoundFramesPass(t *testing.T) {
	fs := typefaces(t)
	for what, with := range map[string]struct {
		opt Options
		do  func(*sample)
	}{
		"L on a small code": {Default(), func(s *sample) {
			s.qr.Modules = modules(t, "https://thornfield.example/r/1", qrcode.Low)
			s.qr.At.W = unit.Length(len(s.qr.Modules)) * 360 * unit.Micrometre
			s.qr.At.H = s.qr.At.W
		}},
		"no reserve asked":            {Options{}, func(s *sample) { reserved(t, s) }},
		"small print on a shelf card": {Default(), func(s *sample) { s.fr.Piece = string(label.ShelfCard); s.maker.Size = 2 * mm }},
		"re-cased words":              {Default(), func(s *sample) { s.maker.Segs[0].S = "MILLBROOK 97000" }},
	} {
		s := newSample(t)
		with.do(s)
		for _, d := range Frame(s.fr, s.c, fs, with.opt) {
			t.Errorf("%s: %s: %s", what, d.Code, d.Message)
		}
	}
}
