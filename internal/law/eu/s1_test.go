package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// tabled is an ingredient as the table knows it, found by a maker's words in a
// language ("quince juice", "Apfelsaft").
func tabled(t *testing.T, lang, words string, g float64) in {
	t.Helper()
	row, ok := pantry.Default().Speaking(lang).Ingredient(words)
	if !ok {
		t.Fatalf("no row for %q in %s", words, lang)
	}
	return in{key: row.Key, name: row.Name, g: g, kind: row.Class, class: row.FruitClassEU, row: &row}
}

func unknownIn(name string, g float64) in { return in{name: name, g: g} }

// lawCase is one batch and what its label must and must not say.
type lawCase struct {
	name, set, lang, given string
	kind                   batch.ProductType
	brix                   float64
	list                   []in
	find                   string // a finding there must be
	not                    string // and one there must not be
	says, hides            string // on some block
}

func (c lawCase) run(t *testing.T) {
	t.Helper()
	brix := c.brix
	if brix == 0 {
		brix = 62
	}
	e := tester(t, c.set, c.lang, after, cooked(c.kind, c.given, 1000, brix, c.list...), cylinder(68, 60, 340))
	e.declare()
	all := ""
	for _, b := range e.C.Blocks {
		all += b.Text() + "\n"
	}
	all = strings.ReplaceAll(all, nbsp, " ")
	found := codes(e.L)
	switch {
	case c.find != "" && !strings.Contains(found, c.find):
		t.Errorf("%s: no %s in %s", c.name, c.find, found)
	case c.not != "" && strings.Contains(found, c.not):
		t.Errorf("%s: %s", c.name, found)
	case c.says != "" && !strings.Contains(all, c.says):
		t.Errorf("%s: %q is not in\n%s", c.name, c.says, all)
	case c.hides != "" && strings.Contains(all, c.hides):
		t.Errorf("%s: %q is in\n%s", c.name, c.hides, all)
	}
}

// Directive 2001/113/EC Annex I.I: jam is of pulp or purée; Annex II: fruit juice
// is an added ingredient, "only in jam".
func TestAnnexIJuiceIsNoFruitOfJam(t *testing.T) {
	en := func(words string, g float64) in { return tabled(t, "en", words, g) }
	for _, c := range []lawCase{
		{name: "orange juice in jam", set: "gb", lang: "en", given: "Strawberry and orange juice jam", kind: batch.Jam, list: []in{en("strawberries", 300), en("orange juice", 100)}, find: "error:too-little-fruit", says: "prepared with 30 g of fruit"},
		{name: "apple juice in extra jam", set: "eu", lang: "en", given: "Strawberry extra jam", kind: batch.Jam, list: []in{en("strawberries", 550), en("apple juice", 100)}, find: "error:ingredient-not-allowed", says: "prepared with 55 g"},
		{name: "too little for extra", set: "eu", lang: "en", given: "Strawberry extra jam", kind: batch.Jam, list: []in{en("strawberries", 450), en("apple juice", 100)}, find: "error:too-little-fruit"},
		{name: "red juice in strawberry extra jam", set: "eu", lang: "en", given: "Strawberry extra jam", kind: batch.Jam, list: []in{en("strawberries", 550), en("redcurrant juice", 100)}, not: "error:"},
		{name: "red juice in apricot extra jam", set: "eu", lang: "en", given: "Apricot extra jam", kind: batch.Jam, list: []in{en("apricots", 550), en("redcurrant juice", 100)}, find: "error:ingredient-not-allowed"},
		{name: "apple juice in jam", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{en("strawberries", 550), en("apple juice", 100)}, not: "error:"},
		{name: "juice is the fruit of jelly", set: "eu", lang: "en", given: "Quince jelly", kind: batch.Jelly, list: []in{en("quince juice", 500)}, not: "error:", says: "prepared with 50 g"},
		{name: "dried apricots (Annex III B 2)", set: "eu", lang: "en", given: "Apricot jam", kind: batch.Jam, list: []in{en("dried apricots", 460)}, not: "error:"},
		{name: "dried figs", set: "eu", lang: "en", given: "Fig jam", kind: batch.Jam, list: []in{en("figs", 460), en("dried figs", 100)}, find: "error:ingredient-not-allowed"},
		{name: "lemon juice is the fruit of lemon jelly", set: "eu", lang: "en", given: "Lemon jelly", kind: batch.Jelly, list: []in{en("lemon juice", 500)}, not: "error:", says: "prepared with 50 g"},
		{name: "lemon juice counts in marmalade", set: "eu", lang: "en", given: "Orange and lemon marmalade", kind: batch.Marmalade, list: []in{en("oranges", 300), en("lemon juice", 100)}, not: "error:", says: "prepared with 40 g"},
	} {
		c.run(t)
	}
}

