// Package csvfile reads the tables makers keep in a spreadsheet: CSV with a
// header (RFC 4180), separated by commas, semicolons or tabs, with any line
// ends, where every cell knows its line and column. It knows no column by
// itself and no jam.
package csvfile

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kit/diag"
)

// Form says which table is read and what its columns are called.
type Form struct {
	What    string // "gift list", as messages name it
	Columns []Column
	Begin   string // header line a new file begins with
	MaxRows int
}

// Column is one column: its name, other words that may head it, in lower case,
// and what it is for. A column that is needed must stand in the header.
type Column struct {
	Name                string
	Also                []string
	Needed              bool
	What, Unit, Example string // Unit and Example may be empty
}

// named is the column a header word means, "" for none.
func (f Form) named(word string) string {
	for _, c := range f.Columns {
		if c.Name == word || slices.Contains(c.Also, word) {
			return c.Name
		}
	}
	return ""
}

// words are all that may head a column, each column's name first; names are the
// names alone.
func (f Form) words() (all, names []string) {
	for _, c := range f.Columns {
		all = append(append(all, c.Name), c.Also...)
		names = append(names, c.Name)
	}
	return all, names
}

// Cell is one field, blanks around it taken off.
type Cell struct {
	Text string
	Pos  diag.Pos
}

// Row is one line of the table: its cells by column. A column that the row
// leaves out is an empty cell at the row's start.
type Row struct {
	Pos   diag.Pos
	cells map[string]Cell
}

// Cell gives the cell of a column.
func (r Row) Cell(column string) Cell {
	if c, ok := r.cells[column]; ok {
		return c
	}
	return Cell{Pos: r.Pos}
}

// Table is a file as read. Head holds the column of each field of the header,
// empty where the column is not ours.
type Table struct {
	File  string
	Comma rune
	Head  []string
	Rows  []Row
}

// Read reads a file. Rows with a fault are left out and told; a fault of the
// whole file leaves no table.
func Read(file string, data []byte, f Form) (*Table, diag.List) {
	r := reader{form: f, t: &Table{File: file}}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if !r.encoded(data) {
		return nil, r.found
	}
	data = lineEnds(data)
	r.lines = strings.Split(string(data), "\n")
	r.read(data)
	if r.t.Head == nil {
		if len(r.found) == 0 {
			r.found.Errorf("empty-list", file, "", "the %s is empty", f.What).Hinted("begin with the header line " + f.Begin)
		}
		return nil, r.found
	}
	return r.t, r.found
}

// Blank reports whether a file says nothing at all: blanks, line ends, byte
// order marks, and the separators and quotes of empty fields, as a spreadsheet
// saves a sheet without words.
func Blank(data []byte) bool {
	return strings.IndexFunc(string(data), func(c rune) bool { return !unicode.IsSpace(c) && !strings.ContainsRune("\ufeff,;\"", c) }) < 0
}

// lineEnds makes CR and CR LF line feeds.
func lineEnds(data []byte) []byte {
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	return bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
}

type reader struct {
	form  Form
	t     *Table
	lines []string
	found diag.List
}

func (r *reader) encoded(data []byte) bool {
	if utf8.Valid(data) && bytes.IndexByte(data, 0) < 0 {
		return true
	}
	r.found.Errorf("bad-encoding", r.t.File, "", "the %s is not UTF-8 text", r.form.What).Hinted("save it from the spreadsheet as CSV UTF-8")
	return false
}

func (r *reader) read(data []byte) {
	c := csv.NewReader(bytes.NewReader(data))
	r.t.Comma = Separator(data)
	c.Comma, c.FieldsPerRecord = r.t.Comma, -1
	for {
		fields, err := c.Read()
		if err == io.EOF {
			return
		}
		if err != nil {
			r.broken(err)
			return
		}
		cells := make([]Cell, len(fields))
		blank := true
		for i, text := range fields {
			cells[i] = Cell{strings.TrimSpace(text), r.pos(c.FieldPos(i))}
			blank = blank && cells[i].Text == ""
		}
		switch {
		case blank:
		case r.t.Head == nil:
			if !r.header(cells) {
				return
			}
		case len(r.t.Rows) >= r.form.MaxRows:
			r.errorAt(cells[0].Pos, "too-long", "the %s is longer than %d rows", r.form.What, r.form.MaxRows)
			return
		default:
			r.row(cells)
		}
	}
}

