package pack

import (
	"testing"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Which words of a person's allergy forbid a jar with almonds (a tree nut, 21
// U.S.C. 321(qq)) and which do not.
func TestAllergyInJar(t *testing.T) {
	for words, forbidden := range map[string]bool{
		"almonds": true, "Almond": true, "nuts": true, "tree nuts": true, "nut-free": true, "allergic to nuts": true, "milk and almonds": true,
		"almnods": true, "Mandeln": true, "apricots": true, "no sugar": true,
		"walnuts": false, "milk": false, "peanuts": false, "none": false, "": false, "kiwi": false, "nutmeg": false,
	} {
		rs := both()
		_, found := Build(rs, Options{List: []Entry{{To: "Bea", Jars: 1, Lot: "L26201-AP", Allergy: words, File: "f.csv"}}})
		if got := has(found, "allergy-in-jar", "error", "Bea", "Apricot jam with almonds (L26201-AP) contains", "f.csv"); got != forbidden {
			t.Errorf("%q: %v", words, found)
		}
	}
}

// TestAllergyIsDealtAround: who names no jam gets one without it.
func TestAllergyIsDealtAround(t *testing.T) {
	rs := both() // apricot with almonds is the first to expire
	rs[0].Batch.Gifts, rs[0].Lines = nil, []cook.Line{{Name: "plums", Mass: 1000}, {Name: "sugar", Mass: 1000}}
	p, found := Build(rs, Options{List: []Entry{{To: "Ann", Jars: 1}, {To: "Bea", Jars: 3, Allergy: "nuts"}}})
	if found.HasErrors() || len(p.Stops) < 2 || p.Stops[0].Lines[0].Lot != "L26201-AP" || len(p.Stops[1].Lines) != 1 || p.Stops[1].Lines[0].Lot != "L26265-PL" {
		t.Errorf("%v %+v", found, p.Stops)
	}
}

func TestAllergyInDoubt(t *testing.T) {
	rs := both()
	rs[0].Kitchen.AlsoHandles = []string{"walnuts"}
	rs[0].Lines = append(rs[0].Lines, cook.Line{Name: "mystery powder", Mass: 1})
	row := Entry{To: "Bea", Jars: 1, Lot: "L26265-PL", Allergy: "wallnuts, moonberries"}
	_, found := Build(rs, Options{List: []Entry{row}})
	for _, c := range [][]string{{"near-allergen", "walnut"}, {"unknown-allergy", `"moonberries"`}, {"allergy-unknown", "mystery powder"}, {"allergy-kitchen", "walnuts"}} {
		if !has(found, c[0], "Bea", "warning", c[1]) {
			t.Errorf("%s: %v", c[0], found)
		}
	}
}

func TestJamByName(t *testing.T) {
	rs := both()
	for _, jam := range []string{"apricot", "Apricot jam", "apricot jam with almond", "apricots", "APRICOT JAM WITH ALMONDS", "apricot jam with almoonds", "l26201-ap"} {
		p, found := Build(rs, Options{Gifts: true, List: []Entry{{To: "Bea", Jars: 1, Jam: jam}}})
		if last := p.Stops[len(p.Stops)-1]; found.HasErrors() || last.To != "Bea" || last.Lines[0].Lot != "L26201-AP" {
			t.Errorf("%s: %v", jam, found)
		}
	}
	if _, found := Build(rs, Options{List: []Entry{{To: "Bea", Jars: 1, Jam: "rhubarb", File: "f.csv"}}}); !has(found, "unknown-jam", "error", "Bea", "rhubarb", "Apricot jam with almonds (L26201-AP)", "f.csv") {
		t.Error(found)
	}
	if _, found := Build(rs, Options{List: []Entry{{To: "Bea", Jars: 1, Jam: "apricot"}}, Today: date(2028, 1, 1)}); !has(found, "jars-short", "Bea", "L26201-AP is over") {
		t.Error(found)
	}
}

func TestListColumns(t *testing.T) {
	for file, text := range map[string]string{
		"f.csv":  "Name;Jam;Allergies;Jars\rBea;pear butter;walnuts;2\r",
		"f.toml": "[[gift]]\nto = \"Bea\"\njam = \"pear butter\"\nallergy = \"walnuts\"\njars = 2\n",
	} {
		got, found := ReadList(file, []byte(text))
		if len(found) > 0 || len(got) != 1 || got[0].Jam != "pear butter" || got[0].Allergy != "walnuts" || got[0].Jars != 2 {
			t.Errorf("%s: %+v %v", file, got, found)
		}
	}
}

// A food that no law lists is known by the pantry's names, in each language of
// labels, one or many of it, and by what is made of it. From common food
// knowledge, no source: lemons are citrus, black raspberries raspberries.
func TestFoodsNoLawLists(t *testing.T) {
	recipe := []cook.Line{}
	for _, n := range []string{"strawberries", "black raspberries", "lemon juice", "rum", "sugar"} {
		g, ok := pantry.Default().Ingredient(n)
		if !ok {
			t.Fatalf("the pantry has no %s", n)
		}
		recipe = append(recipe, cook.Line{Name: g.Name, Key: g.Key, Row: g, Mass: 1000})
	}
	recipe = append(recipe, cook.Line{Name: "mixed fruit", Mass: 1000, Contains: []pantry.Part{{Name: "plums"}}})
	for words, forbidden := range map[string]bool{
		"Erdbeeren": true, "Erdbeere": true, "strawberry": true, "fraises": true, "keine Erdbeeren": true, "allergic to strawberries": true,
		"raspberries": true, "Himbeeren": true, "lemons": true, "Zitronen": true, "citrus": true, "citrus fruits": true, "Zitrusfrüchte": true, "agrumes": true,
		"alcohol": true, "Alkohol": true, "plum": true, "Pflaumen": true,
		"Pfirsiche": false, "peaches": false, "kiwi": false, "oranges": false, "strawberry guavas": false,
	} {
		rs := both()
		rs[1].Lines = recipe
		_, found := Build(rs, Options{List: []Entry{{To: "Bea", Jars: 1, Lot: "L26201-AP", Allergy: words, File: "f.csv"}}})
		if got := has(found, "allergy-in-jar", "error", "Bea"); got != forbidden || has(found, "unknown-allergy", "") {
			t.Errorf("%q: %v", words, found)
		}
	}
}
