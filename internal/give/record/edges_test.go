package record

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// A list of any length, a month there is none of, a value that looks like a place.
func TestWordsOfThePage(t *testing.T) {
	w := wordsFor("en")
	for text, want := range map[string]string{"": "", "milk": "milk", "milk egg": "milk and egg", "milk egg almond": "milk, egg and almond"} {
		if got := w.and(strings.Fields(text)); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
	for month, want := range map[int]string{1: "January", 12: "December", 0: "-00-", 13: "-13-"} {
		if got := w.day(unit.Date{Year: 2026, Month: month, Day: 3}); !strings.Contains(got, want) {
			t.Errorf("month %d: %q", month, got)
		}
	}
	if got := fill("{a} {b}", "a", "{b}", "b", "x"); got != "{b} x" {
		t.Errorf("%q", got)
	}
	for lang, want := range map[string]string{"de": "de", " DE-at ": "de", "en-US": "en", "": "en", "xx": "en", "fr-CA": "fr"} {
		if got := wordsFor(lang); got.lang != want || got.text["batches"] == "" {
			t.Errorf("%q: %q", lang, got.lang)
		}
	}
}

// The latest batch first, then by lot; of two with one lot the first stays, and
// that is told; a batch without a page has no line.
func TestIndexOrder(t *testing.T) {
	day := func(d int) unit.Date { return unit.Date{Year: 2026, Month: 6, Day: d} }
	page, found := Index([]Entry{
		{File: "b", Name: "Bramble jam", Lot: "B", Made: day(2)}, {File: "a", Name: "Apricot jam", Lot: "A", Made: day(2), Contains: []string{"milk", "egg"}},
		{File: "c", Name: "Cherry jam", Lot: "C", Made: day(9), UseBy: true, None: true, BestBefore: day(30)}, {File: "a", Name: "Another jam", Lot: "A", Made: day(1)}, {Name: "Unpublished jam", Made: day(3)},
	}, IndexOptions{Lang: "en"})
	at := -1
	for _, name := range []string{"Cherry jam", "Apricot jam", "Bramble jam"} {
		i := strings.Index(string(page), name)
		if i <= at {
			t.Errorf("%s stands at %d after %d", name, i, at)
		}
		at = i
	}
	if strings.Contains(string(page), "Another jam") || strings.Contains(string(page), "Unpublished jam") || !strings.Contains(string(page), "milk and egg") {
		t.Error(string(page))
	}
	if len(found) != 1 || found[0].Code != "lot-twice" || found[0].Severity != diag.Warning || !strings.Contains(found[0].Message, "the lot A") {
		t.Errorf("%v", found)
	}
	w := wordsFor("en")
	if l := w.line(Entry{UseBy: true, None: true}); l.DateWord != w.text["use-by"] || l.Allergens != w.text["short-none"] {
		t.Errorf("%+v", l)
	}
	if l := w.line(Entry{None: true, Contains: []string{"milk"}}); l.DateWord != w.text["best-before"] || l.Allergens != "milk" {
		t.Errorf("%+v", l)
	}
	if l := w.line(Entry{}); l.Allergens != w.text["short-list"] {
		t.Errorf("%+v", l)
	}
}

// A page of pieces: the language the label has, what each allergen comes from,
// what the kitchen handles besides, and no vacuum to check in a cold jar.
func TestPiecesOfThePage(t *testing.T) {
	r, c := sample()
	c.Lang, c.AllergenWhy = "de", []label.Why{{Name: "mandeln", From: []string{"Mandelmus"}}}
	c.Blocks = slices.DeleteFunc(c.Blocks, func(b label.Block) bool { return b.Kind == label.Advisory })
	r.Kitchen.AlsoHandles, r.Kitchen.Language = []string{"Sellerie"}, "fr"
	zero := 0.0
	r.Batch.Process.Method, r.Batch.Process.Minutes = "boiling water", &zero
	text := wordsFor("de").text
	html := page(t, r, c)
	for words, want := range map[string]bool{`<html lang="de">`: true, "Mandeln: Mandelmus": true, "Sellerie": true, text["seal-lid"]: true,
		text["seal-bad"]: true, "Wasserbad": false} {
		if strings.Contains(html, words) != want {
			t.Errorf("%q on the page: %v", words, !want)
		}
	}
	r.Keeping.Class = cook.Refrigerator
	if html := page(t, r, c); strings.Contains(html, text["seal-lid"]) || !strings.Contains(html, text["seal-bad"]) {
		t.Error("a cold jar is asked for its vacuum")
	}
	r.Kitchen.AlsoHandles = []string{" "}
	if got := (publisher{r: r, c: c, k: r.Kitchen, w: wordsFor("de")}).advisory(); got != "" {
		t.Errorf("a kitchen that handles nothing else says %q", got)
	}
	if e := EntryOf(nil, nil); !reflect.DeepEqual(e, Entry{}) {
		t.Errorf("%+v", e)
	}
	list, _ := Index([]Entry{{File: "a", Name: "x", Lot: "A"}}, IndexOptions{Lang: "de"})
	if !strings.Contains(string(list), `<th scope="col">`+text["best-before"]+"</th>") {
		t.Error("the list of batches does not head its dates")
	}
}

// A link goes to the open web alone, and carries nobody's name.
func TestWebsite(t *testing.T) {
	for s, want := range map[string]string{"example.org": "https://example.org", " http://example.org/x ": "http://example.org/x", "https://example.org": "https://example.org",
		"ftp://example.org": "", "javascript://x": "", "https://me@example.org": "", "": "", "https://": "", "a b": ""} {
		if got := website(s); got != want {
			t.Errorf("%q: %q, want %q", s, got, want)
		}
	}
}
