package season

import (
	"strconv"
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

var columns = []string{"part", "name", "date", "made", "given", "sold", "lost", "left", "came_home", "takings", "costs", "fee", "profit", "profit_a_jar", "unpriced", "note"}

// List is the season as text, CSV and one page to print.
func (s *Summary) List() *table.List {
	say := s.in.Say
	l := &table.List{In: s.in, Head: s.title(), Title: s.title(), Maker: s.Maker, Columns: columns, Sum: s.sum(), Told: s.told}
	l.Add(s.chart())
	l.Add(s.jams())
	l.Add(s.months())
	l.Add(s.visits())
	l.Add(s.years())
	l.Add(s.buy())
	notes := table.Part{Title: say("What the sums leave out"), Compact: true}
	for _, t := range s.leftOut() {
		notes.Rows = append(notes.Rows, table.Row{Type: table.Say, What: t, Cells: table.Cells{"part": "note", "note": t}})
	}
	l.Add(notes)
	return l
}

func (s *Summary) title() string {
	t := s.in.Say("The season")
	switch {
	case s.First.IsZero():
	case s.First.Year == s.Last.Year:
		t += " " + strconv.Itoa(s.First.Year)
	default:
		t += " " + strconv.Itoa(s.First.Year) + " – " + strconv.Itoa(s.Last.Year)
	}
	return t
}

func (s *Summary) sum() string {
	t := s.in.Say("%s: %d given, %d sold, %d lost, %d left", s.in.Jars(s.All.Made), s.All.Given, s.All.Sold, s.All.Lost, s.All.Left)
	if s.All.Paid == 0 {
		return t
	}
	t += "; " + s.in.Say("takings %s", s.money(s.All.Takings))
	if n, known := s.All.Profit(); known {
		t += ", " + s.in.Say("profit %s", s.money(n))
	}
	return t
}

func (s *Summary) money(minor int64) string {
	return s.in.Money([]unit.Money{{Minor: minor, Currency: s.Currency}})
}

// chart is what was made and what left, month by month.
func (s *Summary) chart() table.Part {
	say := s.in.Say
	r := table.Row{Type: table.Towers, Group: 2, Legend: []string{say("sold"), say("given"), say("lost"), say("made")}}
	for _, m := range s.Months {
		if m.Name == undated {
			continue
		}
		gone := m.Sold + m.Given + m.Lost
		r.Bars = append(r.Bars, table.Bar{Name: s.month(m.Name, "\n"), Parts: []float64{0, 0, 0, float64(m.Made)}, Note: some(m.Made)},
			table.Bar{Parts: []float64{float64(m.Sold), float64(m.Given), float64(m.Lost)}, Note: some(gone)})
	}
	if len(r.Bars) == 0 {
		return table.Part{}
	}
	return table.Part{Rows: []table.Row{r}, Not: table.OnText | table.OnSheet | table.OnScreen}
}

func some(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// month is "Jun 2026" for "2026-06".
func (s *Summary) month(name, sep string) string {
	year, month, ok := strings.Cut(name, "-")
	n, err := strconv.Atoi(month)
	if !ok || err != nil {
		return s.in.Say("no date")
	}
	return s.in.Month(n) + sep + year
}

func (s *Summary) jams() table.Part {
	say := s.in.Say
	p := table.Part{Title: say("By jam"), Compact: true, Barred: true, Legend: []string{say("sold"), say("given"), say("lost"), say("left")}, Columns: []string{say("jam"), say("made"), say("given"), say("sold"), say("lost"), say("left"), say("takings"), say("profit a jar")}}
	for _, t := range s.Jams {
		p.Rows = append(p.Rows, s.jamRow(t, false))
	}
	all := s.All
	all.Fee = 0
	all.Name = say("all")
	p.Rows = append(p.Rows, s.jamRow(all, true))
	return p
}

func (s *Summary) jamRow(t Tally, sum bool) table.Row {
	n := strconv.Itoa
	a := s.aJar(t)
	r := table.Row{What: t.Name, Strong: sum, Figures: []string{n(t.Made), n(t.Given), n(t.Sold), n(t.Lost), n(t.Left), s.takings(t), a}, Cells: s.cells("jam", t)}
	if sum {
		r.Cells["part"] = "all"
	} else {
		r.Bars = []table.Bar{{Parts: []float64{float64(t.Sold), float64(t.Given), float64(t.Lost), float64(t.Left)}}}
	}
	return r
}

func (s *Summary) takings(t Tally) string {
	switch {
	case t.Paid == 0:
		return "–"
	case t.Unpriced == t.Paid:
		return s.in.Say("not said")
	case t.Unpriced > 0 || t.Foreign:
		return s.money(t.Takings) + " *"
	}
	return s.money(t.Takings)
}

// aJar is the profit of one jar paid for, rounded to the coin, halves up.
func (s *Summary) aJar(t Tally) string {
	n, known := t.Profit()
	if t.Paid == 0 {
		return "–"
	}
	if !known {
		return s.in.Say("not known")
	}
	return s.money(perJar(n, t.Paid))
}

func perJar(n int64, jars int) int64 {
	d := int64(2 * jars)
	q := 2*n + int64(jars)
	if q < 0 && q%d != 0 {
		return q/d - 1
	}
	return q / d
}

func (s *Summary) months() table.Part {
	say := s.in.Say
	p := table.Part{Title: say("By month"), Compact: true, Not: table.OnPaper, Columns: []string{say("month"), say("made"), say("given"), say("sold"), say("lost"), say("takings")}}
	n := strconv.Itoa
	for _, t := range s.Months {
		t.Name = s.month(t.Name, " ")
		p.Rows = append(p.Rows, table.Row{What: t.Name, Figures: []string{n(t.Made), n(t.Given), n(t.Sold), n(t.Lost), s.takings(t)}, Cells: s.cells("month", t)})
	}
	return p
}

func (s *Summary) visits() table.Part {
	say := s.in.Say
	p := table.Part{Title: say("By market"), Compact: true, Columns: []string{say("market"), say("sold"), say("came home"), say("takings"), say("costs"), say("fee"), say("profit")}}
	for _, v := range s.Visits {
		name := v.Name
		if !v.Date.IsZero() {
			name = s.in.Brief(v.Date) + "  " + name
		}
		cost, profit := s.in.Say("not known"), s.in.Say("not known")
		if v.NoCost == 0 {
			cost = s.money(v.Cost)
		}
		if n, known := v.Profit(); known {
			profit = s.money(n)
		}
		c, fee := s.cells("market", v.Tally), s.money(v.Fee)
		if v.NoFee {
			c["fee"], fee = "", "–"
		}
		c["date"], c["came_home"] = v.Date.String(), strconv.Itoa(v.CameHome)
		p.Rows = append(p.Rows, table.Row{What: name, Figures: []string{strconv.Itoa(v.Paid), strconv.Itoa(v.CameHome), s.takings(v.Tally), cost, fee, profit}, Cells: c})
	}
	return p
}

// cells are a tally for a spreadsheet: plain numbers, blank where not known.
func (s *Summary) cells(part string, t Tally) table.Cells {
	n := strconv.Itoa
	c := table.Cells{"part": part, "name": t.Name, "made": n(t.Made), "given": n(t.Given), "sold": n(t.Sold), "lost": n(t.Lost), "left": n(t.Left), "unpriced": n(t.Unpriced)}
	if part == "month" || part == "market" {
		c["left"] = ""
	}
	if part == "market" {
		c["sold"] = n(t.Paid)
		c["made"], c["given"], c["lost"], c["fee"] = "", "", "", decimal(t.Fee, s.Currency)
	}
	if t.Unpriced == 0 && !t.Foreign {
		c["takings"] = decimal(t.Takings, s.Currency)
	}
	if t.NoCost == 0 {
		c["costs"] = decimal(t.Cost, s.Currency)
	}
	if v, known := t.Profit(); known && t.Paid > 0 {
		c["profit"], c["profit_a_jar"] = decimal(v, s.Currency), decimal(perJar(v, t.Paid), s.Currency)
	}
	return c
}

// decimal is a sum without its sign: "12.50". A spreadsheet adds it up.
func decimal(minor int64, currency string) string {
	return unit.Money{Minor: minor, Currency: currency}.Number(".", "")
}

func (s *Summary) buy() table.Part {
	p := table.Part{Title: s.in.Say("To buy for a season like this one"), Compact: true}
	var words []string
	for _, b := range s.Buy {
		note := s.in.Say("used %d", b.Used)
		have := ""
		if b.Have >= 0 {
			have = strconv.Itoa(b.Have)
			note += ", " + s.in.Say("have %s", have)
		}
		if b.Buy() > 0 {
			words = append(words, strconv.Itoa(b.Buy())+" "+b.What)
			p.Rows = append(p.Rows, table.Row{Tick: true, Amount: strconv.Itoa(b.Buy()), What: b.What, Note: note, Not: table.OnPaper, Cells: table.Cells{"part": "buy", "name": b.What, "note": strconv.Itoa(b.Buy()) + "; " + note}})
		}
	}
	if len(words) > 0 {
		p.Rows = append(p.Rows, table.Row{Type: table.Say, What: strings.Join(words, "; ") + ".", Not: table.OnText | table.OnSheet | table.OnScreen})
	}
	return p
}

// leftOut says what is not in the sums.
func (s *Summary) leftOut() (out []string) {
	say := s.in.Say
	if s.All.Unpriced > 0 {
		out = append(out, say("%s sold without a price: the takings (*) leave them out.", s.in.Jars(s.All.Unpriced)))
	}
	if s.All.Foreign {
		out = append(out, say("Some jars were paid in another currency than %s: the takings (*) leave that out.", s.Currency))
	}
	if len(s.Unpriced) > 0 {
		out = append(out, say("Ingredients without a cost: %s. What these jars cost is not known.", strings.Join(s.Unpriced, "; ")))
	}
	if len(s.Uncounted) > 0 && s.All.Paid > 0 {
		var words []string
		for _, w := range s.Uncounted {
			words = append(words, say(w))
		}
		out = append(out, say("The costs leave out %s: [costs] in kitchen.toml or hours in a batch does not say what they cost.", s.in.And(words)))
	}
	if s.Undated > 0 {
		out = append(out, say("%s left on days nobody wrote down.", s.in.Jars(s.Undated)))
	}
	return out
}
