package eu

import (
	"sync"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

var (
	before = unit.Date{Year: 2026, Month: 6, Day: 13}
	after  = unit.Date{Year: 2026, Month: 6, Day: 14}
)

// testBook is the book of the built-in sets.
var testBook = sync.OnceValues(func() (*place.Book, error) { return place.Load(place.Laws{EU: Law()}) })

// rulesOf is a place on the day its new jam rules begin.
func rulesOf(t testing.TB, id string) *place.Set {
	t.Helper()
	b, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	s, l := b.Place(id, after)
	if s == nil {
		t.Fatal(l)
	}
	return s
}

// tester makes a case of a set on a day in a language.
func tester(t testing.TB, set, lang string, on unit.Date, r *cook.Result, jar cook.JarPlan) *pass {
	t.Helper()
	b, _ := testBook()
	s, l := b.Place(set, on)
	if s == nil {
		t.Fatal(l)
	}
	s.Languages = []string{lang}
	return newPass(r, jar, s, draft.Options{})
}

// declare makes every statement the law asks.
func (c *pass) declare() {
	for _, s := range steps() {
		if s.Name != "extras" { // what no law asks has no clause
			s.Run(c)
		}
	}
}
