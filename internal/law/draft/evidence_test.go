package draft

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// aList is a law's list of our own invention: it names milk, asks of nuts and knows
// nothing of pine nuts.
func aList(s allergen.Substance) ([]string, bool) {
	switch s.ID {
	case "milk":
		return []string{"Milk"}, false
	case "nuts":
		return nil, true
	}
	return nil, false
}

func found(id, word string, maker bool) cook.Found {
	return cook.Found{Substance: allergen.Substance{ID: id}, Word: word, Maker: maker, From: []cook.Evidence{{Fact: word, Path: "ingredient[0]"}}}
}

// The list's own name, once; a group as it is written; beyond the list what the maker
// calls an allergen, and only where that is asked for.
func TestNamesOfAList(t *testing.T) {
	for _, x := range []struct {
		found  cook.Found
		beyond bool
		want   string
	}{
		{found("milk", "butter", false), false, "Milk"}, {found("milk", "butter", true), true, "Milk"},
		{found("nuts", "mixed nuts", false), false, "mixed nuts"}, {found("nuts", "mixed nuts", false), true, "mixed nuts"},
		{found("pine_nut", "pine nuts", true), true, "pine nuts"}, {found("pine_nut", "pine nuts", true), false, ""}, {found("pine_nut", "pine nuts", false), true, ""},
	} {
		a := cook.Allergy{Found: []cook.Found{x.found, x.found}, Words: []cook.OwnWord{{Word: "MILK"}, {Word: "lupin flour"}}}
		want := []string{"MILK", "lupin flour"}
		switch x.want {
		case "":
		case "Milk":
			want = []string{"Milk", "lupin flour"}
		default:
			want = append([]string{x.want}, want...)
		}
		if got := NamesIn(a, aList, x.beyond); !slices.Equal(got, want) {
			t.Errorf("%s, beyond %v: %v, want %v", x.found.Word, x.beyond, got, want)
		}
	}
}

// There are none only where nothing is unknown and nothing is named; what a name rests
// on is kept, a maker's own word on itself.
func TestEvidenceOfNone(t *testing.T) {
	unknown := []cook.Unproven{{Name: "moon dust", Path: "ingredient[1]"}}
	for name, x := range map[string]struct {
		a    cook.Allergy
		none bool
	}{
		"nothing":      {cook.Allergy{}, true},
		"on no list":   {cook.Allergy{Found: []cook.Found{found("pine_nut", "pine nuts", false)}}, true},
		"one name":     {cook.Allergy{Found: []cook.Found{found("milk", "butter", false)}}, false},
		"a group":      {cook.Allergy{Found: []cook.Found{found("nuts", "nuts", false)}}, false},
		"an own word":  {cook.Allergy{Words: []cook.OwnWord{{Word: "lupin flour", Path: "ingredient[0]"}}}, false},
		"unknown":      {cook.Allergy{Unknown: unknown}, false},
		"both unknown": {cook.Allergy{Unknown: unknown, Found: []cook.Found{found("milk", "butter", false)}}, false},
	} {
		d := begun(t, "us-or", nil)
		d.Allergy, d.L = x.a, nil
		if d.Evidence(aList, "x"); d.C.NoAllergens != x.none {
			t.Errorf("%s: %v", name, d.C.NoAllergens)
		}
		for _, n := range d.C.AllergenNames {
			i := slices.IndexFunc(d.C.AllergenWhy, func(w label.Why) bool { return w.Name == n })
			if i < 0 || len(d.C.AllergenWhy[i].From) != 1 || n != "Milk" && d.C.AllergenWhy[i].From[0] != n {
				t.Errorf("%s: %s rests on %v", name, n, d.C.AllergenWhy)
			}
		}
		if got := len(d.C.AllergenDoubt); got != len(x.a.Unknown) {
			t.Errorf("%s: %d doubts", name, got)
		}
	}
}

// What else the kitchen handles is asked about at the kitchen's own key.
func TestHandledGroupsAreAskedAbout(t *testing.T) {
	every := func(allergen.Substance) ([]string, bool) { return nil, true }
	none := func(allergen.Substance) ([]string, bool) { return nil, false }
	for word, list := range map[string]Names{"tree nuts": every, "milk": none} {
		d := begun(t, "us-or", nil)
		d.K.AlsoHandles, d.L = []string{word}, nil
		d.Handles(list, "x")
		if asked := len(d.L) == 1 && d.L[0].Code == "name-the-species" && d.L[0].Path == "also_handles" && d.L[0].File == "kitchen.toml"; asked != (word == "tree nuts") {
			t.Errorf("%s: %v", word, d.L)
		}
	}
}

