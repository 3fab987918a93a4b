package web

import (
	"os"
	"path/filepath"
	"testing"
)

// What a page just opened asks hangs on no result and no hidden file of the
// folder itself: the static site keeps these answers by the bytes of all other
// files (templates/site/seen.js).
func TestOpeningHangsOnFilesAlone(t *testing.T) {
	dir := kitchenDir(t)
	ask := lookAsk{File: "plum.toml", Text: plum, Pieces: []string{"wrap", "lid"}, Changes: []change{}, Have: []string{}, First: []string{}}
	said := func() [3]string {
		h := handlerOf(t, dir)
		var out [3]string
		for i, path := range []string{"/batch/plum.toml", "/kitchen"} {
			w := do(h, request("GET", path, nil))
			if w.Code != 200 {
				t.Fatalf("%s: %d %s", path, w.Code, w.Body)
			}
			out[i] = w.Body.String()
		}
		w := do(h, request("POST", "/do/look", ask))
		if w.Code != 200 {
			t.Fatalf("look: %d %s", w.Code, w.Body)
		}
		out[2] = w.Body.String()
		return out
	}
	before := said()
	for _, name := range []string{"out/L26248-PLUM/facts.json", "out/plum.toml", ".jarmark-history/plum.toml/0001.toml", ".plum.toml"} {
		at := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at, []byte("name = \"Other\"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		if said() != before {
			t.Errorf("%s changes what a page just opened shows", name)
		}
	}
	for _, name := range []string{"kitchen.toml", "copy.toml", "designs/.mine.toml"} {
		_ = os.MkdirAll(filepath.Join(dir, "designs"), 0o755)
		put(t, dir, name, map[string]string{"kitchen.toml": thornfield + "language = \"en\"\n", "copy.toml": plum}[name])
		now := said()
		if now == before {
			t.Errorf("%s changes nothing: this test sees nothing", name)
		}
		before = now
	}
}
