package web

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/app/store"
)

var badNames = []string{"../plum.toml", "..", "/etc/passwd", "sub/plum.toml", `..\plum.toml`, "plum", "plum.txt", ".hidden.toml", "",
	"plum.toml\x00", "C:plum.toml", strings.Repeat("p", 200) + ".toml", "plum.toml~"}

func TestNamesThatLeaveTheFolder(t *testing.T) {
	dir := kitchenDir(t)
	put(t, filepath.Dir(dir), "plum.toml", "outside")
	h := handlerOf(t, dir)
	for _, name := range badNames {
		for _, path := range []string{"/do/save", "/do/copy", "/do/look", "/do/print"} {
			w := do(h, request("POST", path, map[string]any{"file": name, "text": plum}))
			if w.Code != http.StatusNotFound && w.Code != http.StatusBadRequest {
				t.Errorf("%s %q: %d", path, name, w.Code)
			}
		}
	}
	for _, path := range []string{"/batch/..%2fplum.toml", "/batch/%2e%2e%2fplum.toml", "/do/disk/..%2Fplum.toml", "/picture/batch/..%2fplum.toml",
		"/picture/design/orchard?batch=../plum.toml", "/static/1/..%2f..%2fdesigns%2forchard.toml", "/font/1/..%2fembed.go"} {
		if w := do(h, request("GET", path, nil)); w.Code != http.StatusNotFound {
			t.Errorf("%s: %d %.80s", path, w.Code, w.Body)
		}
	}
	if get(t, filepath.Dir(dir), "plum.toml") != "outside" {
		t.Error("a file outside was written")
	}
}

func TestLinksOutOfTheFolderAreNotFollowed(t *testing.T) {
	dir, elsewhere := kitchenDir(t), t.TempDir()
	put(t, elsewhere, "secret.toml", "name = \"Secret jam\"\n")
	for link, target := range map[string]string{"link.toml": filepath.Join(elsewhere, "secret.toml"), "out": elsewhere} {
		if err := os.Symlink(target, filepath.Join(dir, link)); err != nil {
			t.Skip("no links here")
		}
	}
	h := handlerOf(t, dir)
	if w := do(h, request("GET", "/", nil)); strings.Contains(w.Body.String(), "Secret") || strings.Contains(w.Body.String(), `batch/link.toml"`) {
		t.Error("the list follows a link out of the folder")
	}
	for _, path := range []string{"/batch/link.toml", "/do/disk/link.toml", "/picture/batch/link.toml"} {
		if w := do(h, request("GET", path, nil)); w.Code != http.StatusForbidden || strings.Contains(w.Body.String(), "Secret jam") {
			t.Errorf("%s: %d", path, w.Code)
		}
	}
	for _, base := range []string{"", mark([]byte("name = \"Secret jam\"\n"))} {
		if w := do(h, request("POST", "/do/save", saveAsk{File: "link.toml", Text: "changed", Base: base})); w.Code != http.StatusForbidden {
			t.Errorf("saved through a link: %d %s", w.Code, w.Body)
		}
	}
	if w := do(h, request("POST", "/do/make", makeAsk{[]string{"plum.toml"}})); !strings.Contains(w.Body.String(), `"error"`) {
		t.Errorf("made through a link: %s", w.Body)
	}
	if left, _ := os.ReadDir(elsewhere); len(left) != 1 || get(t, elsewhere, "secret.toml") != "name = \"Secret jam\"\n" {
		t.Errorf("something was written elsewhere: %v", left)
	}
}

func TestParentKitchenIsReadAndNeverWritten(t *testing.T) {
	dir := kitchenDir(t)
	sub := filepath.Join(dir, "2026")
	if err := os.Mkdir(sub, 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, sub, "plum.toml", plum)
	h := handlerOf(t, sub)
	if w := do(h, request("GET", "/kitchen", nil)); !strings.Contains(w.Body.String(), "14 Thornfield Lane") || strings.Contains(w.Body.String(), `id="save"`) {
		t.Errorf("the parent's kitchen is not shown, or can be edited: %d", w.Code)
	}
	a := call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap"}}, 200)
	if len(a.Labels) != 1 || !strings.Contains(a.Labels[0].SVG, "Thornfield") {
		t.Errorf("the parent's kitchen is not used: %d labels, %v", len(a.Labels), a.Findings)
	}
}

func TestSaveConflictAndCopy(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	first := call[saved](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum + "# one\n", Base: mark([]byte(plum))}, 200)
	if get(t, dir, "plum.toml") != plum+"# one\n" || get(t, dir, store.HistoryName+"/plum.toml/0001.toml") != plum || first.Mark != mark([]byte(plum+"# one\n")) {
		t.Error("not saved, or the version before is gone")
	}
	put(t, dir, "plum.toml", plum+"# theirs\n")
	c := call[conflict](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum + "# mine\n", Base: first.Mark}, 409)
	if c.Theirs != plum+"# theirs\n" || get(t, dir, "plum.toml") != c.Theirs {
		t.Errorf("%+v", c)
	}
	kept := call[saved](t, h, "/do/copy", saveAsk{File: "plum.toml", Text: plum + "# mine\n", Base: ""}, 200)
	if kept.File != "plum-mine.toml" || get(t, dir, kept.File) != plum+"# mine\n" {
		t.Errorf("%+v", kept)
	}
	call[saved](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum + "# mine\n", Base: c.Mark}, 200)
	if get(t, dir, store.HistoryName+"/plum.toml/0002.toml") != plum+"# theirs\n" {
		t.Error("the other version is not kept")
	}
	if err := os.Remove(filepath.Join(dir, "plum.toml")); err != nil {
		t.Fatal(err)
	}
	gone := call[conflict](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum, Base: c.Mark}, 409)
	if gone.Mark != "" {
		t.Errorf("%+v", gone)
	}
	call[saved](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum, Base: gone.Mark}, 200)
}

func TestMakeWritesBelowOut(t *testing.T) {
	dir := kitchenDir(t)
	w := do(handlerOf(t, dir), request("POST", "/do/make", makeAsk{}))
	lines := strings.Split(strings.TrimSpace(w.Body.String()), "\n")
	if len(lines) < 3 || !strings.Contains(lines[len(lines)-1], `"made":["out/`) {
		t.Fatalf("no progress, or nothing made: %s", w.Body)
	}
	pdfs, _ := filepath.Glob(filepath.Join(dir, "out", "*", "*.pdf"))
	if len(pdfs) == 0 {
		t.Error("no PDF below out/")
	}
}
