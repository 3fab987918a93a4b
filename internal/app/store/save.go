package store

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode/utf8"
)

// HistoryName is the folder beside a maker's files that keeps every earlier
// version: .jarmark-history/plum.toml/0001.toml, 0002.toml...
const HistoryName = ".jarmark-history"

// Edit is a new text for one of the maker's files.
type Edit struct {
	Path     string
	Was, Now []byte // Was: the text the edit began from; nil for a new file
	Recode   bool   // Was is not UTF-8, and Now says the same in it
	Passing  bool   // Was is a passing state of one sitting: the history keeps none of it
}

// Save is SaveAll for one file.
func Save(path string, was, now []byte) error {
	return SaveAll([]Edit{{Path: path, Was: was, Now: now}})
}

// SaveAll writes edits into the maker's files, all or none. A file keeps its
// mode, its owner (where permitted) and the links that lead to it, and its
// earlier version goes into the history. It refuses a file that no longer
// holds Was (ErrChanged), that is read-only, has a second name, or is no UTF-8
// text. The folders are locked meanwhile.
func SaveAll(edits []Edit) (err error) {
	var all []*saving
	var dirs []string
	for _, e := range edits {
		s := &saving{Edit: e, path: real(e.Path)}
		all, dirs = append(all, s), append(dirs, filepath.Dir(s.path))
	}
	unlock, err := lockAll(dirs)
	if err != nil {
		return err
	}
	defer unlock()
	for _, s := range all {
		sweep(filepath.Dir(s.path))
	}
	defer func() {
		for _, s := range all {
			if err != nil {
				err = errors.Join(err, s.undo())
			}
			os.Remove(s.staged)
		}
	}()
	for _, s := range all {
		if err := s.prepare(); err != nil {
			return err
		}
	}
	for _, s := range all {
		if err := s.finish(); err != nil {
			return err
		}
	}
	return nil
}

// Discard takes one of the maker's files away and keeps it in the history. It
// refuses what Save refuses.
func Discard(path string, was []byte) error {
	s, unlock, err := begun(Edit{Path: path, Was: was})
	if err != nil {
		return err
	}
	defer unlock()
	if err := s.check(); err != nil {
		return err
	}
	if _, err := keep(s.path, was, s.old); err != nil {
		return err
	}
	err = os.Remove(s.path)
	syncDir(filepath.Dir(s.path))
	return err
}

// begun locks the folder of a file that is there, and looks at it.
func begun(e Edit) (s *saving, unlock func(), err error) {
	s = &saving{Edit: e, path: real(e.Path)}
	if unlock, err = lock(filepath.Dir(s.path)); err != nil {
		return nil, nil, err
	}
	if s.old, err = os.Lstat(s.path); err != nil {
		unlock()
		return nil, nil, err
	}
	return s, unlock, nil
}

// CanSave says what would keep Save from writing a file.
func CanSave(path string) error {
	s, unlock, err := begun(Edit{Path: path})
	if err != nil {
		return err
	}
	defer unlock()
	if s.Was, err = os.ReadFile(s.path); err != nil {
		return err
	}
	return s.check()
}

// saving is one edit on its way to the disk.
type saving struct {
	Edit
	path   string      // where the file really lies
	old    fs.FileInfo // nil: a new file
	staged string      // the new text, flushed to disk
	kept   string      // the earlier version in the history
	done   bool
}

// prepare does all that can fail for want of room or rights, without touching
// the file.
func (s *saving) prepare() error {
	st, err := os.Lstat(s.path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && len(s.Was) == 0:
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: %w", s.Path, ErrChanged)
	case err != nil:
		return err
	default:
		s.old = st
		if err := s.check(); err != nil || bytes.Equal(s.Was, s.Now) {
			return err
		}
		if !s.Passing {
			if s.kept, err = keep(s.path, s.Was, st); err != nil {
				return err
			}
		}
	}
	if !text(s.Now) {
		return fmt.Errorf("%s: %w", s.Path, ErrNotText)
	}
	s.staged, err = stage(filepath.Dir(s.path), filepath.Base(s.path), s.Now, s.old)
	return err
}

