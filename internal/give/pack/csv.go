package pack

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"

	"jarmark/internal/kit/unit"
)

const byteOrderMark = "\uFEFF"

// CSVHeader names the columns of CSV.
var CSVHeader = []string{"list", "to", "date", "product", "lot", "jar", "jars", "best_before",
	"net_g", "gross_g", "price", "from", "occasion", "message", "note"}

// CSV gives the plan for a spreadsheet: RFC 4180, UTF-8, one row a line of
// the list. It begins with a byte order mark, without which spreadsheets read
// names such as Zoë in a code page of old (common practice, no source). net_g and gross_g are of all jars of the row. A cell that a
// spreadsheet would take for a formula begins with an apostrophe.
func (p *Plan) CSV() []byte {
	var buf bytes.Buffer
	buf.WriteString(byteOrderMark)
	w := csv.NewWriter(&buf)
	w.UseCRLF = true
	put := func(cells ...string) {
		row := make([]string, len(CSVHeader))
		for i, c := range cells {
			row[i] = inert(clean(c))
		}
		w.Write(row) // a bytes.Buffer takes everything
	}
	put(CSVHeader...)
	for _, s := range p.Stops {
		from, occasion, message := wishes(s)
		for _, l := range s.Lines {
			put(string(s.Kind), s.To, s.Date.String(), l.Name, l.Lot, l.JarText, strconv.Itoa(l.Count), l.BestBefore.String(),
				gramsText(l.Net), gramsText(l.Gross), priceText(l.Price), from, occasion, message, lineNote(l))
		}
		if n := s.Short(); n > 0 {
			put(string(s.Kind), s.To, s.Date.String(), "", "", "", "0", "", "", "", "", "", "", "", fmt.Sprintf("%d short of %d promised", n, s.Wanted))
		}
	}
	for _, s := range p.Stock {
		if p.Filter == "" && s.Left > 0 {
			put("left", "", "", s.Name, s.Lot, s.JarText, strconv.Itoa(s.Left), s.BestBefore.String(),
				gramsText(s.Net*unit.Mass(s.Left)), gramsText(s.Gross*unit.Mass(s.Left)), priceText(s.Price))
		}
	}
	if p.Filter == "" {
		for _, s := range p.Done {
			for _, l := range s.Lines {
				put("sold", s.To, s.Date.String(), l.Name, l.Lot, l.JarText, strconv.Itoa(l.Count-l.CameHome), l.BestBefore.String(), "", "", priceText(l.Price),
					"", "", "", fmt.Sprintf("%d went, %d came home", l.Count, l.CameHome))
			}
		}
	}
	for _, f := range p.Fridge {
		put("refrigerator", "", f.By.String(), f.Name, f.Lot, f.JarText, strconv.Itoa(f.Count), "", gramsText(f.Part), "", "", "", "", "", f.Guidance())
	}
	for _, s := range p.Supplies {
		put("supplies", "", "", s.What, "", "", s.amount(p.Units), "", "", "", "", "", "", "", s.note(p.Units))
	}
	w.Flush()
	return buf.Bytes()
}

func lineNote(l Line) string {
	if l.Cold {
		return "keep cold"
	}
	return ""
}

// wishes puts the words of a stop's gifts into single cells.
func wishes(s Stop) (from, occasion, message string) {
	var f, o, m []string
	for _, x := range s.Wishes {
		f, o, m = appendSaid(f, x.From), appendSaid(o, x.Occasion), appendSaid(m, x.Message)
	}
	return joinSaid(f), joinSaid(o), joinSaid(m)
}

func appendSaid(l []string, s string) []string {
	if s == "" {
		return l
	}
	return append(l, s)
}

func joinSaid(l []string) string {
	s := ""
	for i, x := range unique(l) {
		if i > 0 {
			s += " / "
		}
		s += x
	}
	return s
}

func gramsText(m unit.Mass) string {
	if m <= 0 {
		return ""
	}
	return strconv.FormatInt(int64((m+unit.Gram/2)/unit.Gram), 10)
}

// priceText is a price as people read it; empty when not said.
func priceText(m unit.Money) string {
	if m.Minor == 0 {
		return ""
	}
	return m.String()
}

// inert keeps a spreadsheet from running a cell: = + - @ start a formula in
// common spreadsheets, after white space too (OWASP, CSV Injection).
func inert(s string) string {
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
