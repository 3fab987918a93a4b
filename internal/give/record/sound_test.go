package record

import (
	"encoding/xml"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"jarmark/templates"
)

// TestSound reads the pages as XML (they are written so that both parsers
// agree) and checks what a screen reader lives by: one h1, headings without
// gaps, landmarks, labels that exist, table headers with a scope, a language.
// Rules: WCAG 2.2, 1.3.1, 2.4.1, 2.4.2, 2.4.6, 3.1.1.
func TestSound(t *testing.T) {
	r, c := sample()
	n, _ := nutty()
	for name, html := range map[string]string{"page": page(t, r, c), "bare": page(t, n, nil), "index": indexPage(t)} {
		if len(html) > 30*1024 {
			t.Errorf("%s: %d bytes, more than 30 KB", name, len(html))
		}
		o := outline(t, name, html)
		for tag, want := range map[string]int{"html": 1, "title": 1, "main": 1, "h1": 1, "header": 1, "footer": 1, "script": 0, "iframe": 0, "img": 0, "form": 0, "link": 0} {
			if o.count[tag] != want {
				t.Errorf("%s: %d <%s>, want %d", name, o.count[tag], tag, want)
			}
		}
		if o.lang != "en" || o.title == "" {
			t.Errorf("%s: lang %q, title %q", name, o.lang, o.title)
		}
		for _, ref := range o.refs {
			if o.ids[ref] != 1 {
				t.Errorf("%s: %d elements with id %q", name, o.ids[ref], ref)
			}
		}
	}
}

type facts struct {
	count       map[string]int
	ids         map[string]int
	refs        []string
	lang, title string
}

func outline(t *testing.T, name, html string) facts {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(strings.Replace(html, "<!doctype html>", "", 1)))
	d.Strict, d.AutoClose, d.Entity = false, []string{"meta", "br"}, xml.HTMLEntity
	f := facts{count: map[string]int{}, ids: map[string]int{}}
	depth, level := 0, 0
	inTitle := false
	for {
		tok, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		switch e := tok.(type) {
		case xml.StartElement:
			depth++
			tag := e.Name.Local
			f.count[tag]++
			inTitle = tag == "title"
			if len(tag) == 2 && tag[0] == 'h' && tag[1] >= '1' && tag[1] <= '6' {
				if n := int(tag[1] - '0'); n > level+1 {
					t.Errorf("%s: <%s> after level %d", name, tag, level)
				} else {
					level = n
				}
			}
			scope := ""
			for _, a := range e.Attr {
				switch a.Name.Local {
				case "id":
					f.ids[a.Value]++
				case "aria-labelledby":
					f.refs = append(f.refs, a.Value)
				case "href":
					if strings.HasPrefix(a.Value, "#") {
						f.refs = append(f.refs, a.Value[1:])
					}
				case "lang":
					f.lang = a.Value
				case "scope":
					scope = a.Value
				}
				if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "style" {
					t.Errorf("%s: attribute %s", name, a.Name.Local)
				}
			}
			if tag == "th" && scope != "row" && scope != "col" {
				t.Errorf("%s: th without scope", name)
			}
		case xml.EndElement:
			depth--
		case xml.CharData:
			if inTitle {
				f.title += string(e)
				inTitle = false
			}
		}
	}
	if depth != 0 {
		t.Errorf("%s: %d elements stay open", name, depth)
	}
	return f
}

// TestOrder: allergen notes come before everything else that is said.
func TestOrder(t *testing.T) {
	r, c := sample()
	html := page(t, r, c)
	at := -1
	for _, id := range []string{"allergens", "ingredients", "keeping", "seal", "story", "serve", "facts"} {
		i := strings.Index(html, `<h2 id="`+id+`"`)
		if i <= at {
			t.Errorf("%s stands at %d, not after %d", id, i, at)
		}
		at = i
	}
}

// TestContrast computes the contrast of every pair of colours the style sheet
// sets on one another, in all three schemes: 4.5:1 for text, 3:1 for the focus
// ring and the drawing (WCAG 2.2, 1.4.3 and 1.4.11).
func TestContrast(t *testing.T) {
	css, err := templates.FS.ReadFile("web/record.css")
	if err != nil {
		t.Fatal(err)
	}
	roots := regexp.MustCompile(`:root\{([^}]*)\}`).FindAllStringSubmatch(string(css), -1)
	if len(roots) != 3 {
		t.Fatalf("%d schemes, want light, dark, print", len(roots))
	}
	if got := ratio("#ffffff", "#767676"); math.Abs(got-4.54) > 0.005 { // W3C's own example: #767676 on white is 4.54:1
		t.Fatalf("contrast formula gives %.3f", got)
	}
	for i, m := range roots {
		c := map[string]string{}
		for _, d := range strings.Split(m[1], ";") {
			k, v, _ := strings.Cut(strings.TrimSpace(d), ":")
			c[strings.TrimPrefix(k, "--")] = v
		}
		for _, p := range []struct {
			fg, bg string
			least  float64
		}{
			{"ink", "paper", 4.5}, {"ink", "card", 4.5}, {"ink", "note", 4.5}, {"soft", "paper", 4.5}, {"soft", "card", 4.5},
			{"soft", "note", 4.5}, {"accent", "card", 4.5}, {"accent", "paper", 4.5}, {"accent", "note", 3}, {"leaf", "card", 3},
		} {
			if got := ratio(c[p.fg], c[p.bg]); !(got >= p.least) {
				t.Errorf("scheme %d: %s on %s is %.2f:1, want %.1f", i, p.fg, p.bg, got, p.least)
			}
		}
	}
}

func ratio(a, b string) float64 {
	x, y := luminance(a), luminance(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// luminance is WCAG 2.2's relative luminance.
func luminance(hex string) float64 {
	hex = strings.TrimPrefix(hex, "#")
	if len(hex) == 3 {
		hex = string([]byte{hex[0], hex[0], hex[1], hex[1], hex[2], hex[2]})
	}
	sum := 0.0
	for i, w := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			return math.NaN()
		}
		v := float64(n) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += w * v
	}
	return sum
}
