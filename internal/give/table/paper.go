package table

import (
	"slices"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

const (
	tickSide = 5 * unit.Millimetre
	inset    = Margin + tickSide + 4*unit.Millimetre // where words begin beside a box to tick
)

// Doc lays the list out to carry, on "a4" or "letter" paper. It gives nil, with
// the reason, only when it cannot be laid out.
func (l *List) Doc(fs *face.Set, paper string) (*page.Doc, diag.List) {
	c, found := NewLayout(fs, paper, l.Head)
	if c == nil {
		return nil, found
	}
	l.Put(c)
	if few := (c.Bottom() - Margin) / 3; len(c.Pages) > 1 && c.full-Margin < few {
		small, _ := NewLayout(fs, paper, l.Head)
		l.compact().Put(small)
		if len(small.Pages) < len(c.Pages) {
			c = small
		}
	}
	return c.finishIn(l, found)
}

// compact is the list with every part set small that has nothing to fill in.
func (l *List) compact() *List {
	out := *l
	out.small = true
	out.Parts = slices.Clone(l.Parts)
	for i, p := range out.Parts {
		tall := slices.ContainsFunc(p.Rows, func(r Row) bool { return r.Under != "" && r.Type == Item })
		out.Parts[i].Compact = p.Compact || !tall
	}
	return &out
}

func (c *Layout) finishIn(l *List, found diag.List) (*page.Doc, diag.List) {
	d, more := c.Finish(l.Head, l.Maker)
	return d, append(found, more...)
}

// Put lays the list out from here on.
func (l *List) Put(c *Layout) {
	c.knowing(l.Told)
	sub := l.Sum
	switch {
	case l.Maker == "":
	case sub == "":
		sub = l.Maker
	default:
		sub = l.Maker + " · " + sub
	}
	for _, b := range c.TitleBands(l.Title, sub) {
		c.Put(b)
	}
	for _, p := range l.Parts {
		rows := p.rows(OnPaper)
		if len(rows) == 0 && (p.Title == "" || !on(p.Not, OnPaper)) {
			continue
		}
		g := Group{Head: Gap(unit.Millimetre), Rows: c.bands(p, rows)}
		switch {
		case p.Beside:
			g = Group{Head: Gap(0), Rows: c.besideBands(p, rows)}
		case p.Title != "":
			head := HeadBand
			if p.Compact || l.small {
				head = smallHead
			}
			g.Head, g.Cont = head(p.Title, p.Sum), head(p.Title+", "+l.In.Say("continued"), "")
			g.Head.part, g.Cont.part = &part{role: "H2"}, &part{}
		}
		c.Group(g)
	}
	c.full = c.Y
	if l.Space > 0 {
		c.room(l.In.Say("Notes"), l.Space)
	}
}

// room is ruled space for handwriting on what is left of the page: no page is
// begun for it.
func (c *Layout) room(title string, lines int) {
	gap := Gap(3 * unit.Millimetre)
	for ; lines > 1; lines-- {
		if rows := LinesBand(title, lines); gap.H+height(rows) <= c.Bottom()-c.Y {
			c.Group(Group{Head: gap, Rows: rows})
			return
		}
	}
}

// bands are the strips of a part's rows.
func (c *Layout) bands(p Part, rows []Row) (out []Band) {
	var list entries
	grid := &part{role: "Table"}
	if len(p.Columns) > 0 {
		if len(p.Legend) > 0 {
			out = append(out, legendBand(p.Legend))
		}
		out = append(out, as(&part{role: "TR", up: grid, cells: "TH"}, columnBand(p, Row{What: p.Columns[0], Figures: p.Columns[1:]}, SmallHeading, 1))...)
	}
	var bars []Bar
	for _, r := range rows {
		bars = append(bars, r.Bars...)
	}
	for _, r := range rows {
		switch r.Type {
		case Item, Crate, Step:
		default:
			list, grid = entries{}, &part{role: "Table"}
		}
		switch r.Type {
		case Item:
			what := &part{role: "TR", up: grid, cells: "TD"}
			if len(p.Columns) == 0 {
				what = list.next()
			}
			out = append(out, as(what, itemBand(p, r, longest(bars)))...)
		case Say:
			out = append(out, c.words(p, r)...)
		case Aside:
			x := inset
			if len(p.Columns) > 0 || p.Title == "" {
				x = Margin
			}
			size := Pt(10.5)
			if p.Compact {
				size = Pt(9)
			}
			out = append(out, c.Paragraph(ItalicFace, size, x, Soft, r.What)...)
		case Alarm:
			out = append(out, c.Paragraph(BoldFace, Pt(11), Margin, Accent, r.What)...)
		case Crate:
			out = append(out, as(list.next(), crateBand(r))...)
		case Step:
			out = append(out, as(list.next(), c.stepBand(r))...)
		case Write:
			if p.Compact && r.Lines == 1 && c.Width(BoldFace, Pt(9.5), r.What) < c.W/2-Margin {
				out = append(out, fillBand(r.What))
				continue
			}
			out = append(out, LinesBand(r.What, r.Lines)...)
		case Towers:
			out = append(out, towerBand(r)...)
		}
	}
	return out
}

func (c *Layout) words(p Part, r Row) []Band {
	if p.Compact {
		return c.Paragraph(PlainFace, Pt(9.5), Margin, Ink, r.What)
	}
	if r.Strong {
		return c.Paragraph(BoldFace, Pt(13), Margin, Ink, r.What)
	}
	return c.Paragraph(PlainFace, Pt(11.5), Margin, Ink, r.What)
}

func itemBand(p Part, r Row, most float64) Band {
	switch {
	case len(p.Columns) > 0:
		look := Figures
		if r.Strong {
			look = SumOfFigures
		}
		return columnBand(p, r, look, most)
	case r.Under != "" && !p.Compact:
		return tallBand(r)
	}
	return plainBand(p, r)
}

// tallBand is one kind of jar, or one person: box to tick, count and size,
// name; under it the rest. At the right are fields to fill in by hand.
func tallBand(r Row) Band {
	return Band{H: 14 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		base := y + 6500*unit.Micrometre
		if r.Tick {
			c.Tick(Margin, y+5500*unit.Micrometre, tickSide)
		}
		x := inset
		if r.Count != "" {
			c.Right(BoldFace, Pt(15), x+9*unit.Millimetre, base, Ink, r.Count)
			x += 11 * unit.Millimetre
			c.Text(PlainFace, Pt(11.5), x, base, Ink, c.Short(PlainFace, Pt(11.5), 25*unit.Millimetre, r.Size))
			x += 27 * unit.Millimetre
		}
		end := c.fields(base, r.Fields)
		room := end - x - 3*unit.Millimetre
		c.Text(BoldFace, Pt(12), x, base, Ink, c.Short(BoldFace, Pt(12), room, r.What))
		c.Text(PlainFace, Pt(10), x, base+4800*unit.Micrometre, Soft, c.Short(PlainFace, Pt(10), room, r.Under))
		c.Rule(Margin, c.W-Margin, y+13400*unit.Micrometre)
	}}
}

