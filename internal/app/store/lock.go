package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"
)

// lockName is the file a run holds while it writes in a folder.
const lockName = ".jarmark-lock"

// lockWait is how long a run waits for another to end.
var lockWait = 30 * time.Second

// lock takes a folder's lock. It is the system's (flock, LockFileEx), which
// takes it back when a process ends, however that ends: a lock file left by a
// kill binds nobody, and the next run takes it and removes it. Where the file
// system has no locks, the run goes on without.
func lock(dir string) (unlock func(), err error) {
	path := filepath.Join(dir, lockName)
	for until := time.Now().Add(lockWait); ; {
		f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o666)
		var pe *fs.PathError
		if errors.As(err, &pe) {
			err = &fs.PathError{Op: "writing in", Path: dir, Err: pe.Err} // the lock is not what the maker asked for
		}
		if err != nil {
			return nil, err
		}
		held := tryLock(f)
		if held && isAt(f, path) {
			return func() {
				os.Remove(path) // while it is held, so that nobody's lock is removed
				f.Close()
			}, nil
		}
		f.Close()
		if held {
			continue // the one before removed this file
		}
		if time.Now().After(until) {
			return nil, fmt.Errorf("%s: %w", dir, ErrBusy)
		}
		time.Sleep(15 * time.Millisecond)
	}
}

// isAt reports whether an open file is still the one of that name.
func isAt(f *os.File, path string) bool {
	a, err := f.Stat()
	if err != nil {
		return false
	}
	b, err := os.Stat(path)
	return err == nil && os.SameFile(a, b)
}

// lockAll takes the locks of several folders, always in one order, so that two
// runs never wait for each other.
func lockAll(dirs []string) (unlock func(), err error) {
	dirs = slices.Clone(dirs)
	slices.Sort(dirs)
	var held []func()
	unlock = func() {
		for _, u := range held {
			u()
		}
	}
	for _, d := range slices.Compact(dirs) {
		u, err := lock(d)
		if err != nil {
			unlock()
			return nil, err
		}
		held = append(held, u)
	}
	return unlock, nil
}
