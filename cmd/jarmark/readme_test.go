package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// The README shows what `check` says of two batches of the demo kitchen: the
// words there are the program's own, to the letter.
func TestReadmeShowsWhatCheckSays(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	demo, _ := filepath.Abs("../../testdata/demo")
	for _, dir := range []string{demo, t.TempDir()} {
		t.Chdir(dir)
		name := "strawberry-rhubarb.toml"
		if dir != demo {
			name = "peanut.toml"
			kitchen, err := os.ReadFile(filepath.Join(demo, "kitchen.toml"))
			if err != nil {
				t.Fatal(err)
			}
			for file, text := range map[string]string{"kitchen.toml": string(kitchen), name: block(t, string(readme), "toml", "# "+name)} {
				if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
			}
		}
		var out, msg bytes.Buffer
		a := &app{in: strings.NewReader(""), out: &out, err: &msg, getenv: func(string) string { return "" },
			now: func() time.Time { return time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC) }}
		a.run([]string{"check", name})
		want := block(t, string(readme), "", "$ jarmark check "+name)
		for _, line := range strings.Split(strings.TrimSpace(want), "\n")[1:] {
			line = strings.TrimSuffix(line, "...")
			if !strings.Contains(out.String()+msg.String(), line) {
				t.Errorf("%s: check does not say %q:\n%s%s", name, line, out.String(), msg.String())
			}
		}
	}
}

// block is the fenced block of a kind whose first line begins as given.
func block(t *testing.T, text, kind, first string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, "```"+kind+"\n"+first)
	body, _, ok2 := strings.Cut(rest, "```")
	if !ok || !ok2 {
		t.Fatalf("the README has no block %q", first)
	}
	return first + body
}
