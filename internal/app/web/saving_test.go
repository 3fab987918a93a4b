package web

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
)

// A browser's text field knows only LF: the file keeps the ends it had, and
// saving without an edit changes nothing.
func TestSaveKeepsLineEnds(t *testing.T) {
	crlf := strings.ReplaceAll(plum, "\n", "\r\n")
	mixed := strings.Replace(plum, "kind = \"jam\"\n", "kind = \"jam\"\r\n", 1)
	edit := func(s string) string { return strings.Replace(s, "Plum jam", "Plum & pear jam", 1) }
	for name, c := range map[string][2]string{
		"crlf, no edit":  {crlf, plum},
		"crlf, an edit":  {crlf, edit(plum)},
		"mixed, an edit": {mixed, edit(plum)},
		"crlf, a line":   {crlf, strings.Replace(plum, "kind =", "serve = \"toast\"\nkind =", 1)},
		"crlf, no end":   {crlf, strings.TrimSuffix(plum, "\n")},
		"lf":             {plum, edit(plum)},
	} {
		want := c[1]
		if strings.HasPrefix(name, "crlf") {
			want = strings.ReplaceAll(want, "\n", "\r\n")
		} else if strings.HasPrefix(name, "mixed") {
			want = edit(mixed)
		}
		dir := kitchenDir(t)
		put(t, dir, "plum.toml", c[0])
		got := call[saved](t, handlerOf(t, dir), "/do/save", saveAsk{File: "plum.toml", Text: c[1], Base: mark([]byte(c[0]))}, 200)
		if text := get(t, dir, "plum.toml"); text != want || got.Mark != mark([]byte(want)) {
			t.Errorf("%s: wrote %q, want %q", name, text, want)
		}
	}
}

// What must not be saved over is refused with its reason, and stays.
func TestSaveRefusals(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	for name, text := range map[string]string{"latin.toml": "name = \"gel\xe9e\"\n", "utf16.toml": "\xff\xfen\x00a\x00"} {
		put(t, dir, name, text)
		w := do(h, request("POST", "/do/save", saveAsk{File: name, Text: strings.ToValidUTF8(text, "\uFFFD") + "#", Base: mark([]byte(text))}))
		if w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), name+": the file is not UTF-8 text; nothing was changed") || get(t, dir, name) != text {
			t.Errorf("%s: %d %s", name, w.Code, w.Body)
		}
	}
	if err := os.Chmod(filepath.Join(dir, "plum.toml"), 0o444); err != nil {
		t.Fatal(err)
	}
	w := do(h, request("POST", "/do/save", saveAsk{File: "plum.toml", Text: plum + "#", Base: mark([]byte(plum))}))
	if w.Code != http.StatusForbidden || !strings.Contains(w.Body.String(), "read-only") || get(t, dir, "plum.toml") != plum {
		t.Errorf("read-only: %d %s", w.Code, w.Body)
	}
}

// Two windows that save on one base: one wins, the other is told.
func TestSavesOnOneBase(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	base := plum
	for round := range 20 {
		var codes [2]int
		var wg sync.WaitGroup
		for i := range codes {
			wg.Go(func() {
				codes[i] = do(h, request("POST", "/do/save", saveAsk{File: "plum.toml", Text: fmt.Sprintf("%s# %d-%d\n", plum, round, i), Base: mark([]byte(base))})).Code
			})
		}
		wg.Wait()
		if codes != [2]int{200, 409} && codes != [2]int{409, 200} {
			t.Fatalf("round %d: %v, want 200 and 409", round, codes)
		}
		base = get(t, dir, "plum.toml")
	}
}

// Make everything finds two batches of one lot, as the command line does, and
// takes nothing that is not ours.
func TestMakeLosesNothing(t *testing.T) {
	dir := kitchenDir(t)
	withLot := "lot = \"L1\"\n" + plum
	put(t, dir, "plum.toml", withLot)
	h := handlerOf(t, dir)
	run := func(files ...string) string { return do(h, request("POST", "/do/make", makeAsk{files})).Body.String() }
	if out := run("plum.toml"); !strings.Contains(out, `"made":["out/L1/`) {
		t.Fatal(out)
	}
	facts := get(t, dir, "out/L1/facts.json")
	put(t, dir, "twin.toml", strings.Replace(withLot, "Plum jam", "Old plum jam", 1))
	put(t, dir, "gifts.toml", "[[gift]]\nto = \"Ines\"\n")
	for _, files := range [][]string{nil, {"twin.toml"}} {
		out := run(files...)
		if !strings.Contains(out, "lot L1 is also the lot of plum.toml") || strings.Contains(out, "gifts.toml") || get(t, dir, "out/L1/facts.json") != facts {
			t.Errorf("%v: %s", files, out)
		}
	}
	look := call[lookAnswer](t, h, "/do/look", lookAsk{File: "twin.toml", Text: strings.ReplaceAll(get(t, dir, "twin.toml"), "L1", "l1")}, 200)
	if !slices.ContainsFunc(look.Findings, func(f job.Finding) bool { return f.Message == "lot l1 is also the lot of plum.toml" && f.Line == 1 }) {
		t.Errorf("the editor does not tell: %+v", look.Findings)
	}
	if err := os.Rename(filepath.Join(dir, "twin.toml"), filepath.Join(dir, "twin.txt")); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "out/L1/labels.pdf", "mine")
	put(t, dir, "out/L1/mine.txt", "mine")
	if out := run("plum.toml"); !strings.Contains(out, "out/L1/labels.pdf was changed since jarmark wrote it; nothing was changed") {
		t.Error(out)
	}
	if get(t, dir, "out/L1/labels.pdf") != "mine" || get(t, dir, "out/L1/mine.txt") != "mine" || !strings.Contains(get(t, dir, "out/L1/"+store.ManifestName), "../../plum.toml") {
		t.Error("the maker's file is gone, or the manifest does not name the batch")
	}
}

// What saves itself carries the form's changes, keeps the first version in the
// history and not each that follows; what the maker saves is kept each time.
func TestSavesByItself(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	base := mark([]byte(plum))
	for _, name := range []string{"Damson", "Damson jam", "Damson jelly"} {
		got := call[saved](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum, Base: base, Changes: []change{{Do: "set", Path: "name", Value: name}}, Passing: true}, 200)
		if base = got.Mark; get(t, dir, "plum.toml") != got.Text || !strings.Contains(got.Text, `name = "`+name+`"`) {
			t.Fatalf("%s: %s", name, got.Text)
		}
	}
	kept := func() []string {
		found, err := filepath.Glob(filepath.Join(dir, store.HistoryName, "plum.toml", "*"))
		if err != nil {
			t.Fatal(err)
		}
		return found
	}
	if k := kept(); len(k) != 1 || get(t, dir, store.HistoryName+"/plum.toml/0001.toml") != plum {
		t.Errorf("kept %v, want the first version alone", k)
	}
	call[saved](t, h, "/do/save", saveAsk{File: "plum.toml", Text: plum + "# mine\n", Base: base}, 200)
	if k := kept(); len(k) != 2 {
		t.Errorf("kept %v, want what the maker saved over too", k)
	}
}
