// Package design reads label designs: one TOML file each, saying in which
// faces, colours and ornaments a label speaks. A design knows roles and
// places, never the words of a label, a country or a size of paper.
package design

import (
	"reflect"
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/law/label"
)

// Design is one look for all pieces of a jar.
type Design struct {
	ID     string // file name without .toml
	Name   string // "Orchard"
	About  string // one line for the list of designs
	Season string // one of Seasons
	Use    []string
	Voices Voices
	looks  map[label.Piece]Look
}

// Seasons and Uses are the words a design may describe itself with.
var (
	Seasons = []string{"all year", "spring", "summer", "autumn", "winter"}
	Uses    = []string{"market", "gift"}
)

// Voices are the roles of type on a label.
type Voices struct {
	Title    Voice // the display name
	Subtitle Voice // its second line
	Brand    Voice // the maker's name as a sign
	Net      Voice // net quantity
	Text     Voice // ingredients and all other facts
	Small    Voice // captions and short notes
	Hand     Voice // what a person would write
	Price    Voice
}

// Narrowed states facts and net quantity in the narrow faces of the voices that
// have one, for a label that would have to give up its ornaments for the room.
func (v Voices) Narrowed() Voices {
	narrow(&v.Net, &v.Text, &v.Small)
	return v
}

// Slim states the net quantity alone in its narrow face, for a label on which its
// line would be wider than the name.
func (v Voices) Slim() Voices {
	narrow(&v.Net)
	return v
}

// Condensed says the name in narrow faces, for a label on which it would
// otherwise be smaller than it should.
func (v Voices) Condensed() Voices {
	narrow(&v.Title, &v.Subtitle)
	return v
}

func narrow(some ...*Voice) {
	for _, x := range some {
		if x.Narrow.Face != "" {
			x.Face, x.Bold = x.Narrow.Face, x.Narrow.Bold
		}
	}
}

// Typefaces are faces of the maker's own that stand for a design's; empty = the
// design's.
type Typefaces struct{ Title, Text, Bold, Hand page.Face }

// Set is the design in other typefaces.
func (d *Design) Set(t Typefaces) *Design {
	if t == (Typefaces{}) {
		return d
	}
	out := *d
	v := &out.Voices
	put := func(f page.Face, voices ...*Voice) {
		for _, x := range voices {
			if f != "" {
				x.Face, x.Narrow = f, Pair{}
			}
		}
	}
	put(t.Title, &v.Title, &v.Subtitle, &v.Brand, &v.Price)
	put(t.Text, &v.Text, &v.Small)
	put(t.Bold, &v.Net)
	put(t.Hand, &v.Hand)
	for _, x := range []*Voice{&v.Title, &v.Subtitle, &v.Brand, &v.Price, &v.Net, &v.Text, &v.Small} {
		if t.Bold != "" && x.Bold != "" {
			x.Bold, x.Narrow = t.Bold, Pair{}
		}
	}
	return &out
}

// Pair is a face and the one for its emphasis.
type Pair struct{ Face, Bold page.Face }

// Voice is one role of type.
type Voice struct {
	Face    page.Face
	Bold    page.Face // for emphasis; empty = Face
	Narrow  Pair      // that stand in where room is short; empty = none
	Case    string    // "as written", "upper", "lower"
	Track   float64   // letter-spacing in em
	Leading float64   // line spacing in em
	Size    Range     // share of the panel's shorter side for display roles, points for text roles
	Colour  string    // one of Colours
}

// Range is a smallest and a preferred value.
type Range struct{ Least, Best float64 }

// Look is how one piece is arranged.
type Look struct {
	Align       string  // "centre" or "left"
	Margin      float64 // blank inside the edge, share of the shorter side
	Paper       string  // colour of the ground
	Info        string  // colour of the ground under the information panel
	Frame       string  // one of Frames
	FrameColour string
	Rule        string // between name and maker, one of Rules
	RuleColour  string
	Divider     string // between front and information panel, one of Dividers
	Brand       string // maker's name "below" or "above" the title, or "none"
	Band        Band
	Drawing     string // how ornaments are made, one of Drawings
	Title       Range  // overrides Voices.Title.Size when Best > 0
	Ornaments   []Ornament
}

// Band is a strip of colour along an edge, past the trim.
type Band struct {
	Edge    string  // one of Edges; "none" = no band
	Size    float64 // share of the piece's shorter side
	Fill    string
	Pattern string // one of Patterns
	Instead *Band  // what is painted when this one leaves the words no room
}

// Ornament is one drawing and where it stands.
type Ornament struct {
	Name    string  // a drawing of package ornament
	Spot    string  // where it stands, one of Spots
	Size    float64 // share of the piece's shorter side the drawing takes from the text
	Reach   float64 // share it is drawn over, when more than Size: type stands in its hollow
	Density float64 // 1 is usual, also when 0; 0.4 sparse to 2 rich
	Seed    int64
	Instead *Ornament // what stands there when this one leaves the name no room
	Own     bool      // the maker's own picture: it shrinks half as far as drawings do
}

