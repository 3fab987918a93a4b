package draft

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// The food is the first of the table behind the words, within four words, and
// not beyond a sign that ends the phrase.
func TestFoodBehindWords(t *testing.T) {
	for text, want := range map[string][2]string{
		" vanilla ": {"", "vanilla"}, " a splash of dark rum ": {"a splash of ", "dark rum"}, " our neighbour s own honey ": {"our neighbour s ", "own honey"},
		" one two three four honey ": {}, " one two three honey ": {"one two three ", "honey"}, " love | honey ": {}, " brown sugar and rum ": {"", "brown sugar"}, " zimt ": {"", "zimt"}, " cannelle ": {"", "cannelle"}, " ": {},
	} {
		_, at, ok := foodIn(text)
		if at != (saidAt{want[0], want[1]}) || ok != (want[1] != "") {
			t.Errorf("%q: %q, ok %v", text, at, ok)
		}
	}
}

// What is in the pot: by its row, or by a word of three letters and more.
func TestInThePot(t *testing.T) {
	line := func(words string) cook.Line {
		g, ok := pantry.Default().Ingredient(words)
		if !ok {
			return cook.Line{Name: words, Written: []string{words}}
		}
		return cook.Line{Name: g.Name, Key: g.Key, Row: g, Written: []string{words}}
	}
	for _, c := range []struct {
		pot, food string
		want      bool
	}{
		{"bourbon", "whiskey", true}, {"vanilla bean", "vanilla", true}, {"lemon juice", "lemons", true}, {"sour cherries", "cherries", true},
		{"Jim’s honey mix", "honey", true}, {"rum", "rum", true}, {"whisky", "bourbon", true}, {"plums", "rum", false}, {"figs", "dried figs", true}, {"sugar", "honey", false},
	} {
		food, ok := pantry.Default().Ingredient(c.food)
		p := &Draft{R: &cook.Result{Lines: []cook.Line{line(c.pot)}}}
		if got := p.inThePot(food); got != c.want || !ok {
			t.Errorf("%s in a pot of %s: %v (known %v)", c.food, c.pot, got, ok)
		}
	}
}

// A text may repeat the declared quantity, in either system, and say how large
// the jar is; 8 fl oz are 236.6 ml (21 CFR 101.7(b), the gallon of 231 cubic
// inches, from memory).
func TestQuantityDeclared(t *testing.T) {
	p := &Draft{NetMass: 255 * unit.Gram}
	jar, err := unit.ParseVolume("8 fl oz")
	if err != nil {
		t.Fatal(err)
	}
	p.Jar.Jar.Nominal = jar
	for text, want := range map[string]bool{"9 oz": true, "255 g": true, "262 g": true, "264 g": false, "247 g": false, "248 g": true, "10 oz": false,
		"8 fl oz": true, "237 ml": true, "12 fl oz": false, "3": true} {
		q, err := unit.ParseQuantity(text)
		if err != nil {
			t.Fatal(text, err)
		}
		if got := p.declares(q); got != want {
			t.Errorf("%s beside 255 g in a jar of 8 fl oz: %v", text, got)
		}
	}
	fluid := &Draft{NetVolume: jar}
	for text, want := range map[string]bool{"8 fl oz": true, "9 fl oz": false, "255 g": false} {
		q, _ := unit.ParseQuantity(text)
		if got := fluid.declares(q); got != want {
			t.Errorf("%s beside 8 fl oz: %v", text, got)
		}
	}
	for text, found := range map[string]string{"12 oz of summer": "12 oz", "net 500g": "500g", "a 16-oz jar": "16-oz", "1/2 kg!": "1/2 kg", "batch 12": "", "12 goats": "", "5 Gläser": "", "1 1/2 lb": "1 1/2 lb"} {
		m := weightIn.FindStringSubmatch(text)
		if got := append(m, "", "")[min(1, len(m))]; got != found {
			t.Errorf("%q: %q", text, got)
		}
	}
}
