package store

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// errNoSwap means this folder cannot be swapped, and nothing has happened.
var errNoSwap = errors.New("the folder cannot be swapped")

// maxCarried is how many of the maker's files are carried into a new folder.
const maxCarried = 2000

func sideName(dir, end string) string {
	return filepath.Join(filepath.Dir(dir), hidden+filepath.Base(dir)+end)
}

// swapIn builds the new folder beside the old one and swaps them.
func (p *plan) swapIn() (err error) {
	tmp := sideName(p.dir, ".new")
	old, err := os.Stat(p.dir)
	there := err == nil
	if err := os.Mkdir(tmp, 0o777); err != nil {
		if there {
			return fmt.Errorf("%w: %w", errNoSwap, err)
		}
		return err
	}
	swapped := false
	defer func() {
		if !swapped {
			os.RemoveAll(tmp)
		}
	}()
	var kept map[string]fs.FileInfo
	if there {
		if kept, err = p.carry(tmp, old); err != nil {
			return err
		}
	}
	if err := p.fill(tmp); err != nil {
		return err
	}
	if !there {
		err := os.Rename(tmp, p.dir)
		swapped = err == nil
		syncDir(filepath.Dir(p.dir))
		return err
	}
	if err := swap(tmp, p.dir); err != nil {
		return fmt.Errorf("%w: %w", errNoSwap, err)
	}
	swapped = true
	syncDir(filepath.Dir(p.dir))
	if p.rescue(tmp, kept) == nil {
		os.RemoveAll(tmp) // what cannot be removed is tried again by the next run
	}
	return nil
}

// swap puts the folder new in the place of old, which is then called new.
func swap(new, old string) error {
	err := exchange(new, old)
	if err == nil {
		return nil
	}
	aside := strings.TrimSuffix(new, ".new") + ".old"
	if err := os.Rename(old, aside); err != nil {
		return err
	}
	if err := os.Rename(new, old); err != nil {
		return errors.Join(err, os.Rename(aside, old))
	}
	return os.Rename(aside, new)
}

// recoverSwaps ends in a folder, whose lock is held, what killed runs began:
// an old folder that lost its name gets it back, a folder not in use goes.
func recoverSwaps(parent string) {
	entries, err := os.ReadDir(parent)
	if err != nil {
		return
	}
	for _, e := range entries {
		name, ours := strings.CutPrefix(e.Name(), hidden)
		if !ours || !e.IsDir() || e.Name() == HistoryName {
			continue
		}
		at := filepath.Join(parent, e.Name())
		if base, ok := strings.CutSuffix(name, ".old"); ok {
			if _, err := os.Lstat(filepath.Join(parent, base)); errors.Is(err, fs.ErrNotExist) {
				os.Rename(at, filepath.Join(parent, base))
				continue
			}
			os.RemoveAll(at)
		} else if strings.HasSuffix(name, ".new") {
			os.RemoveAll(at)
		}
	}
}

// fill writes the new files and the manifest into a folder.
func (p *plan) fill(dir string) error {
	for _, f := range p.Files {
		to := filepath.Join(dir, filepath.FromSlash(f.Name))
		if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
			return err
		}
		like, _ := os.Lstat(p.at(f.Name)) // none: a new file
		if p.aside[f.Name] != "" {
			like = nil
		}
		tmp, err := stage(filepath.Dir(to), filepath.Base(to), f.Data, like)
		if err == nil {
			err = os.Rename(tmp, to)
		}
		if err != nil {
			return err
		}
	}
	tmp, err := stage(dir, "files", p.after().bytes(), nil)
	if err != nil {
		return err
	}
	syncDir(dir)
	return os.Rename(tmp, filepath.Join(dir, ManifestName))
}

