//go:build unix

package store

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

// TestSomethingStandsInTheWay: a file or a dead link where the folder of
// results, or one above it, is to be is told by name, and stays.
func TestSomethingStandsInTheWay(t *testing.T) {
	for what, put := range map[string]func(string) error{
		"a file":      func(p string) error { return os.WriteFile(p, []byte("mine"), 0o644) },
		"a dead link": func(p string) error { return os.Symlink("gone", p) },
	} {
		for _, below := range []string{"", "lot", "a/b"} {
			at := filepath.Join(t.TempDir(), "out")
			if err := put(at); err != nil {
				t.Fatal(err)
			}
			_, err := Publish(Results{Dir: filepath.Join(at, below), Files: []File{{Name: "x.txt", Data: []byte("x")}}})
			if !errors.Is(err, ErrInTheWay) {
				t.Errorf("%s, results in out/%s: %v", what, below, err)
			}
			if st, err := os.Lstat(at); err != nil || st.IsDir() {
				t.Errorf("%s, results in out/%s: it is gone", what, below)
			}
		}
	}
}

// TestDeadLinkIsNoAbsence: a kitchen's or a ledger's link that leads nowhere is
// told; another kitchen above must not stand in for it.
func TestDeadLinkIsNoAbsence(t *testing.T) {
	dir := t.TempDir()
	below := filepath.Join(dir, "june")
	if err := errors.Join(os.Mkdir(below, 0o755), os.WriteFile(filepath.Join(dir, KitchenName), nil, 0o644),
		os.Symlink("gone", filepath.Join(below, KitchenName)), os.Symlink("gone", filepath.Join(below, LedgerName))); err != nil {
		t.Fatal(err)
	}
	if _, _, err := KitchenIn(below); !errors.Is(err, ErrDangling) {
		t.Errorf("the kitchen: %v", err)
	}
	if _, err := Ledger(filepath.Join(below, KitchenName), ""); !errors.Is(err, ErrDangling) {
		t.Errorf("the ledger: %v", err)
	}
	if _, ok, err := KitchenIn(dir); !ok || err != nil {
		t.Errorf("the kitchen above: %v, %v", ok, err)
	}
}
