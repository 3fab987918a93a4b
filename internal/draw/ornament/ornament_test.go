package ornament

import (
	"bytes"
	"compress/zlib"
	"encoding/csv"
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/templates"
)

// Draw draws an ornament anew.
func Draw(name string, s Spec) []page.Item { return (*Memo)(nil).Draw(name, s) }

func rect(x, y, w, h float64) page.Rect {
	return page.Rect{X: unit.MM(x), Y: unit.MM(y), W: unit.MM(w), H: unit.MM(h)}
}

func spec(fruit string, r page.Rect) Spec {
	p, _ := palette.For(fruit, nil)
	return Spec{Rect: r, Palette: p, Seed: 1}
}

// inkBox bounds a path with its stroke.
func inkBox(p *page.Path) (x0, y0, x1, y1 unit.Length) {
	x0, y0, x1, y1 = math.MaxInt64, math.MaxInt64, math.MinInt64, math.MinInt64
	for _, q := range p.Pts {
		x0, y0, x1, y1 = min(x0, q.X), min(y0, q.Y), max(x1, q.X), max(y1, q.Y)
	}
	if p.Stroke != nil {
		h := (p.Width + 1) / 2
		x0, y0, x1, y1 = x0-h, y0-h, x1+h, y1+h
	}
	return x0, y0, x1, y1
}

// operators writes items the way a PDF page does, to weigh them.
func operators(items []page.Item) []byte {
	var b bytes.Buffer
	for _, it := range items {
		p := it.(*page.Path)
		if p.Fill != nil {
			fmt.Fprintf(&b, "%.3g %.3g %.3g rg\n", float64(p.Fill.R)/255, float64(p.Fill.G)/255, float64(p.Fill.B)/255)
		}
		pts := p.Pts
		for _, op := range p.Ops {
			n := [...]int{1, 1, 3, 0}[op]
			for _, q := range pts[:n] {
				fmt.Fprintf(&b, "%.2f %.2f ", q.X.Points(), q.Y.Points())
			}
			pts = pts[n:]
			b.WriteString([...]string{"m ", "l ", "c ", "h\n"}[op])
		}
		b.WriteString("f\n")
	}
	return b.Bytes()
}

var everyShape = []page.Rect{
	rect(5, 5, 60, 60), rect(0, 0, 90, 20), rect(3, 50, 20, 80), rect(2, 2, 150, 100), rect(10, 10, 8, 8),
	rect(0, 0, 40, 3), rect(0, 0, 2, 50), rect(-30, -30, 25, 25), rect(0, 0, 280, 190),
}

func TestEveryOrnamentStaysInsideAndSmall(t *testing.T) {
	for _, name := range Names() {
		for i, r := range everyShape {
			for mode := range 4 {
				if testing.Short() && i%4 != mode { // all ways, not each in every shape
					continue
				}
				s := spec("strawberry", r)
				s.Dark, s.Line, s.Engrave, s.Ground = mode == 1, mode == 2, mode == 3, s.Palette.Paper
				items := Draw(name, s)
				at := fmt.Sprintf("%s in %.0f x %.0f mm, mode %d", name, r.W.MM(), r.H.MM(), mode)
				if len(items) == 0 {
					t.Errorf("%s: nothing drawn", at)
				}
				checkInside(t, at, items, s)
				if len(items) >= 400 {
					t.Errorf("%s: %d paths", at, len(items))
				}
				most := 25_000
				if s.Engrave { // lines in place of each flat colour
					most = 60_000
				}
				if n := packed(operators(items)); n > most {
					t.Errorf("%s: %d bytes", at, n)
				}
			}
		}
	}
}

// The drawings that repeat the fruit stay small for every fruit.
func TestEveryFruitStaysSmall(t *testing.T) {
	for motif := range motifs() {
		for _, name := range []string{"wreath", "laurel", "garland", "branch", "berries", "rule-berry"} {
			for _, r := range []page.Rect{rect(0, 0, 55, 55), rect(0, 0, 120, 30)} {
				s := spec("plum", r)
				s.Motif = motif
				items := Draw(name, s)
				checkInside(t, name+" "+motif, items, s)
				if n := packed(operators(items)); len(items) >= 400 || n > 25_000 {
					t.Errorf("%s of %s in %.0f mm: %d paths, %d bytes", name, motif, r.W.MM(), len(items), n)
				}
			}
		}
	}
}

