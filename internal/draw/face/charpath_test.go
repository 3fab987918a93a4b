package face_test

import (
	"slices"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/presstest"
)

// TestOperators: each way of the note to say a path gives that path said plainly, with
// rmoveto, rlineto and rrcurveto (Adobe Technical Note 5177, 4.1 and 4.2, "Path
// Construction Operators", "Operator for Finishing a Path").
func TestOperators(t *testing.T) {
	const rline, hline, vline, rrcurve = 5, 6, 7, 8
	for name, c := range map[string]struct{ short, plain []int }{
		"hlineto":    {op(hline, 100, 50, -60), append(append(op(rline, 100, 0), op(rline, 0, 50)...), op(rline, -60, 0)...)},
		"vlineto":    {op(vline, 100, 50), op(rline, 0, 100, 50, 0)},
		"rcurveline": {op(24, 1, 20, 30, 40, 50, 6, 70, 80), append(op(rrcurve, 1, 20, 30, 40, 50, 6), op(rline, 70, 80)...)},
		"rlinecurve": {op(25, 70, 80, 1, 20, 30, 40, 50, 6), append(op(rline, 70, 80), op(rrcurve, 1, 20, 30, 40, 50, 6)...)},
		"vvcurveto":  {op(26, 7, 10, 20, 30, 40), op(rrcurve, 7, 10, 20, 30, 0, 40)},
		"hhcurveto":  {op(27, 7, 10, 20, 30, 40, 50, 60, 70, 80), op(rrcurve, 10, 7, 20, 30, 40, 0, 50, 0, 60, 70, 80, 0)},
		"vhcurveto":  {op(30, 10, 20, 30, 40, 7), op(rrcurve, 0, 10, 20, 30, 40, 7)},
		"hvcurveto":  {op(31, 10, 20, 30, 40, 50, 60, 70, 80, 9), op(rrcurve, 10, 0, 20, 30, 0, 40, 0, 50, 60, 70, 80, 9)},
		"hflex":      {op(1234, 10, 20, 30, 40, 50, 60, 70), op(rrcurve, 10, 0, 20, 30, 40, 0, 50, 0, 60, -30, 70, 0)},
		"flex":       {op(1235, 10, 1, 20, 30, 40, 2, 50, 3, 60, -30, 70, 4, 50), op(rrcurve, 10, 1, 20, 30, 40, 2, 50, 3, 60, -30, 70, 4)},
		"hflex1":     {op(1236, 10, 1, 20, 30, 40, 50, 60, -9, 70), op(rrcurve, 10, 1, 20, 30, 40, 0, 50, 0, 60, -9, 70, -22)},
		"flex1":      {op(1237, 10, 1, 20, 30, 40, 2, 50, 3, 60, -30, 70), op(rrcurve, 10, 1, 20, 30, 40, 2, 50, 3, 60, -30, 70, -6)},
		"flex1 up":   {op(1237, 1, 10, 30, 20, 2, 40, 3, 50, -30, 60, 70), op(rrcurve, 1, 10, 30, 20, 2, 40, 3, 50, -30, 60, -6, 70)},
	} {
		got, want := drawnBy(t, c.short), drawnBy(t, c.plain)
		if len(want.Ops) == 0 || !slices.Equal(got.Ops, want.Ops) || !slices.Equal(got.Pts, want.Pts) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

// op is an operator after its numbers.
func op(op int, args ...int) []int { return append(args, 1<<20+op) }

// drawnBy is what a program draws that begins at 100, 200.
func drawnBy(t *testing.T, said []int) face.Outline {
	t.Helper()
	var program []byte
	for _, v := range slices.Concat(op(21, 100, 200), said, op(14)) {
		switch v -= 1 << 20; {
		case v >= 1200:
			program = append(program, 12, byte(v-1200))
		case v >= 0:
			program = append(program, byte(v))
		default:
			program = append(program, 28, byte((v+(1<<20))>>8), byte(v+(1<<20)))
		}
	}
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	g, _ := font.GlyphIndex(nil, 'Q')
	data, err := presstest.PostScriptOf(goregular.TTF, 2./3, map[sfnt.GlyphIndex][]byte{g: program})
	if err != nil {
		t.Fatal(err)
	}
	own, err := face.Own("Alder.otf", data)
	if err != nil {
		t.Fatal(err)
	}
	return own.Outline('Q')
}
