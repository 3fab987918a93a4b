// Package label holds what a label has to say, as blocks with constraints.
// Rule sets write it, designs place it; it has no logic and no layout.
package label

import "jarmark/internal/kit/unit"

// Kind names what a block says.
type Kind string

// The kinds of block. A rule set decides which exist and how they read.
const (
	Brand       Kind = "brand"       // maker's name as a sign, not the legal address
	Identity    Kind = "identity"    // statement of identity / name of the food
	Net         Kind = "net"         // net quantity
	Ingredients Kind = "ingredients" //
	Allergens   Kind = "allergens"   // "Contains", or that there are none
	Advisory    Kind = "advisory"    // voluntary cross-contact words
	Storage     Kind = "storage"
	Date        Kind = "date" // best before, made on
	Lot         Kind = "lot"
	Maker       Kind = "maker"     // name and place of business
	Statement   Kind = "statement" // prescribed home-kitchen sentence
	Fruit       Kind = "fruit"     // "prepared with … g of fruit per 100 g"
	Sugar       Kind = "sugar"     // "total sugar content … g per 100 g"
	Caution     Kind = "caution"   // honey and infants
	Caption     Kind = "caption"   // words beside the QR code
	Season      Kind = "season"    // handwritten: "winter 2026"
	Serve       Kind = "serve"     // serving idea
	Stamp       Kind = "stamp"     // the maker's own words in a seal
	Words       Kind = "words"     // the maker's own words among the facts
	To          Kind = "to"
	From        Kind = "from"
	Message     Kind = "message"
	Price       Kind = "price"
	UnitPrice   Kind = "unit-price"
	Serial      Kind = "serial" // "Jar 07 / 12"
	Seal        Kind = "seal"   // words of a seal strip
	SignWords   Kind = "sign"   // prescribed words of a sign at the point of sale
	Count       Kind = "count"  // case label: how many jars in the case
)

// Measure says on which letter a minimum height is measured.
type Measure int

// The letters laws measure. AnyCase: lower-case o when the text has lower-case
// letters, else capitals (21 CFR 101.7(h)).
const (
	PointSize Measure = iota // Length is the type size itself
	XHeight                  // lower-case x
	LowerO                   // lower-case o
	Capital
	Digit
	AnyCase
)

// Height is a minimum letter height; a zero Length means no minimum.
type Height struct {
	On     Measure
	Length unit.Length
}

// PrintReserve is how much above the law's least height letters are set, in
// thousandths: a printer that shrinks a page to 97 %, as viewers do that fit
// it to the printer's margins, still prints a lawful label. 1/0.97 = 1.031; how
// much printers shrink is common practice, no source.
const PrintReserve = 31

// With adds a reserve, in thousandths of the height, rounded up.
func (h Height) With(reserve int) Height {
	h.Length = (h.Length*unit.Length(1000+reserve) + 999) / 1000
	return h
}

// Zone is where on the package a block must stand.
type Zone int

// Zones. Panel is the principal display panel, Bottom its lowest 30 %, Info
// the information panel.
const (
	Anywhere Zone = iota
	Panel
	Bottom
	Info
)

// Run is a piece of text of one emphasis.
type Run struct {
	Text string
	Bold bool // also the emphasis of allergens in a list
}

// Block is one statement.
type Block struct {
	ID       string // unique in the content: "net", "statement-1"
	Kind     Kind
	Runs     []Run
	Min      Height
	Zone     Zone
	Clear    bool   // clear space around it (21 CFR 101.7(f))
	With     []Kind // must share a field of view with these
	Required bool   // the set of labels on a jar must carry it
	Exact    bool   // prescribed words: never re-case, hyphenate or abridge
	Bold     bool   // the law asks for bold
	Cite     string
	Verified string // "primary", "secondary", "memory"
	Path     string // TOML path it came from
	// OfLargest is the least size in percent of the largest print on the label
	// (21 CFR 101.3(d) as the FDA reads it: half); 0 = no such relation.
	OfLargest int
}

// Text gives the plain words of a block.
func (b Block) Text() string {
	s := ""
	for _, r := range b.Runs {
		s += r.Text
	}
	return s
}

// Why is a name and the ingredients it rests on: "Milk", "chocolate › whey".
type Why struct {
	Name string
	From []string
}

// QR is the code on the label and what it opens.
type QR struct {
	Payload   string
	MinModule unit.Length // smallest module that scans from paper: 0.35 mm
}

// Content is all one jar's labels have to say.
type Content struct {
	Title     string            // display form of the name, first line: "Strawberry"
	Subtitle  string            // second line: "& rhubarb jam"; may be empty
	Parts     map[string]string // words of a name as its maker parts them at soft hyphens; two words, where a line ends between them
	Blocks    []Block
	QR        QR
	Lang      string
	MainFruit string   // pantry key, for colours and ornaments
	Colours   []string // the maker's own choice
	PanelArea float64  // principal display panel, mm²
	JarKey    string
	JarText   string      // "10 oz jar"
	Around    unit.Length // circumference of the jar
	Straight  unit.Length // height of its straight side
	Face      unit.Length // width of one of its flat sides; 0 = it is round
	Foot      unit.Length // circumference at the foot of a tapered side; 0 = it is not tapered
	LidAcross unit.Length // outer diameter of the lid
	Measured  bool        // the maker measured the side of this jar: the table's are typical values

	AllergenNames []string // as the statement names them; empty = none known
	AllergenWhy   []Why    // what each of them rests on
	AllergenDoubt []string // ingredients and parts of which nothing shows what is in them
	NoAllergens   bool     // proven and not contradicted: only then may anything say that there are none
	AllergenWord  string   // "Allergens": heads them on a stall's card where no Allergens block does
	Keep          Keep
}

// Keep is the storage guidance in words, for pages and lists.
type Keep struct{ Sealed, Opened, Unsealed string }

// Find gives the first block of a kind.
func (c *Content) Find(k Kind) (Block, bool) {
	for _, b := range c.Blocks {
		if b.Kind == k {
			return b, true
		}
	}
	return Block{}, false
}

// Piece is a kind of label a jar, case or stall may bear (--kind).
type Piece string

// The pieces.
const (
	Front      Piece = "front"
	InfoLabel  Piece = "info"
	Wrap       Piece = "wrap"
	Lid        Piece = "lid"
	Tag        Piece = "tag"
	SealStrip  Piece = "strip"
	BagCard    Piece = "bag" // says all that a jar's labels say, over the bag it is sold in
	CaseLabel  Piece = "case"
	ShelfCard  Piece = "shelf"
	AllergCard Piece = "allergens"
	Sign       Piece = "sign" // stands at the point of sale
)

// Pieces lists every piece in the order users see.
var Pieces = []Piece{Front, InfoLabel, Wrap, Lid, Tag, SealStrip, BagCard, CaseLabel, ShelfCard, AllergCard, Sign}
