package us

import (
	"fmt"
	"sync"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

var book = sync.OnceValues(func() (*place.Book, error) { return place.Load(place.Laws{US: Law()}) })

// labelDay is the day the tests read the rules on.
var labelDay = unit.Date{Year: 2026, Month: 11, Day: 25}

func rulesOf(t testing.TB, id string) *place.Set {
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

// part is one ingredient of an American test batch: words of the table, grams.
type part struct {
	words string
	g     float64
}

// kitchen is the invented demo kitchen.
func kitchen() *batch.Kitchen {
	return &batch.Kitchen{Name: "Thornfield Lane Preserves", Address: []string{"14 Thornfield Lane", "Millbrook, OR 97000"},
		Phone: "555 0114", Email: "jam@thornfield.example", Permit: "4711", County: "Mill County", StateWebsite: "example.gov/food", RecordURL: "https://thornfield.example/jam", Currency: "USD"}
}

// pot is a batch of table ingredients, weighed, with a reading.
func pot(t testing.TB, kind batch.ProductType, name string, brix cook.Reading, list ...part) *cook.Result {
	t.Helper()
	b := &batch.Batch{Name: name, Product: kind, Made: unit.Date{Year: 2026, Month: 6, Day: 14}}
	r := &cook.Result{Batch: b, Kitchen: kitchen(), Brix: brix, Lot: "L26165-TT", BestBefore: unit.Date{Year: 2027, Month: 6, Day: 14},
		Keeping: cook.Keeping{Class: cook.Shelf, SealedMonths: 12, OpenedDays: 30, UnsealedDays: 3}}
	for i, x := range list {
		row, ok := pantry.Default().Ingredient(x.words)
		if !ok {
			t.Fatalf("no ingredient %q", x.words)
		}
		path := fmt.Sprintf("ingredient[%d]", i)
		b.Ingredients = append(b.Ingredients, batch.Ingredient{Path: path, Name: x.words})
		soluble := x.g * max(row.SolubleG, 0) / 100
		if row.Class == "sweetener" && row.Key == "sugar_white" {
			soluble = x.g
		}
		r.Lines = append(r.Lines, cook.Line{Paths: []string{path}, Name: row.Name, Key: row.Key, Row: row, Contains: row.Contains,
			Mass: unit.Grams(x.g), Soluble: unit.Grams(soluble), IsFruit: row.Class == "fruit", IsSweet: row.Class == "sweetener", IsWater: row.Class == "water"})
		r.Input += unit.Grams(x.g)
	}
	return r
}

func measured(v float64) cook.Reading { return cook.Reading{Value: v, How: cook.Measured} }

// Jar8 is a round 8 fl oz jar, weighed as declared.
func jar8(declared unit.Mass) cook.JarPlan {
	j, _ := pantry.Default().Jar("us8")
	return cook.JarPlan{FillPath: "fill[0]", Jar: j, Count: 12, Sealed: 12, Declared: declared, Weighed: []unit.Mass{declared, declared, declared}}
}

func declare(t testing.TB, r *cook.Result, place_ string, o draft.Options) (*label.Content, diag.List) {
	t.Helper()
	return Declare(r, jar8(10*unit.Ounce), rulesOf(t, place_), o)
}

func found(l diag.List, code string) (diag.Diagnostic, bool) {
	for _, d := range l {
		if d.Code == code {
			return d, true
		}
	}
	return diag.Diagnostic{}, false
}

func text(c *label.Content, k label.Kind) string {
	b, _ := c.Find(k)
	return b.Text()
}
