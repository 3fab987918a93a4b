package draft

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// A word stands in a text whole, and never as the beginning of another.
func TestWholeWords(t *testing.T) {
	for text, want := range map[string]bool{"an almond": true, "almonds": false, "Almond, toasted": true, "almondy": false, "the almond": true, "": false} {
		if got := HasWord(text, "almond"); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
	for text, want := range map[string]string{"9 lives": " 9 lives ", "0:a": " 0 a ", "a/b": " a b ", "10": " 10 "} {
		if got := Spaced(text); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// What is denied twice of two lines of one name is told once.
func TestDeniedOnceOfTwoLines(t *testing.T) {
	d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
		r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: "no ginger"}}
		r.Lines = []cook.Line{{Name: "ginger"}, {Name: "Ginger"}}
	})
	d.Set.Nutrition, d.L = nil, nil
	d.Set.Wordings = []place.WordingRule{{ID: "w", Words: []string{"no {x}"}, In: []string{"story"}, Level: "error", Text: "but {ingredient}"}}
	if d.Wordings(); len(d.L) != 1 || d.L[0].Code != "w" {
		t.Errorf("%v", d.L)
	}
}

// A claim of the set's own words, of what nourishes and of what does not, each is found
// (21 CFR 101.13, Regulation (EC) 1924/2006 Annex).
func TestEachKindOfClaimIsFound(t *testing.T) {
	for _, id := range []string{"us", "eu"} {
		d := begun(t, id, nil)
		n := *d.Set.Nutrition
		for _, x := range []string{strings.ReplaceAll(n.Forms[0], "{n}", n.Nutrients[0]), strings.ReplaceAll(n.GoodForms[0], "{n}", n.GoodNutrients[0]), n.Words[0]} {
			if got := d.claim(ownText{text: x, as: "story"}); got == "" {
				t.Errorf("%s: %q is no claim", id, x)
			}
		}
		if got := d.claim(ownText{text: "a spoonful of autumn", as: "story"}); got != "" {
			t.Errorf("%s: %q", id, got)
		}
	}
}

// A quantity in the words of a label is the declared one to three per cent, in either
// system; where none is declared nothing is held against it.
func TestDeclaredQuantityInWords(t *testing.T) {
	for _, x := range []struct {
		text string
		mass float64
		ml   float64
		told bool
	}{
		{"340 g", 340, 0, false}, {"12 oz", 340, 0, false}, {"350 g", 340, 0, false}, {"351 g", 340, 0, true}, {"329 g", 340, 0, true}, {"330 g", 340, 0, false}, {"250 ml", 340, 0, true},
		{"250 ml", 0, 250, false}, {"8 fl oz", 0, 250, true}, {"340 g", 0, 0, false}, {"340 g", 0, 250, true}, {"0.5 kg", 0.4, 0, true},
		{"with a pound of fruit", 283, 0, true}, {"half a pound of berries", 227, 0, false}, {"Two pounds of plums", 283, 0, true}, {"ein Pfund an Beeren", 283, 0, true}, {"ein Pfund Beeren im Glas", 283, 0, true}, {"ein halbes Pfund Beeren", 250, 0, false}, {"a kilo of fruit", 283, 0, true}, {"only a pound", 283, 0, false}, {"a pint of cheer", 0, 473, false},
	} {
		d := begun(t, "us", func(r *cook.Result, j *cook.JarPlan) {
			r.Batch.Name, j.Jar = "Plum jam "+x.text, pantry.Jar{}
		})
		d.NetMass, d.NetVolume, d.L = unit.Grams(x.mass), unit.ML(x.ml), nil
		d.quantities()
		if got := len(d.L) == 1 && d.L[0].Code == "quantity-in-text" && d.L[0].Path == "name"; got != x.told {
			t.Errorf("%+v: %v", x, d.L)
		}
	}
}

// A group is no allergen of its own: "nut free" is asked of the kinds, by another row.
func TestDenialsOfAGroupAreAnothersRow(t *testing.T) {
	for denied, want := range map[string]bool{"celery": true, "tree nuts": false} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: denied + " free"}}
		})
		for _, f := range cook.Stated([]string{denied}, "").Found {
			f.From = []cook.Evidence{{Fact: "x"}}
			d.Allergy.Found = append(d.Allergy.Found, f)
		}
		d.Allergy.Found = append(d.Allergy.Found, cook.Found{Substance: allergen.Substance{ID: "other"}, Word: "other"})
		d.Set.Nutrition, d.Set.Wordings, d.L = nil, nil, nil
		texts := d.ownTexts()
		for i := range texts {
			texts[i].words = strings.Fields(Spaced(texts[i].text))
		}
		d.named(place.WordingRule{ID: "w", In: []string{"story"}, Level: "warning", Text: "holds {ingredient}"}, texts, []string{"{x} free"})
		if got := len(d.L) == 1; got != want {
			t.Errorf("%s: %v", denied, d.L)
		}
	}
}
