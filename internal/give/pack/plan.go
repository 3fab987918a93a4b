// Package pack plans where the jars go: gifts to people, crates to markets,
// the rest to the shelf, unsealed jars to the refrigerator. It also answers
// who has the jars of a lot. Plans are values; Text, CSV and Doc show them.
package pack

import (
	"jarmark/internal/give/ledger"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Our own defaults (common practice, no source).
const (
	DefaultMaxBox = 15 * unit.Kilogram // what one person lifts without strain
	maxJars       = 100_000            // of one size, promise or run of tags
)

// Options filters a plan and adds what the batch files do not say.
type Options struct {
	Event   string            // only this event; its name as in the files, any case
	Date    unit.Date         // only markets of this day
	Gifts   bool              // only the gifts
	List    []Entry           // a gift list kept apart from the batches
	Designs map[string]string // occasion -> design; nil = Designs()
	Units   string            // "us" or "metric"; empty = the first kitchen's
	MaxBox  unit.Mass         // 0 = DefaultMaxBox
	Pantry  *pantry.Pantry    // nil = the built-in table of jars
	Today   unit.Date         // the day of packing; zero: no date is over
	Book    []ledger.Entry    // the kitchen's ledger, without what List has written in it before
	From    string            // where the promises of List come from, as the ledger says it
	Unread  []string          // what could not be read, and why: it may hold jars too
}

// Plan is a packing list. Every counted jar is in exactly one place: with a
// stop (less what came home again), left over, or in the refrigerator.
type Plan struct {
	in table.Words // the language it is read in; the zero value is English

	Maker    string
	Units    string
	Filter   string // event, "gifts" or empty
	Stops    []Stop // gifts in file order, then markets by date
	Done     []Stop // markets of which it is noted what came home
	Stock    []Stock
	Fridge   []FridgeItem
	Supplies []Supply
	Tags     []Tag // one a gift jar, in the order of Stops
	Jars     int   // of Stops
	Boxes    int
	Net      unit.Mass
	Gross    unit.Mass // jars with lids; boxes not counted
	GrossHow cook.How
	Value    []unit.Money // stock left, by currency; jars without a price not counted
	Unpriced int          // jars left without a price

	Balances []ledger.Balance // one a row of Stock: all that the files and the ledger say
	Rows     []ledger.Entry   // all rows that were summed: the ledger, then tables and lists
	Faults   diag.List        // what cannot be: more jars gone than made, more back than went
	Promises []ledger.Entry   // what List promises, as rows of the ledger
	told     []table.Told
	permit   string
	today    unit.Date
	float    unit.Money // change taken to a market
}

// Stock is one jar size of one batch and where its jars went.
type Stock struct {
	Lot, Name  string
	Jar        pantry.Jar
	JarText    string // shortest name that tells the sizes of the plan apart
	Made       unit.Date
	BestBefore unit.Date
	UseBy      bool
	Cold       bool // must stay refrigerated or frozen
	Count      int  // filled
	Sealed     int
	Unsealed   int // still there
	CountHow   cook.How
	Checked    bool // seals were checked
	Net        unit.Mass
	NetHow     cook.How
	Declared   unit.Mass
	Fluid      unit.Volume // declared instead, where the food is sold by fluid measure
	at         place.Place // whose rules its card follows
	DeclText   string
	Gross      unit.Mass // one jar with lid
	GrossHow   cook.How
	Price      unit.Money
	Promised   int // gifts and markets still to come
	Sold       int // at markets noted as done, or by the ledger
	Given      int // by the ledger
	Lost       int // eaten, broken or recalled, by the ledger
	Left       int
	sheet      string
	batch      int
	row        int // place in the plan's order
}

// Result is the place of the stock's batch among the results the plan was built
// from.
func (s Stock) Result() int { return s.batch }

// StopType says what a stop is.
type StopType string

// The kinds of stop.
const (
	Gift   StopType = "gift"
	Market StopType = "market"
)

// Stop is one recipient or one stall.
type Stop struct {
	Type     StopType
	To       string // recipient or event
	Date     unit.Date
	Wishes   []Wish // of a gift: one for each [[gift]] or list row
	Lines    []Line // first expiry first
	Wanted   int    // jars promised
	Jars     int    // jars there are
	Net      unit.Mass
	Gross    unit.Mass
	GrossHow cook.How
	Boxes    []Box
	CameHome int // of a market done; -1 = not said
	Value    []unit.Money
}

// Short is how many promised jars there are not.
func (s Stop) Short() int { return max(0, s.Wanted-s.Jars) }

// Wish is what goes with a gift.
type Wish struct {
	From, Message, Occasion, Design string
	Jars                            int
}

// Line is some jars of one size and lot.
type Line struct {
	Lot, Name  string
	Jar        pantry.Jar
	JarText    string
	Count      int
	CameHome   int
	BestBefore unit.Date
	UseBy      bool
	Cold       bool
	Net, Gross unit.Mass // of all jars of the line
	Price      unit.Money
	Contains   string // allergens, "almond, walnut"; empty = none is known
	stock      int
}

// FridgeItem is jars not to be given, sold or stored at room temperature.
type FridgeItem struct {
	Lot, Name string
	JarText   string
	Count     int       // unsealed jars; 0 for a part jar alone
	Part      unit.Mass // content of a last partial jar
	Days      int       // eat within, from the day made; 0 = not known
	By        unit.Date
}

// Tag is one hang tag.
type Tag struct {
	To, From, Message, Occasion, Design string
	Lot, JarKey                         string
	File, Path                          string // where the gift is written
	Pos                                 diag.Pos
}

// Words is the tag without the place it is written at.
func (t Tag) Words() Tag {
	t.File, t.Path, t.Pos = "", "", diag.Pos{}
	return t
}

// Supply is something from the cupboard. Have is -1 when not said. Ribbon is
// a length, all else a count.
type Supply struct {
	What       string
	Need, Have int
	NeedLength unit.Length
	HaveLength unit.Length // -1 = not said
}

// Missing reports whether the cupboard is known to hold too little.
func (s Supply) Missing() bool {
	return s.Have >= 0 && s.Need > s.Have || s.NeedLength > 0 && s.HaveLength >= 0 && s.NeedLength > s.HaveLength
}