// No prescribed figure of 0, and none that rests on what nobody knows.
func TestNoFigureOfNothing(t *testing.T) {
	de := func(words string, g float64) in { return tabled(t, "de", words, g) }
	for _, c := range []lawCase{
		{name: "unknown juice", set: "de", lang: "de", given: "Quittengelee", kind: batch.Jelly, list: []in{unknownIn("Quittensaft vom Nachbarn", 500), de("Zucker", 500)}, find: "error:fruit-content-", hides: "hergestellt aus"},
		{name: "chilli jam", set: "gb", lang: "en", given: "Chilli jam", kind: batch.Jam, list: []in{tabled(t, "en", "chilli", 100), tabled(t, "en", "sugar", 700)}, find: "error:fruit-content-zero", hides: "prepared with"},
		{name: "unknown beside fruit", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{tabled(t, "en", "strawberries", 500), unknownIn("moon fruit", 100)}, find: "error:fruit-content-unknown", hides: "prepared with"},
		{name: "a pinch of the unknown", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{tabled(t, "en", "strawberries", 500), unknownIn("moon dust", 1)}, find: "warning:ingredient-not-judged", says: "prepared with 50 g"},
	} {
		c.run(t)
	}
	// The second reckoning catches a figure that is not what the lines say.
	e := tester(t, "eu", "en", after, batchA1(62), cylinder(68, 60, 340))
	e.add(label.Block{Kind: label.Fruit, Cite: "x", Runs: []label.Run{{Text: "prepared with 63 g of fruit per 100 g"}}})
	if e.recheck(label.Fruit); !strings.Contains(codes(e.L), "error:figure-wrong") {
		t.Error("63 for 62.5 passes")
	}
}

// Regulation (EU) 1169/2011 Annex III 2.1, 2.2, 2.4, Annex VII C and Annex VIII
// (2)(a); Directive 2001/113/EC Annex I.II: sweetened products have no floor of
// solids.
func TestSweeteners(t *testing.T) {
	sugar, berries := tabled(t, "en", "sugar", 300), tabled(t, "en", "strawberries", 500)
	sweet := tabled(t, "en", "erythritol", 150)
	for _, c := range []lawCase{
		{name: "with sugars too", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, brix: 40, list: []in{berries, sugar, sweet}, not: "solids-too-low", says: "with sugar(s) and sweetener(s)"},
		{name: "alone", set: "gb", lang: "en", given: "Strawberry jam", kind: batch.Jam, brix: 40, list: []in{berries, sweet}, not: "solids-too-low", says: "with sweetener(s)"},
		{name: "category", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, sweet}, says: "Sweetener: erythritol"},
		{name: "polyols above 10 %", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, sweet}, says: "Excessive consumption may produce laxative effects"},
		{name: "polyols of 9 %", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, tabled(t, "en", "erythritol", 90)}, hides: "laxative"},
		{name: "German", set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, sugar, sweet}, says: "mit Zucker(n) und Süßungsmittel(n)"},
		{name: "German category", set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, sugar, unknownIn("Birkenzucker", 150)}, not: "error:", says: "Süßungsmittel: Xylit"},
		{name: "French", set: "fr", lang: "fr", given: "Confiture de fraises", kind: batch.Jam, list: []in{berries, sugar, sweet}, says: "avec sucre(s) et édulcorant(s)"},
		{name: "aspartame by name", set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, sugar, unknownIn("E 951", 1)}, says: "Enthält eine Phenylalaninquelle"},
		{name: "no sweetener", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, brix: 40, list: []in{berries, sugar}, find: "error:solids-too-low", hides: "sweetener"},
	} {
		c.run(t)
	}
}

