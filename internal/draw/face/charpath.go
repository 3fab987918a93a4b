package face

import "math"

// path carries out an operator that draws (5177, 4.1); what is left over of its
// numbers, or is lacking, is an error.
func (d *drawing) path(op int) error {
	switch op {
	case 21, 22, 4:
		return d.start(op)
	}
	if len(d.out) == 0 {
		return errCFF
	}
	rest := d.args
	switch op {
	case 5:
		rest = d.lines(rest)
	case 6, 7:
		rest = d.steps(rest, op == 6)
	case 8:
		rest = d.curves(rest)
	case 24: // rcurveline
		rest = d.lines(d.curves(rest))
	case 25: // rlinecurve
		if n := len(rest) - 6; n >= 0 {
			if len(d.lines(rest[:n])) > 0 {
				return errCFF
			}
			rest = d.curves(rest[n:])
		}
	case 26, 27:
		rest = d.level(rest, op == 27)
	case 30, 31:
		rest = d.turning(rest, op == 31)
	default:
		return d.flex(op)
	}
	if len(rest) > 0 {
		return errCFF
	}
	return nil
}

// start begins a contour: rmoveto, hmoveto or vmoveto.
func (d *drawing) start(op int) error {
	n := 1
	if op == 21 {
		n = 2
	}
	d.width(n)
	if len(d.args) != n {
		return errCFF
	}
	switch op {
	case 21:
		d.move(d.args[0], d.args[1])
	case 22:
		d.move(d.args[0], 0)
	default:
		d.move(0, d.args[0])
	}
	return nil
}

func (d *drawing) lines(s []float64) []float64 {
	for ; len(s) >= 2; s = s[2:] {
		d.line(s[0], s[1])
	}
	return s
}

// steps are lines across and up in turn.
func (d *drawing) steps(s []float64, across bool) []float64 {
	for _, v := range s {
		if across {
			d.line(v, 0)
		} else {
			d.line(0, v)
		}
		across = !across
	}
	return nil
}

func (d *drawing) curves(s []float64) []float64 {
	for ; len(s) >= 6; s = s[6:] {
		d.curve(s[0], s[1], s[2], s[3], s[4], s[5])
	}
	return s
}

// level are curves that begin and end across (hhcurveto), or up (vvcurveto).
func (d *drawing) level(s []float64, across bool) []float64 {
	aside := 0.0
	if len(s)%4 == 1 {
		aside, s = s[0], s[1:]
	}
	for ; len(s) >= 4; s = s[4:] {
		if across {
			d.curve(s[0], aside, s[1], s[2], s[3], 0)
		} else {
			d.curve(aside, s[0], s[1], s[2], 0, s[3])
		}
		aside = 0
	}
	return s
}

// turning are curves that begin across and end up, and the other way, in turn
// (hvcurveto, vhcurveto).
func (d *drawing) turning(s []float64, across bool) []float64 {
	for ; len(s) >= 4; s = s[4:] {
		end := 0.0
		if len(s) == 5 {
			end = s[4]
		}
		if across {
			d.curve(s[0], 0, s[1], s[2], end, s[3])
		} else {
			d.curve(0, s[0], s[1], s[2], s[3], end)
		}
		across = !across
		if len(s) == 5 {
			return nil
		}
	}
	return s
}

// flex are two curves that may be a line at small sizes; here they are curves.
func (d *drawing) flex(op int) error {
	s := d.args
	if want := map[int]int{1234: 7, 1235: 13, 1236: 9, 1237: 11}[op]; want == 0 || len(s) != want {
		return errCFF
	}
	switch op {
	case 1234: // hflex
		d.curve(s[0], 0, s[1], s[2], s[3], 0)
		d.curve(s[4], 0, s[5], -s[2], s[6], 0)
	case 1235: // flex
		d.curves(s[:12])
	case 1236: // hflex1
		d.curve(s[0], s[1], s[2], s[3], s[4], 0)
		d.curve(s[5], 0, s[6], s[7], s[8], -(s[1] + s[3] + s[7]))
	case 1237: // flex1: the end is level with the start on the longer way
		x, y := s[0]+s[2]+s[4]+s[6]+s[8], s[1]+s[3]+s[5]+s[7]+s[9]
		endX, endY := s[10], -y
		if math.Abs(x) <= math.Abs(y) {
			endX, endY = -x, s[10]
		}
		d.curves(s[:6])
		d.curve(s[6], s[7], s[8], s[9], endX, endY)
	}
	return nil
}
