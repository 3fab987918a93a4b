package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

// A gift list on the page: kept in the folder, dealt, printed as tags, its
// promises written into the ledger once, and replaced when the list changes.
func TestGiftList(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	post := func(fields ...string) *httptest.ResponseRecorder {
		return postForm(h, "/gifts", fields...)
	}
	show := func(path string) string { return do(h, request("GET", path, nil)).Body.String() }

	friends := "to,jars,message\r\nAda,2,summer\r\nZoë,1,\r\n"
	if w := post("list", "friends", "text", friends); w.Code != http.StatusSeeOther || w.Header().Get("Location") != "./gifts?list=friends.csv" {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	if got := get(t, dir, "friends.csv"); got != strings.ReplaceAll(friends, "\r", "") {
		t.Errorf("%q", got)
	}
	body := show("/gifts?list=friends.csv")
	for _, want := range []string{"friends.csv, with the gifts of the batches: 3 jars to 2 people", "Ada", "Zoë", "Promise these jars", `value="` + mark([]byte(get(t, dir, "friends.csv"))) + `"`} {
		if !strings.Contains(body, want) {
			t.Errorf("the page lacks %q:\n%s", want, body)
		}
	}
	for path, begins := range map[string]string{"tags.pdf": "%PDF", "list.pdf": "%PDF", "list.csv": "list,to,"} {
		if w := do(h, request("GET", "/gifts/"+path+"?list=friends.csv", nil)); w.Code != 200 || !strings.HasPrefix(strings.TrimPrefix(w.Body.String(), "\ufeff"), begins) {
			t.Errorf("%s: %d %.60q", path, w.Code, w.Body.String())
		}
	}

	if w := post("list", "friends.csv", "do", "promise"); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	book := get(t, dir, "ledger.csv")
	if strings.Count(book, ",promised,") != 2 || !strings.Contains(book, "list friends.csv") {
		t.Errorf("%s", book)
	}
	if body := show("/gifts?list=friends.csv"); !strings.Contains(body, "are promised in the ledger") {
		t.Error("the page does not say so")
	}
	if post("list", "friends.csv", "do", "promise"); get(t, dir, "ledger.csv") != book {
		t.Error("promised twice")
	}

	// Another text wants the mark of the one it was made from.
	if w := post("list", "friends.csv", "text", "to\nMilo\n"); w.Code != http.StatusConflict {
		t.Errorf("written over unseen: %d", w.Code)
	}
	post("list", "friends.csv", "mark", mark([]byte(get(t, dir, "friends.csv"))), "text", "to\nMilo\n")
	post("list", "friends.csv", "do", "promise")
	if book := get(t, dir, "ledger.csv"); strings.Count(book, ",promised,") != 1 || !strings.Contains(book, "Milo") {
		t.Errorf("%s", book)
	}
	if body := show("/gifts"); !strings.Contains(body, "<option>friends.csv") {
		t.Errorf("the list is not offered:\n%s", body)
	}
}

// What is no gift list of the folder is not read or written through the page.
func TestGiftListStaysInTheFolder(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "ledger.csv", "date,lot,jar,count,why,who,price,from\n")
	h := handlerOf(t, dir)
	for _, name := range []string{"../x.csv", "ledger.csv", "LEDGER.csv", "plum.toml", "a/b.csv", ".hidden.csv", `a\b.csv`, "c:.csv", ".csv"} {
		if w := do(h, request("GET", "/gifts?list="+url.QueryEscape(name), nil)); w.Code != http.StatusNotFound {
			t.Errorf("%s: read with %d", name, w.Code)
		}
		if w := postForm(h, "/gifts", "list", name, "text", "to\nAda\n"); name != "plum.toml" && w.Code != http.StatusNotFound {
			t.Errorf("%s: written with %d", name, w.Code)
		}
	}
	if get(t, dir, "ledger.csv") != "date,lot,jar,count,why,who,price,from\n" || get(t, dir, "plum.toml") != plum {
		t.Error("a file was changed")
	}
	put(t, dir, "bad.csv", "to,jars\nAda,many\n")
	if body := do(h, request("GET", "/gifts?list=bad.csv", nil)).Body.String(); !strings.Contains(body, "bad.csv, line 2") || !strings.Contains(body, "Ada,many") {
		t.Errorf("the fault is not told, or its text not shown to mend:\n%s", body)
	}
}
