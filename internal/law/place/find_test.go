package place

import (
	"strings"
	"testing"

	where "jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/weigh"
)

func Finder(t *testing.T) where.Finder {
	t.Helper()
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	return b.Find
}

// The plain facts of places. Currencies: ISO 4217. The imperial pint in Great
// Britain and Northern Ireland: UK Weights and Measures Act 1985; Ireland's from
// memory.
func TestFactsOfPlaces(t *testing.T) {
	find := Finder(t)
	for _, want := range []where.Place{
		{ID: "us", Name: "United States (federal)", Law: "us", Currency: "USD", Units: "us", Per: "oz"},
		{ID: "us-or", Name: "Oregon", Law: "us", Currency: "USD", Units: "us", Per: "oz"},
		{ID: "us-de", Name: "Delaware", Law: "us", Currency: "USD", Units: "us", Per: "oz"},
		{ID: "eu", Name: "European Union", Law: "eu", Currency: "EUR", Units: "metric", Per: "kg"},
		{ID: "de", Name: "Germany", Law: "eu", Currency: "EUR", Units: "metric", Per: "kg"},
		{ID: "fr", Name: "France", Law: "eu", Currency: "EUR", Units: "metric", Per: "kg"},
		{ID: "ie", Name: "Ireland", Law: "eu", Currency: "EUR", Units: "metric", Per: "kg", Imperial: true},
		{ID: "gb", Name: "Great Britain", Law: "eu", Currency: "GBP", Units: "metric", Per: "kg", Tenths: true, Imperial: true},
		{ID: "ni", Name: "Northern Ireland", Law: "eu", Currency: "GBP", Units: "metric", Per: "100 g", Tenths: true, Imperial: true},
	} {
		got, _, ok := find(" " + strings.ToUpper(want.ID))
		if len(got.Languages) == 0 {
			t.Errorf("%s has no language", want.ID)
		}
		got.Languages = nil
		if !ok || got.ID != want.ID || got.Name != want.Name || got.Law != want.Law || got.Currency != want.Currency ||
			got.Units != want.Units || got.Per != want.Per || got.Tenths != want.Tenths || got.Imperial != want.Imperial {
			t.Errorf("%s: got %+v, want %+v", want.ID, got, want)
		}
	}
}

// A place there are no rules for is never taken for another; the hint names
// the one that may be meant.
func TestUnknownPlaces(t *testing.T) {
	find := Finder(t)
	for id, hint := range map[string]string{
		"oregon": "did you mean us-or (Oregon)?", "US-OREGON": "did you mean us-or (Oregon)?", "Oregonn": "did you mean us-or (Oregon)?",
		"or": "did you mean us-or (Oregon)?", "usa": "did you mean us (", "U.S.A.": "did you mean us (", "us-orr": "did you mean us-or (Oregon)?",
		"united states": "did you mean us (", "New York": "did you mean us-ny (New York)?", "uk": "did you mean gb (Great Britain)?",
		"England": "did you mean gb (Great Britain)?", "germany": "did you mean de (Germany)?", "Deutschland": "did you mean de (Germany)?",
		"France": "did you mean fr (France)?", "europe": "did you mean eu (European Union)?", "xx": placesHint, "zz-top": placesHint,
		"": `write a place like "us-or"`, "  ": `write a place like "us-or"`,
	} {
		p, got, ok := find(id)
		if ok || p.ID != "" || !strings.HasPrefix(got, hint) {
			t.Errorf("%q: %+v, hint %q, want %q", id, p, got, hint)
		}
	}
}

// The packers' rules come from the sets: Directive 76/211/EEC; German FPackV
// s. 9(3), (4); UK packers' guidance (2.5 %).
func TestPackersOfPlaces(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string]weigh.Packers{
		"eu": {System: "eu", PerMille: 20, Largest: 10 * unit.Kilogram}, "fr": {System: "fr", PerMille: 20, Largest: 10 * unit.Kilogram},
		"gb": {System: "gb", PerMille: 25, Largest: 25 * unit.Kilogram}, "de": {System: "de", PerMille: 20, DoubleRounded: true, Largest: 10 * unit.Kilogram},
	} {
		got, ok := b.Packers(id)
		said := got.Record // s. 41(4): the results are recorded and kept
		if (id == "de") != strings.Contains(said, "FPackV s. 41") || !strings.Contains(said, "results") && !strings.Contains(said, "record") {
			t.Errorf("%s: record %q", id, said)
		}
		if got.Record = ""; !ok || got != want {
			t.Errorf("%s: %+v, want %+v", id, got, want)
		}
	}
	for _, id := range []string{"us", "us-de", "oregon", ""} {
		if p, ok := b.Packers(id); ok {
			t.Errorf("%s: %+v", id, p)
		}
	}
}

// A proof in German names the place and the clauses in German.
func TestPlacesAndClausesInTheLanguage(t *testing.T) {
	for _, x := range []struct{ place, lang, name, clause, want string }{
		{"de", "de", "Deutschland", "Regulation (EU) 1169/2011 Art 18, Annex VII", "Verordnung (EU) Nr. 1169/2011 Art. 18, Anhang VII"},
		{"eu", "de", "Europäische Union", "Regulation (EU) No 1169/2011 Art 23(1)", "Verordnung (EU) Nr. 1169/2011 Art. 23(1)"},
		{"eu", "fr", "Union européenne", "Directive 76/211/EEC Annex I", "directive 76/211/CEE annexe I"},
		{"eu", "en", "European Union", "Directive 76/211/EEC Annex I", "Directive 76/211/EEC Annex I"},
		{"us-or", "en", "Oregon", "21 CFR 101.3", "21 CFR 101.3"},
	} {
		s := rulesOf(t, x.place)
		if got := s.NameIn(x.lang); got != x.name {
			t.Errorf("%s in %s is %q", x.place, x.lang, got)
		}
		if got := s.Words[x.lang].Cite(x.clause); got != x.want {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
}
