// Package press turns the label contents of a batch into print runs: how many
// labels, on which paper, in which design, set, looked at a second time, laid on
// sheets and written as files. It knows no batch file and no recipe: an Order
// says all that is wanted.
//
//	Order -> Stack (labels of one piece for one sheet) -> Run (a document)
package press

import (
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
	"slices"
)

// DefaultDesign is used when neither the files nor the maker choose one.
const DefaultDesign = "orchard"

// MaxLabels bounds one print run, so that a slip of the keyboard cannot fill
// the memory: far more than a day's work of any printer.
const MaxLabels = 100_000

// Press is what every order shares; safe for concurrent use.
type Press struct {
	Designs *design.Catalogue
	Sheets  *sheet.Catalogue
	Faces   *face.Set

	Own map[string]page.Face // the maker's own typefaces, by file name in small letters

	codes    *compose.Codes    // each payload is encoded once
	drawings *compose.Drawings // each ornament is drawn once
	kept     *kept             // what was composed last is not composed again
}

// Picture is the maker's own picture on labels, Typefaces the maker's own faces.
type (
	Picture   = compose.Picture
	Typefaces = design.Typefaces
)

// Order is what to print of one batch.
type Order struct {
	File   string // the batch file, for findings
	Name   string // of the batch
	Lot    string
	Maker  string
	Jars   []Jars
	Pieces []label.Piece
	Choice Choice
	Paper  string // "letter", "a4": as sheet ids begin
	PerBox int    // jars in a box

	Serials, InkSaver bool
	Numbers           []int // print only the jars of these numbers; none: all
	Paired            bool  // a front that would be text alone has an information label beside it
	Tagged            bool  // tags go to people: one a gift, none for jars nobody gets
	Allergens         bool  // there are some, so that a tag says which
	Copies            int   // 0: one label a sealed jar
	Skip              int   // cells gone on the first sheet; 0: as PartSheets says
	CutMarks          bool
	Trimmed           bool // each different label a page of its own, with bleed
	Correction        Correction
	PartSheets        map[string]int // cells gone, by sheet id
	Created           int64          // Unix seconds in documents
	Picture           *Picture       // the maker's own; nil: none
	Type              Typefaces
}

// Jars are the jars of one size.
type Jars struct {
	Content *label.Content // nil: no label can be made
	Sealed  int
	Sheet   string // the batch file's for this size; empty: as Choice says
	At      string // TOML path of Sheet
	Tags    []Tag  // who gets them
}

// Choice is the design and sheet asked for. What is chosen for this run alone
// stands over what the files say.
type Choice struct {
	Design, Sheet, Size           string // for this run
	OwnDesign, OwnSheet, OwnPiece string // the batch file's
	OwnSize                       string // "80 x 50 mm" on plain paper
}

// Correction is the measured correction of a printer; see sheet.Options.
type Correction struct {
	OffsetX, OffsetY unit.Length
	ScaleX, ScaleY   float64
}

// Tag is the words of one hang tag and where they are written.
type Tag struct {
	To, From, Message, Design string
	File, Path                string
	Pos                       diag.Pos
}

// Words is the tag without the place it is written at.
func (t Tag) Words() Tag {
	t.File, t.Path, t.Pos = "", "", diag.Pos{}
	return t
}

// options are the layout options every piece of an order is set with.
func (w *work) options() compose.Options {
	return compose.Options{InkSaver: w.o.InkSaver, Alone: w.o.frontAlone(), Codes: w.codes, Drawings: w.drawings, Picture: w.o.Picture}
}

// frontAlone: a front label without an info label must say everything.
func (o *Order) frontAlone() bool {
	return !slices.ContainsFunc(o.Pieces, func(p label.Piece) bool { return p == label.InfoLabel || p == label.Wrap })
}