// Regulation (EU) 1169/2011 Art 22(1), Annex VIII: an ingredient the name says
// has its quantity beside it, whatever form the language gives it.
func TestArt22TheNameSaysIt(t *testing.T) {
	en := func(words string, g float64) in { return tabled(t, "en", words, g) }
	de := func(words string, g float64) in { return tabled(t, "de", words, g) }
	for _, c := range []lawCase{
		{name: "first word of lemon juice", set: "gb", lang: "en", given: "Lemon curd", kind: batch.Curd, brix: 66, list: []in{en("sugar", 400), en("butter", 200), en("egg", 200), en("lemon juice", 250)}, says: "Lemon juice (25 %)"},
		{name: "umlaut", set: "de", lang: "de", given: "Feigen-Walnuss-Konfitüre", kind: batch.Jam, list: []in{de("Feigen", 500), de("Zucker", 400), de("Walnüsse", 60)}, says: "Walnüsse (6 %)"},
		{name: "Äpfel in a chutney", set: "de", lang: "de", given: "Apfel-Zwiebel-Chutney", kind: batch.Chutney, list: []in{de("Äpfel", 360), de("Zwiebeln", 100), de("Zucker", 540)}, says: "Äpfel (36 %)"},
		{name: "over 100 %", set: "de", lang: "de", given: "Tomaten-Apfel-Chutney", kind: batch.Chutney, list: []in{de("Tomaten", 800), de("Äpfel", 360), de("Zucker", 300)}, says: "80 g Tomaten und 36 g Äpfeln je 100 g"},
		{name: "a compound's head", set: "de", lang: "de", given: "Birnen-Schokoladen-Aufstrich", kind: batch.Spread, list: []in{de("Birnen", 500), de("Zartbitterschokolade", 90), de("Zucker", 410)}, says: "Zartbitterschokolade (9 %)"},
		{name: "ginger is a fruit when named", set: "gb", lang: "en", given: "Rhubarb and ginger jam", kind: batch.Jam, list: []in{en("rhubarb", 450), en("ginger", 20), en("sugar", 600)}, says: "prepared with 47 g"},
		{name: "ground ginger is a flavouring below 2 %", set: "gb", lang: "en", given: "Rhubarb and ginger jam", kind: batch.Jam, list: []in{en("rhubarb", 450), en("ground ginger", 15), en("sugar", 600)}, hides: "inger ("},
		{name: "ground ginger of 3 %", set: "gb", lang: "en", given: "Rhubarb and ginger jam", kind: batch.Jam, list: []in{en("rhubarb", 450), en("ground ginger", 30), en("sugar", 600)}, says: "round ginger (3 %)"},
		{name: "herbs below 2 %", set: "de", lang: "de", given: "Aprikosen-Rosmarin-Konfitüre", kind: batch.Jam, list: []in{de("Aprikosen", 500), de("Rosmarin", 2), de("Zucker", 500)}, hides: "osmarin ("},
		{name: "reduced sugar stresses no sugar", set: "gb", lang: "en", given: "Reduced sugar strawberry jam", kind: batch.Jam, brix: 45, list: []in{en("strawberries", 600), en("sugar", 310)}, hides: "ugar ("},
		{name: "French juice", set: "fr", lang: "fr", given: "Crème au citron", kind: batch.Curd, list: []in{en("sugar", 400), en("butter", 200), en("egg", 200), en("lemon juice", 250)}, says: "us de citron (25 %)"},
		{name: "a maker's own plural", set: "de", lang: "de", given: "Holzapfel-Aufstrich", kind: batch.Spread, list: []in{unknownIn("Holzäpfel", 600), de("Zucker", 400)}, says: "Holzäpfel (60 %)"},
		{name: "and own nuts", set: "de", lang: "de", given: "Birnen-Nuss-Aufstrich", kind: batch.Spread, list: []in{de("Birnen", 500), unknownIn("Nüsse", 60), de("Zucker", 400)}, says: "Nüsse (6 %)"},
		{name: "gin is not ginger", set: "gb", lang: "en", given: "Rhubarb and ginger jam", kind: batch.Jam, list: []in{en("rhubarb", 450), en("ginger", 20), en("gin", 30), en("sugar", 600)}, hides: "Gin ("},
	} {
		c.run(t)
	}
}

