package place

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/kit/unit"
)

func TestEitherIsWrittenOut(t *testing.T) {
	for row, want := range map[string]string{"a": "a", "(a|b) c": "a c|b c", "x(|e)": "x|xe", "(a|b)(|c)": "a|ac|b|bc", "a)(b": "a)(b"} {
		if got := strings.Join(either(nil, "", row), "|"); got != want {
			t.Errorf("%s: %s, want %s", row, got, want)
		}
	}
	got := spelled(map[string][]string{"de": {"Nüsse"}, "fr": {"œuf", "noix"}, "en": {"noix"}})
	if strings.Join(got, "|") != "noix|nuesse|nusse|nüsse|oeuf|œuf" {
		t.Error(got)
	}
}

// A broken file of claims is told; a set that names no claim of it too; and every
// claim is named by the United States and by the European Union, but those whose
// rule one of them has not.
func TestClaimsAreNamed(t *testing.T) {
	for name, data := range map[string]string{"twice": "[[claim]]\nid = \"a\"\nwords.en = [\"x\"]\n[[claim]]\nid = \"a\"\nwords.en = [\"x\"]\n", "nameless": "[[claim]]\nwords.en = [\"x\"]\n", "empty": "[[claim]]\nid = \"a\"\n", "unknown key": "[[claim]]\nid = \"a\"\nsaid.en = [\"x\"]\n"} {
		if _, err := readClaims(fstest.MapFS{claimsFile: {Data: []byte(data)}}); err == nil {
			t.Errorf("%s passes", name)
		}
	}
	if _, err := readClaims(fstest.MapFS{}); err == nil {
		t.Error("a missing file passes")
	}
	for _, r := range []rules{{Wordings: []WordingRule{{Claims: []string{"xyzzy"}}}}, {Nutrition: &nutritionTable{Less: []string{"xyzzy"}}}, {Nutrition: &nutritionTable{Rich: []string{"xyzzy"}}}} {
		if _, err := r.claiming(); err == nil {
			t.Errorf("%+v passes", r)
		}
	}
	all, err := claims()
	if err != nil || len(all.joined) < 9 {
		t.Fatal(err)
	}
	b, err := Load(Laws{})
	if err != nil {
		t.Fatal(err)
	}
	without := map[string][]string{"us": {"sugar", "celery", "mustard"}}
	for _, id := range []string{"us", "eu"} {
		s, _ := b.Place(id, unit.Date{Year: 2026, Month: 11, Day: 27})
		named := append(slices.Clone(s.Nutrition.Less), s.Nutrition.Rich...)
		for _, w := range s.Wordings {
			named = append(named, w.Claims...)
		}
		for c := range all.said {
			if slices.Contains(named, c) == slices.Contains(without[id], c) {
				t.Errorf("%s: claim %s", id, c)
			}
		}
	}
}
