package store

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
)

// Secret is a key of this account, the same each time, kept where other
// accounts cannot read it. One that they could read is made anew.
func Secret() (string, error) {
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", err
	}
	path := filepath.Join(dir, "jarmark", "page-key")
	st, err := os.Lstat(path)
	switch {
	case err == nil && st.Mode().IsRegular() && (runtime.GOOS == "windows" || st.Mode().Perm()&0o077 == 0):
		data, err := os.ReadFile(path)
		if key := strings.TrimSpace(string(data)); err == nil && len(key) >= 26 {
			return key, nil
		}
		fallthrough
	case err == nil:
		if err := os.Remove(path); err != nil {
			return "", err
		}
	case !errors.Is(err, fs.ErrNotExist):
		return "", err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return "", err
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return "", err
	}
	key := rand.Text()
	_, err = f.WriteString(key + "\n")
	return key, errors.Join(err, f.Close())
}
