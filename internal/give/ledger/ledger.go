// Package ledger is the book of where jars went: one row for each time jars
// were promised, given, sold, came home, were eaten, broken or recalled. It is
// plain CSV beside kitchen.toml that a spreadsheet opens. Rows are added at the
// end; the maker's own rows, columns and notes stay as they are. The package
// reads and sums; it writes no file.
package ledger

import (
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kit/csvfile"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// FileName is the ledger's name beside kitchen.toml.
const FileName = "ledger.csv"

// Why says what happened to the jars of a row.
type Why string

// What can happen to jars.
const (
	Promised Why = "promised"  // to a person or a market; still at home
	Given    Why = "given"     // left for good
	Sold     Why = "sold"      // left for good, for the price a jar
	CameHome Why = "came home" // of what was promised, given or sold to the same name
	Eaten    Why = "eaten"     // by the maker's own house
	Broken   Why = "broken"    // or spoilt: thrown away
	Recalled Why = "recalled"  // taken back and thrown away
)

// Whys lists the words of the column "why" in the order of a jar's life.
func Whys() []Why { return []Why{Promised, Given, Sold, CameHome, Eaten, Broken, Recalled} }

// Entry is one row. An empty Jar is the lot's only size; Who is a person, or a
// market's name; From says where the row came from: "hand", "list friends.csv",
// "market".
type Entry struct {
	Date  unit.Date
	Lot   string
	Jar   string
	Count int
	Why   Why
	Who   string
	Price unit.Money // a jar; zero = not said
	From  string
	File  string
	Pos   diag.Pos // zero for rows that stand in a batch file
	Path  string   // TOML path of those
	Of    int      // which of what was made, from 1, where that is known; 0: by Lot and Jar
}

const maxRows = 200_000

// MaxJars is the largest count of one row.
const MaxJars = 100_000

// Header is the first line of a new ledger, HeaderLine with its end.
const (
	Header     = "date,lot,jar,count,why,who,price,from"
	HeaderLine = Header + "\n"
)

var form = csvfile.Form{
	What: "ledger",
	Columns: []csvfile.Column{
		{Name: "date", Also: []string{"day", "datum", "tag", "jour"}, What: "the day", Unit: "date", Example: "2026-12-05"},
		{Name: "lot", Also: []string{"los", "charge", "lot no", "lot number", "numéro de lot"}, Needed: true, What: "the lot", Example: "L26248-PA"},
		{Name: "jar", Also: []string{"size", "jar size", "glas", "größe", "pot", "taille"}, What: "jar size; the lot's only one when left out", Example: "8 fl oz"},
		{Name: "count", Also: []string{"jars", "how many", "quantity", "qty", "anzahl", "stück", "gläser", "nombre", "quantité", "pots"}, Needed: true, What: "how many", Unit: "jars", Example: "2"},
		{Name: "why", Also: []string{"what", "grund", "was", "motif", "raison"}, Needed: true, What: "promised, given, sold, came home, eaten, broken or recalled", Example: "sold"},
		{Name: "who", Also: []string{"to", "market", "name", "wer", "an", "markt", "qui", "marché"}, What: "the person, or the market", Example: "Saturday market"},
		{Name: "price", Also: []string{"price a jar", "preis", "prix"}, What: "price of a jar", Unit: "money", Example: "9.00"},
		{Name: "from", Also: []string{"note", "source", "herkunft", "notiz", "origine"}, What: "where the row came from; your own words stay", Example: "hand"},
	},
	Begin: Header, MaxRows: maxRows,
}

// Columns are the columns of a ledger.
func Columns() []csvfile.Column { return form.Columns }

// Ledger is a file as read, and its bytes to write on.
type Ledger struct {
	File    string
	Entries []Entry
	data    []byte
	table   *csvfile.Table
}

// Data is the file as it was read; nil when there was none.
func (l *Ledger) Data() []byte { return l.data }

// Read reads a ledger; nil data is a kitchen that has none yet. currency is the
// kitchen's; american says that 12/5/2026 is the fifth of December, where no
// other day of the file shows its custom. A row that cannot be counted is an
// error: a sum that leaves it out would be false.
func Read(file string, data []byte, currency string, american bool) (*Ledger, diag.List) {
	l := &Ledger{File: file, data: data}
	if csvfile.Blank(data) {
		return l, nil
	}
	t, found := csvfile.Read(file, data, form)
	if t == nil {
		return l, found
	}
	l.table = t
	var days []string
	for _, row := range t.Rows {
		days = append(days, row.Cell("date").Text)
	}
	american = unit.MonthFirst(days, american)
	swapped := false // it is told how such a day is read
	for _, row := range t.Rows {
		r := rowReader{file: file, row: row, currency: currency, american: american}
		e := r.entry()
		if s := r.text("date"); !swapped && unit.Swappable(s) && !e.Date.IsZero() {
			swapped = true
			d := found.Notef("day-read", file, "", "%s is read as %s, and so are all days here that could be read either way", s, e.Date)
			d.Pos = row.Cell("date").Pos
			d.Hinted("write year-month-day where it is another day")
		}
		found = append(found, r.found...)
		if !r.found.HasErrors() {
			l.Entries = append(l.Entries, e)
		}
	}
	return l, found
}

type rowReader struct {
	file, currency string
	american       bool
	row            csvfile.Row
	found          diag.List
}

func (r *rowReader) errorAt(column, code, format string, args ...any) *diag.Diagnostic {
	d := r.found.Errorf(code, r.file, "", format, args...)
	d.Pos = r.row.Cell(column).Pos
	return d
}

func (r *rowReader) text(column string) string { return r.row.Cell(column).Text }

func (r *rowReader) entry() Entry {
	e := Entry{Lot: r.text("lot"), Jar: r.text("jar"), Who: r.text("who"), From: r.text("from"), File: r.file, Pos: r.row.Pos}
	var err error
	if s := r.text("date"); s != "" {
		if e.Date, err = unit.ReadDay(s, r.american); err != nil {
			r.errorAt("date", "bad-date", "%v", err).Hinted("write year-month-day, like 2026-06-14")
		}
	}
	if e.Lot == "" {
		r.errorAt("lot", "missing-lot", "this row names no lot").Hinted("copy the lot from the jar's label")
	}
	if s := r.text("price"); s != "" {
		if e.Price, err = unit.ParseMoney(s, r.currency); err != nil {
			r.errorAt("price", "bad-price", "%v", err).Hinted("write the price of one jar, like 9.50")
		}
	}
	if n, err := strconv.Atoi(whole(r.text("count"))); err == nil && n >= 0 && n <= MaxJars {
		e.Count = n
	} else {
		r.errorAt("count", "bad-count", "%q is not a number of jars", r.text("count")).Hinted("write a whole number; jars that come back are a row of their own with why = came home")
	}
	e.Why = r.why()
	return e
}

// whole takes the decimals off that a spreadsheet adds: "2.0", "2,00".
func whole(s string) string {
	if i := strings.IndexAny(s, ".,"); i > 0 && strings.Trim(s[i+1:], "0") == "" {
		return s[:i]
	}
	return s
}

func (r *rowReader) why() Why {
	w, hint, ok := ReadWhy(r.text("why"))
	if !ok {
		r.errorAt("why", "unknown-why", "%q is not what happens to jars", r.text("why")).Hinted(hint)
	}
	return w
}

// also are other words for what happens to jars, in the languages of labels.
var also = map[Why][]string{
	Promised: {"promise", "reserved", "versprochen", "zugesagt", "promis", "réservé"},
	Given:    {"gift", "gave", "given away", "verschenkt", "geschenk", "geschenkt", "offert", "donné", "cadeau"},
	Sold:     {"sale", "sell", "verkauft", "verkauf", "vendu", "vente"},
	CameHome: {"returned", "back", "came back", "zurück", "zurückgekommen", "rapporté", "revenu", "retour"},
	Eaten:    {"ate", "gegessen", "eigenverbrauch", "mangé", "consommé"},
	Broken:   {"broke", "spoilt", "spoiled", "lost", "zerbrochen", "kaputt", "verdorben", "cassé", "perdu"},
	Recalled: {"recall", "zurückgerufen", "rückruf", "rappelé", "rappel"},
}

// ReadWhy reads the word of the column "why", "came-home" and "Came_home" too;
// hint says what to write instead.
func ReadWhy(text string) (w Why, hint string, ok bool) {
	word := strings.Join(strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return c == ' ' || c == '-' || c == '_' }), " ")
	var words []string
	for _, w := range Whys() {
		if word == string(w) || slices.Contains(also[w], word) {
			return w, "", true
		}
		words = append(words, string(w))
	}
	if near, ok := diag.DidYouMean(word, words); ok {
		return "", "did you mean " + near + "?", false
	}
	return "", "write one of: " + strings.Join(words, ", "), false
}
