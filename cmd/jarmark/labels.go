package main

import (
	"errors"
	"fmt"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// runLabels writes the labels of one or several batches into one document.
func runLabels(a *app, o *options, args []string) error {
	if len(args) == 0 {
		return usagef("jarmark labels plum.toml", "labels: name a batch file")
	}
	env, in, c, err := a.begin(o, args)
	if err != nil {
		return err
	}
	if c.List, err = a.giftList(o.list); err != nil {
		return err
	}
	as, err := format(o, "pdf", "pdf", "svg", "png")
	if err != nil {
		return err
	}
	switch {
	case o.dpi < 36 || o.dpi > 2400:
		return usagef("300 or 600 for print", "--dpi %d is not 36 to 2400", o.dpi)
	case o.cutLines && as == "png":
		return usagef("add --format pdf or svg", "--cut-lines makes a layer of a PDF or SVG, not of a PNG")
	case o.profile != "" && (!o.trimmed || as != "pdf"):
		return usagef("add --trimmed, or leave it out", "--profile is of the press of a print shop, and goes into the PDF made for it")
	case o.trimmed && (o.remember || o.skip > 0):
		return usagef("leave one of them out", "--trimmed uses up no label sheet, so there is nothing to skip or remember")
	}
	if c.Profile, err = a.shopProfile(o.profile); err != nil {
		return err
	}
	if o.proof {
		return a.proof(env, in, c, as, o)
	}
	c.Whole = o.out == "-"
	run, found, err := env.Print(in, c, as)
	found = told{}.fresh(found)
	a.print(grave(found), in)
	a.notesLeft(found.Count(diag.Note))
	if err != nil {
		return err
	}
	if found.HasErrors() {
		return errProblem
	}
	if o.remember { // found out before the labels are written
		if in[0].Kitchen.Name == "" || builtin(in[0]) {
			return usagef("jarmark new writes one", "--remember needs a kitchen.toml to note it in")
		}
		if err := store.CanSave(in[0].Kitchen.Name); err != nil {
			return err
		}
	}
	for _, r := range run.Printed {
		if !o.quiet {
			a.tellSheets(r, o.trimmed)
		}
	}
	if err := a.write(o.out, "labels", run.Files, in); err != nil {
		return err
	}
	return a.leftOver(run.Printed, in, o)
}

// shopProfile reads the ICC profile of a print shop; nil without one.
func (a *app) shopProfile(path string) (*job.Profile, error) {
	if path == "" {
		return nil, nil
	}
	doc, err := store.Read(path)
	if err != nil {
		return nil, err
	}
	p, found := job.ShopProfile(doc.Name, doc.Data)
	diag.Print(a.err, found, func(string) string { return "" })
	if found.HasErrors() {
		return nil, errProblem
	}
	return p, nil
}

// proof writes the proof of the labels instead of them. It is written with
// errors too: it is the paper that shows what falls short.
func (a *app) proof(env *job.Env, in []job.Input, c job.Choices, as string, o *options) error {
	if o.remember {
		return usagef("leave one of them out", "--proof uses up no label sheet, so --remember has nothing to note")
	}
	files, found, err := env.ProofFiles(in, c, as)
	found = told{}.fresh(found)
	a.print(grave(found), in)
	a.notesLeft(found.Count(diag.Note))
	if err != nil {
		return err
	}
	if len(files) > 0 {
		if err := a.write(o.out, "label-proof", files, in); err != nil {
			return err
		}
	}
	if found.HasErrors() {
		return errProblem
	}
	return nil
}

// tellSheets says how much paper a run takes, before it is written: "front: 12
// labels = 2 sheets of letter-2x5-4x2in", "front + lid: 24 labels for 12 jars = 2
// sheets of a4-plain".
func (a *app) tellSheets(r job.Printed, trimmed bool) {
	count := func(n int, word string) string {
		if n == 1 {
			return "1 " + word
		}
		return fmt.Sprintf("%d %ss", n, word)
	}
	paper := count(len(r.Doc.Pages), "sheet") + " of " + r.Sheet.ID
	if trimmed {
		paper = count(len(r.Doc.Pages), "page") + " for a print shop"
	}
	labels := count(r.Labels, "label")
	if r.Sets > 0 {
		labels += " for " + count(r.Sets, "jar")
	}
	fmt.Fprintf(a.err, "%s: %s = %s\n", r.Piece, labels, paper)
}

// leftOver tells what is free on the last sheets, and with --remember notes it
// in kitchen.toml, so that the next run begins there.
func (a *app) leftOver(runs []job.Printed, in []job.Input, o *options) error {
	for _, r := range runs {
		if free := r.Cells - r.Used; free > 0 && !o.trimmed && !r.Sheet.Auto && !o.remember {
			fmt.Fprintf(a.err, "%s: %d of %d labels of the last sheet are free; next time --skip %d\n", r.Sheet.ID, free, r.Cells, r.Used)
		}
	}
	if !o.remember {
		return nil
	}
	for k := in[0].Kitchen; ; {
		now, found := job.RememberSheets(k, runs)
		a.print(found, in)
		if found.HasErrors() {
			return errProblem
		}
		err := store.Save(k.Name, k.Data, now)
		if !errors.Is(err, store.ErrChanged) {
			return err
		}
		doc, err := store.Read(k.Name) // another run wrote it: note it in the new text
		if err != nil {
			return err
		}
		k = job.Doc(doc)
	}
}
