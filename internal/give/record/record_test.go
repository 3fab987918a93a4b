package record

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"sort"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
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
	os.WriteFile(filepath.Join(dir, r.Lot+".html"), []byte(page(t, r, c)), 0o644)
	os.WriteFile(filepath.Join(dir, "index.html"), []byte(indexPage(t)), 0o644)
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
