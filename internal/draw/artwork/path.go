package artwork

import (
	"math"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// pen writes a path in the box's coordinates.
type pen struct {
	to           matrix
	path         *page.Path
	x, y         float64 // where it is, in the units of the file
	startX       float64 // of the part
	startY       float64
	most         int // points
	over, far    bool
	open         bool // a part is begun
	wrong        string
	lastX, lastY float64 // the control point a smooth curve mirrors
	last         byte    // the command before
}

func (p *pen) add(op page.Op, at ...float64) {
	if len(p.path.Pts)+len(at)/2 > p.most {
		p.over = true
		return
	}
	p.path.Ops = append(p.path.Ops, op)
	for i := 0; i < len(at); i += 2 {
		x, y := p.to.apply(at[i], at[i+1])
		if !(math.Abs(x) <= 500*float64(long) && math.Abs(y) <= 500*float64(long)) {
			p.far, x, y = true, 0, 0
		}
		p.path.Pts = append(p.path.Pts, page.Point{X: unit.Length(math.Round(x)), Y: unit.Length(math.Round(y))})
	}
}

func (p *pen) move(x, y float64) {
	p.add(page.MoveTo, x, y)
	p.x, p.y, p.startX, p.startY, p.open = x, y, x, y, true
}

// begin starts a part anew after one was closed.
func (p *pen) begin() {
	if !p.open {
		p.move(p.x, p.y)
	}
}

func (p *pen) line(x, y float64) {
	p.begin()
	p.add(page.LineTo, x, y)
	p.x, p.y = x, y
}

func (p *pen) cubic(x1, y1, x2, y2, x, y float64) {
	p.begin()
	p.add(page.CubicTo, x1, y1, x2, y2, x, y)
	p.x, p.y = x, y
}

// quadratic is a cubic whose controls lie two thirds on the way.
func (p *pen) quadratic(cx, cy, x, y float64) {
	p.cubic(p.x+(cx-p.x)*2/3, p.y+(cy-p.y)*2/3, x+(cx-x)*2/3, y+(cy-y)*2/3, x, y)
}

func (p *pen) close() {
	if p.open {
		p.add(page.Close)
	}
	p.x, p.y, p.open = p.startX, p.startY, false
}

// takes is how many numbers a command of path data takes.
var takes = map[byte]int{'m': 2, 'l': 2, 'h': 1, 'v': 1, 'c': 6, 's': 4, 'q': 4, 't': 2, 'a': 7, 'z': 0}

// data draws path data (SVG 2, 9.3).
func (p *pen) data(d string) {
	s := strings.TrimLeft(d, space)
	if s == "none" {
		return
	}
	if s != "" && s[0] != 'M' && s[0] != 'm' {
		p.wrong = "its path does not begin with a move"
		return
	}
	for s != "" && !p.over {
		command := s[0]
		lower := command | 0x20
		n, known := takes[lower]
		if !known || command < 'A' {
			p.wrong = "its path holds something that is no command"
			return
		}
		s = strings.TrimLeft(s[1:], space)
		if n == 0 {
			p.close()
			p.last = 'z'
			continue
		}
		for first := true; ; first = false {
			v, rest, ok := arguments(s, lower, n)
			if !ok {
				p.wrong = "its path breaks off, or a number in it is none or too large"
				return
			}
			if lower == 'm' && !first {
				lower, command = 'l', command-'m'+'l'
			}
			p.step(lower, command == lower, v)
			s = strings.TrimLeft(rest, space)
			if p.over || s == "" || !strings.ContainsRune("+-.,0123456789", rune(s[0])) {
				break
			}
			if s[0] == ',' {
				s = strings.TrimLeft(s[1:], space)
			}
		}
	}
}

// arguments reads the numbers of one command; the flags of an arc are one digit.
func arguments(s string, command byte, n int) (v [7]float64, rest string, ok bool) {
	for i := range n {
		if i > 0 {
			s = separated(s)
		}
		if command == 'a' && (i == 3 || i == 4) {
			if s == "" || s[0] != '0' && s[0] != '1' {
				return v, s, false
			}
			v[i], s = float64(s[0]-'0'), s[1:]
			continue
		}
		if v[i], s, ok = number(s); !ok {
			return v, s, false
		}
	}
	return v, s, true
}

// step draws one command.
func (p *pen) step(command byte, relative bool, v [7]float64) {
	var ox, oy float64
	if relative {
		ox, oy = p.x, p.y
	}
	mirror := func(of string) (float64, float64) {
		if strings.IndexByte(of, p.last) >= 0 {
			return 2*p.x - p.lastX, 2*p.y - p.lastY
		}
		return p.x, p.y
	}
	switch command {
	case 'm':
		p.move(ox+v[0], oy+v[1])
	case 'l':
		p.line(ox+v[0], oy+v[1])
	case 'h':
		p.line(ox+v[0], p.y)
	case 'v':
		p.line(p.x, oy+v[0])
	case 'c':
		p.lastX, p.lastY = ox+v[2], oy+v[3]
		p.cubic(ox+v[0], oy+v[1], p.lastX, p.lastY, ox+v[4], oy+v[5])
	case 's':
		x1, y1 := mirror("cs")
		p.lastX, p.lastY = ox+v[0], oy+v[1]
		p.cubic(x1, y1, p.lastX, p.lastY, ox+v[2], oy+v[3])
	case 'q':
		p.lastX, p.lastY = ox+v[0], oy+v[1]
		p.quadratic(p.lastX, p.lastY, ox+v[2], oy+v[3])
	case 't':
		p.lastX, p.lastY = mirror("qt")
		p.quadratic(p.lastX, p.lastY, ox+v[0], oy+v[1])
	case 'a':
		p.arc(v[0], v[1], v[2], v[3] == 1, v[4] == 1, ox+v[5], oy+v[6])
	}
	p.last = command
}

// arc draws an arc of an ellipse as cubics of at most an eighth of it (SVG 2, B.2.4
// and B.2.5: from end points to centre, radii that are too small).
func (p *pen) arc(rx, ry, degrees float64, large, sweep bool, x, y float64) {
	rx, ry = math.Abs(rx), math.Abs(ry)
	if x == p.x && y == p.y {
		return
	}
	if rx == 0 || ry == 0 {
		p.line(x, y)
		return
	}
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	dx, dy := (p.x-x)/2, (p.y-y)/2
	u, v := cos*dx+sin*dy, -sin*dx+cos*dy
	if l := math.Hypot(u/rx, v/ry); l > 1 {
		rx, ry = rx*l, ry*l
	}
	k := math.Sqrt(max(0, 1/(u*u/(rx*rx)+v*v/(ry*ry))-1))
	if large == sweep {
		k = -k
	}
	cu, cv := k*rx*v/ry, -k*ry*u/rx
	from := math.Atan2((v-cv)/ry, (u-cu)/rx)
	by := math.Atan2((-v-cv)/ry, (-u-cu)/rx) - from
	switch {
	case sweep && by < 0:
		by += 2 * math.Pi
	case !sweep && by > 0:
		by -= 2 * math.Pi
	}
	mx, my := cos*cu-sin*cv+(p.x+x)/2, sin*cu+cos*cv+(p.y+y)/2
	p.round(matrix{rx * cos, rx * sin, -ry * sin, ry * cos, mx, my}, from, by, x, y)
}

// round draws part of a circle of radius 1 as on lays it, and ends in x, y.
func (p *pen) round(on matrix, from, by, x, y float64) {
	n := max(1, int(math.Ceil(math.Abs(by)/(math.Pi/4)-1e-9)))
	step := by / float64(n)
	k := 4. / 3 * math.Tan(step/4)
	for i := range n {
		s0, c0 := math.Sincos(from + step*float64(i))
		s1, c1 := math.Sincos(from + step*float64(i+1))
		x1, y1 := on.apply(c0-k*s0, s0+k*c0)
		x2, y2 := on.apply(c1+k*s1, s1-k*c1)
		x3, y3 := on.apply(c1, s1)
		if i == n-1 {
			x3, y3 = x, y
		}
		p.cubic(x1, y1, x2, y2, x3, y3)
	}
}
