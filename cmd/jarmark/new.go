package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// runNew writes starter files; it never overwrites one.
func runNew(a *app, o *options, args []string) error {
	name := unended(strings.TrimSpace(strings.Join(args, " ")))
	if name == "" {
		return usagef(`jarmark new "plum jam"`, "new: say what you cook")
	}
	batch, asked, err := a.starter(o, name)
	if err != nil {
		return err
	}
	if strings.EqualFold(batch.Name, store.KitchenName) {
		return usagef(`jarmark new "kitchen jam"`, "%s is the kitchen's own file, and no batch", store.KitchenName)
	}
	path := filepath.Join(o.dir, batch.Name)
	if err := unused(path); err != nil {
		return err
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
	a.print(asked, nil)
	fmt.Fprintf(a.err, "next: fill them in, then jarmark check %s\n", path)
	return nil
}

// unended is a batch's name without the ending that its file will have anyway.
func unended(name string) string {
	if cut := len(name) - len(".toml"); cut > 0 && strings.EqualFold(name[cut:], ".toml") {
		return name[:cut]
	}
	return name
}

// unused refuses a path where something is: a new file overwrites none.
func unused(path string) error {
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		return usagef("choose another name, or edit that file", "%s exists already", path)
	}
	return nil
}

// starter is a file to fill in, or one read from notes; with what it asks.
func (a *app) starter(o *options, name string) (job.Doc, diag.List, error) {
	if o.from == "" {
		doc, err := job.StarterBatch(name, a.today())
		if err != nil {
			return doc, nil, usagef("use letters and numbers", "%v", err)
		}
		return doc, job.AskAbout(name), nil
	}
	data, err := a.notes(o.from)
	if err != nil {
		return job.Doc{}, nil, err
	}
	doc, asked, err := job.BatchFromNotes(name, "", data, a.today())
	var bad *unit.ParseError
	if errors.As(err, &bad) {
		return doc, nil, usagef(bad.Hint, "%s: %s", o.from, bad.Msg)
	}
	return doc, asked, err
}

// notes reads a file of notes, or standard input for "-".
func (a *app) notes(from string) ([]byte, error) {
	if from != "-" {
		doc, err := store.Read(from)
		return doc.Data, err
	}
	return io.ReadAll(io.LimitReader(a.in, job.MaxNotes+1))
}

// newKitchen is a kitchen.toml to begin with; none when there is one already.
func (a *app) newKitchen(o *options) ([]store.Edit, error) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		return nil, err
	}
	data, found := env.StarterKitchen(o.place)
	if a.print(found, nil); found.HasErrors() {
		return nil, errProblem
	}
	there, ok, err := store.KitchenIn(o.dir)
	if err != nil {
		return nil, err
	}
	if ok {
		if o.place != "" {
			fmt.Fprintf(a.err, "%s is there already: --place changes nothing in it\n", there.Name)
		}
		return nil, nil
	}
	return []store.Edit{{Path: filepath.Join(o.dir, store.KitchenName), Now: data}}, nil
}
