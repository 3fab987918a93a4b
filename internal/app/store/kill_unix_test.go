//go:build unix

package store

import (
	"errors"
	"fmt"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"
)

// swaps skips where a folder cannot be swapped in one step.
func swaps(t *testing.T) {
	t.Helper()
	a, b := t.TempDir(), t.TempDir()
	if err := exchange(a, b); err != nil {
		t.Skip(err)
	}
}

const publisher = "JARMARK_TEST_PUBLISHER"

// TestPublisher is no test: the process TestPublishKilled kills. It publishes
// one set of files after another without end.
func TestPublisher(t *testing.T) {
	dir := os.Getenv(publisher)
	if dir == "" {
		t.Skip("only as a process of its own")
	}
	os.Stdout.WriteString("begun\n")
	for n := 0; ; n++ {
		if _, err := Publish(Results{Dir: dir, Files: numbered(n % 2), Whole: true}); err != nil {
			t.Fatal(err)
		}
	}
}

// numbered is a set of files that all say n; each set has one of its own.
func numbered(n int) (out []File) {
	for i := range 6 {
		out = append(out, File{Name: fmt.Sprintf("sub%d/%d.txt", i%2, i), Data: fmt.Append(nil, n)})
	}
	return append(out, File{Name: fmt.Sprintf("only-%d.txt", n), Data: fmt.Append(nil, n)})
}

// Whenever a run is killed, the folder is one set, whole, with the maker's own
// file in it.
func TestPublishKilled(t *testing.T) {
	swaps(t)
	dir := filepath.Join(t.TempDir(), "L1")
	publish(t, Results{Dir: dir, Files: numbered(1), Whole: true})
	begun := time.Now()
	publish(t, Results{Dir: dir, Files: numbered(0), Whole: true})
	one := max(time.Since(begun), 5*time.Millisecond) // what one publishing takes here
	write(t, filepath.Join(dir, "mine.txt"), "mine")
	rnd := rand.New(rand.NewSource(1))
	both := map[string]int{}
	for range 60 {
		cmd := exec.Command(os.Args[0], "-test.run=^TestPublisher$")
		cmd.Env = append(os.Environ(), publisher+"="+dir)
		says, err := cmd.StdoutPipe()
		if err == nil {
			err = cmd.Start()
		}
		if err == nil { // it is at work, however slow the machine
			_, err = says.Read(make([]byte, 1))
		}
		if err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(rnd.Int63n(int64(5 * one))))
		cmd.Process.Kill()
		cmd.Wait()
		n, err := os.ReadFile(filepath.Join(dir, "sub0", "0.txt"))
		if err != nil {
			t.Fatal(err)
		}
		both[string(n)]++
		holds(t, dir, "mine.txt", "only-"+string(n)+".txt", "sub0/0.txt", "sub0/2.txt", "sub0/4.txt", "sub1/1.txt", "sub1/3.txt", "sub1/5.txt")
		for i := range 6 {
			has(t, filepath.Join(dir, fmt.Sprintf("sub%d", i%2), fmt.Sprintf("%d.txt", i)), string(n))
		}
		has(t, filepath.Join(dir, "mine.txt"), "mine")
	}
	if len(both) != 2 {
		t.Errorf("kills met only %v", both)
	}
	publish(t, Results{Dir: dir, Files: numbered(3), Whole: true}) // ours still, to the last file
	if left, _ := filepath.Glob(filepath.Join(filepath.Dir(dir), ".*")); len(left) != 0 {
		t.Errorf("left: %v", left)
	}
}

// The folder is never missing while it is replaced.
func TestPublishIsOneStep(t *testing.T) {
	swaps(t)
	dir := filepath.Join(t.TempDir(), "L1")
	publish(t, Results{Dir: dir, Files: files("a.txt", "first")})
	done := make(chan int)
	go func() {
		missed := 0
		for {
			select {
			case done <- missed:
				return
			default:
			}
			if _, err := os.Stat(filepath.Join(dir, "a.txt")); errors.Is(err, os.ErrNotExist) {
				missed++
			}
		}
	}()
	for i := range 100 {
		publish(t, Results{Dir: dir, Files: files("a.txt", fmt.Sprint(i))})
	}
	if n := <-done; n > 0 {
		t.Errorf("the results were missing %d times", n)
	}
}
