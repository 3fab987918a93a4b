package pdf

import (
	"math"
	"unicode/utf8"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

func (c *content) items(s space, list []page.Item) {
	for _, it := range list {
		switch it := it.(type) {
		case *page.Text:
			c.text(s, it)
		case *page.Path:
			c.path(s, it)
		case *page.Code:
			c.code(s, it)
		case *page.Picture:
			c.picture(s, it)
		}
	}
}

// text draws every stretch of a line from its own x; inside a stretch the
// letters advance plainly, as page.Seg promises (ISO 32000-1, 9.4).
func (c *content) text(s space, t *page.Text) {
	c.fillColour(t.Colour)
	spaced := letterSpaced(t)
	if spaced {
		c.b = append(c.b, "/Span <</ActualText <FEFF"...)
		c.hex(t.Drawn()) // as seen: readers turn Hebrew round themselves
		c.b = append(c.b, ">>> BDC "...)
	}
	c.b = append(c.b, "BT "...)
	font := c.fonts[t.Face]
	c.typeface(font, t.Size)
	turned := math.Mod(t.Turn, 360) != 0
	if turned {
		sin, cos := page.SinCos(t.Turn)
		c.number(cos)
		c.number(-sin)
		c.number(sin)
		c.number(cos)
		c.point(s, t.At)
		c.b = append(c.b, "Tm "...)
	}
	var from unit.Length
	for i, g := range t.Segs {
		switch {
		case i == 0 && !turned:
			c.point(s, page.Point{X: t.At.X + g.X, Y: t.At.Y})
			c.b = append(c.b, "Td "...)
		case i > 0 || g.X != 0:
			c.length(g.X - from)
			c.b = append(c.b, "0 Td "...)
		}
		from = g.X
		c.show(font, g.S, t.Size)
	}
	c.b = append(c.b, "ET"...)
	if spaced {
		c.b = append(c.b, " EMC"...)
	}
	c.op("")
}

// letterSpaced tells a line set letter by letter. Readers take its gaps for
// blanks, so the words are written beside it (ISO 32000-1, 14.9.4).
func letterSpaced(t *page.Text) bool {
	single := 0
	for _, g := range t.Segs {
		if utf8.RuneCountInString(g.S) == 1 {
			single++
		}
	}
	return single >= 3 && 2*single > len(t.Segs)
}

// typeface chooses a font, if another holds.
func (c *content) typeface(font *typeface, size unit.Length) {
	if c.now.font != font.id || c.now.size != size {
		c.now.font, c.now.size = font.id, size
		c.b = append(append(append(c.b, '/'), font.id...), ' ')
		c.length(size)
		c.b = append(c.b, "Tf "...)
	}
}

// show writes text by the glyphs of its font, and of those that stand in for
// letters it lacks.
func (c *content) show(font *typeface, s string, size unit.Length) {
	for s != "" {
		owner, n := font.stretch(s)
		draws := font
		if owner != font.Name {
			draws = c.fonts[owner]
		}
		c.typeface(draws, size)
		c.b = append(c.b, '<')
		for _, r := range s[:n] {
			c.code16(rune(draws.Glyph(r)))
		}
		c.b = append(c.b, "> Tj "...)
		s = s[n:]
	}
}

// stretch is how many bytes at the start of a text one face draws, and which.
func (t *typeface) stretch(s string) (owner page.Face, n int) {
	for i, r := range s {
		switch o := t.Owner(r); {
		case i == 0:
			owner = o
		case o != owner:
			return owner, i
		}
	}
	return owner, len(s)
}

// hex writes text as UTF-16 codes.
func (c *content) hex(s string) {
	for _, r := range s {
		c.code16(r)
	}
}

func (c *content) code16(r rune) {
	const digits = "0123456789ABCDEF"
	c.b = append(c.b, digits[r>>12&15], digits[r>>8&15], digits[r>>4&15], digits[r&15])
}

// path draws a shape (ISO 32000-1, 8.5).
func (c *content) path(s space, p *page.Path) {
	stroked := p.Stroke != nil && p.Width > 0
	if len(p.Ops) == 0 || p.Fill == nil && !stroked {
		return
	}
	if p.Fill != nil {
		c.fillColour(*p.Fill)
	}
	if stroked {
		c.pen(p)
	}
	c.outline(s, p)
	op := [...]string{"f", "S", "B"}[paint(p.Fill != nil, stroked)]
	if p.Fill != nil && p.EvenOdd {
		op += "*"
	}
	c.op(op)
	if stroked && c.now.lines == 2 {
		c.now.lines = 0 // another dashed path has dashes of its own
	}
	if stroked && p.Nib != nil {
		c.b = append(c.b, "10 M "...) // what all others count on
		c.now.round = 0
	}
}

func paint(fill, stroke bool) int {
	switch {
	case fill && stroke:
		return 2
	case stroke:
		return 1
	}
	return 0
}

func (c *content) outline(s space, p *page.Path) {
	pts := p.Pts
	for _, op := range p.Ops {
		n := points[op]
		for _, q := range pts[:n] {
			c.point(s, q)
		}
		pts = pts[n:]
		c.b = append(c.b, "mlch"[op], ' ')
	}
}

// pen sets up the stroke of a path.
func (c *content) pen(p *page.Path) {
	c.strokeColour(*p.Stroke)
	if c.now.width != p.Width {
		c.now.width = p.Width
		c.length(p.Width)
		c.op("w")
	}
	if n := p.Nib; n != nil {
		c.integer(int(n.Cap))
		c.b = append(c.b, "J "...)
		c.integer(int(n.Join))
		c.b = append(c.b, "j "...)
		c.number(n.Mitre)
		c.op("M")
		c.dash(p.Dash)
		return
	}
	round := int8(1)
	if p.Round {
		round = 2
	}
	if c.now.round != round {
		c.now.round = round
		c.op([...]string{1: "0 J 0 j", 2: "1 J 1 j"}[round])
	}
	c.dash(p.Dash)
}

func (c *content) dash(d []unit.Length) {
	var sum unit.Length
	for _, l := range d {
		sum += l
	}
	switch {
	case sum > 0:
		c.now.lines = 2
		c.b = append(c.b, '[')
		for _, l := range d {
			c.length(l)
		}
		c.op("] 0 d")
	case c.now.lines != 1:
		c.now.lines = 1
		c.op("[] 0 d")
	}
}

// turn turns all that follows about the middle of a box, degrees clockwise.
func (c *content) turn(s space, r page.Rect, degrees float64) {
	if degrees == 0 {
		return
	}
	sin, cos := page.SinCos(degrees)
	x, y := (s.left + r.X + r.W/2).Points(), (s.top - r.Y - r.H/2).Points()
	for _, v := range [...]float64{cos, -sin, sin, cos, x - x*cos - y*sin, y + x*sin - y*cos} {
		c.number(v)
	}
	c.op("cm")
}

// code draws a QR code in units of one module: each row's dark runs as
// rectangles, all in one path, so that no hairlines show between them.
func (c *content) code(s space, k *page.Code) {
	n := len(k.Modules)
	c.fillColour(k.Dark)
	c.save()
	c.turn(s, k.At, k.Turn)
	c.number(k.At.W.Points() / float64(n))
	c.b = append(c.b, "0 0 "...)
	c.number(k.At.H.Points() / float64(n))
	c.point(s, page.Point{X: k.At.X, Y: k.At.Y + k.At.H})
	c.op("cm")
	for y, row := range k.Modules {
		for x := 0; x < n; x++ {
			if !row[x] {
				continue
			}
			start := x
			for x < n && row[x] {
				x++
			}
			c.integer(start)
			c.integer(n - 1 - y)
			c.integer(x - start)
			c.b = append(c.b, "1 re\n"...)
		}
	}
	c.op("f")
	c.restore()
}
