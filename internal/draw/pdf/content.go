package pdf

import (
	"math"
	"strconv"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// content writes the operators of one form (ISO 32000-1, 8.2), and leaves out
// a setting that already holds.
type content struct {
	b      []byte
	fonts  map[page.Face]*typeface
	images map[*page.Image]string // what the file calls them
	arts   map[*page.Image]*form
	now    ink
	saved  []ink
}

// ink is the part of the graphics state written here. Zero values mean "not
// known yet", so that nothing is taken over from whoever draws the form.
type ink struct {
	fill, stroke int // 1 + packed colour
	width        unit.Length
	round, lines int8 // 1 = plain, 2 = round; 1 = solid, 2 = dashed
	font         string
	size         unit.Length
}

// space maps items to the y-up points of a form: left and top are where the
// items' origin lies from the left and from the bottom edge of the form.
type space struct{ left, top unit.Length }

func (c *content) save() { c.op("q"); c.saved = append(c.saved, c.now) }

func (c *content) restore() {
	c.op("Q")
	last := len(c.saved) - 1
	c.now, c.saved = c.saved[last], c.saved[:last]
}

// op ends an operation: its operator and a line break.
func (c *content) op(s string) {
	c.b = append(c.b, s...)
	c.b = append(c.b, '\n')
}

// tenThousandths gives a length in 1/10 000 pt, rounded, in integers alone:
// 1 nm is 18/635 of it.
func tenThousandths(l unit.Length) int64 {
	v := int64(l) * 36
	if v < 0 {
		return (v - 635) / 1270
	}
	return (v + 635) / 1270
}

// length writes a length in points and a blank.
func (c *content) length(l unit.Length) {
	v := tenThousandths(l)
	if v < 0 {
		c.b = append(c.b, '-')
		v = -v
	}
	c.b = strconv.AppendInt(c.b, v/10000, 10)
	if frac := v % 10000; frac != 0 {
		c.b = append(c.b, '.', byte('0'+frac/1000), byte('0'+frac/100%10), byte('0'+frac/10%10), byte('0'+frac%10))
		for c.b[len(c.b)-1] == '0' {
			c.b = c.b[:len(c.b)-1]
		}
	}
	c.b = append(c.b, ' ')
}

func (c *content) point(s space, p page.Point) {
	c.length(s.left + p.X)
	c.length(s.top - p.Y)
}

// number writes a plain number and a blank.
func (c *content) number(v float64) {
	if math.Abs(v) < 5e-7 {
		v = 0 // no "-0.000000"
	}
	c.b = strconv.AppendFloat(c.b, v, 'f', 6, 64)
	for c.b[len(c.b)-1] == '0' {
		c.b = c.b[:len(c.b)-1]
	}
	if c.b[len(c.b)-1] == '.' {
		c.b = c.b[:len(c.b)-1]
	}
	c.b = append(c.b, ' ')
}

func (c *content) integer(v int) {
	c.b = strconv.AppendInt(c.b, int64(v), 10)
	c.b = append(c.b, ' ')
}

func pack(k page.Colour) int { return 1 + (int(k.R)<<16 | int(k.G)<<8 | int(k.B)) }

func (c *content) fillColour(k page.Colour) {
	if v := pack(k); c.now.fill != v {
		c.now.fill = v
		c.colour(k, "g", "rg")
	}
}

func (c *content) strokeColour(k page.Colour) {
	if v := pack(k); c.now.stroke != v {
		c.now.stroke = v
		c.colour(k, "G", "RG")
	}
}

// colour writes grey as DeviceGray, so that black prints with black ink alone.
func (c *content) colour(k page.Colour, grey, rgb string) {
	c.share(k.R)
	if k.R == k.G && k.G == k.B {
		c.op(grey)
		return
	}
	c.share(k.G)
	c.share(k.B)
	c.op(rgb)
}

func (c *content) share(v uint8) {
	switch v {
	case 0:
		c.b = append(c.b, '0', ' ')
	case 255:
		c.b = append(c.b, '1', ' ')
	default:
		c.b = strconv.AppendFloat(c.b, float64(v)/255, 'f', 4, 64)
		c.b = append(c.b, ' ')
	}
}
