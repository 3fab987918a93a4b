package web

import (
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"jarmark/fonts"
	"jarmark/templates"
)

// forever lets a browser keep what has its version in the address.
const forever = "max-age=31536000, immutable"

const staticDir = "web/static"

var contentTypes = map[string]string{
	".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
	".svg": "image/svg+xml", ".ttf": "font/ttf", ".woff2": "font/woff2",
}

// assetVersion changes when a script or style does.
var assetVersion = sync.OnceValue(func() string {
	sum := sha256.New()
	names, _ := fs.Glob(templates.FS, staticDir+"/*") // a constant pattern: cannot fail
	for _, n := range names {
		data, _ := fs.ReadFile(templates.FS, n)
		sum.Write(data)
	}
	return hex.EncodeToString(sum.Sum(nil)[:6])
})

// imported are the modules a script names.
var imported = regexp.MustCompile(`(?m)^import .*"\./(\w+\.js)";$`)

// modules are the modules a script leads to, so that a browser asks for all at
// once and not for one after the other.
func modules(script string) []string {
	out := []string{script}
	for i := 0; i < len(out); i++ {
		data, _ := fs.ReadFile(templates.FS, path.Join(staticDir, out[i])) // a test holds that each is there
		for _, m := range imported.FindAllSubmatch(data, -1) {
			if name := string(m[1]); !slices.Contains(out, name) {
				out = append(out, name)
			}
		}
	}
	return out[1:]
}

func (s *site) static(w http.ResponseWriter, r *http.Request) error {
	return serveFile(w, templates.FS, path.Join(staticDir, path.Base(r.PathValue("file"))))
}

func (s *site) font(w http.ResponseWriter, r *http.Request) error {
	name := path.Base(r.PathValue("file"))
	if path.Ext(name) != ".woff2" {
		return errNotFound
	}
	if _, err := fs.Stat(fonts.Page, name); err != nil {
		return serveFile(w, fonts.FS, strings.TrimSuffix(name, ".woff2")+".ttf") // a browser looks at the bytes
	}
	return serveFile(w, fonts.Page, name)
}

func (s *site) favicon(w http.ResponseWriter, r *http.Request) error {
	return serveFile(w, templates.FS, staticDir+"/icon.svg")
}

func serveFile(w http.ResponseWriter, from fs.FS, name string) error {
	kind, known := contentTypes[path.Ext(name)]
	data, err := fs.ReadFile(from, name)
	if err != nil || !known || strings.HasPrefix(path.Base(name), ".") {
		return errNotFound
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Cache-Control", forever)
	_, err = w.Write(data)
	return ignoreGone(err)
}

func itoa(n int) string { return strconv.Itoa(n) }
