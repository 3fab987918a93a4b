package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// loadAll reads and loads the named batches, or those of this folder and of the
// folders below, and prints what leaves their jars in doubt. What a label still lacks does not
// matter to packing and scaling.
func (a *app) loadAll(o *options, args []string) (*job.Env, []*job.Batch, []job.Input, error) {
	in, err := a.allInputs(here(args))
	if err != nil {
		return nil, nil, nil, err
	}
	return a.loadFor(o, in, func(b *job.Batch) diag.List { return b.Findings.Against(diag.Packing) })
}

// loadFor prints the errors that matter to one purpose; with any, the batches
// that have none are still returned, beside errProblem.
func (a *app) loadFor(o *options, in []job.Input, matter func(*job.Batch) diag.List) (*job.Env, []*job.Batch, []job.Input, error) {
	c, err := a.choices(o)
	if err != nil {
		return nil, nil, nil, err
	}
	a.ownRead(homeOf(in))
	env, err := a.plainEnv(homeOf(in))
	if err != nil {
		return nil, nil, nil, err
	}
	batches, found := env.LoadAll(in, c)
	told, sound := told{}, []*job.Batch(nil)
	for _, b := range batches {
		l := matter(b)
		found = append(found, told.fresh(l)...)
		if !l.HasErrors() {
			sound = append(sound, b)
		}
	}
	a.print(found, in)
	if found.HasErrors() {
		return env, sound, in, errProblem
	}
	return env, batches, in, nil
}

// runPack prints or writes a packing list, or notes what came home.
func runPack(a *app, o *options, args []string) error {
	env, batches, in, err := a.loadAll(o, args)
	switch {
	case errors.Is(err, errProblem) && len(batches) > 0 && o.cameHome == "":
		a.incomplete = true // the others are packed: what is wrong has been told
	case err != nil:
		return err
	case o.cameHome != "" && a.incomplete:
		return errProblem // the count might belong to a file left out
	case o.cameHome != "":
		return a.cameHome(env, batches, in, o, args)
	}
	if o.stall {
		f, found, err := env.StallSheet(batches, o.event)
		return a.deliver(f, found, err, in, o.out, "stall-allergens")
	}
	list, err := a.giftList(o.list)
	if err != nil {
		return err
	}
	as, err := format(o, "text", "pdf", "csv", "text")
	if err != nil {
		return err
	}
	day, err := dayOf(o.date)
	if err != nil {
		return err
	}
	hand := func() error {
		f, found, err := env.PackFile(batches, job.PackChoices{Event: o.event, Date: day, List: list, Format: as})
		return a.deliver(f, found, err, in, screen(o, as), "packing-list")
	}
	if err := hand(); err != nil || len(list) == 0 || o.event != "" || o.date != "" || o.dryRun || a.incomplete {
		return err
	}
	// Only what was handed over is promised.
	dealt := batches
	if env, batches, in, err = a.promise(env, batches, in, list, o, args); err != nil {
		return err
	}
	if slices.Equal(dealt, batches) {
		return nil
	}
	return hand() // dealt anew: another run wrote meanwhile
}

// screen is where a list goes: text without -o is for the terminal.
func screen(o *options, as string) string {
	if o.out == "" && (as == "text" || as == "notice") {
		return "-"
	}
	return o.out
}

// deliver prints findings and writes one result unless they forbid it.
func (a *app) deliver(f job.File, found diag.List, err error, in []job.Input, out, base string) error {
	a.print(found, in)
	switch {
	case err != nil:
		return err
	case found.HasErrors():
		return errProblem
	}
	return a.write(out, base, []job.File{f}, in)
}

// format is --format, else what the name after -o ends in when that is one of
// the formats, else other.
func format(o *options, other string, formats ...string) (string, error) {
	if f := strings.ToLower(o.format); f != "" {
		if !slices.Contains(formats, f) {
			return "", usagef("formats are "+strings.Join(formats, ", "), "no format %q here", o.format)
		}
		return f, nil
	}
	f := strings.TrimPrefix(strings.ToLower(filepath.Ext(o.out)), ".")
	if f == "txt" {
		f = "text"
	}
	if slices.Contains(formats, f) {
		return f, nil
	}
	return other, nil
}

// giftList reads a list of presents kept apart from the batches.
func (a *app) giftList(path string) ([]job.Entry, error) {
	if path == "" {
		return nil, nil
	}
	doc, err := store.Read(path)
	if err != nil {
		return nil, err
	}
	a.read = append(a.read, doc.Name)
	list, found := job.GiftList(job.Doc{Name: doc.Name, Data: doc.Data})
	diag.Print(a.err, found, func(string) string { return string(doc.Data) })
	if found.HasErrors() {
		return nil, errProblem
	}
	return list, nil
}

// maxTries bounds how often an edit is begun anew because another program
// wrote the file meanwhile.
const maxTries = 100

// promise writes what a gift list promises into the ledger, in the place of
// what the list promised the last time. When another run wrote meanwhile, the
// jars are dealt anew; the batches are then those it returns.
func (a *app) promise(env *job.Env, batches []*job.Batch, in []job.Input, list []job.Entry, o *options, args []string) (*job.Env, []*job.Batch, []job.Input, error) {
	for try := 1; ; try++ {
		changes, jars, found := env.Promises(batches, list)
		if found.HasErrors() {
			a.print(found, in)
			return nil, nil, nil, errProblem
		}
		err := store.SaveAll(edits(changes))
		if errors.Is(err, store.ErrChanged) && try < maxTries {
			if env, batches, in, err = a.loadAll(o, args); err != nil {
				return nil, nil, nil, err
			}
			continue
		}
		if err != nil {
			return nil, nil, nil, err
		}
		word := "jars"
		if jars == 1 {
			word = "jar"
		}
		for _, c := range changes {
			a.wrote = true
			fmt.Fprintf(a.err, "%s: %d %s promised by %s (jarmark ledger --undo takes it back)\n", c.Name, jars, word, o.list)
		}
		return env, batches, in, nil
	}
}

func edits(changes []job.Change) (out []store.Edit) {
	for _, c := range changes {
		out = append(out, store.Edit{Path: c.Name, Was: c.Was, Now: c.Now})
	}
	return out
}

// cameHome writes into the ledger what was sold at a market and what came home;
// the version before stays in the history. When another run wrote meanwhile,
// the rows are added to the new text, so that neither is lost.
func (a *app) cameHome(env *job.Env, batches []*job.Batch, in []job.Input, o *options, args []string) error {
	if o.event == "" && o.date == "" {
		return usagef(`add --event "NAME" or --date DAY`, "--came-home needs a market")
	}
	day, err := dayOf(o.date)
	if err != nil {
		return err
	}
	for try := 1; ; try++ {
		changes, found := env.CameHome(batches, o.event, day, o.cameHome)
		if found.HasErrors() || try == 1 {
			a.print(found, in)
		}
		if found.HasErrors() {
			return errProblem
		}
		err = store.SaveAll(edits(changes))
		if errors.Is(err, store.ErrChanged) && try < maxTries {
			if env, batches, in, err = a.loadAll(o, args); err != nil {
				return err
			}
			continue
		}
		if err != nil {
			return err
		}
		for _, c := range changes {
			fmt.Fprintf(a.out, "%s: noted\n", c.Name)
		}
		return nil
	}
}

// dayOf reads --date; empty is no day.
func dayOf(text string) (unit.Date, error) {
	if text == "" {
		return unit.Date{}, nil
	}
	d, err := unit.ParseDate(text)
	if err != nil {
		return d, usagef("write year-month-day, like 2026-12-05", "--date: %v", err)
	}
	return d, nil
}
