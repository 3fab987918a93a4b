package place

import (
	"slices"
	"testing"

	"jarmark/internal/kit/unit"
)

// A product goes by the first of its names, or its id where it has none; the row of a
// word is the first that governs it, the very first too.
func TestNamesOfProductRows(t *testing.T) {
	for want, p := range map[string]Product{"jam": {ID: "x", Names: []ProductName{{Name: "jam"}}}, "preserves": {ID: "x", Names: []ProductName{{Name: "preserves"}, {Name: "jam"}}}, "x": {ID: "x"}} {
		if got := p.Called(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	rows := []Product{{ID: "first", Types: []string{"jam"}}, {ID: "second", Types: []string{"jelly", "jam"}}}
	for word, want := range map[string]string{"jam": "first", "jelly": "second", "curd": "", "": ""} {
		if p, ok := ProductNamed(rows, word); p.ID != want || ok != (want != "") {
			t.Errorf("%q: %q %v", word, p.ID, ok)
		}
	}
}

// Rules are stale a year after the day they were last looked up, not on it.
func TestStaleAfterAYear(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	s, _ := b.Place("eu", unit.Date{Year: 2026, Month: 11, Day: 25})
	looked, err := day(s.CheckedOn)
	if err != nil || looked.IsZero() {
		t.Fatalf("%q: %v", s.CheckedOn, err)
	}
	for on, want := range map[unit.Date]bool{looked: false, looked.AddMonths(12): false, looked.AddMonths(12).AddDays(1): true, looked.AddMonths(13): true} {
		_, l := b.Place("eu", on)
		told := false
		for _, d := range l {
			told = told || d.Code == "rules-not-checked"
		}
		if told != want {
			t.Errorf("looked up on %v, on %v: told %v", looked, on, told)
		}
	}
}

// The list of places says how sure the first programme's sentence is, and where there is
// no programme nothing.
func TestListOfPlaces(t *testing.T) {
	b, _ := book()
	for _, s := range b.List() {
		set, _ := b.Place(s.ID, unit.Date{Year: 2026, Month: 11, Day: 25})
		want, ids := "", []string(nil)
		for i, p := range set.Programmes {
			if ids = append(ids, p.ID); i == 0 {
				want = p.Confidence
			}
		}
		if s.Confidence != want || !slices.Equal(s.Programmes, ids) || s.Name != set.Name || s.CheckedOn != set.CheckedOn || len(s.Languages) == 0 {
			t.Errorf("%+v, want %q of %v", s, want, ids)
		}
	}
}

// What of a table is from memory is told with each of its values.
func TestValuesFromMemory(t *testing.T) {
	b, _ := book()
	s, _ := b.Place("eu", unit.Date{Year: 2026, Month: 11, Day: 25})
	n := 0
	for _, v := range s.Effective() {
		if v.Table == "nutrition" {
			n++
			if !slices.Equal(v.Memory, s.Nutrition.Memory) || len(v.Memory) == 0 {
				t.Errorf("%s: %v, want %v", v.Key, v.Memory, s.Nutrition.Memory)
			}
		}
	}
	if n == 0 {
		t.Error("no value of the claims on nutrition")
	}
}
