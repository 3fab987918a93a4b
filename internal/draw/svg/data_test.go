package svg

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

var token = regexp.MustCompile(`[Mlcz]|-?(?:\d+\.?\d*|\.\d+)`)

// points reads path data back, by the grammar of SVG 1.1, 8.3.
func points(t testing.TB, d string) (out [][2]float64) {
	t.Helper()
	words := token.FindAllString(d, -1)
	var op byte
	var x, y, sx, sy float64
	num := func() float64 {
		if len(words) == 0 {
			t.Fatalf("data ends early: %s", d)
		}
		var v float64
		if _, err := fmt.Sscan(words[0], &v); err != nil {
			t.Fatal(err)
		}
		words = words[1:]
		return v
	}
	for len(words) > 0 {
		if w := words[0]; len(w) == 1 && strings.Contains("Mlcz", w) {
			op = w[0]
			words = words[1:]
		}
		switch op {
		case 'M':
			x, y = num(), num()
			sx, sy = x, y
			out = append(out, [2]float64{x, y})
		case 'l':
			x, y = x+num(), y+num()
			out = append(out, [2]float64{x, y})
		case 'c':
			var p [6]float64
			for i := range p {
				p[i] = num()
			}
			for i := 0; i < 6; i += 2 {
				out = append(out, [2]float64{x + p[i], y + p[i+1]})
			}
			x, y = x+p[4], y+p[5]
		case 'z':
			x, y = sx, sy
		}
	}
	return out
}

// Every point of any path comes back within half a micrometre, however long
// the path: relative steps must not let rounding add up.
func TestDataIsTrue(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		length := rapid.Int64Range(-2_000_000_000, 2_000_000_000)
		p := &page.Path{}
		for i := range rapid.IntRange(1, 60).Draw(r, "n") {
			op := page.Op(rapid.IntRange(0, 3).Draw(r, "op"))
			if i == 0 {
				op = page.MoveTo
			}
			p.Ops = append(p.Ops, op)
			for range counts[op] {
				p.Pts = append(p.Pts, page.Point{X: unit.Length(length.Draw(r, "x")), Y: unit.Length(length.Draw(r, "y"))})
			}
		}
		d := newDrawing(nil)
		d.data(p)
		got := points(t, string(d.b))
		if d.err != nil || len(got) != len(p.Pts) {
			r.Fatalf("%d points, want %d (%v): %s", len(got), len(p.Pts), d.err, d.b)
		}
		for i, q := range p.Pts {
			if math.Abs(got[i][0]-q.X.MM()) > 0.000501 || math.Abs(got[i][1]-q.Y.MM()) > 0.000501 {
				r.Fatalf("point %d is %v, want %g %g", i, got[i], q.X.MM(), q.Y.MM())
			}
		}
	})
}

func TestNumber(t *testing.T) {
	for v, want := range map[int64]string{0: "0", 1: ".001", -1: "-.001", 1500: "1.5", 12345: "12.345", -20: "-.02", 100: ".1", 3000: "3"} {
		var d drawing
		if d.number(v); string(d.b) != want {
			t.Errorf("number(%d) = %s, want %s", v, d.b, want)
		}
	}
}
