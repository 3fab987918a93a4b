// Package page is the closed, dumb model between layout and output: positioned
// items in a frame, frames on pages. Renderers draw it and decide nothing.
// Coordinates: nanometres, origin top left, y down.
package page

import (
	"cmp"
	"strings"

	"jarmark/internal/kit/unit"
)

// Point is a place.
type Point struct{ X, Y unit.Length }

// Rect is an upright box.
type Rect struct{ X, Y, W, H unit.Length }

// Colour is sRGB.
type Colour struct{ R, G, B uint8 }

// Face names one font file of the fonts package without ".ttf":
// "Figtree_400Regular".
type Face string

// Item is one of *Text, *Path, *Code, *Picture; nothing else.
type Item interface{ item() }

// Text is one line of one face and size on one baseline, already broken,
// kerned and placed.
type Text struct {
	Block  string // id of the label block it prints; "" for decoration
	Face   Face
	Size   unit.Length // em size
	At     Point       // left end of the baseline
	Turn   float64     // degrees clockwise about At
	Segs   []Seg
	Colour Colour
	Box    Rect   // advance width x ascent..descent, before Turn
	Said   string // what the line says, where its letters stand in another order: Hebrew, from the right
	Hyphen bool   // it ends in a hyphen of the line's end, not of its words
	Tag    int32  // the part of a list it belongs to, counted in Doc.Tags from 1; 0: none
}

// Tag is one part of a document to be read, by its standard structure type (ISO
// 32000-1, 14.8.4: "H1", "Table", "TD"), and the part it stands in, as in Text.Tag.
type Tag struct {
	Role   string
	Parent int32
}

// Seg is a stretch of text without kerning or tracking inside: renderers draw
// S with plain advances from At.X+X. Kerns and letter-spacing start a new Seg.
type Seg struct {
	X unit.Length
	S string
}

// String is the text of the line.
func (t *Text) String() string {
	if t.Said != "" {
		return t.Said
	}
	return t.Drawn()
}

// Drawn are the letters of the line from left to right.
func (t *Text) Drawn() string {
	s := ""
	for _, g := range t.Segs {
		s += g.S
	}
	return s
}

// Words is the text of the line without the hyphen of its end.
func (t *Text) Words() string {
	s := t.String()
	if t.Hyphen {
		s = strings.TrimSuffix(s, "-")
	}
	return s
}

// Op is a path operation.
type Op uint8

// Path operations and how many points each takes.
const (
	MoveTo  Op = iota // 1
	LineTo            // 1
	CubicTo           // 3
	Close             // 0
)

// Path is a filled and/or stroked shape.
type Path struct {
	Block   string // "" for decoration; "cut" for cut marks
	Ops     []Op
	Pts     []Point
	Fill    *Colour
	EvenOdd bool
	Stroke  *Colour
	Width   unit.Length // of the stroke
	Round   bool        // round caps and joins
	Nib     *Nib        // in place of Round, where a drawing needs more
	Dash    []unit.Length
	Bleed   bool // background that may reach past the safe area and the trim

	sealed *seal // measures, once it will not change
}

// Nib is how a stroke ends and turns (ISO 32000-1, 8.4.3.3 to 8.4.3.5; the numbers
// are those of that standard).
type Nib struct {
	Cap   Cap
	Join  Join
	Mitre float64 // how many widths a mitre reaches before it is cut, at least 1
}

// Cap is the end of a stroke, Join its corner.
type (
	Cap  uint8
	Join uint8
)

// The ends and the corners.
const (
	Butt Cap = iota
	RoundCap
	SquareCap
)
const (
	Mitre Join = iota
	RoundJoin
	BevelJoin
)

// Code is a QR code: Modules[y][x] true = dark, without quiet zone; At covers
// the modules only. Quiet modules of blank must surround it (ISO/IEC 18004: 4).
type Code struct {
	Block   string
	At      Rect
	Modules [][]bool
	Quiet   int
	Dark    Colour
	Payload string
	Turn    float64 // degrees clockwise about the middle of At
}

func (*Text) item() {}
func (*Path) item() {}
func (*Code) item() {}

// Shape is the outline of a cut label.
type Shape string

// The outlines. TagShape is a hang tag with cut top corners and a hole.
const (
	Rectangle Shape = "rectangle"
	Ellipse   Shape = "ellipse"
	TagShape  Shape = "tag"
	Sector    Shape = "sector" // of a ring, for a tapered jar
)

// Frame is one finished label: W x H is the trim size.
type Frame struct {
	W, H   unit.Length
	Shape  Shape
	Corner unit.Length // corner radius of a Rectangle
	Arc    Arc         // of a Sector, whose box is W x H
	Safe   unit.Length // inset no ink but Bleed paths may cross
	Bleed  unit.Length // how far Bleed paths reach past the trim
	Items  []Item
	Slots  []Slot // kept free for text that differs from copy to copy
	Name   string // what it is, for outlines and accessible text
	Design string
	Piece  string
}

// Slot is a place on a label for text that differs from copy to copy: a
// serial number, a recipient. It is not drawn; an Overlay fills it.
type Slot struct {
	Block  string // id of the label block it stands for
	Kind   string // its kind: "serial", "to"
	Face   Face
	Size   unit.Length
	At     Point       // left end of the baseline
	Width  unit.Length // room for the text
	Colour Colour
}

// Placement puts a frame on a page: At is the top left of the placed (turned)
// box. Overlay items (serial numbers, names) are in frame coordinates.
type Placement struct {
	Frame   *Frame
	At      Point
	Turn    int // 0 or 90 (degrees clockwise)
	Overlay []Item
	Within  Rect // what of the page its bleed may reach; zero: all
}

// Page is one sheet of paper.
type Page struct {
	W, H   unit.Length
	Places []Placement
	Marks  []Item // page coordinates: cut marks, rulers, notes
	Trim   Rect   // what is left once it is cut; zero: the page is not cut
}

// Doc is what a renderer gets.
type Doc struct {
	Title, Author, Lang string
	Created             int64 // Unix seconds; never the clock's
	Pages               []Page
	ScaleX, ScaleY      float64 // printer correction; 0 = 1
	OffsetX, OffsetY    unit.Length
	CutLines            bool     // an SVG or PDF has a layer of the labels' outlines
	Tags                []Tag    // of a list, in reading order, each behind its parent; none: not told
	Profile             *Profile // of a print shop; nil: not known
}

// Profile is how a print shop's inks look, as an ICC profile.
type Profile struct {
	Name string // what it is called in it
	Inks int
	Data []byte
}

// Followed gives the document with the pages of another behind its own; either
// may be nil.
func (d *Doc) Followed(by *Doc) *Doc {
	if d == nil || by == nil {
		return cmp.Or(d, by)
	}
	for _, p := range by.Pages {
		for _, it := range p.Marks {
			if t, ok := it.(*Text); ok && t.Tag > 0 {
				t.Tag += int32(len(d.Tags))
			}
		}
	}
	before := int32(len(d.Tags))
	for _, t := range by.Tags {
		if t.Parent > 0 {
			t.Parent += before
		}
		d.Tags = append(d.Tags, t)
	}
	d.Pages = append(d.Pages, by.Pages...)
	return d
}
