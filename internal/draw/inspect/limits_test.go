package inspect

import (
	"math"
	"slices"
	"testing"

	qrcode "github.com/skip2/go-qrcode"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Where a cubic turns, against the roots of its slope worked by hand:
// 6t^2 - 6t + 1 (values 0, 1, -1, 0), a parabola (0, 1, 1, 0) at its middle, a
// straight line nowhere, and turns that lie outside the curve.
func TestTurns(t *testing.T) {
	for _, c := range []struct {
		at   [4]float64
		want []float64
	}{
		{[4]float64{0, 1, -1, 0}, []float64{0.5 - math.Sqrt(3)/6, 0.5 + math.Sqrt(3)/6}},
		{[4]float64{0, 1, 1, 0}, []float64{0.5}},
		{[4]float64{0, 1, 2, 3}, nil},
		{[4]float64{0, 1, 3, 6}, nil}, // 3 + 6t: turns before it begins
		{[4]float64{0, 0.25, 0.75, 1}, nil},
	} {
		got := turns(c.at[0], c.at[1], c.at[2], c.at[3])
		slices.Sort(got)
		if len(got) != len(c.want) {
			t.Errorf("%v turns at %v, want %v", c.at, got, c.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-12 {
				t.Errorf("%v turns at %v, want %v", c.at, got, c.want)
			}
		}
	}
}

func grey(v uint8) page.Colour { return page.Colour{R: v, G: v, B: v} }

// Greys on white by WCAG 2.2's own formula (1.4.3): #767676 has 4.54:1, #777777
// 4.48:1; from 18 pt, 3:1: #949494 has 3.03:1, #969696 2.96:1.
func TestContrastAtItsLimits(t *testing.T) {
	fs := typefaces(t)
	large := unit.Points(18)
	for _, c := range []struct {
		what string
		grey uint8
		size unit.Length
		told bool
	}{
		{"small", 0x76, large - unit.Points(0.1), false}, {"small", 0x77, large - unit.Points(0.1), true},
		{"large", 0x94, large + unit.Points(0.01), false}, {"large", 0x96, large + unit.Points(0.01), true},
		{"nearly large", 0x94, large - unit.Points(0.1), true},
	} {
		s := newSample(t)
		s.identity.Size, s.identity.Colour = c.size, grey(c.grey)
		if n := codesOf(Frame(s.fr, s.c, fs, Default()))["contrast"]; (n > 0) != c.told {
			t.Errorf("%s type of grey %#x: told %v", c.what, c.grey, n > 0)
		}
	}
	for v, told := range map[uint8]bool{0x76: false, 0x77: true} {
		s := newSample(t)
		s.qr.Dark = grey(v)
		if n := codesOf(Frame(s.fr, s.c, fs, Default()))["contrast"]; (n > 0) != told {
			t.Errorf("a code of grey %#x: told %v", v, n > 0)
		}
	}
}

// The ground of a line is what lies under its middle, the last printed of all.
func TestGroundIsUnderTheMiddle(t *testing.T) {
	fs := typefaces(t)
	black := page.Colour{}
	for _, c := range []struct {
		what       string
		x, y, w, h unit.Length
		told       bool
	}{
		{"under all of it", 0, 0, 80 * mm, 20 * mm, true},
		{"right of it", 60 * mm, 0, 20 * mm, 20 * mm, false},
		{"under its first letter", 0, 0, 8 * mm, 20 * mm, false},
		{"far to the right and below", 45 * mm, 17 * mm, 35 * mm, 43 * mm, false},
		{"above it", 0, 0, 80 * mm, 5 * mm, false},
	} {
		s := newSample(t)
		s.drop(s.qr)
		for _, other := range []page.Item{s.ingredients, s.maker, s.net, s.bar} {
			s.drop(other)
		}
		g := bar(c.x, c.y, c.w, c.h, black)
		g.Bleed = true
		s.fr.Items = append(s.fr.Items[:1:1], append([]page.Item{g}, s.fr.Items[1:]...)...)
		if n := codesOf(Frame(s.fr, s.c, fs, Default()))["contrast"]; (n > 0) != c.told {
			t.Errorf("black ground %s: told %v", c.what, n > 0)
		}
	}
}

// What each piece must bear: a wrap-round label all, a front label what belongs
// on the principal display panel, the label beside it the information panel (21
// CFR 101.2 and 101.1); a tag or a lid nothing.
func TestWhatEachPieceMustBear(t *testing.T) {
	fs := typefaces(t)
	for piece, want := range map[label.Piece][4]bool{ // identity, net, ingredients, maker
		label.Wrap: {true, true, true, true}, label.Front: {true, true, false, false}, label.InfoLabel: {false, false, true, true},
		label.Lid: {}, label.Tag: {}, label.ShelfCard: {}, label.CaseLabel: {},
	} {
		for i, must := range want {
			s := newSample(t)
			s.fr.Piece = string(piece)
			all := []page.Item{s.identity, s.net, s.ingredients, s.maker}
			s.drop(all[i])
			missing := 0
			for _, d := range Frame(s.fr, s.c, fs, Default()) {
				if d.Code == "missing-block" && d.Path == s.c.Blocks[i].Path && d.Message == "the "+string(piece)+" label lacks the "+string(s.c.Blocks[i].Kind) {
					missing++
				}
			}
			if (missing == 1) != must || missing > 1 {
				t.Errorf("%s without %s: told %d times, must bear it: %v", piece, s.c.Blocks[i].Kind, missing, must)
			}
		}
	}
	// a block that is not required, or says nothing, is missed by nobody
	for _, with := range []func(*label.Block){func(b *label.Block) { b.Required = false }, func(b *label.Block) { b.Runs = []label.Run{{Text: " "}} },
		func(b *label.Block) { b.Kind = label.Price }} {
		s := newSample(t)
		s.drop(s.maker)
		s.say("maker", with)
		if n := codesOf(Frame(s.fr, s.c, fs, Default()))["missing-block"]; n != 0 {
			t.Error("what need not be there is missed")
		}
	}
}

// Words are the same whatever blanks a broken line lost, and whatever their
// case, but for prescribed ones.
func TestWordsAreCompared(t *testing.T) {
	fs := typefaces(t)
	for printed, want := range map[string][2]bool{ // told; told of a prescribed sentence
		"Millbrook 97000": {}, "Millbrook97000": {}, " Millbrook\u00a0 97000 ": {}, "MILLBROOK 97000": {false, true}, "Millbrook 9700": {true, true}, "Millbrook 97000.": {true, true},
	} {
		for i, told := range want {
			s := newSample(t)
			s.maker.Segs[0].S = printed
			s.say("maker", func(b *label.Block) { b.Exact = i == 1 })
			if n := codesOf(Frame(s.fr, s.c, fs, Default()))["wrong-words"]; (n > 0) != told {
				t.Errorf("%q, prescribed %v: told %v", printed, i == 1, n > 0)
			}
		}
	}
}

// What is measured is named by its letter; of figures, the first printed.
func TestLetterIsNamed(t *testing.T) {
	for _, c := range []struct {
		on         label.Measure
		said, want string
	}{
		{label.XHeight, "Plum", "x"}, {label.Capital, "Plum", "H"}, {label.LowerO, "PLUM", "o"}, {label.PointSize, "Plum", ""},
		{label.Digit, "Net 340 g", "3"}, {label.Digit, "7", "7"}, {label.Digit, "grams", "0"}, {label.AnyCase, "PLUM 7", "H"}, {label.AnyCase, "Plum", "o"},
	} {
		if got := letterOf(c.on, c.said); got != c.want {
			t.Errorf("%v of %q: %q, want %q", c.on, c.said, got, c.want)
		}
	}
}

// A code that only touches the lines above and below stands beside them; one
// that shares a column of them stands between (21 CFR 101.2(d)).
func TestBetweenMeansOverAndUnder(t *testing.T) {
	fs := typefaces(t)
	for x, told := range map[unit.Length]bool{20 * mm: true, 66 * mm: false} {
		s := newSample(t)
		s.qr.At = page.Rect{X: x, Y: 26 * mm, W: 11 * mm, H: 11 * mm}
		s.maker.At.Y, s.net.At.Y, s.fr.H = 57*mm, 75*mm, 90*mm
		if n := codesOf(Frame(s.fr, s.c, fs, Default()))["intervening"]; (n > 0) != told {
			t.Errorf("a code at %.0f mm: told %v", x.MM(), n > 0)
		}
	}
}

// A line is short by what lacks, without any reserve, once more than rounding
// is missing.
func TestShortIsWhatLacks(t *testing.T) {
	const least = 2 * mm
	for got, want := range map[unit.Length]unit.Length{least: 0, least + mm: 0, least - 5*unit.Micrometre: 0, least - 6*unit.Micrometre: 6 * unit.Micrometre, mm: mm, 0: least} {
		if short := (Line{Block: label.Block{Min: label.Height{Length: least}}, Got: got}).Short(); short != want {
			t.Errorf("%.4f of 2 mm: short by %.4f, want %.4f", got.MM(), short.MM(), want.MM())
		}
	}
	if (Line{Got: 0}).Short() != 0 {
		t.Error("without a least height a line is short")
	}
}

// Only labels that show a statement to the buyer must show its fellow: the
// front and the wrap-round, not the label beside the front.
func TestFieldOfViewByPiece(t *testing.T) {
	fs := typefaces(t)
	for piece, told := range map[label.Piece]bool{label.Front: true, label.Wrap: true, label.InfoLabel: false, label.ShelfCard: false} {
		s := newSample(t)
		s.fr.Piece = string(piece)
		s.drop(s.identity)
		if n := codesOf(Frame(s.fr, s.c, fs, Default()))["field-of-view"]; (n > 0) != told {
			t.Errorf("%s: told %v", piece, n > 0)
		}
	}
}

// The smallest code, 21 modules a side (ISO/IEC 18004, version 1), has a level;
// a smaller square is no code.
func TestLevelOfTheSmallestCode(t *testing.T) {
	small := modules(t, "A", qrcode.Low)
	if len(small) != 21 || levelOf(small) != 'L' {
		t.Errorf("%d modules, level %c", len(small), levelOf(small))
	}
	if levelOf(small[:20]) != 0 || levelOf(nil) != 0 {
		t.Error("twenty rows are a code")
	}
}
