//go:build !js

package main

import (
	"os/exec"
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
	if overlay == "-overlay=" {
		t.Fatal("the line of text/template that calls methods is not where it was: see const call")
	}
	out, err := exec.Command("go", "test", overlay, "-short", "jarmark/internal/app/web", "jarmark/internal/give/record").CombinedOutput()
	if err != nil {
		t.Errorf("%v\n%s", err, out)
	}
}
