package pantry

import "testing"

// What a kitchen writes in its own language finds the row, with its allergens.
// Words of everyday German and French, no source.
func TestSpeaking(t *testing.T) {
	de := Default().Speaking(map[string]string{"strawberry": "Erdbeeren", "almond": "Mandeln", "apple": "Äpfel", "apple_peeled": "Äpfel", "plum": "Pflaumen", "wine_white": "Weißwein"})
	fr := Default().Speaking(map[string]string{"grape": "raisins", "raisin": "raisins secs", "chilli_fresh": "piments", "apricot": "abricots", "orange_juice": "jus d’orange"})
	for _, c := range []struct {
		p           *Pantry
		words, want string
	}{
		{de, "Erdbeeren", "strawberry"}, {de, "erdbeere", "strawberry"}, {de, "tiefgekühlte Erdbeeren", "strawberry"},
		{de, "Mandeln", "almond"}, {de, "Apfel", "apple"}, {de, "Pflaume", "plum"}, {de, "Weisswein", "wine_white"},
		{de, "strawberries", "strawberry"}, {de, "Eier", "egg_whole"}, {de, "Gelierzucker", "sugar_gelling"},
		{fr, "raisins", "grape"}, {fr, "Raisins secs", "raisin"}, {fr, "piment", "chilli_fresh"}, {fr, "abricots dénoyautés", "apricot"},
		{fr, "œufs", "egg_whole"}, {fr, "jus d'orange", "orange_juice"}, {fr, "amandes effilées", "almond"},
		{Default(), "raisins", "raisin"}, {Default(), "low-sugar pectin", "pectin_powder"},
	} {
		if g, _ := c.p.Ingredient(c.words); g.Key != c.want {
			t.Errorf("%q found %q, want %q", c.words, g.Key, c.want)
		}
	}
	own := de.With([]Ingredient{{Name: "Mandeln", SolubleG: 5, OtherSolidsG: -1, WaterG: -1, SugarsG: -1}}, nil)
	if g, _ := own.Ingredient("Mandeln"); !g.Own || g.EUAllergen == "" {
		t.Errorf("own almonds lost their allergen: %+v", g)
	}
	if Default().Speaking(nil) != Default() {
		t.Error("nothing to say, and another pantry")
	}
}
