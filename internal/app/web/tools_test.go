package web

import (
	"archive/zip"
	"bytes"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func postFile(h http.Handler, fields ...string) *httptest.ResponseRecorder {
	form := url.Values{"token": {testToken}}
	for i := 0; i < len(fields); i += 2 {
		form.Set(fields[i], fields[i+1])
	}
	q := httptest.NewRequest("POST", "http://localhost:4321/file", strings.NewReader(form.Encode()))
	q.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	q.Header.Set("Origin", "http://localhost:4321")
	return do(h, q)
}

// Files are copied, renamed and deleted; nothing is lost, and what one pot
// proved is not claimed for the next.
func TestFilesAreKept(t *testing.T) {
	dir := kitchenDir(t)
	full := "lot = \"L1\"\n" + plum + "net = [\"9.2 oz\", \"9.3 oz\", \"9.4 oz\"]\n\n[[gift]]\nto = \"Hedy\"\n\n[[gift]]\nto = \"Ines\"\n\n[[market]]\nevent = \"Saturday\"\n\n[cook]\nbrix = 66\nph = 3.1\nminutes = 9\n"
	put(t, dir, "plum.toml", full)
	h := handlerOf(t, dir)
	if w := postFile(h, "file", "plum.toml", "do", "again"); w.Code != 303 || w.Header().Get("Location") != "./batch/plum-again.toml" {
		t.Fatal(w.Code, w.Header(), w.Body)
	}
	again := get(t, dir, "plum-again.toml")
	for _, gone := range []string{"lot =", "gift", "market", "brix", "ph =", "count", "sealed", "net =", "declared"} {
		if strings.Contains(again, gone) {
			t.Errorf("the copy still says %q:\n%s", gone, again)
		}
	}
	for _, stays := range []string{"made = 2026-10-01", "# my own words", "# weighed twice", "minutes = 9", `jar = "8 fl oz"`, "minutes = 10"} {
		if !strings.Contains(again, stays) {
			t.Errorf("the copy lost %q:\n%s", stays, again)
		}
	}
	if w := postFile(h, "file", "plum.toml", "do", "rename", "to", "damson"); w.Code != 303 || get(t, dir, "damson.toml") != full {
		t.Fatal(w.Code, w.Body)
	}
	if _, err := os.Stat(filepath.Join(dir, "plum.toml")); err == nil || get(t, dir, ".jarmark-history/plum.toml/0001.toml") != full {
		t.Error("the old name is still there, or not in the history")
	}
	for _, to := range []string{"plum-again", "kitchen", "../out", "a/b", "", ".hidden"} {
		if w := postFile(h, "file", "damson.toml", "do", "rename", "to", to); w.Code < 400 || get(t, dir, "damson.toml") != full {
			t.Errorf("renamed to %q: %d", to, w.Code)
		}
	}
	if w := postFile(h, "file", "damson.toml", "do", "delete"); w.Code != 303 || get(t, dir, ".jarmark-history/damson.toml/0001.toml") != full {
		t.Error(w.Code, w.Body)
	}
	for _, file := range []string{"damson.toml", "kitchen.toml", "../x.toml", ""} {
		if w := postFile(h, "file", file, "do", "delete"); w.Code < 400 {
			t.Errorf("deleted %q: %d", file, w.Code)
		}
	}
	if get(t, dir, "kitchen.toml") != thornfield {
		t.Error("the kitchen is gone")
	}
}

// What the command line can do beside labels, by an address each.
func TestTools(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", strings.Replace(plum, "amount = \"2 kg\"", "amount = \"2 kg\"\ncost = 6", 1)+"\n[[market]]\nevent = \"Saturday\"\ndate = 2026-10-03\njars = 3\n")
	put(t, dir, "kitchen.toml", thornfield+"currency = \"USD\"\nphone = \"555 0123\"\n")
	h := handlerOf(t, dir)
	for path, want := range map[string]string{
		"/scale/plum.toml":                   "Scale a recipe",
		"/scale/plum.toml?jars=24+x+8+fl+oz": "times the recipe",
		"/scale/plum.toml?jars=many":         "finding error",
		"/align/letter-plain":                "%PDF",
		"/tape/letter-plain":                 "%PDF",
		"/pack/stall.pdf?event=Saturday":     "%PDF",
		"/ledger/list.txt":                   "made = given",
		"/ledger/list.csv?rows=1":            "Saturday",
		"/rules/us-or":                       "<table",
		"/made":                              "Nothing made yet",
		"/do/alive":                          "version",
		"/":                                  "Cook it again",
	} {
		if w := do(h, request("GET", path, nil)); w.Code != http.StatusOK || !strings.Contains(w.Body.String(), want) {
			t.Errorf("%s: %d, want %q in\n%.400s", path, w.Code, want, w.Body)
		}
	}
	kitchen := do(h, request("GET", "/kitchen", nil)).Body.String()
	for _, link := range []string{`href="align/letter-plain"`, `href="tape/letter-plain"`} {
		if !strings.Contains(kitchen, link) {
			t.Errorf("the kitchen's page has no %s", link)
		}
	}
	do(h, request("POST", "/do/make", makeAsk{}))
	page := do(h, request("GET", "/made", nil)).Body.String()
	_, after, _ := strings.Cut(page, `href="./out/`)
	lot, _, _ := strings.Cut(after, "/")
	public, private := strings.Index(page, "/record/"), strings.Index(page, "facts.json")
	if lot == "" || public < private || !strings.Contains(page, "For you alone") {
		t.Errorf("private and public files are not told apart: %s", page)
	}
	for path, kind := range map[string]string{"labels.pdf": "application/pdf", "facts.json": "text/plain; charset=utf-8"} {
		if w := do(h, request("GET", "/out/"+lot+"/"+path, nil)); w.Code != 200 || w.Header().Get("Content-Type") != kind || w.Body.Len() == 0 {
			t.Errorf("%s: %d %s", path, w.Code, w.Header().Get("Content-Type"))
		}
	}
	for _, path := range []string{"/out/../plum.toml", "/out/%2e%2e/plum.toml", "/out/" + lot + "/.jarmark-files", "/out/" + lot, "/out/none.pdf"} {
		if w := do(h, request("GET", path, nil)); w.Code == 200 {
			t.Errorf("%s is answered", path)
		}
	}
}