// fields are places to write by hand: one alone has its name at the left,
// several below. It gives their left end.
func (c *Layout) fields(base unit.Length, names []string) unit.Length {
	right := c.W - Margin
	if len(names) == 1 {
		c.Stroke(right-15*unit.Millimetre, right, base+unit.Millimetre, Soft, unit.Points(0.8))
		return c.Right(PlainFace, Pt(9), right-17*unit.Millimetre, base, Soft, names[0])
	}
	for _, n := range names {
		wide := max(16*unit.Millimetre, c.Width(PlainFace, Pt(8.5), n))
		c.Stroke(right-wide, right, base+unit.Millimetre/2, Soft, unit.Points(0.8))
		c.Text(PlainFace, Pt(8.5), right-wide, base+4800*unit.Micrometre, Soft, n)
		right -= wide + 4*unit.Millimetre
	}
	return right
}

func crateBand(r Row) Band {
	return Band{H: 7 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		base := y + 5*unit.Millimetre
		side := 3500 * unit.Micrometre
		c.Tick(Margin+(tickSide-side)/2, base-1300*unit.Micrometre, side)
		at := c.Text(BoldFace, Pt(10.5), inset, base, Ink, r.What+"  ")
		end := c.Right(PlainFace, Pt(10.5), c.W-Margin, base, Soft, r.Note)
		c.Text(PlainFace, Pt(10.5), at, base, Ink, c.Short(PlainFace, Pt(10.5), end-at-3*unit.Millimetre, r.Under))
	}}
}

func (c *Layout) stepBand(r Row) Band {
	lines := c.Wrap(PlainFace, Pt(11), c.W-Margin-inset, r.What)
	lead := Pt(11) * 14 / 10
	return Band{H: lead*unit.Length(len(lines)) + 2*unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		c.Tick(Margin, y+3*unit.Millimetre, 4*unit.Millimetre)
		for i, l := range lines {
			c.Text(PlainFace, Pt(11), inset, y+unit.Millimetre+lead*unit.Length(i)+Pt(11), Ink, l)
		}
	}}
}

// plainBand is a row of amount, words and a note at the right.
func plainBand(p Part, r Row) Band {
	h, size, small := 8500*unit.Micrometre, Pt(11.5), Pt(10.5)
	if p.Compact {
		h, size, small = 5800*unit.Micrometre, Pt(10), Pt(9.5)
	}
	return Band{H: h, Draw: func(c *Layout, y unit.Length) {
		base := y + h*7/10
		if r.Tick {
			side := h * 53 / 100
			c.Tick(Margin, base-1700*unit.Micrometre*h/(8500*unit.Micrometre), side)
		}
		room := 42 * unit.Millimetre
		if p.Compact {
			room = 16 * unit.Millimetre
		}
		x := c.Text(BoldFace, size, inset, base, Ink, c.Short(BoldFace, size, 40*unit.Millimetre, r.Amount))
		x = max(x+2*unit.Millimetre, inset+room)
		end := c.Right(PlainFace, small, c.W-Margin, base, Soft, r.Note)
		c.Text(PlainFace, size, x, base, Ink, c.Short(PlainFace, size, end-x-3*unit.Millimetre, r.What))
		c.Rule(Margin, c.W-Margin, y+h-200*unit.Micrometre)
	}}
}
