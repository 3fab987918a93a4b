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

// A maker's own sheet is offered and drawn at once, its change is seen, and a
// broken one is told at its line and stops nothing else, at the start too.
func TestOwnSheetsAreLive(t *testing.T) {
	dir := kitchenDir(t)
	theirs, err := fs.ReadFile(templates.FS, "sheets/letter-2x2-4x5in.toml")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(filepath.Join(dir, "sheets"), 0o755); err != nil {
		t.Fatal(err)
	}
	later := time.Now()
	write := func(text string) {
		put(t, dir, "sheets/attic.toml", text)
		later = later.Add(time.Second)
		if err := os.Chtimes(filepath.Join(dir, "sheets/attic.toml"), later, later); err != nil {
			t.Fatal(err)
		}
	}
	attic := strings.NewReplacer(`"letter-2x2-4x5in"`, `"attic"`, `["case", "allergens", "shelf"]`, `["front"]`).Replace(string(theirs))
	write("id = \"attic\nbroken")
	h := handlerOf(t, dir)
	text := plum + "\n[label]\nsheet = \"attic\"\n"
	look := func() lookAnswer {
		return call[lookAnswer](t, h, "/do/look", lookAsk{File: "plum.toml", Text: text, Pieces: []string{"front"}}, 200)
	}
	list := func() string { return do(h, request("GET", "/", nil)).Body.String() }
	if body := list(); !strings.Contains(body, "sheets/attic.toml, line 1") || !strings.Contains(body, "Plum jam") {
		t.Errorf("broken at the start:\n%.2000s", body)
	}
	write(attic)
	a := look()
	if len(a.Labels) != 1 || a.Labels[0].Sheet != "attic" {
		t.Fatalf("%+v %+v", a.Labels, a.Findings)
	}
	if body := list(); strings.Contains(body, "attic.toml") {
		t.Error("what is mended is still told")
	}
	if w := do(h, request("GET", "/picture/sheet/attic", nil)); w.Code != http.StatusOK {
		t.Errorf("picture: %d", w.Code)
	}
	cells := a.Labels[0].Cells
	write(strings.NewReplacer("rows = 2", "rows = 1").Replace(attic))
	if b := look(); len(b.Labels) != 1 || b.Labels[0].Cells == cells {
		t.Errorf("%v cells, then %+v", cells, b.Labels)
	}
}