// check holds the file on disk against the edit.
func (s *saving) check() error {
	wrap := func(err error) error { return fmt.Errorf("%s: %w", s.Path, err) }
	if !s.old.Mode().IsRegular() {
		return fmt.Errorf("%s is not an ordinary file", s.Path)
	}
	data, err := os.ReadFile(s.path)
	switch {
	case err != nil:
		return err
	case !text(data) && !s.Recode:
		return wrap(ErrNotText)
	case !bytes.Equal(data, s.Was):
		return wrap(ErrChanged)
	case s.old.Mode().Perm()&0o222 == 0:
		return wrap(ErrReadOnly)
	case names(s.old) > 1:
		return wrap(ErrLinked)
	}
	f, err := os.OpenFile(s.path, os.O_WRONLY, 0) // asks the system, writes nothing
	if err != nil {
		return err
	}
	return f.Close()
}

func (s *saving) finish() error {
	if s.staged == "" {
		return nil // nothing changed
	}
	if err := os.Rename(s.staged, s.path); err != nil {
		return err
	}
	s.done = true
	syncDir(filepath.Dir(s.path))
	return nil
}

// undo puts the earlier text back after another file of the same edit failed.
func (s *saving) undo() error {
	var err error
	switch {
	case s.done && s.old == nil:
		err = os.Remove(s.path)
	case s.done:
		var was string
		if was, err = stage(filepath.Dir(s.path), filepath.Base(s.path), s.Was, s.old); err == nil {
			err = os.Rename(was, s.path)
		}
	}
	if err != nil {
		return fmt.Errorf("%s was changed, its earlier text is in %s: %w", s.Path, s.kept, err)
	}
	if s.kept != "" {
		os.Remove(s.kept)
		os.Remove(filepath.Dir(s.kept)) // when this was the first
		os.Remove(filepath.Dir(filepath.Dir(s.kept)))
	}
	return nil
}

// text reports whether data is UTF-8. UTF-16 without a mark passes for UTF-8
// with NULs, which no text has.
func text(data []byte) bool { return utf8.Valid(data) && bytes.IndexByte(data, 0) < 0 }

// keep writes an earlier version into the history under the next number,
// with the file's own mode, owner and time.
func keep(path string, data []byte, st fs.FileInfo) (string, error) {
	dir := filepath.Join(filepath.Dir(path), HistoryName, filepath.Base(path))
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return "", err
	}
	for n := lastKept(dir) + 1; ; n++ {
		to := filepath.Join(dir, fmt.Sprintf("%04d%s", n, filepath.Ext(path)))
		staged, err := stage(dir, filepath.Base(to), data, st)
		if err != nil {
			return "", err
		}
		_ = os.Chtimes(staged, st.ModTime(), st.ModTime())
		err = settle(staged, to)
		if !errors.Is(err, fs.ErrExist) {
			syncDir(dir)
			return to, err
		}
	}
}

// PutBack saves the newest earlier version of a file that now holds a text, or
// first where there is none. What it puts aside is kept like any other, so that
// a second call brings it back.
func PutBack(path string, now, first []byte) error {
	at := real(path)
	dir := filepath.Join(filepath.Dir(at), HistoryName, filepath.Base(at))
	if n := lastKept(dir); n > 0 {
		var err error
		if first, err = os.ReadFile(filepath.Join(dir, fmt.Sprintf("%04d%s", n, filepath.Ext(at)))); err != nil {
			return err
		}
	}
	return Save(path, now, first)
}

// settle gives a staged file a name that nobody has yet.
func settle(staged, to string) error {
	defer os.Remove(staged)
	err := os.Link(staged, to)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	if _, err := os.Lstat(to); err == nil { // a disk without links; the lock is held
		return fs.ErrExist
	}
	return os.Rename(staged, to)
}

// lastKept is the highest number in a file's history.
func lastKept(dir string) (last int) {
	entries, _ := os.ReadDir(dir) // just made: an error shows in the writing
	for _, e := range entries {
		name, _, _ := strings.Cut(e.Name(), ".")
		if n, err := strconv.Atoi(name); err == nil {
			last = max(last, n)
		}
	}
	return last
}
