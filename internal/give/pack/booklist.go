package pack

import (
	"strconv"

	"jarmark/internal/give/table"
)

// Book says where the jars of each lot are. In a spreadsheet takings are what
// was taken for jars that did not come back, unpriced the jars sold without a
// price.
func (p *Plan) Book() *table.List {
	l := &table.List{Head: "Where the jars are", Title: "Where the jars are", Maker: p.Maker, Sum: "made = given + sold + lost + home; of those at home, free are not promised. Lost is eaten, broken or recalled.",
		Columns: []string{"lot", "name", "jar", "made", "given", "sold", "eaten", "broken", "recalled", "home", "promised", "free", "takings", "unpriced"}}
	part := table.Part{Columns: []string{"lot and jar", "made", "given", "sold", "lost", "home", "promised", "free"}}
	n := strconv.Itoa
	for i, b := range p.Balances {
		part.Rows = append(part.Rows, table.Row{What: b.Lot + "  " + p.Stock[i].JarText, Figures: []string{n(b.Count), n(b.Given), n(b.Sold), n(b.Lost()), n(b.Home()), n(b.Promised), n(b.Free())},
			Cells: table.Cells{"lot": b.Lot, "name": p.Stock[i].Name, "jar": p.Stock[i].JarText, "made": n(b.Count), "given": n(b.Given), "sold": n(b.Sold), "eaten": n(b.Eaten), "broken": n(b.Broken),
				"recalled": n(b.Recalled), "home": n(b.Home()), "promised": n(b.Promised), "free": n(b.Free()), "takings": table.MoneyList(b.Takings), "unpriced": n(b.Unpriced)}})
	}
	l.Parts = []table.Part{part}
	return l
}

// BookRows lists every row that the jars were counted from.
func (p *Plan) BookRows() *table.List {
	l := &table.List{Head: "The ledger, row by row", Title: "The ledger, row by row", Maker: p.Maker, Columns: []string{"date", "lot", "jar", "count", "why", "who", "price", "from", "file"}}
	part := table.Part{Columns: []string{"who", "date", "lot", "jars", "why", "from"}}
	for _, e := range p.Rows {
		part.Rows = append(part.Rows, table.Row{What: e.Who, Figures: []string{e.Date.String(), e.Lot, strconv.Itoa(e.Count), string(e.Why), e.From},
			Cells: table.Cells{"date": e.Date.String(), "lot": e.Lot, "jar": e.Jar, "count": strconv.Itoa(e.Count), "why": string(e.Why), "who": e.Who, "price": priceText(e.Price), "from": e.From, "file": e.File}})
	}
	l.Parts = []table.Part{part}
	return l
}
