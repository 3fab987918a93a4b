package pack

import (
	"fmt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// The faces and colours of sheets a person carries: dark on white, one warm
// accent, readable when printed in black.
const (
	titleFace  = page.Face("Fraunces_600SemiBold")
	italicFace = page.Face("Figtree_400Regular_Italic")
	plainFace  = page.Face("Figtree_400Regular")
	boldFace   = page.Face("Figtree_700Bold")
)

var (
	ink    = page.Colour{R: 38, G: 32, B: 28}
	soft   = page.Colour{R: 98, G: 89, B: 80}
	accent = page.Colour{R: 154, G: 31, B: 53}
	line   = page.Colour{R: 201, G: 190, B: 174}
	tint   = page.Colour{R: 250, G: 245, B: 236}
)

// Papers by name.
var papers = map[string][2]unit.Length{
	"letter": {unit.Inch * 17 / 2, unit.Inch * 11},
	"a4":     {210 * unit.Millimetre, 297 * unit.Millimetre},
}

// Paper is the maker's paper: "letter" where US measures are used, else "a4".
func Paper(units string) string {
	if units == unit.US {
		return "letter"
	}
	return "a4"
}

const margin = 18 * unit.Millimetre

// layout is a sheet being laid out from the top down.
type layout struct {
	voices   map[page.Face]typeset.Voice
	w, h     unit.Length
	head     string // repeated at the top of every page
	pages    []page.Page
	y        unit.Length
	missing  map[rune]bool
	lost     []rune
	finished bool
}

// band is an unbreakable strip of the page: draw puts it with its top at y.
type band struct {
	h    unit.Length
	draw func(c *layout, y unit.Length)
}

// group is a heading with its rows: a page break repeats the heading and
// leaves at least two rows on either side.
type group struct {
	head band
	cont band // heading after a break; zero = none
	rows []band
}

func newLayout(fs *face.Set, paper, head string) (*layout, diag.List) {
	var found diag.List
	size, ok := papers[paper]
	if !ok {
		found.Errorf("unknown-paper", "", "", "no paper %q", paper).Hinted("papers: a4, letter")
		return nil, found
	}
	c := &layout{w: size[0], h: size[1], head: head, voices: map[page.Face]typeset.Voice{}, missing: map[rune]bool{}}
	for _, n := range []page.Face{titleFace, italicFace, plainFace, boldFace} {
		f, err := fs.Open(n)
		if err != nil {
			found.Errorf("no-typeface", "", "", "the sheet cannot be laid out: %v", err)
			return nil, found
		}
		c.voices[n] = typeset.Voice{Regular: f}
	}
	c.newPage()
	return c, nil
}

func (c *layout) bottom() unit.Length { return c.h - margin - 4*unit.Millimetre }

func (c *layout) newPage() {
	c.pages = append(c.pages, page.Page{W: c.w, H: c.h})
	c.y = margin
	if len(c.pages) > 1 {
		c.text(plainFace, pt(9), margin, margin-4*unit.Millimetre, soft, c.head)
		c.rule(margin, c.w-margin, margin-2*unit.Millimetre)
		c.y = margin + 4*unit.Millimetre
	}
}

// put draws a band, on a new page when this one is full.
func (c *layout) put(b band) {
	if c.y+b.h > c.bottom() && c.y > margin+5*unit.Millimetre {
		c.newPage()
	}
	b.draw(c, c.y)
	c.y += b.h
}

// group draws a heading and rows, whole where they fit on one page.
func (c *layout) group(g group) {
	total := g.head.h + height(g.rows)
	room := c.bottom() - c.y
	fresh := c.bottom() - margin - 4*unit.Millimetre
	if total > room && total <= fresh && room < fresh/2 {
		c.newPage()
	}
	c.flow(g)
}

// flow draws a heading and rows from here on, over as many pages as it takes.
func (c *layout) flow(g group) {
	if c.bottom()-c.y < g.head.h+height(g.rows[:min(2, len(g.rows))]) {
		c.newPage()
	}
	c.put(g.head)
	for i := 0; i < len(g.rows); {
		n := c.fitting(g.rows[i:])
		for _, b := range g.rows[i : i+n] {
			c.put(b)
		}
		i += n
		if i < len(g.rows) {
			c.newPage()
			if g.cont.draw != nil {
				c.put(g.cont)
			}
		}
	}
}

// fitting is how many of the rows stand on this page: never all but one, so
// that no row is left alone on the next.
func (c *layout) fitting(rows []band) int {
	room, n := c.bottom()-c.y, 0
	for n < len(rows) && rows[n].h <= room {
		room -= rows[n].h
		n++
	}
	if n == len(rows)-1 && n > 2 {
		n--
	}
	return max(n, 1)
}

func height(rows []band) (h unit.Length) {
	for _, b := range rows {
		h += b.h
	}
	return h
}

// finish numbers the pages and makes the document.
func (c *layout) finish(title, author string) (*page.Doc, diag.List) {
	for i := range c.pages {
		n := fmt.Sprintf("%d / %d", i+1, len(c.pages))
		at := c.w - margin - c.width(plainFace, pt(9), n)
		c.textOn(i, plainFace, pt(9), at, c.h-margin+3*unit.Millimetre, soft, n)
	}
	var found diag.List
	if len(c.lost) > 0 {
		found.Warnf("unprintable-letter", "", "", "the typeface has no %q; it is printed as ?", string(c.lost[:min(len(c.lost), 8)])).
			Hinted("write the name in letters the typeface has")
	}
	return &page.Doc{Title: title, Author: author, Lang: "en", Pages: c.pages}, found
}

// pt is a type size in points.
func pt(v float64) unit.Length { return unit.Points(v) }
