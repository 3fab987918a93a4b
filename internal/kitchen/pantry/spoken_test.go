package pantry

import "testing"

// "Dried" says nothing new of a spice, and makes another food of a fruit; alone it names
// nothing.
func TestDriedSpices(t *testing.T) {
	for words, want := range map[string]bool{"dried cinnamon": true, "dry ground cinnamon": true, "cinnamon": false, "dried": false, "dried plums": false, "dried moon dust": false} {
		if _, got := Default().driedSpice(words); got != want {
			t.Errorf("%q: %v", words, got)
		}
	}
}

// Fruit with its stones or skin is that fruit.
func TestFruitWithItsStones(t *testing.T) {
	want, ok := Default().Ingredient("cherries")
	for _, words := range []string{"cherries with pits", "cherries with stones", "cherries with skin", "cherries with stone"} {
		if got, found := Default().Ingredient(words); !ok || !found || got.Key != want.Key {
			t.Errorf("%q: %q %v", words, got.Key, found)
		}
	}
}

// A fruit of no known water gives no juice; what is juice already is its own.
func TestJuiceOfNoWater(t *testing.T) {
	for _, x := range []struct {
		g  Ingredient
		ok bool
	}{{Ingredient{FruitClassEU: "general", Class: "fruit"}, false}, {Ingredient{FruitClassEU: "general", Class: "fruit", WaterG: -1}, false}, {Ingredient{FruitClassEU: "general", Class: "juice"}, true}, {Ingredient{Class: "fruit", WaterG: 90}, false}, {Ingredient{FruitClassEU: "general", Class: "fruit", WaterG: 90, SolubleG: 10, OtherSolidsG: 3}, true}} {
		got, ok := juiceOf(x.g, "x juice")
		if ok != x.ok || ok && x.g.Class == "fruit" && (got.SolubleG != 10 || got.WaterG != 90 || got.OtherSolidsG != 0 || got.Name != "x juice") {
			t.Errorf("%+v: %+v %v", x.g, got, ok)
		}
	}
}

// A maker's own row stands for the built-in one of its key; a kin of one beside it.
func TestOwnRowsTakeTheirKey(t *testing.T) {
	for asKin, want := range map[bool]int{false: 1, true: 2} {
		p := *Default()
		p.own = []Ingredient{{Key: "strawberry", Name: "my strawberries", AsKin: asKin}}
		n := 0
		for _, g := range p.Ingredients() {
			if g.Key == "strawberry" {
				n++
			}
		}
		if n != want {
			t.Errorf("as a kin %v: %d rows", asKin, n)
		}
	}
}
