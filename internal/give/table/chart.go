package table

import (
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// shades are the colours of a chart's parts in their order. They differ in
// lightness too, so that a black print can be read: about 27, 45, 66 and 84 %.
var shades = []page.Colour{Accent, {R: 62, G: 104, B: 66}, {R: 196, G: 150, B: 84}, {R: 222, G: 211, B: 194}}

// look is how a row of figures is set.
type look uint8

const (
	Figures look = iota
	SumOfFigures
	SmallHeading
)

// columnBand is a name and figures under their headings, each ending at the
// right edge of its column; between them, where the part has bars, one of them.
func columnBand(p Part, r Row, how look, most float64) Band {
	h, size := 6500*unit.Micrometre, Pt(10.5)
	if p.Compact {
		h, size = 5300*unit.Micrometre, Pt(9.5)
	}
	return Band{H: h, Draw: func(c *Layout, y unit.Length) {
		base := y + h*72/100
		f, col := PlainFace, Ink
		switch how {
		case SumOfFigures:
			f = BoldFace
		case SmallHeading:
			size, col = Pt(8.5), Soft
		}
		ends := c.figureEnds(p)
		at := ends[0]
		if p.Barred {
			at -= barRoom
			c.lyingBar(r, page.Rect{X: at, Y: y + h*24/100, W: barRoom - 3*unit.Millimetre, H: h * 52 / 100}, most)
		}
		c.Text(f, size, Margin, base, col, c.Short(f, size, at-Margin-2*unit.Millimetre, r.What))
		for i, s := range r.Figures {
			if i+1 < len(ends) {
				c.Right(f, size, ends[i+1], base, col, c.Short(f, size, ends[i+1]-ends[i]-unit.Millimetre, s))
			}
		}
		c.Rule(Margin, c.W-Margin, y+h-200*unit.Micrometre)
	}}
}

// barRoom is the width of a bar in a row of figures, with the gap after it.
const barRoom = 36 * unit.Millimetre

// figureEnds are the right edges of the columns, the first the left edge of all:
// each as wide as its widest figure asks, over the whole list alike.
func (c *Layout) figureEnds(p Part) []unit.Length {
	wide := make([]unit.Length, max(len(p.Columns)-1, 0))
	for i := range wide {
		wide[i] = c.Width(PlainFace, Pt(8.5), p.Columns[i+1])
		for _, r := range p.Rows {
			if i < len(r.Figures) {
				wide[i] = max(wide[i], c.Width(BoldFace, Pt(10.5), r.Figures[i]))
			}
		}
		wide[i] = min(wide[i]+4*unit.Millimetre, 40*unit.Millimetre)
	}
	ends := make([]unit.Length, len(wide)+1)
	ends[len(wide)] = c.W - Margin
	for i := len(wide) - 1; i >= 0; i-- {
		ends[i] = ends[i+1] - wide[i]
	}
	return ends
}

// lyingBar is the bar of one row, to the scale of all rows of its part.
func (c *Layout) lyingBar(r Row, room page.Rect, most float64) {
	if len(r.Bars) == 0 {
		return
	}
	x := room.X
	for i, p := range r.Bars[0].Parts {
		if w := unit.Length(float64(room.W) * p / most); w > 0 {
			c.patch(page.Rect{X: x, Y: room.Y, W: w, H: room.H}, i)
			x += w
		}
	}
}

// legendBand names the parts of a chart's bars beside patches of their colours.
func legendBand(names []string) Band {
	return Band{H: 7 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		x, base := Margin, y+5*unit.Millimetre
		for i, n := range names {
			c.patch(page.Rect{X: x, Y: base - 2600*unit.Micrometre, W: 3 * unit.Millimetre, H: 3 * unit.Millimetre}, i)
			x = c.Text(PlainFace, Pt(9), x+4500*unit.Micrometre, base, Soft, n) + 7*unit.Millimetre
		}
	}}
}

// patch is a filled field of a chart; the lightest has an outline too.
func (c *Layout) patch(r page.Rect, shade int) {
	fill := shades[min(shade, len(shades)-1)]
	edge := fill
	if shade >= len(shades)-1 {
		edge = page.Colour{R: 160, G: 146, B: 124}
	}
	p := Box(r, &fill, &edge)
	p.Width = unit.Points(0.4)
	c.Add(p)
}

// longest is the greatest sum of a bar's parts, at least 1.
func longest(bars []Bar) (most float64) {
	for _, b := range bars {
		most = max(most, b.sum())
	}
	return max(most, 1)
}

func (b Bar) sum() (n float64) {
	for _, p := range b.Parts {
		n += max(0, p)
	}
	return n
}

// towerBand is bars that stand side by side over their names, all to one scale.
// A name's second line stands below the first.
func towerBand(r Row) []Band {
	const high = 23 * unit.Millimetre
	most, group := longest(r.Bars), max(r.Group, 1)
	chart := Band{H: high + 15*unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		foot := y + 5*unit.Millimetre + high
		step := min(30*unit.Millimetre, (c.W-2*Margin)*unit.Length(group)/unit.Length(max(len(r.Bars), 1)))
		wide := step * 7 / 10 / unit.Length(group)
		for i, b := range r.Bars {
			k := i / group
			left := Margin + step*unit.Length(k) + (step-wide*unit.Length(group))/2
			x := left + wide*unit.Length(i%group)
			c.tower(b, page.Rect{X: x, Y: foot, W: wide * 92 / 100, H: high}, most)
			first, second, _ := strings.Cut(b.Name, "\n")
			c.centred(PlainFace, Pt(9.5), left+wide*unit.Length(group)/2, foot+4200*unit.Micrometre, Ink, c.Short(PlainFace, Pt(9.5), step, first))
			c.centred(PlainFace, Pt(8.5), left+wide*unit.Length(group)/2, foot+8*unit.Millimetre, Soft, c.Short(PlainFace, Pt(8.5), step, second))
		}
		c.Stroke(Margin, Margin+step*unit.Length((len(r.Bars)+group-1)/group), foot, Soft, unit.Points(0.6))
	}}
	return []Band{legendBand(r.Legend), chart}
}

// tower is one bar on its foot, room.Y, and its note above.
func (c *Layout) tower(b Bar, room page.Rect, most float64) {
	top := room.Y
	for k, p := range b.Parts {
		if h := unit.Length(float64(room.H) * p / most); h > 0 {
			top -= h
			c.patch(page.Rect{X: room.X, Y: top, W: room.W, H: h}, k)
		}
	}
	c.centred(BoldFace, Pt(9), room.X+room.W/2, top-1200*unit.Micrometre, Ink, b.Note)
}

func (c *Layout) centred(f page.Face, size, x, y unit.Length, col page.Colour, s string) {
	c.Text(f, size, x-c.Width(f, size, s)/2, y, col, s)
}
