package pack

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"

	"jarmark/internal/kit/diag"
)

// Entry is one row of a gift list.
type Entry struct {
	To, From, Message, Jar, Occasion, Design, Lot string
	Jars                                          int // at least 1
	File, Path                                    string
	Pos                                           diag.Pos // of the row
}

// columns of a gift list; header names are compared without case. Aliases are
// words people write.
var columns = map[string]string{
	"to": "to", "name": "to", "recipient": "to", "for": "to",
	"from": "from", "message": "message", "note": "message",
	"jars": "jars", "count": "jars", "how many": "jars",
	"jar": "jar", "size": "jar", "occasion": "occasion", "design": "design", "lot": "lot",
}

// ReadList reads a gift list. A name that ends in .toml is a TOML file of
// [[gift]] tables, all else CSV with the header
// to,from,message,jars,jar,occasion (also design, lot; any order, "to" alone
// suffices), separated by commas, semicolons or tabs, in UTF-8 with or
// without a byte order mark.
func ReadList(file string, data []byte) ([]Entry, diag.List) {
	if strings.HasSuffix(strings.ToLower(file), ".toml") {
		return readTOML(file, data)
	}
	return readCSV(file, data)
}

func readCSV(file string, data []byte) ([]Entry, diag.List) {
	r := listReader{file: file}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if !r.text(data) {
		return nil, r.found
	}
	r.lines = strings.Split(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n")
	c := csv.NewReader(bytes.NewReader(data))
	c.Comma, c.FieldsPerRecord = separator(data), -1
	for {
		row, err := c.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			r.broken(err)
			return r.out, r.found
		}
		if r.blank(row) {
			continue
		}
		pos := make([]diag.Pos, len(row))
		for i := range row {
			pos[i] = r.pos(c.FieldPos(i))
			row[i] = strings.TrimSpace(row[i])
		}
		if r.head == nil {
			if !r.header(row, pos) {
				return nil, r.found
			}
			continue
		}
		r.row(row, pos)
		if len(r.out) >= maxJars {
			r.errorAt(pos[0], "too-long", "the list is longer than %d rows", maxJars)
			break
		}
	}
	if r.head == nil {
		r.found.Errorf("empty-list", file, "", "the gift list is empty").Hinted("begin with the header line to,from,message,jars,jar,occasion")
	}
	return r.out, r.found
}

// listReader carries one reading of a CSV list.
type listReader struct {
	file  string
	lines []string
	head  []string // column names; "" = not ours
	out   []Entry
	found diag.List
}

func (r *listReader) text(data []byte) bool {
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) || bytes.IndexByte(data, 0) >= 0 || !utf8.Valid(data) {
		r.found.Errorf("bad-encoding", r.file, "", "the gift list is not UTF-8 text").Hinted("save it from the spreadsheet as CSV UTF-8")
		return false
	}
	return true
}

// separator is the sign that stands most often in the first line outside
// quotes: a comma, a semicolon (as spreadsheets of many countries write) or
// a tab.
func separator(data []byte) rune {
	n := map[rune]int{}
	quoted := false
	for _, c := range string(data) {
		switch {
		case c == '"':
			quoted = !quoted
		case !quoted && (c == ',' || c == ';' || c == '\t'):
			n[c]++
		}
		if c == '\n' && !quoted && len(n) > 0 {
			break
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

func (r *listReader) blank(row []string) bool {
	for _, f := range row {
		if strings.TrimSpace(f) != "" {
			return false
		}
	}
	return true
}

// pos turns the reader's byte column into characters.
func (r *listReader) pos(line, col int) diag.Pos {
	if line < 1 || line > len(r.lines) {
		return diag.Pos{Line: max(line, 1), Column: 1}
	}
	text := r.lines[line-1]
	return diag.Pos{Line: line, Column: utf8.RuneCountInString(text[:min(max(col-1, 0), len(text))]) + 1}
}

func (r *listReader) errorAt(p diag.Pos, code, format string, args ...any) *diag.Diagnostic {
	d := r.found.Errorf(code, r.file, "", format, args...)
	d.Pos = p
	return d
}

func (r *listReader) broken(err error) {
	var pe *csv.ParseError
	if !errors.As(err, &pe) {
		r.found.Errorf("bad-csv", r.file, "", "the gift list cannot be read: %v", err)
		return
	}
	msg, at := "the quotes of this field are not closed", r.opening(pe.StartLine)
	if errors.Is(pe.Err, csv.ErrBareQuote) {
		msg, at = `a " stands inside a field without quotes`, r.pos(pe.Line, pe.Column)
	}
	r.errorAt(at, "bad-csv", "%s", msg).Hinted(`put the field in quotes and double the quotes inside: "say ""hi"""`).Cited("RFC 4180 section 2")
}

// opening is the place of the quote on a line that no other closes.
func (r *listReader) opening(line int) diag.Pos {
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

// header reads the first line.
func (r *listReader) header(row []string, pos []diag.Pos) bool {
	seen := map[string]bool{}
	var names []string
	for k := range columns {
		names = append(names, k)
	}
	for i, f := range row {
		key := columns[strings.ToLower(f)]
		r.head = append(r.head, key)
		switch {
		case f == "":
		case key == "":
			d := r.found.Warnf("unknown-column", r.file, "", "the column %q is not used", f)
			d.Pos, d.Hint = pos[i], "columns: to, from, message, jars, jar, occasion, design, lot"
			if near, ok := diag.DidYouMean(strings.ToLower(f), sortedNames(names)); ok {
				d.Hint = "did you mean " + near + "?"
			}
		case seen[key]:
			r.errorAt(pos[i], "twice", "the column %q stands twice", key).Hinted("keep one of them")
		}
		seen[key] = true
	}
	if !seen["to"] {
		r.errorAt(pos[0], "no-header", "the first line is not a header with the column \"to\"").Hinted("begin with the line to,from,message,jars,jar,occasion")
		return false
	}
	return !r.found.HasErrors()
}

// row reads one recipient.
func (r *listReader) row(row []string, pos []diag.Pos) {
	e := Entry{Jars: 1, File: r.file, Pos: pos[0]}
	for i, f := range row {
		if i >= len(r.head) {
			if f != "" {
				r.errorAt(pos[i], "extra-field", "this row has more fields than the header").Hinted("put a message with commas in quotes")
				return
			}
			continue
		}
		switch r.head[i] {
		case "to":
			e.To = f
		case "from":
			e.From = f
		case "message":
			e.Message = f
		case "jar":
			e.Jar = f
		case "occasion":
			e.Occasion = f
		case "design":
			e.Design = f
		case "lot":
			e.Lot = f
		case "jars":
			n, ok := jarCount(f)
			if !ok {
				r.errorAt(pos[i], "bad-count", "%q is not a number of jars", f).Hinted("write a whole number from 1, or leave it empty for 1")
				return
			}
			e.Jars = n
		}
	}
	if e.To == "" {
		d := r.found.Warnf("no-name", r.file, "", "this row names no one: the tag will leave the name to be written by hand")
		d.Pos = pos[0]
	}
	r.out = append(r.out, e)
}

func jarCount(s string) (int, bool) {
	if s == "" {
		return 1, true
	}
	n, err := strconv.Atoi(s)
	return n, err == nil && n >= 1 && n <= maxJars
}

func sortedNames(s []string) []string {
	out := append([]string(nil), s...)
	sort.Strings(out)
	return out
}
