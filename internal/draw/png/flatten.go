package png

import (
	"fmt"
	"image"
	"math"

	"jarmark/internal/draw/page"
)

type vec struct{ x, y float64 }

// line is a chain of points in pixels; closed joins the last to the first.
type line struct {
	pts    []vec
	closed bool
}

// flat is how far, in pixels, a chord may stray from its curve.
const flat = 0.04

// counts is how many points each operation takes.
var counts = [...]int{page.MoveTo: 1, page.LineTo: 1, page.CubicTo: 3, page.Close: 0}

// flatten turns a path into chains of points under at.
func flatten(p *page.Path, at affine) ([]line, error) {
	var out []line
	var cur line
	pts := p.Pts
	end := func() {
		if len(cur.pts) > 0 {
			out = append(out, cur)
		}
		cur = line{}
	}
	for _, op := range p.Ops {
		if int(op) >= len(counts) || len(pts) < counts[op] {
			return nil, fmt.Errorf("a path has too few points or an unknown operation")
		}
		n := counts[op]
		if op != page.MoveTo && len(cur.pts) == 0 {
			return nil, fmt.Errorf("a path draws before it moves")
		}
		var q [3]vec
		for i := range n {
			q[i].x, q[i].y = at.apply(float64(pts[i].X), float64(pts[i].Y))
		}
		pts = pts[n:]
		switch op {
		case page.MoveTo:
			end()
			cur.pts = append(cur.pts, q[0])
		case page.LineTo:
			cur.pts = append(cur.pts, q[0])
		case page.CubicTo:
			cur.pts = curve(cur.pts, q[0], q[1], q[2])
		case page.Close:
			start := cur.pts[0]
			cur.closed = true
			end()
			cur.pts = append(cur.pts, start)
		}
	}
	end()
	return dropSpecks(out), nil
}

// dropSpecks removes the lone start points that Close leaves behind.
func dropSpecks(lines []line) []line {
	out := lines[:0]
	for _, l := range lines {
		if len(l.pts) > 1 || l.closed {
			out = append(out, l)
		}
	}
	return out
}

// curve appends the chords of a cubic that starts at the last point. The
// number of chords follows from the second differences of its control points.
func curve(pts []vec, b, c, d vec) []vec {
	a := pts[len(pts)-1]
	bend := max(math.Hypot(a.x-2*b.x+c.x, a.y-2*b.y+c.y), math.Hypot(b.x-2*c.x+d.x, b.y-2*c.y+d.y))
	n := min(200, 1+int(math.Sqrt(bend*0.75/flat)))
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		k0, k1, k2, k3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		pts = append(pts, vec{
			k0*a.x + k1*b.x + k2*c.x + k3*d.x,
			k0*a.y + k1*b.y + k2*c.y + k3*d.y,
		})
	}
	return append(pts, d)
}

// bounds gives the whole pixels that points touch; empty when there are none
// or they are out of any picture.
func bounds(lines []line) image.Rectangle {
	x0, y0, x1, y1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, l := range lines {
		for _, p := range l.pts {
			x0, y0 = min(x0, p.x), min(y0, p.y)
			x1, y1 = max(x1, p.x), max(y1, p.y)
		}
	}
	const far = 1 << 24
	if !(x0 > -far && y0 > -far && x1 < far && y1 < far) {
		x0, y0, x1, y1 = max(x0, -far), max(y0, -far), min(x1, far), min(y1, far)
	}
	if !(x0 <= x1 && y0 <= y1) {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(x0)), int(math.Floor(y0)), int(math.Ceil(x1)), int(math.Ceil(y1)))
}

// within cuts a polygon that reaches far beyond r down to near it (Sutherland
// and Hodgman): the rasteriser counts in 32 bits.
func within(pts []vec, r image.Rectangle) []vec {
	const near = 1000
	b := bounds([]line{{pts: pts}})
	if b.In(r.Inset(-near)) {
		return pts
	}
	x0, y0 := float64(r.Min.X-near), float64(r.Min.Y-near)
	x1, y1 := float64(r.Max.X+near), float64(r.Max.Y+near)
	for _, inside := range []func(vec) float64{
		func(p vec) float64 { return p.x - x0 }, func(p vec) float64 { return x1 - p.x },
		func(p vec) float64 { return p.y - y0 }, func(p vec) float64 { return y1 - p.y },
	} {
		var out []vec
		for i, p := range pts {
			q := pts[(i+1)%len(pts)]
			dp, dq := inside(p), inside(q)
			if dp >= 0 {
				out = append(out, p)
			}
			if dp < 0 != (dq < 0) {
				t := dp / (dp - dq)
				out = append(out, vec{p.x + (q.x-p.x)*t, p.y + (q.y-p.y)*t})
			}
		}
		pts = out
	}
	return pts
}
