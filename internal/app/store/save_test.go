package store

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

func TestSaveKeepsEveryEarlierVersion(t *testing.T) {
	dir := t.TempDir()
	p := filepath.Join(dir, "b.toml")
	write(t, p+"~", "the maker's own copy")
	for i := range 4 {
		var was []byte
		if i > 0 {
			was = fmt.Appendf(nil, "v%d", i)
		}
		if err := Save(p, was, fmt.Appendf(nil, "v%d", i+1)); err != nil {
			t.Fatal(err)
		}
	}
	if err := Save(p, []byte("v3"), []byte("v9")); !errors.Is(err, ErrChanged) {
		t.Errorf("err = %v, want ErrChanged", err)
	}
	if err := Save(p, []byte("v4"), []byte("v4")); err != nil {
		t.Error(err)
	}
	has(t, p, "v4")
	has(t, p+"~", "the maker's own copy")
	for i := range 3 {
		has(t, filepath.Join(dir, HistoryName, "b.toml", fmt.Sprintf("%04d.toml", i+1)), fmt.Sprintf("v%d", i+1))
	}
	holds(t, dir, HistoryName+"/b.toml/0001.toml", HistoryName+"/b.toml/0002.toml", HistoryName+"/b.toml/0003.toml", "b.toml", "b.toml~")
	if err := Save(filepath.Join(dir, "gone.toml"), []byte("was"), []byte("now")); !errors.Is(err, ErrChanged) {
		t.Errorf("a removed file: %v, want ErrChanged", err)
	}
}

func TestSaveKeepsModeAndLinks(t *testing.T) {
	dir := t.TempDir()
	real, link := filepath.Join(dir, "real", "b.toml"), filepath.Join(dir, "b.toml")
	write(t, real, "v1")
	if err := os.Chmod(real, 0o600); err != nil {
		t.Fatal(err)
	}
	if os.Symlink(filepath.Join("real", "b.toml"), link) != nil {
		t.Skip("no links here")
	}
	if err := Save(link, []byte("v1"), []byte("v2")); err != nil {
		t.Fatal(err)
	}
	has(t, real, "v2")
	if st, err := os.Lstat(link); err != nil || st.Mode()&os.ModeSymlink == 0 {
		t.Error("the link was replaced")
	}
	kept := filepath.Join(dir, "real", HistoryName, "b.toml", "0001.toml")
	for _, p := range []string{real, kept} {
		if st, err := os.Stat(p); err != nil || st.Mode().Perm() != 0o600 {
			t.Errorf("%s: mode %v, %v, want 0600", p, st.Mode(), err)
		}
	}
}

// What must not be saved over is left as it is, with its reason, and no trace.
func TestSaveRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		was  string
		now  string
		make func(t *testing.T, path string) error
		want error
	}{
		"read-only":     {"v1", "v2", func(_ *testing.T, p string) error { return os.Chmod(p, 0o444) }, ErrReadOnly},
		"a hard link":   {"v1", "v2", func(_ *testing.T, p string) error { return os.Link(p, p+".other") }, ErrLinked},
		"Latin-1":       {"219 \xb0F", "219 \uFFFDF", nil, ErrNotText},
		"UTF-16":        {"n\x00a\x00", "na", nil, ErrNotText},
		"no text to be": {"v1", "v\xff", nil, ErrNotText},
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			p, other := filepath.Join(dir, "b.toml"), filepath.Join(dir, "a.toml")
			write(t, p, c.was)
			write(t, other, "a1")
			if c.make != nil {
				if err := c.make(t, p); err != nil {
					t.Skip(err)
				}
			}
			err := SaveAll([]Edit{{Path: other, Was: []byte("a1"), Now: []byte("a2")}, {Path: p, Was: []byte(c.was), Now: []byte(c.now)}})
			if !errors.Is(err, c.want) || !strings.Contains(err.Error(), "b.toml") {
				t.Errorf("err = %v, want %v about b.toml", err, c.want)
			}
			has(t, p, c.was)
			has(t, other, "a1")
			if left, _ := filepath.Glob(filepath.Join(dir, ".*")); len(left) != 0 {
				t.Errorf("left: %v", left)
			}
			if c.want != ErrNotText && !errors.Is(CanSave(p), c.want) {
				t.Error("CanSave allows it")
			}
		})
	}
}

// Many savers on one base: exactly one wins, and with another try all land.
func TestSavesAtOnce(t *testing.T) {
	p := filepath.Join(t.TempDir(), "b.toml")
	write(t, p, "begin\n")
	var wg sync.WaitGroup
	var mu sync.Mutex
	won := 0
	for i := range 30 {
		wg.Go(func() {
			if err := Save(p, []byte("begin\n"), fmt.Appendf(nil, "begin\n%d\n", i)); err == nil {
				mu.Lock()
				won++
				mu.Unlock()
			} else if !errors.Is(err, ErrChanged) {
				t.Error(err)
			}
		})
	}
	wg.Wait()
	if won != 1 {
		t.Errorf("%d saves on one base, want 1", won)
	}
	for i := range 30 {
		wg.Go(func() {
			for {
				was, _ := os.ReadFile(p)
				err := Save(p, was, fmt.Appendf(was, "again %d\n", i))
				if err == nil {
					return
				}
				if !errors.Is(err, ErrChanged) {
					t.Error(err)
					return
				}
			}
		})
	}
	wg.Wait()
	text, _ := os.ReadFile(p)
	if n := strings.Count(string(text), "again"); n != 30 {
		t.Errorf("%d of 30 edits are in the file", n)
	}
	if kept, _ := filepath.Glob(filepath.Join(filepath.Dir(p), HistoryName, "b.toml", "*")); len(kept) != 31 {
		t.Errorf("%d earlier versions, want 31", len(kept))
	}
}
