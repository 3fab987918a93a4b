// Package bend lays a finished label, set straight, round a cone. A label is
// composed and inspected as it is seen on the jar; unrolled, its level lines are
// arcs about the cone's tip, and the piece to cut is a sector of a ring.
//
// A place keeps its angle about the tip and its height; the narrow edge keeps its
// length and all above it grows, so nothing comes nearer to its neighbour. Words,
// codes and pictures keep their shape and are turned, lines of type their spaces;
// outlines and areas follow.
package bend

import (
	"math"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// bender bends what stands on one label.
type bender struct {
	arc   page.Arc
	w     unit.Length // of the straight label
	faces *face.Set
}

// Frame gives the label as it is cut. Slots are gone: what fills them is bent with
// Items.
func Frame(f *page.Frame, c page.Cone, faces *face.Set) *page.Frame {
	b := bender{c.Arc(f.W, f.H), f.W, faces}
	out := *f
	out.Shape, out.Arc, out.Corner, out.Slots = page.Sector, b.arc, 0, nil
	out.W, out.H = b.arc.Size()
	out.Items = b.items(f.Items)
	return &out
}

// Items bends what is laid over a label of w x h.
func Items(list []page.Item, w, h unit.Length, c page.Cone, faces *face.Set) []page.Item {
	if len(list) == 0 {
		return nil
	}
	return bender{c.Arc(w, h), w, faces}.items(list)
}

func (b bender) items(list []page.Item) (out []page.Item) {
	keep := anchors(list)
	for _, it := range list {
		switch it := it.(type) {
		case *page.Text:
			out = append(out, b.text(it, keep[it])...)
		case *page.Path:
			out = append(out, b.path(it))
		case *page.Code:
			k := *it
			k.At, k.Turn = b.box(it.At, it.Turn)
			out = append(out, &k)
		case *page.Picture:
			p := *it
			p.At, p.Turn = b.box(it.At, it.Turn)
			out = append(out, &p)
		}
	}
	return out
}

// at gives where a place of the straight label lies, and how far what stands there
// is turned, in degrees clockwise.
func (b bender) at(p page.Point) (page.Point, float64) { return b.from(p.X, p) }

// from is at for what keeps its distance to a place on its level.
func (b bender) from(anchor unit.Length, p page.Point) (page.Point, float64) {
	r, sign := float64(b.arc.Outer-p.Y), 1.0
	if b.arc.Up {
		r, sign = float64(b.arc.Inner+p.Y), -1
	}
	angle := float64(anchor-b.w/2)/float64(b.arc.Inner) + float64(p.X-anchor)/r
	return b.arc.At(r, angle), sign * angle * 180 / math.Pi
}

// box moves a box that keeps its shape, by its middle.
func (b bender) box(r page.Rect, turned float64) (page.Rect, float64) {
	to, turn := b.at(page.Point{X: r.X + r.W/2, Y: r.Y + r.H/2})
	return page.Rect{X: to.X - r.W/2, Y: to.Y - r.H/2, W: r.W, H: r.H}, turned + turn
}

// word is a stretch of a line that keeps its shape.
type word struct {
	from, to unit.Length // from the line's left end
	segs     []page.Seg
}

// text bends a line word by word, each turned about the middle of its foot; its
// place at anchor keeps its angle.
func (b bender) text(t *page.Text, anchor unit.Length) (out []page.Item) {
	if math.Mod(t.Turn, 360) != 0 {
		return []page.Item{b.turned(t)}
	}
	words := b.words(t)
	for i, w := range words {
		one := *t
		one.Segs, one.Said, one.Hyphen = nil, "", t.Hyphen && i == len(words)-1
		for _, s := range w.segs {
			one.Segs = append(one.Segs, page.Seg{X: s.X - w.from, S: s.S})
		}
		half := (w.to - w.from) / 2
		mid, turn := b.from(anchor, page.Point{X: t.At.X + w.from + half, Y: t.At.Y})
		sin, cos := page.SinCos(turn)
		one.Turn = turn
		one.At = page.Point{X: mid.X - unit.Length(float64(half)*cos), Y: mid.Y - unit.Length(float64(half)*sin)}
		one.Box = page.Rect{X: one.At.X, Y: one.At.Y + t.Box.Y - t.At.Y, W: w.to - w.from, H: t.Box.H}
		out = append(out, &one)
	}
	return out
}

// turned bends a line that stands on its side as a whole.
func (b bender) turned(t *page.Text) *page.Text {
	one := *t
	sin, cos := page.SinCos(t.Turn)
	half := float64(t.Box.W) / 2
	dx, dy := half*cos, half*sin
	mid, turn := b.at(page.Point{X: t.At.X + unit.Length(dx), Y: t.At.Y + unit.Length(dy)})
	sin, cos = page.SinCos(t.Turn + turn)
	one.Turn = t.Turn + turn
	one.At = page.Point{X: mid.X - unit.Length(half*cos), Y: mid.Y - unit.Length(half*sin)}
	one.Box.X, one.Box.Y = one.At.X, one.At.Y+t.Box.Y-t.At.Y
	return &one
}

// words parts a line at its blanks, which stay with the word before them, and where
// it is set apart without one.
func (b bender) words(t *page.Text) (out []word) {
	f := b.faces.Face(t.Face)
	end := unit.Length(math.MinInt64 / 2)
	open := false
	for _, seg := range t.Segs {
		if seg.X-end > t.Size*3/10 {
			open = false
		}
		x := seg.X
		for rest := seg.S; rest != ""; {
			part := rest
			if i := strings.IndexByte(rest, ' '); i >= 0 {
				part = rest[:i+1]
			}
			rest = rest[len(part):]
			wide := f.Width(strings.TrimSuffix(part, " "), t.Size)
			if !open && strings.TrimSpace(part) != "" {
				out, open = append(out, word{from: x}), true
			}
			if n := len(out); n > 0 {
				last := &out[n-1]
				last.segs = append(last.segs, page.Seg{X: x, S: part})
				last.to = max(last.to, x+wide)
			}
			x += f.Width(part, t.Size)
			open = open && !strings.HasSuffix(part, " ")
		}
		end = x
	}
	return out
}

// short is how far a line may run before it is bent again: it strays 7 µm at most
// from an arc of 30 cm.
const short = 4 * unit.Millimetre

// path bends an outline; long lines and curves are parted.
func (b bender) path(p *page.Path) *page.Path {
	out := &page.Path{Block: p.Block, Fill: p.Fill, EvenOdd: p.EvenOdd, Stroke: p.Stroke, Width: p.Width, Round: p.Round, Nib: p.Nib, Dash: p.Dash, Bleed: p.Bleed}
	put := func(op page.Op, pts ...page.Point) {
		out.Ops = append(out.Ops, op)
		for _, q := range pts {
			to, _ := b.at(q)
			out.Pts = append(out.Pts, to)
		}
	}
	line := func(from, to page.Point) {
		n := 1 + unit.Length(max(to.X-from.X, from.X-to.X)/short)
		for i := unit.Length(1); i <= n; i++ {
			put(page.LineTo, page.Point{X: from.X + (to.X-from.X)*i/n, Y: from.Y + (to.Y-from.Y)*i/n})
		}
	}
	var start, now page.Point
	pts := p.Pts
	for _, op := range p.Ops {
		switch op {
		case page.MoveTo:
			start, now = pts[0], pts[0]
			put(op, now)
			pts = pts[1:]
		case page.LineTo:
			line(now, pts[0])
			now, pts = pts[0], pts[1:]
		case page.CubicTo:
			cubic([4]page.Point{now, pts[0], pts[1], pts[2]}, 6, func(c [4]page.Point) { put(page.CubicTo, c[1], c[2], c[3]) })
			now, pts = pts[2], pts[3:]
		case page.Close:
			if now != start {
				line(now, start)
			}
			now = start
			put(op)
		}
	}
	return out
}

// cubic parts a curve in halves (de Casteljau) until its parts are short.
func cubic(c [4]page.Point, deep int, each func([4]page.Point)) {
	lo, hi := min(c[0].X, c[1].X, c[2].X, c[3].X), max(c[0].X, c[1].X, c[2].X, c[3].X)
	if deep == 0 || hi-lo <= 2*short {
		each(c)
		return
	}
	mid := func(a, b page.Point) page.Point { return page.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2} }
	ab, bc, cd := mid(c[0], c[1]), mid(c[1], c[2]), mid(c[2], c[3])
	abc, bcd := mid(ab, bc), mid(bc, cd)
	m := mid(abc, bcd)
	cubic([4]page.Point{c[0], ab, abc, m}, deep-1, each)
	cubic([4]page.Point{m, bcd, cd, c[3]}, deep-1, each)
}
