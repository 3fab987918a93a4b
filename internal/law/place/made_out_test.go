package place

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// What a country's law changes in the common table, and nothing of another's.
func TestNationalChanges(t *testing.T) {
	common := European{Address: "an EU address", SugarPhrase: "sugar", Record: "none",
		National: []national{{Place: "xx", T2Rounded: true, Address: "an XX address", Sugar: "XX sugar", Record: "five years", Beside: []Beside{{About: "net"}}},
			{Place: "yy", Beside: []Beside{{About: "price"}}}}}
	if got := common.In("xx"); !got.T2Rounded || got.Address != "an XX address" || got.SugarPhrase != "XX sugar" || got.Record != "five years" || len(got.Beside) != 1 {
		t.Errorf("xx: %+v", got)
	}
	if got := common.In("yy"); got.T2Rounded || got.Address != "an EU address" || got.SugarPhrase != "sugar" || got.Record != "none" || len(got.Beside) != 1 || got.Beside[0].About != "price" {
		t.Errorf("yy: %+v", got)
	}
	if got := common.In("zz"); got.T2Rounded || len(got.Beside) != 0 {
		t.Errorf("zz: %+v", got)
	}
}

// Directive 76/211/EEC Annex I point 3.1: to 50 g 2 mm, to 200 g 3 mm, to 1000 g
// 4 mm, above 6 mm; each row takes its own limit.
func TestDigitHeightAtTheSteps(t *testing.T) {
	e := European{Digits: []digits{{50, 2000}, {200, 3000}, {1000, 4000}, {0, 6000}}}
	for g, mm := range map[float64]float64{1: 2, 50: 2, 50.001: 3, 200: 3, 200.001: 4, 1000: 4, 1000.001: 6, 9000: 6} {
		if got := e.DigitHeight(unit.Grams(g)); got != unit.MM(mm) {
			t.Errorf("%g g: %v, want %g mm", g, got, mm)
		}
	}
}

// An EU set without one of its tables is no set; each lack alone.
func TestEuropeanTableLacks(t *testing.T) {
	whole := func() *European {
		return &European{XHeight: 1, XHeightSmall: 1, SmallBelow: 1, Digits: []digits{{0, 1}}, DateForm: "day", Clear: 100, Prepacked: []string{"a"}, Citrus: []string{"b"}}
	}
	if err := whole().check(); err != nil {
		t.Fatal(err)
	}
	for name, spoil := range map[string]func(*European){
		"citrus": func(e *European) { e.Citrus = nil }, "prepacked": func(e *European) { e.Prepacked = nil }, "clear": func(e *European) { e.Clear = 99 },
	} {
		e := whole()
		if spoil(e); e.check() == nil {
			t.Errorf("%s missing passes", name)
		}
	}
}

// A set says its name, languages, statements, currency and units; each lack alone
// is told.
func TestSetLacks(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	s, _ := b.Place("us-or", unit.Date{Year: 2026, Month: 11, Day: 1})
	if err := s.rules.check(Law{}, b.words); err != nil {
		t.Fatal(err)
	}
	for want, spoil := range map[string]func(*rules){
		"languages and kinds": func(r *rules) { r.Languages = nil }, "name, languages": func(r *rules) { r.Name = "" }, "and kinds": func(r *rules) { r.Kinds = nil },
		"three letters": func(r *rules) { r.Currency = "US" }, "and units": func(r *rules) { r.Units = "stone" },
	} {
		r := s.rules
		if spoil(&r); r.check(Law{}, b.words) == nil || !strings.Contains(r.check(Law{}, b.words).Error(), want) {
			t.Errorf("%s: %v", want, r.check(Law{}, b.words))
		}
	}
}

// A kitchen's programme decides the cap by its id; else the first in force does.
func TestSalesCapOfAProgramme(t *testing.T) {
	s := &Set{}
	s.On = unit.Date{Year: 2026, Month: 11, Day: 1}
	cap := func(id string, from, to string, amount int64) Programme {
		return Programme{ID: id, ValidFrom: from, ValidTo: to, SalesCap: SalesCap{Amount: amount}}
	}
	s.Programmes = []Programme{cap("old", "", "2025-12-31", 1), cap("now", "", "", 2), cap("registered", "", "", 3)}
	for programme, want := range map[string]int64{"": 2, "now": 2, " Registered ": 3, "old": 1, "unheard of": 2} {
		if got := s.SalesCap(programme); got.Amount != want {
			t.Errorf("%q: %d, want %d", programme, got.Amount, want)
		}
	}
	if s.Programmes = s.Programmes[:1]; s.SalesCap("").Amount != 0 {
		t.Error("a cap of a law that is over")
	}
}

// NIST Handbook 130, unit pricing: by the ounce, the pound, 100 g and the kilogram.
func TestUnitPriceMeasures(t *testing.T) {
	for per, g := range map[string]float64{"oz": 28.349523125, "lb": 453.59237, "100 g": 100, "kg": 1000} {
		if unit.PerMass[per] != unit.Grams(g) {
			t.Errorf("%s: %v", per, unit.PerMass[per])
		}
	}
}

// A value nobody gave a name is left out of a phrase.
func TestSayWithAnOddValue(t *testing.T) {
	p := &Phrases{words: map[string]string{"x": "{a} and {b}"}}
	if got := p.Say("x", "a", "1", "b"); got != "1 and {b}" {
		t.Error(got)
	}
	if got := p.Say("y"); got != "[y]" {
		t.Error(got)
	}
}

// Every value that is listed has a key, and its source is not a value.
func TestListedValuesHaveKeys(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{"us-or", "eu", "gb"} {
		s, _ := b.Place(id, unit.Date{Year: 2026, Month: 11, Day: 1})
		if s == nil {
			t.Fatal(id)
		}
		for _, v := range s.Effective() {
			if last := v.Key[strings.LastIndex(v.Key, ".")+1:]; last == "" || slices.Contains([]string{"source", "confidence"}, last) {
				t.Errorf("%s: %+v", id, v)
			}
		}
	}
}
