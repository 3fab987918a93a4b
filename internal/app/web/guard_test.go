package web

import (
	"net/http"
	"strings"
	"testing"
)

// A name that was made to point at this machine (DNS rebinding) is refused;
// WHATWG Fetch and RFC 9110 7.2 say what Host holds.
func TestForeignHostIsRefused(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for host, want := range map[string]int{
		"127.0.0.1:80": 200, "localhost:1": 200, "LOCALHOST": 200, "[::1]:9": 200,
		"jam.example": 403, "127.0.0.1.jam.example:80": 403, "localhost.jam.example": 403, "10.0.0.1:80": 403, "": 403, "[::2]:80": 403,
	} {
		q := request("GET", "/", nil)
		q.Host = host
		if w := do(h, q); w.Code != want {
			t.Errorf("Host %q: %d, want %d", host, w.Code, want)
		}
	}
}

func TestWritesOfOtherSitesAreRefused(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	for name, change := range map[string]func(http.Header){
		"other origin":     func(h http.Header) { h.Set("Origin", "https://jam.example"); h.Del("Sec-Fetch-Site") },
		"other port":       func(h http.Header) { h.Set("Origin", "http://127.0.0.1:1"); h.Del("Sec-Fetch-Site") },
		"null origin":      func(h http.Header) { h.Set("Origin", "null"); h.Del("Sec-Fetch-Site") },
		"cross-site":       func(h http.Header) { h.Set("Sec-Fetch-Site", "cross-site") },
		"same-site":        func(h http.Header) { h.Set("Sec-Fetch-Site", "same-site") },
		"no token":         func(h http.Header) { h.Del(tokenHeader) },
		"wrong token":      func(h http.Header) { h.Set(tokenHeader, "guessed") },
		"token of nothing": func(h http.Header) { h.Set(tokenHeader, "") },
	} {
		for _, path := range []string{"/do/save", "/do/look", "/do/make", "/new"} {
			q := request("POST", path, saveAsk{File: "plum.toml", Text: "x", Base: mark([]byte(plum))})
			change(q.Header)
			if w := do(h, q); w.Code != http.StatusForbidden {
				t.Errorf("%s, %s: %d, want 403", name, path, w.Code)
			}
		}
	}
	if get(t, dir, "plum.toml") != plum {
		t.Error("a refused write reached the file")
	}
	q := request("GET", "/picture/batch/plum.toml", nil)
	q.Header.Set("Sec-Fetch-Site", "cross-site")
	q.Header.Set("Sec-Fetch-Mode", "no-cors")
	if w := do(h, q); w.Code != http.StatusForbidden {
		t.Errorf("another site embeds a picture: %d", w.Code)
	}
}

func TestHeaders(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for _, path := range []string{"/", "/nowhere", "/static/1/base.css", "/picture/sheet/letter-plain"} {
		got := do(h, request("GET", path, nil)).Header()
		for name, want := range map[string]string{"X-Content-Type-Options": "nosniff", "Referrer-Policy": "no-referrer", "X-Frame-Options": "DENY"} {
			if got.Get(name) != want {
				t.Errorf("%s %s: %q", path, name, got.Get(name))
			}
		}
		csp := got.Get("Content-Security-Policy")
		for _, want := range []string{"default-src 'none'", "frame-ancestors 'none'", "script-src 'self'", "base-uri 'none'"} {
			if !strings.Contains(csp, want) {
				t.Errorf("%s: no %s in %q", path, want, csp)
			}
		}
		if strings.Contains(csp, "unsafe") || strings.Contains(csp, "*") {
			t.Errorf("%s: loose policy %q", path, csp)
		}
	}
}

// No page may carry a script or style inside itself: the policy would block it.
func TestNothingInline(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for _, path := range []string{"/", "/new", "/batch/plum.toml", "/kitchen", "/pack", "/trace"} {
		body := do(h, request("GET", path, nil)).Body.String()
		for _, bad := range []string{"<style", " style=", " onclick=", " onload=", "javascript:", "<script>", `href="/`, `src="/`, `action="/`, "http://", "https://cdn"} {
			if i := strings.Index(body, bad); i >= 0 {
				t.Errorf("%s: %q: %.80s", path, bad, body[i:])
			}
		}
	}
}

func TestTooMuchIsRefused(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for _, told := range []bool{true, false} {
		q := request("POST", "/do/look", lookAsk{File: "plum.toml", Text: strings.Repeat("# much\n", maxBody/7+1)})
		if !told {
			q.ContentLength = -1 // sent in chunks: found out while reading
		}
		if w := do(h, q); w.Code != http.StatusRequestEntityTooLarge {
			t.Errorf("length told %v: %d, want 413", told, w.Code)
		}
	}
}

func TestGarbageIsRefusedInWords(t *testing.T) {
	h := handlerOf(t, kitchenDir(t))
	for _, path := range []string{"/do/look", "/do/save", "/do/copy", "/do/print", "/do/make"} {
		q := request("POST", path, "not what is asked for")
		if w := do(h, q); w.Code != http.StatusBadRequest || !strings.Contains(w.Body.String(), `"error"`) {
			t.Errorf("%s: %d %s", path, w.Code, w.Body)
		}
	}
}
