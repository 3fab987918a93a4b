package pack

import (
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// add puts an item on the last page.
func (c *layout) add(i page.Item) {
	p := &c.pages[len(c.pages)-1]
	p.Marks = append(p.Marks, i)
}

// printable replaces letters the face lacks and remembers them.
func (c *layout) printable(f page.Face, s string) string {
	return strings.Map(func(r rune) rune {
		if c.voices[f].Regular.Has(r) {
			return r
		}
		if !c.missing[r] {
			c.missing[r] = true
			c.lost = append(c.lost, r)
		}
		return '?'
	}, clean(s))
}

func (c *layout) width(f page.Face, size unit.Length, s string) unit.Length {
	return c.voices[f].Measure(c.printable(f, s), size)
}

// text sets a line on the last page and gives where it ends.
func (c *layout) text(f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	return c.textOn(len(c.pages)-1, f, size, x, y, col, s)
}

func (c *layout) textOn(i int, f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	s = c.printable(f, s)
	if strings.TrimSpace(s) == "" {
		return x
	}
	v := c.voices[f]
	v.Colour = col
	t, w := v.Line("", false, s, size, page.Point{X: x, Y: y})
	c.pages[i].Marks = append(c.pages[i].Marks, t)
	return x + w
}

// right sets a line that ends at x and gives where it begins.
func (c *layout) right(f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	w := c.width(f, size, s)
	c.text(f, size, x-w, y, col, s)
	return x - w
}

// short cuts a line to a width.
func (c *layout) short(f page.Face, size, room unit.Length, s string) string {
	return c.voices[f].Short(c.printable(f, s), size, room)
}

// wrap breaks a text into lines.
func (c *layout) wrap(f page.Face, size, room unit.Length, s string) []string {
	return c.voices[f].Lines(c.printable(f, s), size, room)
}

func (c *layout) rule(x0, x1, y unit.Length) { c.stroke(x0, x1, y, line, unit.Points(0.6)) }

func (c *layout) stroke(x0, x1, y unit.Length, col page.Colour, w unit.Length) {
	c.add(&page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{{X: x0, Y: y}, {X: x1, Y: y}}, Stroke: &col, Width: w})
}

// tick draws an empty box to tick with its middle at y.
func (c *layout) tick(x, y, side unit.Length) {
	col := ink
	c.add(box(page.Rect{X: x, Y: y - side/2, W: side, H: side}, nil, &col))
}

func box(r page.Rect, fill, stroke *page.Colour) *page.Path {
	return &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts:  []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}},
		Fill: fill, Stroke: stroke, Width: unit.Points(1)}
}

// gap is empty space.
func gap(h unit.Length) band { return band{h: h, draw: func(*layout, unit.Length) {}} }

// paragraph is text over the width of the page, one band a line.
func (c *layout) paragraph(f page.Face, size, x unit.Length, col page.Colour, s string) []band {
	var out []band
	for _, l := range c.wrap(f, size, c.w-margin-x, s) {
		out = append(out, band{h: size * 14 / 10, draw: func(c *layout, y unit.Length) { c.text(f, size, x, y+size, col, l) }})
	}
	return out
}

// titleBands heads the first page: a title, a line under it, a rule.
func (c *layout) titleBands(title, sub string) []band {
	size := pt(26)
	for size > pt(15) && c.width(titleFace, size, title) > c.w-2*margin {
		size -= pt(1)
	}
	out := []band{{h: size * 13 / 10, draw: func(c *layout, y unit.Length) {
		c.text(titleFace, size, margin, y+size, accent, c.short(titleFace, size, c.w-2*margin, title))
	}}}
	out = append(out, c.paragraph(plainFace, pt(11.5), margin, soft, sub)...)
	return append(out, band{h: 6 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
		c.stroke(margin, c.w-margin, y+3*unit.Millimetre, accent, unit.Points(1.2))
	}})
}

// headBand is a group's heading: title left, totals right, on a tint.
func headBand(title, sum string) band {
	return band{h: 15 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
		fill := tint
		c.add(box(page.Rect{X: margin - 3*unit.Millimetre, Y: y + 4*unit.Millimetre, W: c.w - 2*margin + 6*unit.Millimetre, H: 9500 * unit.Micrometre}, &fill, nil))
		base := y + 10700*unit.Micrometre
		end := c.right(plainFace, pt(11), c.w-margin, base, soft, sum)
		c.text(titleFace, pt(15), margin, base, ink, c.short(titleFace, pt(15), end-margin-4*unit.Millimetre, title))
	}}
}

// linesBand is ruled space for handwriting.
func linesBand(title string, n int) []band {
	out := []band{{h: 8 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
		c.text(boldFace, pt(11), margin, y+6*unit.Millimetre, soft, title)
	}}}
	for range n {
		out = append(out, band{h: 9 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
			c.rule(margin, c.w-margin, y+8*unit.Millimetre)
		}})
	}
	return out
}
