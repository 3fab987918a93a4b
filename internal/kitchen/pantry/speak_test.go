package pantry

import (
	"strings"
	"testing"
)

// What a kitchen writes in its own language finds the row, with its allergens.
// Words of everyday German and French, no source.
func TestSpeaking(t *testing.T) {
	de := Default().Speaking("de")
	fr := Default().Speaking("fr")
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
	if Default().Speaking("xx") != Default() || Default().Speaking("en") != Default() {
		t.Error("nothing to say, and another pantry")
	}
}

// The juice of a fruit in the kitchen's language is the juice of its row.
func TestSpokenJuices(t *testing.T) {
	for words, want := range map[string]string{
		"de:Quittensaft": "quince", "de:Holunderbeersaft": "elderberry", "de:Traubensaft": "grape_juice", "de:Saft aus Himbeeren": "raspberry_red", "de:frischer Birnensaft": "pear",
		"de:roter Johannisbeersaft": "redcurrant", "de:Schwarzer Johannisbeersaft": "blackcurrant", "de:Saft von roten Johannisbeeren": "redcurrant", "de:weißer Traubensaft": "grape_juice",
		"de:Apfelsaft": "apple_juice", "fr:jus de coings": "quince", "fr:jus d’abricots": "apricot", "fr:jus de pomme": "apple_juice",
	} {
		lang, name, _ := strings.Cut(words, ":")
		g, ok := Default().Speaking(lang).Ingredient(name)
		if !ok || g.Key != want || g.Class != "juice" {
			t.Errorf("%s: %s, a %s", words, g.Key, g.Class)
		}
	}
}
