package record

import (
	"encoding/csv"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing/qrcode/decoder"
	"github.com/makiuchi-d/gozxing/qrcode/encoder"

	"jarmark/internal/batch"
	"jarmark/internal/cook"
	"jarmark/internal/label"
	"jarmark/internal/unit"
	"jarmark/templates"
)

func page(t *testing.T, r *cook.Result, c *label.Content) string {
	t.Helper()
	b, found := Page(r, c, Options{Index: "index.html"})
	if found.HasErrors() || b == nil {
		t.Fatal(found)
	}
	return string(b)
}

func indexPage(t *testing.T) string {
	t.Helper()
	r, c := sample()
	n, _ := nutty()
	n.Lot = "L26201-AP"
	n.Batch.Name = "Apricot jam with almonds"
	n.Batch.Made = unit.Date{Year: 2026, Month: 7, Day: 20}
	b, found := Index([]Entry{EntryOf(n, nil), EntryOf(r, c)}, IndexOptions{Kitchen: r.Kitchen})
	if len(found) > 0 {
		t.Fatal(found)
	}
	return string(b)
}

// TestWritePreview keeps pages to look at when JARMARK_PREVIEW names a folder.
func TestWritePreview(t *testing.T) {
	dir := os.Getenv("JARMARK_PREVIEW")
	if dir == "" {
		t.Skip("JARMARK_PREVIEW is not set")
	}
	r, c := sample()
	os.WriteFile(filepath.Join(dir, FileName(r.Lot)), []byte(page(t, r, c)), 0o644)
	os.WriteFile(filepath.Join(dir, "index.html"), []byte(indexPage(t)), 0o644)
}

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

// publicFields are the only fields of a batch, a kitchen and a result whose
// words a page may show. A new field is private until it is added here.
var publicFields = map[string]bool{
	"Batch.Name": true, "Batch.Story": true, "Batch.Serve": true,
	"Kitchen.Name": true, "Kitchen.Website": true, "Kitchen.AlsoHandles": true,
	"Result.Lot": true, "Result.Lines.Name": true, "Result.Lines.Allergens": true,
	"Result.Lines.Row.USAllergen": true, "Result.Lines.Row.EUAllergen": true,
	"Result.Lines.Contains.USAllergen": true, "Result.Lines.Contains.EUAllergen": true,
}

// canary writes a unique word into every text of a value, however deep.
type canary struct {
	words map[string]string // word -> field
	n     int
}

func (c *canary) plant(v reflect.Value, path string) {
	switch v.Kind() {
	case reflect.String:
		c.n++
		w := fmt.Sprintf("zq%dqz", c.n)
		c.words[w] = path
		v.SetString(w)
	case reflect.Int, reflect.Int64:
		v.SetInt(1)
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.IsExported() && f.Type.Kind() != reflect.Pointer {
				c.plant(v.Field(i), path+"."+f.Name)
			}
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 2, 2))
		for i := range 2 {
			c.plant(v.Index(i), path)
		}
	case reflect.Map:
		k, e := reflect.New(v.Type().Key()).Elem(), reflect.New(v.Type().Elem()).Elem()
		c.plant(k, path)
		c.plant(e, path)
		v.Set(reflect.MakeMap(v.Type()))
		v.SetMapIndex(k, e)
	}
}

func planted() (*cook.Result, *canary) {
	c := &canary{words: map[string]string{}}
	r := &cook.Result{}
	c.plant(reflect.ValueOf(r).Elem(), "Result")
	r.Batch, r.Kitchen = &batch.Batch{}, &batch.Kitchen{}
	c.plant(reflect.ValueOf(r.Batch).Elem(), "Batch")
	c.plant(reflect.ValueOf(r.Kitchen).Elem(), "Kitchen")
	r.Kitchen.ShowAddress = false
	return r, c
}

// TestPrivate plants a unique word in every text field a batch, kitchen and
// result have; only the words of the public fields may reach any output.
func TestPrivate(t *testing.T) {
	r, c := planted()
	if c.n < 100 {
		t.Fatalf("only %d fields planted", c.n)
	}
	shown := map[string]bool{}
	for _, place := range []string{"us", "eu"} {
		r.Kitchen.Place = place
		idx, _ := Index([]Entry{EntryOf(r, nil)}, IndexOptions{Kitchen: r.Kitchen})
		for name, text := range map[string]string{"page": page(t, r, nil), "index": string(idx), "code": PlainText(r, nil)} {
			for _, w := range regexp.MustCompile(`zq\d+qz`).FindAllString(strings.ToLower(text), -1) {
				field := c.words[w]
				shown[field] = true
				if !publicFields[field] {
					t.Errorf("%s shows the private field %s", name, field)
				}
			}
		}
	}
	for f := range publicFields {
		if !shown[f] {
			t.Errorf("the public field %s is not shown: the test would not see a leak", f)
		}
	}
}

