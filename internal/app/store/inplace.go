package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
)

// inPlace replaces files one by one. When one fails, all that was done is
// undone; earlier files wait under hidden names until then.
func (p *plan) inPlace() (err error) {
	made, err := makeDirs(p.dir)
	job := &inPlace{plan: p}
	defer func() {
		if err != nil {
			err = errors.Join(err, job.undoAll())
			for _, d := range append(slices.Clone(job.made), made...) {
				os.Remove(d)
			}
		}
		for _, t := range job.temps {
			os.Remove(t)
		}
	}()
	if err != nil {
		return err
	}
	sweep(p.dir)
	var staged []string
	for _, f := range p.Files {
		tmp, err := job.stage(f)
		if err != nil {
			return err
		}
		staged = append(staged, tmp)
	}
	return job.place(staged)
}

// inPlace is what was done so far, and how it is undone.
type inPlace struct {
	*plan
	undo  []func() error
	temps []string // to be removed at the end, whatever happened
	made  []string // folders made on the way, the deepest first
}

func (j *inPlace) stage(f File) (string, error) {
	at := j.at(f.Name)
	made, err := makeDirs(filepath.Dir(at))
	j.made = append(made, j.made...)
	if err != nil {
		return "", err
	}
	like, _ := os.Lstat(at) // none: a new file
	if j.aside[f.Name] != "" {
		like = nil
	}
	tmp, err := stage(filepath.Dir(at), filepath.Base(at), f.Data, like)
	j.temps = append(j.temps, tmp)
	return tmp, err
}

// place moves staged files into place. The manifest names the earlier and the
// new files first, so that a kill leaves none of ours a stranger.
func (j *inPlace) place(staged []string) error {
	listed := j.Kin == nil || j.Listed || j.was != nil
	if listed {
		if err := j.list(append(j.after(), j.was...)); err != nil {
			return err
		}
	}
	for i, f := range j.Files {
		if err := j.putAside(f.Name); err != nil {
			return err
		}
		if err := j.move(staged[i], j.at(f.Name)); err != nil {
			return err
		}
	}
	for name := range j.drop {
		if err := j.backup(j.at(name)); err != nil {
			return err
		}
		os.Remove(j.at(name))
	}
	if listed {
		if err := j.list(j.after()); err != nil {
			return err
		}
	}
	for name := range j.drop {
		os.Remove(filepath.Dir(j.at(name))) // only when it is empty now
	}
	syncDir(j.dir)
	return nil
}

// list writes the manifest.
func (j *inPlace) list(m manifest) error {
	at := filepath.Join(j.dir, ManifestName)
	tmp, err := stage(j.dir, "files", m.bytes(), nil)
	if err != nil {
		return err
	}
	j.temps = append(j.temps, tmp)
	return j.move(tmp, at)
}

// putAside gives a file of the maker's that makes way its other name.
func (j *inPlace) putAside(name string) error {
	to := j.aside[name]
	if to == "" {
		return nil
	}
	if err := os.Rename(j.at(name), j.at(to)); err != nil {
		return err
	}
	j.undo = append(j.undo, func() error { return os.Rename(j.at(to), j.at(name)) })
	return nil
}

// move renames a staged file over what is there, which can be brought back.
func (j *inPlace) move(tmp, at string) error {
	if _, err := os.Lstat(at); err == nil {
		if err := j.backup(at); err != nil {
			return err
		}
	} else {
		j.undo = append(j.undo, func() error { return gone(os.Remove(at)) })
	}
	return os.Rename(tmp, at)
}

// backup keeps a file under a hidden name until the run is over.
func (j *inPlace) backup(at string) error {
	f, err := fresh(filepath.Dir(at), filepath.Base(at), ".old")
	if err != nil {
		return err
	}
	f.Close()
	os.Remove(f.Name())
	if os.Link(at, f.Name()) != nil {
		if err := os.Rename(at, f.Name()); err != nil {
			return err
		}
	}
	j.temps = append(j.temps, f.Name())
	j.undo = append(j.undo, func() error {
		if a, err := os.Lstat(at); err == nil {
			if b, err := os.Lstat(f.Name()); err == nil && os.SameFile(a, b) {
				return nil // not replaced yet
			}
		}
		return os.Rename(f.Name(), at)
	})
	return nil
}

// undoAll goes back, the last step first.
func (j *inPlace) undoAll() error {
	var all error
	for _, u := range slices.Backward(j.undo) {
		if err := u(); err != nil {
			all = errors.Join(all, fmt.Errorf("and it could not be put back: %w", err))
		}
	}
	if all != nil {
		j.temps = nil // what could not be put back stays under its hidden name
	}
	return all
}

func gone(err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return nil
	}
	return err
}
