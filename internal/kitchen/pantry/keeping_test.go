package pantry

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// Every tested recipe names rows of the pantry, has sane minutes, and says how
// it was read.
func TestRecipesAreSound(t *testing.T) {
	p := Default()
	ids := map[string]bool{}
	for _, x := range p.TestedRecipes() {
		if ids[x.ID] {
			t.Errorf("%s stands twice", x.ID)
		}
		ids[x.ID] = true
		for _, part := range append(slices.Clone(x.Main), x.Also...) {
			for _, k := range part.Keys {
				if g, ok := p.Ingredient(k); !ok || g.Key != k {
					t.Errorf("%s: no ingredient %q", x.ID, k)
				}
			}
		}
		if m := x.Minutes; m[0] < 5 || m[1] < m[0] || m[2] < m[1] || m[2] > 45 {
			t.Errorf("%s: minutes %v", x.ID, m)
		}
		for _, words := range []string{x.ID, x.Cite(), strings.ToUpper(x.Cite())} {
			if got, ok := p.TestedRecipe(words); !ok || got.ID != x.ID {
				t.Errorf("%q finds %q", words, got.ID)
			}
		}
	}
	if len(ids) < 25 {
		t.Errorf("%d recipes", len(ids))
	}
	for _, x := range p.never {
		if x.Unless != "" && x.Unless != "tested" && !ids[x.Unless] {
			t.Errorf("%s: no recipe %q", x.ID, x.Unless)
		}
	}
	for _, words := range []string{"", "Grandma's notebook", "fig jam", "NCHFP", "nchfp fig", "own"} {
		if x, ok := p.TestedRecipe(words); ok {
			t.Errorf("%q counts as %s", words, x.ID)
		}
	}
	if near := p.SuggestRecipes("NCHFP fig jam, no pectin"); len(near) == 0 || near[0] != "nchfp-fig-jam" {
		t.Errorf("near: %v", near)
	}
}

// Word forms, not substrings, in three languages.
func TestNever(t *testing.T) {
	for words, id := range map[string]string{
		"pumpkin": "squash", "Pumpkin purée": "squash", "roasted kabocha": "squash", "Kürbispüree": "squash", "Kürbis": "squash", "potiron": "squash", "Hokkaidokürbis": "squash",
		"smoked bacon": "meat", "Speckwürfel": "meat", "lardons fumés": "meat", "jambon": "meat",
		"crème fraîche": "dairy", "Schlagsahne": "dairy", "powdered milk": "dairy", "lait entier": "dairy", "cream": "dairy",
		"free-range eggs": "egg", "2 Eier": "egg", "jaune d'œuf": "egg",
		"dark chocolate": "chocolate", "Kakaopulver": "chocolate", "cacao nibs": "chocolate",
		"garlic oil": "oil", "Olivenöl": "oil", "huile d'olive": "oil",
		"white peaches": "white-peach", "white-fleshed nectarines": "white-peach", "weiße Pfirsiche": "white-peach", "pêches blanches": "white-peach",
		"bananas": "banana", "Bananenpüree": "banana", "desiccated coconut": "coconut", "Kokosraspel": "coconut", "lait de coco": "coconut",
		"butternut squash": "squash", "Vollmilchschokolade": "dairy", "Zartbitterschokolade": "chocolate", "Räucherspeck": "meat", "Butternutkürbisse": "squash",
		// no false alarm
		"nutmeg": "", "pumpkin pie spice": "", "cream of tartar": "", "crème de cassis": "", "coconut sugar": "", "sucre de coco": "", "gooseberries": "",
		"salmonberries": "", "eggplant": "", "hamburg parsley": "", "white currants": "", "white grape juice": "", "lemon oil": "", "cinnamon oil": "", "clove oil": "", "Zimtöl": "", "chili oil": "oil", "strawberries": "",
		"banana peppers": "", "Fruchtfleisch": "", "brown turkey figs": "", "Milchsäure": "", "Kokosblütenzucker": "",
		"beef tomatoes": "", "peaches": "", "oats": "", "violets": "",
	} {
		x, _ := Default().Never("", "", words)
		if x.ID != id {
			t.Errorf("%q: %q, want %q", words, x.ID, id)
		}
	}
	for key, id := range map[string]string{"pumpkin": "squash", "peach_white": "white-peach", "cocoa": "chocolate", "butter_unsalted": "", "strawberry": ""} {
		if x, _ := Default().Never(key, ""); x.ID != id {
			t.Errorf("%s: %q", key, x.ID)
		}
	}
}

// USDA jelly-point table (AIB 539, Guide 7): the temperature that finishes jam
// at each altitude, and six degrees less, which does not.
func TestJellyPoint(t *testing.T) {
	for ft, f := range map[float64]float64{0: 220, 1000: 218, 2000: 216, 3000: 214, 4000: 212, 5000: 211, 6000: 209, 7000: 207, 8000: 205} {
		h := unit.Length(ft * float64(unit.Foot))
		if !Default().Finished((f-32)*5/9, h) {
			t.Errorf("%.0f °F at %.0f ft is not finished", f, ft)
		}
		if Default().Finished((f-3-32)*5/9, h) {
			t.Errorf("%.0f °F at %.0f ft is finished", f-3, ft)
		}
	}
}
