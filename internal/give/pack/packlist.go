package pack

import (
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
	l := &table.List{In: p.in, Head: p.title(), Title: p.in.Say("Packing list"), Maker: p.Maker, Sum: p.summary(), Columns: CSVHeader, Space: 4}
	if p.Filter != "" {
		l.Title = p.Filter
	}
	for _, s := range p.Stops {
		l.Parts = append(l.Parts, p.stopPart(s))
	}
	l.Add(p.totals())
	if p.Filter == "" {
		l.Parts = append(l.Parts, p.stays())
		l.Add(p.sold())
	}
	l.Add(p.refrigerator())
	l.Add(p.cupboard())
	return l
}

// Text shows the plan for a terminal of 80 columns.
func (p *Plan) Text() string { return p.List().Text() }

// CSV gives the plan for a spreadsheet.
func (p *Plan) CSV() []byte { return p.List().CSV() }

// Doc lays the plan out as a list to carry, on "a4" or "letter" paper (empty:
// the maker's).
func (p *Plan) Doc(fs *face.Set, paper string) (*page.Doc, diag.List) {
	if paper == "" {
		paper = table.Paper(p.Units)
	}
	return p.List().Doc(fs, paper)
}

func (p *Plan) title() string {
	t := p.in.Say("Packing list")
	if p.Filter != "" {
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
	t := p.in.Number(table.Carry(m, p.Units))
	if how == cook.Estimated {
		t = p.in.Say("about %s", t)
	}
	return t
}

// heading is who or where, and when.
func heading(w table.Words, k Kind, to string, date unit.Date) string {
	t := strings.TrimSpace(to)
	if t == "" {
		t = w.Say("(no name)")
	}
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
	part := table.Part{Title: heading(p.in, s.Kind, s.To, s.Date), Sum: p.stopSum(s)}
	put := func(r table.Row) { part.Rows = append(part.Rows, r) }
	for _, l := range s.Lines {
		put(p.lineRow(s, l))
		if l.Contains != "" {
			put(table.Row{Kind: table.Aside, What: p.in.Say("contains %s", l.Contains)})
		}
		if l.Cold {
			put(table.Row{Kind: table.Aside, What: p.in.Say("keep this one cold on the way"), Not: table.OnPaper})
		}
	}
	if n := s.Short(); n > 0 {
		put(table.Row{Kind: table.Alarm, What: p.in.Say("%s short: %d promised", p.in.Jars(n), s.Wanted),
			Cells: table.Cells{"list": string(s.Kind), "to": s.To, "date": s.Date.String(), "jars": "0", "note": fmt.Sprintf("%d short of %d promised", n, s.Wanted)}})
	}
	for _, w := range s.Wishes {
		if t := p.wish(w); t != "" {
			put(table.Row{Kind: table.Aside, What: t})
		}
	}
	if s.Kind == Market || len(s.Boxes) > 1 {
		for i, x := range s.Boxes {
			put(table.Row{Kind: table.Crate, What: p.in.Say("Box %d", i+1), Under: p.inBox(x), Note: p.weight(x.Gross, s.GrossHow)})
		}
	}
	if len(s.Value) > 0 {
		put(table.Row{Kind: table.Aside, What: p.in.Say("worth %s", p.in.Money(s.Value))})
	}
	return part
}

// lineRow is one kind of jar to pack. At a market there is room to write what
// came home.
func (p *Plan) lineRow(s Stop, l Line) table.Row {
	from, occasion, message := wishes(s)
	r := table.Row{Tick: true, Amount: fmt.Sprintf("%d × %s", l.Count, l.JarText), Count: strconv.Itoa(l.Count), Size: l.JarText, What: l.Name,
		Note: l.Lot + "  " + p.dateShort(l.BestBefore), Under: l.Lot + " · " + p.dateWords(l),
		Cells: table.Cells{"list": string(s.Kind), "to": s.To, "date": s.Date.String(), "product": l.Name, "lot": l.Lot, "jar": l.JarText, "jars": strconv.Itoa(l.Count),
			"best_before": l.BestBefore.String(), "net_g": gramsText(l.Net), "gross_g": gramsText(l.Gross), "price": priceText(l.Price),
			"from": from, "occasion": occasion, "message": message, "contains": l.Contains}}
	if s.Kind == Market {
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

func (p *Plan) stays() table.Part {
	part := table.Part{Title: p.in.Say("Stays at home")}
	left := 0
	for _, s := range p.Stock {
		if s.Left <= 0 {
			continue
		}
		left += s.Left
		part.Rows = append(part.Rows, table.Row{Amount: s.stays(p.in), What: s.Name, Note: s.Lot + "  " + p.in.Brief(s.BestBefore),
			Cells: table.Cells{"list": "left", "product": s.Name, "lot": s.Lot, "jar": s.JarText, "jars": strconv.Itoa(s.Left), "best_before": s.BestBefore.String(),
				"net_g": gramsText(s.Net * unit.Mass(s.Left)), "gross_g": gramsText(s.Gross * unit.Mass(s.Left)), "price": priceText(s.Price)}})
	}
	part.Sum = p.in.Jars(left)
	if len(p.Value) > 0 {
		part.Sum += ", " + p.in.Say("worth %s", p.in.Money(p.Value))
	}
	return part
}

// stays is the amount left, and whether it is only planned.
func (s Stock) stays(w table.Words) string {
	t := fmt.Sprintf("%d × %s", s.Left, s.JarText)
	if s.CountHow == cook.Estimated {
		t += ", " + w.Say("planned")
	}
	if s.Cold {
		t += ", " + w.Say("kept cold")
	}
	return t
}

// sold is one row a market that is over, in a spreadsheet one a kind of jar.
func (p *Plan) sold() table.Part {
	part := table.Part{Title: p.in.Say("Sold")}
	for _, s := range p.Done {
		back := 0
		for _, l := range s.Lines {
			back += l.CameHome
			part.Rows = append(part.Rows, table.Row{Not: table.OnText | table.OnPaper | table.OnScreen,
				Cells: table.Cells{"list": "sold", "to": s.To, "date": s.Date.String(), "product": l.Name, "lot": l.Lot, "jar": l.JarText, "jars": strconv.Itoa(l.Count - l.CameHome),
					"best_before": l.BestBefore.String(), "price": priceText(l.Price), "note": fmt.Sprintf("%d went, %d came home", l.Count, l.CameHome)}})
		}
		part.Rows = append(part.Rows, table.Row{Amount: p.in.Jars(s.Jars - back), What: heading(p.in, s.Kind, s.To, s.Date),
			Note: p.in.Say("%d went, %d came home", s.Jars, back)})
	}
	return part
}

func (p *Plan) refrigerator() table.Part {
	part := table.Part{Title: p.in.Say("Refrigerator"), Sum: p.in.Say("not to give, sell or shelve")}
	for _, f := range p.Fridge {
		guide := p.guidance(f)
		part.Rows = append(part.Rows, table.Row{Tick: true, Amount: p.fridgeAmount(f), What: f.Name, Note: f.Lot,
			Cells: table.Cells{"list": "refrigerator", "date": f.By.String(), "product": f.Name, "lot": f.Lot, "jar": f.JarText, "jars": strconv.Itoa(f.Count), "net_g": gramsText(f.Part), "note": guide}},
			table.Row{Kind: table.Aside, What: guide})
	}
	return part
}

func (p *Plan) fridgeAmount(f FridgeItem) string {
	if f.Count > 0 {
		return fmt.Sprintf("%d × %s", f.Count, f.JarText)
	}
	return p.in.Say("part jar, %s", p.in.Number(f.Part.Format(p.Units)))
}

// guidance says how an unsealed or part jar is kept.
func (p *Plan) guidance(f FridgeItem) string {
	why := p.in.Say("did not seal")
	if f.Count == 0 {
		why = p.in.Say("not full")
	}
	if f.Days <= 0 {
		return why + ": " + p.in.Say("keep refrigerated and eat first")
	}
	return why + ": " + p.in.Say(table.Plural(f.Days, "keep refrigerated, eat within %d day, by %s", "keep refrigerated, eat within %d days, by %s"), f.Days, p.in.Day(f.By))
}

func (p *Plan) cupboard() table.Part {
	part := table.Part{Title: p.in.Say("From the cupboard")}
	for _, s := range p.Supplies {
		need, have, of := s.amounts(p.Units)
		r := table.Row{Tick: true, Amount: p.in.Number(strings.TrimSpace(need + " " + of)), What: p.in.Say(s.What),
			Cells: table.Cells{"list": "supplies", "product": s.What, "need": need, "have": have, "unit": of}}
		if have != "" {
			r.Note = p.in.Say("have %s", p.in.Number(strings.TrimSpace(have+" "+of)))
		}
		if s.Missing() {
			r.Note += ", " + p.in.Say("too few")
			r.Cells["note"] = "too few"
		}
		part.Rows = append(part.Rows, r)
	}
	return part
}

// amounts are what is needed and there, and of what unit: ribbon in whole feet
// or in 0.1 m, rounded up.
func (s Supply) amounts(units string) (need, have, of string) {
	if s.NeedLength == 0 {
		if s.Have >= 0 {
			have = strconv.Itoa(s.Have)
		}
		return strconv.Itoa(s.Need), have, ""
	}
	text := func(l unit.Length) string {
		if units == unit.US {
			return strconv.Itoa(int((l + unit.Foot - 1) / unit.Foot))
		}
		tenths := (l + 10*unit.Centimetre - 1) / (10 * unit.Centimetre)
		return fmt.Sprintf("%d.%d", tenths/10, tenths%10)
	}
	of = "m"
	if units == unit.US {
		of = "ft"
	}
	if s.HaveLength >= 0 {
		have = text(s.HaveLength)
	}
	return text(s.NeedLength), have, of
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

// priceText is a price as people read it; empty when not said.
func priceText(m unit.Money) string {
	if m.Minor == 0 {
		return ""
	}
	return m.String()
}
