package face

import (
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"jarmark/internal/draw/page"
)

// Vec is a place in ems: x to the right of the origin, y down from the
// baseline.
type Vec struct{ X, Y float64 }

// Outline is the drawing of one glyph in ems, as page path operations (fill
// rule: non-zero). Each operation takes as many points as in page.Path.
type Outline struct {
	Ops []page.Op
	Pts []Vec
}

// Outline gives the drawing of r; empty for a space or a missing glyph.
func (f *Face) Outline(r rune) Outline {
	f.mu.RLock()
	o, ok := f.outlines[r]
	f.mu.RUnlock()
	if ok {
		return o
	}
	o = f.readOutline(r)
	f.mu.Lock()
	f.outlines[r] = o
	f.mu.Unlock()
	return o
}

func (f *Face) readOutline(r rune) Outline {
	if o := f.Owner(r); o != f {
		return o.Outline(r)
	}
	segments, done := f.segments(r)
	defer done()
	var o Outline
	var at Vec
	open := false
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if open {
				o.Ops = append(o.Ops, page.Close)
			}
			at, open = f.vec(s.Args[0]), true
			o.add(page.MoveTo, at)
		case sfnt.SegmentOpLineTo:
			at = f.vec(s.Args[0])
			o.add(page.LineTo, at)
		case sfnt.SegmentOpQuadTo:
			c, end := f.vec(s.Args[0]), f.vec(s.Args[1])
			o.add(page.CubicTo, toward(at, c), toward(end, c), end)
			at = end
		case sfnt.SegmentOpCubeTo:
			at = f.vec(s.Args[2])
			o.add(page.CubicTo, f.vec(s.Args[0]), f.vec(s.Args[1]), at)
		}
	}
	if open {
		o.Ops = append(o.Ops, page.Close)
	}
	return o
}

func (o *Outline) add(op page.Op, pts ...Vec) {
	o.Ops = append(o.Ops, op)
	o.Pts = append(o.Pts, pts...)
}

// toward gives the cubic control point two thirds of the way from an end of
// a quadratic curve to its control point (degree elevation).
func toward(end, control Vec) Vec {
	return Vec{end.X + (control.X-end.X)*2/3, end.Y + (control.Y-end.Y)*2/3}
}

func (f *Face) vec(p fixed.Point26_6) Vec {
	return Vec{float64(p.X) / float64(f.em), float64(p.Y) / float64(f.em)}
}

// segments loads a glyph; call done when finished with them.
func (f *Face) segments(r rune) (s sfnt.Segments, done func()) {
	b := f.buffer()
	done = func() { f.pool.Put(b) }
	defer func() { // a typeface of the maker's may be broken anywhere
		if recover() != nil {
			s = nil
		}
	}()
	if r < ' ' || r > 0xFFFF {
		return nil, done
	}
	g, err := f.font.GlyphIndex(b, r)
	if err != nil || g == 0 {
		return nil, done
	}
	if f.cff != nil {
		s, err = f.cff.segments(g)
	} else {
		s, err = f.font.LoadGlyph(b, g, f.em, nil)
	}
	if err != nil {
		return nil, done
	}
	return s, done
}

// Ink gives the bounding box of a glyph's outline; zero for a space or a
// missing glyph.
func (f *Face) Ink(r rune) Ink {
	f.mu.RLock()
	k, ok := f.inks[r]
	f.mu.RUnlock()
	if ok {
		return k
	}
	k = f.Outline(r).ink()
	f.mu.Lock()
	f.inks[r] = k
	f.mu.Unlock()
	return k
}

// ink bounds the curves themselves, not their control points, which may lie
// outside the ink and would make letters seem larger than they print.
func (o Outline) ink() Ink {
	lo, hi := o.bounds()
	return Ink{
		Left: thousandth(lo.X), Right: thousandth(hi.X),
		Top: thousandth(-lo.Y), Bottom: thousandth(hi.Y),
	}
}

// high gives the height over the baseline and that of the whole ink in whole
// 1/1000 em, never more than it is: what a law measures is not rounded up.
func (o Outline) high() (above, whole int) {
	lo, hi := o.bounds()
	const hair = 1e-6 // of a thousandth: a sum of floats, not ink
	return int(math.Floor(-lo.Y*1000 + hair)), int(math.Floor((hi.Y-lo.Y)*1000 + hair))
}

func (o Outline) bounds() (lo, hi Vec) {
	if len(o.Pts) == 0 {
		return lo, hi
	}
	lo, hi = o.Pts[0], o.Pts[0]
	grow := func(v Vec) {
		lo = Vec{min(lo.X, v.X), min(lo.Y, v.Y)}
		hi = Vec{max(hi.X, v.X), max(hi.Y, v.Y)}
	}
	within := func(v Vec) bool { return lo.X <= v.X && v.X <= hi.X && lo.Y <= v.Y && v.Y <= hi.Y }
	var at Vec
	p := o.Pts
	for _, op := range o.Ops {
		switch op {
		case page.MoveTo, page.LineTo:
			at = p[0]
			grow(at)
			p = p[1:]
		case page.CubicTo:
			grow(p[2])
			if within(p[0]) && within(p[1]) { // a curve stays in the hull of its points
				at, p = p[2], p[3:]
				continue
			}
			const steps = 24
			for i := 1; i < steps; i++ {
				grow(cubic(at, p[0], p[1], p[2], float64(i)/steps))
			}
			at = p[2]
			p = p[3:]
		}
	}
	return lo, hi
}

func thousandth(v float64) int { return int(math.Round(v * 1000)) }

func cubic(a, b, c, d Vec, t float64) Vec {
	u := 1 - t
	ka, kb, kc, kd := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	return Vec{ka*a.X + kb*b.X + kc*c.X + kd*d.X, ka*a.Y + kb*b.Y + kc*c.Y + kd*d.Y}
}
