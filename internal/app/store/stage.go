package store

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
)

// Hidden names that begin so are work in progress, and ours to remove.
const hidden = ".jarmark-"

// stage writes data to a fresh hidden file in dir and flushes it to disk. It
// has the mode and owner of like, when there is one.
func stage(dir, base string, data []byte, like fs.FileInfo) (string, error) {
	f, err := fresh(dir, base, ".tmp")
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if err == nil && like != nil && like.Mode().IsRegular() {
		keepOwner(f.Name(), like) // before the mode: a change of owner clears bits of it
		err = f.Chmod(like.Mode().Perm())
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

// fresh creates a file nobody had, with the mode the maker's umask gives.
func fresh(dir, base, end string) (*os.File, error) {
	for {
		path := filepath.Join(dir, fmt.Sprintf("%s%d-%s%s", hidden, rand.Uint32(), base, end))
		f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, err
		}
	}
}

// leftover is the form of the names of stage (.tmp) and backup (.old).
var leftover = regexp.MustCompile(`^\.jarmark-[0-9]+-(.+)\.(tmp|old)$`)

// sweep removes what killed runs left in a folder whose lock is held; an
// earlier file that was put aside and not replaced goes back to its name.
func sweep(dir string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	for _, e := range entries {
		m := leftover.FindStringSubmatch(e.Name())
		if m == nil || !e.Type().IsRegular() {
			continue
		}
		at, back := filepath.Join(dir, e.Name()), filepath.Join(dir, m[1])
		if _, err := os.Lstat(back); m[2] == "old" && errors.Is(err, fs.ErrNotExist) {
			os.Rename(at, back)
			continue
		}
		os.Remove(at)
	}
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

// sum is the SHA-256 of a text, in hexadecimal.
func sum(data []byte) string {
	s := sha256.Sum256(data)
	return hex.EncodeToString(s[:])
}

// sumOf is the SHA-256 of a file; empty when it cannot be read.
func sumOf(path string) string {
	f, err := os.Open(path)
	if err != nil {
		return ""
	}
	defer f.Close()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return ""
	}
	return hex.EncodeToString(h.Sum(nil))
}

// free is the first of NAME~1, NAME~2... that nobody has.
func free(path string) string {
	for n := 1; ; n++ {
		p := fmt.Sprintf("%s~%d", path, n)
		if _, err := os.Lstat(p); errors.Is(err, fs.ErrNotExist) {
			return p
		}
	}
}

// real is where a path leads, links followed as far as it exists.
func real(path string) string {
	abs, err := filepath.Abs(path)
	if err != nil {
		return path
	}
	for rest := ""; ; {
		if to, err := filepath.EvalSymlinks(abs); err == nil {
			return filepath.Join(to, rest)
		}
		up := filepath.Dir(abs)
		if up == abs {
			return path
		}
		rest, abs = filepath.Join(filepath.Base(abs), rest), up
	}
}
