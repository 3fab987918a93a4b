//go:build !js

package main

import (
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"unicode"
)

// TestPagesCallNoMethods draws every page with a text/template that cannot call
// methods by name, as the program for browsers has it.
func TestPagesCallNoMethods(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the pages' tests anew")
	}
	overlay, err := lean(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	list, err := os.ReadFile(strings.TrimPrefix(overlay, "-overlay="))
	if err != nil || strings.Count(string(list), ".go\":\"/")-len(stubs) != len(cuts) {
		t.Fatalf("a line to be cut is not where it was: see cuts; %v %s", err, list)
	}
	out, err := exec.Command("go", "test", overlay, "-short", "jarmark/internal/app/web", "jarmark/internal/give/record").CombinedOutput()
	if err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}

var classOf = regexp.MustCompile(`\\[pP](?:\{\^?([^}]*)\}|(\w))`)

// TestPatternsNameNoScript: the letters of a script by its name are left out of the
// browser's program, so no pattern of what is linked into it may name one.
func TestPatternsNameNoScript(t *testing.T) {
	list := exec.Command("go", "list", "-deps", "-f", "{{if not .Standard}}{{$d := .Dir}}{{range .GoFiles}}{{$d}}/{{.}}\n{{end}}{{end}}", "jarmark/cmd/jarmark-page")
	list.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	files, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, name := range strings.Fields(string(files)) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range classOf.FindAllStringSubmatch(string(text), -1) {
			seen++
			if c := m[1] + m[2]; unicode.Categories[c] == nil {
				t.Errorf("%s: %s names no category of letters", name, m[0])
			}
		}
	}
	if seen < 100 {
		t.Errorf("%d classes seen", seen)
	}
}
