// Package record writes the public pages of the batches: one for each lot and
// an index, as plain accessible HTML (WCAG 2.2 AA) without scripts. It is
// built from a list of public facts; everything else of a batch file stays
// private, and a last look drops any statement that repeats a private fact.
package record

import (
	"bytes"
	"html/template"
	"strings"
	"sync"

	"jarmark/internal/cook"
	"jarmark/internal/diag"
	"jarmark/internal/label"
	"jarmark/templates"
)

// Options chooses what a page says beside the batch.
type Options struct {
	Lang  string // "en", "de", "fr"; empty = the content's, else the kitchen's
	Index string // address of the index page; empty = no link
	// Net is the net contents of every jar size; empty = the content's.
	Net []string
}

var pages = sync.OnceValues(func() (*template.Template, error) {
	return template.ParseFS(templates.FS, "web/record.html", "web/record.css")
})

// Page writes the public page of a batch. Content is that of any of its jar
// sizes; without one the page keeps to the facts of the recipe. It gives nil
// only without a batch.
func Page(r *cook.Result, c *label.Content, o Options) ([]byte, diag.List) {
	var found diag.List
	if r == nil || r.Batch == nil {
		found.Errorf("no-batch", "", "", "there is no batch to publish")
		return nil, found
	}
	w := wordsFor(langOf(r, c, o))
	v := public(r, c, w, &found)
	v.Index = o.Index
	if net := once(o.Net); len(net) > 0 {
		v.Net = net
	}
	return render("record.page", v, &found), found
}

// langOf is the language asked for, else the label's, else the kitchen's;
// English at a place of the United States is American.
func langOf(r *cook.Result, c *label.Content, o Options) string {
	lang := o.Lang
	if lang == "" && c != nil {
		lang = c.Lang
	}
	if lang == "" && r.Kitchen != nil {
		lang = r.Kitchen.Language
	}
	if (lang == "en" || lang == "") && r.Kitchen.US() {
		return "en-us"
	}
	return lang
}

func render(name string, data any, found *diag.List) []byte {
	t, err := pages()
	var buf bytes.Buffer
	if err == nil {
		err = t.ExecuteTemplate(&buf, name, data)
	}
	if err != nil {
		found.Errorf("record-failed", "", "", "the page cannot be written: %v", err)
		return nil
	}
	return buf.Bytes()
}

// FileName is the page's file of a lot: "l26165-sr.html". Letters and digits
// beyond ASCII are written as their code points, so that no two lots meet.
func FileName(lot string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(strings.TrimSpace(lot)) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '-':
			b.WriteRune(r)
		case r == ' ' || r == '_' || r == '.' || r == '/':
			b.WriteByte('-')
		default:
			const hex = "0123456789abcdef"
			b.WriteByte('u')
			for s := 20; s >= 0; s -= 4 {
				if r>>s != 0 || s == 0 {
					b.WriteByte(hex[r>>s&15])
				}
			}
		}
		if b.Len() > 100 {
			break
		}
	}
	s := strings.Trim(b.String(), "-")
	if s == "" || s == "index" {
		s = "lot" + s
	}
	return s + ".html"
}

// URL is the address of a lot's page under the kitchen's record_url; empty
// without one.
func URL(base, lot string) string {
	base = strings.TrimSpace(base)
	if base == "" {
		return ""
	}
	return strings.TrimSuffix(base, "/") + "/" + FileName(lot)
}
