//go:build unix

package main

import (
	"fmt"
	"os"
	"path/filepath"
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
