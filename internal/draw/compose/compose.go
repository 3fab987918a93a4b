// Package compose sets one label: it takes what a label has to say, a design
// and the cell it must fit, and gives positioned items. It never sets type
// below a legal minimum, never clips and never overlaps; what cannot fit is a
// finding in millimetres. It knows no country, no paper and no clock.
//
// A new piece is one function in the table arrangements and its file.
package compose

import (
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Cell is the label stock: W x H is the trim size.
type Cell struct {
	W, H   unit.Length
	Shape  page.Shape
	Corner unit.Length // corner radius of a rectangle
	Safe   unit.Length // inset no type or ornament may cross
	Bleed  unit.Length // how far backgrounds may reach past the trim
}

// Options are the maker's choices for this print.
type Options struct {
	// InkSaver prints in black only: no fills, line ornaments.
	InkSaver bool
	// Alone says a front label is the only one on the jar, so it must carry
	// every required statement, not the principal display panel alone.
	Alone bool
	// Reserve keeps the place of these blocks' last words free and names it in
	// Frame.Slots, for text that differs from copy to copy (see Overlay). The
	// content holds a sample of the widest such text.
	Reserve []label.Kind
	// Codes remembers QR matrices between labels; nil encodes each anew.
	Codes *Codes
	// Drawings remembers ornaments between labels; nil draws each anew.
	Drawings *Drawings
}

// Overflow says what did not fit: the height (or width) it needs and has.
type Overflow struct {
	Block      string
	Need, Have unit.Length
	Across     bool // the measures are widths
}

// Result is a composed label and what did not fit on it.
type Result struct {
	Frame    *page.Frame
	Overflow []Overflow
	bare     bool // ornaments were left out
}

// Label composes one piece. When something does not fit there is an error
// finding and the frame lacks it.
func Label(c *label.Content, d *design.Design, p label.Piece, cell Cell, f *face.Set, o Options) (*page.Frame, diag.List) {
	r, l := Compose(c, d, p, cell, f, o)
	return r.Frame, l
}

// Compose is Label with the overflow as numbers, for a caller that looks for
// a larger sheet.
func Compose(c *label.Content, d *design.Design, p label.Piece, cell Cell, f *face.Set, o Options) (Result, diag.List) {
	var r Result
	var found diag.List
	base, ok := newSetter(c, d, p, cell, f, o)
	if !ok {
		return Result{Frame: base.frame}, base.found
	}
	for _, w := range base.wardrobe() {
		r, found = base.in(w).attempt()
		if len(r.Overflow) == 0 {
			break
		}
	}
	if r.bare && len(r.Overflow) == 0 {
		found.Notef("no-room-for-ornament", "", "label.design", "the %s label has no room for the ornaments of %q", p, d.ID).
			Hinted("a larger label would show them")
	}
	return r, found
}

// attempt composes once in one dress: words come before ornament.
func (s *setter) attempt() (Result, diag.List) {
	s.checkJar()
	s.ground()
	arrangements[s.piece](s)
	s.scatter()
	order(s.frame)
	s.prune()
	s.slots()
	return Result{Frame: s.frame, Overflow: s.over, bare: s.piece != label.InfoLabel && s.had > 0 && s.adorned == 0}, s.found
}

// arrangements is how each piece is laid out.
var arrangements = map[label.Piece]func(*setter){
	label.Front:      (*setter).front,
	label.InfoLabel:  (*setter).infoLabel,
	label.Wrap:       (*setter).wrap,
	label.Lid:        (*setter).lid,
	label.Tag:        (*setter).tag,
	label.SealStrip:  (*setter).strip,
	label.CaseLabel:  (*setter).caseLabel,
	label.ShelfCard:  (*setter).shelf,
	label.AllergCard: (*setter).allergens,
	label.Sign:       (*setter).sign,
}

// setter is the state of one composition.
type setter struct {
	c     *label.Content
	d     *design.Design
	look  design.Look
	piece label.Piece
	cell  Cell
	faces *face.Set
	opt   Options

	colours   roles
	frame     *page.Frame
	found     diag.List
	over      []Overflow
	blocks    []label.Block // the content's blocks, cleaned of what no face draws
	title     string
	sub       string
	holes     []page.Rect // what drawings must keep away from beside type
	clear     []page.Rect // clear space codes must keep out of
	ornaments []pending
	pairs     []pending              // drawings for the blank beside the name
	cornerBox page.Rect              // of the drawing in the upper right corner
	sides     unit.Length            // width kept free for them at each side of the name
	room      map[string]unit.Length // widths of varying text, by block
	undrawn   map[string]bool        // letters no face draws, told once
	painted   bool                   // the ground is not bare paper
	open      page.Rect              // the label less its bands
	// beyondPanel is the blank between a wrap's display panel and its facts.
	beyondPanel unit.Length
	display     page.Rect // the display panel of a wrap
	pal         palette.Palette
	part        float64     // share of a wrap's length that is its display panel
	had         int         // ornaments of the look as written
	adorned     int         // ornaments drawn
	netSize     unit.Length // type size of the net quantity as set
	atBest      bool        // the name stands at the size the design likes best
	squashed    bool        // a ring of leaves is flatter than looks well
	measuring   bool        // only sizes are asked for: nothing is drawn
	title1      unit.Length // type size of the first line of the name as set
	nameBox     page.Rect   // ink of title and subtitle
	body        region      // the blank the name was set in
}

// newSetter checks the arguments; ok is false when nothing can be set.
func newSetter(c *label.Content, d *design.Design, p label.Piece, cell Cell, f *face.Set, o Options) (*setter, bool) {
	s := &setter{c: c, d: d, piece: p, cell: cell, faces: f, opt: o}
	switch {
	case c == nil:
		s.found.Errorf("no-content", "", "", "there is nothing to print")
	case d == nil:
		s.found.Errorf("no-design", "", "label.design", "no design is chosen")
	case f == nil:
		s.found.Errorf("no-typeface", "", "", "no typefaces are loaded")
	case arrangements[p] == nil:
		s.found.Errorf("unknown-kind", "", "", "unknown kind of label %q", p)
	}
	if s.found.HasErrors() || !s.checkCell() {
		return s, false
	}
	s.frame = &page.Frame{
		W: s.cell.W, H: s.cell.H, Shape: s.cell.Shape, Corner: s.cell.Corner,
		Safe: s.cell.Safe, Bleed: s.cell.Bleed, Design: d.ID, Piece: string(p),
	}
	s.look = d.Look(p)
	s.open = page.Rect{W: s.cell.W, H: s.cell.H}
	if !s.checkFaces() {
		return s, false
	}
	s.colour()
	s.clean()
	s.frame.Name = s.title
	s.had = len(s.look.Ornaments)
	return s, true
}

// in is a fresh start in a dress.
func (s *setter) in(w dress) *setter {
	n, frame := *s, *s.frame
	n.frame, n.look, n.part = &frame, w.look, w.part
	n.found = append(diag.List(nil), s.found...)
	n.colours = n.on(n.look.Paper)
	if w.line && n.sub != "" {
		n.title, n.sub = strings.TrimSpace(n.title+" "+n.sub), ""
	}
	return &n
}

// checkCell refuses sizes no label has, before any arithmetic on them.
func (s *setter) checkCell() bool {
	const least, most = 8 * unit.Millimetre, 2 * unit.Metre
	c := &s.cell
	if c.W < least || c.H < least || c.W > most || c.H > most {
		s.found.Errorf("cell-size", "", "label.sheet", "a label of %.1f x %.1f mm cannot be set", c.W.MM(), c.H.MM()).
			Hinted("labels may be from 8 mm to 2 m")
		return false
	}
	short := min(c.W, c.H)
	c.Safe = min(max(0, c.Safe), short/4)
	c.Corner = min(max(0, c.Corner), short/2)
	c.Bleed = min(max(0, c.Bleed), 20*unit.Millimetre)
	if c.Shape == "" {
		c.Shape = page.Rectangle
	}
	return true
}

// checkFaces refuses a design whose faces are not there.
func (s *setter) checkFaces() bool {
	v := s.d.Voices
	ok := true
	for _, x := range []design.Voice{v.Title, v.Subtitle, v.Brand, v.Net, v.Text, v.Small, v.Hand, v.Price} {
		for _, name := range []page.Face{x.Face, x.Bold} {
			if name == "" {
				continue
			}
			if _, err := s.faces.Open(name); err != nil {
				s.found.Errorf("unknown-typeface", "", "label.design", "design %q asks for a typeface that is not there: %v", s.d.ID, err).
					Hinted("choose one from the fonts folder")
				ok = false
			}
		}
	}
	return ok
}

func (s *setter) put(items ...page.Item) { s.frame.Items = append(s.frame.Items, items...) }

// block finds the first block of a kind.
func (s *setter) block(k label.Kind) (label.Block, bool) {
	for _, b := range s.blocks {
		if b.Kind == k && len(b.Runs) > 0 {
			return b, true
		}
	}
	return label.Block{}, false
}

// all finds every block of the kinds, in the order of kinds.
func (s *setter) all(kinds ...label.Kind) []label.Block {
	var out []label.Block
	for _, k := range kinds {
		for _, b := range s.blocks {
			if b.Kind == k && len(b.Runs) > 0 {
				out = append(out, b)
			}
		}
	}
	return out
}

// short is the shorter side of the piece, the measure of display sizes.
func (s *setter) short() unit.Length { return min(s.cell.W, s.cell.H) }

func share(l unit.Length, f float64) unit.Length { return unit.Length(float64(l) * f) }
