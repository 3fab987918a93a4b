package svg

import (
	"math"
	"strconv"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
)

// ink writes the outline of a letter into the path of its line, in whole 1/1000
// em. Steps are taken between rounded points, so rounding never adds up. A
// browser takes in a line that is one path in half the time of one that refers
// to each of its letters (measured in Chromium).
func (d *drawing) ink(f *face.Face, r rune, x float64) {
	o := f.Outline(r)
	s := stroke{b: d.b, left: x}
	pts := o.Pts
	for _, op := range o.Ops {
		switch op {
		case page.MoveTo:
			s.move(pts[0])
		case page.LineTo:
			s.steps('l', pts[0])
		case page.CubicTo:
			if c, ok := bent(s.at, pts[0], pts[1], pts[2]); ok {
				s.steps('q', c, pts[2])
			} else {
				s.steps('c', pts[:3]...)
			}
		case page.Close:
			s.b, s.last = append(s.b, 'z'), 'z'
		}
		pts = pts[counts[op]:]
	}
	d.b = s.b
}

// bent gives the control point of the quadratic curve a cubic one stands for:
// the inverse of degree elevation, which typefaces' curves went through
// (face.Outline).
func bent(from, a, b, to face.Vec) (face.Vec, bool) {
	one := face.Vec{X: (3*a.X - from.X) / 2, Y: (3*a.Y - from.Y) / 2}
	two := face.Vec{X: (3*b.X - to.X) / 2, Y: (3*b.Y - to.Y) / 2}
	const hair = 1e-6 // of an em: a sum of floats
	return one, math.Abs(one.X-two.X) < hair && math.Abs(one.Y-two.Y) < hair
}

// stroke is the pen that writes one letter.
type stroke struct {
	b    []byte
	left float64  // of the letter, in 1/1000 em
	at   face.Vec // where the pen is, in ems
	x, y int64    // the same on paper, rounded
	last byte     // the operation written last
}

// round gives a place on paper in whole 1/1000 em.
func (s *stroke) round(v face.Vec) (x, y int64) {
	return int64(math.Round(s.left + v.X*1000)), int64(math.Round(v.Y * 1000))
}

func (s *stroke) move(to face.Vec) {
	s.at = to
	s.x, s.y = s.round(to)
	s.b, s.last = append(s.b, 'M'), 'M'
	s.number(s.x)
	s.number(s.y)
}

// steps goes on by a line or a curve to the last of the points given.
func (s *stroke) steps(op byte, pts ...face.Vec) {
	if op != s.last {
		s.b, s.last = append(s.b, op), op
	}
	for _, p := range pts {
		x, y := s.round(p)
		s.number(x - s.x)
		s.number(y - s.y)
	}
	s.at = pts[len(pts)-1]
	s.x, s.y = s.round(s.at)
}

// number writes a number, with a blank before it where it would run into
// another.
func (s *stroke) number(n int64) {
	if c := s.b[len(s.b)-1]; n >= 0 && c >= '0' && c <= '9' {
		s.b = append(s.b, ' ')
	}
	s.b = strconv.AppendInt(s.b, n, 10)
}
