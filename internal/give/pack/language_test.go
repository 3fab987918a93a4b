package pack

import (
	"jarmark/internal/give/table"
	"jarmark/templates"

	"regexp"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	where "jarmark/internal/kit/place"
	"jarmark/internal/kitchen/pantry"
)

// everyList is all a batch's lists say: packing list, trace, recall sheet,
// allergen sheet.
func everyList(t *testing.T, p where.Place) string {
	t.Helper()
	rs := both()
	rs[0].Kitchen.Place = p
	plan, _ := Build(rs, Options{})
	h, l := Trace("L26265-PL", rs, Options{Unread: []string{"a/b.toml: locked"}})
	if h == nil {
		t.Fatal(l)
	}
	fs := faces(t)
	gifts, _ := Build(rs, Options{Gifts: true})
	out := plan.Text() + "\n" + h.Text() + "\n" + plan.Book().Text() + "\n" + gifts.Text()
	recall, _ := h.RecallDoc(fs, "a4")
	stall, _ := AllergenDoc(Allergens([]Product{{Result: rs[0]}, {Result: rs[1]}}, ""), "", "", fs, "a4")
	pages, _ := plan.Doc(fs, "a4")
	for _, d := range []*page.Doc{recall, stall, pages} {
		for _, pg := range d.Pages {
			for _, m := range pg.Marks {
				if x, ok := m.(*page.Text); ok {
					out += "\n" + x.String()
				}
			}
		}
	}
	return out
}

// TestListsSpeakTheLanguageOfThePlace: nothing a list says of its own accord
// is left in English, and its dates are the language's (common practice, no
// source; US: month in letters first).
func TestListsSpeakTheLanguageOfThePlace(t *testing.T) {
	hole := regexp.MustCompile(`%%|%[ds]`)
	for lang, day := range map[string]string{"de": "22. September 2026", "fr": "22 septembre 2026"} {
		text := everyList(t, where.Place{ID: lang, Law: where.EU, Languages: []string{lang}})
		if !strings.Contains(text, day) {
			t.Errorf("%s: no %s", lang, day)
		}
		for english, own := range templates.ByLanguage("languages/packing.csv")[lang] {
			for _, part := range hole.Split(english, -1) {
				if part = strings.Trim(part, " ,.;:"); len(strings.Fields(part)) > 1 && !strings.Contains(own, part) && strings.Contains(text, part) {
					t.Errorf("%s: %q is in English", lang, part)
				}
			}
		}
	}
	us := everyList(t, where.Place{ID: "us-or", Law: where.US, Languages: []string{"en"}})
	for _, want := range []string{"Sep 22, 2026", "Sep 22, 2027", "Dec 5, 2026"} {
		if !strings.Contains(us, want) {
			t.Errorf("US lists do not say %s", want)
		}
	}
	if strings.Contains(us, "22 Sep") {
		t.Error("a US list has the day first")
	}
	gb := everyList(t, where.Place{ID: "gb", Law: where.EU, Languages: []string{"en"}})
	if !strings.Contains(gb, "22 Sep 2026") {
		t.Error("a British list does not say 22 Sep 2026")
	}
}

// TestIngredientsOnListsAreInTheirLanguage: a shared ingredient is called by the
// name the pantry has in the language of the list; German names of the pantry.
func TestIngredientsOnListsAreInTheirLanguage(t *testing.T) {
	rs := both()
	for _, r := range rs {
		r.Kitchen.Place = where.Place{ID: "de", Law: where.EU, Languages: []string{"de"}}
		for i, l := range r.Lines {
			if g, ok := pantry.Default().Ingredient(l.Name); ok {
				r.Lines[i].Row = g
			}
		}
	}
	h, l := Trace("L26265-PL", rs, Options{})
	if h == nil || len(h.Related) != 1 || strings.Join(h.Related[0].Shares, " ") != "Zucker" {
		t.Errorf("%+v %v", h, l)
	}
}

// The steps of a recall are in the table of words too.
func TestRecallStepsAreInTheTable(t *testing.T) {
	de := table.WordsIn("de")
	for _, step := range append(append(append([]string(nil), recallSteps...), noticeSteps...), relatedNote, commonNote) {
		if !de.Knows(step) {
			t.Errorf("no words for %q", step)
		}
	}
}
