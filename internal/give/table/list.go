// Package table is the lists of the house: packing, pick, stall, stock, recall
// and season. A list is one value, parts with rows, and is shown as text for a
// terminal of 80 columns, as CSV for a spreadsheet, and as pages to print, in
// the language of the kitchen.
package table

// Form is a way a list is shown; several may be added up.
type Form uint8

// The forms.
const (
	OnText Form = 1 << iota
	OnSheet
	OnPaper
	OnScreen
)

// List is what a list says, whatever it is shown as.
type List struct {
	In      Words
	Head    string // first line of the text, and on top of every page after the first
	Title   string // on the first page
	Maker   string
	Sum     string // under the title
	Columns []string
	Parts   []Part
	Told    []Told // texts of the maker's in it
	small   bool   // all headings are
	Space   int    // ruled lines for notes at the end of the pages
}

// Part is a heading with its rows. Without a title it is words between the
// others.
type Part struct {
	Title, Sum string
	Columns    []string // headings: of the names, then of the rows' Figures
	Flush      bool     // in the text no room is left for boxes to tick
	Compact    bool     // on paper set small
	Beside     bool     // on paper the title stands left of the rows, small
	Barred     bool     // on paper each row of figures has its Bars beside the name
	Legend     []string // of those bars
	Rows       []Row
	Not        Form // where it is left out
}

// RowType says what a row is.
type RowType string

// The kinds of row.
const (
	Item   RowType = ""       // amount, what, note
	Say    RowType = "say"    // a paragraph
	Aside  RowType = "aside"  // words under an item: a wish, a caution
	Alarm  RowType = "alarm"  // what must not be overlooked
	Crate  RowType = "crate"  // what is in one box: What, Under
	Step   RowType = "step"   // a thing to do, with a box to tick
	Write  RowType = "write"  // What, and Lines ruled lines to write on
	Towers RowType = "towers" // a chart: bars side by side
)

// Row is one line of a part.
type Row struct {
	Type    RowType
	Tick    bool   // a box to tick stands before it
	Amount  string // "12 × 8 fl oz"
	Count   string // on paper large, where Size stands beside it
	Size    string
	What    string
	Note    string   // at the right; on paper in its place Under, where it is said
	Under   string   // on paper a line below
	Fields  []string // on paper to fill in by hand, from the right
	Figures []string // under the part's Columns
	Strong  bool     // a sum
	Lines   int
	Legend  []string // names of the bars' Parts, in their order
	Group   int      // so many bars of a chart stand together
	Bars    []Bar
	Cells   Cells // in the CSV by column; nil: none
	Not     Form
}

// Bar is one bar of a chart: its parts add up to its length.
type Bar struct {
	Name  string
	Parts []float64
	Note  string
}

// Cells are the values of a CSV row by column.
type Cells map[string]string

// on reports whether a part or row is shown in a form.
func on(not, f Form) bool { return not&f == 0 }

// rows are the rows that a form shows.
func (p Part) rows(f Form) (out []Row) {
	for _, r := range p.Rows {
		if on(p.Not|r.Not, f) {
			out = append(out, r)
		}
	}
	return out
}

// Screen is what a page on a screen shows.
func (l *List) Screen() (out []Part) {
	for _, p := range l.Parts {
		if p.Rows = p.rows(OnScreen); len(p.Rows) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// Add puts a part at the end unless it has no rows.
func (l *List) Add(p Part) {
	if len(p.Rows) > 0 {
		l.Parts = append(l.Parts, p)
	}
}
