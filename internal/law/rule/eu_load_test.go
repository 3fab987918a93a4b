package rule

import (
	"sync"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

var (
	before = unit.Date{Year: 2026, Month: 6, Day: 13}
	after  = unit.Date{Year: 2026, Month: 6, Day: 14}
)

// testBook is the book of the built-in sets.
var testBook = sync.OnceValues(func() (*Book, error) { return Load(Laws{EU: euKinds()}) })

// tester makes a case of a set on a day in a language.
func tester(t testing.TB, set, lang string, on unit.Date, r *cook.Result, jar cook.JarPlan) *euCase {
	t.Helper()
	b, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	s, l := b.Place(set, on)
	if s == nil {
		t.Fatal(l)
	}
	s.Languages = []string{lang}
	return newCase(r, jar, s, Options{})
}

// declare makes every statement the law asks.
func (c *euCase) declare() {
	for _, s := range euSteps() {
		if s.Name == "price" {
			return
		}
		s.Run(c)
	}
}
