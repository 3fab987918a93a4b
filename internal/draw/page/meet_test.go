package page

import (
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

// walked is Covers by its definition: every curve taken in steps, none as its
// chord (even-odd and nonzero rules, ISO 32000-1, 8.5.3.3).
func walked(p *Path, q Point) bool {
	winding, crossings := 0, 0
	var first, last Point
	count := func(a, b Point) {
		if (a.Y <= q.Y) == (b.Y <= q.Y) {
			return
		}
		if float64(a.X)+float64(q.Y-a.Y)*float64(b.X-a.X)/float64(b.Y-a.Y) <= float64(q.X) {
			return
		}
		crossings++
		if winding++; b.Y <= a.Y {
			winding -= 2
		}
	}
	p.Trace(func(a, b Point) {
		if a == b {
			count(last, first)
			first = a
		}
		count(a, b)
		last = b
	})
	count(last, first)
	return p.EvenOdd && crossings%2 == 1 || !p.EvenOdd && winding != 0
}

// TestCoversWalksOnlyWhatItMust: taking curves beside a point as their chords
// changes no answer, inside, outside, or level with their ends.
func TestCoversWalksOnlyWhatItMust(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		at := rapid.Map(rapid.SliceOfN(rapid.Int64Range(0, 40), 2, 2), func(v []int64) Point {
			return Point{X: unit.Length(v[0] * 7919), Y: unit.Length(v[1] * 7919)}
		})
		p := &Path{EvenOdd: rapid.Bool().Draw(t, "even-odd")}
		for range rapid.IntRange(1, 3).Draw(t, "parts") {
			p.Ops, p.Pts = append(p.Ops, MoveTo), append(p.Pts, at.Draw(t, "start"))
			for range rapid.IntRange(1, 5).Draw(t, "curves") {
				if rapid.Bool().Draw(t, "straight") {
					p.Ops, p.Pts = append(p.Ops, LineTo), append(p.Pts, at.Draw(t, "to"))
				} else {
					p.Ops, p.Pts = append(p.Ops, CubicTo), append(p.Pts, at.Draw(t, "b"), at.Draw(t, "c"), at.Draw(t, "d"))
				}
			}
			if rapid.Bool().Draw(t, "closed") {
				p.Ops = append(p.Ops, Close)
			}
		}
		for range 40 {
			q := at.Draw(t, "point")
			q.X += unit.Length(rapid.IntRange(-6, 6).Draw(t, "off"))
			q.Y += unit.Length(rapid.IntRange(-6, 6).Draw(t, "off"))
			if got, want := p.Covers(q), walked(p, q); got != want {
				t.Fatalf("%v: Covers %v, walked %v", q, got, want)
			}
		}
	})
}

// TestAPieceWithoutLengthBeginsNoPart: a bar with round ends has straight
// sides of no length; it covers its middle all the same.
func TestAPieceWithoutLengthBeginsNoPart(t *testing.T) {
	mm := unit.Millimetre
	bar := &Path{Ops: []Op{MoveTo, LineTo, LineTo, LineTo, LineTo, LineTo, Close},
		Pts: []Point{{0, 0}, {10 * mm, 0}, {12 * mm, 2 * mm}, {12 * mm, 2 * mm}, {10 * mm, 4 * mm}, {0, 4 * mm}}}
	for _, y := range []unit.Length{mm, 2 * mm, 3 * mm} {
		if !bar.Covers(Point{5 * mm, y}) {
			t.Errorf("not covered at %v", y)
		}
	}
	if bar.Covers(Point{13 * mm, 2 * mm}) || bar.Covers(Point{5 * mm, 5 * mm}) {
		t.Error("covers what lies outside")
	}
}
