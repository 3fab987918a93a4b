package page

import (
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

// TestSealedMeetsAlike: a sealed path, which looks at its parts alone, meets
// boxes and covers points as the same path does when it is walked whole.
func TestSealedMeetsAlike(t *testing.T) {
	at := func(t *rapid.T, name string) Point {
		return Point{X: unit.Length(rapid.IntRange(-100, 100).Draw(t, name+"x")), Y: unit.Length(rapid.IntRange(-100, 100).Draw(t, name+"y"))}
	}
	rapid.Check(t, func(t *rapid.T) {
		p := &Path{EvenOdd: rapid.Bool().Draw(t, "evenodd"), Fill: &Colour{}}
		for range rapid.IntRange(1, 4).Draw(t, "parts") {
			p.add(MoveTo, at(t, "m"))
			for range rapid.IntRange(0, 3).Draw(t, "ops") {
				if rapid.Bool().Draw(t, "curve") {
					p.add(CubicTo, at(t, "a"), at(t, "b"), at(t, "c"))
				} else {
					p.add(LineTo, at(t, "l"))
				}
			}
			if rapid.Bool().Draw(t, "closed") {
				p.add(Close)
			}
		}
		var edges, whole []Point // walked in one go, every step
		p.Trace(func(a, b Point) { edges = append(edges, a, b) })
		whole = edges
		r := Rect{X: at(t, "r").X, Y: at(t, "s").Y, W: unit.Length(rapid.IntRange(1, 80).Draw(t, "w")), H: unit.Length(rapid.IntRange(1, 80).Draw(t, "h"))}
		hit := false
		for i := 0; i < len(whole); i += 2 {
			hit = hit || segmentMeets(whole[i], whole[i+1], r)
		}
		q := at(t, "q")
		edge, covers, bounds := p.EdgeIn(r), p.Covers(q), p.Bounds()
		p.Seal()
		if p.EdgeIn(r) != edge || edge != hit || p.Covers(q) != covers || p.Bounds() != bounds || covers != wound(p, whole, q) {
			t.Fatalf("sealed: edge %v, %v, %v; covers %v, %v, %v", p.EdgeIn(r), edge, hit, p.Covers(q), covers, wound(p, whole, q))
		}
	})
}

// wound counts how a path walked in steps winds around a point; each part is
// closed.
func wound(p *Path, steps []Point, q Point) bool {
	winding, crossings := 0, 0
	count := func(a, b Point) {
		if (a.Y <= q.Y) == (b.Y <= q.Y) || float64(a.X)+float64(q.Y-a.Y)*float64(b.X-a.X)/float64(b.Y-a.Y) <= float64(q.X) {
			return
		}
		crossings++
		if winding++; b.Y < a.Y {
			winding -= 2
		}
	}
	var first, last Point
	for i := 0; i < len(steps); i += 2 {
		if steps[i] == steps[i+1] {
			count(last, first)
			first = steps[i]
		}
		count(steps[i], steps[i+1])
		last = steps[i+1]
	}
	count(last, first)
	if p.EvenOdd {
		return crossings%2 == 1
	}
	return winding != 0
}
