//go:build unix

package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// TestHugeBatches: what nobody cooks must still end soon, in bounded memory,
// with words.
func TestHugeBatches(t *testing.T) {
	if testing.Short() {
		t.Skip("runs for seconds")
	}
	dir, _ := season(t)
	for _, c := range []struct {
		name, text, words string
	}{
		{"ingredients.toml", manyIngredients(100_000), "ingredient"},
		{"flawed.toml", strings.ReplaceAll(manyIngredients(50_000), `"1 g"`, `"1 gg"`), "error: "},
		{"deep.toml", "a = " + strings.Repeat("[", 200_000), "error: "},
		{"keys.toml", strings.Repeat("a.", 100_000) + "b = 1", "error: "},
		{"text.toml", `name = "` + strings.Repeat("jam ", 1_000_000) + `"`, "error: "},
		{"jars.toml", manyJars(20_000), "error: "},
	} {
		t.Run(c.name, func(t *testing.T) {
			if err := os.WriteFile(filepath.Join(dir, c.name), []byte(c.text), 0o644); err != nil {
				t.Fatal(err)
			}
			ctx, stop := context.WithTimeout(context.Background(), 90*time.Second)
			defer stop()
			self := jarmark(t, dir)
			cmd := exec.CommandContext(ctx, self.Path, "check", c.name)
			cmd.Dir, cmd.Env = dir, self.Env
			began := time.Now()
			out, _ := cmd.CombinedOutput()
			took, rss := time.Since(began), peakMB(cmd.ProcessState)
			t.Logf("%.1f MB read: %.1f s, %d MB at most, %.1f MB printed", float64(len(c.text))/1e6, took.Seconds(), rss, float64(len(out))/1e6)
			if code := cmd.ProcessState.ExitCode(); code != exitProblem {
				t.Errorf("exit state %d, want 1\n%s", code, tail(out))
			}
			if !strings.Contains(string(out), c.words) || strings.Contains(string(out), "goroutine ") {
				t.Errorf("no clear words:\n%s", tail(out))
			}
			if rss > 1000 || len(out) > 2<<20 {
				t.Errorf("%d MB, %d kB printed", rss, len(out)>>10)
			}
		})
	}
}

// peakMB is the largest memory a process had, in MB (ru_maxrss, kB on Linux).
func peakMB(p *os.ProcessState) int64 {
	u, ok := p.SysUsage().(*syscall.Rusage)
	if !ok {
		return 0
	}
	return int64(u.Maxrss) / 1024
}

func manyIngredients(n int) string {
	var b strings.Builder
	b.WriteString("name = \"Everything jam\"\nkind = \"jam\"\nmade = 2026-09-01\n")
	for i := range n {
		fmt.Fprintf(&b, "[[ingredient]]\nname = \"fruit %d\"\namount = \"1 g\"\n", i)
	}
	return b.String()
}

func manyJars(n int) string {
	var b strings.Builder
	b.WriteString("name = \"Plum jam\"\nkind = \"jam\"\nmade = 2026-09-01\n[[ingredient]]\nname = \"plums\"\namount = \"900 kg\"\n")
	for range n {
		b.WriteString("[[fill]]\njar = \"8 fl oz\"\ncount = 100\n")
	}
	return b.String()
}
