package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

// Notes pasted into the page for a new batch are read as by the command line;
// their kind and day win, and bad notes stay in the form.
func TestNewFromNotes(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	post := func(notes string) *httptest.ResponseRecorder {
		form := url.Values{"name": {"Quince jelly"}, "kind": {"jelly"}, "made": {"2026-10-01"}, "notes": {notes}, "token": {testToken}}
		r := httptest.NewRequest("POST", "http://127.0.0.1:4321/new", strings.NewReader(form.Encode()))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Origin", "http://127.0.0.1:4321")
		r.Header.Set("Sec-Fetch-Site", "same-origin")
		return do(h, r)
	}
	if w := post("3 Oct 2026\r\n4 cups quince juice\r\n3 cups sugar\r\ngot 5 half-pints"); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	text := get(t, dir, "quince-jelly.toml")
	for _, want := range []string{`kind = "jelly"`, "made = 2026-10-03", `name = "quince juice"`, "count = 5", "# line 2: 4 cups quince juice"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	if w := post("caf\xe9"); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "no text in UTF-8") {
		t.Errorf("%d %.200s", w.Code, w.Body)
	}
}
