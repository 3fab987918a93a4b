package cook

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// How long each class keeps, sealed, opened and unsealed, and in which words:
// NCHFP, Storing Home-Canned Jams and Jellies (a year, a month opened); the
// shorter times are our own cautious defaults.
func TestTimesOfEveryClass(t *testing.T) {
	const opened, shorter, unsealed = "opened: refrigerate, best within a month", "opened: refrigerate, shorter than full-sugar jam", "unsealed: refrigerate and eat within 2-3 days"
	for _, c := range []struct {
		class Class
		v     verdict
		kind  batch.ProductType
		times string // months and days sealed, days opened, days unsealed
		words []string
	}{
		{Shelf, verdict{}, batch.Jam, "12 0 30 3", []string{"sealed: best within a year", unsealed, opened}},
		{ShelfShort, verdict{}, batch.Jam, "6 0 14 3", []string{"sealed: best within 6 months", unsealed, shorter}},
		{Freezer, verdict{}, batch.Jam, "12 0 21 21", []string{"frozen: best within a year; thawed and refrigerated, within 3 weeks"}},
		{Freezer, verdict{perishable: true}, batch.Jam, "12 0 7 7", []string{"frozen: best within a year; thawed and refrigerated, within a week"}},
		{Refrigerator, verdict{}, batch.Jam, "0 21 21 21", []string{"refrigerated: best within 3 weeks"}},
		{Refrigerator, verdict{perishable: true}, batch.Jam, "0 7 7 7", []string{"refrigerated: best within a week"}},
		{Cold, verdict{perishable: true}, batch.Jam, "0 7 7 3", []string{"refrigerated, low acid or with egg or dairy: within a week", unsealed, shorter}},
		{Cold, verdict{full: true}, batch.Jam, "0 30 30 3", []string{"refrigerated, full sugar: as an opened jar, within a month", unsealed, opened}},
		{Cold, verdict{perishable: true, full: true}, batch.Jam, "0 7 7 3", []string{"refrigerated, low acid or with egg or dairy", unsealed, shorter}},
		{Cold, verdict{}, batch.Jam, "0 14 14 3", []string{"refrigerated, less sugar: within 2 weeks", unsealed, shorter}},
		{Cold, verdict{processed: true}, batch.Curd, "0 14 14 3", []string{"refrigerated, less sugar", unsealed, shorter}},
	} {
		k := &calc{b: &batch.Batch{Product: c.kind}, r: &Result{}}
		k.r.Keeping.Class = c.class
		v := c.v
		v.class = c.class
		k.times(&v)
		got := k.r.Keeping
		if s := fmt.Sprint(got.SealedMonths, got.SealedDays, got.OpenedDays, got.UnsealedDays); s != c.times {
			t.Errorf("%s %+v: %s, want %s", c.class, c.v, s, c.times)
		}
		if len(v.reasons) != len(c.words) {
			t.Errorf("%s %+v: %v", c.class, c.v, v.reasons)
			continue
		}
		for i, e := range v.reasons {
			if !strings.HasPrefix(e.Fact, c.words[i]) || e.Source == "" {
				t.Errorf("%s %+v: %q, want %q", c.class, c.v, e.Fact, c.words[i])
			}
		}
	}
}

// An own ingredient of any sweet kind sweetens.
func TestOwnSweeteners(t *testing.T) {
	for kind := range map[string]bool{"sweetener": true, "gelling sugar": true, "sugar": true, "syrup": true, "honey": true, "fruit": false, "spice": false, "": false} {
		p := pantry.Default().With([]pantry.Ingredient{{Name: "moonsweet", Class: kind, WaterG: 20, SolubleG: 80, OtherSolidsG: 0, SugarsG: 80}}, nil)
		r, _ := potWith(t, p, "plums: 1 kg", "moonsweet: 500 g")
		if want := kind != "fruit" && kind != "spice" && kind != ""; r.Lines[1].IsSweet != want {
			t.Errorf("%q: sweet %v", kind, !want)
		}
	}
}

// Without one of its main ingredients a batch is not the tested recipe, and is
// told which one.
func TestRecipeWithoutAMainIngredient(t *testing.T) {
	for _, x := range pantry.Default().TestedRecipes() {
		for i := range x.Main {
			b := demo(t)
			b.Product, b.Recipe, b.Unchanged, b.Ingredients = batch.ProductType(x.Products[0]), x.ID, true, nil
			for j, part := range x.Main {
				if j != i {
					g, _ := pantry.Default().Ingredient(part.Keys[0])
					in := grammes(g.Name, 0)
					in.Amount.Mass = unit.Grams(part.Grams)
					b.Ingredients = append(b.Ingredients, in)
				}
			}
			r, _ := Compute(b, nil, pantry.Default())
			c := &calc{b: b, k: nobody(), p: pantry.Default(), r: r}
			if why := c.unlike(x); !strings.HasPrefix(why, "the pot holds no ") {
				t.Errorf("%s without %v: %q", x.ID, x.Main[i].Keys, why)
			}
		}
	}
}

// The row of a food proves the first name of what was written, no more.
func TestARowProvesTheFirstNameOnly(t *testing.T) {
	plum, _ := pantry.Default().Ingredient("plums")
	for written, unknown := range map[string]string{"plums": "", "plums, moondust": "moondust", "moonplums": "", "plums, moondust, stardust": "moondust stardust"} {
		a := (&Result{}).LineAllergy(Line{Name: "plums", Key: plum.Key, Row: plum, Written: []string{written}, Paths: []string{"ingredient[0]"}})
		var got []string
		for _, u := range a.Unknown {
			got = append(got, u.Name)
		}
		if strings.Join(got, " ") != unknown {
			t.Errorf("%s: %q is open, want %q", written, got, unknown)
		}
	}
	for list, told := range map[string]bool{"sugar: 1 kg|water: 2 kg": true, "plums: 1 kg|sugar: 1 kg": false} {
		_, codes := potWith(t, pantry.Default(), strings.Split(list, "|")...)
		if strings.Contains(strings.Join(codes, " "), "acid-unknown") != told {
			t.Errorf("%s: %v", list, codes)
		}
	}
}

// A part is found by what either list calls it, and by its maker's words.
func TestEachWordOfAPartIsFound(t *testing.T) {
	for _, part := range []pantry.Part{{Name: "mystery", USAllergen: "milk"}, {Name: "mystery", EUAllergen: "milk"}, {Name: "mystery", Allergens: []string{"milk"}}, {Name: "milk powder"}} {
		a := (&Result{}).PartAllergy(Line{Name: "mix", Paths: []string{"ingredient[0]"}}, part)
		if len(a.Found) != 1 || a.Found[0].ID != "milk" || !strings.HasPrefix(a.Found[0].From[0].Fact, "mix › m") {
			t.Errorf("%+v: %+v", part, a.Found)
		}
	}
}

// The altitude of the cooking goes before the kitchen's, the sea's included.
func TestAltitudeOfTheCooking(t *testing.T) {
	k := nobody()
	k.Altitude = 100 * unit.Metre
	for _, c := range []struct {
		given bool
		own   unit.Length
		want  unit.Length
	}{{true, 0, 0}, {false, 0, 100 * unit.Metre}, {false, 5 * unit.Metre, 5 * unit.Metre}, {true, 5 * unit.Metre, 5 * unit.Metre}} {
		x := &calc{b: &batch.Batch{Process: batch.Process{Altitude: c.own, AltitudeOK: c.given}}, k: k}
		if got := x.altitude(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
}
