package artwork

import (
	"math"
	"strings"
)

// matrix maps (x, y) to (a·x + c·y + e, b·x + d·y + f) (SVG 2 refers to CSS
// Transforms 1, 8).
type matrix struct{ a, b, c, d, e, f float64 }

var identity = matrix{a: 1, d: 1}

func (m matrix) apply(x, y float64) (float64, float64) {
	return m.a*x + m.c*y + m.e, m.b*x + m.d*y + m.f
}

// mul is n first, then m.
func (m matrix) mul(n matrix) matrix {
	e, f := m.apply(n.e, n.f)
	return matrix{m.a*n.a + m.c*n.b, m.b*n.a + m.d*n.b, m.a*n.c + m.c*n.d, m.b*n.c + m.d*n.d, e, f}
}

// flat reports whether all is pressed into a line or a point.
func (m matrix) flat() bool {
	return math.Abs(m.a*m.d-m.b*m.c) <= 1e-9
}

// scale is how much lengths grow, and whether alike in all directions, within
// a hundredth.
func (m matrix) scale() (by float64, even bool) {
	by = math.Sqrt(math.Abs(m.a*m.d - m.b*m.c))
	across, down := math.Hypot(m.a, m.b), math.Hypot(m.c, m.d)
	return by, math.Abs(across-down) <= 0.01*by && math.Abs(m.a*m.c+m.b*m.d) <= 0.01*by*by
}

// transform reads a list of transforms (CSS Transforms 1, 8.1: the attribute).
func transform(s string) (m matrix, ok bool) {
	m = identity
	for s = strings.Trim(s, space); s != ""; s = strings.TrimLeft(s, space+",") {
		name, rest, found := strings.Cut(s, "(")
		inside, after, closed := strings.Cut(rest, ")")
		v, all := numbers(inside)
		n, known := turn(strings.TrimRight(name, space), v)
		if !found || !closed || !all || !known {
			return identity, false
		}
		m, s = m.mul(n), after
	}
	return m, true
}

func turn(name string, v []float64) (matrix, bool) {
	n := len(v)
	switch {
	case name == "matrix" && n == 6:
		return matrix{v[0], v[1], v[2], v[3], v[4], v[5]}, true
	case name == "translate" && n == 1:
		return matrix{a: 1, d: 1, e: v[0]}, true
	case name == "translate" && n == 2:
		return matrix{a: 1, d: 1, e: v[0], f: v[1]}, true
	case name == "scale" && n == 1:
		return matrix{a: v[0], d: v[0]}, true
	case name == "scale" && n == 2:
		return matrix{a: v[0], d: v[1]}, true
	case name == "skewX" && n == 1:
		return matrix{a: 1, c: math.Tan(v[0] * math.Pi / 180), d: 1}, true
	case name == "skewY" && n == 1:
		return matrix{a: 1, b: math.Tan(v[0] * math.Pi / 180), d: 1}, true
	case name == "rotate" && (n == 1 || n == 3):
		sin, cos := math.Sincos(v[0] * math.Pi / 180)
		m := matrix{a: cos, b: sin, c: -sin, d: cos}
		if n == 3 {
			m = matrix{a: 1, d: 1, e: v[1], f: v[2]}.mul(m).mul(matrix{a: 1, d: 1, e: -v[1], f: -v[2]})
		}
		return m, true
	}
	return identity, false
}
