package pack

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/kitchen/weigh"
)

// Weighed is one jar size of a lot as it was weighed: scale readings only.
type Weighed struct {
	Product, Lot, Jar string
	Made              unit.Date
	Net               []unit.Mass
	Declared          string // as the label says it; "" = not declared, the report judges what was advised
	Report            weigh.Report
}

// JarIn names a jar size in the language of a kitchen's lists. The descriptions of
// jars.csv are English; elsewhere the size the jar is sold by says which it is.
// A jar of the maker's own stays in the maker's words.
func JarIn(k *batch.Kitchen, j pantry.Jar) string {
	w := table.WordsIn(table.LanguageOf(k))
	if j.Measured || j.Nominal <= 0 || !w.Knows("jar") {
		return j.Description
	}
	return fmt.Sprintf("%s %.0f ml", w.Say("jar"), j.Nominal.ML())
}

// mark says which limit a jar is below, the lowest first.
func (s Weighed) mark(m unit.Mass) string {
	r := s.Report
	switch {
	case r.T2 > 0 && m < r.T2:
		return "< T2"
	case r.T1 > 0 && m < r.T1:
		return "< T1"
	case r.MAV > 0 && m < r.Label-r.MAV:
		return "< MAV"
	}
	return ""
}

// WeighRecord is the record of weighing that the law asks of a packer, where it
// does: each reading, the average and the lightest apart, what the rules say,
// and room for who weighed with what. duty is what the place's law says of it.
func WeighRecord(k *batch.Kitchen, duty string, sizes []Weighed) *table.List {
	w := table.WordsIn(table.LanguageOf(k))
	title := w.Say("Record of weighing")
	l := &table.List{In: w, Head: title, Title: title, Maker: k.Name,
		Columns: []string{"row", "lot", "product", "made", "jar", "no", "net_g", "off_g", "below", "text", "clause"}}
	for _, s := range sizes {
		s.parts(l)
	}
	var rows []table.Row
	for _, what := range []string{w.Say("Weighed by, and when"), w.Say("Scale: make, number, verified until, smallest step"),
		w.Say("Empty jar and lid: weight, how many were weighed"), w.Say("What was done with jars below the limits"), w.Say("Signature")} {
		rows = append(rows, table.Row{Type: table.Write, What: what, Lines: 1})
	}
	l.Add(table.Part{Compact: true, Rows: rows})
	if duty != "" {
		l.Add(table.Part{Compact: true, Rows: []table.Row{{Type: table.Say, What: w.Say(duty), Cells: table.Cells{"row": "duty", "text": duty}}}})
	}
	return l
}

// parts adds what was weighed of one size: the readings, then figures and tests.
func (s Weighed) parts(l *table.List) {
	w := l.In
	cells := func(kind string, more table.Cells) table.Cells {
		c := table.Cells{"row": kind, "lot": s.Lot, "product": s.Product, "made": s.Made.String(), "jar": s.Jar}
		for k, v := range more {
			c[k] = v
		}
		return c
	}
	declared := cmp.Or(s.Declared, w.Say("not declared yet; judged as %s", s.Report.Mass(s.Report.Label, 1)))
	said := []string{s.Jar, w.Say("Made %s", w.Day(s.Made)), w.Say("declared %s", declared), w.Say("%d of %d jars weighed", len(s.Net), s.Report.Lot)}
	l.Add(table.Part{Title: s.Product, Sum: w.Say("lot %s", s.Lot), Rows: []table.Row{{Type: table.Say, What: strings.Join(said, " · ")}}})
	read := table.Part{Columns: []string{w.Say("jar"), w.Say("net"), "±", w.Say("below")}, Not: table.OnPaper}
	for i, m := range s.Net {
		no := strconv.Itoa(i + 1)
		read.Rows = append(read.Rows, table.Row{What: no, Figures: []string{w.Number(s.Report.Mass(m, 1)), w.Number(s.Report.Off(m)), s.mark(m)},
			Cells: cells("jar", table.Cells{"no": no, "net_g": fmt.Sprintf("%.2f", m.Grams()), "off_g": fmt.Sprintf("%+.1f", (m - s.Report.Label).Grams()), "below": s.mark(m)})})
	}
	figures := table.Part{Columns: []string{"", ""}, Compact: true}
	for _, f := range s.Report.Figures {
		value := w.Number(f.Value)
		if f.Name == "weighed" {
			value = fmt.Sprintf("%d / %d", len(s.Net), s.Report.Lot)
		}
		figures.Rows = append(figures.Rows, table.Row{What: w.Say(f.Name), Figures: []string{value}, Cells: cells("figure", table.Cells{"text": f.Name + ": " + f.Value, "clause": f.Cite})})
	}
	l.Add(read)
	l.Add(abreast(read, 3))
	l.Add(figures)
	found := table.Part{Compact: true}
	for _, t := range s.Report.Checks {
		verdict := map[bool]string{true: "pass", false: "FAIL"}[t.Pass]
		text := w.Say(t.Name) + ": " + w.Say(verdict)
		if !w.Knows(verdict) { // English: the details are worded in it; the figures above say the same
			text += ". " + t.Detail
		}
		kind := table.Say
		if !t.Pass {
			kind = table.Alarm
		}
		found.Rows = append(found.Rows, table.Row{Type: kind, Strong: true, What: text,
			Cells: cells("test", table.Cells{"text": t.Name + ": " + verdict + ", " + t.Detail, "clause": t.Cite})})
	}
	l.Add(found)
}

// abreast is a part as paper shows it, so many rows side by side, down each
// column first: the record of a dozen jars is one page to sign.
func abreast(p table.Part, across int) table.Part {
	out := table.Part{Compact: true, Not: table.OnText | table.OnSheet | table.OnScreen}
	down := (len(p.Rows) + across - 1) / across
	for i := range across {
		if i*down < len(p.Rows) {
			out.Columns = append(out.Columns, p.Columns...)
		}
	}
	for i := range down {
		var cells []string
		for at := i; at < len(p.Rows); at += down {
			cells = append(append(cells, p.Rows[at].What), p.Rows[at].Figures...)
		}
		out.Rows = append(out.Rows, table.Row{What: cells[0], Figures: cells[1:]})
	}
	return out
}
