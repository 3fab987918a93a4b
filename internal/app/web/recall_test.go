package web

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/app/store"
)

// A recall on the page reads the folders below too, through links, and never
// says none over what it did not read.
func TestTraceReadsEverything(t *testing.T) {
	dir := kitchenDir(t)
	year := filepath.Join(dir, "sub", "2025")
	if err := os.MkdirAll(year, 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, year, "OLD.TOML", strings.Replace(plum, "2026-09-05", "2025-09-05\nlot = \"L25248-OLD\"\n[[gift]]\nto = \"Hedy\"", 1))
	h := handlerOf(t, dir)
	for lot, want := range map[string]string{"L25248-OLD": "Hedy", "L11111-X": `no batch has the lot`} {
		if body := do(h, request("GET", "/trace?lot="+lot, nil)).Body.String(); !strings.Contains(body, want) {
			t.Errorf("%s: no %q in\n%s", lot, want, body)
		}
	}
	put(t, year, "half.toml", "lot = \"L25100-HA\nname")
	body := do(h, request("GET", "/trace?lot=L25100-HA", nil)).Body.String()
	if strings.Contains(body, "no batch has the lot") || !strings.Contains(body, "the answer is incomplete") || !strings.Contains(body, "names this lot") {
		t.Errorf("half.toml is not told:\n%s", body)
	}
	body = do(h, request("GET", "/trace?lot=L25248-OLD", nil)).Body.String()
	if !strings.Contains(body, "This answer is incomplete") || !strings.Contains(body, "sub/2025/half.toml") {
		t.Errorf("the answer hides what was not read:\n%s", body)
	}
}

// One file that cannot be read takes down neither the list nor packing.
func TestOneBadFileHidesNoOther(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", plum+"\n[[gift]]\nto = \"Hedy\"\n")
	put(t, dir, "big.toml", strings.Repeat("#\n", store.MaxFile/2+1))
	if err := os.Symlink("nowhere", filepath.Join(dir, "gone.toml")); err != nil {
		t.Skip("no links here")
	}
	h := handlerOf(t, dir)
	for _, page := range []string{"/", "/pack", "/trace?lot=L26248-PL"} {
		w := do(h, request("GET", page, nil))
		body := w.Body.String()
		for _, want := range []string{"Plum jam", "big.toml", "gone.toml"} {
			if w.Code != 200 || !strings.Contains(body, want) {
				t.Errorf("%s: %d, no %q in\n%s", page, w.Code, want, body)
			}
		}
	}
}