// The words a look may use. A new word needs its drawing in package compose
// (ground.go, adorn.go).
var (
	Aligns   = []string{"centre", "left"}
	Cases    = []string{"as written", "upper", "lower"}
	Frames   = []string{"none", "hair", "double", "thick", "dotted", "inset"}
	Rules    = []string{"none", "hair", "double", "dotted", "short", "lozenge", "berry"}
	Dividers = []string{"none", "hair", "dotted"}
	Edges    = []string{"none", "left", "right", "top", "bottom", "both", "around"}
	Patterns = []string{"plain", "gingham", "stripes", "scallop", "awning"}
	Brands   = []string{"below", "above", "none"}
	Drawings = []string{"painted", "engraved"}
	Spots    = []string{"top", "bottom", "left", "right", "around", "frame", "corner", "corners", "ends", "scatter", "beside"}
	Colours  = []string{"paper", "tint", "white", "deep", "berry", "leaf", "ink", "soft", "main", "accent", "none"}
)

// Look gives the arrangement of a piece.
func (d *Design) Look(p label.Piece) Look {
	if l, ok := d.looks[p]; ok {
		return l
	}
	return d.looks[""]
}

// leastMargin is the margin of a small label without a frame.
const leastMargin = 0.045

// Leaner lists the looks a label may wear, from the look as written to bare
// type: first the rule goes, then ornaments shrink or give way to the ones named
// instead; then a heavy frame gets light, arches lie flat, frame, margin and band go, the
// maker's sign after them, at last the smallest ornament and band.
func (l Look) Leaner() []Look {
	out := []Look{l}
	add := func(n Look) {
		if !slices.ContainsFunc(out, func(o Look) bool { return reflect.DeepEqual(n, o) }) {
			out = append(out, n)
		}
	}
	plain := l
	plain.Rule = "none"
	add(plain)
	other := plain.instead()
	for _, n := range []Look{plain.slim(0.74), plain.slim(0.5), other, other.slim(0.74), other.slim(0.5)} {
		add(n)
	}
	double := l.Frame == "double" || l.Frame == "thick"
	if double {
		light := plain
		light.Frame = "hair"
		for _, n := range []Look{light, light.slim(0.5)} {
			add(n)
		}
	}
	for _, low := range []Look{plain.flat(), other.flat()} {
		add(low.slim(0.74))
		add(low.slim(0.5))
		if low = low.slim(0.5); double {
			low.Frame = "hair"
			add(low)
		}
		if low.Frame, low.Margin = "none", min(low.Margin, leastMargin); len(low.Ornaments) > 0 {
			add(low)
			low.Band = Band{Edge: "none"}
			add(low)
		}
	}
	other.Frame = "none"
	bare := other
	bare.Margin, bare.Band = min(bare.Margin, leastMargin), Band{Edge: "none"}
	bare.Ornaments = slices.DeleteFunc(slices.Clone(l.slim(0.5).Ornaments), func(o Ornament) bool { return !o.Own })
	for _, brand := range []string{l.Brand, "none"} {
		other.Brand = brand
		for _, f := range []float64{0.5, 0.4} { // a smaller garland is a thread
			add(other.slim(f))
		}
	}
	add(bare)
	bare.Brand, bare.Ornaments = "none", nil
	add(bare)
	return out
}

// Drawn is how much of the drawing of another look this one keeps, 0 to 1:
// by the sizes of ornaments and band.
func (l Look) Drawn(of Look) float64 {
	sum := func(l Look) (s float64) {
		for _, o := range l.Ornaments {
			s += o.Size
		}
		if l.Band.Edge != "none" {
			s += l.Band.Size
		}
		return s
	}
	if whole := sum(of); whole > 0 {
		return min(1, sum(l)/whole)
	}
	return 1
}

// slim is the look with smaller ornaments, bands and margins.
func (l Look) slim(f float64) Look {
	l.Margin *= (1 + f) / 2
	small := make([]Ornament, len(l.Ornaments))
	for i, o := range l.Ornaments {
		if o.Own {
			o.Size *= (1 + f) / 2
			small[i] = o
			continue
		}
		o.Size, o.Reach = o.Size*f, o.Reach*(1+f)/2 // an arch stays an arch
		small[i] = o
	}
	l.Ornaments = small
	l.Band.Size *= f
	return l
}

// instead is the look with the ornaments and the band that take less room.
func (l Look) instead() Look {
	other := make([]Ornament, len(l.Ornaments))
	for i, o := range l.Ornaments {
		if o.Instead != nil {
			o = *o.Instead
		}
		other[i] = o
	}
	l.Ornaments = other
	if l.Band.Instead != nil {
		l.Band = *l.Band.Instead
	}
	return l
}
