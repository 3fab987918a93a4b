package store

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func has(t *testing.T, path, text string) {
	t.Helper()
	if got, err := os.ReadFile(path); string(got) != text {
		t.Errorf("%s = %q (%v), want %q", filepath.Base(path), got, err, text)
	}
}

// holds checks the names in a folder and below, hidden ones but the manifest's
// included.
func holds(t *testing.T, dir string, want ...string) {
	t.Helper()
	var got []string
	filepath.WalkDir(dir, func(p string, d fs.DirEntry, err error) error {
		if rel, _ := filepath.Rel(dir, p); err == nil && !d.IsDir() && d.Name() != ManifestName {
			got = append(got, filepath.ToSlash(rel))
		}
		return nil
	})
	if strings.Join(got, " ") != strings.Join(want, " ") {
		t.Errorf("%s holds %v, want %v", filepath.Base(dir), got, want)
	}
}

func files(nameText ...string) (out []File) {
	for i := 0; i < len(nameText); i += 2 {
		out = append(out, File{Name: nameText[i], Data: []byte(nameText[i+1])})
	}
	return out
}

func publish(t *testing.T, r Results) Report {
	t.Helper()
	did, err := Publish(r)
	if err != nil {
		t.Fatal(err)
	}
	return did
}

// ways are the two ways of publishing: by a swap, and file by file where the
// folder holds an input.
func ways(t *testing.T, do func(t *testing.T, dir string, inputs []string)) {
	t.Run("swap", func(t *testing.T) { do(t, filepath.Join(t.TempDir(), "L1"), nil) })
	t.Run("in place", func(t *testing.T) {
		dir := filepath.Join(t.TempDir(), "L1")
		write(t, filepath.Join(dir, "zz", "plum.toml"), "plum")
		do(t, dir, []string{filepath.Join(dir, "zz", "plum.toml")})
	})
}

// The maker's own files in a folder of results survive, and none of ours does
// once it is no longer made.
func TestPublishKeepsTheMakersFiles(t *testing.T) {
	ways(t, func(t *testing.T, dir string, inputs []string) {
		r := Results{Dir: dir, Files: files("labels.pdf", "one", "record/L1/index.html", "page", "tags.pdf", "tags", "cards.pdf", "cards"), Whole: true, Inputs: inputs}
		publish(t, r)
		write(t, filepath.Join(dir, "record", "notes.txt"), "mine")
		write(t, filepath.Join(dir, "photo.jpg"), "mine too")
		if err := os.Chmod(filepath.Join(dir, "photo.jpg"), 0o400); err != nil {
			t.Fatal(err)
		}
		write(t, filepath.Join(dir, "cards.pdf"), "cards, my way")
		r.Files = files("labels.pdf", "two")
		did := publish(t, r)
		left := []string{"cards.pdf", "labels.pdf", "photo.jpg", "record/notes.txt"}
		if inputs != nil {
			left = append(left, "zz/plum.toml")
		}
		holds(t, dir, left...)
		has(t, filepath.Join(dir, "labels.pdf"), "two")
		has(t, filepath.Join(dir, "cards.pdf"), "cards, my way")
		has(t, filepath.Join(dir, "record", "notes.txt"), "mine")
		if st, err := os.Stat(filepath.Join(dir, "photo.jpg")); err != nil || st.Mode().Perm() != 0o400 {
			t.Errorf("photo.jpg: %v %v", st.Mode(), err)
		}
		slices.Sort(did.Removed)
		if strings.Join(did.Removed, " ") != "record/L1/index.html tags.pdf" || strings.Join(did.Stale, " ") != "cards.pdf" {
			t.Errorf("told: %+v", did)
		}
	})
}

// A file that is not ours, or no longer as we wrote it, makes no way unasked;
// with Force it is kept, and the second time under the next number.
func TestPublishRefusesWhatIsNotOurs(t *testing.T) {
	ways(t, func(t *testing.T, dir string, inputs []string) {
		r := Results{Dir: dir, Files: files("a.txt", "one", "b.txt", "one"), Inputs: inputs}
		write(t, filepath.Join(dir, "b.txt"), "mine")
		refused := func(why string) {
			t.Helper()
			var f *ForeignError
			if _, err := Publish(r); !errors.As(err, &f) || f.Why != why || filepath.Base(f.Path) != "b.txt" {
				t.Fatalf("err = %v, want that b.txt %s", err, why)
			}
		}
		refused(notOurs)
		if _, err := os.Stat(filepath.Join(dir, "a.txt")); err == nil {
			t.Error("a.txt was written all the same")
		}
		r.Force = true
		if did := publish(t, r); len(did.Kept) != 1 || filepath.Base(did.Kept[0][1]) != "b.txt~1" {
			t.Errorf("kept: %v", did.Kept)
		}
		has(t, filepath.Join(dir, "b.txt~1"), "mine")
		has(t, filepath.Join(dir, "b.txt"), "one")
		write(t, filepath.Join(dir, "b.txt"), "one, and a word of mine")
		r.Force, r.Files = false, files("a.txt", "two", "b.txt", "two")
		refused(changed)
		r.Force = true
		publish(t, r)
		has(t, filepath.Join(dir, "b.txt~1"), "mine")
		has(t, filepath.Join(dir, "b.txt~2"), "one, and a word of mine")
		r.Force, r.Files = false, files("a.txt", "three", "b.txt", "three")
		publish(t, r) // ours again
	})
}

