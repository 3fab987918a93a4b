package face

import (
	"encoding/binary"
	"errors"
	"math"
	"slices"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A PDF here embeds TrueType, whose curves are quadratic and whose points are whole
// numbers. So that both together stay within 0.4 of 1/1000 em of the PostScript outline,
// the em is cut finer, which leaves points at most 0.18 off, and a curve at most curveOff.
const (
	finestEm = 4096
	curveOff = 0.2 / 1000 // of an em
)

// finer is how many times finer the em of the TrueType glyphs is.
func (f *Face) finer() int { return max(1, finestEm/f.unitsPerEm()) }

func (f *Face) unitsPerEm() int { return f.em.Round() }

var errFar = errors.New("a glyph is too large or has too many points")

// corner is a point of a TrueType contour in units of the finer em, y up.
type corner struct {
	x, y int
	on   bool // the curve; else it bends it
}

// glyf is a glyph as the tables glyf and hmtx have it.
type glyf struct {
	data             []byte // empty for a space
	box              [4]int // left, bottom, right, top
	points, contours int
	advance          int
}

// legible reports whether a glyph can be drawn, and embedded; of a TrueType file,
// whose glyphs are looked at when it is read, all can.
func (f *Face) legible(g sfnt.GlyphIndex) bool {
	if f.cff == nil {
		return true
	}
	if int(g) >= len(f.cff.legible) {
		return false
	}
	const yes, no = 1, 2
	known := &f.cff.legible[g]
	if v := known.Load(); v != 0 {
		return v == yes
	}
	_, err := f.quadratic(g)
	if err != nil {
		known.Store(no)
		return false
	}
	known.Store(yes)
	return true
}

// quadratic makes a TrueType glyph of a PostScript one.
func (f *Face) quadratic(g sfnt.GlyphIndex) (glyf, error) {
	segments, err := f.cff.segments(g)
	if err != nil {
		return glyf{}, err
	}
	m, err := f.tables.metric(uint16(g))
	if err != nil {
		return glyf{}, err
	}
	out, err := encode(f.contours(segments))
	out.advance = int(u16(m[:])) * f.finer()
	if out.advance > math.MaxUint16 {
		return out, errFar
	}
	return out, err
}

// contours are the closed lines of a glyph, turned to run as TrueType's do, the ink on
// their right; a PostScript glyph has it on the left.
func (f *Face) contours(segments sfnt.Segments) (out [][]corner) {
	k := float64(f.finer()) / 64
	at := func(p fixed.Point26_6) (x, y float64) { return float64(p.X) * k, -float64(p.Y) * k }
	off := curveOff * float64(f.unitsPerEm()*f.finer())
	var now []corner
	var x, y float64
	end := func() {
		for len(now) > 1 && now[len(now)-1] == now[0] {
			now = now[:len(now)-1]
		}
		if len(now) > 2 {
			slices.Reverse(now)
			out = append(out, now)
		}
		now = nil
	}
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			end()
			x, y = at(s.Args[0])
			now = append(now, whole(x, y, true))
		case sfnt.SegmentOpLineTo:
			x, y = at(s.Args[0])
			if c := whole(x, y, true); c != now[len(now)-1] {
				now = append(now, c)
			}
		case sfnt.SegmentOpCubeTo:
			a, b, c := s.Args[0], s.Args[1], s.Args[2]
			ax, ay := at(a)
			bx, by := at(b)
			cx, cy := at(c)
			now = bent(now, [4]float64{x, ax, bx, cx}, [4]float64{y, ay, by, cy}, off)
			x, y = cx, cy
		}
	}
	end()
	return out
}

func whole(x, y float64, on bool) corner {
	return corner{int(math.Round(x)), int(math.Round(y)), on}
}

