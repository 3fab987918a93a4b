package cook

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// said writes an Allergy in one line: "milk:butter(named); ?house blend".
func said(a Allergy) string {
	var out []string
	for _, f := range a.Found {
		s := f.ID
		for _, e := range f.From {
			s += fmt.Sprintf(":%s(%s)", e.Fact, e.How)
		}
		if f.Maker {
			s += "!"
		}
		if f.Usual {
			s += "~"
		}
		out = append(out, s)
	}
	for _, w := range a.Words {
		out = append(out, `"`+w.Word+`"`)
	}
	for _, u := range a.Unknown {
		out = append(out, "?"+u.Name)
	}
	for _, e := range a.Confirmed {
		out = append(out, "sure:"+e.Fact)
	}
	for _, e := range a.Honey {
		out = append(out, fmt.Sprintf("honey:%s(%s)", e.Fact, e.How))
	}
	return strings.Join(out, "; ")
}

// What each name says of allergens, how it is known, and what stays open: rows
// of the tables, names, parts, forms and the maker's words (21 U.S.C. 321(qq)
// and 343(w); Regulation (EU) 1169/2011 Annex II; rows of allergens.csv). "!"
// is the maker's word, "~" usual in such a food, "?" not proven.
func TestWhatANameSays(t *testing.T) {
	own := []pantry.Ingredient{
		{Name: "house blend", USAllergen: "milk"}, {Name: "house dust", EUAllergen: "milk"}, {Name: "house paste", Allergens: []string{"egg", "stardust"}}, {Name: "house water", Allergens: []string{}},
		{Name: "house mix", Contains: []pantry.Part{{Name: "butter"}, {Name: "moonstone"}}}, {Name: "glitter"}, {Name: "house spread", Compound: "things"}, {Name: "chocolate"},
	}
	p := pantry.Default().With(own, nil)
	parts := func(list ...pantry.Part) []pantry.Part { return list }
	for _, x := range []struct {
		g    batch.Ingredient
		want string
		own  string // without its parts and the maker's word for the whole; "=": as want
	}{
		{batch.Ingredient{Name: "house blend"}, "milk:house blend(given)!", "="}, {batch.Ingredient{Name: "house dust"}, "milk:house dust(given)!", "="}, {batch.Ingredient{Name: "house paste"}, `egg:house paste(given)!; "stardust"`, "="},
		{batch.Ingredient{Name: "house water"}, "", "="}, {batch.Ingredient{Name: "house mix"}, "milk:house mix › butter(named):house mix › butter(tabled); ?house mix › moonstone", ""}, {batch.Ingredient{Name: "glitter"}, "?glitter", "="},
		{batch.Ingredient{Name: "house spread"}, "?house spread", "="}, {batch.Ingredient{Name: "butter"}, "milk:butter(tabled):butter(named)", "="},
		{batch.Ingredient{Name: "soy sauce"}, "soy:soy sauce(tabled):soy sauce(named); wheat:soy sauce(tabled):soy sauce(named); ?soy sauce", "="}, {batch.Ingredient{Name: "vanilla extract"}, "", "="}, {batch.Ingredient{Name: "pectin"}, "", "="},
		{batch.Ingredient{Name: "curry powder"}, "celery:curry powder(named)~; mustard:curry powder(named)~; ?curry powder", "="}, {batch.Ingredient{Name: "vegetable oil"}, "?vegetable oil", "="}, {batch.Ingredient{Name: "dark chocolate"}, "?dark chocolate", "="},
		{batch.Ingredient{Name: "nut butter"}, "nuts:nut butter(named)~; ?nut butter", "="}, {batch.Ingredient{Name: "nut butter", Allergens: []string{}}, "sure:nut butter", "nuts:nut butter(named)~; ?nut butter"},
		{batch.Ingredient{Name: "nut butter", Allergens: []string{"tree nuts"}}, "nuts:nut butter(given):nut butter(named)!; sure:nut butter", "nuts:nut butter(given):nut butter(named)!; ?nut butter"},
		{batch.Ingredient{Name: "nut butter", Contains: parts(pantry.Part{Name: "plums"})}, "", "nuts:nut butter(named)~"}, {batch.Ingredient{Name: "nut butter", Contains: parts(pantry.Part{Name: "moonstone"})}, "nuts:nut butter(named)~; ?nut butter › moonstone", "nuts:nut butter(named)~"},
		{batch.Ingredient{Name: "plums", Allergens: []string{"milk, stardust", " "}}, `milk:plums(given)!; "stardust"`, "="}, {batch.Ingredient{Name: "moonstone"}, "?moonstone", "="}, {batch.Ingredient{Name: "moonstone", Allergens: []string{}}, "sure:moonstone", "?moonstone"},
		{batch.Ingredient{Name: "moonstone", Allergens: []string{"milk"}}, "milk:moonstone(given)!; sure:moonstone", "milk:moonstone(given)!; ?moonstone"}, {batch.Ingredient{Name: "mixed nuts"}, "nuts:mixed nuts(named)", "="},
		{batch.Ingredient{Name: "mixed nuts (almonds, cashews)"}, "almond:mixed nuts › almonds(named):mixed nuts › almonds(tabled); cashew:mixed nuts › cashews(named):mixed nuts › cashews(tabled)", "="},
		{batch.Ingredient{Name: "mixed nuts", Allergens: []string{"tree nuts"}}, "nuts:mixed nuts(given):mixed nuts(named)!", "="}, {batch.Ingredient{Name: "mixed nuts", Contains: parts(pantry.Part{Name: "almonds"})}, "almond:mixed nuts › almonds(named):mixed nuts › almonds(tabled)", "nuts:mixed nuts(named)"},
		{batch.Ingredient{Name: "plums", Form: "rolled in ground almonds"}, "almond:plums (rolled in ground almonds)(named)", "="}, {batch.Ingredient{Name: "plums", Form: "in sauce (milk, moonstone)"}, "milk:plums (in sauce (milk, moonstone))(named)", "="},
		{batch.Ingredient{Name: "glaze (butter, clover honey)"}, "milk:glaze › butter(named):glaze › butter(tabled); honey:glaze › clover honey(named)", "="}, {batch.Ingredient{Name: "glaze (unsalted)"}, "?glaze", "="},
		{batch.Ingredient{Name: "glaze (butter, moonstone)"}, "milk:glaze › butter(named):glaze › butter(tabled); ?glaze › moonstone", "="}, {batch.Ingredient{Name: "coating: milk, moonstone"}, "milk:milk(named):milk(tabled):coating: milk, moonstone(named); ?moonstone", "="},
		{batch.Ingredient{Name: "mystery", Contains: parts(pantry.Part{Name: "house mix"})}, "milk:mystery › house mix › butter(named):mystery › house mix › butter(tabled); ?mystery › house mix › moonstone", ""},
		{batch.Ingredient{Name: "mystery", Contains: parts(pantry.Part{Name: "moonstone", USAllergen: "wheat"}, pantry.Part{Name: "cream"})}, "wheat:mystery › moonstone(given)!; milk:mystery › cream(named):mystery › cream(tabled)", ""},
		{batch.Ingredient{Name: "mystery", Contains: parts(pantry.Part{Name: "moonstone"})}, "?mystery › moonstone", ""}, {batch.Ingredient{Name: "mystery", Contains: parts(pantry.Part{Name: "moonstone"}), Allergens: []string{}}, "sure:mystery", ""},
		{batch.Ingredient{Name: "butter, moonstone"}, "milk:butter(tabled):butter(named); ?moonstone", "="}, {batch.Ingredient{Name: "moonstone, butter"}, "milk:butter(named):butter(tabled):moonstone, butter(named); ?moonstone", "="}, {batch.Ingredient{Name: "butter, unsalted"}, "milk:butter(tabled):butter(named)", "="},
		{batch.Ingredient{Name: "cashew (roasted)"}, "cashew:cashews(tabled):cashews(named)", "="}, {batch.Ingredient{Name: "egg plums"}, "", "="},
	} {
		r, _ := Compute(&batch.Batch{Product: batch.Jam, Ingredients: []batch.Ingredient{x.g}}, nil, p)
		if x.own == "=" {
			x.own = x.want
		}
		if got := said(r.LineAllergy(r.Lines[0])); got != x.want {
			t.Errorf("%s %v %v: %s\nwant %s", x.g.Name, x.g.Allergens, x.g.Contains, got, x.want)
		}
		if got := said(r.OwnAllergy(r.Lines[0])); got != x.own {
			t.Errorf("%s %v %v by itself: %s\nwant %s", x.g.Name, x.g.Allergens, x.g.Contains, got, x.own)
		}
	}
}

