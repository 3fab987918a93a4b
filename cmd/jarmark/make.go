package main

import (
	"encoding/json"
	"fmt"
	"path/filepath"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// runMake writes everything of each batch into OUT/LOT/.
func runMake(a *app, o *options, args []string) error {
	read := a.inputs
	if len(args) == 0 {
		read = demoInputs
	}
	in, err := read(args)
	if err != nil {
		return err
	}
	env, in, c, err := a.beginWith(o, in)
	if err != nil {
		return err
	}
	p := a.progress(len(in), o.quiet)
	failed, told, notes := false, told{}, 0
	for done := range env.MakeAll(in, c) {
		p.step()
		fresh := told.fresh(done.Findings)
		notes += fresh.Count(diag.Note)
		a.print(grave(fresh), []job.Input{in[done.Index]})
		if done.Err != nil {
			return done.Err
		}
		if diag.List(done.Findings).HasErrors() {
			failed = true
			continue
		}
		dir := filepath.Join(o.out, done.Batch.Cooked.Lot)
		if other := madeFrom(dir); other != "" && other != filepath.Base(in[done.Index].Batch.Name) {
			var taken diag.List
			taken.Errorf("lot-taken", in[done.Index].Batch.Name, "lot", "%s holds lot %s of %s", dir, done.Batch.Cooked.Lot, other).
				Hinted("write a lot of its own into this batch, or choose another folder with -o")
			a.print(taken, nil)
			failed = true
			continue
		}
		if err := store.Publish(dir, storeFiles(done.Files), inputNames(in)...); err != nil {
			return err
		}
		a.report(dir, done)
	}
	p.end()
	a.notesLeft(notes)
	if failed {
		return errProblem
	}
	return nil
}

// report tells what was made, one line a file, for the first look.
func (a *app) report(dir string, d job.Made) {
	r := d.Batch.Cooked
	fmt.Fprintf(a.out, "%s, lot %s: %d jars, %d sealed\n", d.Batch.Batch.Name, r.Lot, r.Count(), r.Sealed())
	for _, f := range d.Files {
		fmt.Fprintf(a.out, "  %s\n", filepath.Join(dir, filepath.FromSlash(f.Name)))
	}
}

func storeFiles(in []job.File) []store.File {
	out := make([]store.File, len(in))
	for i, f := range in {
		out[i] = store.File{Name: f.Name, Data: f.Data}
	}
	return out
}

// madeFrom is the batch file an output folder was made from, by its facts;
// empty when it was not made yet.
func madeFrom(dir string) string {
	doc, err := store.Read(filepath.Join(dir, "facts.json"))
	if err != nil {
		return ""
	}
	var f job.Facts
	if json.Unmarshal(doc.Data, &f) != nil {
		return ""
	}
	return f.File
}
