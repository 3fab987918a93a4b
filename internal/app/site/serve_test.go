package site

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

func built(t *testing.T) map[string][]byte {
	t.Helper()
	files, err := Files(Program{Wasm: []byte("\x00asm\x01\x00\x00\x00"), Exec: []byte("// exec")})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func served(t *testing.T, files map[string][]byte) http.Handler {
	t.Helper()
	disk := fstest.MapFS{}
	for name, data := range files {
		disk[name] = &fstest.MapFile{Data: data}
	}
	return Handler(disk)
}

func ask(h http.Handler, method, path string, headers ...string) *httptest.ResponseRecorder {
	r := httptest.NewRequest(method, path, nil)
	for i := 0; i < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w
}

func TestServed(t *testing.T) {
	files := built(t)
	var program string
	for name := range files {
		if strings.HasSuffix(name, ".wasm") {
			program = name
		}
	}
	files[program+".br"], files[program+".gz"], files[".jarmark-files"] = []byte("brotli"), []byte("gzip"), []byte("list")
	h := served(t, files)
	for _, c := range []struct{ accept, want, coding string }{
		{"gzip, deflate, br", "brotli", "br"}, {"gzip", "gzip", "gzip"}, {"br;q=0, gzip;q=0.5", "gzip", "gzip"},
		{"", "\x00asm", ""}, {"brown", "\x00asm", ""}, {"BR", "brotli", "br"}, {"br; q=0.0", "\x00asm", ""},
	} {
		w := ask(h, "GET", "/"+program, "Accept-Encoding", c.accept)
		if !strings.HasPrefix(w.Body.String(), c.want) || w.Header().Get("Content-Encoding") != c.coding || w.Header().Get("Content-Type") != "application/wasm" {
			t.Errorf("%q: %q %v", c.accept, w.Body, w.Header())
		}
		if !strings.Contains(w.Header().Get("Cache-Control"), "immutable") || w.Header().Get("Vary") != "Accept-Encoding" {
			t.Errorf("%q: %v", c.accept, w.Header())
		}
	}
	w := ask(h, "GET", "/")
	policy := w.Header().Get("Content-Security-Policy")
	if w.Code != 200 || !strings.Contains(policy, "default-src 'none'") || !strings.Contains(policy, "'wasm-unsafe-eval'") || !strings.Contains(policy, "frame-ancestors 'none'") ||
		strings.Contains(policy, "unsafe-inline") || strings.Contains(policy, "http") || w.Header().Get("X-Content-Type-Options") != "nosniff" {
		t.Errorf("%d %v", w.Code, w.Header())
	}
	if again := ask(h, "GET", "/", "If-None-Match", w.Header().Get("ETag")); again.Code != http.StatusNotModified || again.Body.Len() != 0 {
		t.Errorf("the same again: %d", again.Code)
	}
	for _, path := range []string{"/.jarmark-files", "/nowhere.js", "/../site.go", "/sw.js.br", "/app/"} {
		if w := ask(h, "GET", path); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d", path, w.Code)
		}
	}
	if w := ask(h, "POST", "/"); w.Code != http.StatusMethodNotAllowed {
		t.Errorf("POST: %d", w.Code)
	}
	if w := ask(h, "HEAD", "/sw.js"); w.Code != 200 || w.Body.Len() != 0 {
		t.Errorf("HEAD: %d, %d bytes", w.Code, w.Body.Len())
	}
}

// TestWhole: every file that another names is there, and none names an address
// outside the site.
func TestWhole(t *testing.T) {
	files := built(t)
	text := string(files["sw.js"])
	found := regexp.MustCompile(`const shell = (\[.*\]);`).FindStringSubmatch(text)
	if found == nil {
		t.Fatalf("no list in %.400s", text)
	}
	var shell []string
	if err := json.Unmarshal([]byte(found[1]), &shell); err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, name := range shell {
		listed[name] = true
		if _, ok := files[name]; !ok && name != "./" {
			t.Errorf("the service worker keeps %s, which is not there", name)
		}
	}
	named := regexp.MustCompile(`(?:src|href)="([^"#]+)"|(?:from|import\(|Worker\() ?"(?:\./)?([^"]+)"|register\("([^"]+)"`)
	outside := regexp.MustCompile(`(?i)(https?:)?//[a-z0-9-]+\.[a-z]`)
	for name, data := range files {
		if name == "wasm_exec.js" || strings.HasSuffix(name, ".wasm") || strings.HasSuffix(name, ".svg") {
			continue
		}
		if at := outside.Find(data); at != nil {
			t.Errorf("%s names %s", name, at)
		}
		for _, m := range named.FindAllSubmatch(data, -1) {
			to := string(bytes.Join(m[1:], nil))
			if _, ok := files[to]; !ok && to != "about:blank" {
				t.Errorf("%s names %s, which is not there", name, to)
			}
			if !listed[to] && to != "about:blank" && to != "sw.js" {
				t.Errorf("%s names %s, which is not kept for times without a network", name, to)
			}
		}
	}
	if strings.Contains(text, "{{") || strings.Contains(string(files["index.html"]), "{{") {
		t.Error("a template was left as it is")
	}
}

// TestVersion: a change of any file makes a new version, so that browsers take
// it over.
func TestVersion(t *testing.T) {
	version := func(p Program) string {
		files, err := Files(p)
		if err != nil {
			t.Fatal(err)
		}
		return regexp.MustCompile(`const version = "([0-9a-f]{12})"`).FindStringSubmatch(string(files["sw.js"]))[1]
	}
	a := version(Program{Wasm: []byte("\x00asm1"), Exec: []byte("1")})
	if b := version(Program{Wasm: []byte("\x00asm1"), Exec: []byte("1")}); a != b {
		t.Error("the same files have two versions")
	}
	for _, p := range []Program{{Wasm: []byte("\x00asm2"), Exec: []byte("1")}, {Wasm: []byte("\x00asm1"), Exec: []byte("2")}} {
		if version(p) == a {
			t.Error("a change has no version of its own")
		}
	}
	if _, err := Files(Program{Wasm: []byte("MZ")}); err == nil {
		t.Error("a program for no browser was taken")
	}
}
