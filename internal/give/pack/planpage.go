package pack

import (
	"strconv"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

const tickSide = 5 * unit.Millimetre

// Doc lays the plan out as a list to carry, on "a4" or "letter" paper (empty:
// the maker's). It gives nil, with the reason, only when it cannot be laid out.
func (p *Plan) Doc(fs *face.Set, paper string) (*page.Doc, diag.List) {
	if paper == "" {
		paper = Paper(p.Units)
	}
	c, found := newLayout(fs, paper, p.title())
	if c == nil {
		return nil, found
	}
	title := p.in.say("Packing list")
	if p.Filter != "" {
		title = p.Filter
	}
	sub := p.summary()
	if p.Maker != "" {
		sub = p.Maker + " · " + sub
	}
	for _, b := range c.titleBands(title, sub) {
		c.put(b)
	}
	for _, s := range p.Stops {
		c.group(p.stopGroup(c, s))
	}
	p.restGroups(c)
	c.group(group{head: gap(3 * unit.Millimetre), rows: linesBand(p.in.say("Notes"), 4)})
	return c.finish(p.title(), p.Maker)
}

func (p *Plan) stopGroup(c *layout, s Stop) group {
	g := group{head: headBand(s.Title(), s.Sum(p.Units)), cont: headBand(s.Title()+", "+p.in.say("continued"), "")}
	for _, l := range s.Lines {
		g.rows = append(g.rows, lineBand(l, s.Kind == Market))
	}
	if n := s.Short(); n > 0 {
		g.rows = append(g.rows, c.paragraph(boldFace, pt(11), margin, accent, p.in.say("%s short: %d promised", p.in.jars(n), s.Wanted))...)
	}
	for _, w := range s.Wishes {
		g.rows = append(g.rows, c.paragraph(italicFace, pt(11), margin+tickSide+4*unit.Millimetre, soft, w.String())...)
	}
	if s.Kind == Market || len(s.Boxes) > 1 {
		for i, x := range s.Boxes {
			g.rows = append(g.rows, boxBand(i+1, x, p.Units, s))
		}
	}
	g.rows = append(g.rows, gap(3*unit.Millimetre))
	return g
}

// lineBand is one kind of jar to pack: box to tick, count, size, product;
// under it lot and date. At a market there is room to write what came home.
func lineBand(l Line, market bool) band {
	return band{h: 14 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
		base := y + 6500*unit.Micrometre
		c.tick(margin, y+5500*unit.Micrometre, tickSide)
		x := margin + tickSide + 4*unit.Millimetre
		n := strconv.Itoa(l.Count)
		c.right(boldFace, pt(15), x+9*unit.Millimetre, base, ink, n)
		x += 11 * unit.Millimetre
		c.text(plainFace, pt(11.5), x, base, ink, c.short(plainFace, pt(11.5), 25*unit.Millimetre, l.JarText))
		x += 27 * unit.Millimetre
		end := c.w - margin
		if market {
			end = homeField(c, base, l.in.say("came home"))
		}
		c.text(boldFace, pt(12), x, base, ink, c.short(boldFace, pt(12), end-x-3*unit.Millimetre, l.Name))
		note := l.Lot + " · " + dateWords(l)
		if l.Price.Minor > 0 && market {
			note += " · " + l.in.money([]unit.Money{l.Price})
		}
		if l.Cold {
			note += " · " + l.in.say("keep cold on the way")
		}
		c.text(plainFace, pt(10), x, base+4800*unit.Micrometre, soft, c.short(plainFace, pt(10), end-x-3*unit.Millimetre, note))
		c.rule(margin, c.w-margin, y+13400*unit.Micrometre)
	}}
}

// homeField is a place to write how many came home; it gives its left end.
func homeField(c *layout, base unit.Length, label string) unit.Length {
	right := c.w - margin
	c.stroke(right-15*unit.Millimetre, right, base+unit.Millimetre, soft, unit.Points(0.8))
	return c.right(plainFace, pt(9), right-17*unit.Millimetre, base, soft, label)
}