// Separator is the sign that stands most often in the first line outside
// quotes: a comma, a semicolon (as spreadsheets of many countries write) or
// a tab.
func Separator(data []byte) rune {
	n := map[rune]int{}
	quoted := false
	for _, c := range string(data) {
		if c == '"' {
			quoted = !quoted
		}
		if quoted {
			continue
		}
		if c == '\n' && len(n) > 0 {
			break
		}
		if c == ',' || c == ';' || c == '\t' {
			n[c]++
		}
	}
	best := ','
	for _, c := range []rune{';', '\t'} {
		if n[c] > n[best] {
			best = c
		}
	}
	return best
}

// pos turns the reader's byte column into characters.
func (r *reader) pos(line, col int) diag.Pos {
	if line < 1 || line > len(r.lines) {
		return diag.Pos{Line: max(line, 1), Column: 1}
	}
	text := r.lines[line-1]
	return diag.Pos{Line: line, Column: utf8.RuneCountInString(text[:min(max(col-1, 0), len(text))]) + 1}
}

func (r *reader) errorAt(p diag.Pos, code, format string, args ...any) *diag.Diagnostic {
	d := r.found.Errorf(code, r.t.File, "", format, args...)
	d.Pos = p
	return d
}

func (r *reader) broken(err error) {
	var pe *csv.ParseError
	if !errors.As(err, &pe) {
		r.found.Errorf("bad-csv", r.t.File, "", "the %s cannot be read: %v", r.form.What, err)
		return
	}
	msg, at := "the quotes of this field are not closed", r.opening(pe.StartLine)
	if errors.Is(pe.Err, csv.ErrBareQuote) {
		msg, at = `a " stands inside a field without quotes`, r.pos(pe.Line, pe.Column)
	}
	r.errorAt(at, "bad-csv", "%s", msg).Hinted(`put the field in quotes and double the quotes inside: "say ""hi"""`).Cited("RFC 4180 section 2")
}

// opening is the place of the quote on a line that no other closes.
func (r *reader) opening(line int) diag.Pos {
	p := r.pos(line, 1)
	if line < 1 || line > len(r.lines) {
		return p
	}
	open := false
	for i, c := range r.lines[line-1] {
		if c == '"' {
			if open = !open; open {
				p = r.pos(line, i+1)
			}
		}
	}
	return p
}

// headWord is a heading as people mean it: "Which jam?" is "which jam".
func headWord(s string) string {
	return strings.ToLower(strings.Join(strings.FieldsFunc(s, func(c rune) bool { return strings.ContainsRune(" _-?!:.*#", c) || unicode.IsSpace(c) }), " "))
}

// header reads the first line.
func (r *reader) header(cells []Cell) bool {
	words, names := r.form.words()
	seen, exact := map[string]bool{}, map[string]bool{}
	for _, c := range cells {
		exact[headWord(c.Text)] = true
	}
	for _, c := range cells {
		word := headWord(c.Text)
		key := r.form.named(word)
		if key != word && (exact[key] || seen[key]) {
			key = "" // another word for a column that stands under its own name is the maker's own column
		}
		r.t.Head = append(r.t.Head, key)
		switch {
		case c.Text == "":
		case key == "":
			d := r.found.Warnf("unknown-column", r.t.File, "", "the column %q is not used", c.Text)
			d.Pos, d.Hint = c.Pos, "columns: "+strings.Join(names, ", ")
			if own := r.form.named(word); own != "" {
				d.Hint = "the column " + own + " stands here already"
			} else if near, ok := diag.DidYouMean(word, words); ok {
				d.Hint = "did you mean " + near + "?"
			}
		case seen[key]:
			r.errorAt(c.Pos, "twice", "the column %q stands twice", key).Hinted("keep one of them")
		}
		seen[key] = true
	}
	for _, c := range r.form.Columns {
		if c.Needed && !seen[c.Name] {
			r.errorAt(cells[0].Pos, "no-header", "the first line is not a header with the column %q", c.Name).Hinted("begin with the line " + r.form.Begin)
		}
	}
	return !r.found.HasErrors()
}

// row takes one line into the table.
func (r *reader) row(cells []Cell) {
	row := Row{Pos: cells[0].Pos, cells: map[string]Cell{}}
	for i, c := range cells {
		switch {
		case i < len(r.t.Head):
			if key := r.t.Head[i]; key != "" {
				row.cells[key] = c
			}
		case c.Text != "":
			r.errorAt(c.Pos, "extra-field", "this row has more fields than the header").Hinted("put words with commas in quotes")
			return
		}
	}
	r.t.Rows = append(r.t.Rows, row)
}
