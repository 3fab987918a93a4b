package cook

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
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
	finish, _ := pantry.Default().Boil("butter", "long boil")
	want := fmt.Sprintf("would boil %.0f %% of this pot away", 100*(1-(r.Soluble.Grams()*100/finish.Brix+r.Insoluble.Grams())/r.Input.Grams()))
	if got := 1 - r.Yield.Mass.Grams()/r.Input.Grams(); math.Abs(got-finish.Loss/100) > 0.001 {
		t.Errorf("and %.3f is taken to leave", got)
	}
	if !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "much-boil-off" && strings.Contains(d.Message, want) }) {
		t.Errorf("nothing says %q: %v", want, l)
	}
}

// A headspace outside of what the process asks leaves a poor seal, on the batch
// and on one size of jar alike (USDA Guide 1: 1/4 inch for jams).
func TestHeadspaceLeavesNoSeal(t *testing.T) {
	quarter, inch := unit.Inch/4, unit.Inch
	for name, x := range map[string]struct {
		all, one unit.Length
		cold     bool
	}{"right": {quarter, 0, false}, "not said": {0, 0, false}, "too much": {inch, 0, true}, "too much in one": {0, inch, true}, "both": {inch, quarter, true}} {
		b := demo(t)
		b.Process.Headspace = x.all
		b.Fills = []batch.Fill{{Jar: "us8", Count: 6, Sealed: 6, Headspace: x.one}}
		r, l := Compute(b, nil, pantry.Default())
		told := slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "headspace-off" })
		reason := slices.ContainsFunc(r.Keeping.Reasons, func(e Evidence) bool { return strings.Contains(e.Fact, "headspace that leaves no good seal: ") })
		if told != x.cold || reason != x.cold || (r.Keeping.Class == Cold) != x.cold {
			t.Errorf("%s: told %v, reason %v, %s", name, told, reason, r.Keeping.Class)
		}
	}
}

// What is usual in a food and what is certain make it certain; a maker's word
// stands over both, and its evidence is kept once.
func TestFoundTwice(t *testing.T) {
	milk := allergen.Substance{ID: "milk"}
	for _, x := range []struct{ one, two, want bool }{{true, true, true}, {true, false, false}, {false, true, false}, {false, false, false}} {
		a := Allergy{}
		a.add(Found{Substance: milk, Word: "butter", Usual: x.one, From: []Evidence{{Fact: "butter"}}})
		a.add(Found{Substance: milk, Word: "cream", Usual: x.two, Maker: true, From: []Evidence{{Fact: "butter"}, {Fact: "cream"}}})
		if len(a.Found) != 1 || a.Found[0].Usual != x.want || a.Found[0].Word != "cream" || !a.Found[0].Maker || len(a.Found[0].From) != 2 {
			t.Errorf("%+v: %+v", x, a.Found)
		}
	}
	a := Allergy{}
	if a.add(Found{Substance: allergen.Substance{ID: "honey", Means: "honey"}, From: []Evidence{{Fact: "honey"}}}); len(a.Found) != 0 || len(a.Honey) != 1 {
		t.Errorf("%+v", a)
	}
}

// Readings at the ends of what can be: 1 to 95 °Brix, 0 to 100 % solids. What
// nobody counted of a weighed pot is as many jars as there are.
func TestReadingsAtTheirEnds(t *testing.T) {
	for brix, code := range map[float64]string{0.9: "bad-brix", 1: "brix-below-mix", 1.5: "brix-below-mix", 65: "", 95.1: "bad-brix"} {
		b := demo(t)
		b.Cook = batch.Cook{Brix: &brix}
		_, l := Compute(b, nil, pantry.Default())
		got := ""
		for _, d := range l {
			if strings.Contains(d.Code, "brix-") || strings.Contains(d.Code, "-brix") {
				got = d.Code
			}
		}
		if got != code {
			t.Errorf("%g °Brix: %q, want %q", brix, got, code)
		}
	}
	for solids, bad := range map[float64]bool{0: false, 100: false, 100.5: true, 101: true} {
		b := demo(t)
		b.Ingredients[0].Solids = solids
		_, l := Compute(b, nil, pantry.Default())
		if got := slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "bad-solids" }); got != bad {
			t.Errorf("%g %%: %v", solids, got)
		}
	}
	b := demo(t)
	b.Cook.FinishedPot = 3 * unit.Kilogram
	b.Fills = []batch.Fill{{Jar: "us8", Count: 9, Sealed: 9}}
	if r, _ := Compute(b, nil, pantry.Default()); r.Jars[0].Low != 9 || r.Jars[0].High != 9 {
		t.Errorf("%d to %d jars of 9", r.Jars[0].Low, r.Jars[0].High)
	}
}

// The source of a claim that sugar keeps a jar is that of the claim, and Norrish's
// equation beside it only where it was reckoned with.
func TestSourceOfSugarThatKeeps(t *testing.T) {
	for brix, norrish := range map[float64]bool{66: true, 79: true, 81: false} {
		b := demo(t)
		b.Cook = batch.Cook{Brix: &brix}
		r, _ := Compute(b, nil, pantry.Default())
		i := slices.IndexFunc(r.Keeping.Reasons, func(e Evidence) bool { return strings.Contains(e.Fact, "full sugar") })
		if i < 0 {
			t.Fatalf("%g: %v", brix, r.Keeping.Reasons)
		}
		if e := r.Keeping.Reasons[i]; !strings.HasPrefix(e.Source, srcFull) || strings.Contains(e.Source, srcNorrish) != norrish {
			t.Errorf("%g °Brix: %q", brix, e.Source)
		}
	}
}

// A kind of a food behind a comma or in brackets is that food, and proof of its
// allergens; what may be another food is asked about. Victoria and Bramley are
// cultivars of the National Fruit Collection, Brogdale (from memory).
func TestAKindIsNoOtherFood(t *testing.T) {
	for _, c := range []struct {
		name    string
		unknown bool
	}{
		{"plums, Victoria", false}, {"plums (Victoria)", false}, {"apples, Bramley", false}, {"strawberries, Elsanta", false},
		{"plums, Zyxomat", true}, {"plums (Zyxomat)", true}, {"apples, Victoria", true},
	} {
		b := demo(t)
		b.Ingredients = []batch.Ingredient{ing(t, c.name, "2 kg", ""), ing(t, "sugar", "2 kg", "")}
		b.Cook = batch.Cook{}
		r, _ := Compute(b, nil, pantry.Default())
		if got := len(r.Allergy().Unknown) > 0; got != c.unknown {
			t.Errorf("%s: %v is not proven, want %v", c.name, r.Allergy().Unknown, c.unknown)
		}
	}
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "plums, almond", "2 kg", "")}
	r, _ := Compute(b, nil, pantry.Default())
	if !slices.ContainsFunc(r.Allergy().Found, func(f Found) bool { return f.ID == "almond" }) {
		t.Errorf("almonds behind a comma are lost: %+v", r.Allergy())
	}
}
