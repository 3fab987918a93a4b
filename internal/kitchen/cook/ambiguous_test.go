package cook

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// A word for several foods is asked about, with the choices, and never taken
// for one of them; a name or amount that says which is not asked about.
func TestAmbiguousNames(t *testing.T) {
	for _, c := range []struct {
		name, amount, form string
		choice             string // "" = not asked
	}{
		{"pepper", "500 g", "", "red bell pepper"}, {"peppers", "4", "", "black pepper"}, {"Peppers", "3 cups", "chopped", "fresh chillies"},
		{"pepper", "1 tsp", "", ""}, {"pepper", "2 g", "", ""}, {"pepper", "1 pinch", "", ""}, {"ground pepper", "1 tbsp", "", ""}, {"red bell peppers", "4", "", ""}, {"hot pepper", "45 g", "", ""},
		{"currants", "1 kg", "", "redcurrants"}, {"blackcurrants", "1 kg", "", ""}, {"redcurrants", "1 kg", "", ""},
		{"cream", "200 ml", "", "light cream"}, {"heavy cream", "200 ml", "", ""}, {"cream of tartar", "1 tsp", "", ""},
		{"chili", "2 tsp", "", "chili powder"}, {"chilli", "3", "", ""}, {"chili powder", "2 tsp", "", ""}, {"chilli", "5 g", "fresh", ""},
		{"ginger", "1 tbsp", "", "ground ginger"}, {"ginger", "50 g", "", ""}, {"ground ginger", "1 tsp", "", ""}, {"ginger", "1 tbsp", "freshly grated", ""},
		{"coconut", "200 g", "", "desiccated coconut"}, {"coconut", "1", "", ""}, {"desiccated coconut", "100 g", "", ""},
		{"berries", "1 kg", "", "raspberries"}, {"mustard", "1 tbsp", "", "mustard seed"}, {"mustard seed", "1 tbsp", "", ""},
		// plain names of fresh fruit raise no question
		{"strawberries", "1 kg", "", ""}, {"cherries", "1 kg", "", ""}, {"lemons", "3", "", ""}, {"figs", "1 kg", "", ""}, {"apricots", "1 kg", "", ""},
		{"blackberries", "1 kg", "", ""}, {"plums", "1 kg", "", ""}, {"oranges", "4", "", ""}, {"tomatoes", "1 kg", "", ""}, {"grapes", "1 kg", "", ""},
	} {
		b, _ := batch.Parse("b.toml", []byte("name='x'\nkind='jelly'\nmade=2026-06-14\n[[ingredient]]\nname='"+c.name+"'\namount='"+c.amount+"'\nform='"+c.form+"'\n"), nil)
		_, l := compute(t, b)
		var asked []string
		for _, d := range l.Errors() {
			if d.Path == "ingredient[0].name" || d.Path == "ingredient[0].amount" {
				asked = append(asked, d.Code+": "+d.Message)
			}
		}
		if c.choice == "" && len(asked) > 0 || c.choice != "" && (len(asked) != 1 || !strings.HasPrefix(asked[0], "ambiguous-ingredient") || !strings.Contains(asked[0], c.choice)) {
			t.Errorf("%s of %s (%s): %v, want %q", c.amount, c.name, c.form, asked, c.choice)
		}
	}
	// The maker's own ingredient is what the maker says.
	own := pantry.Default().With([]pantry.Ingredient{{Key: "pepper", Name: "pepper", Class: "vegetable", WaterG: 90, SolubleG: 6, Own: true}}, nil)
	if _, ok := own.Ambiguous("pepper", ""); ok {
		t.Error("an own ingredient is asked about")
	}
}

// Every choice is a food of the table that raises no question itself; dried
// and powdered foods are not the fresh ones.
func TestChoicesAreKnown(t *testing.T) {
	p := pantry.Default()
	for _, word := range []string{"pepper", "currants", "cream", "chili", "ginger", "coconut", "berries", "mustard", "juice concentrate"} {
		a, ok := p.Ambiguous(word, "")
		if !ok {
			t.Errorf("%s is not asked about", word)
		}
		keys := map[string]bool{}
		for _, c := range a.Choices {
			row, known := p.Ingredient(c)
			if _, again := p.Ambiguous(c, ""); again || !known || keys[row.Key] {
				t.Errorf("%s: choice %q: known %v, asked about again %v, row %q", word, c, known, again, row.Key)
			}
			keys[row.Key] = true
		}
	}
	for words, key := range map[string]string{"powdered milk": "milk_powder", "dry milk": "milk_powder", "milk powder": "milk_powder", "dry apricots": "apricot_dried", "milk": "milk", "apricots": "apricot"} {
		if row, _ := p.Ingredient(words); row.Key != key {
			t.Errorf("%s is %q, want %q", words, row.Key, key)
		}
	}
}
