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
// separator and the line ends.
func (l *Ledger) With(entries []Entry) []byte {
	if len(entries) == 0 {
		return slices.Clone(l.data)
	}
	head, comma := order, ','
	data := slices.Clone(l.data)
	if l.table != nil {
		head, comma = l.table.Head, l.table.Comma
	} else {
		data = []byte(Header + "\n")
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
		return e.Price.String()
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
	for i, line := range lines(l.data) {
		if !drop[i+1] {
			out.data = append(out.data, line...)
		}
	}
	return &out
}

// lines splits after every line end, CR LF kept together.
func lines(data []byte) (out [][]byte) {
	start := 0
	for i := 0; i < len(data); i++ {
		if data[i] == '\n' || data[i] == '\r' && (i+1 == len(data) || data[i+1] != '\n') {
			out, start = append(out, data[start:i+1]), i+1
		}
	}
	if start < len(data) {
		out = append(out, data[start:])
	}
	return out
}

func same(a, b string) bool { return fold(a) == fold(b) }

// fold compares names as people write them: case and blanks apart.
func fold(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), " ")) }
