package main

import (
	"fmt"
	"os"
	"path/filepath"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// runRecord writes the public pages and their index.
func runRecord(a *app, o *options, args []string) error {
	in, err := a.inputs(here(args))
	if err != nil {
		return err
	}
	env, batches, in, err := a.loadFor(o, in, func(b *job.Batch) diag.List { return b.Findings.Against(diag.Record) })
	if err != nil {
		return err
	}
	site, found := env.Site(batches)
	a.print(found, in)
	if found.HasErrors() {
		return errProblem
	}
	if o.out == "-" {
		if len(batches) != 1 {
			return usagef("name one batch, or a folder after -o", "%d pages cannot go to stdout", len(batches))
		}
		if len(site.Pages) == 0 {
			return errProblem // a plan: told
		}
		_, err := a.out.Write(site.Pages[0].Data)
		return err
	}
	if err := a.publish(siteResults(site, o.out), in); a.taken(err, in) {
		return errProblem
	} else if err != nil {
		return err
	}
	for _, f := range append(site.Pages, job.File{Name: "index.html"}) {
		fmt.Fprintln(a.out, filepath.Join(o.out, filepath.FromSlash(f.Name)))
	}
	return nil
}

// siteResults are the pages of some lots; those of others stay, in the index
// too.
func siteResults(site job.Site, dir string) store.Results {
	r := store.Results{Dir: dir}
	for i, f := range site.Pages {
		r.Files = append(r.Files, store.File{Name: f.Name, Data: f.Data, From: batchFile(site.Of[i].Input)})
	}
	r.Last = func() []store.File { // once no other run can write there
		earlier, _ := os.ReadFile(filepath.Join(dir, job.LotsName)) // none: the first run
		return storeFiles(site.Index(earlier, func(page string) bool {
			_, err := os.Stat(filepath.Join(dir, filepath.FromSlash(page)))
			return err == nil
		}), "")
	}
	return r
}
