package store

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestPublishAppearsWholeOrNotAtAll(t *testing.T) {
	dir := t.TempDir()
	if err := Publish(dir, []File{{"a.txt", []byte("one")}, {"sub/b.txt", []byte("two")}}); err != nil {
		t.Fatal(err)
	}
	// The second file cannot be staged (its folder is a file): the first must
	// keep its earlier content.
	err := Publish(dir, []File{{"a.txt", []byte("changed")}, {"a.txt/x", []byte("no")}})
	if err == nil {
		t.Fatal("want an error")
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "a.txt")); string(got) != "one" {
		t.Errorf("a.txt = %q, want the earlier content", got)
	}
	left, _ := filepath.Glob(filepath.Join(dir, ".*"))
	if len(left) != 0 {
		t.Errorf("temporary files left: %v", left)
	}
}

// A folder in the way is found before the first file is replaced.
func TestPublishOntoFolder(t *testing.T) {
	dir := t.TempDir()
	if err := Publish(dir, []File{{"a.txt", []byte("one")}, {"z/in.txt", nil}}); err != nil {
		t.Fatal(err)
	}
	if err := Publish(dir, []File{{"a.txt", []byte("two")}, {"z", []byte("no")}}); err == nil {
		t.Fatal("a folder was overwritten")
	}
	if got, _ := os.ReadFile(filepath.Join(dir, "a.txt")); string(got) != "one" {
		t.Errorf("a.txt = %q, want the earlier content", got)
	}
}

// What a killed run left is cleared away by a later one, but neither another
// run's work nor the maker's own hidden files.
func TestPublishSweeps(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a [b]")
	old := time.Now().Add(-2 * time.Hour)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	for n, gone := range map[string]bool{".labels.pdf.123.tmp": true, ".labels.pdf.456.tmp": false, ".mine.tmp": false, ".notes": false} {
		p := filepath.Join(dir, n)
		if err := os.WriteFile(p, nil, 0o644); err != nil {
			t.Fatal(err)
		}
		if gone || n == ".mine.tmp" || n == ".notes" {
			if err := os.Chtimes(p, old, old); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := Publish(dir, []File{{"labels.pdf", []byte("pdf")}}); err != nil {
		t.Fatal(err)
	}
	entries, _ := os.ReadDir(dir)
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if want := ".labels.pdf.456.tmp .mine.tmp .notes labels.pdf"; strings.Join(got, " ") != want {
		t.Errorf("left %v, want %s", got, want)
	}
}

func TestPublishRefusesInput(t *testing.T) {
	dir := t.TempDir()
	in := filepath.Join(dir, "batch.toml")
	if err := os.WriteFile(in, []byte("name"), 0o644); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "labels.pdf")
	if err := os.Link(in, link); err != nil {
		t.Skip("no hard links here")
	}
	err := Publish(dir, []File{{"labels.pdf", []byte("pdf")}}, in)
	if !errors.Is(err, ErrOntoInput) {
		t.Errorf("err = %v, want ErrOntoInput", err)
	}
	if err := Publish(dir, []File{{"../x", nil}}); err == nil {
		t.Error("a name that leaves the folder was accepted")
	}
}

func TestWriteFileReplacesLinkNotTarget(t *testing.T) {
	dir := t.TempDir()
	target, link := filepath.Join(dir, "target"), filepath.Join(dir, "link")
	if err := os.WriteFile(target, []byte("keep"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, link); err != nil {
		t.Skip("no symlinks here")
	}
	if err := WriteFile(link, []byte("new")); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(target); string(got) != "keep" {
		t.Errorf("the link's target was overwritten: %q", got)
	}
}

func TestSaveDetectsConflictAndKeepsPrevious(t *testing.T) {
	p := filepath.Join(t.TempDir(), "b.toml")
	if err := Save(p, nil, []byte("v1")); err != nil {
		t.Fatal(err)
	}
	if err := Save(p, []byte("v1"), []byte("v2")); err != nil {
		t.Fatal(err)
	}
	if err := Save(p, []byte("v1"), []byte("v3")); !errors.Is(err, ErrChanged) {
		t.Errorf("err = %v, want ErrChanged", err)
	}
	if got, _ := os.ReadFile(p + "~"); string(got) != "v1" {
		t.Errorf("previous version = %q, want v1", got)
	}
	if got, _ := os.ReadFile(p); string(got) != "v2" {
		t.Errorf("file = %q, want v2", got)
	}
}

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
