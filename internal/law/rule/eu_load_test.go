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
	raw := &Book{files: templates.FS}
	sets := map[string]rules{}
	for _, id := range []string{"eu", "gb", "ni", "ie", "de", "fr"} {
		r, err := raw.raw(id)
		if err != nil {
			panic(err)
		}
		sets[id] = r
	}
	words, err := loadPhrases(templates.FS)
	if err != nil {
		panic(err)
	}
	return sets, words
})

// tester makes a case of a set on a day in a language; a phrase the language
// lacks fails the test.
func tester(t *testing.T, set, lang string, on unit.Date, r *cook.Result, jar cook.JarPlan) *euCase {
	t.Helper()
	sets, words := euFiles()
	from := set
	if sets[set].Extends != "" {
		from = sets[set].Extends
	}
	law := *sets[from].EU.in(set)
	if err := law.check(); err != nil {
		t.Fatal(err)
	}
	w := words[lang]
	c := &euCase{r: r, jar: jar, law: &law, jam: law.jamOn(on), lang: lang, pack: law.packers(),
		say: func(k string, kv ...string) string {
			if !w.Has("eu." + k) {
				t.Errorf("no phrase %q in %s", k, lang)
			}
			return w.Say("eu."+k, kv...)
		},
		has: func(k string) bool { return w.Has("eu." + k) }}
	c.dec = c.say("decimal")
	c.x = c.law.xHeight(sideArea(jar))
	return c
}
