//go:build unix

package store

import (
	"os"
	"path/filepath"
	"testing"
)

func TestSecret(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir())
	first, err := Secret()
	if err != nil || len(first) < 26 {
		t.Fatal(first, err)
	}
	if again, err := Secret(); err != nil || again != first {
		t.Errorf("%q, then %q: %v", first, again, err)
	}
	dir, err := os.UserConfigDir()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(dir, "jarmark", "page-key")
	st, err := os.Stat(path)
	if err != nil || st.Mode().Perm() != 0o600 {
		t.Error(st.Mode(), err)
	}
	if err := os.Chmod(path, 0o644); err != nil {
		t.Fatal(err)
	}
	if anew, err := Secret(); err != nil || anew == first {
		t.Errorf("a key that others could read is used on: %v", err)
	}
}
