package table

import (
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// besideNames is the width of the titles that stand left of their rows.
const besideNames = 56 * unit.Millimetre

// strip puts one line of text with its base at a height.
type strip func(c *Layout, base unit.Length)

// besideBands sets a part's title and sum left of its rows, small, with a line
// under both: forty people are then three pages at most.
func (c *Layout) besideBands(p Part, rows []Row) (out []Band) {
	title := Pt(11.5)
	head := &part{role: "H2"}
	left := c.strips(head, TitleFace, title, Margin, besideNames-4*unit.Millimetre, Accent, p.Title)
	left = append(left, c.strips(head, PlainFace, Pt(8.5), Margin, besideNames-4*unit.Millimetre, Soft, p.Sum)...)
	right := c.besideRows(rows)
	for i := range max(len(left), len(right)) {
		out = append(out, Band{H: 4700 * unit.Micrometre, Draw: func(c *Layout, y unit.Length) {
			for _, side := range [][]strip{left, right} {
				if i < len(side) {
					side[i](c, y+4100*unit.Micrometre)
				}
			}
		}})
	}
	return append(out, Band{H: 2 * unit.Millimetre, Draw: func(c *Layout, y unit.Length) {
		c.Rule(Margin, c.W-Margin, y+unit.Millimetre)
	}})
}

// besideRows are the lines of the rows; words under items are one after another.
func (c *Layout) besideRows(rows []Row) (out []strip) {
	const box = 3500 * unit.Micrometre
	x := Margin + besideNames
	in, small := x+6*unit.Millimetre, Pt(9)
	var words []string
	var list entries
	say := func() {
		out = append(out, c.strips(&part{role: "P"}, ItalicFace, small, in, c.W-Margin-in, Soft, strings.Join(words, " · "))...)
		words = nil
	}
	for _, r := range rows {
		switch r.Type {
		case Item:
			say()
			out = append(out, being(list.next(), func(c *Layout, base unit.Length) {
				if r.Tick {
					c.Tick(x, base-1200*unit.Micrometre, box)
				}
				at := c.Text(BoldFace, Pt(10), in, base, Ink, r.Amount+"  ")
				end := c.Right(PlainFace, small, c.W-Margin, base, Soft, r.Note)
				c.Text(PlainFace, Pt(10), at, base, Ink, c.Short(PlainFace, Pt(10), end-at-3*unit.Millimetre, r.What))
			})...)
		case Alarm:
			say()
			out = append(out, c.strips(&part{role: "P"}, BoldFace, Pt(10), in, c.W-Margin-in, Accent, r.What)...)
		case Crate:
			words = append(words, r.What+": "+r.Under)
		default:
			words = append(words, r.What)
		}
	}
	say()
	return out
}

// strips are the lines of a text in a room, of one part of the list.
func (c *Layout) strips(p *part, f page.Face, size, x, room unit.Length, col page.Colour, s string) (out []strip) {
	if strings.TrimSpace(s) == "" {
		return nil
	}
	for _, l := range c.Wrap(f, size, room, s) {
		out = append(out, func(c *Layout, base unit.Length) { c.Text(f, size, x, base, col, l) })
	}
	return being(p, out...)
}

// being says what strips are.
func being(p *part, strips ...strip) []strip {
	for i, s := range strips {
		strips[i] = func(c *Layout, base unit.Length) {
			c.now = p
			s(c, base)
		}
	}
	return strips
}
