package main

import (
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"slices"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// runCheck prints facts and findings. Labels are composed too, so that what
// does not fit is found before the printer is.
func runCheck(a *app, o *options, args []string) error {
	env, in, c, err := a.begin(o, here(args))
	if err != nil {
		return err
	}
	c.Past = siblings(in)
	batches, across := env.CheckAll(in, c)
	failed := across.HasErrors()
	a.print(across, in)
	var facts []job.Facts
	told := told{}
	for i, b := range batches {
		failed = failed || !b.OK()
		facts = append(facts, b.Facts())
		if !o.json {
			a.print(told.fresh(b.Findings), []job.Input{in[i]})
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

// mostSiblings bounds how many batches beside the named ones are read.
const mostSiblings = 200

// siblings are the other batches of the folders: their weighed pots tell how
// the kitchen's own yields lie. One that cannot be read tells nothing.
func siblings(in []job.Input) (out []job.Input) {
	seen, ledgers := map[string]bool{}, map[string]job.Doc{}
	var dirs []string
	for _, one := range in {
		seen[one.Batch.Name] = true
		if dir := filepath.Dir(one.Batch.Name); !builtin(one) && !slices.Contains(dirs, dir) {
			dirs = append(dirs, dir)
		}
	}
	for _, dir := range dirs {
		files, err := store.Batches(dir)
		if err != nil {
			continue
		}
		for _, f := range files[:min(len(files), mostSiblings)] {
			if seen[f] {
				continue
			}
			if beside, err := input(f, ledgers); err == nil && !job.IsGiftList(beside.Batch) {
				out = append(out, beside)
			}
		}
	}
	return out
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
	rows := b.Summary()
	if len(rows) == 0 {
		return
	}
	fmt.Fprintf(w, "%s, lot %s\n", b.Notes.Name, b.Cooked.Lot)
	for _, r := range rows {
		fmt.Fprintf(w, "  %-13s %s\n", r.Name, r.Text)
	}
}