// An empty folder has nothing to pack, and offers no list of it.
func TestNothingToPack(t *testing.T) {
	if w := do(handlerOf(t, t.TempDir()), request("GET", "/pack", nil)); !strings.Contains(w.Body.String(), "Nothing to pack") || strings.Contains(w.Body.String(), "list.pdf") {
		t.Errorf("%s", w.Body)
	}
}

// The zip to upload holds the public pages and nothing private.
func TestPublicZip(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	put(t, dir, "kitchen.toml", thornfield+"phone = \"555 0123\"\npermit = \"HK-77\"\n")
	put(t, dir, "plum.toml", "notes = \"Hedy must not know\"\n"+plum+"\n[[gift]]\nto = \"Hedy\"\n")
	w := do(h, request("GET", "/public-pages.zip", nil))
	z, err := zip.NewReader(bytes.NewReader(w.Body.Bytes()), int64(w.Body.Len()))
	if err != nil {
		t.Fatal(w.Code, err)
	}
	names := ""
	for _, f := range z.File {
		names += f.Name + " "
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		var text bytes.Buffer
		if _, err := text.ReadFrom(r); err != nil {
			t.Fatal(err)
		}
		for _, secret := range []string{"555 0123", "HK-77", "must not know", "Hedy", "14 Thornfield Lane"} {
			if strings.Contains(text.String(), secret) {
				t.Errorf("%s tells %q", f.Name, secret)
			}
		}
	}
	if !strings.Contains(names, "index.html") || len(z.File) != 2 || strings.Contains(names, "jarmark-lots") {
		t.Error(names)
	}
	if err := os.Remove(filepath.Join(dir, "plum.toml")); err != nil {
		t.Fatal(err)
	}
	if w := do(h, request("GET", "/public-pages.zip", nil)); w.Code != 404 {
		t.Error(w.Code)
	}
}
