package main

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"jarmark/internal/cook"
	"jarmark/internal/diag"
	"jarmark/internal/job"
)

// runCheck prints facts and findings. Labels are composed too, so that what
// does not fit is found before the printer is.
func runCheck(a *app, o *options, args []string) error {
	if len(args) == 0 {
		args = []string{"."}
	}
	in, err := inputs(args)
	if err != nil {
		return err
	}
	env, err := a.env(in)
	if err != nil {
		return err
	}
	c, err := a.choices(o)
	if err != nil {
		return err
	}
	batches, across := env.LoadAll(in, c)
	failed := across.HasErrors()
	a.print(across, in)
	var facts []job.Facts
	for i, b := range batches {
		failed = failed || !b.OK()
		facts = append(facts, b.Facts())
		if !o.json {
			a.print(b.Findings, []job.Input{in[i]})
			writeFacts(a.out, b)
		}
	}
	if o.json {
		if err := a.json(facts); err != nil {
			return err
		}
	}
	if failed {
		return errProblem
	}
	return nil
}

// json prints one object for one batch, a list for several.
func (a *app) json(facts []job.Facts) error {
	enc := json.NewEncoder(a.out)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if len(facts) == 1 {
		return enc.Encode(facts[0])
	}
	return enc.Encode(facts)
}

// writeFacts prints what a maker wants to know at a glance.
func writeFacts(w io.Writer, b *job.Batch) {
	r := b.Cooked
	if r == nil {
		return
	}
	f := b.Facts()
	fmt.Fprintf(w, "%s, lot %s\n", b.Batch.Name, r.Lot)
	row := func(name, format string, args ...any) {
		fmt.Fprintf(w, "  %-13s %s\n", name, fmt.Sprintf(format, args...))
	}
	row("made", "%s, best before %s (%s)", f.Made, f.BestBefore, r.Keeping.BestBeforeHow)
	row("yield", "%s (%s: %s)", r.Yield.Mass.Format(b.Kitchen.Units), r.Yield.How, r.YieldRule)
	row("solids", "%.1f °Brix (%s)", r.Brix.Value, r.Brix.How)
	for _, j := range r.Jars {
		row("jars", "%s", jarLine(j, b.Kitchen.Units))
	}
	row("ingredients", "%s", f.IngredText)
	row("allergens", "%s", firstOf(f.AllergText, "none declared"))
	row("net", "%s", firstOf(f.Net, "not declared yet"))
	row("keeping", "%s", f.Storage.Sealed)
	row("label rules", "%s", firstOf(f.Place, "none"))
	n := count(b.Findings)
	row("findings", "%d errors, %d warnings, %d notes", n[diag.Error], n[diag.Warning], n[diag.Note])
}

func jarLine(j cook.JarPlan, units string) string {
	s := fmt.Sprintf("%d x %s (%s), about %s each", j.Count, j.Jar.Description, j.How, j.Fill.Format(units))
	if n := j.Unsealed(); n > 0 {
		s += fmt.Sprintf(", %d not sealed", n)
	}
	if j.Part > 0 {
		s += ", and a last jar of " + j.Part.Format(units)
	}
	return s
}

func firstOf(s, other string) string {
	if strings.TrimSpace(s) != "" {
		return s
	}
	return other
}

func count(l diag.List) map[diag.Severity]int {
	n := map[diag.Severity]int{}
	for _, d := range l {
		n[d.Severity]++
	}
	return n
}
