package inspect

import (
	"math"
	"testing"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// The box of a glyph is that of its curves drawn point by point (the definition
// of a cubic by de Casteljau), for every letter of every face.
func TestExtentIsThatOfTheCurves(t *testing.T) {
	fs := typefaces(t)
	for _, name := range fs.Names() {
		f := fs.Face(name)
		for r := '!'; r <= 'ÿ'; r++ {
			e, ok := extentOf(f, r)
			want, drawn := drawn(f.Outline(r))
			if ok != drawn {
				t.Fatalf("%s %q: ink %v, want %v", name, r, ok, drawn)
			}
			for i, d := range []float64{e.left - want.left, e.right - want.right, e.top - want.top, e.bottom - want.bottom} {
				if ok && math.Abs(d) > 2e-5 {
					t.Fatalf("%s %q: side %d is off by %g em", name, r, i, d)
				}
			}
		}
	}
}

// drawn bounds an outline by 400 points a curve.
func drawn(o face.Outline) (e extent, ok bool) {
	if len(o.Pts) == 0 {
		return e, false
	}
	e = extent{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	mid := func(a, b face.Vec, t float64) face.Vec { return face.Vec{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t} }
	at, pts := o.Pts[0], o.Pts
	for _, op := range o.Ops {
		switch op {
		case page.MoveTo, page.LineTo:
			at, pts = pts[0], pts[1:]
			e.reach(at)
		case page.CubicTo:
			for i := range 401 {
				u := float64(i) / 400
				ab, bc, cd := mid(at, pts[0], u), mid(pts[0], pts[1], u), mid(pts[1], pts[2], u)
				e.reach(mid(mid(ab, bc, u), mid(bc, cd, u), u))
			}
			at, pts = pts[2], pts[3:]
		}
	}
	return e, true
}

// The ink of a line lies where its letters are drawn: pen, segment and size.
func TestInkOfALine(t *testing.T) {
	f := typefaces(t).Face(plain)
	l := line("x", "", 10*mm, 20*mm, 10*mm)
	l.Segs = []page.Seg{{S: "ox"}, {X: 30 * mm, S: "Hg"}}
	o, _ := extentOf(f, 'o')
	g, _ := extentOf(f, 'g')
	h, _ := extentOf(f, 'H')
	box := inkOf(l, f)
	right := 40 + float64(f.Advance('H'))/100 + g.right*10
	for what, pair := range map[string][2]float64{
		"left": {box.X.MM(), 10 + o.left*10}, "top": {box.Y.MM(), 20 + math.Min(h.top, o.top)*10},
		"right": {(box.X + box.W).MM(), right}, "bottom": {(box.Y + box.H).MM(), 20 + g.bottom*10},
	} {
		if math.Abs(pair[0]-pair[1]) > 0.001 {
			t.Errorf("%s at %.3f mm, want %.3f", what, pair[0], pair[1])
		}
	}
	if blank := inkOf(line("x", "  ", 0, 0, mm), f); blank.W != 0 {
		t.Error("blanks leave ink")
	}
}

// What a law measures where there are no letters of the lower case: capitals
// and the figures that stand there (21 CFR 101.7(h)(2)).
func TestAnyCaseWithoutSmallLetters(t *testing.T) {
	f := typefaces(t).Face(plain)
	capital, seven := above(f, mm, "H"), whole(f, mm, "7")
	if got := measured(label.AnyCase, "NET WT 7", f, mm); got != min(capital, seven) {
		t.Errorf("%v, want the lower of H %v and 7 %v", got, capital, seven)
	}
	if got := measured(label.AnyCase, "NET", f, mm); got != min(capital, whole(f, mm, "0123456789")) {
		t.Errorf("without figures: %v", got)
	}
	if got := measured(label.AnyCase, "net 7", f, mm); got != whole(f, mm, "o") {
		t.Errorf("with small letters: %v", got)
	}
	if digitsOf("10 oz (283 g)") != "10283" || digitsOf("ounces") != "0123456789" {
		t.Error("figures of a text")
	}
	if least(f, mm, "", nil) != 0 || least(f, mm, " ", func(extent) float64 { return 1 }) != 0 {
		t.Error("letters without ink have a height")
	}
}

// edges are frames just this side and just that side of a limit.
var edges = []struct {
	code, what string
	by         unit.Length // how far beyond the limit the second frame is
	with       func(s *sample, over unit.Length)
}{
	{"zone", "ink of the net quantity on the line of the zone", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		s.net.At.Y -= inkOf(s.net, sampleFace).Y - s.fr.H*bottomZone/100 + slack + over - 10*unit.Micrometre
		s.maker.At.Y, s.bar.Pts = 25*mm, nil
		s.bar.Ops = nil
		s.say("net", func(b *label.Block) { b.Clear = false })
	}},
	{"clear-space", "a line under the height of N", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		clearOf(s)
		s.maker.At.Y = inkOf(s.net, sampleFace).Y - measured(label.Capital, "", sampleFace, s.net.Size) + slack - over - drop(s.maker)
		s.maker.At.Y += 2 * over // over: down into the space
	}},
	{"clear-space", "a line two N beside it", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		clearOf(s)
		box := inkOf(s.net, sampleFace)
		s.maker.At.Y = s.net.At.Y
		s.maker.At.X = box.X + box.W + 2*sampleFace.Width("N", s.net.Size) - (inkOf(s.maker, sampleFace).X - s.maker.At.X) + 20*unit.Micrometre - over
	}},
	{"clear-space", "a code at the height of N", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		clearOf(s)
		s.qr.At.X = 20 * mm
		s.qr.At.Y = inkOf(s.net, sampleFace).Y - measured(label.Capital, "", sampleFace, s.net.Size) - s.qr.At.H + over
		s.ingredients.At.Y, s.maker.At.Y = 18*mm, 22*mm
	}},
	{"clear-space", "a drawing at half the height of N", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		clearOf(s)
		y := inkOf(s.net, sampleFace).Y - measured(label.Capital, "", sampleFace, s.net.Size)/2 - mm + over
		*s.bar = *bar(12*mm, y, 20*mm, mm, page.Colour{R: 90})
	}},
	{"qr-module", "a module of the least", 20 * unit.Micrometre, func(s *sample, over unit.Length) {
		s.qr.At.W = (leastModule - over) * unit.Length(len(s.qr.Modules))
		s.qr.At.H = s.qr.At.W
	}},
	{"qr-module", "a module of what the content asks", 20 * unit.Micrometre, func(s *sample, over unit.Length) {
		s.c.QR.MinModule = 600 * unit.Micrometre
		s.qr.At.W = (600*unit.Micrometre - over) * unit.Length(len(s.qr.Modules))
		s.qr.At.H = s.qr.At.W
	}},
	{"too-small", "the least height with its reserve", 30 * unit.Micrometre, func(s *sample, over unit.Length) {
		o, _ := extentOf(sampleFace, 'o')
		least := float64(label.Height{Length: unit.Inch / 16}.With(label.PrintReserve).Length)
		s.ingredients.Size = unit.Length(least/(o.bottom-o.top)) + 5*unit.Micrometre - over
	}},
	{"not-prominent", "half of the largest print", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		s.identity.Size = s.net.Size/2 - over
	}},
	{"outside", "ink on the safe edge", 100 * unit.Micrometre, func(s *sample, over unit.Length) {
		s.maker.At.X -= inkOf(s.maker, sampleFace).X - s.fr.Safe + slack + over - 10*unit.Micrometre
	}},
}

var sampleFace *face.Face

// clearOf takes away all that might stand in the clear space but what is tried.
func clearOf(s *sample) {
	s.qr.At.Y = 12 * mm
	s.bar.Ops, s.bar.Pts = nil, nil
}

// drop is how far the ink of a line lies below its baseline's place.
func drop(t *page.Text) unit.Length {
	box := inkOf(t, sampleFace)
	return box.Y + box.H - t.At.Y
}

func TestLimitsAreExact(t *testing.T) {
	fs := typefaces(t)
	sampleFace = fs.Face(plain)
	for _, e := range edges {
		within, beyond := newSample(t), newSample(t)
		e.with(within, 0)
		e.with(beyond, e.by)
		if n := codesOf(Frame(within.fr, within.c, fs, Default()))[e.code]; n != 0 {
			t.Errorf("%s: told at the limit: %v", e.what, Frame(within.fr, within.c, fs, Default()))
		}
		if n := codesOf(Frame(beyond.fr, beyond.c, fs, Default()))[e.code]; n == 0 {
			t.Errorf("%s: not told %.2f mm beyond it: %v", e.what, e.by.MM(), Frame(beyond.fr, beyond.c, fs, Default()))
		}
	}
}
