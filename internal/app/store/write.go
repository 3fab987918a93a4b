package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"time"
)

// File is one result to write; Name is relative with forward slashes.
type File struct {
	Name string
	Data []byte
}

// ErrOntoInput means a result would overwrite a file it was made from.
var ErrOntoInput = errors.New("the output would overwrite an input file")

// WriteFile writes one file whole: to a new file beside it, flushed to disk,
// then renamed over the old one. A fault leaves the earlier file as it was.
func WriteFile(path string, data []byte) error {
	tmp, err := stage(filepath.Dir(path), filepath.Base(path), data)
	if err != nil {
		return err
	}
	if err := os.Rename(tmp, path); err != nil {
		os.Remove(tmp)
		return err
	}
	syncDir(filepath.Dir(path))
	return nil
}

// stage writes data to a fresh hidden file in dir and flushes it.
func stage(dir, base string, data []byte) (string, error) {
	f, err := os.CreateTemp(dir, "."+base+".*.tmp")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Chmod(0o644)
	}
	if err == nil {
		err = f.Sync()
	}
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err != nil {
		os.Remove(f.Name())
		return "", err
	}
	return f.Name(), nil
}

// syncDir makes renames durable where the system can; failure is harmless.
func syncDir(dir string) {
	if runtime.GOOS == "windows" {
		return
	}
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		d.Close()
	}
}

// Publish writes all files below dir, or none: every file is staged and
// flushed first, so a full disk or a read-only folder is found out before the
// first earlier file is touched; only then are they renamed into place. inputs
// are files that must not be overwritten. Other files in dir stay.
func Publish(dir string, files []File, inputs ...string) (err error) {
	if err := notOnto(dir, files, inputs); err != nil {
		return err
	}
	var ready []string
	defer func() {
		for _, s := range ready {
			os.Remove(s)
		}
	}()
	for _, f := range files {
		path := filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return err
		}
		tmp, err := stage(filepath.Dir(path), filepath.Base(path), f.Data)
		if err != nil {
			return err
		}
		ready = append(ready, tmp)
	}
	return place(dir, files, ready)
}

// place renames staged files into place, and makes that durable once for each
// folder.
func place(dir string, files []File, from []string) error {
	synced := map[string]bool{}
	for i, f := range files {
		path := filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.Rename(from[i], path); err != nil {
			return err
		}
		synced[filepath.Dir(path)] = true
	}
	for d := range synced {
		syncDir(d)
		sweep(d)
	}
	return nil
}

// stale is the age at which a staged file can belong to no run any more.
const stale = time.Hour

// sweep removes what runs that were killed left staged in a folder.
func sweep(dir string) {
	left, err := filepath.Glob(filepath.Join(escape.Replace(dir), ".*.tmp"))
	if err != nil {
		return
	}
	for _, p := range left {
		if st, err := os.Lstat(p); err == nil && st.Mode().IsRegular() && staged.MatchString(filepath.Base(p)) && time.Since(st.ModTime()) > stale {
			os.Remove(p)
		}
	}
}

// staged is the form of the names stage gives, and of no others.
var staged = regexp.MustCompile(`^\..+\.[0-9]+\.tmp$`)

var escape = strings.NewReplacer(`*`, `[*]`, `?`, `[?]`, `[`, `[[]`)

// notOnto refuses outputs that are inputs, by identity and not by name, so
// that links and odd paths are seen through, names that leave dir, and names
// taken by a folder.
func notOnto(dir string, files []File, inputs []string) error {
	for _, f := range files {
		if !filepath.IsLocal(filepath.FromSlash(f.Name)) {
			return fmt.Errorf("%q would leave the output folder", f.Name)
		}
		path := filepath.Join(dir, filepath.FromSlash(f.Name))
		out, err := os.Stat(path)
		if err != nil {
			continue // not there yet
		}
		if out.IsDir() { // found out here, no rename of others comes first
			return fmt.Errorf("%s is a folder", path)
		}
		for _, in := range inputs {
			if st, err := os.Stat(in); err == nil && os.SameFile(st, out) {
				return fmt.Errorf("%s: %w", in, ErrOntoInput)
			}
		}
	}
	return nil
}

// ErrChanged means the file on disk is not the one the edit began from.
var ErrChanged = errors.New("the file changed on disk since it was opened")

// Save replaces a maker's file after an edit: it refuses when the disk no
// longer holds `was`, and keeps the previous version beside it as NAME~.
func Save(path string, was, now []byte) error {
	old, err := os.ReadFile(path)
	switch {
	case errors.Is(err, os.ErrNotExist) && len(was) == 0:
		return WriteFile(path, now)
	case err != nil:
		return err
	case string(old) != string(was):
		return ErrChanged
	case string(old) == string(now):
		return nil
	}
	if err := WriteFile(path+"~", old); err != nil {
		return err
	}
	return WriteFile(path, now)
}