func boxBand(n int, x Box, units string, s Stop) band {
	return band{h: 7 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
		base := y + 5*unit.Millimetre
		side := 3500 * unit.Micrometre
		c.tick(margin+(tickSide-side)/2, base-1300*unit.Micrometre, side)
		at := margin + tickSide + 4*unit.Millimetre
		at = c.text(boldFace, pt(10.5), at, base, ink, s.in.say("Box %d", n)+"  ")
		end := c.right(plainFace, pt(10.5), c.w-margin, base, soft, s.in.weight(x.Gross, s.GrossHow, units))
		c.text(plainFace, pt(10.5), at, base, ink, c.short(plainFace, pt(10.5), end-at-3*unit.Millimetre, x.String()))
	}}
}

// restGroups is what stays, is sold, must be eaten, and is needed.
func (p *Plan) restGroups(c *layout) {
	if p.Filter == "" {
		p.stayGroups(c)
	}
	if len(p.Fridge) > 0 {
		g := group{head: p.headed("Refrigerator", p.in.say("not to give, sell or shelve")), cont: p.again("Refrigerator")}
		for _, f := range p.Fridge {
			g.rows = append(g.rows, plainBand(f.amount(p.Units), f.Name, f.Lot, true))
			g.rows = append(g.rows, c.paragraph(italicFace, pt(10.5), margin+tickSide+4*unit.Millimetre, soft, f.Guidance())...)
		}
		c.group(g)
	}
	if len(p.Supplies) > 0 {
		g := group{head: p.headed("From the cupboard", ""), cont: p.again("From the cupboard")}
		for _, s := range p.Supplies {
			g.rows = append(g.rows, plainBand(s.amount(p.Units), s.in.say(s.What), s.note(p.Units), true))
		}
		c.group(g)
	}
}

func (p *Plan) stayGroups(c *layout) {
	g := group{cont: p.again("Stays at home")}
	left := 0
	for _, s := range p.Stock {
		if s.Left > 0 {
			left += s.Left
			g.rows = append(g.rows, plainBand(s.stays(), s.Name, s.Lot, false))
		}
	}
	sum := p.in.jars(left)
	if len(p.Value) > 0 {
		sum += ", " + p.in.say("worth %s", p.in.money(p.Value))
	}
	g.head = p.headed("Stays at home", sum)
	if left > 0 {
		c.group(g)
	}
	if len(p.Done) == 0 {
		return
	}
	g = group{head: p.headed("Sold", ""), cont: p.again("Sold")}
	for _, s := range p.Done {
		g.rows = append(g.rows, plainBand(p.in.jars(s.sold()), s.Title(), s.tally(), false))
	}
	c.group(g)
}

// plainBand is a row of amount, words and a note at the right.
func plainBand(amount, what, note string, tick bool) band {
	return band{h: 8500 * unit.Micrometre, draw: func(c *layout, y unit.Length) {
		base := y + 6*unit.Millimetre
		if tick {
			c.tick(margin, base-1700*unit.Micrometre, 4500*unit.Micrometre)
		}
		x := margin + tickSide + 4*unit.Millimetre
		c.text(boldFace, pt(11.5), x, base, ink, c.short(boldFace, pt(11.5), 40*unit.Millimetre, amount))
		x += 42 * unit.Millimetre
		end := c.right(plainFace, pt(10.5), c.w-margin, base, soft, note)
		c.text(plainFace, pt(11.5), x, base, ink, c.short(plainFace, pt(11.5), end-x-3*unit.Millimetre, what))
		c.rule(margin, c.w-margin, y+8300*unit.Micrometre)
	}}
}

// headed is a heading in the language of the plan, again the same on the page
// after.
func (p *Plan) headed(title, right string) band { return headBand(p.in.say(title), right) }

func (p *Plan) again(title string) band {
	return headBand(p.in.say(title)+", "+p.in.say("continued"), "")
}
