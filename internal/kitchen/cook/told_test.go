package cook

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// The same food written twice costs both, whichever tells its currency; a name
// that is nearly known is asked about; and what the table or the maker says of an
// allergen is proof.
func TestWhatIsToldOfLines(t *testing.T) {
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "strawberries", "2 kg", ""), ing(t, "strawberries", "3 kg", ""), ing(t, "sugar", "200 g", ""), ing(t, "strawbery", "1 kg", ""), ing(t, "strawberrys tree", "1 cup", "")}
	b.Ingredients[1].Cost = unit.Money{Minor: 900, Currency: "USD"}
	b.Cook = batch.Cook{}
	for i := range b.Ingredients {
		b.Ingredients[i].Path = fmt.Sprintf("ingredient[%d]", i)
	}
	r, l := Compute(b, nil, pantry.Default())
	if got := r.Lines[0].Cost; got != b.Ingredients[1].Cost {
		t.Errorf("the strawberries cost %v", got)
	}
	hints := map[bool]int{}
	for _, d := range l {
		if d.Code == "unknown-ingredient" {
			hints[strings.Contains(d.Hint, "did you mean ")]++
		}
	}
	if hints[true] == 0 {
		t.Errorf("nobody is asked whether strawberries are meant: %v", l)
	}
	for _, x := range []struct {
		row  pantry.Ingredient
		want bool
	}{
		{pantry.Ingredient{Own: true, USAllergen: "milk"}, true}, {pantry.Ingredient{Own: true, EUAllergen: "milk"}, true}, {pantry.Ingredient{Own: true}, false},
		{pantry.Ingredient{Own: true, Allergens: []string{}}, true}, {pantry.Ingredient{Key: "plum", Compound: "sugar, and more"}, false}, {pantry.Ingredient{Key: "moon"}, true},
	} {
		if got := new(Result).scan(nil, "").proven(x.row, "moon stuff"); got != x.want {
			t.Errorf("%+v: %v", x.row, got)
		}
	}
}

// What a butter would boil away is told in percent of the pot.
func TestMuchBoilsAway(t *testing.T) {
	b := demo(t)
	b.Product, b.Cook = batch.Butter, batch.Cook{}
	b.Ingredients = []batch.Ingredient{ing(t, "strawberries", "5 kg", ""), ing(t, "sugar", "100 g", "")}
	r, l := Compute(b, nil, pantry.Default())
	want := fmt.Sprintf("would boil %.0f %% of this pot away", 100*(1-float64(r.Yield.Mass)/float64(r.Input)))
	if !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "much-boil-off" && strings.Contains(d.Message, want) }) {
		t.Errorf("nothing says %q: %v", want, l)
	}
}
