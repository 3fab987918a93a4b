package site

import (
	"archive/zip"
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

func write(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files {
		at := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(at), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func readAll(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			var data []byte
			data, err = fs.ReadFile(os.DirFS(dir), name)
			out[name] = string(data)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestOutAndIn(t *testing.T) {
	from, to := t.TempDir(), t.TempDir()
	files := map[string]string{"plum.toml": "a", "kitchen.toml": "b", "out/L1/labels.pdf": "\x00\xff", ".jarmark-history/plum.toml/0001.toml": "old", "year 1/pear ä.toml": ""}
	write(t, from, files)
	write(t, from, map[string]string{".jarmark-lock": "", ".jarmark-3-plum.toml.tmp": "half"})
	var z bytes.Buffer
	if err := TakeOut(&z, os.DirFS(from)); err != nil {
		t.Fatal(err)
	}
	b, err := BringIn(to, "jam.zip", z.Bytes())
	if err != nil || len(b.New) != len(files) {
		t.Fatalf("%+v %v", b, err)
	}
	if got := readAll(t, to); !reflect.DeepEqual(got, files) {
		t.Errorf("got %q", got)
	}
	write(t, to, map[string]string{"plum.toml": "mine"})
	b, err = BringIn(to, "jam.zip", z.Bytes())
	if err != nil || len(b.New) != 0 || len(b.Same) != len(files)-1 || !reflect.DeepEqual(b.Left, []string{"plum.toml"}) {
		t.Errorf("%+v %v", b, err)
	}
	if got := readAll(t, to)["plum.toml"]; got != "mine" {
		t.Errorf("a file that was there became %q", got)
	}
	if says := b.String(); !strings.Contains(says, "plum.toml") || !strings.Contains(says, "0 files brought in") {
		t.Errorf("it says %q", says)
	}
}

func TestOneFileIn(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"plum.toml", "GIFTS.CSV", "logo.svg", "logo.png"} {
		if b, err := BringIn(dir, name, []byte("x")); err != nil || len(b.New) != 1 {
			t.Errorf("%s: %+v %v", name, b, err)
		}
	}
	for _, name := range []string{"plum.exe", "noend", "../up.toml", "a/b.toml", `a\b.toml`, "c:x.toml", "..", "jam.zip"} {
		var no *RefusedError
		if _, err := BringIn(dir, name, []byte("x")); !errors.As(err, &no) || no.Hint == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if n := len(readAll(t, dir)); n != 4 {
		t.Errorf("%d files, want 4", n)
	}
}

// TestZipsThatLie: a zip may name any path and unpack to any size.
func TestZipsThatLie(t *testing.T) {
	for name, entries := range map[string][]string{
		"leads out": {"good.toml", "../evil.toml"}, "from the root": {"/etc/evil.toml"}, "backslash": {`..\evil.toml`},
		"drive": {"c:/evil.toml"}, "twice": {"a.toml", "a.toml"}, "nul": {"a\x00.toml"}, "dots": {"a/../../b.toml"},
	} {
		var z bytes.Buffer
		w := zip.NewWriter(&z)
		for _, e := range entries {
			f, err := w.Create(e)
			if err != nil {
				t.Fatal(err)
			}
			f.Write([]byte("x"))
		}
		w.Close()
		dir := filepath.Join(t.TempDir(), "in")
		os.Mkdir(dir, 0o777)
		var no *RefusedError
		if _, err := BringIn(dir, "x.zip", z.Bytes()); !errors.As(err, &no) {
			t.Errorf("%s: %v", name, err)
		}
		if got := readAll(t, filepath.Dir(dir)); len(got) != 0 {
			t.Errorf("%s: wrote %q", name, got)
		}
	}
}

func TestZipBomb(t *testing.T) {
	if testing.Short() {
		t.Skip("packs 129 MB")
	}
	var z bytes.Buffer
	w := zip.NewWriter(&z)
	f, _ := w.Create("big.csv")
	block := make([]byte, 1<<20)
	for range maxBytes>>20 + 1 {
		f.Write(block)
	}
	w.Close()
	dir := t.TempDir()
	var no *RefusedError
	if _, err := BringIn(dir, "x.zip", z.Bytes()); !errors.As(err, &no) || len(readAll(t, dir)) != 0 {
		t.Errorf("%v", err)
	}
}

// TestInAllOrNone: a fault half way takes back what was written.
func TestInAllOrNone(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, map[string]string{"sub": "a file in the place of a folder"})
	var z bytes.Buffer
	w := zip.NewWriter(&z)
	for _, e := range []string{"a.toml", "sub/b.toml"} {
		f, _ := w.Create(e)
		f.Write([]byte("x"))
	}
	w.Close()
	if b, err := BringIn(dir, "x.zip", z.Bytes()); err == nil && len(b.Left) == 0 {
		t.Errorf("%+v: no fault told", b)
	} else if err != nil && len(readAll(t, dir)) != 1 {
		t.Errorf("left %q", readAll(t, dir))
	}
}
