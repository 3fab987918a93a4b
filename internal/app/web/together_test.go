package web

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// What is wrong with nine files alike is told once, with a way to each place;
// a file of another folder, which cannot be opened here, has none.
func TestFindingsOfManyFilesStandTogether(t *testing.T) {
	dir := kitchenDir(t)
	short := func(name, lot string) string {
		return "lot = \"" + lot + "\"\n" + strings.Replace(plum, "Plum jam", name, 1) + "\n[[gift]]\nto = \"Hedy\"\njars = 20\n"
	}
	for i := range 9 {
		put(t, dir, fmt.Sprintf("b%d.toml", i), short(fmt.Sprintf("Jam %d", i), fmt.Sprintf("L-%d", i)))
	}
	if err := os.Mkdir(filepath.Join(dir, "2025"), 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "2025/old.toml", short("Old jam", "L-OLD"))
	body := do(handlerOf(t, dir), request("GET", "/pack", nil)).Body.String()
	head, _, _ := strings.Cut(body, "<details")
	if n := strings.Count(head, "promised 20 jars"); n != 1 || !strings.Contains(body, "9 more like this") {
		t.Errorf("told %d times before the others are folded away:\n%s", n, head)
	}
	for i := range 9 {
		if want := fmt.Sprintf(`<a href="./batch/b%d.toml#field=gift%%5B0%%5D`, i); !strings.Contains(body, want) {
			t.Errorf("no way to the place: %s\n%s", want, body)
		}
	}
	if !strings.Contains(body, "2025/old.toml, line") || strings.Contains(body, "batch/2025") || strings.Contains(body, "batch/old") {
		t.Errorf("a way to a file of another folder, or the file is not told:\n%s", body)
	}
}

// A form sent with the mark of another run is answered with a page that says
// what to do, a script's question with JSON.
func TestAFormOfAnotherRunIsToldInWords(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for _, path := range []string{"/new", "/file", "/ledger", "/gifts"} {
		q := request("POST", path, nil)
		q.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		w := do(h, q)
		if w.Code != http.StatusForbidden || !strings.Contains(w.Body.String(), "<h1>That did not work</h1>") || !strings.Contains(w.Body.String(), "load the page again") {
			t.Errorf("%s: %d %s", path, w.Code, w.Body)
		}
	}
	q := request("POST", "/do/save", saveAsk{})
	q.Header.Set(tokenHeader, "another")
	if w := do(h, q); w.Code != http.StatusForbidden || !strings.HasPrefix(w.Body.String(), `{"error"`) {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

// A new kitchen has no errors before a key is typed, and says that the jam on
// its label is a sample; with a key typed it tells what is missing, and on a
// batch of the maker's own nothing is called a sample.
func TestNewKitchenBeginsInPeace(t *testing.T) {
	dir := t.TempDir()
	h := handlerOf(t, dir)
	starter, _ := newEnv(t).StarterKitchen("us")
	look := func(text string) lookAnswer {
		return call[lookAnswer](t, h, "/do/look", lookAsk{File: "kitchen.toml", Text: text, Pieces: []string{"wrap"}}, 200)
	}
	errors := func(a lookAnswer) (n int) {
		for _, f := range a.Findings {
			if f.Severity != "note" {
				n++
			}
		}
		return n
	}
	a := look(string(starter))
	if errors(a) != 0 || len(a.Labels) != 1 || a.Labels[0].Title != "A sample, not yours: wrap-around" {
		t.Errorf("%+v %q", a.Findings, a.Labels[0].Title)
	}
	if a = look(string(starter) + "phone = \"5\"\n"); errors(a) < 2 {
		t.Errorf("what is missing is not told: %+v", a.Findings)
	}
	put(t, dir, "plum.toml", plum)
	if a = look(thornfield); strings.Contains(a.Labels[0].Title, "sample") {
		t.Errorf("the maker's own is called %q", a.Labels[0].Title)
	}
}

// A file in another encoding is not edited but shown as it reads, and converted
// when asked, its bytes kept; what was changed meanwhile, and letters that have
// no meaning, are not. By hand, of Windows-1252: B0 is the degree sign, BD one
// half, E9 e acute, 80 the euro sign (WHATWG Encoding, index windows-1252, from memory).
func TestOtherEncodingsAreConverted(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	word := "name = \"gel\u00e9e \u20ac\"\nnotes = \"219 \u00b0F, 1\u00bd cups\"\n"
	wide := func(low int) string {
		out := ""
		for _, r := range word {
			pair := [2]byte{}
			pair[low], pair[1-low] = byte(r), byte(r>>8)
			out += string(pair[:])
		}
		return out
	}
	for name, data := range map[string]string{
		"latin.toml": "name = \"gel\xe9e \x80\"\nnotes = \"219 \xb0F, 1\xbd cups\"\n", "little.toml": "\xff\xfe" + wide(0), "big.toml": "\xfe\xff" + wide(1), "bare.toml": wide(0), "kitchen.toml": "\xfe\xff" + wide(1),
	} {
		put(t, dir, name, data)
		path := map[bool]string{true: "/kitchen", false: "/batch/" + name}[name == "kitchen.toml"]
		w := do(h, request("GET", path, nil))
		if body := w.Body.String(); w.Code != 200 || strings.Contains(body, "<textarea") || !strings.Contains(body, "gel\u00e9e \u20ac") || !strings.Contains(body, "1\u00bd cups") {
			t.Fatalf("%s: %d %s", name, w.Code, body)
		}
		if w := postFile(h, "file", name, "do", "utf8", "mark", "another"); w.Code != http.StatusConflict || get(t, dir, name) != data {
			t.Errorf("%s: converted unseen: %d", name, w.Code)
		}
		if w := postFile(h, "file", name, "do", "utf8", "mark", mark([]byte(data))); w.Code != 303 || get(t, dir, name) != word || get(t, dir, ".jarmark-history/"+name+"/0001.toml") != data {
			t.Errorf("%s: %d, now %q", name, w.Code, get(t, dir, name))
		}
		if w := do(h, request("GET", path, nil)); !strings.Contains(w.Body.String(), "<textarea") {
			t.Errorf("%s: it can't be edited after it", name)
		}
	}
	for name, data := range map[string]string{"odd.toml": "name = \"\x81\"\n", "zip.toml": "PK\x03\x04\x00\x00\x00\x00\x00"} {
		put(t, dir, name, data)
		if w := postFile(h, "file", name, "do", "utf8", "mark", mark([]byte(data))); w.Code != http.StatusUnprocessableEntity || get(t, dir, name) != data {
			t.Errorf("%s: %d, now %q", name, w.Code, get(t, dir, name))
		}
	}
}
