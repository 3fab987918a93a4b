package png

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// pen strokes lines as PDF does (ISO 32000-1, 8.4.3): butt caps and mitred
// joins up to ten widths, or round caps and joins, or as a nib says.
type pen struct {
	width float64 // pixels
	cap   page.Cap
	join  page.Join
	mitre float64 // widths
}

const mitreLimit = 10

func penOf(p *page.Path, scale float64) pen {
	out := pen{width: float64(p.Width) * scale, mitre: mitreLimit}
	switch {
	case p.Nib != nil:
		out.cap, out.join, out.mitre = p.Nib.Cap, p.Nib.Join, p.Nib.Mitre
	case p.Round:
		out.cap, out.join = page.RoundCap, page.RoundJoin
	}
	return out
}

// outlines gives for each line the polygons of its stroke. One line's
// polygons are filled together, so that its colour covers evenly.
func (p pen) outlines(lines []line) [][]line {
	var out [][]line
	for _, l := range lines {
		pts := distinct(l.pts, l.closed)
		switch {
		case len(pts) == 0:
		case len(pts) == 1:
			if p.cap == page.RoundCap {
				out = append(out, []line{{pts: disc(pts[0], p.width/2), closed: true}})
			}
		case l.closed && len(pts) > 2:
			left := p.side(pts, true)
			right := p.side(reversed(pts), true)
			out = append(out, []line{{pts: left, closed: true}, {pts: right, closed: true}})
		default:
			ring := p.side(pts, false)
			ring = p.end(ring, pts[len(pts)-2], pts[len(pts)-1])
			ring = append(ring, p.side(reversed(pts), false)...)
			ring = p.end(ring, pts[1], pts[0])
			out = append(out, []line{{pts: ring, closed: true}})
		}
	}
	return out
}

// side walks along pts half a width to the left of it (y down).
func (p pen) side(pts []vec, closed bool) []vec {
	h := p.width / 2
	var out []vec
	n := len(pts)
	for i, at := range pts {
		before, after := i > 0 || closed, i < n-1 || closed
		var in, exit vec
		if before {
			in = normal(pts[(i+n-1)%n], at, h)
		}
		if after {
			exit = normal(at, pts[(i+1)%n], h)
		}
		switch {
		case !before:
			out = append(out, vec{at.x + exit.x, at.y + exit.y})
		case !after:
			out = append(out, vec{at.x + in.x, at.y + in.y})
		default:
			out = p.corner(out, at, in, exit, h)
		}
	}
	return out
}

// corner turns the corner at "at" from the offset in to the offset exit.
func (p pen) corner(out []vec, at, in, exit vec, h float64) []vec {
	cross := in.x*exit.y - in.y*exit.x
	dot := in.x*exit.x + in.y*exit.y
	a, b := vec{at.x + in.x, at.y + in.y}, vec{at.x + exit.x, at.y + exit.y}
	angle := math.Atan2(cross, dot)
	switch {
	case math.Abs(angle) < 0.35: // nearly straight: curves pass here
		k := h * h / (h*h + dot)
		return append(out, vec{at.x + (in.x+exit.x)*k, at.y + (in.y+exit.y)*k})
	case angle < 0: // inner side: through the corner keeps the area whole
		return append(out, a, at, b)
	case p.join == page.RoundJoin:
		return arc(out, at, in, angle, h)
	case p.join == page.Mitre && 1/math.Max(math.Cos(angle/2), 1e-9) <= p.mitre:
		k := h * h / (h*h + dot)
		return append(out, vec{at.x + (in.x+exit.x)*k, at.y + (in.y+exit.y)*k})
	}
	return append(out, a, b)
}

// end ends a stroke that came from "from" and stops at "at".
func (p pen) end(out []vec, from, at vec) []vec {
	h := p.width / 2
	switch n := normal(from, at, h); p.cap {
	case page.Butt:
		return out
	case page.SquareCap: // half a width further along
		return append(out, vec{at.x + n.x - n.y, at.y + n.y + n.x}, vec{at.x - n.x - n.y, at.y - n.y + n.x})
	}
	return arc(out, at, normal(from, at, h), math.Pi, h)
}

// arc appends points around centre from the offset start through angle.
func arc(out []vec, centre, start vec, angle, radius float64) []vec {
	n := max(2, int(math.Ceil(math.Abs(angle)/(2*math.Acos(1-min(flat/max(radius, flat), 1))))))
	for i := 0; i <= n; i++ {
		sin, cos := math.Sincos(angle * float64(i) / float64(n))
		out = append(out, vec{
			centre.x + start.x*cos - start.y*sin,
			centre.y + start.x*sin + start.y*cos,
		})
	}
	return out
}

func disc(c vec, radius float64) []vec {
	return arc(nil, c, vec{radius, 0}, 2*math.Pi, radius)
}

// normal is the step of length h to the left of the way from a to b (y down).
func normal(a, b vec, h float64) vec {
	dx, dy := b.x-a.x, b.y-a.y
	l := math.Hypot(dx, dy)
	return vec{dy / l * h, -dx / l * h}
}

// distinct drops points that repeat the one before.
func distinct(pts []vec, closed bool) []vec {
	var out []vec
	for _, p := range pts {
		if len(out) == 0 || math.Hypot(p.x-out[len(out)-1].x, p.y-out[len(out)-1].y) > 1e-6 {
			out = append(out, p)
		}
	}
	if closed && len(out) > 1 {
		if a, b := out[0], out[len(out)-1]; math.Hypot(a.x-b.x, a.y-b.y) <= 1e-6 {
			out = out[:len(out)-1]
		}
	}
	return out
}

func reversed(pts []vec) []vec {
	out := make([]vec, len(pts))
	for i, p := range pts {
		out[len(pts)-1-i] = p
	}
	return out
}

// dashes turns a dash list into pixels; ok is false when it means a solid
// line: an empty list, a sum of zero, a negative length, or dashes far below
// what a picture can show.
func dashes(list []unit.Length, scale float64) (out []float64, ok bool) {
	sum := 0.0
	for _, l := range list {
		if l < 0 {
			return nil, false
		}
		out = append(out, float64(l)*scale)
		sum += float64(l) * scale
	}
	if len(out)%2 == 1 {
		out, sum = append(out, out...), sum*2
	}
	return out, sum >= 0.1
}

// dashed cuts lines into their dashes; each subpath starts with a dash.
func dashed(lines []line, dash []float64) []line {
	var out []line
	for _, l := range lines {
		pts := distinct(l.pts, l.closed)
		if l.closed && len(pts) > 1 {
			pts = append(pts, pts[0])
		}
		out = append(out, cut(pts, dash)...)
	}
	return out
}

func cut(pts []vec, dash []float64) (out []line) {
	if len(pts) < 2 {
		return nil
	}
	k, left := 0, dash[0]
	cur := []vec{pts[0]}
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		length := math.Hypot(b.x-a.x, b.y-a.y)
		done := 0.0
		for length-done > left {
			done += left
			t := done / length
			p := vec{a.x + (b.x-a.x)*t, a.y + (b.y-a.y)*t}
			if k%2 == 0 {
				out = append(out, line{pts: append(cur, p)})
			}
			k++
			left, cur = dash[k%len(dash)], []vec{p}
		}
		left -= length - done
		cur = append(cur, b)
	}
	if k%2 == 0 && len(cur) > 1 {
		out = append(out, line{pts: cur})
	}
	return out
}