// 21 CFR 101.13(i): an amount of a nutrient is a claim as any other; of grams from a
// hundred on it is a recipe's (our own reading), of milligrams it never is.
func TestAmountsOfNutrients(t *testing.T) {
	for text, want := range map[string]string{
		"only 0 g sugar": "0 g sugar", "99 g sugar": "99 g sugar", "100 g sugar": "", "500 grams of sugar": "", "120 mg sodium": "120 mg sodium", "100 % sugar": "100 % sugar", "5 g of sugar": "5 g of sugar",
		"Sugar: 5 g.": "Sugar: 5 g", "sugar 500 g": "", "sodium 120 mg, and so on": "sodium 120 mg", "sugar 99 g": "sugar 99 g", "5 g salt": "", "salt: 5 g": "", "sugar": "", "made 3 times": "",
	} {
		if got := amount(text, []string{"sugar", "sodium"}); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// A list names an ingredient by key and kind, and a maker's own words by a word of three
// letters and more that is no kind.
func TestAmongOwnWords(t *testing.T) {
	own := cook.Line{Name: "fig leaves of the nut tree"}
	for w, want := range map[string]bool{"fig": true, "leaves": true, "of": false, "fi": false, "nut": false, "ree": false, "oak": false, "": false} {
		if got := Among([]string{w}, own); got != want {
			t.Errorf("%q: %v", w, got)
		}
	}
	tabled := cook.Line{Name: "fig leaves", Key: "fig_leaf", Row: pantry.Ingredient{Key: "fig_leaf", Class: "herb"}}
	for w, want := range map[string]bool{"fig_leaf": true, "herb": true, "fig": false, "": false} {
		if got := Among([]string{w}, tabled); got != want {
			t.Errorf("%q of the table: %v", w, got)
		}
	}
	if tabled.Row.Own = true; !Among([]string{"fig"}, tabled) {
		t.Error("a maker's own row goes by its words too")
	}
}

// What a label denies is looked for by every name of an ingredient: of its row in three
// languages, in one and in many, its parts, and the last word where that is one.
func TestNamesOfAnIngredient(t *testing.T) {
	row, _ := pantry.Default().Ingredient("salted butter")
	got := namesOf(cook.Line{Name: "salted butter", Row: row, Contains: parts("Cream", "sea salt", "tea")})
	for _, want := range []string{"salted butter", "butter", "gesalzene butter", "cream", "sea salt", "salt", "tea"} {
		if !slices.Contains(got, want) {
			t.Errorf("%q is none of %v", want, got)
		}
	}
	if row, _ = pantry.Default().Ingredient("strawberries"); !slices.Contains(namesOf(cook.Line{Name: "x", Row: row}), "erdbeere") {
		t.Error("one strawberry has no name in German")
	}
	for _, n := range namesOf(cook.Line{Name: "soy tea"}) {
		if n == "tea" {
			t.Error("a last word of three letters is no name of the whole")
		}
	}
}

// "No sugar" of a sweetened food is a claim about nutrition and told as such; of what is
// no nutrient, or where a place has no such rule, it denies what the batch holds.
func TestAbsenceOfWhatSweetens(t *testing.T) {
	for _, x := range []struct {
		name, text string
		sweet      bool
		nutrition  bool
		want       bool
	}{
		{"sugar", "no sugar", true, true, false}, {"sugar", "no sugar", true, false, true}, {"sugar", "no sugar", false, true, true}, {"honey", "no honey", true, true, true}, {"honey", "no sugar", true, true, false}, {"-", "no -", true, true, false},
	} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: x.text}}
			r.Lines = []cook.Line{{Name: x.name, IsSweet: x.sweet}}
		})
		table := d.Set.Nutrition
		if d.Set.Nutrition = nil; x.nutrition {
			d.Set.Nutrition = table
		}
		d.L = nil
		d.absent(place.WordingRule{ID: "w", Words: []string{"no {x}"}, In: []string{"story"}, Level: "error", Text: "but {ingredient}"}, d.ownTexts())
		if got := len(d.L) == 1 && strings.HasSuffix(d.L[0].Message, "but "+x.name); got != x.want || !x.want && len(d.L) > 0 {
			t.Errorf("%+v: %v", x, d.L)
		}
	}
}

// What a bought packet usually holds may make a denial untrue, until its list is copied;
// so may what is commonly sulphited.
func TestWhatAPacketMayHold(t *testing.T) {
	jamSugar := cook.Line{Name: "jam sugar", Row: pantry.Ingredient{Compound: "sugar, pectin, citric acid"}}
	read := jamSugar
	read.Contains = parts("sugar", "pectin")
	apricots := cook.Line{Name: "dried apricots", Row: pantry.Ingredient{SulphiteCheck: true}}
	for _, x := range []struct {
		line cook.Line
		may  string
		want string
	}{{jamSugar, "pectin", "jam sugar"}, {jamSugar, "colour", ""}, {read, "pectin", ""}, {apricots, "sulphited", "dried apricots"}, {apricots, "pectin", ""}, {jamSugar, "sulphited", ""}, {cook.Line{Name: "plums"}, "pectin", ""}} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) { r.Lines = []cook.Line{x.line} })
		if got := d.mayHold(place.WordingRule{May: []string{x.may}}); got != x.want {
			t.Errorf("%s may hold %s: %q", x.line.Name, x.may, got)
		}
	}
}

func TestWithout(t *testing.T) {
	if got := Without([]string{"a", "b", "c"}, []string{"b"}); !slices.Equal(got, []string{"a", "c"}) {
		t.Error(got)
	}
}

// The first letter is raised, with its accent; what is no letter, or no text, stays.
func TestUpper(t *testing.T) {
	for s, want := range map[string]string{"plum": "Plum", "äpfel": "Äpfel", "": "", "\xffa": "\xffa", "9 plums": "9 plums", "P": "P"} {
		if got := Upper(s); got != want {
			t.Errorf("%q: %q", s, got)
		}
	}
}
