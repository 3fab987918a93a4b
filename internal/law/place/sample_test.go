package place

import (
	"slices"
	"sync"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// book is every place, read without the code of a law.
var book = sync.OnceValues(func() (*Book, error) { return Load(Laws{}) })

// labelDay is the day the tests read the rules on.
var labelDay = unit.Date{Year: 2026, Month: 11, Day: 25}

func rulesOf(t testing.TB, id string) *Set {
	t.Helper()
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	s, l := b.Place(id, labelDay)
	if s == nil {
		t.Fatal(l)
	}
	return s
}

func told(l diag.List, code string) bool {
	return slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == code })
}