// Faults found at the last file leave the first as it was.
func TestPublishWholeOrNotAtAll(t *testing.T) {
	ways(t, func(t *testing.T, dir string, inputs []string) {
		publish(t, Results{Dir: dir, Files: files("a.txt", "one", "sub/b.txt", "one"), Inputs: inputs})
		if err := os.Chmod(filepath.Join(dir, "sub", "b.txt"), 0o444); err != nil {
			t.Fatal(err)
		}
		before, _ := os.ReadFile(filepath.Join(dir, ManifestName))
		for name, bad := range map[string][]File{
			"a folder in the way":      files("a.txt", "two", "sub", "no"),
			"a file in the way":        files("a.txt", "two", "a.txt/x", "no"),
			"a name that leads out":    files("a.txt", "two", "../x", "no"),
			"a read-only file":         files("a.txt", "two", "sub/b.txt", "two"),
			"a name too long for disk": files("a.txt", "two", strings.Repeat("x", 300), "no"),
		} {
			if _, err := Publish(Results{Dir: dir, Files: bad, Force: true, Inputs: inputs}); err == nil {
				t.Errorf("%s: no error", name)
			}
			has(t, filepath.Join(dir, "a.txt"), "one")
			has(t, filepath.Join(dir, ManifestName), string(before))
		}
		if left, _ := filepath.Glob(filepath.Join(filepath.Dir(dir), ".*")); len(left) != 0 {
			t.Errorf("left: %v", left)
		}
		fresh := filepath.Join(filepath.Dir(dir), "new", "L2")
		if _, err := Publish(Results{Dir: fresh, Files: files("a", "one", "a/b", "no")}); err == nil {
			t.Error("a file as a folder: no error")
		}
		if _, err := os.Stat(filepath.Dir(fresh)); err == nil {
			t.Error("a failed run left a new folder")
		}
	})
}

func TestPublishNeverOntoAnInput(t *testing.T) {
	top := t.TempDir()
	in := filepath.Join(top, "batch.toml")
	write(t, in, "name")
	for link, do := range map[string]func(string, string) error{"hard": os.Link, "soft": os.Symlink} {
		dir := filepath.Join(top, link)
		if err := os.Mkdir(dir, 0o755); err != nil {
			t.Fatal(err)
		}
		if do(in, filepath.Join(dir, "labels.pdf")) != nil {
			continue // no such links here
		}
		for _, r := range []Results{{}, {Single: true, Kin: func(string, []byte, []byte) bool { return true }}} {
			r.Dir, r.Files, r.Inputs, r.Force = dir, files("labels.pdf", "pdf"), []string{in}, true
			if _, err := Publish(r); !errors.Is(err, ErrOntoInput) {
				t.Errorf("%s link: %v, want ErrOntoInput", link, err)
			}
		}
	}
	has(t, in, "name")
}

// A file the maker named is replaced as usual; a link goes and its target
// stays; another kind of file is refused.
func TestPublishSingle(t *testing.T) {
	dir := t.TempDir()
	r := Results{Dir: dir, Files: files("list.csv", "new"), Single: true, Kin: func(_ string, old, _ []byte) bool { return string(old) != "other" }}
	write(t, filepath.Join(dir, "list.csv"), "old")
	publish(t, r)
	holds(t, dir, "list.csv")
	if _, err := os.Stat(filepath.Join(dir, ManifestName)); err == nil {
		t.Error("a manifest beside one named file")
	}
	write(t, filepath.Join(dir, "list.csv"), "other")
	var f *ForeignError
	if _, err := Publish(r); !errors.As(err, &f) || f.Why != otherKind {
		t.Errorf("another kind: %v", err)
	}
	write(t, filepath.Join(dir, "target"), "other")
	os.Remove(filepath.Join(dir, "list.csv"))
	if os.Symlink("target", filepath.Join(dir, "list.csv")) != nil {
		t.Skip("no links here")
	}
	publish(t, r)
	has(t, filepath.Join(dir, "target"), "other")
	has(t, filepath.Join(dir, "list.csv"), "new")
	// A name of ours that the maker did not write: the manifest decides.
	r.Kin, r.Listed = nil, true
	write(t, filepath.Join(dir, "list.csv"), "mine")
	if _, err := Publish(r); !errors.As(err, &f) || f.Why != notOurs {
		t.Errorf("a file of the maker's under our name: %v", err)
	}
	os.Remove(filepath.Join(dir, "list.csv"))
	publish(t, r)
	r.Files = files("list.csv", "newer")
	publish(t, r)
}

