package pack

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// CSVHeader names the columns of a packing list in a spreadsheet. net_g and
// gross_g are of all jars of the row; need and have are of supplies, in unit.
var CSVHeader = []string{"list", "to", "date", "product", "lot", "jar", "jars", "best_before",
	"net_g", "gross_g", "price", "from", "occasion", "message", "contains", "need", "have", "unit", "note"}

// List is the plan as a list to carry: what goes where, what stays, what must
// be eaten, what is needed.
func (p *Plan) List() *table.List {
	l := &table.List{In: p.in, Head: p.title(), Title: p.in.Say("Packing list"), Maker: p.Maker, Sum: p.summary(), Columns: CSVHeader, Space: 4, Told: p.told}
	if p.Filter != "" {
		l.Title = p.Filter
	}
	if p.Filter == "gifts" {
		l.Title = p.in.Say("Gifts")
	}
	for _, s := range p.Stops {
		l.Parts = append(l.Parts, p.stopPart(s))
	}
	l.Add(p.totals())
	if p.oneMarket() {
		for _, part := range p.dayParts(p.Stops[0]) {
			l.Add(part)
		}
		l.Space = 0
		return l
	}
	if p.Filter == "" {
		l.Parts = append(l.Parts, p.stays())
		l.Add(p.sold())
	}
	l.Add(p.refrigerator())
	l.Add(p.cupboard())
	return l
}

// oneMarket reports whether the plan is of one market day alone.
func (p *Plan) oneMarket() bool {
	return p.Filter != "" && len(p.Stops) == 1 && p.Stops[0].Type == Market && p.Stops[0].CameHome < 0
}

// Text shows the plan for a terminal of 80 columns.
func (p *Plan) Text() string { return p.List().Text() }

// CSV gives the plan for a spreadsheet.
func (p *Plan) CSV() []byte { return p.List().CSV() }

// Doc lays the plan out as a list to carry, on "a4" or "letter" paper (empty:
// the maker's).
func (p *Plan) Doc(fs *face.Set, paper string) (*page.Doc, diag.List) {
	return p.List().Doc(fs, cmp.Or(paper, table.Paper(p.Units)))
}

func (p *Plan) title() string {
	t := p.in.Say("Packing list")
	if p.Filter == "gifts" {
		t += ": " + p.in.Say("gifts")
	} else if p.Filter != "" {
		t += ": " + p.Filter
	}
	if p.Maker != "" {
		t += ", " + p.Maker
	}
	return t
}

func (p *Plan) summary() string {
	t := p.in.Jars(p.Jars) + " " + p.in.Say(table.Plural(len(p.Stops), "to %d stop", "to %d stops"), len(p.Stops))
	if p.Boxes > 0 {
		t += ", " + p.in.Boxes(p.Boxes)
	}
	if p.Gross > 0 {
		t += ", " + p.in.Say("%s without boxes", p.Weight())
	}
	return t
}

// Weight is the plan's gross weight with a word where it is estimated.
func (p *Plan) Weight() string { return p.weight(p.Gross, p.GrossHow) }

func (p *Plan) weight(m unit.Mass, how cook.How) string {
	t := p.in.Number(m.ToCarry(p.Units))
	if how == cook.Estimated {
		t = p.in.Say("about %s", t)
	}
	return t
}

// heading is who or where, and when.
func heading(w table.Words, k StopType, to string, date unit.Date) string {
	t := cmp.Or(strings.TrimSpace(to), w.Say("(no name)"))
	if k == Market && !date.IsZero() {
		t += ", " + w.Day(date)
	}
	return t
}

func (p *Plan) stopSum(s Stop) string {
	t := p.in.Jars(s.Jars)
	if len(s.Boxes) > 0 {
		t += ", " + p.in.Boxes(len(s.Boxes))
	}
	return t + ", " + p.weight(s.Gross, s.GrossHow)
}

func (p *Plan) stopPart(s Stop) table.Part {
	part := table.Part{Title: heading(p.in, s.Type, s.To, s.Date), Sum: p.stopSum(s), Beside: s.Type == Gift && p.manyGifts()}
	put := func(r table.Row) { part.Rows = append(part.Rows, r) }
	for _, l := range s.Lines {
		put(p.lineRow(s, l))
		if l.Contains != "" {
			put(table.Row{Type: table.Aside, What: p.in.Say("contains %s", l.Contains)})
		}
		if l.Cold {
			put(table.Row{Type: table.Aside, What: p.in.Say("keep this one cold on the way"), Not: table.OnPaper})
		}
	}
	if n := s.Short(); n > 0 {
		put(table.Row{Type: table.Alarm, What: p.in.Say("%s short: %d promised", p.in.Jars(n), s.Wanted),
			Cells: table.Cells{"list": string(s.Type), "to": s.To, "date": s.Date.String(), "jars": "0", "note": fmt.Sprintf("%d short of %d promised", n, s.Wanted)}})
	}
	for _, w := range s.Wishes {
		if t := p.wish(w); t != "" {
			put(table.Row{Type: table.Aside, What: t})
		}
	}
	if s.Type == Market || len(s.Boxes) > 1 {
		for i, x := range s.Boxes {
			put(table.Row{Type: table.Crate, What: p.in.Say("Box %d", i+1), Under: p.inBox(x), Note: p.weight(x.Gross, s.GrossHow)})
		}
	}
	if len(s.Value) > 0 {
		put(table.Row{Type: table.Aside, What: p.in.Say("worth %s", p.in.Money(s.Value))})
	}
	return part
}

