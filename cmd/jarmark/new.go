package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// runNew writes starter files; it never overwrites one.
func runNew(a *app, o *options, args []string) error {
	name := strings.TrimSpace(strings.Join(args, " "))
	if name == "" {
		return usagef(`jarmark new "plum jam"`, "new: say what you cook")
	}
	batch, err := job.StarterBatch(name, a.today())
	if err != nil {
		return usagef("use letters and numbers", "%v", err)
	}
	if strings.EqualFold(batch.Name, store.KitchenName) {
		return usagef(`jarmark new "kitchen jam"`, "%s is the kitchen's own file, and no batch", store.KitchenName)
	}
	path := filepath.Join(o.dir, batch.Name)
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		return usagef("choose another name, or edit that file", "%s exists already", path)
	}
	files := []store.Edit{{Path: path, Now: batch.Data}}
	kitchen, err := a.newKitchen(o)
	if err != nil {
		return err
	}
	files = append(files, kitchen...)
	if err := os.MkdirAll(o.dir, 0o777); err != nil {
		return err
	}
	if err := store.SaveAll(files); err != nil {
		return err
	}
	for _, f := range files {
		fmt.Fprintln(a.out, f.Path)
	}
	a.print(job.AskAbout(name), nil)
	fmt.Fprintf(a.err, "next: fill them in, then jarmark check %s\n", path)
	return nil
}

// newKitchen is a kitchen.toml to begin with; none when there is one already.
func (a *app) newKitchen(o *options) ([]store.Edit, error) {
	_, ok, err := store.KitchenIn(o.dir)
	if err != nil || ok {
		return nil, err
	}
	env, _, err := job.NewEnv(nil)
	if err != nil {
		return nil, err
	}
	data, found := env.StarterKitchen(o.place)
	if a.print(found, nil); found.HasErrors() {
		return nil, errProblem
	}
	return []store.Edit{{Path: filepath.Join(o.dir, store.KitchenName), Now: data}}, nil
}
