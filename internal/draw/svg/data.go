package svg

import (
	"strconv"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// micro rounds to micrometres: 0.001 of a picture unit.
func micro(l unit.Length) int64 {
	if l < 0 {
		return -micro(-l)
	}
	return int64((l + 500) / 1000)
}

// number writes micrometres as millimetres, short: 1500 is "1.5".
func (d *drawing) number(v int64) {
	if v < 0 {
		d.b = append(d.b, '-')
		v = -v
	}
	whole, part := v/1000, v%1000
	if whole > 0 || part == 0 {
		d.b = strconv.AppendInt(d.b, whole, 10)
	}
	if part == 0 {
		return
	}
	d.b = append(d.b, '.', byte('0'+part/100))
	if part%100 != 0 {
		d.b = append(d.b, byte('0'+part/10%10))
	}
	if part%10 != 0 {
		d.b = append(d.b, byte('0'+part%10))
	}
}

func (d *drawing) pair(x, y int64) {
	d.number(x)
	if y >= 0 {
		d.b = append(d.b, ' ')
	}
	d.number(y)
}

// argument counts of the path operations, and their letters, relative.
var (
	counts  = [...]int{page.MoveTo: 1, page.LineTo: 1, page.CubicTo: 3, page.Close: 0}
	letters = [...]byte{page.MoveTo: 'M', page.LineTo: 'l', page.CubicTo: 'c', page.Close: 'z'}
)

// data writes path data (SVG 1.1, 8.3). Steps are taken between rounded
// points, so rounding never adds up.
func (d *drawing) data(p *page.Path) {
	var x, y, startX, startY int64
	pts := p.Pts
	last := page.Close
	for i, op := range p.Ops {
		if int(op) >= len(counts) || len(pts) < counts[op] || i == 0 && op != page.MoveTo {
			d.fail("a path has too few points or an unknown operation")
			return
		}
		if op != last || op == page.MoveTo || op == page.Close {
			d.b = append(d.b, letters[op])
		} else {
			d.b = append(d.b, ' ')
		}
		for j := range counts[op] {
			px, py := micro(pts[j].X), micro(pts[j].Y)
			if j > 0 {
				d.b = append(d.b, ' ')
			}
			if op == page.MoveTo {
				d.pair(px, py)
			} else {
				d.pair(px-x, py-y)
			}
		}
		last = op
		switch n := counts[op]; op {
		case page.Close:
			x, y = startX, startY
		default:
			x, y = micro(pts[n-1].X), micro(pts[n-1].Y)
			pts = pts[n:]
			if op == page.MoveTo {
				startX, startY = x, y
			}
		}
	}
}
