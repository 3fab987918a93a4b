package pack

import (
	"fmt"
	"sort"
	"strconv"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// Book says where the jars of each lot are. In a spreadsheet takings are what
// was taken for jars that did not come back, unpriced the jars sold without a
// price.
func (p *Plan) Book() *table.List {
	say := p.in.Say
	title := say("Where the jars are")
	l := &table.List{In: p.in, Head: title, Title: title, Maker: p.Maker, Sum: say("made = given + sold + lost + home; of those at home, free are not promised. Lost is eaten, broken or recalled."),
		Columns: []string{"lot", "name", "jar", "made", "given", "sold", "eaten", "broken", "recalled", "home", "promised", "free", "takings", "unpriced"}}
	part := table.Part{Columns: []string{say("lot and jar"), say("made"), say("given"), say("sold"), say("lost"), say("home"), say("promised"), say("free")}}
	n := strconv.Itoa
	for i, b := range p.Balances {
		part.Rows = append(part.Rows, table.Row{What: b.Lot + "  " + p.Stock[i].JarText, Figures: []string{n(b.Count), n(b.Given), n(b.Sold), n(b.Lost()), n(b.Home()), n(b.Promised), n(b.Free())},
			Cells: table.Cells{"lot": b.Lot, "name": p.Stock[i].Name, "jar": p.Stock[i].JarText, "made": n(b.Count), "given": n(b.Given), "sold": n(b.Sold), "eaten": n(b.Eaten), "broken": n(b.Broken),
				"recalled": n(b.Recalled), "home": n(b.Home()), "promised": n(b.Promised), "free": n(b.Free()), "takings": table.MoneyList(b.Takings), "unpriced": n(b.Unpriced)}})
	}
	l.Parts = []table.Part{part}
	l.Add(p.sellFirst())
	return l
}

// soon is how long before its date a jar is nearly over (our own choice).
const soon = 60

// sellFirst lists the jars that nobody is promised, those first whose date
// comes first.
func (p *Plan) sellFirst() table.Part {
	part := table.Part{Title: p.in.Say("Sell or give first"), Not: table.OnSheet}
	var rows []Stock
	for _, s := range p.Stock {
		if s.Left > 0 && !s.BestBefore.IsZero() {
			rows = append(rows, s)
		}
	}
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].BestBefore.Before(rows[j].BestBefore) })
	for _, s := range rows {
		when := p.in.Day(s.BestBefore)
		switch {
		case p.today.IsZero():
		case s.BestBefore.Before(p.today):
			over := p.in.Say("%s, over: not to sell as fresh", when)
			if s.UseBy {
				over = p.in.Say("%s, over: do not give or sell", when)
			}
			when = over
		case s.BestBefore.Before(p.today.AddDays(soon)):
			when = p.in.Say("%s, nearly over", when)
		}
		part.Rows = append(part.Rows, table.Row{Amount: fmt.Sprintf("%d × %s", s.Left, s.JarText), What: s.Name + ", " + s.Lot, Note: when})
	}
	return part
}

// dated is a row's day; blank where nobody wrote it down.
func dated(w table.Words, d unit.Date) string {
	if d.IsZero() {
		return ""
	}
	return w.Brief(d)
}

// BookRows lists every row that the jars were counted from.
func (p *Plan) BookRows() *table.List {
	say := p.in.Say
	title := say("The ledger, row by row")
	l := &table.List{In: p.in, Head: title, Title: title, Maker: p.Maker, Columns: []string{"date", "lot", "jar", "count", "why", "who", "price", "from", "file"}}
	part := table.Part{Columns: []string{say("who"), say("date"), say("lot"), say("jars"), say("why"), say("from")}}
	for _, e := range p.Rows {
		part.Rows = append(part.Rows, table.Row{What: e.Who, Figures: []string{dated(p.in, e.Date), e.Lot, strconv.Itoa(e.Count), say(string(e.Why)), e.From},
			Cells: table.Cells{"date": e.Date.String(), "lot": e.Lot, "jar": e.Jar, "count": strconv.Itoa(e.Count), "why": string(e.Why), "who": e.Who, "price": priceText(e.Price), "from": e.From, "file": e.File}})
	}
	l.Parts = []table.Part{part}
	return l
}
