package main

import (
	"errors"
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
		err := a.publishLot(o.out, done, in)
		if a.taken(err, in) {
			failed = true
			continue
		}
		if err != nil {
			return err
		}
	}
	p.end()
	a.notesLeft(notes)
	if failed {
		return errProblem
	}
	return nil
}

// publishLot writes the folder of one batch's results.
func (a *app) publishLot(out string, d job.Made, in []job.Input) error {
	dir := filepath.Join(out, d.Batch.Cooked.Lot)
	r := store.Results{Dir: dir, Files: storeFiles(d.Files, batchFile(d.Batch.Input)), Whole: true}
	if err := a.publish(r, in); err != nil {
		return err
	}
	a.report(dir, d)
	return nil
}

// report tells what was made, one line a file, for the first look.
func (a *app) report(dir string, d job.Made) {
	r := d.Batch.Cooked
	fmt.Fprintf(a.out, "%s, lot %s: %d jars, %d sealed\n", d.Batch.Notes.Name, r.Lot, r.Count(), r.Sealed())
	for _, f := range d.Files {
		fmt.Fprintf(a.out, "  %s\n", filepath.Join(dir, filepath.FromSlash(f.Name)))
	}
}

// taken prints the finding that another batch has a batch's lot.
func (a *app) taken(err error, in []job.Input) bool {
	var t *store.TakenError
	if !errors.As(err, &t) {
		return false
	}
	var l diag.List
	l.Errorf("lot-taken", t.Batch, "lot", "%v", t).Hinted(hintFor(err))
	a.print(l, in)
	return true
}
