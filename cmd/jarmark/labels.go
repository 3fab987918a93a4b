package main

import (
	"fmt"
	"path/filepath"
	"strings"

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
	if err := a.write(o.out, "labels", run.Files, in); err != nil {
		return err
	}
	return a.leftOver(run.Printed, in, o)
}

// leftOver tells what is free on the last sheets, and with --remember notes it
// in kitchen.toml, so that the next run begins there.
func (a *app) leftOver(runs []job.Printed, in []job.Input, o *options) error {
	for _, r := range runs {
		if free := r.Cells - r.Used; free > 0 && !r.Sheet.Auto && !o.remember {
			fmt.Fprintf(a.err, "%s: %d of %d labels of the last sheet are free; next time --skip %d\n", r.Sheet.ID, free, r.Cells, r.Used)
		}
	}
	if !o.remember {
		return nil
	}
	k := in[0].Kitchen
	if k.Name == "" {
		return usagef("jarmark new writes one", "--remember needs a kitchen.toml to note it in")
	}
	now, found := job.RememberSheets(k, runs)
	a.print(found, in)
	if found.HasErrors() {
		return errProblem
	}
	return store.Save(k.Name, k.Data, now)
}

// write puts results where -o says: stdout for "-", the named file for one
// result, numbered beside it for several; without -o, a name in this folder.
func (a *app) write(out, base string, files []job.File, in []job.Input) error {
	if out == "-" {
		if len(files) != 1 {
			return usagef("name a file with -o", "%d files cannot go to stdout", len(files))
		}
		_, err := a.out.Write(files[0].Data)
		return err
	}
	if out == "" {
		out = base
	}
	dir, name := filepath.Split(out)
	if dir == "" {
		dir = "."
	}
	stem := name
	switch want, has := filepath.Ext(files[0].Name), strings.ToLower(filepath.Ext(name)); {
	case has == want:
		stem = name[:len(name)-len(want)]
	case strings.Contains(" .pdf .svg .png .csv .txt .toml .html .json ", " "+has+" "):
		return usagef("end the name in "+want+", or choose another --format", "the result is %s, not %s", want[1:], has[1:])
	}
	var list []store.File
	for i, f := range files {
		n := stem + filepath.Ext(f.Name)
		if len(files) > 1 {
			n = fmt.Sprintf("%s-%d%s", stem, i+1, filepath.Ext(f.Name))
		}
		list = append(list, store.File{Name: n, Data: f.Data})
	}
	if err := store.Publish(dir, list, inputNames(in)...); err != nil {
		return err
	}
	for _, f := range list {
		fmt.Fprintln(a.out, filepath.Join(dir, f.Name))
	}
	return nil
}
