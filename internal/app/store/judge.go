package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// judgeAll holds every file against what is on disk, before any is touched.
func (p *plan) judgeAll() error {
	p.was = readManifest(p.dir)
	if err := p.taken(); err != nil {
		return err
	}
	for _, f := range p.Files {
		if err := p.judge(f); err != nil {
			return err
		}
	}
	if !p.Whole {
		return nil
	}
	for _, w := range p.was {
		if slices.ContainsFunc(p.Files, func(f File) bool { return f.Name == w.Name }) || !filepath.IsLocal(filepath.FromSlash(w.Name)) {
			continue
		}
		switch at := p.at(w.Name); sumOf(at) {
		case "":
		case w.Sum:
			p.drop[w.Name] = true
			p.report.Removed = append(p.report.Removed, w.Name)
		default:
			p.report.Stale = append(p.report.Stale, w.Name)
		}
	}
	return nil
}

func (p *plan) at(name string) string { return filepath.Join(p.dir, filepath.FromSlash(name)) }

// shown is a path as the maker would write it.
func (p *plan) shown(name string) string { return filepath.Join(p.Dir, filepath.FromSlash(name)) }

// taken finds another batch whose results the files would replace. A batch
// that is no more was renamed or moved: that is told, and no refusal.
func (p *plan) taken() error {
	if p.Single {
		return nil
	}
	if err := p.takenIn(p.dir, p.was); err != nil {
		return err
	}
	entries, err := os.ReadDir(filepath.Dir(p.dir))
	if err != nil {
		return nil // a new folder
	}
	for _, e := range entries { // one folder on many a disk
		if other := filepath.Join(filepath.Dir(p.dir), e.Name()); p.Whole && other != p.dir && strings.EqualFold(other, p.dir) {
			if err := p.takenIn(other, readManifest(other)); err != nil {
				return err
			}
		}
	}
	return nil
}

func (p *plan) takenIn(dir string, was manifest) error {
	for _, f := range p.Files {
		for _, w := range was {
			if w.From == "" || w.Name != f.Name && !(p.Whole && f.From != "") || w.From == origin(dir, f.From) {
				continue
			}
			by, err := os.Stat(w.path(dir))
			if err != nil {
				p.report.Gone = near(w.path(dir))
				continue
			}
			if me, err := os.Stat(f.From); err == nil && os.SameFile(by, me) {
				continue
			}
			return &TakenError{near(dir), f.From, near(w.path(dir))}
		}
	}
	return nil
}

// near writes a path from here when that is shorter to read.
func near(path string) string {
	here, err := filepath.Abs(".")
	if err != nil {
		return path
	}
	if rel, err := filepath.Rel(real(here), path); err == nil && !strings.HasPrefix(rel, "..") {
		return rel
	}
	return path
}

// judge says whether one file may be written, and what makes way for it.
func (p *plan) judge(f File) error {
	if err := p.way(f.Name); err != nil {
		return err
	}
	at, shown := p.at(f.Name), p.shown(f.Name)
	st, err := os.Lstat(at)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if st.IsDir() {
		return fmt.Errorf("%s is a folder", shown)
	}
	if in := p.input(at); in != "" {
		return fmt.Errorf("%s: %w", in, ErrOntoInput)
	}
	link := st.Mode()&fs.ModeSymlink != 0
	if !st.Mode().IsRegular() && !link {
		return fmt.Errorf("%s is not an ordinary file", shown)
	}
	if !link && st.Mode().Perm()&0o222 == 0 {
		return fmt.Errorf("%s: %w", shown, ErrReadOnly)
	}
	why := p.foreign(f, at, link)
	if why == "" {
		return nil
	}
	if !p.Force {
		return &ForeignError{shown, why}
	}
	p.setAside(f.Name)
	return nil
}

// setAside keeps the maker's file under another name.
func (p *plan) setAside(name string) {
	to, _ := filepath.Rel(p.dir, free(p.at(name)))
	p.aside[name] = filepath.ToSlash(to)
	p.report.Kept = append(p.report.Kept, [2]string{p.shown(name), p.shown(p.aside[name])})
}

// foreign says why a file in the way is not ours to replace; "" when it is.
func (p *plan) foreign(f File, at string, link bool) string {
	if p.Kin != nil {
		if link || p.was.is(f.Name, sumOf(at)) {
			return "" // the link goes, what it leads to stays
		}
		old, err := os.ReadFile(at)
		if err != nil || len(old) > 0 && !p.Kin(f.Name, old, f.Data) {
			return otherKind
		}
		return ""
	}
	have := sumOf(at)
	switch {
	case !link && have == sum(f.Data):
		p.same++
		return ""
	case !link && p.was.is(f.Name, have):
		return ""
	case p.was.has(f.Name):
		return changed
	}
	return notOurs
}

// way refuses a link or a file where a folder of the results belongs.
func (p *plan) way(name string) error {
	for i, r := range name {
		if r != '/' {
			continue
		}
		st, err := os.Lstat(p.at(name[:i]))
		if err == nil && !st.IsDir() {
			return &ForeignError{p.shown(name[:i]), "is in the way of a folder"}
		}
	}
	return nil
}

// input is the input file that a path leads to, by identity: links, odd paths
// and letter case are seen through.
func (p *plan) input(at string) string {
	st, err := os.Stat(at)
	if err != nil {
		return ""
	}
	if p.inputs == nil { // once for all files
		p.inputs = map[string]fs.FileInfo{}
		for _, in := range p.Inputs {
			if is, err := os.Stat(in); err == nil {
				p.inputs[in] = is
			}
		}
	}
	for in, is := range p.inputs {
		if os.SameFile(is, st) {
			return in
		}
	}
	return ""
}

// shared reports whether the folder is more than a place for results: inputs
// lie in it, or the run itself stands in it.
func (p *plan) shared() bool {
	dirs := map[string]bool{".": true} // a season's batches lie in few
	for _, in := range p.Inputs {
		dirs[filepath.Dir(in)] = true
	}
	for d := range dirs {
		rel, err := filepath.Rel(p.dir, real(d))
		if err == nil && rel != ".." && !strings.HasPrefix(rel, ".."+string(filepath.Separator)) {
			return true
		}
	}
	return false
}
