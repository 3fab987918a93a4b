// Package record writes the public pages of the batches: one for each lot and
// an index, as plain accessible HTML (WCAG 2.2 AA) without scripts. It is
// built from a list of public facts; everything else of a batch file stays
// private, and a last look drops any statement that repeats a private fact.
package record

import (
	"bytes"
	"encoding/base64"
	"html/template"
	"sync"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
	"jarmark/templates"
)

// Options chooses what a page says beside the batch.
type Options struct {
	Lang  string // "en", "de", "fr"; empty = the content's, else the kitchen's
	Index string // address of the index page; empty = no link
	// Net is the net contents of every jar size; empty = the content's.
	Net []string
	// Photos stand in the page itself, so that it needs no file beside it.
	Photos []Photo
}

// Photo is a JPEG file that holds nothing but the picture.
type Photo struct {
	Data []byte
	W, H int // pixels
	Alt  string
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
	v.Photos = photos(o.Photos, v.Name, publisher{r: r, k: r.Kitchen}.private)
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

// shown is a photo as a page holds it.
type shown struct {
	Src  template.URL
	Alt  string
	W, H int
}

// photos are those of a page; words that repeat a private fact, or none, give
// way to the name of the food.
func photos(in []Photo, name string, private func(string) bool) (out []shown) {
	for _, p := range in {
		if p.Alt == "" || private(p.Alt) {
			p.Alt = name
		}
		out = append(out, shown{template.URL("data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(p.Data)), p.Alt, p.W, p.H})
	}
	return out
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

// Folder is where the page of a lot stands below the index, with its page as
// index.html: the address the code on a label opens under record_url.
func Folder(lot string) string { return lot + "/" }
