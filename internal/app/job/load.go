package job

import (
	"cmp"
	"jarmark/internal/draw/press"
	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Doc is a file as read: its name for findings, and its bytes.
type Doc struct {
	Name string
	Data []byte
}

// Input is one batch and the kitchen it was cooked in (Kitchen.Data nil when
// there is none). Ledger is the kitchen's; without Data there is none yet.
type Input struct{ Kitchen, Batch, Ledger Doc }

// Choices are what the command line or the page may choose over the files.
type Choices struct {
	Place    string
	Today    unit.Date // the day the rules are read on
	Gift     bool
	Design   string
	Sheet    string
	Pieces   []label.Piece
	Size     string // "80 x 50 mm" on plain paper
	Skip     int
	Gone     map[string]int // by sheet id, over the kitchen's part-used sheets: labels gone from the first
	Copies   int            // 0: one label a sealed jar
	Serials  bool
	Numbers  []int  // only the jars of these numbers; they are printed
	Jar      string // only jars of this size
	InkSaver bool
	CutMarks bool
	Whole    bool                  // one PDF however long
	CutLines bool                  // in PDF and SVG: a layer of lines to cut along
	Profile  *Profile              // of a print shop's press; nil: not known
	Trimmed  bool                  // for a print shop: each different label a page of its own
	DPI      float64               // of PNG; 0: press.DefaultDPI
	Created  int64                 // Unix seconds in documents; 0: noon of the day it was made
	List     []pack.Entry          // a gift list kept apart from the batches
	Past     []Input               // other batches of the kitchen: weighed pots tell its habit
	Progress func(done, total int) // may be nil

	tags []pack.Tag // who gets a tag, once that is settled
	dry  bool       // findings alone: nothing is drawn
}

// Batch is one loaded batch: all its stages' values and findings.
type Batch struct {
	Input    Input
	Kitchen  *batch.Kitchen
	Notes    *batch.Batch
	Cooked   *cook.Result
	Set      *place.Set
	Contents []*label.Content // one a jar size, as Cooked.Jars
	Pantry   *pantry.Pantry
	Findings diag.List
	Ledger   *ledger.Ledger // shared by the batches of a kitchen; nil: not read
	Booked   diag.List      // findings about the ledger's rows

	today   unit.Date // as chosen
	press   *press.Press
	picture *press.Picture  // the maker's own; nil: none
	faces   press.Typefaces // the maker's own
}

// OK reports whether nothing blocks printing.
func (b *Batch) OK() bool { return !b.Findings.HasErrors() }

// Load runs the stages that need no layout. A Batch is always returned; a
// stage that cannot go on leaves later values nil and a finding.
func (e *Env) Load(in Input, c Choices) *Batch {
	b := e.of(in).load(in, c)
	readLedgers([]*Batch{b})
	return b
}

// load reads, cooks and declares.
func (e *Env) load(in Input, c Choices) *Batch {
	b := e.cooked(in, c)
	if b.Cooked != nil {
		b.add(b.past(c))
		b.declare(e, c)
	}
	return b
}

// cooked is a batch as far as the pot: no labels, no rules.
func (e *Env) cooked(in Input, c Choices) *Batch {
	b := &Batch{Input: in, Pantry: e.Pantry, today: c.Today, press: e.Press}
	kitchenName := cmp.Or(in.Kitchen.Name, "kitchen.toml")
	var l diag.List
	b.Kitchen, l = batch.ParseKitchen(kitchenName, in.Kitchen.Data, e.Book.Find)
	b.add(l)
	b.add(e.ownLook(b))
	b.add(b.soldAt(e, c))
	b.Notes, l = batch.Parse(in.Batch.Name, in.Batch.Data, b.Kitchen)
	b.add(l)
	b.add(b.surroundings(c))
	if b.Notes == nil || b.Kitchen == nil {
		return b
	}
	if l = tooMuch(b.Notes); len(l) > 0 {
		b.add(l)
		return b
	}
	b.Pantry = e.Pantry.Speaking(b.Kitchen.Place.Language(b.Kitchen.Language)).With(b.Kitchen.Ingredients, b.Kitchen.Jars)
	b.Cooked, l = cook.Compute(b.Notes, b.Kitchen, b.Pantry)
	b.add(l)
	return b
}

// declare reads the rules of the place for every jar size.
func (b *Batch) declare(e *Env, c Choices) {
	if b.Kitchen.PlaceUnknown {
		return // no other place's rules stand in for it
	}
	var l diag.List
	b.Set, l = e.Book.Place(b.Kitchen.Place.ID, b.labelDay(c))
	b.add(l)
	if b.Set == nil {
		return
	}
	how := draft.Options{Gift: c.Gift, Broken: b.broken(), Today: c.Today}
	for _, j := range b.Cooked.Jars {
		content, l := law.Declare(b.Cooked, j, b.Set, how)
		b.add(l)
		b.Contents = append(b.Contents, content)
	}
}

// soldAt lets the place chosen on the command line stand for the kitchen's.
func (b *Batch) soldAt(e *Env, c Choices) diag.List {
	if c.Place == "" || b.Kitchen == nil {
		return nil
	}
	at, l := e.PlaceOf(c.Place)
	b.Kitchen.Place, b.Kitchen.PlaceUnknown = at, l.HasErrors()
	return l
}

// labelDay is the day the labels are made on: today, but never before the
// batch itself.
func (b *Batch) labelDay(c Choices) unit.Date {
	if c.Today.IsZero() || c.Today.Before(b.Notes.Made) {
		return b.Notes.Made
	}
	return c.Today
}

// add keeps a finding once, with its place in the file it is about.
func (b *Batch) add(l diag.List) {
	for _, d := range b.locate(l.Brief().Capped(maxFindings)) {
		if !b.seen(d) {
			b.Findings = append(b.Findings, d)
		}
	}
}

func (b *Batch) seen(d diag.Diagnostic) bool {
	for _, f := range b.Findings {
		if f == d {
			return true
		}
	}
	return false
}
