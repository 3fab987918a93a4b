package pack

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

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
		part.Rows = append(part.Rows, table.Row{Amount: p.in.Jars(s.Jars - back), What: heading(p.in, s.Type, s.To, s.Date),
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
			table.Row{Type: table.Aside, What: guide})
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
	if !p.today.IsZero() && f.By.Before(p.today) { // the jar was eaten, and nobody wrote it down
		return why + ": " + p.in.Say("was to be eaten by %s; note it in the ledger as eaten, or throw it away and note it as broken", p.in.Day(f.By))
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
