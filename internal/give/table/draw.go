package table

import (
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
)

// add puts an item on the last page.
func (c *Layout) Add(i page.Item) {
	p := c.last()
	p.Marks = append(p.Marks, i)
}

func (c *Layout) last() *page.Page { return &c.Pages[len(c.Pages)-1] }

// spoken gives a text as it is printed, and the voice for it: that of a face, or
// of its stand-in for letters the face lacks. Letters that both lack become
// question marks, and are remembered.
func (c *Layout) spoken(f page.Face, s string) (typeset.Voice, string) {
	s = c.replaced(f, clean(norm.NFC.String(s)))
	v := c.Voices[f]
	if name := c.faces.Drawing(f, s); name != f {
		v.Regular = c.faces.Face(name)
	}
	return v, strings.Map(func(r rune) rune {
		if v.Regular.Has(r) {
			return r
		}
		if !c.missing[r] {
			c.missing[r] = true
			c.lost = append(c.lost, r)
		}
		return '?'
	}, s)
}

func (c *Layout) Width(f page.Face, size unit.Length, s string) unit.Length {
	v, s := c.spoken(f, s)
	return v.Measure(s, size)
}

// text sets a line on the last page and gives where it ends.
func (c *Layout) Text(f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	return c.textOn(len(c.Pages)-1, f, size, x, y, col, s)
}

func (c *Layout) textOn(i int, f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	v, s := c.spoken(f, s)
	if strings.TrimSpace(s) == "" {
		return x
	}
	v.Colour = col
	t, w := v.Line("", false, s, size, page.Point{X: x, Y: y})
	t.Tag = c.now.words(c)
	c.Pages[i].Marks = append(c.Pages[i].Marks, t)
	return x + w
}

// right sets a line that ends at x and gives where it begins.
func (c *Layout) Right(f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	w := c.Width(f, size, s)
	c.Text(f, size, x-w, y, col, s)
	return x - w
}

// short cuts a line to a width.
func (c *Layout) Short(f page.Face, size, room unit.Length, s string) string {
	v, s := c.spoken(f, s)
	cut := v.Short(s, size, room)
	if c.Width(f, size, cut) > room { // the letters for which another face spoke are gone
		cut = c.Voices[f].Short(cut, size, room)
	}
	return cut
}

// wrap breaks a text into lines.
func (c *Layout) Wrap(f page.Face, size, room unit.Length, s string) []string {
	v, s := c.spoken(f, s)
	for within := room; ; within = within * 95 / 100 {
		lines := v.Lines(s, size, within)
		wide := slices.ContainsFunc(lines, func(l string) bool { return c.Width(f, size, l) > room })
		if !wide || within < room/2 { // a line may be spoken by a wider face than the whole
			return lines
		}
	}
}

func (c *Layout) Rule(x0, x1, y unit.Length) { c.Stroke(x0, x1, y, Line, unit.Points(0.6)) }

func (c *Layout) Stroke(x0, x1, y unit.Length, col page.Colour, w unit.Length) {
	c.Add(&page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{{X: x0, Y: y}, {X: x1, Y: y}}, Stroke: &col, Width: w})
}

// tick draws an empty box to tick with its middle at y.
func (c *Layout) Tick(x, y, side unit.Length) {
	col := Ink
	c.Add(Box(page.Rect{X: x, Y: y - side/2, W: side, H: side}, nil, &col))
}

func Box(r page.Rect, fill, stroke *page.Colour) *page.Path {
	return &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts:  []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}},
		Fill: fill, Stroke: stroke, Width: unit.Points(1)}
}

// gap is empty space.
func Gap(h unit.Length) Band { return Band{H: h, Draw: func(*Layout, unit.Length) {}} }

// paragraph is text over the width of the page, one Band a line.
func (c *Layout) Paragraph(f page.Face, size, x unit.Length, col page.Colour, s string) []Band {
	var out []Band
	for _, l := range c.Wrap(f, size, c.W-Margin-x, s) {
		out = append(out, Band{H: size * 14 / 10, Draw: func(c *Layout, y unit.Length) { c.Text(f, size, x, y+size, col, l) }})
	}
	return as(&part{role: "P"}, out...)
}

// titleBands heads the first page: a title, a line under it, a rule.
func (c *Layout) TitleBands(title, sub string) []Band {
	size := Pt(26)
	for size > Pt(15) && c.Width(TitleFace, size, title) > c.W-2*Margin {
		size -= Pt(1)
	}
	out := []Band{{part: &part{role: "H1"}, H: size * 13 / 10, Draw: func(c *Layout, y unit.Length) {
		c.Text(TitleFace, size, Margin, y+size, Accent, c.Short(TitleFace, size, c.W-2*Margin, title))
	}}}
	out = append(out, c.Paragraph(PlainFace, Pt(11.5), Margin, Soft, sub)...)
	return append(out, Band{H: 6 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		c.Stroke(Margin, c.W-Margin, y+3*unit.Millimetre, Accent, unit.Points(1.2))
	}})
}

// headBand is a Group's heading: title left, totals right, on a Tint.
func HeadBand(title, sum string) Band {
	return Band{H: 15 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		fill := Tint
		c.Add(Box(page.Rect{X: Margin - 3*unit.Millimetre, Y: y + 4*unit.Millimetre, W: c.W - 2*Margin + 6*unit.Millimetre, H: 9500 * unit.Micrometre}, &fill, nil))
		base := y + 10700*unit.Micrometre
		end := c.Right(PlainFace, Pt(11), c.W-Margin, base, Soft, sum)
		c.Text(TitleFace, Pt(15), Margin, base, Ink, c.Short(TitleFace, Pt(15), end-Margin-4*unit.Millimetre, title))
	}}
}

// linesBand is ruled space for handwriting.
func LinesBand(title string, n int) []Band {
	out := []Band{{H: 8 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		c.Text(BoldFace, Pt(11), Margin, y+6*unit.Millimetre, Soft, title)
	}}}
	for range n {
		out = append(out, Band{H: 9 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
			c.Rule(Margin, c.W-Margin, y+8*unit.Millimetre)
		}})
	}
	return out
}

// fillBand is words with a line behind them to write on.
func fillBand(title string) Band {
	return Band{H: 11 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		c.Text(BoldFace, Pt(9.5), Margin, y+9*unit.Millimetre, Soft, title)
		c.Rule(Margin+c.Width(BoldFace, Pt(9.5), title)+2*unit.Millimetre, c.W-Margin, y+9500*unit.Micrometre)
	}}
}

// smallHead is a heading over small rows: words and a line.
func smallHead(title, sum string) Band {
	return Band{H: 9500 * unit.Micrometre, Draw: func(c *Layout, y unit.Length) {
		base := y + 7200*unit.Micrometre
		end := c.Right(PlainFace, Pt(9.5), c.W-Margin, base, Soft, sum)
		c.Text(TitleFace, Pt(13), Margin, base, Accent, c.Short(TitleFace, Pt(13), end-Margin-4*unit.Millimetre, title))
	}}
}
