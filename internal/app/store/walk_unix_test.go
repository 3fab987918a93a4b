//go:build unix

package store

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// put writes small files into a fresh folder.
func put(t *testing.T, names ...string) string {
	t.Helper()
	dir := t.TempDir()
	for _, n := range names {
		p := filepath.Join(dir, filepath.FromSlash(n))
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(p, []byte("x"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// A recall reads at any depth, in any letter case, in folders named out, and
// through links, each file once; loops end.
func TestEverythingIsFound(t *testing.T) {
	deep := strings.Repeat("d/", 12) + "deep.toml"
	dir := put(t, "a.toml", "SR.TOML", "2025/b.toml", "out/c.toml", "out/L26165-SR/d.toml", "designs/e.toml", deep, "kitchen.toml", "2025/Kitchen.TOML", "note.txt", ".x.tmp.toml")
	year := put(t, "far.toml", "sub/farther.Toml")
	must(t, os.Symlink(year, filepath.Join(dir, "2024")))
	must(t, os.Symlink(year, filepath.Join(dir, "2024-again")))
	must(t, os.Symlink(dir, filepath.Join(dir, "2025", "up")))
	must(t, os.Symlink(filepath.Join(dir, "a.toml"), filepath.Join(dir, "same.toml")))
	files, unread := Everything(dir)
	var got []string
	for _, f := range files {
		rel, _ := filepath.Rel(dir, f)
		got = append(got, filepath.ToSlash(rel))
	}
	want := []string{"2024/far.toml", "2024/sub/farther.Toml", "2025/b.toml", "SR.TOML", "a.toml", deep, "designs/e.toml", "out/L26165-SR/d.toml", "out/c.toml"}
	if strings.Join(got, " ") != strings.Join(want, " ") || len(unread) != 0 {
		t.Errorf("found %v\nwant  %v\nunread %v", got, want, unread)
	}
}

// What cannot be read is named, and stops nothing: neither pipes nor links
// that lead nowhere, nor files too big, nor folders hidden or locked.
func TestEverythingUnreadIsNamed(t *testing.T) {
	dir := put(t, "a.toml", "locked/b.toml", ".old/c.toml", ".git/config", "secret.toml")
	must(t, os.Symlink("nowhere", filepath.Join(dir, "gone.toml")))
	must(t, os.Symlink("nowhere", filepath.Join(dir, "2023")))
	must(t, syscall.Mkfifo(filepath.Join(dir, "pipe.toml"), 0o644))
	f, err := os.Create(filepath.Join(dir, "big.toml"))
	must(t, err)
	must(t, f.Truncate(MaxFile+1))
	must(t, f.Close())
	want := ".old 2023 big.toml gone.toml pipe.toml"
	if os.Getuid() != 0 {
		must(t, os.Chmod(filepath.Join(dir, "locked"), 0))
		must(t, os.Chmod(filepath.Join(dir, "secret.toml"), 0))
		defer os.Chmod(filepath.Join(dir, "locked"), 0o755)
		want = ".old 2023 big.toml gone.toml locked pipe.toml secret.toml"
	}
	done := make(chan []Unread)
	var read []string
	go func() {
		done <- ReadEverything(dir, func(b, _, _ Doc) { read = append(read, filepath.Base(b.Name)) })
	}()
	select {
	case unread := <-done:
		names := map[string]bool{}
		for _, u := range unread {
			names[filepath.Base(u.Path)] = true
			if u.Why == "" || strings.Contains(u.Why, dir) {
				t.Errorf("%s: reason %q", u.Path, u.Why)
			}
		}
		for _, n := range strings.Fields(want) {
			if !names[n] {
				t.Errorf("%s is not named as unread: %v", n, unread)
			}
		}
		if len(names) != len(strings.Fields(want)) || read[0] != "a.toml" {
			t.Errorf("unread %v, read %v", unread, read)
		}
	case <-time.After(20 * time.Second):
		t.Fatal("the walk hangs")
	}
}

// A kitchen that cannot be read does not hide its batches.
func TestBatchesOfABrokenKitchenAreRead(t *testing.T) {
	dir := put(t, "a.toml", "b.toml")
	must(t, os.Symlink("nowhere-else", filepath.Join(dir, "x")))
	must(t, syscall.Mkfifo(filepath.Join(dir, KitchenName), 0o644))
	n := 0
	unread := ReadEverything(dir, func(_, k, _ Doc) {
		n++
		if k.Data != nil {
			t.Errorf("a kitchen was read from a pipe")
		}
	})
	if n != 2 || len(unread) != 2 || filepath.Base(unread[1].Path) != KitchenName {
		t.Errorf("%d read, unread %v", n, unread)
	}
}
