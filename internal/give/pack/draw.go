package pack

import (
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// add puts an item on the last page.
func (c *carried) add(i page.Item) {
	p := &c.pages[len(c.pages)-1]
	p.Marks = append(p.Marks, i)
}

// printable replaces letters the face lacks and remembers them.
func (c *carried) printable(f page.Face, s string) string {
	return strings.Map(func(r rune) rune {
		if c.faces[f].Has(r) {
			return r
		}
		if !c.missing[r] {
			c.missing[r] = true
			c.lost = append(c.lost, r)
		}
		return '?'
	}, clean(s))
}

// segs breaks a line at kerns and gives its width.
func (c *carried) segs(f page.Face, size unit.Length, s string) ([]page.Seg, unit.Length) {
	ff := c.faces[f]
	var out []page.Seg
	var x, from unit.Length
	start := 0
	var prev rune
	for i, r := range s {
		if i > 0 {
			if k := ff.Kern(prev, r); k != 0 {
				out = append(out, page.Seg{X: from, S: s[start:i]})
				x += unit.Length(int64(k) * int64(size) / 1000)
				start, from = i, x
			}
		}
		x += unit.Length(int64(ff.Advance(r)) * int64(size) / 1000)
		prev = r
	}
	return append(out, page.Seg{X: from, S: s[start:]}), x
}

func (c *carried) width(f page.Face, size unit.Length, s string) unit.Length {
	_, w := c.segs(f, size, c.printable(f, s))
	return w
}

// text sets a line on the last page and gives where it ends.
func (c *carried) text(f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	return c.textOn(len(c.pages)-1, f, size, x, y, col, s)
}

func (c *carried) textOn(i int, f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	s = c.printable(f, s)
	if strings.TrimSpace(s) == "" {
		return x
	}
	segs, w := c.segs(f, size, s)
	ff := c.faces[f]
	c.pages[i].Marks = append(c.pages[i].Marks, &page.Text{Face: f, Size: size, At: page.Point{X: x, Y: y}, Segs: segs, Colour: col,
		Box: page.Rect{X: x, Y: y - ff.Ascent(size), W: w, H: ff.Ascent(size) + ff.Descent(size)}})
	return x + w
}

// right sets a line that ends at x and gives where it begins.
func (c *carried) right(f page.Face, size, x, y unit.Length, col page.Colour, s string) unit.Length {
	w := c.width(f, size, s)
	c.text(f, size, x-w, y, col, s)
	return x - w
}

// short cuts a line to a width.
func (c *carried) short(f page.Face, size, room unit.Length, s string) string {
	if c.width(f, size, s) <= room {
		return s
	}
	r := []rune(s)
	for len(r) > 1 && c.width(f, size, string(r)+"…") > room {
		r = r[:len(r)-1]
	}
	return strings.TrimRight(string(r), " ") + "…"
}

// wrap breaks a text at blanks; a word too long for the line is cut in two.
func (c *carried) wrap(f page.Face, size, room unit.Length, s string) []string {
	var out []string
	cur := ""
	for _, w := range strings.Fields(clean(s)) {
		next := strings.TrimSpace(cur + " " + w)
		if c.width(f, size, next) <= room {
			cur = next
			continue
		}
		if cur != "" {
			out = append(out, cur)
		}
		for c.width(f, size, w) > room {
			r := []rune(w)
			n := len(r) - 1
			for n > 1 && c.width(f, size, string(r[:n])) > room {
				n--
			}
			if n < 1 {
				break
			}
			out, w = append(out, string(r[:n])), string(r[n:])
		}
		cur = w
	}
	if cur != "" {
		out = append(out, cur)
	}
	return out
}

func (c *carried) rule(x0, x1, y unit.Length) { c.stroke(x0, x1, y, line, unit.Points(0.6)) }

func (c *carried) stroke(x0, x1, y unit.Length, col page.Colour, w unit.Length) {
	c.add(&page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{{X: x0, Y: y}, {X: x1, Y: y}}, Stroke: &col, Width: w})
}

// tick draws an empty box to tick with its middle at y.
func (c *carried) tick(x, y, side unit.Length) {
	col := ink
	c.add(box(page.Rect{X: x, Y: y - side/2, W: side, H: side}, nil, &col))
}

func box(r page.Rect, fill, stroke *page.Colour) *page.Path {
	return &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts:  []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}},
		Fill: fill, Stroke: stroke, Width: unit.Points(1)}
}

// gap is empty space.
func gap(h unit.Length) band { return band{h: h, draw: func(*carried, unit.Length) {}} }

// paragraph is text over the width of the page, one band a line.
func (c *carried) paragraph(f page.Face, size, x unit.Length, col page.Colour, s string) []band {
	var out []band
	for _, l := range c.wrap(f, size, c.w-margin-x, s) {
		out = append(out, band{h: size * 14 / 10, draw: func(c *carried, y unit.Length) { c.text(f, size, x, y+size, col, l) }})
	}
	return out
}

// titleBands heads the first page: a title, a line under it, a rule.
func (c *carried) titleBands(title, sub string) []band {
	size := pt(26)
	for size > pt(15) && c.width(titleFace, size, title) > c.w-2*margin {
		size -= pt(1)
	}
	out := []band{{h: size * 13 / 10, draw: func(c *carried, y unit.Length) {
		c.text(titleFace, size, margin, y+size, accent, c.short(titleFace, size, c.w-2*margin, title))
	}}}
	out = append(out, c.paragraph(plainFace, pt(11.5), margin, soft, sub)...)
	return append(out, band{h: 6 * unit.Millimetre, draw: func(c *carried, y unit.Length) {
		c.stroke(margin, c.w-margin, y+3*unit.Millimetre, accent, unit.Points(1.2))
	}})
}

// headBand is a group's heading: title left, totals right, on a tint.
func headBand(title, sum string) band {
	return band{h: 15 * unit.Millimetre, draw: func(c *carried, y unit.Length) {
		fill := tint
		c.add(box(page.Rect{X: margin - 3*unit.Millimetre, Y: y + 4*unit.Millimetre, W: c.w - 2*margin + 6*unit.Millimetre, H: 9500 * unit.Micrometre}, &fill, nil))
		base := y + 10700*unit.Micrometre
		end := c.right(plainFace, pt(11), c.w-margin, base, soft, sum)
		c.text(titleFace, pt(15), margin, base, ink, c.short(titleFace, pt(15), end-margin-4*unit.Millimetre, title))
	}}
}

// linesBand is ruled space for handwriting.
func linesBand(title string, n int) []band {
	out := []band{{h: 8 * unit.Millimetre, draw: func(c *carried, y unit.Length) {
		c.text(boldFace, pt(11), margin, y+6*unit.Millimetre, soft, title)
	}}}
	for range n {
		out = append(out, band{h: 9 * unit.Millimetre, draw: func(c *carried, y unit.Length) {
			c.rule(margin, c.w-margin, y+8*unit.Millimetre)
		}})
	}
	return out
}
