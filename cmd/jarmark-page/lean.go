//go:build !js

package main

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// call is where text/template calls a method by its name: because of this one
// line the linker keeps every exported method of every type in the program. Our
// pages call none (TestPagesCallNoMethods), so the browser's program is built
// with noCall in its place: an eighth smaller to load, and sooner started.
const (
	call   = "method := ptr.MethodByName(fieldName)"
	noCall = "method := (reflect.Value{})"
)

// lean writes what `go build -overlay` reads, into a folder, and gives the
// flag. A Go whose text/template has another line there is left as it is: then
// the program is larger, and nothing else is different.
func lean(dir string) (flag string, err error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return "", fmt.Errorf("go env GOROOT: %w", err)
	}
	from := filepath.Join(strings.TrimSpace(string(root)), "src", "text", "template", "exec.go")
	source, err := os.ReadFile(from)
	if err != nil || strings.Count(string(source), call) != 1 {
		fmt.Fprintln(os.Stderr, "note: the text/template of this Go is another than expected: the program is an eighth larger")
		return "-overlay=", nil
	}
	to, list := filepath.Join(dir, "exec.go"), filepath.Join(dir, "overlay.json")
	if err := os.WriteFile(to, []byte(strings.Replace(string(source), call, noCall, 1)), 0o600); err != nil {
		return "", err
	}
	text, err := json.Marshal(map[string]map[string]string{"Replace": {from: to}})
	if err != nil {
		return "", err
	}
	return "-overlay=" + list, os.WriteFile(list, text, 0o600)
}
