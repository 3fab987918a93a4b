package eu

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Art 22(1)(a): a name names an ingredient by its label, by one of it and by its stem, of
// every row in every language; a fruit of two words also as one word in English.
func TestEveryRowIsFoundInANameOfIt(t *testing.T) {
	for _, lang := range []string{"en", "de", "fr"} {
		e := tester(t, "eu", lang, after, batchA1(62), cylinder(68, 60, 340))
		for _, row := range pantry.Default().Ingredients() {
			ln := e.R.Lines[0]
			ln.Key, ln.Name, ln.Row, ln.IsFruit = row.Key, row.Name, row, row.Class == "fruit"
			n, ok := row.Names(map[string]string{"en": "en_gb"}[lang] + map[bool]string{true: lang}[lang != "en"])
			if !ok {
				continue
			}
			for _, name := range []string{n.Label, n.Singular, n.Stem} {
				if len([]rune(name)) > 3 && e.calledAt(name, ln) < 0 {
					t.Errorf("%s: %s is not found in %q: %v", lang, row.Key, name, e.callings(ln))
				}
			}
			if joined := strings.ReplaceAll(words.Singular(n.Label), " ", ""); lang == "en" && ln.IsFruit && e.calledAt(joined, ln) < 0 && !strings.Contains(joined, "-") {
				t.Errorf("%s is not found in %q: %v", row.Key, joined, e.callings(ln))
			}
			list := e.callings(ln)
			for i, s := range list {
				if s == "" || slices.Contains(list[:i], s) {
					t.Errorf("%s: %s is called %q", lang, row.Key, list)
				}
			}
		}
	}
}

// What else a fruit is called stands in a name; a name of two words is no name of its
// last (a Java plum is no plum), and a spice goes by its own.
func TestOtherNamesOfOneWord(t *testing.T) {
	for _, x := range []struct {
		alias string
		fruit bool
		given string
		want  bool
	}{{"brambles", true, "Bramble jam", true}, {"brambles", false, "Bramble jam", false}, {"java plums", true, "Plum jam", false}, {"java-plums", true, "Plum jam", false}} {
		r := cooked(batch.Jam, x.given, 1000, 62, in{key: "moonfruit", name: "moonfruits", g: 500})
		r.Lines[0].IsFruit, r.Lines[0].Row.Aliases = x.fruit, []string{x.alias}
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		if got := e.mentions(r.Lines[0]); got != x.want {
			t.Errorf("%q by %q, fruit %v: %v", x.given, x.alias, x.fruit, got)
		}
	}
}

// A German compound is cut to what it is of where four letters and more are left.
func TestGermanCompoundsAreCut(t *testing.T) {
	e := tester(t, "de", "de", after, batchA1(62), cylinder(68, 60, 340))
	for name, want := range map[string]string{"Zitronensaft": words.Stem("zitronen", "de"), "Saft": words.Stem("saft", "de"), "Teesaft": words.Stem("teesaft", "de"), "Maissaft": words.Stem("mais", "de"), "frischer Apfelsaft": words.Stem("apfel", "de")} {
		var got []string
		e.stems(name, func(s string) { got = append(got, s) })
		if len(got) == 0 || got[0] != want {
			t.Errorf("%s is of %q, want %q", name, got, want)
		}
	}
}
