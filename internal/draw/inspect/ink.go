package inspect

import (
	"math"
	"strings"
	"sync"
	"unicode"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// extent is the box of a glyph's outline in ems, y down from the baseline.
type extent struct{ left, right, top, bottom float64 }

// letters are the extents of a face's glyphs, each measured once: it never
// changes.
type letters struct {
	mu   sync.RWMutex
	seen map[rune]extent
}

// measuredFaces are the letters by *face.Face.
var measuredFaces sync.Map

// extentOf bounds the curves of a glyph; ok is false where it leaves no ink.
func extentOf(f *face.Face, r rune) (e extent, ok bool) {
	v, found := measuredFaces.Load(f)
	if !found {
		v, _ = measuredFaces.LoadOrStore(f, &letters{seen: map[rune]extent{}})
	}
	l := v.(*letters)
	l.mu.RLock()
	e, found = l.seen[r]
	l.mu.RUnlock()
	if !found {
		e, _ = outlined(f, r)
		l.mu.Lock()
		l.seen[r] = e
		l.mu.Unlock()
	}
	return e, e != extent{}
}

func outlined(f *face.Face, r rune) (e extent, ok bool) {
	o := f.Outline(r)
	if len(o.Pts) == 0 {
		return e, false
	}
	e = extent{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	at, pts := o.Pts[0], o.Pts
	for _, op := range o.Ops {
		switch op {
		case page.MoveTo, page.LineTo:
			at, pts = pts[0], pts[1:]
			e.reach(at)
		case page.CubicTo:
			e.curve(at, pts[0], pts[1], pts[2])
			at, pts = pts[2], pts[3:]
		}
	}
	return e, true
}

func (e *extent) reach(v face.Vec) {
	e.left, e.right = min(e.left, v.X), max(e.right, v.X)
	e.top, e.bottom = min(e.top, v.Y), max(e.bottom, v.Y)
}

// curve takes in a cubic: its ends, and where it turns.
func (e *extent) curve(a, b, c, d face.Vec) {
	e.reach(a)
	e.reach(d)
	for _, t := range append(turns(a.X, b.X, c.X, d.X), turns(a.Y, b.Y, c.Y, d.Y)...) {
		u := 1 - t
		ka, kb, kc, kd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		e.reach(face.Vec{X: ka*a.X + kb*b.X + kc*c.X + kd*d.X, Y: ka*a.Y + kb*b.Y + kc*c.Y + kd*d.Y})
	}
}

// turns gives where a cubic's slope is nought, between its ends.
func turns(a, b, c, d float64) (out []float64) {
	p, q, r := -a+3*b-3*c+d, 2*(a-2*b+c), b-a
	keep := func(t float64) {
		if t > 0 && t < 1 {
			out = append(out, t)
		}
	}
	if math.Abs(p) < 1e-12 {
		if q != 0 {
			keep(-r / q)
		}
		return out
	}
	if root := q*q - 4*p*r; root >= 0 {
		keep((-q + math.Sqrt(root)) / (2 * p))
		keep((-q - math.Sqrt(root)) / (2 * p))
	}
	return out
}

// inkOf is the box of the ink a line of type leaves, before turning.
func inkOf(t *page.Text, f *face.Face) page.Rect {
	var box page.Rect
	em := float64(t.Size)
	for _, g := range t.Segs {
		pen := float64(t.At.X + g.X)
		for _, r := range g.S {
			if e, ok := extentOf(f, r); ok {
				b := page.Rect{
					X: unit.Length(pen + e.left*em), Y: t.At.Y + unit.Length(e.top*em),
					W: unit.Length((e.right - e.left) * em), H: unit.Length((e.bottom - e.top) * em),
				}
				if box.W > 0 {
					b = b.Union(box)
				}
				box = b
			}
			pen += float64(f.Advance(r)) / 1000 * em
		}
	}
	return box
}

// measured is the height of the letter a law measures, as a face draws it at a
// size. said is the text in that face and size: where a law means the lower
// case and there is none, its capitals and figures are measured (21 CFR
// 101.7(h)(2)). A letter that stands on the baseline is measured from it: x
// and the capitals are flat, o overshoots and is measured over its whole ink.
func measured(on label.Measure, said string, f *face.Face, size unit.Length) unit.Length {
	switch on {
	case label.XHeight:
		return above(f, size, "x")
	case label.LowerO:
		return whole(f, size, "o")
	case label.Capital:
		return above(f, size, "H")
	case label.Digit:
		return whole(f, size, digitsOf(said))
	case label.AnyCase:
		if strings.ContainsFunc(said, unicode.IsLower) {
			return whole(f, size, "o")
		}
		return min(above(f, size, "H"), whole(f, size, digitsOf(said)))
	}
	return size
}

// digitsOf gives the figures a text has, or all ten where it has none.
func digitsOf(said string) string {
	out := strings.Map(func(r rune) rune {
		if r < '0' || r > '9' {
			return -1
		}
		return r
	}, said)
	if out == "" {
		return "0123456789"
	}
	return out
}

// above is the least height over the baseline of some letters.
func above(f *face.Face, size unit.Length, letters string) unit.Length {
	return least(f, size, letters, func(e extent) float64 { return -e.top })
}

// whole is the least height of the ink of some letters.
func whole(f *face.Face, size unit.Length, letters string) unit.Length {
	return least(f, size, letters, func(e extent) float64 { return e.bottom - e.top })
}

func least(f *face.Face, size unit.Length, letters string, high func(extent) float64) unit.Length {
	out := math.Inf(1)
	for _, r := range letters {
		if e, ok := extentOf(f, r); ok {
			out = min(out, high(e))
		}
	}
	if math.IsInf(out, 1) {
		return 0
	}
	return unit.Length(out * float64(size))
}

// rounding is how far a measured height may fall short: type is set by faces
// measured in thousandths of an em, half of one is under 0.15 % of a letter.
func rounding(h unit.Length) unit.Length { return h*15/10000 + 2*unit.Micrometre }
