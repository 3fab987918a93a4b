package table

import (
	"bytes"
	"encoding/csv"
	"strconv"
)

const byteOrderMark = "\uFEFF"

// CSV gives the list for a spreadsheet: RFC 4180, UTF-8, one line a row that
// has cells. It begins with a byte order mark, without which spreadsheets read
// names such as Zoë in a code page of old (common practice, no source). A cell
// that a spreadsheet would take for a formula begins with an apostrophe.
func (l *List) CSV() []byte {
	var buf bytes.Buffer
	buf.WriteString(byteOrderMark)
	w := csv.NewWriter(&buf)
	w.UseCRLF = true
	w.Write(l.Columns) // a bytes.Buffer takes everything
	for _, p := range l.Parts {
		for _, r := range p.rows(OnSheet) {
			if r.Cells == nil {
				continue
			}
			row := make([]string, len(l.Columns))
			for i, c := range l.Columns {
				row[i] = inert(clean(r.Cells[c]))
			}
			w.Write(row)
		}
	}
	w.Flush()
	return buf.Bytes()
}

// inert keeps a spreadsheet from running a cell: = + - @ start a formula in
// common spreadsheets, after white space too (OWASP, CSV Injection). A plain
// number is none.
func inert(s string) string {
	if _, err := strconv.ParseFloat(s, 64); err == nil {
		return s
	}
	for _, r := range s {
		switch r {
		case ' ', '\t', '\r', '\n':
			continue
		case '=', '+', '-', '@', '＝', '＋', '－', '＠':
			return "'" + s
		}
		return s
	}
	return s
}
