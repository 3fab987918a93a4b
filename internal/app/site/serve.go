package site

import (
	"cmp"
	"io/fs"
	"net/http"
	"path"
	"regexp"
	"strconv"
	"strings"
)

var contentTypes = map[string]string{
	".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
	".svg": "image/svg+xml", ".wasm": "application/wasm", ".webmanifest": "application/manifest+json", ".txt": "text/plain; charset=utf-8",
}

// hashed names change with their content, so a browser may keep them.
var hashed = regexp.MustCompile(`^jarmark-[0-9a-f]{16}\.wasm$`)

// Handler serves a built site with the headers a host should give: content
// types, the compressed copy a browser takes, and a strict content security
// policy (frame-ancestors stands here alone: a page cannot say it of itself).
func Handler(files fs.FS) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodGet && r.Method != http.MethodHead {
			w.Header().Set("Allow", "GET, HEAD")
			http.Error(w, "these files can only be read", http.StatusMethodNotAllowed)
			return
		}
		name := cmp.Or(strings.TrimPrefix(r.URL.Path, "/"), "index.html")
		kind, known := contentTypes[path.Ext(name)]
		if !known || !fs.ValidPath(name) || strings.HasPrefix(path.Base(name), ".") {
			http.NotFound(w, r)
			return
		}
		protect(w.Header(), name)
		w.Header().Set("Content-Type", kind)
		send(w, r, files, name)
	})
}

func protect(h http.Header, name string) {
	h.Set("Content-Security-Policy", Policy+"; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("X-Frame-Options", "DENY")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Vary", "Accept-Encoding")
	h.Set("Cache-Control", "no-cache")
	if hashed.MatchString(name) {
		h.Set("Cache-Control", "max-age=31536000, immutable")
	}
}

// send writes a file in the smallest coding the browser takes.
func send(w http.ResponseWriter, r *http.Request, files fs.FS, name string) {
	for _, c := range [][2]string{{"br", ".br"}, {"gzip", ".gz"}, {"", ""}} {
		if c[0] != "" && !accepts(r.Header.Values("Accept-Encoding"), c[0]) {
			continue
		}
		data, err := fs.ReadFile(files, name+c[1])
		if err != nil {
			continue
		}
		if c[0] != "" {
			w.Header().Set("Content-Encoding", c[0])
		}
		tag := `"` + mark(data) + `"`
		w.Header().Set("ETag", tag)
		if r.Header.Get("If-None-Match") == tag {
			w.WriteHeader(http.StatusNotModified)
			return
		}
		w.Header().Set("Content-Length", strconv.Itoa(len(data)))
		if r.Method == http.MethodGet {
			_, _ = w.Write(data) // the reader may have gone away
		}
		return
	}
	http.NotFound(w, r)
}

// accepts reads Accept-Encoding (RFC 9110, 12.5.3): a coding named with q=0 is
// refused, one not named is not sent.
func accepts(headers []string, coding string) bool {
	for _, part := range strings.Split(strings.Join(headers, ","), ",") {
		name, weight, _ := strings.Cut(part, ";")
		if !strings.EqualFold(strings.TrimSpace(name), coding) {
			continue
		}
		q := strings.TrimPrefix(strings.ReplaceAll(strings.ToLower(weight), " ", ""), "q=")
		n, err := strconv.ParseFloat(q, 64)
		return q == "" || err == nil && n > 0
	}
	return false
}
