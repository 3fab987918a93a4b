package web

import (
	"net/http"
	"strings"
	"testing"
)

// A ledger without a word in it, as a spreadsheet saves an empty sheet, stops
// nothing: labels are printed, and the first row noted begins it.
func TestBlankLedgerStopsNothing(t *testing.T) {
	for _, text := range []string{"", "\n", "\r\n\r\n", " \t\n", "\ufeff\n", ",,,,,,,\n", "\"\"\n"} {
		dir := kitchenDir(t)
		put(t, dir, "ledger.csv", text)
		h := handlerOf(t, dir)
		call[printed](t, h, "/do/print", printAsk{File: "plum.toml", Text: plum}, http.StatusOK)
		for _, page := range []string{"/season", "/pack", "/trace?lot=L26248-PL"} {
			if w := do(h, request("GET", page, nil)); w.Code != 200 || strings.Contains(w.Body.String(), `class="finding error"`) {
				t.Errorf("%q, %s: %d", text, page, w.Code)
			}
		}
		w := postForm(h, "/ledger", "do", "add", "jars", "L26248-PL/us8", "count", "2", "why", "eaten", "date", "2026-09-20")
		if got := get(t, dir, "ledger.csv"); w.Code != http.StatusSeeOther || got != "date,lot,jar,count,why,who,price,from\n2026-09-20,L26248-PL,us8,2,eaten,,,hand\n" {
			t.Errorf("%q: %d, %q", text, w.Code, got)
		}
	}
}