// Batches of one lot are told apart by the file itself, not by its name.
func TestPublishTellsBatchesApart(t *testing.T) {
	top := t.TempDir()
	a, b := filepath.Join(top, "a", "jam.toml"), filepath.Join(top, "b", "jam.toml")
	write(t, a, "a")
	write(t, b, "b")
	dir := filepath.Join(top, "out", "L1")
	by := func(dir, from string) error {
		f := files("labels.pdf", "from "+from)
		f[0].From = from
		_, err := Publish(Results{Dir: dir, Files: f, Whole: true})
		return err
	}
	var taken *TakenError
	if err := by(dir, a); err != nil {
		t.Fatal(err)
	}
	if err := by(dir, b); !errors.As(err, &taken) || taken.Batch != b || !strings.HasSuffix(taken.By, filepath.Join("a", "jam.toml")) {
		t.Errorf("err = %v, want TakenError", err)
	}
	has(t, filepath.Join(dir, "labels.pdf"), "from "+a)
	if err := by(filepath.Join(top, "out", "l1"), b); !errors.As(err, &taken) {
		t.Errorf("the lot in other letters: %v, want TakenError", err)
	}
	if err := by(dir, ""); !errors.As(err, &taken) {
		t.Errorf("the demo over a batch: %v, want TakenError", err)
	}
	t.Chdir(filepath.Join(top, "a"))
	if err := by("../out/L1", "./jam.toml"); err != nil {
		t.Errorf("the same file by another path: %v", err)
	}
	if os.Symlink(a, filepath.Join(top, "link.toml")) == nil {
		if err := by(dir, filepath.Join(top, "link.toml")); err != nil {
			t.Errorf("the same file by a link: %v", err)
		}
	}
	if err := os.Rename(a, filepath.Join(top, "a", "plum.toml")); err != nil {
		t.Fatal(err)
	}
	if err := by(dir, filepath.Join(top, "a", "plum.toml")); err != nil {
		t.Errorf("a renamed batch: %v", err)
	}
}

// What killed runs left goes with the next run, and an old folder without a
// name comes back; the maker's own hidden files stay.
func TestPublishClearsUpAfterKills(t *testing.T) {
	top := t.TempDir()
	write(t, filepath.Join(top, ".jarmark-L1.new", "labels.pdf"), "half")
	write(t, filepath.Join(top, ".jarmark-L2.old", "mine.txt"), "mine")
	write(t, filepath.Join(top, ".jarmark-history", "plum.toml", "0001.toml"), "earlier")
	write(t, filepath.Join(top, ".mine.tmp"), "mine")
	write(t, filepath.Join(top, lockName), "")
	publish(t, Results{Dir: filepath.Join(top, "L1"), Files: files("labels.pdf", "pdf")})
	holds(t, top, ".jarmark-history/plum.toml/0001.toml", ".mine.tmp", "L1/labels.pdf", "L2/mine.txt")
	write(t, filepath.Join(top, ".jarmark-12-labels.pdf.tmp"), "half")
	write(t, filepath.Join(top, ".jarmark-13-labels.pdf.old"), "the earlier one")
	publish(t, Results{Dir: top, Single: true, Files: files("other.pdf", "pdf"), Listed: true})
	has(t, filepath.Join(top, "labels.pdf"), "the earlier one")
	holds(t, top, ".jarmark-history/plum.toml/0001.toml", ".mine.tmp", "L1/labels.pdf", "L2/mine.txt", "labels.pdf", "other.pdf")
}

// The same results again touch nothing.
func TestPublishLeavesTheSameAlone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "L1")
	r := Results{Dir: dir, Files: files("a.txt", "one"), Whole: true}
	publish(t, r)
	before, _ := os.Stat(dir)
	publish(t, r)
	if after, _ := os.Stat(dir); !os.SameFile(before, after) {
		t.Error("the folder was replaced without need")
	}
	if err := os.Chmod(dir, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(filepath.Join(dir, "a.txt"), 0o640); err != nil {
		t.Fatal(err)
	}
	r.Files = files("a.txt", "two")
	publish(t, r)
	st, _ := os.Stat(dir)
	f, _ := os.Stat(filepath.Join(dir, "a.txt"))
	if st.Mode().Perm() != 0o700 || f.Mode().Perm() != 0o640 {
		t.Errorf("modes %v, %v: want 0700, 0640", st.Mode(), f.Mode())
	}
}
