package pack

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strconv"

	"jarmark/internal/give/ledger"
)

// BookText says where the jars of each lot are, or lists every row they were
// counted from, for a terminal of 80 columns.
func (p *Plan) BookText(rows bool) string {
	w := &writer{}
	if rows {
		w.line("%-10s  %-12s %5s  %-9s  %-22s %s", "date", "lot", "jars", "why", "who", "from")
		for _, e := range p.Rows {
			w.line("%-10s  %-12s %5d  %-9s  %-22s %s", e.Date, cut(e.Lot, 12), e.Count, e.Why, cut(clean(e.Who), 22), e.From)
		}
		return w.b.String()
	}
	w.line("%-27s %5s %5s %5s %5s %5s %8s %6s", "lot and jar", "made", "given", "sold", "lost", "home", "promised", "free")
	for i, b := range p.Balances {
		w.line("%-27s %5d %5d %5d %5d %5d %8d %6d", cut(b.Lot+"  "+p.Stock[i].JarText, 27), b.Count, b.Given, b.Sold, b.Lost(), b.Home(), b.Promised, b.Free())
	}
	w.line("")
	w.wrap("", "made = given + sold + lost + home; of those at home, free are not promised. Lost is eaten, broken or recalled.")
	return w.b.String()
}

// BookCSV is BookText for a spreadsheet; money is what was taken for jars that
// did not come back, unpriced the jars sold without a price.
func (p *Plan) BookCSV(rows bool) []byte {
	var buf bytes.Buffer
	buf.WriteString(byteOrderMark)
	w := csv.NewWriter(&buf)
	w.UseCRLF = true
	put := func(cells ...string) {
		for i := range cells {
			cells[i] = inert(clean(cells[i]))
		}
		w.Write(cells) // a bytes.Buffer takes everything
	}
	if rows {
		put("date", "lot", "jar", "count", "why", "who", "price", "from", "file")
		for _, e := range p.Rows {
			put(e.Date.String(), e.Lot, e.Jar, strconv.Itoa(e.Count), string(e.Why), e.Who, priceText(e.Price), e.From, e.File)
		}
	} else {
		put("lot", "name", "jar", "made", "given", "sold", "eaten", "broken", "recalled", "home", "promised", "free", "takings", "unpriced")
		for i, b := range p.Balances {
			n := func(v int) string { return strconv.Itoa(v) }
			put(b.Lot, p.Stock[i].Name, p.Stock[i].JarText, n(b.Count), n(b.Given), n(b.Sold), n(b.Eaten), n(b.Broken), n(b.Recalled),
				n(b.Home()), n(b.Promised), n(b.Free()), moneyList(b.Takings), n(b.Unpriced))
		}
	}
	w.Flush()
	return buf.Bytes()
}

// Sum is a balance in words: "20 made: 3 given, 4 sold, 1 lost, 12 at home".
func Sum(b ledger.Balance) string {
	return fmt.Sprintf("%d made: %d given, %d sold, %d lost, %d at home", b.Count, b.Given, b.Sold, b.Lost(), b.Home())
}
