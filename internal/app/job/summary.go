package job

import (
	"cmp"
	"fmt"
	"strings"

	"jarmark/internal/give/facts"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// Facts is what `check --json` prints.
type Facts = facts.Facts

// Facts gathers what is known of a batch, for programs.
func (b *Batch) Facts() Facts {
	f := facts.Batch{File: b.Input.Batch.Name, Cooked: b.Cooked, Contents: b.Contents, Findings: b.Findings}
	if b.Notes != nil {
		f.Name, f.Made = b.Notes.Name, b.Notes.Made
	}
	if b.Set != nil {
		f.Place = b.Set.ID
	}
	return facts.Of(f)
}

// Row is one fact as a person reads it.
type Row struct{ Name, Text string }

// Summary is what a maker wants to know of a batch at a glance; empty when
// there is no batch to speak of.
func (b *Batch) Summary() []Row {
	r := b.Cooked
	if r == nil {
		return nil
	}
	f := b.Facts()
	rows := []Row{
		{"made", fmt.Sprintf("%s, best before %s (%s)", f.Made, f.BestBefore, r.Keeping.BestBeforeHow)},
		{"yield", fmt.Sprintf("%s (%s: %s)", r.Yield.Mass.Format(b.Kitchen.Units), r.Yield.How, r.YieldRule)},
		{"solids", fmt.Sprintf("%.1f °Brix (%s)", r.Brix.Value, r.Brix.How)},
	}
	for _, j := range r.Jars {
		rows = append(rows, Row{"jars", jarLine(j, b.Kitchen.Units)})
	}
	if text := b.expected(); text != "" {
		rows = append(rows, Row{"to expect", text})
	}
	if costs, _ := pack.Cost(r); costs != nil && costs.Total.Minor > 0 {
		for _, z := range costs.Sizes {
			rows = append(rows, Row{"cost", fmt.Sprintf("%s of ingredients in a jar of %s", z.Cost, z.JarText)})
		}
	}
	n := map[diag.Severity]int{}
	for _, d := range b.Findings {
		n[d.Severity]++
	}
	rows = append(rows,
		Row{"ingredients", f.IngredText},
		Row{"allergens", allergens(f)},
	)
	for _, a := range f.Evidence.Allergens {
		rows = append(rows, Row{"from", a.Name + ": " + strings.Join(a.From, ", ")})
	}
	for _, g := range f.Evidence.Confirmed {
		rows = append(rows, Row{"confirmed", g.Fact + ": no allergen, by " + g.Source})
	}
	return append(rows,
		Row{"net", cmp.Or(f.Net, "not declared yet")},
		Row{"keeping", f.Storage.Sealed},
		Row{"because", because(r.Keeping.Reasons)},
		Row{"label rules", cmp.Or(f.Place, "none")},
		Row{"findings", number(n[diag.Error], "error") + ", " + number(n[diag.Warning], "warning") + ", " + number(n[diag.Note], "note")})
}

// because says what the keeping words rest on.
func because(list []cook.Evidence) string {
	var facts []string
	for _, e := range list {
		facts = append(facts, e.Fact)
	}
	return strings.Join(facts, "; ")
}

// allergens is the label's statement, else what is known; "none" stands only
// where it is proven.
func allergens(f Facts) string {
	known := cmp.Or(f.AllergText, strings.Join(f.Allergens, ", "))
	switch {
	case len(f.Evidence.Unknown) > 0:
		return cmp.Or(known, "not known") + "; nothing is known of " + strings.Join(f.Evidence.Unknown, ", ")
	case known == "" && f.Evidence.None:
		return "none of the law's list"
	}
	return cmp.Or(known, "none named on the label; read the list of ingredients")
}

// number is a number with its noun: "1 error", "0 notes".
func number(n int, noun string) string {
	if n != 1 {
		noun += "s"
	}
	return fmt.Sprintf("%d %s", n, noun)
}

func jarLine(j cook.JarPlan, units string) string {
	each := "about " + j.Fill.Format(units) + " each"
	if n := len(j.Weighed); n > 0 { // what is weighed is not estimated
		var sum unit.Mass
		for _, m := range j.Weighed {
			sum += m
		}
		each = fmt.Sprintf("%s each, by %d weighed", (sum / unit.Mass(n)).Format(units), n)
	}
	s := fmt.Sprintf("%d x %s (%s), %s", j.Count, j.Jar.Description, j.How, each)
	if n := j.Unsealed(); n > 0 {
		s += fmt.Sprintf(", %d not sealed", n)
	}
	if j.Part > 0 {
		s += ", and a last jar of " + j.Part.Format(units)
	}
	return s
}
