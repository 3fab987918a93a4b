package law

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// twoTongues is strawberry jam for a kitchen that wants German and French.
func twoTongues(t *testing.T, place, second string) (*label.Content, diag.List) {
	t.Helper()
	berry, _ := pantry.Default().Ingredient("strawberries")
	sugar, _ := pantry.Default().Ingredient("sugar")
	r := &cook.Result{Batch: &batch.Batch{Name: "Erdbeerkonfitüre", Product: batch.Jam, Made: unit.Date{Year: 2026, Month: 11, Day: 25}},
		Kitchen: &batch.Kitchen{Name: "Thornfield Lane Preserves", Address: []string{"14 Thornfield Lane"}, Language: "de", Second: second},
		Yield:   cook.Amount{Mass: unit.Grams(1600), How: cook.Measured}, Brix: cook.Reading{Value: 63, How: cook.Measured}, Lot: "TL-1",
		BestBefore: unit.Date{Year: 2027, Month: 11, Day: 25}, Keeping: cook.Keeping{Class: cook.Shelf}, Input: unit.Grams(2000)}
	for i, row := range []pantry.Ingredient{berry, sugar} {
		r.Lines = append(r.Lines, cook.Line{Paths: []string{[]string{"ingredient[0]", "ingredient[1]"}[i]}, Name: row.Name, Key: row.Key, Row: row, Mass: unit.Grams(1000), IsFruit: i == 0, IsSweet: i == 1})
	}
	return Declare(r, cook.JarPlan{FillPath: "fill[0]", Declared: unit.Grams(250), Count: 6, Jar: pantry.Jar{Circumference: unit.MM(210), Panel: unit.MM(60)}}, rulesOf(t, place), draft.Options{})
}

// Regulation (EU) 1169/2011 Art 15(3): particulars may be given in several
// languages. Figures that read alike stand once.
func TestTwoLanguages(t *testing.T) {
	c, l := twoTongues(t, "eu", "fr")
	if l.HasErrors() {
		t.Fatal(l)
	}
	for k, want := range map[label.Kind]string{
		label.Identity: "Erdbeerkonfitüre / Confiture de fraises", label.Net: "250 g", label.Lot: "L TL-1",
		label.Fruit: "hergestellt aus 62 g Früchten je 100 g / préparé avec 62 grammes de fruits pour 100 grammes",
		label.Maker: "Thornfield Lane Preserves, 14 Thornfield Lane",
	} {
		if b, _ := c.Find(k); strings.ReplaceAll(b.Text(), "\u00a0", " ") != want {
			t.Errorf("%s: %q, want %q", k, b.Text(), want)
		}
	}
	if b, _ := c.Find(label.Ingredients); !strings.Contains(b.Text(), "Erdbeeren, Zucker / Ingr") || !strings.Contains(b.Text(), "fraises, sucre") {
		t.Errorf("%q", b.Text())
	}
	n := 0
	for _, d := range l {
		if d.Code == "local-law" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("told %d times what is true in both", n)
	}
	// What only the second language has to say is told: Erdbeerkonfitüre is no
	// French name.
	if !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "legal-name" }) {
		t.Error(l)
	}
}

// A second language the place does not hold, or the first again, adds nothing.
func TestNoSecondLanguage(t *testing.T) {
	for _, x := range []struct {
		place, second string
		warns         bool
	}{{"de", "fr", true}, {"eu", "it", true}, {"eu", "de", false}, {"eu", "", false}} {
		c, l := twoTongues(t, x.place, x.second)
		b, _ := c.Find(label.Ingredients)
		warned := slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Path == "second_language" && d.Severity == diag.Warning })
		if warned != x.warns || strings.Contains(b.Text(), " / ") {
			t.Errorf("%+v: warned %v, %q", x, warned, b.Text())
		}
	}
}
