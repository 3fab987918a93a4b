package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"text/tabwriter"

	"jarmark/internal/app/job"
)

// runScale prints a recipe scaled to exact jars.
func runScale(a *app, o *options, args []string) error {
	if len(args) != 1 || o.jars == "" {
		return usagef(`jarmark scale plum.toml --jars "24 x 8 fl oz"`, "scale: name one batch file and the jars wanted")
	}
	env, batches, in, err := a.loadAll(o, args)
	if err != nil {
		return err
	}
	s, found := env.Scale(batches[0], o.jars)
	a.print(found, in)
	if s == nil || found.HasErrors() {
		return errProblem
	}
	var buf bytes.Buffer
	if o.json {
		enc := json.NewEncoder(&buf)
		enc.SetIndent("", "  ")
		if err := enc.Encode(s); err != nil {
			return err
		}
	} else {
		writeScaled(&buf, batches[0].Notes.Name, s)
	}
	if o.out == "" || o.out == "-" {
		_, err = a.out.Write(buf.Bytes())
		return err
	}
	return a.write(o.out, "scaled", []job.File{{Name: "scaled.txt", Data: buf.Bytes()}}, in)
}

func writeScaled(buf *bytes.Buffer, name string, s *job.Scaled) {
	fmt.Fprintf(buf, "%s, for %s\n", name, s.Jars)
	for _, h := range s.How {
		fmt.Fprintf(buf, "  %s\n", h)
	}
	fmt.Fprintf(buf, "\n%.2f times the recipe, %.0f g finished, in a pot of %.1f l or more", s.Factor, s.YieldG, s.PotML/1000)
	if s.Cooks > 1 {
		fmt.Fprintf(buf, "; cook it in %d lots", s.Cooks)
	}
	buf.WriteString("\n\n")
	w := tabwriter.NewWriter(buf, 0, 4, 2, ' ', 0)
	for _, l := range s.Lines {
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\n", l.Name, l.Weight, l.Measure, l.Cost)
	}
	w.Flush()
	if s.Cost != "" {
		fmt.Fprintf(buf, "\ningredients cost %s\n", s.Cost)
		for _, p := range s.PerJar {
			fmt.Fprintf(buf, "  %s\n", p)
		}
	}
}
