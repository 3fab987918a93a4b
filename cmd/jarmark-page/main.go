//go:build !js

// Command jarmark-page builds the static site of the page: a folder for any web
// host, in which everything runs in the visitor's browser. It needs the Go
// toolchain and this source tree.
//
//	go run ./cmd/jarmark-page DIR
//	go run ./cmd/jarmark serve --site DIR
package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"jarmark/internal/app/site"
	"jarmark/internal/app/store"
)

func main() {
	quick := flag.Bool("quick", false, "compress less: seconds instead of minutes, and a fifth more to load")
	flag.Parse()
	if flag.NArg() != 1 {
		fmt.Fprintln(os.Stderr, "usage: go run ./cmd/jarmark-page [-quick] DIR")
		os.Exit(2)
	}
	if err := build(flag.Arg(0), *quick); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

// build makes the site and writes it into a folder, which is all old or all new.
func build(dir string, quick bool) error {
	program, err := compile()
	if err != nil {
		return err
	}
	files, err := site.Files(program)
	if err != nil {
		return err
	}
	smaller, err := compressed(files, quick)
	if err != nil {
		return err
	}
	if size := firstVisit(files, smaller); size > largest && !quick {
		return fmt.Errorf("a first visit would load %.2f MB as brotli, more than %.0f: leave something out of the program", size/1e6, largest/1e6)
	}
	r := store.Results{Dir: dir, Whole: true}
	for _, set := range []map[string][]byte{files, smaller} {
		for name, data := range set {
			r.Files = append(r.Files, store.File{Name: name, Data: data})
		}
	}
	if _, err := store.Publish(r); err != nil {
		return err
	}
	how := ""
	if quick {
		how = " (packed quickly; without -quick about a sixth less)"
	}
	for name, data := range files {
		if strings.HasSuffix(name, ".wasm") {
			fmt.Printf("%s: %.1f MB, %.2f MB as brotli, %.2f MB as gzip%s\n", filepath.Join(dir, name),
				mb(data), mb(smaller[name+".br"]), mb(smaller[name+".gz"]), how)
		}
	}
	fmt.Printf("a first visit loads %.2f MB as brotli%s\n", firstVisit(files, smaller)/1e6, how)
	fmt.Printf("put the files of %s on any web host, or look at it with: jarmark serve --site %s\n", dir, dir)
	return nil
}

// largest is how much a first visit may load, in bytes as brotli.
const largest = 4e6

// firstVisit is how many bytes a first visit loads: all but the licence.
func firstVisit(files, smaller map[string][]byte) (n float64) {
	for name := range files {
		if filepath.Ext(name) != ".txt" {
			n += float64(len(smaller[name+".br"]))
		}
	}
	return n
}

func mb(data []byte) float64 { return float64(len(data)) / 1e6 }

// compile builds the program for browsers. Symbols and inlining go, and methods
// nobody calls, and HTTP/2, which the browser speaks: without them it is a third
// smaller to load.
func compile() (p site.Program, err error) {
	tmp, err := os.MkdirTemp("", "jarmark-page-")
	if err != nil {
		return p, err
	}
	defer os.RemoveAll(tmp)
	overlay, err := lean(tmp)
	if err != nil {
		return p, err
	}
	out := filepath.Join(tmp, "jarmark.wasm")
	cmd := exec.Command("go", "build", overlay, "-tags=nethttpomithttp2", "-trimpath", "-ldflags=-s -w", "-gcflags=all=-l", "-o", out, "jarmark/cmd/jarmark-page")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	cmd.Stderr = os.Stderr
	if err := cmd.Run(); err != nil {
		return p, fmt.Errorf("go build for the browser: %w", err)
	}
	if p.Wasm, err = os.ReadFile(out); err != nil {
		return p, err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return p, fmt.Errorf("go env GOROOT: %w", err)
	}
	at := strings.TrimSpace(string(root))
	p.Exec, err = os.ReadFile(filepath.Join(at, "lib", "wasm", "wasm_exec.js"))
	p.Licences, _ = os.ReadFile(filepath.Join(at, "LICENSE")) // some systems keep it elsewhere
	return p, err
}
