//go:build !js

package main

import (
	"os"
	"os/exec"
	"strings"
	"testing"
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
