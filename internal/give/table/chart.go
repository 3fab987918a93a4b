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
// right edge of its column.
func columnBand(name string, figures []string, how look) Band {
	h := 6500 * unit.Micrometre
	return Band{H: h, Draw: func(c *Layout, y unit.Length) {
		base := y + 4700*unit.Micrometre
		f, size, col := PlainFace, Pt(10.5), Ink
		switch how {
		case SumOfFigures:
			f = BoldFace
		case SmallHeading:
			size, col = Pt(9), Soft
		}
		wide := c.figureWidth(len(figures))
		at := c.W - Margin - wide*unit.Length(len(figures))
		c.Text(f, size, Margin, base, col, c.Short(f, size, at-Margin-2*unit.Millimetre, name))
		for i, s := range figures {
			end := at + wide*unit.Length(i+1)
			c.Right(f, size, end, base, col, c.Short(f, size, wide-unit.Millimetre, s))
		}
		c.Rule(Margin, c.W-Margin, y+h-200*unit.Micrometre)
	}}
}

// figureWidth leaves a third of the line for the names.
func (c *Layout) figureWidth(n int) unit.Length {
	return min(26*unit.Millimetre, (c.W-2*Margin)*65/100/unit.Length(max(n, 1)))
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

// barBands are bars lying one under another, all to one scale.
func barBands(r Row) []Band {
	out := []Band{legendBand(r.Legend)}
	most := longest(r.Bars)
	for _, b := range r.Bars {
		out = append(out, Band{H: 6 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
			base, x := y+4200*unit.Micrometre, Margin+52*unit.Millimetre
			room := c.W - Margin - 16*unit.Millimetre - x
			c.Text(PlainFace, Pt(10), Margin, base, Ink, c.Short(PlainFace, Pt(10), 50*unit.Millimetre, b.Name))
			for i, p := range b.Parts {
				if w := unit.Length(float64(room) * p / most); p > 0 && w > 0 {
					c.patch(page.Rect{X: x, Y: y + unit.Millimetre, W: w, H: 4 * unit.Millimetre}, i)
					x += w
				}
			}
			c.Text(BoldFace, Pt(9.5), x+2*unit.Millimetre, base, Ink, b.Note)
		}})
	}
	return out
}

// towerBand is bars that stand side by side over their names, all to one scale.
// A name's second line, after a blank, stands below the first.
func towerBand(r Row) []Band {
	const high = 30 * unit.Millimetre
	most := longest(r.Bars)
	chart := Band{H: high + 16*unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		foot := y + 5*unit.Millimetre + high
		step := min(24*unit.Millimetre, (c.W-2*Margin)/unit.Length(max(len(r.Bars), 1)))
		wide := step * 6 / 10
		for i, b := range r.Bars {
			x, top := Margin+step*unit.Length(i)+(step-wide)/2, foot
			for k, p := range b.Parts {
				if h := unit.Length(float64(high) * p / most); p > 0 && h > 0 {
					top -= h
					c.patch(page.Rect{X: x, Y: top, W: wide, H: h}, k)
				}
			}
			c.centred(BoldFace, Pt(9), x+wide/2, top-1200*unit.Micrometre, Ink, b.Note)
			first, second, _ := strings.Cut(b.Name, "\n")
			c.centred(PlainFace, Pt(9), x+wide/2, foot+4200*unit.Micrometre, Ink, c.Short(PlainFace, Pt(9), step, first))
			c.centred(PlainFace, Pt(8.5), x+wide/2, foot+8*unit.Millimetre, Soft, c.Short(PlainFace, Pt(8.5), step, second))
		}
		c.Stroke(Margin, Margin+step*unit.Length(len(r.Bars)), foot, Line, unit.Points(0.8))
	}}
	return []Band{legendBand(r.Legend), chart}
}

func (c *Layout) centred(f page.Face, size, x, y unit.Length, col page.Colour, s string) {
	c.Text(f, size, x-c.Width(f, size, s)/2, y, col, s)
}
