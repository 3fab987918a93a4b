package pantry

import "testing"

// What a form says may make another food of a name; how it was cut does not.
func TestToldByTheForm(t *testing.T) {
	p := Default()
	for _, c := range []struct{ name, form, want string }{
		{"peppers", "red bell", "bell_pepper_red"}, {"tomatoes", "green, sliced", "tomato_green"}, {"sugar", "brown", "sugar_brown"},
		{"cherries", "sour, pitted", "cherry_sour"}, {"apricots", "dried", "apricot_dried"}, {"vinegar", "cider", "vinegar_cider"},
		{"ginger", "ground", "ginger_ground"}, {"apples", "peeled, cored", ""}, {"lemons", "whole", ""}, {"plums", "", ""}, {"cream", "sour", ""},
	} {
		g, by, ok := p.Told(c.name, c.form)
		if g.Key != c.want || ok != (c.want != "") {
			t.Errorf("%s, %s: %q by %q", c.name, c.form, g.Key, by)
		}
	}
	for _, c := range []struct {
		name, form string
		asks       bool
	}{{"cream", "sour", true}, {"pepper", "black", false}, {"pepper", "red bell", false}, {"ginger", "fresh, grated", false}, {"pepper", "long", true}} {
		if _, asks := p.Ambiguous(c.name, c.form); asks != c.asks {
			t.Errorf("%s, %s: asked %v", c.name, c.form, asks)
		}
	}
}

// Two foods are not a third one whose name has both words, and a stone is no
// fruit.
func TestWordsThatPartFoods(t *testing.T) {
	p := Default()
	for _, w := range []string{"apples and pears", "pears and apples", "apples or pears", "Äpfel und Birnen", "peach pits", "2 peach pits", "apricot stones"} {
		if g, ok := p.Ingredient(w); ok {
			t.Errorf("%s is %s", w, g.Name)
		}
	}
	for w, want := range map[string]string{"cored and sliced apples": "apple", "cherries with pits": "cherry_sweet", "apple pears": "pear_asian", "oranges with peel": "orange_whole"} {
		if g, _ := p.Ingredient(w); g.Key != want {
			t.Errorf("%s is %q, want %q", w, g.Key, want)
		}
	}
}

// "Wild" is no state word of a plant that is no fruit: another one bears the name.
func TestWildPlants(t *testing.T) {
	p := Default()
	for _, w := range []string{"wild onions", "wild celery", "chopped wild mint", "wild ginger"} {
		if g, ok := p.Ingredient(w); ok {
			t.Errorf("%s is %s", w, g.Name)
		}
	}
	for w, want := range map[string]string{"wild plums": "plum", "frozen wild blueberries": "blueberry", "wild damsons": "bullace", "garlic": "garlic", "wild garlic": "wild_garlic", "chopped wild garlic": "wild_garlic"} {
		if g, _ := p.Ingredient(w); g.Key != want {
			t.Errorf("%s is %q, want %q", w, g.Key, want)
		}
	}
}
