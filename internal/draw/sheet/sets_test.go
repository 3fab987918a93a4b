package sheet

import (
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

// letterPlain is US Letter (ANSI/ASME Y14.1: 215.9 x 279.4 mm) as letter-plain has it.
func letterPlain() *Sheet {
	mm := unit.MM
	return &Sheet{ID: "letter-plain", Auto: true, PaperW: mm(215.9), PaperH: mm(279.4), Left: mm(6), Right: mm(6), Top: mm(6), Bottom: mm(6), Gutter: mm(4)}
}

// setsOf makes n sets of labels of sizes in tenths of a millimetre.
func setsOf(n int, sizes ...[2]int) (out []Set) {
	for range n {
		var set Set
		for _, s := range sizes {
			set = append(set, Label{Frame: &page.Frame{W: unit.MM(float64(s[0]) / 10), H: unit.MM(float64(s[1]) / 10), Bleed: unit.MM(1.5)}})
		}
		out = append(out, set)
	}
	return out
}

// leastSheets is a bound no way of laying sets can beat: their area, each label
// with its half of the gaps around it, over that of a sheet.
func leastSheets(sets []Set, s *Sheet) int {
	total := 0.0
	for _, set := range sets {
		g := gapOf(s, set)
		for _, b := range set {
			total += (b.Frame.W + g).MM() * (b.Frame.H + g).MM()
		}
	}
	g := s.Gutter
	room := (s.PaperW - s.Left - s.Right + g).MM() * (s.PaperH - s.Top - s.Bottom + g).MM()
	n := int(total / room)
	if float64(n)*room < total-1e-6 {
		n++
	}
	return n
}

// By hand, on 203.9 x 267.4 mm between the margins, 4 mm apart: two rounds of 66
// side by side in two rows are 136 high, two fronts of 90.4 x 46 side by side in
// two rows 96: with the gap 236, so four sets a sheet; and 12 jars take 3.
func TestSetsByHand(t *testing.T) {
	sets := setsOf(12, [2]int{904, 460}, [2]int{660, 660})
	r, l := FillSets(sets, letterPlain(), Options{})
	if len(l) > 0 || len(r.Doc.Pages) != 3 || len(r.Doc.Pages[0].Places) != 8 {
		t.Fatalf("%v, %+v", l, r.Doc)
	}
	if n := leastSheets(sets, letterPlain()); n != 3 { // (94.4 x 50 + 70 x 70) x 12 / (207.9 x 271.4) = 2.05
		t.Errorf("at least %d sheets", n)
	}
	if _, l := FillSets(setsOf(1, [2]int{2100, 460}, [2]int{2680, 1900}), letterPlain(), Options{}); !l.HasErrors() {
		t.Error("a set larger than a sheet is laid")
	}
}

// Whatever the sizes: all labels of a jar lie on one sheet, within the margins,
// the gap apart, as many of each as there are, on no fewer sheets than their
// area asks.
func TestSetsAreWhole(t *testing.T) {
	s := letterPlain()
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.IntRange(150, 1300)
		var sizes [][2]int
		for range rapid.IntRange(1, 4).Draw(t, "kinds") {
			sizes = append(sizes, [2]int{side.Draw(t, "w"), side.Draw(t, "h")})
		}
		sets := setsOf(rapid.IntRange(1, 9).Draw(t, "jars"), sizes...)
		if rapid.Bool().Draw(t, "fewer tags") {
			sets[len(sets)-1] = sets[len(sets)-1][:1]
		}
		r, l := FillSets(sets, s, Options{CutMarks: true})
		if r.Doc == nil {
			if !l.HasErrors() {
				t.Fatal("nothing laid and nothing said")
			}
			return
		}
		at := map[*page.Frame]int{}
		for i, p := range r.Doc.Pages {
			checkApart(t, s, p)
			for _, pl := range p.Places {
				at[pl.Frame] = i + 1
			}
		}
		for i, set := range sets {
			for _, b := range set {
				if at[b.Frame] == 0 || at[b.Frame] != at[set[0].Frame] {
					t.Fatalf("jar %d: a label on sheet %d, another on %d", i+1, at[b.Frame], at[set[0].Frame])
				}
			}
		}
		if least := leastSheets(sets, s); len(r.Doc.Pages) < least {
			t.Fatalf("%d sheets, and their area asks for %d", len(r.Doc.Pages), least)
		}
	})
}

func checkApart(t *rapid.T, s *Sheet, p page.Page) {
	for k, a := range p.Places {
		x := box(a)
		if x.X < s.Left || x.Y < s.Top || x.X+x.W > s.PaperW-s.Right || x.Y+x.H > s.PaperH-s.Bottom {
			t.Fatalf("%+v is not between the margins", x)
		}
		for _, b := range p.Places[k+1:] {
			y, g := box(b), s.Gutter
			if x.X < y.X+y.W+g && y.X < x.X+x.W+g && x.Y < y.Y+y.H+g && y.Y < x.Y+x.H+g {
				t.Fatalf("%+v and %+v are nearer than the gap", x, y)
			}
		}
	}
}

// The sheets taken stand beside the bound of their area.
func BenchmarkSets(b *testing.B) {
	for _, sizes := range [][][2]int{{{904, 460}, {660, 660}}, {{904, 460}, {1236, 460}, {660, 660}}, {{760, 440}, {1060, 440}, {600, 600}}, {{904, 460}, {1236, 460}, {660, 660}, {550, 950}}} {
		b.Run(fmt.Sprint(sizes), func(b *testing.B) {
			sets, s := setsOf(48, sizes...), letterPlain()
			var r Run
			for b.Loop() {
				r, _ = FillSets(sets, s, Options{})
			}
			b.ReportMetric(float64(len(r.Doc.Pages)), "sheets")
			b.ReportMetric(float64(leastSheets(sets, s)), "least-sheets")
		})
	}
}
