package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"
	"text/tabwriter"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
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
	if o.named != "" {
		return a.scaledBatch(env, batches[0], in, o)
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

// scaledBatch writes the scaled recipe as a new batch file; it never overwrites
// one.
func (a *app) scaledBatch(env *job.Env, b *job.Batch, in []job.Input, o *options) error {
	if builtin(in[0]) {
		return usagef("jarmark scale plum.toml --jars ... --new NAME", "the demo has no folder to write beside")
	}
	home := filepath.Dir(in[0].Batch.Name)
	if to := filepath.Dir(o.named); to != "." && to != home {
		return usagef("write the name alone; move the file afterwards", "the new batch stands beside the old one, in %s", home)
	}
	file := job.FileName(unended(filepath.Base(o.named)))
	if file == "" {
		return usagef("use letters and numbers", "%q gives no file name", o.named)
	}
	path := filepath.Join(home, file+".toml")
	if !store.IsBatchName(path) {
		return usagef("choose another name", "%s is no name of a batch", path)
	}
	if err := unused(path); err != nil {
		return err
	}
	data, found := env.ScaledBatch(b, o.jars, a.today())
	a.print(found, in)
	if found.HasErrors() {
		return errProblem
	}
	if err := store.SaveAll([]store.Edit{{Path: path, Now: data}}); err != nil {
		return err
	}
	fmt.Fprintln(a.out, path)
	return nil
}

func writeScaled(buf *bytes.Buffer, name string, s *job.Scaled) {
	fmt.Fprintf(buf, "%s, for %s\n", name, s.Jars)
	for _, h := range s.How {
		fmt.Fprintf(buf, "  %s\n", h)
	}
	fmt.Fprintf(buf, "\n%.2f times the recipe, %s finished, in a pot of %s or more", s.Factor, s.Yield, s.Pot)
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