// manyGifts reports whether the gifts are so many that each is set as a line or two.
func (p *Plan) manyGifts() bool { return len(p.Stops) > 8 }

// lineRow is one kind of jar to pack. At a market there is room to write what
// came home.
func (p *Plan) lineRow(s Stop, l Line) table.Row {
	from, occasion, message := wishes(s)
	r := table.Row{Tick: true, Amount: fmt.Sprintf("%d × %s", l.Count, l.JarText), Count: strconv.Itoa(l.Count), Size: l.JarText, What: l.Name,
		Note: l.Lot + "  " + p.dateShort(l.BestBefore), Under: l.Lot + " · " + p.dateWords(l),
		Cells: table.Cells{"list": string(s.Type), "to": s.To, "date": s.Date.String(), "product": l.Name, "lot": l.Lot, "jar": l.JarText, "jars": strconv.Itoa(l.Count),
			"best_before": l.BestBefore.String(), "net_g": gramsText(l.Net), "gross_g": gramsText(l.Gross), "price": priceText(l.Price),
			"from": from, "occasion": occasion, "message": message, "contains": l.Contains}}
	if s.Type == Market {
		r.Fields = []string{p.in.Say("came home")}
		if l.Price.Minor > 0 {
			r.Under += " · " + p.in.Money([]unit.Money{l.Price})
		}
	}
	if l.Cold {
		r.Under += " · " + p.in.Say("keep cold on the way")
		r.Cells["note"] = "keep cold"
	}
	return r
}

// totals is what all stops take of each jam and size, to pick from the shelf;
// for one stop it would say the same again.
func (p *Plan) totals() table.Part {
	part := table.Part{Title: p.in.Say("To take from the shelf"), Sum: p.in.Jars(p.Jars), Not: table.OnSheet}
	if len(p.Stops) < 2 {
		return table.Part{}
	}
	sums := make([]int, len(p.Stock))
	for _, s := range p.Stops {
		for _, l := range s.Lines {
			sums[l.stock] += l.Count
		}
	}
	for i, n := range sums {
		if s := p.Stock[i]; n > 0 {
			part.Rows = append(part.Rows, table.Row{Tick: true, Amount: fmt.Sprintf("%d × %s", n, s.JarText), What: s.Name, Note: s.Lot})
		}
	}
	return part
}

// inBox is what is in a box: "6 × 8 fl oz of L26165-SR".
func (p *Plan) inBox(x Box) string {
	var out []string
	for _, b := range x.Parts {
		out = append(out, p.in.Say("%d × %s of %s", b.Count, b.JarText, b.Lot))
	}
	return table.Join(out)
}

// wish is the words that go with a gift.
func (p *Plan) wish(x Wish) string {
	var out []string
	if x.From != "" {
		out = append(out, p.in.Say("from %s", x.From))
	}
	if x.Occasion != "" {
		out = append(out, x.Occasion)
	}
	if x.Message != "" {
		out = append(out, "“"+x.Message+"”")
	}
	return table.Join(out)
}

func (p *Plan) dateShort(d unit.Date) string {
	if d.IsZero() {
		return p.in.Say("no date")
	}
	return p.in.Brief(d)
}

// dateWords is "best before 5 Dec 2026" or "use by ...".
func (p *Plan) dateWords(l Line) string {
	switch {
	case l.BestBefore.IsZero():
		return p.in.Say("no date given")
	case l.UseBy:
		return p.in.Say("use by %s", p.in.Day(l.BestBefore))
	}
	return p.in.Say("best before %s", p.in.Day(l.BestBefore))
}

// wishes puts the words of a stop's gifts into single cells.
func wishes(s Stop) (from, occasion, message string) {
	var f, o, m []string
	for _, x := range s.Wishes {
		f, o, m = append(f, x.From), append(o, x.Occasion), append(m, x.Message)
	}
	said := func(l []string) string { return strings.Join(table.Said(unique(l)), " / ") }
	return said(f), said(o), said(m)
}

func gramsText(m unit.Mass) string {
	if m <= 0 {
		return ""
	}
	return strconv.FormatInt(int64((m+unit.Gram/2)/unit.Gram), 10)
}

// priceText is a price for a spreadsheet; empty when not said.
func priceText(m unit.Money) string {
	if m.Minor == 0 {
		return ""
	}
	return m.Plain()
}