// A line that nobody wrote, as laws and pages make them, is read by its name;
// one written twice is read once.
func TestLinesWithoutTheirWords(t *testing.T) {
	r := &Result{}
	for _, x := range []struct {
		ln   Line
		want string
	}{
		{Line{Name: "glaze (butter)"}, "milk:glaze › butter(named):glaze › butter(tabled)"}, {Line{Name: "moonstone", Written: []string{"moonstone", "moonstone", "starstone"}}, "?moonstone; ?starstone"},
		{Line{Name: "plums", Row: pantry.Ingredient{Name: "plums", USAllergen: "egg", EUAllergen: "milk"}}, "egg:plums(tabled); milk:plums(tabled)"}, {Line{Name: "plums", Row: pantry.Ingredient{USAllergen: " "}}, ""},
		{Line{Name: "plums", Row: pantry.Ingredient{Own: true, EUAllergen: "stardust"}}, `"stardust"`},
	} {
		if got := said(r.OwnAllergy(x.ln)); got != x.want {
			t.Errorf("%+v: %s, want %s", x.ln, got, x.want)
		}
	}
	if linePath(Line{}) != "ingredient" || linePath(Line{Paths: []string{"ingredient[3]", "ingredient[4]"}}) != "ingredient[3]" {
		t.Error("where a line stands")
	}
	a := Allergy{}
	for range 2 {
		a.join(Allergy{Words: []OwnWord{{"stardust", "x"}}, Unknown: []Unproven{{"u", "x"}}, Confirmed: []Evidence{{Fact: "c"}}, Honey: []Evidence{{Fact: "h"}}})
	}
	if len(a.Words) != 1 || len(a.Unknown) != 2 || len(a.Confirmed) != 2 || len(a.Honey) != 2 {
		t.Errorf("%+v", a)
	}
}

