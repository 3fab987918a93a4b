package main

import (
	"fmt"
	"path/filepath"

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
