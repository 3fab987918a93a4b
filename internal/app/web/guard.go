package web

import (
	"crypto/rand"
	"crypto/subtle"
	"net"
	"net/http"
	"strings"
)

// tokenHeader carries the token of this run with every write; forms that work
// without scripts carry it in the field tokenField.
const (
	tokenHeader = "X-Jarmark-Token"
	tokenField  = "token"
)

// maxBody is the largest request read: a batch file of the largest size, as
// JSON.
const maxBody = 9 << 20

// policy allows what comes from the page itself and nothing else. Pictures and
// PDF files made in the page are blobs of its own origin.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; " +
	"connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guard refuses requests that don't come from the page itself.
func (s *site) guard(next http.Handler) http.Handler {
	sameSite := http.NewCrossOriginProtection() // Origin and Sec-Fetch-Site of writes
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		protect(w.Header())
		if s.opts.Framed {
			allowFrame(w.Header())
		}
		switch {
		case !loopback(r.Host):
			refuse(w, http.StatusForbidden, "this page answers on 127.0.0.1 and localhost only")
		case r.Header.Get("Sec-Fetch-Site") == "cross-site" && r.Header.Get("Sec-Fetch-Mode") != "navigate":
			refuse(w, http.StatusForbidden, "another site asked")
		case sameSite.Check(r) != nil:
			refuse(w, http.StatusForbidden, "another site asked")
		case r.ContentLength > maxBody:
			refuse(w, http.StatusRequestEntityTooLarge, "that is more than a batch file can be")
		default:
			r.Body = http.MaxBytesReader(w, r.Body, maxBody)
			if writes(r) && !s.knows(r) {
				s.refuseWrite(w, r)
				return
			}
			next.ServeHTTP(w, r)
		}
	})
}

// refuseWrite answers a write without the token of this run: a script in JSON, a
// form with a page that says how to go on.
func (s *site) refuseWrite(w http.ResponseWriter, r *http.Request) {
	p := &problem{Status: http.StatusForbidden, What: "jarmark was started anew since this page was opened", Hint: "go back, load the page again, and send it once more: what you typed is still there"}
	if r.Header.Get("Content-Type") == jsonType {
		p.What, p.Hint = p.What+": load it again", ""
	}
	s.tell(w, r, p)
}

// protect sets the headers every answer bears.
func protect(h http.Header) {
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cache-Control", "no-store")
}

// allowFrame lets pages of the same site show this one in a frame.
func allowFrame(h http.Header) {
	h.Set("Content-Security-Policy", strings.Replace(policy, "frame-ancestors 'none'", "frame-ancestors 'self'", 1))
	h.Set("X-Frame-Options", "SAMEORIGIN")
}

// loopback reports whether the browser believes to talk to this machine. A
// foreign name that resolves to 127.0.0.1 (DNS rebinding) is not believed.
func loopback(host string) bool {
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	}
	switch strings.ToLower(strings.Trim(name, "[]")) {
	case "127.0.0.1", "localhost", "::1":
		return true
	}
	return false
}

func writes(r *http.Request) bool { return r.Method != http.MethodGet && r.Method != http.MethodHead }

// knows reports whether a write bears the token of this run.
func (s *site) knows(r *http.Request) bool {
	got := r.Header.Get(tokenHeader)
	if got == "" && strings.HasPrefix(r.Header.Get("Content-Type"), "application/x-www-form-urlencoded") {
		got = r.PostFormValue(tokenField)
	}
	return subtle.ConstantTimeCompare([]byte(got), []byte(s.token)) == 1
}

func freshToken() string { return rand.Text() }
