package ledger

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
)

// With gives the file's bytes with entries added at the end. All that stands
// there stays to the letter: columns of the maker's own, their order, the
// separator and the line ends. A column of ours that the entries need and the
// header lacks is put at the header's end: a promise without its name or its
// list would be lost.
func (l *Ledger) With(entries []Entry) []byte {
	if len(entries) == 0 {
		return slices.Clone(l.data)
	}
	head, comma := strings.Split(Header, ","), ','
	data := slices.Clone(l.data)
	if l.table != nil {
		add := lacking(l.table.Head, entries)
		head, comma = append(slices.Clone(l.table.Head), add...), l.table.Comma
		data = headed(data, add, string(comma))
	} else {
		data = []byte(HeaderLine)
	}
	end := lineEnd(data)
	if n := len(data); data[n-1] != '\n' && data[n-1] != '\r' {
		data = append(data, end...)
	}
	var buf bytes.Buffer
	w := csv.NewWriter(&buf)
	w.Comma = comma
	for _, e := range entries {
		var fields []string
		for _, column := range head {
			fields = append(fields, e.field(column))
		}
		_ = w.Write(fields) // to memory
	}
	w.Flush()
	return append(data, strings.ReplaceAll(buf.String(), "\n", end)...)
}

// lacking are the columns that entries fill and a header does not have.
func lacking(head []string, entries []Entry) (out []string) {
	for _, column := range strings.Split(Header, ",") {
		if !slices.Contains(head, column) && slices.ContainsFunc(entries, func(e Entry) bool { return e.field(column) != "" }) {
			out = append(out, column)
		}
	}
	return out
}

// headed puts columns at the end of the header, the first row that says anything.
func headed(data []byte, add []string, comma string) (out []byte) {
	for _, row := range rows(data) {
		line := strings.TrimRight(string(row.text), "\r\n")
		if len(add) > 0 && strings.Trim(line, "\ufeff \t,;\"") != "" {
			out = append(out, line+comma+strings.Join(add, comma)...)
			out = append(out, row.text[len(line):]...)
			add = nil
			continue
		}
		out = append(out, row.text...)
	}
	return out
}

// lineEnd is the one of the file's first line.
func lineEnd(data []byte) string {
	i := bytes.IndexAny(data, "\r\n")
	switch {
	case i < 0 || data[i] == '\n':
		return "\n"
	case i+1 < len(data) && data[i+1] == '\n':
		return "\r\n"
	}
	return "\r"
}

// field is a column as written. A value that a spreadsheet would take for a
// formula gets a quote before it (OWASP, CSV injection).
func (e Entry) field(column string) string {
	switch column {
	case "date":
		return e.Date.String()
	case "lot":
		return plain(e.Lot)
	case "jar":
		return plain(e.Jar)
	case "count":
		return strconv.Itoa(e.Count)
	case "why":
		return string(e.Why)
	case "who":
		return plain(e.Who)
	case "price":
		if e.Price.Currency == "" && e.Price.Minor == 0 {
			return ""
		}
		return e.Price.Plain()
	case "from":
		return plain(e.From)
	}
	return ""
}

func plain(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r", rune(s[0])) {
		return "'" + s
	}
	return s
}

// Without gives the ledger's rows but the promises of one source, whose file
// has been read anew. Lines of the maker's stay to the letter.
func (l *Ledger) Without(from string) *Ledger {
	if from == "" { // no list: a promise noted by hand may name no source
		return l
	}
	drop := map[int]bool{}
	for _, e := range l.Entries {
		if e.Why == Promised && same(e.From, from) {
			drop[e.Pos.Line] = true
		}
	}
	if len(drop) == 0 {
		return l
	}
	out := *l
	out.Entries = slices.DeleteFunc(slices.Clone(l.Entries), func(e Entry) bool { return drop[e.Pos.Line] })
	out.data = nil
	first := 1
	for _, row := range rows(l.data) {
		if !drop[first] {
			out.data = append(out.data, row.text...)
		}
		first += row.lines
	}
	return &out
}

// rowText is a row as it stands, over several lines where a line break stands
// within quotes.
type rowText struct {
	text  []byte
	lines int
}

// rows splits after every row's end, CR LF kept together (RFC 4180 section 2).
func rows(data []byte) (out []rowText) {
	start, lines, quoted := 0, 0, false
	for i, c := range data {
		quoted = quoted != (c == '"')
		if c != '\n' && (c != '\r' || i+1 < len(data) && data[i+1] == '\n') {
			continue
		}
		if lines++; !quoted {
			out = append(out, rowText{data[start : i+1], lines})
			start, lines = i+1, 0
		}
	}
	if start < len(data) {
		out = append(out, rowText{data[start:], lines + 1})
	}
	return out
}

func same(a, b string) bool { return fold(a) == fold(b) }

// fold compares names as people write them: case and blanks apart.
func fold(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