func packed(b []byte) int {
	var out bytes.Buffer
	z := zlib.NewWriter(&out)
	z.Write(b)
	z.Close()
	return out.Len()
}

func checkInside(t interface{ Errorf(string, ...any) }, at string, items []page.Item, s Spec) {
	r := s.Rect
	for _, it := range items {
		p, ok := it.(*page.Path)
		if !ok {
			t.Errorf("%s: draws a %T", at, it)
			return
		}
		need := 0
		for _, op := range p.Ops {
			need += [...]int{1, 1, 3, 0}[op]
		}
		if need != len(p.Pts) || len(p.Ops) == 0 || p.Ops[0] != page.MoveTo {
			t.Errorf("%s: broken path", at)
			return
		}
		x0, y0, x1, y1 := inkBox(p)
		if x0 < r.X || y0 < r.Y || x1 > r.X+r.W || y1 > r.Y+r.H {
			t.Errorf("%s: ink %.3f %.3f to %.3f %.3f leaves the box", at, x0.MM(), y0.MM(), x1.MM(), y1.MM())
			return
		}
	}
}

func TestAnyBoxAnySeed(t *testing.T) {
	names := Names()
	fruits := []string{"", "plum", "lemon", "cherry", "pumpkin", "elderberry"}
	rapid.Check(t, func(r *rapid.T) {
		s := spec(rapid.SampledFrom(fruits).Draw(r, "fruit"), rect(
			rapid.Float64Range(-50, 50).Draw(r, "x"), rapid.Float64Range(-50, 50).Draw(r, "y"),
			rapid.Float64Range(0.6, 200).Draw(r, "w"), rapid.Float64Range(0.6, 200).Draw(r, "h")))
		s.Seed = rapid.Uint64().Draw(r, "seed")
		s.Density = rapid.Float64Range(-1, 4).Draw(r, "density")
		s.Dark, s.Line = rapid.Bool().Draw(r, "dark"), rapid.Bool().Draw(r, "line")
		s.FlipX, s.FlipY = rapid.Bool().Draw(r, "flip x"), rapid.Bool().Draw(r, "flip y")
		name := rapid.SampledFrom(names).Draw(r, "name")
		items := Draw(name, s)
		checkInside(r, name, items, s)
		if !reflect.DeepEqual(items, Draw(name, s)) {
			r.Fatalf("%s: two drawings differ", name)
		}
	})
}

// A keep-out zone stays free of every part of every path. A merged path is
// split into its contours: its box may span a zone its ink avoids.
func TestKeepOutStaysFree(t *testing.T) {
	zone := rect(20, 18, 25, 14)
	for _, name := range Names() {
		s := spec("blackcurrant", rect(0, 0, 65, 50))
		s.Keep = []page.Rect{zone}
		items := Draw(name, s)
		if len(items) >= 400 {
			t.Errorf("%s: %d paths", name, len(items))
		}
		for _, it := range items {
			for _, c := range contours(it.(*page.Path)) {
				x0, y0, x1, y1 := inkBox(c)
				if x0 < zone.X+zone.W && x1 > zone.X && y0 < zone.Y+zone.H && y1 > zone.Y {
					t.Errorf("%s: ink %.2f %.2f to %.2f %.2f in the free zone", name, x0.MM(), y0.MM(), x1.MM(), y1.MM())
				}
			}
		}
	}
}

func contours(p *page.Path) []*page.Path {
	var out []*page.Path
	pts := p.Pts
	for _, op := range p.Ops {
		if op == page.MoveTo {
			out = append(out, &page.Path{Stroke: p.Stroke, Width: p.Width})
		}
		n := [...]int{1, 1, 3, 0}[op]
		c := out[len(out)-1]
		c.Ops, c.Pts = append(c.Ops, op), append(c.Pts, pts[:n]...)
		pts = pts[n:]
	}
	return out
}

