package draft

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/law/place"
)

// What is denied together is denied each by itself; a second thing behind "or" too,
// and one behind "and" only where it is a thing labels deny.
func TestDeniedTogether(t *testing.T) {
	things := indexed([]string{"nuts", "milk", "tree nuts", "Nuss", "Milch", "Gluten"})
	joined := place.JoinedWords()
	for text, want := range map[string][]string{
		"without nuts or milk":          {"without nuts", "without milk"},
		"free from milk, and tree nuts": {"free from milk", "free from tree nuts"},
		"milch- und glutenfrei gekocht": {"milchfrei gekocht", "glutenfrei gekocht"},
		"nuss- und Gluten frei":         {"nuss frei", "gluten frei"},
		"no fuss or pectin at all":      {"no pectin at all"},
		"ohne Eile oder Pektin":         {"ohne pektin"},
		"no waste and strawberries":     nil,
		"nuts about it, never milk":     nil,
		"without nuts":                  nil,
		"or nothing":                    nil,
		"no":                            nil,
		"":                              nil,
	} {
		var got []string
		for _, s := range append(apart(Spaced(text), things, joining(joined))[1:], second(Spaced(text), joined)...) {
			if s = strings.TrimSpace(s); !slices.Contains(got, s) {
				got = append(got, s)
			}
		}
		for _, w := range want {
			if !slices.Contains(got, w) {
				t.Errorf("%q: %q, lacks %q", text, got, w)
			}
		}
		if want == nil && len(got) > 0 {
			t.Errorf("%q: %q", text, got)
		}
	}
	forms := []string{"no {x}", "{x} free", "{x}frei"}
	for text, want := range map[string]string{"no cold almonds": "cold|cold almonds", "roasted almond free": "almond|roasted almond", "mandelfrei": "mandel", "all of it": "", "no": ""} {
		if got := strings.Join(deniedIn(text, forms), "|"); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
