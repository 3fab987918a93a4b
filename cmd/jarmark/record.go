package main

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// runRecord writes the public pages and their index.
func runRecord(a *app, o *options, args []string) error {
	env, batches, in, err := a.loadFor(o, args, func(b *job.Batch) diag.List { return errorsOf(b.Findings) })
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

// runTrace answers who has the jars of a lot. Errors in a file do not hold up a
// recall: the answer comes from the files that can be read, and says so.
func runTrace(a *app, o *options, args []string) error {
	if len(args) != 1 {
		return usagef("jarmark trace L26165-SR", "trace: name one lot")
	}
	as, err := format(o, "text", "pdf", "text")
	if err != nil {
		return err
	}
	files, err := store.BatchesBelow(o.dir)
	if err != nil {
		return err
	}
	if len(files) == 0 {
		return usagef("name the folder they are in with --dir", "no batch files in %s", o.dir)
	}
	env, all, in, broken := a.loadAll(o, files)
	if broken != nil && !errors.Is(broken, errProblem) || len(all) == 0 {
		return broken
	}
	batches := slices.DeleteFunc(slices.Clone(all), func(b *job.Batch) bool { return b.Cooked == nil })
	if left := len(all) - len(batches); left > 0 {
		fmt.Fprintf(a.err, "files that could not be read: %d; jars of lot %s may be in them too\n", left, args[0])
	}
	if len(batches) == 0 {
		return broken
	}
	f, found, err := env.TraceFile(batches, args[0], as)
	if err := a.deliver(f, found, err, in, screen(o, as), "recall-"+args[0]); err != nil {
		return err
	}
	return broken
}