// Parts that hold each other are followed twelve deep, and what lies deeper is
// not proven.
func TestPartsThatHoldEachOther(t *testing.T) {
	p := pantry.Default().With([]pantry.Ingredient{{Name: "alpha mix", Contains: []pantry.Part{{Name: "beta mix"}}}, {Name: "beta mix", Contains: []pantry.Part{{Name: "alpha mix"}}}}, nil)
	r := &Result{pantry: p}
	a := r.PartAllergy(Line{Name: "whole"}, pantry.Part{Name: "alpha mix"})
	if len(a.Unknown) != 1 || strings.Count(a.Unknown[0].Name, chain) != 14 {
		t.Errorf("%d: %+v", len(a.Unknown), a.Unknown)
	}
	nested := r.PartAllergy(Line{Name: "whole"}, pantry.Part{Name: "glaze (gamma (moonstone))"})
	if got := said(nested); got != "?whole › glaze › gamma › moonstone" {
		t.Error(got)
	}
}

// The names of what is found: a list's word for a kind, the maker's for a group
// and for what a list takes as it is written.
func TestNamesOfWhatIsFound(t *testing.T) {
	v := allergen.Default()
	a := Allergy{Words: []OwnWord{{"stardust", ""}}}
	for _, id := range []string{"milk_goat", "nuts", "sulphites"} {
		s, _ := v.Substance(id)
		a.Found = append(a.Found, Found{Substance: s, Word: "word of " + id})
	}
	for _, s := range v.Substances() {
		if s.Means == "plain" {
			a.Found = append(a.Found, Found{Substance: s, Word: "plain " + s.ID})
			break
		}
	}
	got := strings.Join(a.Names(), ", ")
	if !strings.HasPrefix(got, "milk goat, word of nuts, sulphites, plain ") || !strings.HasSuffix(got, ", stardust") {
		t.Error(got)
	}
}