// bent adds a cubic curve as quadratic ones. One whose control point is
// (3(b+c)-a-d)/4 lies within sqrt(3)/36 |d-3c+3b-a| of it, and n of them, each of an
// n-th of the curve, within that over n cubed, as the third derivative of a cubic is
// constant (Sederberg, Computer Aided Geometric Design, on degree reduction; the figure
// is the maximum of t(1-t)(1-2t)/2 over [0, 1]).
func bent(to []corner, x, y [4]float64, off float64) []corner {
	third := math.Hypot(x[3]-3*x[2]+3*x[1]-x[0], y[3]-3*y[2]+3*y[1]-y[0])
	n := max(1, math.Ceil(math.Cbrt(math.Sqrt(3)/36*third/off)))
	for i := range int(n) {
		from, till := float64(i)/n, float64(i+1)/n
		sx, sy := between(x, from, till), between(y, from, till)
		to = append(to, whole((3*(sx[1]+sx[2])-sx[0]-sx[3])/4, (3*(sy[1]+sy[2])-sy[0]-sy[3])/4, false), whole(sx[3], sy[3], true))
	}
	return to
}

// between is the part of a cubic from t to u: its ends, and its tangents there, a third
// as long as the part.
func between(p [4]float64, t, u float64) [4]float64 {
	value := func(t float64) float64 {
		v := 1 - t
		return v*v*v*p[0] + 3*v*v*t*p[1] + 3*v*t*t*p[2] + t*t*t*p[3]
	}
	slope := func(t float64) float64 {
		v := 1 - t
		return v*v*(p[1]-p[0]) + 2*v*t*(p[2]-p[1]) + t*t*(p[3]-p[2])
	}
	a, d := value(t), value(u)
	return [4]float64{a, a + slope(t)*(u-t), d - slope(u)*(u-t), d}
}

// Flags of a point (OpenType specification, glyf, simple glyph).
const (
	onCurve        = 1 << 0
	shortX, shortY = 1 << 1, 1 << 2
	sameX, sameY   = 1 << 4, 1 << 5 // no step; of a short one, that it is not negative
)

// encode writes contours as a simple glyph.
func encode(contours [][]corner) (g glyf, err error) {
	g.contours = len(contours)
	if g.contours == 0 {
		return g, nil
	}
	var ends, flags, xs, ys []byte
	last := corner{}
	g.box = [4]int{math.MaxInt, math.MaxInt, math.MinInt, math.MinInt}
	for _, c := range contours {
		for _, p := range c {
			dx, dy := p.x-last.x, p.y-last.y
			if !fits(p.x) || !fits(p.y) || !fits(dx) || !fits(dy) {
				return g, errFar
			}
			g.box = [4]int{min(g.box[0], p.x), min(g.box[1], p.y), max(g.box[2], p.x), max(g.box[3], p.y)}
			var flag, fx, fy byte
			if p.on {
				flag = onCurve
			}
			xs, fx = step(xs, dx, shortX, sameX)
			ys, fy = step(ys, dy, shortY, sameY)
			flags, last = append(flags, flag|fx|fy), p
		}
		if g.points += len(c); g.points > math.MaxInt16 {
			return g, errFar
		}
		ends = binary.BigEndian.AppendUint16(ends, uint16(g.points-1))
	}
	for _, v := range append([]int{g.contours}, g.box[:]...) {
		g.data = binary.BigEndian.AppendUint16(g.data, uint16(v))
	}
	g.data = slices.Concat(g.data, ends, []byte{0, 0}, flags, xs, ys) // no instructions
	return g, nil
}

func fits(v int) bool { return v >= math.MinInt16 && v <= math.MaxInt16 }

// step adds the way from one point to the next, and gives the flag that tells how.
func step(to []byte, d int, short, same byte) ([]byte, byte) {
	switch {
	case d == 0:
		return to, same
	case d > 0 && d < 256:
		return append(to, byte(d)), short | same
	case d < 0 && d > -256:
		return append(to, byte(-d)), short
	}
	return binary.BigEndian.AppendUint16(to, uint16(d)), 0
}
