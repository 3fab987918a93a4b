package place

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// Words between stars are bold, wherever they stand, and nothing is no run.
func TestStarredWords(t *testing.T) {
	for text, want := range map[string]string{"*Keep* cool": "[Keep] cool", "keep *cool*": "keep [cool]", "plain": "plain", "": "", "**": "", "*all*": "[all]", "a*b*c*d*": "a[b]c[d]"} {
		got := ""
		for _, r := range Starred(text) {
			if r.Bold {
				r.Text = "[" + r.Text + "]"
			}
			got += r.Text
		}
		if got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	if n := len(Starred("*Keep* cool")); n != 2 {
		t.Errorf("%d runs", n)
	}
}

// A set of European law names each additive and its category in every language it
// speaks (Regulation (EU) 1169/2011 Annex VII Part C); one word missing is a fault.
func TestAdditivesNeedTheirWords(t *testing.T) {
	b, _ := book()
	for name, x := range map[string]struct {
		id, category string
		ok           bool
	}{"both": {"pectin", "gelling", true}, "no name": {"moonstone", "gelling", false}, "no category": {"pectin", "moonlight", false}, "neither": {"moonstone", "moonlight", false}} {
		r := rulesOf(t, "de").rules
		one := *r.Additives
		one.Rows = []Additive{{ID: x.id, Category: x.category, E: "440"}}
		r.Additives = &one
		if err := r.check(Law{}, b.words); (err == nil) != x.ok {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A confidence or a day that is none is found in every table, behind a pointer and in a
// list too, and what is not there is no fault.
func TestMarksAreFoundEverywhere(t *testing.T) {
	type table struct {
		Confidence string `toml:"confidence"`
	}
	type set struct {
		One  *table
		List []table
		None *table
	}
	for _, x := range []struct {
		one, list string
		ok        bool
	}{{"primary", "memory", true}, {"sure", "memory", false}, {"primary", "sure", false}} {
		if err := marks(reflect.ValueOf(set{One: &table{x.one}, List: []table{{"primary"}, {x.list}}})); (err == nil) != x.ok {
			t.Errorf("%+v: %v", x, err)
		}
	}
}

// The claims on nutrition of a European set are told in the words of each of its
// languages, of what is less and of what is more.
func TestClaimsOfEveryLanguage(t *testing.T) {
	n := rulesOf(t, "eu").Nutrition
	for _, x := range []struct {
		list []string
		want []string
	}{{n.Nutrients, []string{"sugar", "zucker", "sucres"}}, {n.GoodNutrients, []string{"fibre", "ballaststoffe", "fibres"}}} {
		for _, w := range x.want {
			if !slices.ContainsFunc(x.list, func(s string) bool { return strings.EqualFold(s, w) }) {
				t.Errorf("%q is none of %v", w, x.list)
			}
		}
	}
	for _, x := range [][]string{n.Forms, n.GoodForms} {
		if !slices.ContainsFunc(x, func(s string) bool {
			return strings.Contains(s, "{n}") && strings.Contains(s, "reich") || strings.Contains(s, "frei")
		}) {
			t.Errorf("no German form in %v", x)
		}
	}
}

// A row of words tells what a text may say by its first words, and all where it was read
// from no set.
func TestCandidatesOfARow(t *testing.T) {
	w := WordingRule{Words: []string{"home made", "pure", "home grown"}}
	if got := w.Candidates([]string{"nothing"}); !slices.Equal(got, w.Words) {
		t.Errorf("read from no set: %v", got)
	}
	w.look()
	for text, want := range map[string]string{"home": "home made|home grown", "home home": "home made|home grown", "pure home": "home made|pure|home grown", "plum": ""} {
		if got := strings.Join(w.Candidates(strings.Fields(text)), "|"); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A day is written as the place writes it.
func TestStaleInWordsOfThePlace(t *testing.T) {
	b, _ := book()
	for id, american := range map[string]bool{"eu": false, "us": true} {
		s := rulesOf(t, id)
		looked, _ := day(s.CheckedOn)
		_, l := b.Place(id, unit.Date{Year: looked.Year + 2, Month: 1, Day: 1})
		found := false
		for _, d := range l {
			found = found || d.Code == "rules-not-checked" && strings.Contains(d.Message, looked.Words(american)+",")
		}
		if !found {
			t.Errorf("%s: %v, want %s", id, l, looked.Words(american))
		}
	}
}
