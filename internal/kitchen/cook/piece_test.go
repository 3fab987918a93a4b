package cook

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
)

// An unknown word after a number is an error, never a count: nothing is known
// of its weight. Weights of pieces: USDA SR28 and the table's own.
func TestCountedWords(t *testing.T) {
	for _, c := range []struct {
		name, amount string
		grams        float64 // 0 = refused
		says         string
	}{
		{"rhubarb", "2 stalks", 102, ""}, {"rhubarb", "2", 102, ""}, {"rhubarb", "2 sticks", 102, ""}, {"rhubarb", "3 large stalks", 153, ""},
		{"rhubarb", "1 furlong", 0, `"furlong" is neither a unit nor a piece of rhubarb`},
		{"rhubarb", "2 cloves", 0, "neither a unit"}, {"rhubarb", "2 rods", 0, "neither a unit"}, {"rhubarb", "1 dozen", 612, ""}, {"rhubarb", "1.3 dozen", 0, "dozen"},
		{"lemons", "3 lemons", 174, ""}, {"lemons", "3 ripe lemons", 174, ""}, {"lemons", "3 unwaxed", 174, ""}, {"lemon", "2 pieces", 116, ""},
		{"lemons", "3 slices", 0, "neither a unit"}, {"lemons", "1 dozen lemons", 696, ""}, {"lemons", "2 crates lemons", 0, ""},
		{"apples", "4 medium", 728, ""}, {"apples", "4 peeled apples", 728, ""}, {"garlic", "2 cloves", 6, ""},
		{"eggs", "2 large eggs", 100, ""}, {"pectin", "1 box", 50, ""}, {"pectin", "1 packet", 50, ""}, {"liquid pectin", "1 pouch", 85, ""},
		{"vanilla bean", "1 pod", 3, ""}, {"bay leaf", "2 leaves", 0.4, ""}, {"thyme", "3 sprigs", 3, ""}, {"star anise", "2 stars", 2, ""},
		{"strawberries", "2 punnets", 0, "no weight is known"}, {"plums", "3 hogsheads", 0, "neither a unit"}, {"plums", "3 plum", 198, ""},
		{"strawberries", "500 grm", 0, "not a unit"}, {"strawberries", "2 cupz", 0, "not a unit"},
	} {
		b, l := batch.Parse("b.toml", []byte("name='x'\nkind='jam'\nmade=2026-06-14\n[[ingredient]]\nname='"+c.name+"'\namount='"+c.amount+"'\n"), nil)
		r, found := compute(t, b)
		l = append(l, found...).Errors()
		if c.grams == 0 {
			if len(l) == 0 || !strings.Contains(l[0].Message, c.says) || l[0].Hint == "" || l[0].Path != "ingredient[0].amount" {
				t.Errorf("%s %s: %v", c.amount, c.name, l)
			}
			continue
		}
		if g := r.Lines[0].Mass.Grams(); len(l) > 0 || g < c.grams*0.999 || g > c.grams*1.001 {
			t.Errorf("%s %s: %.2f g, want %.2f; %v", c.amount, c.name, g, c.grams, l)
		}
	}
}

// A hundred pieces without a unit are asked about; fewer, named ones and light ones
// are not (USDA SR28: a stalk of rhubarb 51 g, a plum 66 g).
func TestNumbersThatMayBeGrams(t *testing.T) {
	for _, c := range []struct {
		name, amount string
		told         bool
	}{
		{"rhubarb", "300", true}, {"plums", "1200", true}, {"plums", "100", true}, {"plums", "99", false}, {"rhubarb", "300 stalks", false}, {"plums", "1200 g", false}, {"whole cloves", "120", false},
	} {
		b := demo(t)
		b.Ingredients = append(b.Ingredients, ing(t, c.name, c.amount, ""))
		_, l := compute(t, b)
		if has(l, "grams-meant") != c.told {
			t.Errorf("%s of %s: told %v", c.amount, c.name, !c.told)
		}
	}
}