// Directive 2001/113/EC Art 4, Annex II; KonfV s. 4, 5.
func TestArt4PositiveList(t *testing.T) {
	en := func(words string, g float64) in { return tabled(t, "en", words, g) }
	berries, sugar := en("strawberries", 500), en("sugar", 450)
	for _, c := range []lawCase{
		{name: "chocolate", set: "de", lang: "de", given: "Erdbeer-Schoko-Konfitüre", kind: batch.Jam, list: []in{berries, sugar, en("dark chocolate", 50)}, find: "error:ingredient-not-allowed"},
		{name: "milk", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, en("milk", 50)}, find: "error:ingredient-not-allowed"},
		{name: "butter against foam", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, en("butter", 5)}, not: "error:"},
		{name: "butter as an ingredient", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, en("butter", 50)}, find: "error:ingredient-not-allowed"},
		{name: "onions", set: "gb", lang: "en", given: "Tomato and onion jam", kind: batch.Jam, list: []in{en("tomatoes", 500), en("onions", 100), sugar}, find: "error:ingredient-not-allowed"},
		{name: "vinegar", set: "gb", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, en("cider vinegar", 50)}, find: "error:ingredient-not-allowed"},
		{name: "nuts, herbs, spices, spirits, honey, vanilla", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, en("honey", 300), en("walnuts", 30), en("mint", 2), en("cinnamon", 2), en("rum", 20), en("vanilla bean", 1)}, not: "ingredient-"},
		{name: "agave syrup is none of the sugars", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, en("agave syrup", 300)}, find: "warning:ingredient-doubtful"},
		{name: "starch is no gelling agent of jam", set: "eu", lang: "en", given: "Strawberry jam", kind: batch.Jam, list: []in{berries, sugar, en("cornstarch", 10)}, find: "error:ingredient-not-allowed"},
		{name: "ginger in syrup is a fruit", set: "eu", lang: "en", given: "Rhubarb and ginger jam", kind: batch.Jam, list: []in{en("rhubarb", 450), en("candied ginger", 60), sugar}, not: "error:", says: "prepared with 51 g"},
		{name: "a spread may hold anything", set: "eu", lang: "en", given: "Strawberry spread", kind: batch.Spread, list: []in{berries, sugar, en("milk", 50)}, not: "ingredient-not"},
	} {
		c.run(t)
	}
}

// Regulation (EU) 1169/2011 Annex VII Part E: the list of a compound ingredient.
func TestAnnexVIICompounds(t *testing.T) {
	berries := tabled(t, "de", "Erdbeeren", 500)
	packet := tabled(t, "de", "Gelierzucker", 550)
	listed := packet
	listed.parts = []pantry.Part{{Name: "Zucker"}, {Name: "Apfelpektin"}, {Name: "Citronensäure"}}
	for _, c := range []lawCase{
		{name: "bare", set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, packet}, find: "error:compound-without-parts"},
		{name: "listed", set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, listed}, not: "compound", says: "Gelierzucker (Zucker, Geliermittel: Pektin, Säuerungsmittel: Citronensäure)"},
		{name: "chocolate of 9 %", set: "de", lang: "de", given: "Birnen-Aufstrich", kind: batch.Spread, list: []in{berries, tabled(t, "de", "Zartbitterschokolade", 90)}, find: "error:compound-without-parts"},
		{name: "chocolate of 1 %", set: "de", lang: "de", given: "Birnen-Aufstrich", kind: batch.Spread, list: []in{berries, tabled(t, "de", "Zartbitterschokolade", 10)}, find: "warning:compound-without-parts", not: "error:compound"},
	} {
		c.run(t)
	}
}

// Regulation (EU) 1169/2011 Annex VII Part C: category, then name or E number.
func TestAnnexVIICategories(t *testing.T) {
	berries, sugar := tabled(t, "de", "Erdbeeren", 500), tabled(t, "de", "Zucker", 500)
	for words, want := range map[string]string{
		"E 162": "Farbstoff: Betenrot", "e162": "Farbstoff: Betenrot", "Farbstoff: E 162": "Farbstoff: Betenrot", "Xanthan": "Verdickungsmittel: Xanthan",
		"Zuckercouleur": "Farbstoff: Zuckerkulör", "Apfelpektin": "Geliermittel: Pektin", "Guarkernmehl": "Verdickungsmittel: Guarkernmehl", "E 440": "Geliermittel: Pektin",
		"E 330": "Säuerungsmittel: Citronensäure", "E 202": "Konservierungsstoff: Kaliumsorbat", "Rum": "Rum",
	} {
		lawCase{name: words, set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, sugar, unknownIn(words, 3)}, says: want, hides: want + " ("}.run(t)
	}
	lawCase{name: "an E number no row has", set: "de", lang: "de", given: "Erdbeerkonfitüre", kind: batch.Jam, list: []in{berries, sugar, unknownIn("E 999", 3)}, find: "error:additive-category"}.run(t)
	for name, want := range map[string]string{"Erdbeere": "", "E 440": "440", "E-150d": "150d", "lecithin (E322)": "322", "Erdnuss 100": "", "e": "", "E 1": "", "Ester 123": ""} {
		if got := eNumber(name); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}
