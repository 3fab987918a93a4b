package pantry

import (
	"slices"
	"strings"
	"testing"
)

// A label lists each ingredient by its common or usual name (21 CFR 101.4(a)(1)).
// What goes by the numbers of another food keeps its own: 101.4(b)(14) has the
// oil's plant named; Madeira,
// Marsala, Calvados, Tequila and sherry are names of one place each (geographical
// indications; from memory, no source read).
func TestKinKeepTheirName(t *testing.T) {
	for _, c := range []struct{ words, key, never string }{
		{"canola oil", "vegetable_oil", "vegetable oil"}, {"sunflower oil", "vegetable_oil", "vegetable oil"},
		{"apple brandy", "calvados", "calvados"}, {"Madeira", "sherry", "sherry"}, {"mezcal", "tequila", "tequila"},
		{"orange blossom water", "rose_water", "rose water"}, {"five spice", "garam_masala", "garam masala"},
		{"brown rice syrup", "invert_syrup", "invert sugar syrup"}, {"Niagara grapes", "grape_slipskin", "Concord grapes"},
		{"olallieberries", "dewberry", "dewberries"}, {"chopped kabocha", "squash_acorn", "acorn squash"},
		{"Thai chilies, minced", "cayenne_fresh", "cayenne chilies"}, {"tomato purée", "tomato_paste", "tomato paste"},
	} {
		head, _, _ := strings.Cut(c.words, ",")
		g, ok := Default().Ingredient(head)
		if !ok || g.Key != c.key || g.Name == c.never || !g.AsKin || !strings.HasSuffix(strings.ToLower(head), strings.ToLower(g.Name)) {
			t.Errorf("%q finds %q (%s), ok %v", c.words, g.Name, g.Key, ok)
		}
		if n, ok := g.Names("de"); ok {
			t.Errorf("%q is called %q in German, the name of another food", c.words, n.Label)
		}
		if n, _ := g.Names("en_gb"); n.Label != g.Name {
			t.Errorf("%q is called %q in Britain", c.words, n.Label)
		}
	}
	for _, c := range []struct{ words, name string }{ // the same food in other words
		{"scallions", "spring onions"}, {"filberts", "hazelnuts"}, {"granulated sugar", "sugar"}, {"garden strawberries", "strawberries"},
	} {
		if g, _ := Default().Ingredient(c.words); g.Name != c.name || g.AsKin {
			t.Errorf("%q finds %q", c.words, g.Name)
		}
	}
}

// Every kin of the table is found by its own words, and no word of the table
// bears the mark.
func TestEveryKinFindsItself(t *testing.T) {
	some := 0
	for _, g := range Default().Ingredients() {
		for _, food := range g.Kin {
			some++
			got, ok := Default().Ingredient(food)
			if !ok || got.Key != g.Key || got.Name != food {
				t.Errorf("%q of %s finds %q (%s)", food, g.Key, got.Name, got.Key)
			}
		}
		if slices.ContainsFunc(append(g.Aliases, g.Name), func(w string) bool { return strings.Contains(w, kinMark) }) {
			t.Errorf("%s: the mark of a kin is left in a word", g.Key)
		}
	}
	if some < 70 {
		t.Errorf("only %d kin", some)
	}
}

// A row of the maker's own for a kin takes the numbers of its row, and leaves
// that row to those who ask for it.
func TestOwnRowOfAKin(t *testing.T) {
	p := Default().With([]Ingredient{{Name: "canola oil", WaterG: -1, SolubleG: -1, OtherSolidsG: -1, SugarsG: -1, FatG: -1}}, nil)
	oil, _ := p.Ingredient("canola oil")
	if base, _ := Default().Ingredient("vegetable oil"); oil.Name != "canola oil" || !oil.Own || oil.FatG != base.FatG {
		t.Errorf("own row: %q, fat %g", oil.Name, oil.FatG)
	}
	if g, _ := p.Ingredient("vegetable oil"); g.Name != "vegetable oil" || g.Own {
		t.Errorf("vegetable oil finds %q, own %v", g.Name, g.Own)
	}
	if g, _ := p.Ingredient("sunflower oil"); g.Name != "sunflower oil" {
		t.Errorf("sunflower oil finds %q", g.Name)
	}
	if !slices.ContainsFunc(p.Ingredients(), func(g Ingredient) bool { return g.Name == "vegetable oil" }) {
		t.Error("the built-in row is gone from the list")
	}
	q := Default().With([]Ingredient{{Name: "vegetable oil", SolubleG: -1, WaterG: -1, OtherSolidsG: -1, SugarsG: -1}}, nil)
	if g, _ := q.Ingredient("canola oil"); g.Name != "canola oil" {
		t.Errorf("with an own row of vegetable oil, canola oil finds %q", g.Name)
	}
}