func TestLineDrawingsUseBlackOnly(t *testing.T) {
	for _, name := range Names() {
		s := spec("plum", rect(0, 0, 60, 40))
		s.Line, s.Dark = true, true
		for _, it := range Draw(name, s) {
			p := it.(*page.Path)
			if p.Stroke != nil && *p.Stroke != black && *p.Stroke != white {
				t.Errorf("%s: a line in %v", name, *p.Stroke)
			}
			if p.Fill != nil && *p.Fill != white && *p.Fill != black {
				t.Errorf("%s: filled with %v", name, *p.Fill)
			}
		}
	}
}

func TestSeedChangesTheHand(t *testing.T) {
	for _, name := range []string{"wreath", "garland", "crystals"} {
		s := spec("plum", rect(0, 0, 60, 40))
		a := Draw(name, s)
		s.Seed = 2
		if reflect.DeepEqual(a, Draw(name, s)) {
			t.Errorf("%s: seeds 1 and 2 draw the same", name)
		}
	}
}

// Scattered pieces are apart and fill the box: no quarter of it is bare.
func TestScatterIsEven(t *testing.T) {
	k := newSketch("crystals", spec("plum", rect(0, 0, 80, 60)), 1)
	all := k.scatter(40, 0.3, 3, 2, 1)
	quarters := [4]int{}
	for i, d := range all {
		if !apart(all[:i], d, 0.3) {
			t.Errorf("piece %d touches another", i)
		}
		q := 0
		if d.c.x > 40 {
			q++
		}
		if d.c.y > 30 {
			q += 2
		}
		quarters[q]++
	}
	for q, n := range quarters {
		if n < 4 {
			t.Errorf("quarter %d holds %d of %d pieces", q, n, len(all))
		}
	}
}

// Snow crystals have six-fold symmetry: turned by 60° every point of an arm
// falls on a point of the next (Nakaya's classification knows no other).
func TestCrystalHasSixfoldSymmetry(t *testing.T) {
	k := newSketch("crystals", spec("plum", rect(0, 0, 20, 20)), 1)
	c := vec{10, 10}
	k.crystal(c, 8, black)
	pts := k.elements[0][0].pts
	for _, p := range pts {
		d := p.sub(c)
		sin, cos := math.Sincos(math.Pi / 3)
		turned := c.add(vec{d.x*cos - d.y*sin, d.x*sin + d.y*cos})
		found := false
		for _, q := range pts {
			found = found || q.sub(turned).len() < 1e-9
		}
		if !found {
			t.Fatalf("no point at %v", turned)
		}
	}
}

func TestEveryMotifOfThePalettesIsDrawn(t *testing.T) {
	all := motifs()
	f, err := templates.FS.Open("pantry/fruit-colours.csv")
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 50 {
		t.Fatal(len(rows), err)
	}
	for _, row := range rows[1:] {
		p, _ := palette.For(row[0], nil)
		if _, ok := all[p.Motif]; !ok {
			t.Errorf("%s: no drawing %q", row[0], p.Motif)
		}
	}
}

func TestNothingForNothing(t *testing.T) {
	for _, s := range []Spec{{}, {Rect: rect(0, 0, -5, 5)}, {Rect: rect(0, 0, 5, 0)}} {
		if got := Draw("wreath", s); got != nil {
			t.Errorf("%v drew %d items", s.Rect, len(got))
		}
	}
	if got := Draw("no such ornament", spec("plum", rect(0, 0, 9, 9))); got != nil {
		t.Errorf("an unknown name drew %d items", len(got))
	}
	if Draw("wreath", Spec{Rect: rect(0, 0, 30, 30)}) == nil {
		t.Error("an empty palette should mean the default one")
	}
}

func BenchmarkDraw(b *testing.B) {
	for _, name := range []string{"wreath", "garland", "crystals"} {
		b.Run(name, func(b *testing.B) {
			s := spec("strawberry", rect(0, 0, 60, 60))
			for range b.N {
				Draw(name, s)
			}
		})
	}
}
