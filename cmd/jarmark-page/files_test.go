//go:build !js

package main

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// osTests are those of Go's own os package that ask for files and folders.
// Left out are symbolic links, which a browser has none of, the sticky bit, and
// what reads the folders of a Unix system or of the package itself.
const (
	osTests  = `^Test(Stat|Fstat|Lstat|Read|Readdir|Readdirnames|ReadDir|HardLink|Rename|Truncate|Ftruncate|Open|Seek|Append|Write|WriteAt|ReadAt|RemoveAll|Remove|Mkdir|MkdirAll|MkdirTemp|CreateTemp|SameFile|File|Chmod|Chtimes|Sequential|CopyFS|ReadFile|WriteFile|LargeWrite|Leaf|NilFile)`
	osOthers = `Symlink|Link$|StatError|Sticky|MultiRoot|RootMulti|StatSymlinkLoop|LongPath|SmallSeek|OneAtATime|FileProc|OpenInRoot|^TestReadDir$|DevNull|^TestCopyFS$`
)

// harness runs a Go test program on files.js alone.
const harness = `
import { Files, fault, parts } from "./files.js";
const said = [];
const fs = globalThis.fs = new Files((words) => said.push(words));
let cwd = "/home";
for (const dir of ["/home", "/tmp", "/etc"]) fs.mkdir(dir, 0o777, () => {});
const add = (path) => fs.open(path, 65, 0o644, (e, fd) => { fs.write(fd, new Uint8Array(9), 0, 9, null, () => {}); fs.close(fd, () => {}); });
const at = (p) => "/" + parts(p.startsWith("/") ? p : cwd + "/" + p).join("/") + (p.length > 1 && p.endsWith("/") ? "/" : "");
const { find, place } = Files.prototype;
fs.find = (p) => find.call(fs, at(p));
fs.place = (p) => place.call(fs, at(p));
globalThis.process = { getuid: () => 0, getgid: () => 0, geteuid: () => 0, getegid: () => 0, getgroups: () => [], pid: 1, ppid: 0, umask: () => 0o22,
  cwd: () => cwd, chdir(p) { if (fs.find(p).kind !== "dir") throw fault("ENOTDIR"); cwd = at(p); } };
globalThis.path = { resolve: (...p) => at(p.join("/")) };
onmessage = async ({ data }) => {
  try {
    data.sources.map((name) => "/home/" + name).concat("/etc/group", "/etc/hosts", "/etc/passwd").forEach(add); // what the tests read
    await import("./wasm_exec.js");
    const go = new Go();
    go.argv = ["os.test", ...data.args];
    go.env = { TMPDIR: "/tmp", HOME: "/home" };
    go.exit = (code) => said.push("\nexit " + code);
    const { instance } = await WebAssembly.instantiateStreaming(fetch("os.wasm"), go.importObject);
    await go.run(instance);
  } catch (error) { said.push(String(error.stack ?? error)); }
  postMessage(said.join(""));
};`

// TestFilesAsGoWants: the files of the browser pass the tests that Go's os
// package has for every system (go test os, of the toolchain at hand).
func TestFilesAsGoWants(t *testing.T) {
	w := visit(t, 800, 600)
	wasm := filepath.Join(t.TempDir(), "os.wasm")
	cmd := exec.Command("go", "test", "-c", "-o", wasm, "os")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Skipf("Go's own tests are not to be had here: %v\n%s", err, out)
	}
	dir, _ := built()
	mux := http.NewServeMux()
	mux.Handle("/", http.FileServer(http.Dir(dir)))
	mux.HandleFunc("/os.wasm", func(rw http.ResponseWriter, r *http.Request) { http.ServeFile(rw, r, wasm) })
	mux.HandleFunc("/harness.js", func(rw http.ResponseWriter, r *http.Request) {
		rw.Header().Set("Content-Type", "text/javascript")
		rw.Write([]byte(harness))
	})
	mux.HandleFunc("/blank", func(rw http.ResponseWriter, r *http.Request) { rw.Header().Set("Content-Type", "text/html") })
	server := httptest.NewServer(mux)
	defer server.Close()
	w.do(chromedp.Navigate(server.URL + "/blank"))
	out := w.run(`const x = new Worker("/harness.js", { type: "module" });
		return await new Promise((done) => { x.onmessage = (e) => done(e.data); x.onerror = (e) => done("worker: " + e.message);
			x.postMessage({ sources: ` + sources(t) + `, args: ["-test.short", "-test.v", "-test.run", ` + "`" + osTests + "`" + `, "-test.skip", ` + "`" + osOthers + "`" + `] }); })`)
	passed := strings.Count(out, "\n--- PASS")
	if passed < 50 || !strings.Contains(out, "\nPASS\n") {
		t.Errorf("%d passed", passed)
		for _, line := range strings.Split(out, "\n") {
			if strings.Contains(line, "FAIL") || strings.Contains(line, "_test.go:") || strings.Contains(line, "exit") || strings.Contains(line, "panic") {
				t.Log(line)
			}
		}
	}
	t.Logf("%d tests of Go's os package passed", passed)
}

// sources names the files of the os package, as JSON.
func sources(t *testing.T) string {
	t.Helper()
	out, err := exec.Command("go", "list", "-f", "{{.Dir}}", "os").Output()
	if err != nil {
		t.Fatal(err)
	}
	all, _ := filepath.Glob(filepath.Join(strings.TrimSpace(string(out)), "*.go"))
	for i := range all {
		all[i] = filepath.Base(all[i])
	}
	list, _ := json.Marshal(all) // strings alone: cannot fail
	return string(list)
}
