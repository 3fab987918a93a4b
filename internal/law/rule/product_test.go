package rule

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Rows of our own: no country's figures.
func rowsOfTest() []product {
	return []product{
		{ID: "jam", Kinds: []string{"jam"}, Cite: "x", Counts: []string{"fruit"}, Due: []dueRule{{ID: "fruit"}, {ID: "sugar", To: "2026-06-13"}},
			Names:  []productName{{Lang: "en", Name: "jam"}, {Lang: "de", Name: "Konfitüre"}, {Lang: "de", Name: "Marmelade", From: "2026-06-14"}},
			Floors: []floor{{Class: "general", Grams: 350, To: "2026-06-13"}, {Class: "general", Grams: 450, From: "2026-06-14"}, {Class: "ginger", Grams: 150}}},
		{ID: "extra", Kinds: []string{"jam"}, ByName: true, Cite: "x", Names: []productName{{Lang: "en", Name: "extra jam"}}},
	}
}

// A national line writes only what it changes, and may add a product.
func TestOverlay(t *testing.T) {
	got := overlay(rowsOfTest(), []product{{ID: "jam", Solids: &solidsRule{Least: 55}}, {ID: "curd", Kinds: []string{"curd"}, Cite: "y"}})
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
	}{{before, "general", 350, 1, true}, {after, "general", 450, 2, false}, {after, "ginger", 150, 2, false}, {after, "moon", 450, 2, false}} {
		f, ok := p.floorOf(c.class, c.on)
		if !ok || f.Grams != c.grams || len(p.names("de", c.on)) != c.names || p.owes("sugar", c.on) != c.sugar || !p.owes("fruit", c.on) {
			t.Errorf("%+v: %+v %v", c, f, p.names("de", c.on))
		}
	}
}

func TestProductOf(t *testing.T) {
	says := func(word string) func(product) bool {
		return func(p product) bool { return strings.HasPrefix(p.ID, word) }
	}
	for _, c := range []struct {
		kind batch.Kind
		says string
		want string
	}{{batch.Jam, "no", "jam"}, {batch.Jam, "extra", "extra"}, {batch.Chutney, "extra", ""}} {
		if p, _ := productOf(rowsOfTest(), &batch.Batch{Kind: c.kind}, says(c.says)); p.ID != c.want {
			t.Errorf("%+v: %s", c, p.ID)
		}
	}
}

func TestProductCheck(t *testing.T) {
	for name, spoil := range map[string]func(*product){
		"no cite":      func(p *product) { p.Cite = "" },
		"no name":      func(p *product) { p.Names = p.Names[:1] },
		"a floor of 0": func(p *product) { p.Floors[0].Grams = 0 },
		"measure":      func(p *product) { p.Measure = "by eye" },
		"counts":       func(p *product) { p.Counts = nil },
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

func TestAmong(t *testing.T) {
	ln := cook.Line{Key: "apple_juice", Name: "apple juice", Row: pantry.Ingredient{Key: "apple_juice", Kind: "juice"}}
	own := cook.Line{Name: "Maronenpüree"}
	for _, c := range []struct {
		list []string
		ln   cook.Line
		want bool
	}{{[]string{"juice"}, ln, true}, {[]string{"apple_juice"}, ln, true}, {[]string{"apple"}, ln, false}, {[]string{"Maronenpüree"}, own, true}, {[]string{""}, own, false}} {
		if among(c.list, c.ln) != c.want {
			t.Errorf("%v %s", c.list, c.ln.Name)
		}
	}
}
