package main

import (
	"fmt"
	"path/filepath"

	"jarmark/internal/store"
)

// runRecord writes the public pages and their index.
func runRecord(a *app, o *options, args []string) error {
	env, batches, in, err := a.loadAll(o, args)
	if err != nil {
		return err
	}
	files, found := env.Site(batches)
	a.print(found, in)
	if found.HasErrors() {
		return errProblem
	}
	if o.out == "-" {
		if len(batches) != 1 {
			return usagef("name one batch, or a folder after -o", "%d pages cannot go to stdout", len(batches))
		}
		_, err := a.out.Write(files[0].Data)
		return err
	}
	if err := store.Publish(o.out, storeFiles(files), inputNames(in)...); err != nil {
		return err
	}
	for _, f := range files {
		fmt.Fprintln(a.out, filepath.Join(o.out, filepath.FromSlash(f.Name)))
	}
	return nil
}

// runTrace answers who has the jars of a lot.
func runTrace(a *app, o *options, args []string) error {
	if len(args) != 1 {
		return usagef("jarmark trace L26165-SR", "trace: name one lot")
	}
	env, batches, in, err := a.loadAll(o, []string{o.dir})
	if err != nil {
		return err
	}
	f, found, err := env.TraceFile(batches, args[0], format(o, "text"), a.today())
	return a.deliver(f, found, err, in, screen(o), "recall-"+args[0])
}