// TestPrivateStatements: a label's statement that repeats a private fact is
// left off the public page, the label's maker block always.
func TestPrivateStatements(t *testing.T) {
	r, c := sample()
	c.Blocks = append(c.Blocks,
		label.Block{ID: "s2", Kind: label.Statement, Runs: []label.Run{{Text: "Made at 14 Thornfield Lane. Call 555 0100."}}},
		label.Block{ID: "s3", Kind: label.Statement, Runs: []label.Run{{Text: "write to NELL@thornfield.example"}}},
		label.Block{ID: "p", Kind: label.Price, Runs: []label.Run{{Text: "$9.00"}}},
		label.Block{ID: "to", Kind: label.To, Runs: []label.Run{{Text: "Marguerite"}}})
	b, found := Page(r, c, Options{})
	if len(found) != 2 {
		t.Errorf("findings %v, want a note for each of the two statements", found)
	}
	all := string(b) + PlainText(r, c)
	for _, secret := range []string{"14 Thornfield", "97000", "555", "nell@", "NELL@", "$9", "Marguerite", "no. 14", "second pot", "market"} {
		if strings.Contains(all, secret) {
			t.Errorf("the page shows %q", secret)
		}
	}
	if !strings.Contains(string(b), "Millbrook, OR") {
		t.Error("the town is missing")
	}
	r.Kitchen.ShowAddress = true
	if html := page(t, r, c); !strings.Contains(html, "14 Thornfield Lane<br>Millbrook, OR 97000") {
		t.Error("the chosen address is missing")
	}
}

func TestTown(t *testing.T) {
	for _, c := range []struct {
		address []string
		want    string
	}{
		{[]string{"14 Thornfield Lane", "Millbrook, OR 97000"}, "Millbrook, OR"},
		{[]string{"14 Thornfield Lane, Millbrook, OR 97000-1234"}, "Millbrook, OR"},
		{[]string{"Rose Cottage", "Back Lane, Millbrook OX7 1AA"}, "Millbrook"},
		{[]string{"Rose Cottage", "Back Lane", "Millbrook", "OX7 1AA"}, ""},
		{[]string{"Am Anger 3", "99999 Mühlbach"}, "Mühlbach"},
		{[]string{"Am Anger 3", "D-99999 Mühlbach", "Germany"}, "Mühlbach"},
		{[]string{"14 Thornfield Lane"}, ""},
		{[]string{"Rose Cottage", "Back Lane"}, ""},
		{[]string{"Millbrook, OR 97000"}, ""},
		{nil, ""},
	} {
		if got := town(c.address); got != c.want {
			t.Errorf("town(%q) = %q, want %q", c.address, got, c.want)
		}
	}
}

// TestEscapes: words of a batch file are text, never markup.
func TestEscapes(t *testing.T) {
	r, c := sample()
	evil := `</style><script>alert(1)</script>"'`
	r.Batch.Story, r.Kitchen.Name, r.Lot, r.Kitchen.Website = evil, evil, evil, "javascript:alert(1)"
	c.Title = evil
	html := page(t, r, c)
	if strings.Contains(html, "<script") || strings.Contains(html, "javascript:") {
		t.Error("markup of the batch file reaches the page")
	}
	outline(t, "escaped", html)
}

// TestHeadless: the page's headings replace the label's; "Contains" stays.
func TestHeadless(t *testing.T) {
	r, c := sample()
	for i, b := range c.Blocks {
		switch b.Kind {
		case label.Ingredients:
			c.Blocks[i].Runs = []label.Run{{Text: "Ingredients:", Bold: true}, {Text: " plums, "}, {Text: "almonds", Bold: true}}
		case label.Allergens:
			c.Blocks[i].Runs = []label.Run{{Text: "Allergens:", Bold: true}, {Text: " none of the nine."}}
		}
	}
	html := page(t, r, c)
	for _, s := range []string{"<p>plums, <strong>almonds</strong></p>", `<p class="main">None of the nine.</p>`} {
		if !strings.Contains(html, s) {
			t.Errorf("lacks %s", s)
		}
	}
	for i, b := range c.Blocks {
		if b.Kind == label.Allergens {
			c.Blocks[i].Runs = []label.Run{{Text: "Contains: ", Bold: true}, {Text: "almonds"}}
		}
	}
	if !strings.Contains(page(t, r, c), "Contains: almonds") {
		t.Error("the prescribed word is gone")
	}
}