// carry brings everything that is not replaced or stale into the new folder,
// by a second name where the disk can (nothing is copied), else by a copy.
func (p *plan) carry(to string, old fs.FileInfo) (kept map[string]fs.FileInfo, err error) {
	keepOwner(to, old)
	if err := os.Chmod(to, old.Mode().Perm()); err != nil {
		return nil, err
	}
	kept = map[string]fs.FileInfo{}
	replaced := map[string]bool{ManifestName: true, lockName: true}
	for _, f := range p.Files {
		replaced[f.Name] = true
	}
	err = filepath.WalkDir(p.dir, func(at string, d fs.DirEntry, err error) error {
		rel, _ := filepath.Rel(p.dir, at)
		if err != nil || rel == "." {
			return err
		}
		name := filepath.ToSlash(rel)
		if d.IsDir() {
			return p.carryDir(at, filepath.Join(to, rel))
		}
		target := name
		if p.aside[name] != "" {
			target = p.aside[name]
		} else if replaced[name] || p.drop[name] || leftover.MatchString(d.Name()) {
			return nil
		}
		if len(kept) == maxCarried {
			return fmt.Errorf("%w: too many files in it", errNoSwap)
		}
		if kept[name], err = d.Info(); err != nil {
			return err
		}
		dest := filepath.Join(to, filepath.FromSlash(target))
		if err := os.MkdirAll(filepath.Dir(dest), 0o777); err != nil {
			return err
		}
		return second(at, dest, kept[name])
	})
	return kept, err
}

// carryDir makes a folder of the old one anew, unless it held ours alone.
func (p *plan) carryDir(from, to string) error {
	inside, err := os.ReadDir(from)
	if err != nil {
		return err
	}
	rel, _ := filepath.Rel(p.dir, from)
	for name := range p.drop {
		if len(inside) == 1 && filepath.FromSlash(name) == filepath.Join(rel, inside[0].Name()) {
			return nil
		}
	}
	st, err := os.Stat(from)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(to, 0o777); err != nil {
		return err
	}
	keepOwner(to, st)
	return os.Chmod(to, st.Mode().Perm()|0o700)
}

// second gives a file another name in another folder.
func second(from, to string, st fs.FileInfo) error {
	if st.Mode()&fs.ModeSymlink != 0 {
		dest, err := os.Readlink(from)
		if err != nil {
			return err
		}
		return os.Symlink(dest, to)
	}
	if os.Link(from, to) == nil {
		return nil
	}
	if !st.Mode().IsRegular() {
		return fmt.Errorf("%s is not an ordinary file: move it elsewhere", from)
	}
	return copyFile(from, to, st)
}

func copyFile(from, to string, st fs.FileInfo) error {
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_CREATE|os.O_EXCL|os.O_WRONLY, st.Mode().Perm()|0o200)
	if err != nil {
		return err
	}
	_, err = io.Copy(out, in)
	if err == nil {
		err = out.Sync()
	}
	if cerr := out.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		keepOwner(to, st)
		err = os.Chmod(to, st.Mode().Perm())
	}
	if err == nil {
		err = os.Chtimes(to, st.ModTime(), st.ModTime())
	}
	return err
}

// rescue brings over what came into the old folder while the new one was
// built: files that were not carried, and not ours.
func (p *plan) rescue(old string, kept map[string]fs.FileInfo) error {
	return filepath.WalkDir(old, func(at string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		rel, _ := filepath.Rel(old, at)
		name := filepath.ToSlash(rel)
		st, err := d.Info()
		if err != nil {
			return err
		}
		k := kept[name]
		switch {
		case k != nil && os.SameFile(k, st) && (names(st) > 1 || k.ModTime().Equal(st.ModTime())):
			return nil
		case name == ManifestName, name == lockName, leftover.MatchString(d.Name()), p.was.is(name, sumOf(at)):
			return nil
		case p.aside[name] == "" && p.isNew(name, at):
			return nil
		}
		to := p.at(name)
		if _, err := os.Lstat(to); err == nil {
			to = free(to)
			p.report.Kept = append(p.report.Kept, [2]string{p.shown(name), to})
		}
		if err := os.MkdirAll(filepath.Dir(to), 0o777); err != nil {
			return err
		}
		return os.Rename(at, to)
	})
}

// isNew reports whether an old file is the same as the new one of its name.
func (p *plan) isNew(name, at string) bool {
	for _, f := range p.Files {
		if f.Name == name {
			return sumOf(at) == sum(f.Data)
		}
	}
	return false
}
