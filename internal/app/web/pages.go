package web

import (
	"html/template"
	"net/http"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/templates"
)

// view is what every page is made from; Data is the page's own.
type view struct {
	Title   string
	Root    string // the way up to the list of batches: links work below any address
	Here    string // which place of the menu is this page
	Token   string
	Version string
	Dir     string // empty: not to be told
	Data    any
}

func (s *site) view(title, here string, data any) view {
	v := view{Title: title, Here: here, Token: s.token, Version: assetVersion(), Dir: s.folder.dir, Data: data}
	if s.opts.Framed {
		v.Dir = ""
	}
	return v
}

// rootOf is how a page asked for leads up to the first one: "./", "../"...
func rootOf(r *http.Request) string {
	if n := strings.Count(r.URL.Path, "/"); n > 1 {
		return strings.Repeat("../", n-1)
	}
	return "./"
}

// parsePages reads the templates of all pages and parts of pages. They call
// functions, never methods of what they show: cmd/jarmark-page leaves the
// calling of methods out of the program for browsers, an eighth of its size.
func parsePages() (*template.Template, error) {
	return template.New("").Funcs(template.FuncMap{
		"many": many, "join": strings.Join, "pick": pick, "stem": stem,
		"screen": job.Screen, "together": together, "open": job.Open, "traced": job.Traced, "modules": modules, "calendar": filledField.calendar, "keyboard": filledField.keyboard,
	}).ParseFS(templates.FS, "web/page/*.html")
}

// many is a count with its noun: "1 jar", "12 jars".
func many(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return itoa(n) + " " + more
}

// stem is a file name without ".toml", as people speak of it.
func stem(name string) string { return strings.TrimSuffix(name, ".toml") }

// pick hands a part of a page a few named values.
func pick(pairs ...any) map[string]any {
	out := map[string]any{}
	for i := 0; i+1 < len(pairs); i += 2 {
		if k, ok := pairs[i].(string); ok {
			out[k] = pairs[i+1]
		}
	}
	return out
}
