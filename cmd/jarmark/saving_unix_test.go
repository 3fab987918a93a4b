//go:build unix

package main

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"sync"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// TestCameHomeAtOnce: counts of several markets noted by as many runs at once
// all land in the one ledger.
func TestCameHomeAtOnce(t *testing.T) {
	dir, _ := season(t)
	path := filepath.Join(dir, demoBatch)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	const n = 8
	for i := range n {
		text = fmt.Appendf(text, "\n[[market]]\nevent = \"Fair %d\"\ndate = 2026-07-0%d\njars = 1\n", i, i+1)
	}
	text = regexp.MustCompile(`(?m)^(count|sealed) = \d+`).ReplaceAll(text, []byte("$1 = 40"))
	book := filepath.Join(dir, "ledger.csv")
	if err := errors.Join(os.WriteFile(path, text, 0o600), os.WriteFile(book, []byte(job.LedgerHeader), 0o600)); err != nil {
		t.Fatal(err)
	}
	var wg sync.WaitGroup
	for i := range n {
		wg.Go(func() {
			if out, err := jarmark(t, dir, "pack", demoBatch, "--event", fmt.Sprint("Fair ", i), "--came-home", "0").CombinedOutput(); err != nil {
				t.Errorf("%v\n%s", err, tail(out))
			}
		})
	}
	wg.Wait()
	now, _ := os.ReadFile(book)
	if got := bytes.Count(now, []byte(",1,sold,Fair ")); got != n {
		t.Errorf("%d of %d counts are in the ledger:\n%s", got, n, now)
	}
	if st, _ := os.Stat(book); st.Mode().Perm() != 0o600 {
		t.Errorf("mode %v, want 0600", st.Mode())
	}
	if kept, _ := filepath.Glob(filepath.Join(dir, store.HistoryName, "ledger.csv", "*")); len(kept) != n {
		t.Errorf("%d earlier versions, want %d", len(kept), n)
	}
	if now, _ := os.ReadFile(path); !bytes.Equal(now, text) {
		t.Error("the batch file was changed")
	}
}

// TestSavingIsAllOrNone: a count for a ledger that is read-only is not noted,
// and labels whose sheet cannot be noted are not written.
func TestSavingIsAllOrNone(t *testing.T) {
	dir, _ := season(t)
	book := filepath.Join(dir, "ledger.csv")
	if err := os.WriteFile(book, []byte(job.LedgerHeader), 0o444); err != nil {
		t.Fatal(err)
	}
	failsWith(t, jarmark(t, dir, "pack", demoBatch, "--event", "Millbrook Saturday Market", "--came-home", "1"),
		"ledger.csv: the file is read-only", "nothing was changed")
	if now, _ := os.ReadFile(book); string(now) != job.LedgerHeader {
		t.Error("the ledger was changed")
	}
	if err := os.Chmod(filepath.Join(dir, "kitchen.toml"), 0o444); err != nil {
		t.Fatal(err)
	}
	failsWith(t, jarmark(t, dir, "labels", demoBatch, "--remember", "-o", "plum.pdf"), "kitchen.toml: the file is read-only", "nothing was changed")
	if _, err := os.Stat(filepath.Join(dir, "plum.pdf")); err == nil {
		t.Error("the labels were written all the same")
	}
}

// TestBusyTarget: when one result cannot be replaced (here: a mount, EBUSY) all
// stay as they were, in a folder of results and beside the maker's own files.
func TestBusyTarget(t *testing.T) {
	dir, before := season(t)
	busy := filepath.Join(dir, "out", "L26165-SR", "packing-list.csv")
	mounted(t, busy, "--bind", busy)
	failsWith(t, jarmark(t, dir, "make", demoBatch), "busy", "nothing was changed")
	unchanged(t, before, tree(t, filepath.Join(dir, "out")))
	noLeftovers(t, filepath.Join(dir, "out"))

	pages := func(name string) *exec.Cmd {
		return jarmark(t, dir, "labels", demoBatch, "--format", "svg", "-o", "pages/"+name+".svg")
	}
	if out, err := pages("a").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	for n := range tree(t, filepath.Join(dir, "pages")) { // other pages to begin with
		if err := os.WriteFile(filepath.Join(dir, "pages", n), []byte("<svg>earlier</svg>"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	was := tree(t, filepath.Join(dir, "pages"))
	busy = filepath.Join(dir, "pages", "a-2.svg")
	mounted(t, busy, "--bind", busy)
	failsWith(t, pages("a"), "busy", "nothing was changed")
	unchanged(t, was, tree(t, filepath.Join(dir, "pages")))
	noLeftovers(t, filepath.Join(dir, "pages"))
}
