package main

import (
	"errors"
	"fmt"
	"os"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// runLedger shows the ledger, adds a row to it or takes the last change back.
func runLedger(a *app, o *options, args []string) error {
	word := ""
	if len(args) == 1 {
		word = args[0]
	}
	switch {
	case len(args) > 1 || word != "" && word != "list" && word != "add":
		return usagef("jarmark ledger, jarmark ledger list or jarmark ledger add", "ledger: what is %q?", args)
	case o.undo:
		return a.undoLedger(o.dir)
	case word == "add":
		return a.addRow(o)
	}
	as, err := format(o, "text", "csv", "text")
	if err != nil {
		return err
	}
	env, batches, in, err := a.season(o.dir)
	if err != nil {
		return err
	}
	f, found, err := env.LedgerFile(batches, word == "list", as)
	return a.deliver(f, found, err, in, screen(o, as), "ledger-list")
}

// season loads every batch in a folder and those below it, and prints what
// leaves their jars in doubt. A file that cannot be read is told and left out.
func (a *app) season(dir string) (*job.Env, []*job.Batch, []job.Input, error) {
	if _, err := os.Stat(dir); err != nil {
		return nil, nil, nil, err
	}
	var in []job.Input
	var left []job.Unread
	for _, u := range store.ReadEverything(dir, func(b, k, l store.Doc) {
		in = append(in, job.Input{Batch: job.Doc(b), Kitchen: job.Doc(k), Ledger: job.Doc(l)})
	}) {
		left = append(left, job.Unread(u))
	}
	if len(in)+len(left) == 0 {
		return nil, nil, nil, usagef("name the folder they are in with --dir", "no batch files in %s", dir)
	}
	env, err := a.plainEnv(dir)
	if err != nil {
		return nil, nil, nil, err
	}
	all, found := env.Recall(in, left, job.Choices{Today: a.today()})
	a.print(found, in)
	a.incomplete = a.incomplete || found.HasErrors()
	if len(all.Batches) == 0 {
		return nil, nil, nil, errProblem
	}
	return env, all.Batches, in, nil
}

// addRow writes one row at the end of the ledger. When another run wrote
// meanwhile, the row is added to the new text, so that neither is lost.
func (a *app) addRow(o *options) error {
	for try := 1; ; try++ {
		env, batches, in, err := a.season(o.dir)
		if err != nil {
			return err
		}
		c, found := env.AddRow(batches, o.row, a.today())
		if found.HasErrors() {
			a.print(found, in)
			return errProblem
		}
		err = store.Save(c.Name, c.Was, c.Now)
		if errors.Is(err, store.ErrChanged) && try < maxTries {
			continue
		}
		if err == nil {
			a.print(found, in)
			fmt.Fprintf(a.out, "%s: noted\n", c.Name)
		}
		return err
	}
}

// undoLedger puts the version before the last change back. The version put
// aside is kept like any other, so that a second undo brings it back.
func (a *app) undoLedger(dir string) error {
	if _, err := os.Stat(dir); err != nil {
		return err // else the kitchen of a folder above would be taken
	}
	kitchen, _, err := store.KitchenIn(dir)
	if err != nil {
		return err
	}
	doc, err := store.Ledger(kitchen.Name, dir+"/batch.toml")
	if err != nil {
		return err
	}
	if doc.Data == nil {
		return usagef("jarmark ledger add begins one", "there is no %s yet", doc.Name)
	}
	if err := store.PutBack(doc.Name, doc.Data, []byte(job.LedgerHeader)); err != nil {
		return err
	}
	fmt.Fprintf(a.out, "%s: as before the last change; the same command brings it back\n", doc.Name)
	return nil
}
