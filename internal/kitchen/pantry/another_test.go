package pantry

import "testing"

// A name with another food's name in it is that food or asked about, and never
// the shorter one in silence; each of a plain kind of a food is the food. The
// names are those of USDA SR28 and of published recipes, the readings our own.
func TestNamesAreNotSwallowed(t *testing.T) {
	p := Default()
	for words, want := range map[string]string{
		"cauliflower": "cauliflower", "white cabbage": "cabbage", "red cabbage": "cabbage_red", "French beans": "snap_bean", "runner beans": "snap_bean", "marrow": "marrow", "tamarillos": "tamarillo",
		"bay leaf": "bay", "plain flour": "wheat_flour", "mustard powder": "mustard_seed", "wild garlic": "wild_garlic", "garlic, wild": "wild_garlic", "mustard greens": "mustard_greens", "coconut butter": "coconut_butter",
		"lemon verbena": "lemon_verbena", "rose hips": "rose_hip", "water chestnuts": "water_chestnut", "chestnuts, water": "water_chestnut", "butter beans": "lima_bean", "peanut butter": "peanut_butter", "celery root": "celeriac",
		"Surinam cherries": "pitanga", "garlic chives": "garlic_chives", "butter": "butter_unsalted", "hot water": "water", "wild strawberries": "strawberry",
		// asked about
		"cashew milk": "", "oat milk": "", "milk (oat)": "", "butter (cashew)": "", "hot chocolate": "", "bitter almonds": "", "almonds (bitter)": "", "dairy-free butter": "", "butter (dairy-free)": "", "wild carrot": "", "garlic mustard": "", "tiger nuts": "",
		"rose geranium": "", "ground elder": "", "sea grapes": "", "pineapple sage": "", "cherry laurel": "", "garlic salt": "", "celery salt": "", "ginger wine": "", "apple butter": "", "cream soda": "",
	} {
		if g, ok := p.Ingredient(words); g.Key != want || ok != (want != "") {
			t.Errorf("%s is %q, want %q", words, g.Key, want)
		}
	}
	for beside, want := range map[[2]string]bool{
		{"milk", "oat"}: true, {"milk", "dairy-free"}: true, {"butter", "cashew"}: true, {"almonds", "bitter"}: true, {"onions", "wild"}: true, {"chocolate", "hot"}: true, {"garlic", "chopped, wild leek"}: true,
		{"milk", "whole"}: false, {"milk", "coconut"}: false, {"butter", "unsalted"}: false, {"water", "hot"}: false, {"plums", "wild"}: false, {"almonds", "in bitter syrup"}: false, {"garlic", "and wild leek"}: false, {"xyzzy", "wild"}: false, {"milk", ""}: false,
	} {
		if why, ok := p.Another(beside[0], beside[1]); ok != want || ok && why == "" {
			t.Errorf("%q: %v %q", beside, ok, why)
		}
	}
}

// Dry is a taste of a drink, and a state of a fruit or a herb: common practice, no
// source.
func TestDryDrinks(t *testing.T) {
	for words, want := range map[string]string{"dry vermouth": "vermouth", "dry sherry": "sherry", "dry red wine": "wine_red", "dry cider": "hard_cider", "dry apricots": "apricot_dried", "dry mango": "mango_dried"} {
		if g, ok := Default().Ingredient(words); !ok || g.Key != want {
			t.Errorf("%s: %q, want %q", words, g.Key, want)
		}
	}
	if g, ok := Default().Ingredient("dry strawberries"); ok {
		t.Errorf("dry strawberries are %s", g.Key)
	}
}