func TestLanguages(t *testing.T) {
	f, err := templates.FS.Open("web/record-words.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	place := regexp.MustCompile(`\{\w+\}`)
	for _, row := range rows[1:] {
		want := place.FindAllString(row[1], -1)
		sort.Strings(want)
		for i, s := range row {
			got := place.FindAllString(s, -1)
			sort.Strings(got)
			if rows[0][i] == "en-us" && s == "" {
				continue
			}
			if s == "" || i > 0 && !reflect.DeepEqual(got, want) {
				t.Errorf("%s, %s: %q", row[0], rows[0][i], s)
			}
		}
	}
	r, _ := sample()
	b, _ := Page(r, nil, Options{Lang: "de-AT"})
	for _, s := range []string{`<html lang="de">`, "Allergene", "22. September 2027", "almonds und milk"} {
		if !strings.Contains(string(b), s) {
			t.Errorf("the German page lacks %q", s)
		}
	}
}

func TestPlainText(t *testing.T) {
	r, c := nutty()
	got := PlainText(r, nil)
	if len(got) > PlainSize {
		t.Errorf("%d bytes", len(got))
	}
	for _, s := range []string{"L26265-PL", "tree nut (almond)", "also handles almonds and milk", "2027-09-22"} {
		if !strings.Contains(got, s) {
			t.Errorf("lacks %q in\n%s", s, got)
		}
	}
	for range 40 {
		r.Lines[0].Allergens = append(r.Lines[0].Allergens, fmt.Sprintf("allergen number %d", len(r.Lines[0].Allergens)))
	}
	got = PlainText(r, nil)
	if !strings.Contains(got, "allergen number 39") || !strings.Contains(got, "L26265-PL") {
		t.Error("allergens or lot are cut")
	}
	if PlainText(nil, c) != "" {
		t.Error("no batch, no text")
	}
}

// TestPlainSize asks another QR encoder (gozxing, a port of ZXing) for the
// version a text of PlainSize bytes takes.
func TestPlainSize(t *testing.T) {
	for n, want := range map[int]int{PlainSize: 10, PlainSize + 1: 11} {
		code, err := encoder.Encoder_encode(strings.Repeat("a", n), decoder.ErrorCorrectionLevel_L, nil)
		if err != nil || code.GetVersion().GetVersionNumber() != want {
			t.Errorf("%d bytes: version %d, %v", n, code.GetVersion().GetVersionNumber(), err)
		}
	}
}

func TestFileName(t *testing.T) {
	seen := map[string]string{}
	for in, want := range map[string]string{"L26165-SR": "l26165-sr.html", "": "lot.html", "../../etc": "", "index": "lotindex.html",
		"é": "ue9.html", strings.Repeat("x", 500): "", "a/b": "a-b.html", "🍓": "u1f353.html"} {
		got := FileName(in)
		if want != "" && got != want {
			t.Errorf("FileName(%q) = %q, want %q", in, got, want)
		}
		if strings.ContainsAny(got, `/\ `) || strings.HasPrefix(got, ".") || len(got) > 120 {
			t.Errorf("FileName(%q) = %q", in, got)
		}
		if seen[got] != "" {
			t.Errorf("%q and %q meet in %s", in, seen[got], got)
		}
		seen[got] = in
	}
	if URL("https://thornfield.example/jars/", "L1") != "https://thornfield.example/jars/l1.html" || URL(" ", "L1") != "" {
		t.Error("URL")
	}
}

func TestNilAndEmpty(t *testing.T) {
	if b, found := Page(nil, nil, Options{}); b != nil || !found.HasErrors() {
		t.Error("a page of nothing")
	}
	page(t, &cook.Result{Batch: &batch.Batch{}}, nil)
	page(t, &cook.Result{Batch: &batch.Batch{Made: unit.Date{Year: -1, Month: 99, Day: -5}}, Lot: "\xff\x00"}, &label.Content{Lang: "zz"})
	if b, found := Index(nil, IndexOptions{}); len(found) > 0 || !strings.Contains(string(b), "No batches") {
		t.Error("an empty index", found)
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
