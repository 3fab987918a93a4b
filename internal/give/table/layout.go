package table

import (
	"cmp"
	"fmt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// The faces and colours of sheets a person carries: dark on white, one warm
// Accent, readable when printed in black.
const (
	TitleFace  = page.Face("Fraunces_600SemiBold")
	ItalicFace = page.Face("Figtree_400Regular_Italic")
	PlainFace  = page.Face("Figtree_400Regular")
	BoldFace   = page.Face("Figtree_700Bold")
)

var (
	Ink    = page.Colour{R: 38, G: 32, B: 28}
	Soft   = page.Colour{R: 98, G: 89, B: 80}
	Accent = page.Colour{R: 154, G: 31, B: 53}
	Line   = page.Colour{R: 201, G: 190, B: 174}
	Tint   = page.Colour{R: 250, G: 245, B: 236}
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

const Margin = 18 * unit.Millimetre

// layout is a sheet being laid out from the top down.
type Layout struct {
	Voices  map[page.Face]typeset.Voice
	faces   *face.Set
	W, H    unit.Length
	Head    string // repeated at the top of every page
	Pages   []page.Page
	Y       unit.Length
	full    unit.Length // where the list itself ends on the last page
	missing map[rune]bool
	lost    []rune
	hard    []Told // what no face draws
	tags    []page.Tag
	now     *part // what is being drawn
	said    map[[2]string]bool
	found   diag.List
}

// Band is an unbreakable strip of the page: draw puts it with its top at y.
type Band struct {
	H     unit.Length
	Draw  func(c *Layout, y unit.Length)
	Drawn bool  // its words are read in the order they are drawn; else line by line, from the left
	part  *part // what it is; nil: a paragraph
}

// Group is a heading with its Rows: a page break repeats the heading and
// leaves at least two rows on either side.
type Group struct {
	Head Band
	Cont Band // heading after a break; zero = none
	Rows []Band
}

func NewLayout(fs *face.Set, paper, head string) (*Layout, diag.List) {
	var found diag.List
	size, ok := papers[paper]
	if !ok {
		found.Errorf("unknown-paper", "", "", "no paper %q", paper).Hinted("papers: a4, letter")
		return nil, found
	}
	c := &Layout{faces: fs, W: size[0], H: size[1], Head: head, Voices: map[page.Face]typeset.Voice{}, missing: map[rune]bool{}, said: map[[2]string]bool{}}
	for _, n := range []page.Face{TitleFace, ItalicFace, PlainFace, BoldFace} {
		f, err := fs.Open(n)
		if err != nil {
			found.Errorf("no-typeface", "", "", "the sheet cannot be laid out: %v", err)
			return nil, found
		}
		c.Voices[n] = typeset.Voice{Regular: f}
	}
	c.NewPage()
	return c, nil
}

func (c *Layout) Bottom() unit.Length { return c.H - Margin - 4*unit.Millimetre }

func (c *Layout) NewPage() {
	c.Pages = append(c.Pages, page.Page{W: c.W, H: c.H})
	c.Y = Margin
	if len(c.Pages) > 1 {
		c.Text(PlainFace, Pt(9), Margin, Margin-4*unit.Millimetre, Soft, c.Head)
		c.Rule(Margin, c.W-Margin, Margin-2*unit.Millimetre)
		c.Y = Margin + 4*unit.Millimetre
	}
}

// put draws a Band, on a new page when this one is full.
func (c *Layout) Put(b Band) {
	if c.Y+b.H > c.Bottom() && c.Y > Margin+5*unit.Millimetre {
		c.NewPage()
	}
	c.now = cmp.Or(b.part, &part{role: "P"})
	from := len(c.last().Marks)
	b.Draw(c, c.Y)
	if !b.Drawn {
		inOrder(c.last().Marks[from:])
	}
	c.now = nil
	c.Y += b.H
}

// Group draws a heading and rows, whole where they fit on one page.
func (c *Layout) Group(g Group) {
	total := g.Head.H + height(g.Rows)
	room := c.Bottom() - c.Y
	fresh := c.Bottom() - Margin - 4*unit.Millimetre
	if total > room && total <= fresh && room < fresh/2 {
		c.NewPage()
	}
	c.Flow(g)
}

// flow draws a heading and rows from here on, over as many pages as it takes.
func (c *Layout) Flow(g Group) {
	if c.Bottom()-c.Y < g.Head.H+height(g.Rows[:min(2, len(g.Rows))]) {
		c.NewPage()
	}
	c.Put(g.Head)
	for i := 0; i < len(g.Rows); {
		n := c.fitting(g.Rows[i:])
		for _, b := range g.Rows[i : i+n] {
			c.Put(b)
		}
		i += n
		if i < len(g.Rows) {
			c.NewPage()
			if g.Cont.Draw != nil {
				c.Put(g.Cont)
			}
		}
	}
}

// fitting is how many of the rows stand on this page: never all but one, so
// that no row is left alone on the next.
func (c *Layout) fitting(rows []Band) int {
	room, n := c.Bottom()-c.Y, 0
	for n < len(rows) && rows[n].H <= room {
		room -= rows[n].H
		n++
	}
	if n == len(rows)-1 && n > 2 {
		n--
	}
	return max(n, 1)
}

func height(rows []Band) (h unit.Length) {
	for _, b := range rows {
		h += b.H
	}
	return h
}

// finish numbers the pages and makes the document.
func (c *Layout) Finish(title, author string) (*page.Doc, diag.List) {
	for i := range c.Pages {
		n := fmt.Sprintf("%d / %d", i+1, len(c.Pages))
		at := c.W - Margin - c.Width(PlainFace, Pt(9), n)
		c.textOn(i, PlainFace, Pt(9), at, c.H-Margin+3*unit.Millimetre, Soft, n)
	}
	if len(c.lost) > 0 {
		c.found.Warnf("unprintable-letter", "", "", "the typeface has no %q; it is printed as ?", string(c.lost[:min(len(c.lost), 8)])).
			Hinted("write the name in letters the typeface has")
	}
	return &page.Doc{Title: title, Author: author, Lang: "en", Pages: c.Pages, Tags: c.tags}, c.found
}

// pt is a type size in points.
func Pt(v float64) unit.Length { return unit.Points(v) }
