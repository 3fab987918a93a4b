package draft

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// Words are found at their borders, the first of the list, outside of what makes
// them something else, and a star stands for anything between.
func TestSaid(t *testing.T) {
	for _, x := range []struct{ text, words, unless, want string }{
		{"Sugar-free jam", "sugar free", "", "sugar free"}, {"Sugar free", "free|sugar", "", "free"}, {"Sugarfree", "sugar", "", ""},
		{"with artificial plum flavor", "artificial * flavor", "", "artificial * flavor"}, {"artificial flavor", "artificial * flavor", "", "artificial * flavor"},
		{"flavor, artificial", "artificial * flavor", "", ""}, {"fat free, sugar free", "free", "fat free", "free"}, {"fat free", "free", "fat free", ""},
		{"", "sugar", "", ""}, {"sugar", "", "", ""}, {"no 5 jam", "no 5", "", "no 5"}, {"a ab", "a*ab", "", "a*ab"}, {"a b", "a*a", "", ""},
	} {
		split := func(s string) []string {
			if s == "" {
				return nil
			}
			return strings.Split(s, "|")
		}
		if got := Said(x.text, split(x.words), split(x.unless)); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
	for text, want := range map[string]string{"": "  ", "Plum": " plum ", " Plum, 2 kg!": " plum 2 kg ", "--": "  ", "Äpfel": " äpfel "} {
		if got := Spaced(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A word is a fault where an ingredient makes it untrue, what the rule says of it
// where none can, and nothing where the rule has nothing to say.
func TestWordingsOfARule(t *testing.T) {
	milk := cook.Evidence{Fact: "butter"}
	for name, x := range map[string]struct {
		rule  place.WordingRule
		found []allergen.Substance
		want  string
	}{
		"plain":              {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Level: "warning", Text: "says {ingredient}"}, nil, `warning w gift[0].message "pure" says `},
		"nothing to say":     {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Level: "warning"}, nil, ""},
		"elsewhere":          {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"brand"}, Level: "note", Text: "x"}, nil, ""},
		"held by a part":     {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Held: []string{"pectin"}, Level: "note", Text: "but {ingredient}"}, nil, `error w gift[0].message "pure" but apple pectin`},
		"held by nothing":    {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Held: []string{"gelatin"}, Level: "note", Text: "x", Else: "may be"}, nil, `note w gift[0].message "pure" may be`},
		"beside a sweetener": {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{"sweetener"}, Text: "but {ingredient}"}, nil, `error w gift[0].message "pure" but jam sugar`},
		"beside an allergen": {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{"allergen"}, Text: "but {ingredient}"}, []allergen.Substance{{ID: "celery", Annex2: []string{"celery"}}}, `error w gift[0].message "pure" but celery`},
		"an American one":    {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{"allergen"}, Text: "but {ingredient}"}, []allergen.Substance{{ID: "x", US: "x"}}, `error w gift[0].message "pure" but x`},
		"on neither list":    {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{"allergen"}, Text: "but {ingredient}"}, []allergen.Substance{{ID: "honey"}}, ""},
		"beside its family":  {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{"tree nuts"}, Text: "but {ingredient}"}, []allergen.Substance{{ID: "almond", Family: "tree nuts"}}, `error w gift[0].message "pure" but almond`},
		"beside no family":   {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{""}, Text: "but {ingredient}"}, []allergen.Substance{{ID: "almond"}}, ""},
		"beside the food":    {place.WordingRule{ID: "w", Words: []string{"pure"}, In: []string{"story"}, Beside: []string{"milk"}, Text: "but {ingredient}"}, []allergen.Substance{{ID: "milk"}}, `error w gift[0].message "pure" but milk`},
		"denied":             {place.WordingRule{ID: "w", Of: []string{"pains", "Joy"}, Forms: []string{"no {x}", "pure {x}"}, In: []string{"story"}, Level: "note", Text: "x"}, nil, `note w gift[0].message "pure Joy" x`},
		"said and denied":    {place.WordingRule{ID: "w", Words: []string{"pure"}, Of: []string{"joy"}, Forms: []string{"pure {x}"}, In: []string{"story"}, Level: "note", Text: "x"}, nil, `note w gift[0].message "pure" x`},
		"not denied":         {place.WordingRule{ID: "w", Of: []string{"joy"}, Forms: []string{"no {x}"}, In: []string{"story"}, Level: "note", Text: "x"}, nil, ""},
	} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: "pure joy"}}
			r.Lines = []cook.Line{{Name: "jam sugar", IsSweet: true, Contains: parts("dextrose", "apple pectin")}}
		})
		for _, s := range x.found {
			d.Allergy.Found = append(d.Allergy.Found, cook.Found{Substance: s, Word: s.ID, From: []cook.Evidence{milk}})
		}
		d.Set.Nutrition, d.Set.Wordings, d.L = nil, []place.WordingRule{x.rule}, nil
		d.Wordings()
		got := ""
		for _, f := range d.L {
			got += f.Severity.String() + " " + f.Code + " " + f.Path + " " + f.Message
		}
		if got != x.want {
			t.Errorf("%s: %q, want %q", name, got, x.want)
		}
	}
	for path, want := range map[string]string{"": "message", "gift[1]": "gift[1].message"} {
		if got := under(path, "message"); got != want {
			t.Errorf("%q: %q", path, got)
		}
	}
}

// A word of the maker's that no table knows is told where it stands; a jar whose
// body is not known has no panel (21 CFR 101.1(b): 40 % of height x circumference).
func TestOwnWordsAndUnknownJars(t *testing.T) {
	d := begun(t, "us-or", nil)
	d.L, d.Allergy = nil, cook.Allergy{Words: []cook.OwnWord{{Word: "moon dust", Path: "contains[0]"}}}
	d.Evidence(func(allergen.Substance) ([]string, bool) { return nil, false }, "x")
	if len(d.L) != 1 || d.L[0].Code != "unknown-allergen" || d.L[0].Path != "contains[0]" || !slices.Contains(d.C.AllergenNames, "moon dust") {
		t.Errorf("%v %v", d.L, d.C.AllergenNames)
	}
	for j, want := range map[pantry.Jar]float64{{}: 0, {Panel: unit.MM(50)}: 0, {Circumference: unit.MM(200)}: 0, {Panel: unit.MM(50), Height: unit.MM(90), Circumference: unit.MM(200)}: 4000,
		{Height: unit.MM(90), Circumference: unit.MM(200)}: 7200} {
		if got := PanelArea(j); got < want-1e-9 || got > want+1e-9 {
			t.Errorf("%+v: %g mm²", j, got)
		}
	}
}

func parts(names ...string) (out []pantry.Part) {
	for _, n := range names {
		out = append(out, pantry.Part{Name: n})
	}
	return out
}
