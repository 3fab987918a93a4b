//go:build unix

package main

import (
	"bytes"
	"maps"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"jarmark/internal/app/store"
)

// The faults of a real machine, each met by the real program in a process of
// its own: a disk that fills, a folder that cannot be written, a kill at any
// moment, two runs at once, and files far beyond what anybody cooks. Earlier
// results stay whole, and the words say what happened.

// jarmark is a command line of the program; TestMain put it on PATH.
func jarmark(t testing.TB, dir string, args ...string) *exec.Cmd {
	t.Helper()
	path, err := exec.LookPath("jarmark")
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(path, args...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "SOURCE_DATE_EPOCH=1795564800")
	return cmd
}

// season is a folder with the demo's kitchen and one batch, and results made
// on an earlier day.
func season(t testing.TB) (dir string, before map[string][]byte) {
	t.Helper()
	dir = t.TempDir()
	for _, n := range []string{"kitchen.toml", demoBatch} {
		data, err := demoInputs(nil)
		if err != nil {
			t.Fatal(err)
		}
		text := data[0].Kitchen.Data
		if n == demoBatch {
			text = data[0].Batch.Data
		}
		if err := os.WriteFile(filepath.Join(dir, n), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	cmd := jarmark(t, dir, "make", demoBatch)
	cmd.Env = append(cmd.Env, "SOURCE_DATE_EPOCH=1790000000")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	before = tree(t, filepath.Join(dir, "out"))
	if len(before) < 5 {
		t.Fatalf("only %d results", len(before))
	}
	return dir, before
}

// tree reads every file below a folder but the hidden ones, which are work in
// progress.
func tree(t testing.TB, root string) map[string][]byte {
	t.Helper()
	out := map[string][]byte{}
	err := filepath.WalkDir(root, func(p string, d os.DirEntry, err error) error {
		if err == nil && d.IsDir() && strings.HasPrefix(d.Name(), ".") && p != root {
			return filepath.SkipDir
		}
		if err != nil || d.IsDir() || strings.HasPrefix(d.Name(), ".") {
			return err
		}
		rel, _ := filepath.Rel(root, p)
		out[rel], err = os.ReadFile(p)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func unchanged(t *testing.T, before, after map[string][]byte) {
	t.Helper()
	for n, data := range before {
		if !bytes.Equal(after[n], data) {
			t.Errorf("%s was changed", n)
		}
	}
	for n := range after {
		if _, ok := before[n]; !ok {
			t.Errorf("%s appeared", n)
		}
	}
}

// failsWith runs a command that must end with exit 1 and these words.
func failsWith(t *testing.T, cmd *exec.Cmd, words ...string) {
	t.Helper()
	out, err := cmd.CombinedOutput()
	x, ok := err.(*exec.ExitError)
	if !ok || x.ExitCode() != exitProblem {
		t.Errorf("%v, want exit state 1\n%s", err, tail(out))
	}
	for _, w := range words {
		if !strings.Contains(string(out), w) {
			t.Errorf("the message lacks %q:\n%s", w, tail(out))
		}
	}
	for _, w := range []string{"panic", "goroutine"} {
		if strings.Contains(string(out), w) {
			t.Errorf("a crash:\n%s", tail(out))
		}
	}
}

// TestFileSizeLimit: a file may not grow past 16 kB (RLIMIT_FSIZE).
func TestFileSizeLimit(t *testing.T) {
	dir, before := season(t)
	self := jarmark(t, dir)
	cmd := exec.Command("sh", "-c", `ulimit -f 16; exec "$0" make `+demoBatch, self.Path)
	cmd.Dir, cmd.Env = dir, self.Env
	failsWith(t, cmd, "jarmark: error: ", "hint: the system limits file sizes here; nothing was changed")
	unchanged(t, before, tree(t, filepath.Join(dir, "out")))
	noLeftovers(t, filepath.Join(dir, "out"))
}

func noLeftovers(t *testing.T, root string) {
	t.Helper()
	filepath.WalkDir(root, func(p string, d os.DirEntry, err error) error {
		if err == nil && strings.HasPrefix(d.Name(), ".") && d.Name() != store.ManifestName && p != root {
			t.Errorf("%s was left behind", p)
		}
		return nil
	})
}

// mounted mounts something for the test, or skips it where that is not
// permitted.
func mounted(t *testing.T, target string, args ...string) {
	t.Helper()
	if out, err := exec.Command("mount", append(args, target)...).CombinedOutput(); err != nil {
		t.Skipf("mounting is not permitted here: %s", bytes.TrimSpace(out))
	}
	t.Cleanup(func() {
		if out, err := exec.Command("umount", target).CombinedOutput(); err != nil {
			t.Errorf("umount: %s", out)
		}
	})
}

// TestFullDisk writes to a disk of 300 kB that holds earlier results.
func TestFullDisk(t *testing.T) {
	dir, _ := season(t)
	disk := filepath.Join(dir, "disk")
	if err := os.Mkdir(disk, 0o755); err != nil {
		t.Fatal(err)
	}
	mounted(t, disk, "-t", "tmpfs", "-o", "size=300k", "tmpfs")
	if out, err := jarmark(t, dir, "make", demoBatch, "-o", "disk").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	before := tree(t, disk)
	cmd := jarmark(t, dir, "make", demoBatch, "-o", "disk")
	cmd.Env = append(cmd.Env, "SOURCE_DATE_EPOCH=1800000000")
	failsWith(t, cmd, "no space left on device", "hint: the disk is full; nothing was changed")
	unchanged(t, before, tree(t, disk))
	noLeftovers(t, disk)
}

// TestReadOnlyFolder: as root only a read-only mount binds.
func TestReadOnlyFolder(t *testing.T) {
	dir, before := season(t)
	out := filepath.Join(dir, "out")
	if os.Getuid() == 0 {
		if msg, err := exec.Command("mount", "--bind", out, out).CombinedOutput(); err != nil {
			t.Skipf("mounting is not permitted here: %s", msg)
		}
		t.Cleanup(func() { exec.Command("umount", out).Run() })
		if msg, err := exec.Command("mount", "-o", "remount,ro,bind", out).CombinedOutput(); err != nil {
			t.Skipf("remounting is not permitted here: %s", msg)
		}
	} else {
		lock := func(mode os.FileMode) {
			filepath.WalkDir(out, func(p string, d os.DirEntry, err error) error {
				if err == nil && d.IsDir() {
					err = os.Chmod(p, mode)
				}
				return err
			})
		}
		lock(0o555)
		t.Cleanup(func() { lock(0o755) })
	}
	failsWith(t, jarmark(t, dir, "make", demoBatch), "jarmark: error: ", "hint: the folder cannot be written; choose another with -o")
	unchanged(t, before, tree(t, out))
}

// TestKilledAtAnyMoment kills runs after random times. The folder of a lot is
// then all old or all new, the maker's own file in it stays, and the next run
// clears up.
func TestKilledAtAnyMoment(t *testing.T) {
	dir, before := season(t)
	fresh := jarmark(t, dir, "make", demoBatch, "-o", "fresh")
	if out, err := fresh.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	after := tree(t, filepath.Join(dir, "fresh"))
	for n, of := range map[string]map[string][]byte{"out": before, "fresh": after} { // the maker's own, among the results
		mine := filepath.Join("L26165-SR", "mine.txt")
		of[mine] = []byte("mine")
		if err := os.WriteFile(filepath.Join(dir, n, mine), of[mine], 0o600); err != nil {
			t.Fatal(err)
		}
	}
	runs := 40
	if testing.Short() {
		runs = 8
	}
	rnd := rand.New(rand.NewSource(1))
	killed := 0
	for range runs {
		cmd := jarmark(t, dir, "make", demoBatch)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rnd.Intn(500)) * time.Millisecond)
		cmd.Process.Kill()
		if err := cmd.Wait(); err != nil {
			killed++
		}
		now := tree(t, filepath.Join(dir, "out"))
		if !same(now, before) && !same(now, after) {
			t.Fatal("the folder is neither the old one nor the new one")
		}
		if same(now, after) { // begin with the old one again
			old := jarmark(t, dir, "make", demoBatch)
			old.Env = append(old.Env, "SOURCE_DATE_EPOCH=1790000000")
			if out, err := old.CombinedOutput(); err != nil {
				t.Fatalf("%v\n%s", err, tail(out))
			}
		}
	}
	t.Logf("%d of %d runs were killed before they ended", killed, runs)
	if out, err := jarmark(t, dir, "make", demoBatch).CombinedOutput(); err != nil {
		t.Fatalf("a run after the kills: %v\n%s", err, tail(out))
	}
	unchanged(t, after, tree(t, filepath.Join(dir, "out")))
	noLeftovers(t, filepath.Join(dir, "out"))
}

func same(a, b map[string][]byte) bool { return maps.EqualFunc(a, b, bytes.Equal) }

// TestRunsAtOnce: several runs into one folder leave one run's whole files.
func TestRunsAtOnce(t *testing.T) {
	dir, _ := season(t)
	var wg sync.WaitGroup
	for range 6 {
		wg.Go(func() {
			if out, err := jarmark(t, dir, "make", demoBatch).CombinedOutput(); err != nil {
				t.Errorf("%v\n%s", err, tail(out))
			}
		})
	}
	wg.Wait()
	if out, err := jarmark(t, dir, "make", demoBatch, "-o", "alone").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	unchanged(t, tree(t, filepath.Join(dir, "alone")), tree(t, filepath.Join(dir, "out")))
	noLeftovers(t, filepath.Join(dir, "out"))
}
