package job_test

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
)

// A kitchen writes its ingredients in the language of its labels, and they are
// found with their allergens: almonds are one of Annex II of Regulation (EU)
// 1169/2011 in every language.
func TestIngredientsInTheKitchensLanguage(t *testing.T) {
	for _, c := range []struct{ place, fruit, sugar, nuts, list, allergen string }{
		{"de", "Aprikosen", "Zucker", "Mandeln", "Zutaten: Aprikosen", "Mandeln"},
		{"fr", "abricots", "sucre", "amandes", "Ingrédients\u00a0: abricots", "amandes"},
		{"ie", "apricots", "sugar", "almonds", "Ingredients: Apricots", "almonds"},
	} {
		in := job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte("name = \"K\"\naddress = [\"S 1\", \"99999 O\"]\nplace = \"" + c.place + "\"\naltitude = \"50 m\"\n")}}
		in.Batch = job.Doc{Name: "b.toml", Data: []byte("# a jam\nname = \"Jam\"\nkind = \"jam\"\nmade = 2026-07-18\n" +
			"[[ingredient]]\nname = \"" + c.fruit + "\"\namount = \"2 kg\"\n[[ingredient]]\nname = \"" + c.sugar + "\"\namount = \"1.6 kg\"\n" +
			"[[ingredient]]\nname = \"" + c.nuts + "\"\namount = \"40 g\"\n[[fill]]\njar = \"370 ml\"\ncount = 6\ndeclared = \"370 g\"\n")}
		b := builtin(t).Load(in, job.Choices{})
		f := b.Facts()
		if !strings.HasPrefix(f.IngredText, c.list) || !slices.Contains(f.Allergens, c.allergen) {
			t.Errorf("%s: %q, allergens %v", c.place, f.IngredText, f.Allergens)
		}
		for _, d := range b.Findings {
			if d.Code == "unknown-ingredient" || d.Code == "acid-unknown" {
				t.Errorf("%s: %s", c.place, d.Message)
			}
			if strings.HasPrefix(d.Path, "cook") && d.Pos.Line != 2 {
				t.Errorf("%s stands on line %d, the name on 2", d.Code, d.Pos.Line)
			}
		}
	}
}
