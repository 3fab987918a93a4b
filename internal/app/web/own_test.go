package web

import (
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"jarmark/templates"
)

// A design of the maker's own is there as soon as its file is, changes with
// it, and is left out and told while it is broken, without a restart.
func TestOwnDesignsAreLive(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	theirs, err := fs.ReadFile(templates.FS, "designs/harvest.toml")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "designs"), 0o755); err != nil {
		t.Fatal(err)
	}
	picture := func(code int) string {
		w := do(h, request("GET", "/picture/design/allotment", nil))
		if w.Code != code {
			t.Fatalf("%d %.200s", w.Code, w.Body)
		}
		return w.Body.String()
	}
	text := plum + "\n[label]\ndesign = \"allotment\"\n"
	look := func() lookAnswer {
		return call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: text, Pieces: []string{"front"}}, 200)
	}
	if picture(http.StatusNotFound); len(look().Labels) != 0 {
		t.Error("there is an allotment already")
	}
	later := time.Now()
	write := func(text string) { // a clock may stand still between two writes
		put(t, dir, "designs/allotment.toml", text)
		later = later.Add(time.Second)
		if err := os.Chtimes(filepath.Join(dir, "designs/allotment.toml"), later, later); err != nil {
			t.Fatal(err)
		}
	}
	write(string(theirs))
	first := picture(http.StatusOK)
	if a := look(); len(a.Labels) != 1 {
		t.Errorf("%+v", a.Findings)
	}
	write(strings.Replace(string(theirs), `"wheat"`, `"apple"`, -1))
	if picture(http.StatusOK) == first {
		t.Error("the picture does not follow its file")
	}
	write("name = \"Orch")
	if a := look(); len(a.Labels) != 0 || a.Findings[len(a.Findings)-1].File != "designs/allotment.toml" {
		t.Errorf("%d labels, %+v", len(a.Labels), a.Findings)
	}
	if body := do(h, request("GET", "/", nil)).Body.String(); !strings.Contains(body, "designs/allotment.toml, line 1") {
		t.Errorf("the list does not tell:\n%s", body)
	}
	if err := os.Remove(filepath.Join(dir, "designs/allotment.toml")); err != nil {
		t.Fatal(err)
	}
	if body := do(h, request("GET", "/", nil)).Body.String(); strings.Contains(body, "allotment") {
		t.Error("what is gone is still told")
	}
}
