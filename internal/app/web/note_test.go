package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

func postForm(h http.Handler, path string, fields ...string) *httptest.ResponseRecorder {
	form := url.Values{"token": {testToken}}
	for i := 0; i < len(fields); i += 2 {
		form.Set(fields[i], fields[i+1])
	}
	r := httptest.NewRequest("POST", "http://127.0.0.1"+path, strings.NewReader(form.Encode()))
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	return do(h, r)
}

// What happened to jars is noted on the page as on the command line: a row, a
// market's evening, and the last change taken back. By hand: 8 jars; 2 eaten;
// 5 taken to the fair, 1 comes home, so 4 are sold at $9.00, $36.00.
func TestTheLedgerIsWrittenOnThePage(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", plum+"\n[[market]]\nevent = \"Hill fair\"\ndate = 2026-10-03\njars = 5\nprice = \"9.00\"\n\n[[market]]\nevent = \"Hill fair\"\ndate = 2026-10-10\njars = 1\nprice = \"9.00\"\n")
	h := handlerOf(t, dir)
	show := func(path string) string { return do(h, request("GET", path, nil)).Body.String() }
	if body := show("/season"); !strings.Contains(body, `<option value="L26248-PL/us8">`) || !strings.Contains(body, "<option>came home</option>") {
		t.Fatalf("nothing can be noted:\n%s", body)
	}
	if w := postForm(h, "/ledger", "do", "add", "jars", "L26248-PL/us8", "count", "2", "why", "eaten", "date", "2026-09-20"); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	if book := get(t, dir, "ledger.csv"); !strings.Contains(book, "2026-09-20,L26248-PL,us8,2,eaten,") {
		t.Errorf("%s", book)
	}

	fair := "/pack?event=" + url.QueryEscape("Hill fair on 2026-10-03")
	body := show(fair)
	for _, want := range []string{"What came home from Hill fair", `name="home L26248-PL"`, `max="5"`, `value="2026-10-03"`, "<option>Hill fair on 2026-10-10</option>"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page lacks %q:\n%s", want, body)
		}
	}
	if w := postForm(h, "/ledger", "do", "home", "event", "Hill fair", "date", "2026-10-03", "shown", "Hill fair on 2026-10-03", "home L26248-PL", "1"); w.Code != http.StatusSeeOther {
		t.Fatalf("%d %s", w.Code, w.Body)
	}
	if body := show("/season"); !strings.Contains(body, "$36.00") {
		t.Errorf("the evening is not in the season:\n%s", body)
	}
	if body := show(fair); strings.Contains(body, "What came home from") {
		t.Errorf("asked again:\n%s", body)
	}

	before := get(t, dir, "ledger.csv")
	if w := postForm(h, "/ledger", "do", "add", "jars", "L26248-PL/us8", "count", "9", "why", "eaten"); w.Code != http.StatusUnprocessableEntity || !strings.Contains(w.Body.String(), "more jars of lot") {
		t.Errorf("more jars eaten than there are: %d %s", w.Code, w.Body)
	}
	for _, fields := range [][]string{{"do", "add", "count", "two"}, {"do", "sell"}, {"do", "home", "date", "soon"}} {
		if w := postForm(h, "/ledger", fields...); w.Code != http.StatusBadRequest {
			t.Errorf("%v: %d", fields, w.Code)
		}
	}
	if get(t, dir, "ledger.csv") != before {
		t.Error("what was refused is written")
	}
	postForm(h, "/ledger", "do", "undo")
	if book := get(t, dir, "ledger.csv"); strings.Contains(book, "sold") || !strings.Contains(book, "eaten") {
		t.Errorf("the last change is not taken back:\n%s", book)
	}
	if postForm(h, "/ledger", "do", "undo"); get(t, dir, "ledger.csv") != before {
		t.Error("taken back twice, it is not there again")
	}
}
