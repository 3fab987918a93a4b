package web

import (
	"crypto/hmac"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"net/http"
	"strings"
	"sync"
	"time"
)

// door lets in the browser that came with the key, and nobody else: another
// account of this computer reaches the port too. The key gives a cookie that no
// script can read, and leaves the address bar.
type door struct {
	next      http.Handler
	key, name string // name of the cookie: cookies know no ports

	mu    sync.Mutex
	once  string // a second key, that opens once: the system shows all accounts what a browser was started with
	until time.Time
}

const (
	keyField = "key"
	onceFor  = 2 * time.Minute // a browser may take long to start
	cookieOf = 400 * 24 * time.Hour
)

func newDoor(key, port string, next http.Handler) *door {
	return &door{next: next, key: key, name: "jarmark-" + port}
}

// ticket is a key for one visit.
func (d *door) ticket() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.once, d.until = freshToken(), time.Now().Add(onceFor)
	return d.once
}

func (d *door) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	given := r.URL.Query().Get(keyField)
	opened := given != "" && loopback(r.Host) && d.opens(given)
	cookie, err := r.Cookie(d.name)
	inside := err == nil && alikeSecret(cookie.Value, derived(d.key, "cookie"))
	switch {
	case opened:
		http.SetCookie(w, &http.Cookie{Name: d.name, Value: derived(d.key, "cookie"), Path: "/", HttpOnly: true,
			SameSite: http.SameSiteStrictMode, MaxAge: int(cookieOf.Seconds())})
		fallthrough
	case inside && given != "":
		protect(w.Header())
		http.Redirect(w, r, r.URL.Path, http.StatusSeeOther)
	case inside:
		d.next.ServeHTTP(w, r)
	default:
		protect(w.Header())
		refuse(w, http.StatusForbidden, "this page opens with the address that jarmark serve printed, and for nobody else")
	}
}

// opens reports whether a key fits; the one for one visit is used up.
func (d *door) opens(given string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.once != "" && time.Now().Before(d.until) && alikeSecret(given, d.once) {
		d.once = ""
		return true
	}
	return alikeSecret(given, d.key)
}

func alikeSecret(a, b string) bool { return subtle.ConstantTimeCompare([]byte(a), []byte(b)) == 1 }

// derived makes one secret of another, so that neither tells the other.
func derived(key, purpose string) string {
	m := hmac.New(sha256.New, []byte(key))
	m.Write([]byte(strings.ToLower(purpose)))
	return hex.EncodeToString(m.Sum(nil)[:20])
}
