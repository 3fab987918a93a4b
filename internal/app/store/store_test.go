package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestReadRefusesFoldersAndBigFiles(t *testing.T) {
	dir := t.TempDir()
	if _, err := Read(dir); err == nil {
		t.Error("a folder was read")
	}
	big := filepath.Join(dir, "big.toml")
	f, _ := os.Create(big)
	if err := f.Truncate(MaxFile + 1); err != nil {
		t.Fatal(err)
	}
	f.Close()
	if _, err := Read(big); !errors.Is(err, ErrTooBig) {
		t.Errorf("err = %v, want ErrTooBig", err)
	}
}

func TestKitchenIsFoundInParents(t *testing.T) {
	dir := t.TempDir()
	sub := filepath.Join(dir, "2026", "june")
	if err := os.MkdirAll(sub, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, KitchenName), []byte("name"), 0o644); err != nil {
		t.Fatal(err)
	}
	doc, ok, err := Kitchen(filepath.Join(sub, "b.toml"))
	if err != nil || !ok || !strings.HasSuffix(doc.Name, KitchenName) {
		t.Errorf("doc %q ok %v err %v", doc.Name, ok, err)
	}
	t.Chdir(sub)
	if _, ok, err := Kitchen("b.toml"); err != nil || !ok {
		t.Errorf("relative: ok %v err %v", ok, err)
	}
}

func TestBatchesSkipsKitchenAndCopies(t *testing.T) {
	dir := t.TempDir()
	for _, n := range []string{"b.toml", "a.toml", "kitchen.toml", ".hidden.toml", "a.toml~", "notes.txt"} {
		if err := os.WriteFile(filepath.Join(dir, n), nil, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := Batches(dir)
	if err != nil || len(got) != 2 || filepath.Base(got[0]) != "a.toml" {
		t.Errorf("got %v, %v", got, err)
	}
}
