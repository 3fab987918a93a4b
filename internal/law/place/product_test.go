package place

import (
	"testing"

	"jarmark/internal/kit/unit"
)

// Rows of our own: no country's figures.
func rowsOfTest() []Product {
	return []Product{
		{ID: "jam", Types: []string{"jam"}, Cite: "x", Counts: []string{"fruit"}, Due: []DueRule{{ID: "fruit"}, {ID: "sugar", To: "2026-06-13"}},
			Names:  []ProductName{{Lang: "en", Name: "jam"}, {Lang: "de", Name: "Konfitüre"}, {Lang: "de", Name: "Marmelade", From: "2026-06-14"}},
			Floors: []Floor{{Class: "general", Grams: 350, To: "2026-06-13"}, {Class: "general", Grams: 450, From: "2026-06-14"}, {Class: "ginger", Grams: 150}}},
		{ID: "extra", Types: []string{"jam"}, ByName: true, Cite: "x", Names: []ProductName{{Lang: "en", Name: "extra jam"}}},
	}
}

// A national line writes only what it changes, and may add a product.
func TestOverlay(t *testing.T) {
	got := overlay(rowsOfTest(), []Product{{ID: "jam", Solids: &SolidsRule{Least: 55}}, {ID: "curd", Types: []string{"curd"}, Cite: "y"}})
	if len(got) != 3 || got[0].Solids == nil || got[0].Cite != "x" || len(got[0].Floors) != 3 || got[2].ID != "curd" {
		t.Errorf("%+v", got)
	}
	if rows := rowsOfTest(); rows[0].Solids != nil {
		t.Error("the rows of the common table changed")
	}
}

func TestProductDays(t *testing.T) {
	p := rowsOfTest()[0]
	for _, c := range []struct {
		on    unit.Date
		class string
		grams int
		names int
		sugar bool
	}{{unit.Date{Year: 2026, Month: 6, Day: 13}, "general", 350, 1, true}, {unit.Date{Year: 2026, Month: 6, Day: 14}, "general", 450, 2, false}, {unit.Date{Year: 2026, Month: 6, Day: 14}, "ginger", 150, 2, false}, {unit.Date{Year: 2026, Month: 6, Day: 14}, "moon", 450, 2, false}} {
		f, ok := p.FloorOn(c.class, c.on)
		if !ok || f.Grams != c.grams || len(p.NamesOn("de", c.on)) != c.names || p.Owes("sugar", c.on) != c.sugar || !p.Owes("fruit", c.on) {
			t.Errorf("%+v: %+v %v", c, f, p.NamesOn("de", c.on))
		}
	}
}

func TestProductCheck(t *testing.T) {
	for name, spoil := range map[string]func(*Product){
		"no cite":      func(p *Product) { p.Cite = "" },
		"no name":      func(p *Product) { p.Names = p.Names[:1] },
		"a floor of 0": func(p *Product) { p.Floors[0].Grams = 0 },
		"measure":      func(p *Product) { p.Measure = "by eye" },
		"counts":       func(p *Product) { p.Counts = nil },
	} {
		p := rowsOfTest()[0]
		if err := p.check([]string{"en", "de"}); err != nil {
			t.Fatal(err)
		}
		if spoil(&p); p.check([]string{"en", "de"}) == nil {
			t.Errorf("%s is not told", name)
		}
	}
}
