//go:build unix

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The whole process, as a maker starts it, with its peak memory (ru_maxrss):
//
//	go test ./cmd/jarmark -run '^$' -bench Process
//
// cpu-ms is user and system time of all threads, which other work on the
// machine disturbs less than the clock. The binary is this test binary standing in for jarmark, a little larger
// than the one go build makes.
func BenchmarkProcessMake(b *testing.B)  { benchProcess(b, "make", demoBatch) }
func BenchmarkProcessCheck(b *testing.B) { benchProcess(b, "check", demoBatch) }
func BenchmarkProcessHelp(b *testing.B)  { benchProcess(b, "help") }

func BenchmarkProcess10000Alike(b *testing.B) {
	benchProcess(b, "labels", demoBatch, "--copies", "10000", "-o", "alike.pdf")
}

func BenchmarkProcess10000Serials(b *testing.B) {
	benchProcess(b, "labels", demoBatch, "--copies", "10000", "--serials", "-o", "serials.pdf")
}

// BenchmarkProcessFolder500 makes a folder of 500 batches, on all cores.
func BenchmarkProcessFolder500(b *testing.B) {
	dir := folder(b, 500)
	measure(b, dir, "make", ".", "--quiet")
}

// folder is n batches alike but for their lots.
func folder(b *testing.B, n int) string {
	b.Helper()
	dir, _ := season(b)
	in, err := demoInputs(nil)
	if err != nil {
		b.Fatal(err)
	}
	if err := os.Remove(filepath.Join(dir, demoBatch)); err != nil {
		b.Fatal(err)
	}
	for i := range n {
		text := fmt.Sprintf("lot = \"BENCH-%03d\"\n%s", i, in[0].Batch.Data)
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("batch%03d.toml", i)), []byte(text), 0o644); err != nil {
			b.Fatal(err)
		}
	}
	return dir
}

func benchProcess(b *testing.B, args ...string) {
	dir, _ := season(b)
	measure(b, dir, args...)
}

func measure(b *testing.B, dir string, args ...string) {
	peak, n, cpu := int64(0), 0, time.Duration(0)
	for b.Loop() {
		cmd := jarmark(b, dir, args...)
		if err := cmd.Run(); err != nil {
			b.Fatal(err)
		}
		peak = max(peak, peakMB(cmd.ProcessState))
		n, cpu = n+1, cpu+cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime()
	}
	b.ReportMetric(float64(cpu.Milliseconds())/float64(n), "cpu-ms/op")
	b.ReportMetric(float64(peak), "MB-peak")
}

// BenchmarkProcess9900Tags makes a hang tag with words of its own for each of
// 9,900 people, of names and messages of all lengths.
func BenchmarkProcess9900Tags(b *testing.B) {
	measure(b, manyTags(b, 9900), "labels", demoBatch, "--kind", "tag", "--list", "friends.csv", "-o", "tags.pdf")
}

// manyTags is a folder with a batch of enough jars and a gift list of n rows.
func manyTags(t testing.TB, n int) string {
	t.Helper()
	dir, _ := season(t)
	batch, err := os.ReadFile(filepath.Join(dir, demoBatch))
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("count = 12", "count = 10000", "sealed = 12 ", "sealed = 10000 ").Replace(string(batch))
	list := "to,message,jars\n"
	for i := range n {
		list += fmt.Sprintf("%s %d,%s %d,1\n", strings.Repeat("Bo", 1+i%7), i, strings.Repeat("with love ", i%6), i)
	}
	for name, text := range map[string]string{demoBatch: text, "friends.csv": list} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// TestManyTagsFitInMemory: 9,900 tags of other words stay below 150 MB and come
// in files of some hundred pages.
func TestManyTagsFitInMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("the race detector and coverage take memory of their own")
	}
	dir := manyTags(t, 9900)
	cmd := jarmark(t, dir, "labels", demoBatch, "--kind", "tag", "--list", "friends.csv", "-o", "tags.pdf")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	if mb := peakMB(cmd.ProcessState); mb > 150 {
		t.Errorf("%d MB at most, want 150", mb)
	}
	for _, name := range []string{"tags-1.pdf", "tags-2.pdf", "tags-3.pdf"} {
		if st, err := os.Stat(filepath.Join(dir, name)); err != nil || st.Size() > 5<<20 {
			t.Errorf("%s: %v, %v", name, st, err)
		}
	}
}

// TestTenThousandLabelsFitInMemory: 10 000 numbered labels stay below 150 MB.
func TestTenThousandLabelsFitInMemory(t *testing.T) {
	if testing.Short() {
		t.Skip("the race detector and coverage take memory of their own")
	}
	dir, _ := season(t)
	cmd := jarmark(t, dir, "labels", demoBatch, "--copies", "10000", "--serials", "-o", "serials.pdf")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, tail(out))
	}
	if mb := peakMB(cmd.ProcessState); mb > 150 {
		t.Errorf("%d MB at most, want 150", mb)
	}
}
