package words

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

func TestFold(t *testing.T) {
	for in, want := range map[string]string{"Crème Fraîche": "creme fraiche", "Weißwein": "weisswein", "ŒUFS": "oeufs", "Äpfel": "apfel", "jus d’orange": "jus d'orange", "plain": "plain"} {
		if got := Fold(in); got != want {
			t.Errorf("%q folds to %q, want %q", in, got, want)
		}
	}
}

// English plurals of the kitchen (common knowledge, no source).
func TestSingular(t *testing.T) {
	for _, w := range strings.Fields(`cherries:cherry peaches:peach mangoes:mango tomatoes:tomato sloes:sloe radishes:radish boxes:box leaves:leaf
		apples:apple hibiscus:hibiscus asparagus:asparagus watercress:watercress figs:fig kiwis:kiwi pie:pie pies:pie gas:gas couscous:couscous
		Strawberries:Strawberry grapefruit:grapefruit dates:date limes:lime quinces:quince`) {
		many, one, _ := strings.Cut(w, ":")
		if got := Singular(many); got != one {
			t.Errorf("%q is one %q, want %q", many, got, one)
		}
		if got := Singular(one); got != one && !strings.HasSuffix(one, "s") {
			t.Errorf("%q is no plural, and gave %q", one, got)
		}
	}
	for _, c := range [][3]string{{"Erdbeeren", "de", "Erdbeer"}, {"Äpfel", "de", "Äpfel"}, {"fraises", "fr", "frais"}, {"cerises", "fr", "ceris"}, {"Nuss", "de", "Nuss"}, {"cherries", "en", "cherry"}} {
		if got := Stem(c[0], c[1]); got != c[2] {
			t.Errorf("stem of %s in %s: %q, want %q", c[0], c[1], got, c[2])
		}
	}
}

// The singular of a small-lettered word begins with the same byte: searches
// pass by words that cannot be its plural.
func TestSingularBegins(t *testing.T) {
	for many, one := range odd {
		if many[0] != one[0] {
			t.Errorf("%s, %s", many, one)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.StringMatching(`[a-zé]{1,9}(ies|oes|ches|xes|us|ss|s|es)?`).Draw(t, "word")
		if one := Singular(w); one == "" || one[0] != w[0] {
			t.Fatalf("%q is one %q", w, one)
		}
	})
}

// Damerau's single slips (Communications of the ACM 7(3), 1964, 171): a letter
// wrong, missing, extra, or two transposed count one; "kitten" and "sitting"
// are three apart (Levenshtein's distance, the usual textbook pair).
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		n    int
	}{{"", "", 0}, {"", "abc", 3}, {"kitten", "sitting", 3}, {"sugar", "sugra", 1}, {"sugar", "suger", 1}, {"sugar", "sgar", 1}, {"sugar", "suggar", 1}, {"ca", "abc", 3}, {"gruß", "gruss", 2}, {"äpfel", "apfel", 1}} {
		if got := Distance(c.a, c.b); got != c.n {
			t.Errorf("%q and %q are %d apart, want %d", c.a, c.b, got, c.n)
		}
		if Within(c.a, c.b, c.n-1) || !Within(c.a, c.b, c.n) {
			t.Errorf("%q and %q: not within %d", c.a, c.b, c.n)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.StringMatching(`[a-cä]{0,6}`).Draw(t, "a"), rapid.StringMatching(`[a-cä]{0,6}`).Draw(t, "b")
		d := Distance(a, b)
		if d != Distance(b, a) || (d == 0) != (a == b) || d > max(len([]rune(a)), len([]rune(b))) {
			t.Fatalf("%q and %q: %d", a, b, d)
		}
	})
}
