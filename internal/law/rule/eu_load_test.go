package rule

import (
	"sync"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/templates"
)

var (
	before = unit.Date{Year: 2026, Month: 6, Day: 13}
	after  = unit.Date{Year: 2026, Month: 6, Day: 14}
)

// euFiles reads the set and phrase files once.
var euFiles = sync.OnceValues(func() (map[string]rules, map[string]*Phrases) {
	words, err := loadPhrases(templates.FS)
	if err != nil {
		panic(err)
	}
	book := &Book{files: templates.FS, words: words}
	sets := map[string]rules{}
	for _, id := range []string{"eu", "gb", "ni", "ie", "de", "fr"} {
		r, err := book.compile(id)
		if err != nil {
			panic(err)
		}
		sets[id] = r
	}
	return sets, words
})

// tester makes a case of a set on a day in a language; a phrase the language
// lacks fails the test.
func tester(t *testing.T, set, lang string, on unit.Date, r *cook.Result, jar cook.JarPlan) *euCase {
	t.Helper()
	sets, words := euFiles()
	law := sets[set].EU.in(set)
	w := words[lang]
	c := &euCase{r: r, jar: jar, law: law, rows: sets[set].Products, additives: sets[set].Additives.rows(), on: on, lang: lang, pack: law.packers(),
		say: func(k string, kv ...string) string {
			if !w.Has("eu." + k) {
				t.Errorf("no phrase %q in %s", k, lang)
			}
			return w.Say("eu."+k, kv...)
		},
		has: func(k string) bool { return w.Has("eu." + k) }}
	c.dec = c.say("decimal")
	c.choose()
	c.names = annexNames(c.say)
	c.x = c.law.xHeight(sideArea(jar))
	return c
}
