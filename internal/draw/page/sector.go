package page

import (
	"math"

	"jarmark/internal/kit/unit"
)

// Arc is the development of part of a cone's side: what lies between two circles
// about its tip, within an angle of at most half a turn.
type Arc struct {
	Inner, Outer unit.Length // radii, from the tip
	Angle        float64     // radians
	Up           bool        // the tip lies above: the jar is wider at its foot
}

// Cone is the side of a tapered jar as a label on it needs it: how far from the tip
// the label's narrow edge lies. Zero is a straight jar.
type Cone struct {
	Inner unit.Length
	Up    bool
}

// Arc is the piece that w x h takes on the cone, w along its narrow edge.
func (c Cone) Arc(w, h unit.Length) Arc {
	return Arc{c.Inner, c.Inner + h, float64(w) / float64(c.Inner), c.Up}
}

// Size is the box of the piece, laid so that its middle stands upright.
func (a Arc) Size() (w, h unit.Length) {
	sin, cos := math.Sincos(a.Angle / 2)
	return round(2 * float64(a.Outer) * sin), a.Outer - round(float64(a.Inner)*cos)
}

// Tip is where the cone's tip lies in the coordinates of that box.
func (a Arc) Tip() Point {
	w, _ := a.Size()
	if a.Up {
		return Point{X: w / 2, Y: -round(float64(a.Inner) * math.Cos(a.Angle/2))}
	}
	return Point{X: w / 2, Y: a.Outer}
}

// At is the place at a distance from the tip and an angle from the middle, clockwise
// as one looks on the label from its narrow edge.
func (a Arc) At(r, angle float64) Point {
	tip := a.Tip()
	sin, cos := math.Sincos(angle)
	if a.Up {
		cos = -cos
	}
	return Point{X: tip.X + round(r*sin), Y: tip.Y - round(r*cos)}
}

// outline is the edge of the piece, grown by out on all sides.
func (a Arc) outline(out unit.Length) *Path {
	half := a.Angle/2 + float64(out)/float64(a.Inner)
	p := &Path{EvenOdd: true}
	p.add(MoveTo, a.At(float64(a.Outer+out), -half))
	a.sweep(p, float64(a.Outer+out), -half, half)
	p.add(LineTo, a.At(float64(a.Inner-out), half))
	a.sweep(p, float64(a.Inner-out), half, -half)
	p.add(Close)
	return p
}

// sweep draws an arc about the tip as cubics of at most an eighth of a half turn.
func (a Arc) sweep(p *Path, r, from, to float64) {
	n := max(1, int(math.Ceil(math.Abs(to-from)/(math.Pi/8))))
	step := (to - from) / float64(n)
	k := 4. / 3 * math.Tan(step/4)
	long := r * math.Sqrt(1+k*k)
	turn := math.Atan(k)
	for i := range n {
		x, y := from+step*float64(i), from+step*float64(i+1)
		p.add(CubicTo, a.At(long, x+turn), a.At(long, y-turn), a.At(r, y))
	}
}

// holds reports whether a point lies inside the piece, s from its edge.
func (a Arc) holds(p Point, s unit.Length) bool {
	tip := a.Tip()
	dx, dy := float64(p.X-tip.X), float64(tip.Y-p.Y)
	if a.Up {
		dy = -dy
	}
	r, side := math.Hypot(dx, dy), a.Angle/2-math.Abs(math.Atan2(dx, dy))
	return r >= float64(a.Inner+s)-1 && r <= float64(a.Outer-s)+1 && side >= 0 && r*math.Sin(min(side, math.Pi/2)) >= float64(s)-1
}

// nearest is the place of a box that lies nearest to the tip.
func (a Arc) nearest(r Rect) Point {
	tip := a.Tip()
	return Point{X: min(max(tip.X, r.X), r.X+r.W), Y: min(max(tip.Y, r.Y), r.Y+r.H)}
}

func round(v float64) unit.Length { return unit.Length(math.Round(v)) }
