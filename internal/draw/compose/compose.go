// Package compose sets one label: it takes what a label has to say, a design
// and the cell it must fit, and gives positioned items. It never sets type
// below a legal minimum, never clips and never overlaps; what cannot fit is a
// finding in millimetres. It knows no country, no paper and no clock.
//
// A label goes through stages: newBrief reads what is to be said, in what
// colours and on what cell; variants lists the ways to set it, best first; a
// layout sets the type of one of them; adorn draws the ornaments round it; finish
// puts it in order. A new piece is one function in the table arrangements
// and its file.
package compose

import (
	"math"
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/ornament"
	"jarmark/internal/draw/page"
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
	Cone   page.Cone   // of a tapered jar, round which the finished label is bent; zero: it lies straight
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
	// Codes remembers QR matrices between labels; nil remembers them for this label only.
	Codes *Codes
	// Drawings remembers ornaments between labels; nil draws each anew.
	Drawings *Drawings
	// Picture is the maker's own; nil: none.
	Picture *Picture
}

// Drawings remembers ornaments between labels.
type Drawings = ornament.Memo

// Overflow says what did not fit: the height (or width) it needs and has.
type Overflow struct {
	Block      string
	Need, Have unit.Length
	Across     bool // the measures are widths
	Both       bool // of a rectangle that must grow by as much in width
}

// Result is a composed label and what did not fit on it.
type Result struct {
	Frame    *page.Frame
	Overflow []Overflow
	Bare     bool // the design's ornaments have no room
	Small    bool // the name is smaller than the net quantity
	Headed   bool // the name stands over the facts of an information label
	Crowded  bool // the name does not lead, or the maker's has no room: told in notes on label.sheet
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
	b, found, ok := newBrief(c, d, p, cell, f, o)
	if !ok {
		return Result{Frame: b.blank()}, found
	}
	look := b.stamped(b.pictured(d.Look(b.piece)))
	l, bare := b.best(look)
	found = append(found, l.found...)
	frame := l.finish()
	found = append(append(found, b.onPaper(frame)...), b.unstamped(frame)...)
	if bare && !b.wantsPicture() {
		found.Notef("no-room-for-ornament", "", "label.design", "the %s label has no room for the ornaments of %q", p, d.ID).
			Hinted("a larger label would show them")
	}
	over, more := l.overflow()
	told := len(found)
	if len(over) == 0 {
		b.checkLead(look, l, frame, &found)
	}
	crowded := len(found) > told
	return Result{Frame: frame, Overflow: over, Bare: bare, Headed: l.titled, Crowded: crowded, Small: l.nameSize > 0 && l.nameSize < sizeOf(frame, l.netID())}, append(found, more...)
}

// checkLead tells where a display panel has no room for a name that leads, or for
// the maker's name as a sign. A front that is alone on its jar is told of as a whole.
func (b brief) checkLead(look design.Look, l *layout, frame *page.Frame, found *diag.List) {
	if b.piece != label.Front && b.piece != label.Wrap || b.opt.Alone {
		return
	}
	hint := "a larger label has the room"
	if len(b.panelBlocks()) > 0 {
		hint = "a sentence must stand beside the name here, in letters of a size the law sets: " + hint
	}
	if net := sizeOf(frame, b.netID()); l.nameSize > 0 && l.nameSize*1000 < net*1399 {
		found.Notef("name-crowded", "", "label.sheet", "on the %s label the name is %.2f times as large as the net quantity, and should be %.2f times",
			b.as, float64(l.nameSize*100/net)/100, leads).Hinted(hint)
	}
	if sign, ok := b.block(label.Brand); ok && look.Brand != "none" && sizeOf(frame, sign.ID) == 0 {
		found.Notef("sign-left-out", "", "label.sheet", "the %s label has no room for the maker's name under that of the food", b.as).
			Hinted(hint + "; the maker is named with the address all the same")
	}
}

// netID names the block of the net quantity.
func (b brief) netID() string {
	net, _ := b.block(label.Net)
	return net.ID
}

// sizeOf is the largest type a block is set in.
func sizeOf(f *page.Frame, id string) (most unit.Length) {
	for _, it := range f.Items {
		if t, ok := it.(*page.Text); ok && t.Block == id {
			most = max(most, t.Size)
		}
	}
	return most
}

