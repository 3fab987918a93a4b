package site

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
)

func TestApp(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, map[string]string{"plum.toml": "name = \"Plum jam\"\n"})
	h, err := App(dir, "secret")
	if err != nil {
		t.Fatal(err)
	}
	do := func(method, path, body string, headers ...string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, "http://localhost"+path, strings.NewReader(body))
		for i := 0; i < len(headers); i += 2 {
			r.Header.Set(headers[i], headers[i+1])
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	w := do("GET", "/", "")
	policy := w.Header().Get("Content-Security-Policy")
	if w.Code != 200 || !strings.Contains(w.Body.String(), "Plum jam") || strings.Contains(w.Body.String(), dir) {
		t.Errorf("%d %.600s", w.Code, w.Body)
	}
	if !strings.Contains(policy, "frame-ancestors 'self'") || strings.Contains(policy, "'none'; frame-ancestors 'none'") || w.Header().Get("X-Frame-Options") != "SAMEORIGIN" {
		t.Errorf("not to be framed: %v", w.Header())
	}
	if w := do("POST", "/do/save", "{}", "Content-Type", "application/json"); w.Code != http.StatusForbidden {
		t.Errorf("a write without the secret: %d", w.Code)
	}
	if w := do("POST", "/do/save", "{}", "Content-Type", "application/json", "X-Jarmark-Token", "secret"); w.Code == http.StatusForbidden {
		t.Errorf("a write with the secret: %d %s", w.Code, w.Body)
	}
	if w := do("GET", "/files.zip", ""); w.Code != 200 || w.Header().Get("Content-Type") != "application/zip" || !strings.HasPrefix(w.Body.String(), "PK") {
		t.Errorf("zip: %d %v", w.Code, w.Header())
	}
	for _, c := range []struct {
		name, header string
		want         int
	}{{"pear.toml", "", 403}, {"pear.toml", "1", 200}, {"pear.exe", "1", 422}, {"..%2Fup.toml", "1", 422}} {
		if w := do("POST", "/files/"+c.name, "x", filesHeader, c.header); w.Code != c.want {
			t.Errorf("%s: %d, want %d: %s", c.name, w.Code, c.want, w.Body)
		}
	}
	if got := readAll(t, dir); len(got) != 2 || got["pear.toml"] != "x" {
		t.Errorf("%q", got)
	}
}
