package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// env loads what batches share, with the designs/ and sheets/ of the folder
// the first kitchen or batch lies in laid over the built-in ones; batches of
// another kitchen have those of theirs.
func (a *app) env(in []job.Input) (*job.Env, error) {
	dir := homeOf(in)
	homes, of := []string{dir}, map[string][]job.Input{}
	for _, i := range in {
		at := dir
		if i.Kitchen.Name != "" && !builtin(i) {
			at = filepath.Dir(i.Kitchen.Name)
		}
		if !slices.Contains(homes, at) {
			homes = append(homes, at)
		}
		of[at] = append(of[at], i)
	}
	a.ownRead(dir, of[dir]...)
	env, fault := a.envOf(folderFS(dir))
	for _, other := range homes[1:] {
		if env == nil {
			break
		}
		a.ownRead(other, of[other]...)
		found, err := env.Also(other, folderFS(other))
		if err != nil {
			return nil, err
		}
		for i := range found {
			found[i].File = filepath.Join(other, filepath.FromSlash(found[i].File))
		}
		a.printRead(found)
		if found.HasErrors() && fault == nil {
			fault = errProblem
		}
	}
	return env, fault
}

// printRead prints findings of files that are read again for their lines.
func (a *app) printRead(found diag.List) {
	diag.Print(a.err, found, func(file string) string {
		data, _ := os.ReadFile(file)
		return string(data)
	})
}

// plainEnv is env for what needs no design and no sheet: a fault in the maker's
// own is told and holds up nothing.
func (a *app) plainEnv(dir string) (*job.Env, error) {
	env, err := a.envOf(folderFS(dir))
	if errors.Is(err, errProblem) {
		return env, nil
	}
	return env, err
}

// envOf gives errProblem beside the Env when the maker's own designs or sheets
// have errors: those are left out.
func (a *app) envOf(own fs.FS) (*job.Env, error) {
	env, found, err := job.NewEnv(own)
	if err != nil {
		return nil, err
	}
	err = diag.Print(a.err, found, func(file string) string {
		data, _ := fs.ReadFile(own, file)
		return string(data)
	})
	if err == nil && found.HasErrors() {
		err = errProblem
	}
	return env, err
}

func folderFS(dir string) fs.FS {
	if dir == "" {
		return nil
	}
	return os.DirFS(dir)
}

func homeOf(in []job.Input) string {
	switch {
	case len(in) == 0 || builtin(in[0]):
		return ""
	case in[0].Kitchen.Name != "":
		return filepath.Dir(in[0].Kitchen.Name)
	}
	return filepath.Dir(in[0].Batch.Name)
}