// best lays out the variant that gives up least and fits; one whose ornaments
// turn out to have no room gives them up too. Without one that fits it is the
// last tried. bare says that the ornaments of the design are missing.
func (b brief) best(look design.Look) (*layout, bool) {
	l, bare, cost, fits := b.foremost(look, b.variants(look, false), nil, false, math.MaxInt)
	if (b.piece == label.Front || b.piece == label.Wrap) && (!fits || cost >= costNear) {
		// What ranked first was passed by for its drawings or its facts: look at all there are.
		l, bare, cost, fits = b.foremost(look, b.variants(look, true), l, bare, cost)
	}
	if !fits {
		l, bare, _, _ = b.foremost(look, b.lastResorts(look), l, bare, cost)
	}
	return l, bare
}

// foremost lays variants out, and gives the first that costs least, or what was
// found before.
func (b brief) foremost(look design.Look, all []variant, best *layout, bare bool, cost int) (*layout, bool, int, bool) {
	fits := cost < math.MaxInt
	for _, v := range all {
		if fits && v.cost >= cost {
			break
		}
		l := b.layout(v)
		arrangements[b.piece](l)
		drawn := l.adorn()
		if len(l.missing) > 0 {
			if best == nil || !fits {
				best = l
			}
			continue
		}
		c := v.cost
		if drawn == 0 && len(v.look.Ornaments) > 0 {
			c += costBare
		}
		if l.nameSize > 0 && l.nameSize < displayLeast {
			c += l.costOfTiny()
		}
		c += l.costOnCard()
		if l.piece == label.Wrap && l.factScale < cramped {
			c += costCramped
		}
		if l.piece == label.InfoLabel {
			c += l.costOfInfo()
		}
		if !fits || c < cost {
			best, cost, fits = l, c, true
			bare = drawn == 0 && len(look.Ornaments) > 0 && b.piece != label.InfoLabel
		}
	}
	return best, bare, cost, fits
}

// arrangements is how each piece is laid out.
var arrangements = map[label.Piece]func(*layout){
	label.Front:      (*layout).front,
	label.InfoLabel:  (*layout).infoLabel,
	label.Wrap:       (*layout).wrap,
	label.Lid:        (*layout).lid,
	label.Tag:        (*layout).tag,
	label.SealStrip:  (*layout).strip,
	label.CaseLabel:  (*layout).caseLabel,
	label.ShelfCard:  (*layout).shelf,
	label.AllergCard: (*layout).allergens,
	label.Sign:       (*layout).sign,
}

// layout sets one variant of a label. What it reads stands fixed; only the
// draft grows.
type layout struct {
	brief
	variant
	colours roles // on the paper of the look
	draft
}

// draft is what a layout has set so far, and what it asks of the stages after.
type draft struct {
	items     []page.Item
	over      []page.Item // drawn after the ornaments
	found     diag.List
	missing   []lack
	kept      []page.Rect            // what drawings must keep away from beside type
	clear     []page.Rect            // clear space codes must keep out of
	room      map[string]unit.Length // widths of varying text, by block
	painted   bool                   // the ground is not bare paper
	factScale float64                // of the facts: 0 = least size, 1 = best
	closed    dense                  // how far they closed up
	headless  bool                   // there was no room for the name over the facts
	codeStep  int                    // of the sizes of a code, the largest first
	open      page.Rect              // the label less its bands
	cloth     unit.Length            // the band around a round that hangs over its lid, on the lid; 0: none
	adornment
}

// layout begins a variant: its paper is painted, nothing else is set.
func (b brief) layout(v variant) *layout {
	switch {
	case v.narrow:
		b.voices = b.voices.Narrowed()
	case v.slim:
		b.voices = b.voices.Slim()
	}
	if v.condensed {
		b.voices = b.voices.Condensed()
	}
	l := &layout{brief: b, variant: v, colours: b.on(v.look.Paper)}
	l.open = page.Rect{W: b.cell.W, H: b.cell.H}
	l.strewn = l.open
	if v.oneLine && l.sub != "" && !l.apart {
		l.title, l.sub = strings.TrimSpace(l.title+" "+l.sub), ""
	}
	l.ground()
	return l
}

func (l *layout) put(items ...page.Item) { l.items = append(l.items, items...) }

func share(l unit.Length, f float64) unit.Length { return unit.Length(float64(l) * f) }
