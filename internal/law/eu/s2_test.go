package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// Directive 2001/113/EC Art 2(1), (2), Annex I: a lawful name is kept, and no
// second one is printed under it. Idiomatic names: common practice, no source.
func TestArt2LawfulNames(t *testing.T) {
	names := []struct {
		set, lang, given string
		kind             batch.ProductType
		fruit            []string
		want             string
	}{
		{"eu", "en", "Citrus marmalade", batch.Marmalade, []string{"orange", "lemon", "grapefruit"}, "Citrus marmalade"},
		{"eu", "en", "Citrus marmalade", batch.Marmalade, []string{"orange"}, "Orange marmalade"},
		{"gb", "en", "Three fruit marmalade", batch.Marmalade, []string{"orange", "lemon", "grapefruit"}, "Three fruit marmalade"},
		{"gb", "en", "Four fruit marmalade", batch.Marmalade, []string{"orange", "lemon", "grapefruit"}, "Orange, lemon and grapefruit marmalade"},
		{"gb", "en", "Hedgerow jam", batch.Jam, []string{"blackberry", "apple", "elderberry"}, "Hedgerow jam"},
		{"gb", "en", "Orange jelly marmalade", batch.Marmalade, []string{"orange"}, "Orange jelly marmalade"},
		{"de", "de", "Kirschkonfitüre", batch.Jam, []string{"cherry_sour"}, "Kirschkonfitüre"},
		{"de", "de", "Brombeer-Apfel-Konfitüre", batch.Jam, []string{"blackberry", "apple"}, "Brombeer-Apfel-Konfitüre"},
		{"de", "de", "Dreifruchtkonfitüre", batch.Jam, []string{"strawberry", "apple", "pear"}, "Dreifruchtkonfitüre"},
		{"de", "de", "Apfel-Zimt-Gelee", batch.Jelly, []string{"apple_juice"}, "Apfel-Zimt-Gelee"},
		{"de", "de", "Pfirsich-Konfitüre extra mit Honig", batch.Jam, []string{"peach"}, "Pfirsich-Konfitüre extra mit Honig"},
		{"de", "de", "Johannisbeergelee", batch.Jelly, []string{"redcurrant"}, "Johannisbeergelee"},
		{"de", "de", "Bitterorangenmarmelade", batch.Marmalade, []string{"orange_seville"}, "Bitterorangenmarmelade"},
		{"de", "de", "Zitrusmarmelade", batch.Marmalade, []string{"orange", "lemon", "grapefruit"}, "Zitrusmarmelade"},
		{"fr", "fr", "Confiture de cerises", batch.Jam, []string{"cherry_sour"}, "Confiture de cerises"},
		{"fr", "fr", "Confiture de cassis", batch.Jam, []string{"blackcurrant"}, "Confiture de cassis"},
		{"fr", "fr", "Confiture aux quatre fruits", batch.Jam, []string{"strawberry", "cherry_sweet", "redcurrant", "raspberry_red"}, "Confiture aux quatre fruits"},
		{"fr", "fr", "Gelée de coings", batch.Jelly, []string{"quince"}, "Gelée de coings"},
	}
	for _, c := range names {
		var list []in
		for i, key := range c.fruit {
			list = append(list, tabled(t, "en", key, 500-float64(i)))
		}
		e := tester(t, c.set, c.lang, after, cooked(c.kind, c.given, 1000, 62, list...), cylinder(68, 60, 340))
		e.identity()
		if got := textOf(e, label.Identity); got != c.want {
			t.Errorf("%s %q of %v: %q, want %q", c.set, c.given, c.fruit, got, c.want)
		}
	}
}

// Annex I.II: reduced sugars by the rules on claims (RD 863/2003 art. 4.1; NI SR
// 2018/78 Sch. 3), by a range in Great Britain (SSI 2004/133 note 2(b)). Curd: SR
// 2018/78 Sch. 3 Part 11. Chestnut purée: Annex I. Mincemeat: Part 12 para 2.
func TestOtherProducts(t *testing.T) {
	en := func(words string, g float64) in { return tabled(t, "en", words, g) }
	berries, sugar := en("strawberries", 600), en("sugar", 300)
	curd := []in{en("sugar", 450), en("butter", 150), en("egg", 200), en("lemon juice", 200)}
	for _, c := range []lawCase{
		{name: "reduced sugar eu", set: "eu", lang: "en", given: "Reduced sugar strawberry jam", kind: batch.Jam, brix: 45, list: []in{berries, sugar}, not: "solids-too-low"},
		{name: "reduced sugar ni", set: "ni", lang: "en", given: "Reduced sugar strawberry jam", kind: batch.Jam, brix: 45, list: []in{berries, sugar}, find: "warning:reduced-sugar-claim", not: "solids-too-low"},
		{name: "reduced sugar de", set: "de", lang: "de", given: "Erdbeerkonfitüre zuckerreduziert", kind: batch.Jam, brix: 45, list: []in{berries, sugar}, not: "solids-too-low", hides: "Zucker ("},
		{name: "no claim", set: "ni", lang: "en", given: "Strawberry jam", kind: batch.Jam, brix: 45, list: []in{berries, sugar}, find: "error:solids-too-low"},
		{name: "ni curd of 50 %", set: "ni", lang: "en", given: "Lemon curd", kind: batch.Curd, brix: 50, list: curd, find: "error:solids-too-low"},
		{name: "good curd", set: "ni", lang: "en", given: "Lemon curd", kind: batch.Curd, brix: 66, list: curd, not: "error:"},
		{name: "curd without fat", set: "gb", lang: "en", given: "Lemon curd", kind: batch.Curd, brix: 66, list: []in{sugar, en("butter", 20), en("egg", 200)}, find: "error:too-little-of"},
		{name: "curd with a lick of egg", set: "gb", lang: "en", given: "Lemon curd", kind: batch.Curd, brix: 66, list: []in{sugar, en("butter", 100), en("egg", 30)}, find: "error:too-little-of"},
		{name: "chestnut", set: "eu", lang: "en", given: "Sweetened chestnut purée", kind: batch.Spread, list: []in{unknownIn("chestnuts", 400), sugar}, says: "prepared with 40 g"},
		{name: "too little chestnut", set: "de", lang: "de", given: "Maronenkrem", kind: batch.Spread, list: []in{unknownIn("Maronenpüree", 370), sugar}, find: "error:too-little-fruit"},
		{name: "crème de marrons of 58 %", set: "fr", lang: "fr", given: "Crème de marrons", kind: batch.Spread, brix: 58, list: []in{unknownIn("marrons", 400), sugar}, find: "error:solids-too-low"},
		{name: "mincemeat", set: "gb", lang: "en", given: "Mincemeat", kind: batch.Chutney, brix: 66, list: []in{en("raisins", 250), en("sugar", 300), en("apples", 300)}, find: "error:too-little-of"},
		{name: "mincemeat with peel", set: "gb", lang: "en", given: "Mincemeat", kind: batch.Chutney, brix: 66, list: []in{en("raisins", 250), en("orange peel", 60), en("sugar", 300), unknownIn("suet", 30)}, not: "error:"},
		{name: "mincemeat with a lick of suet", set: "gb", lang: "en", given: "Mincemeat", kind: batch.Chutney, brix: 66, list: []in{en("raisins", 250), en("orange peel", 60), en("sugar", 300), en("butter", 20)}, find: "error:too-little-of"},
	} {
		c.run(t)
	}
}

// Regulation (EU) 1169/2011 Art 18(2): an ingredient by its own name.
func TestArt18JuicesAreJuices(t *testing.T) {
	for lang, names := range map[string]map[string]string{
		"en": {"blackcurrant": "Blackcurrant juice", "quince": "Quince juice", "apple_juice": "Apple juice"},
		"de": {"blackcurrant": "Saft aus schwarzen Johannisbeeren", "quince": "Quittensaft", "elderberry": "Holunderbeersaft", "redcurrant": "Saft aus roten Johannisbeeren", "apple": "Apfelsaft", "apple_juice_conc": "Apfelsaftkonzentrat"},
		"fr": {"quince": "jus de coings", "apple": "jus de pommes", "orange": "jus d’oranges", "orange_juice_conc": "jus d’orange concentré"},
	} {
		for key, want := range names {
			x := tabled(t, "en", key, 500)
			x.kind, x.row.Class = "juice", "juice"
			e := tester(t, "eu", lang, after, cooked(batch.Jelly, "x", 1000, 62, x), cylinder(68, 60, 340))
			if got := e.listed(e.ingredientName(e.R.Lines[0])); got != want {
				t.Errorf("%s %s: %q, want %q", lang, key, got, want)
			}
		}
	}
}

// Annex X 2(b): the use-by date "shall be followed by a description of the
// storage conditions which must be observed"; Art 24(1): the maker is asked.
func TestArt24UseBy(t *testing.T) {
	curd := func(useBy bool) *pass {
		r := cooked(batch.Curd, "Lemon curd", 1000, 66, tabled(t, "en", "butter", 150), tabled(t, "en", "egg", 200), tabled(t, "en", "sugar", 500), tabled(t, "en", "lemon juice", 150))
		r.Batch.UseBy, r.BestBefore = useBy, r.Batch.Made.AddDays(7)
		r.Keeping.Class = cook.Cold
		e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
		e.declare()
		return e
	}
	if e := curd(false); !strings.Contains(codes(e.L), "warning:use-by-question") {
		t.Errorf("nobody asks: %s", codes(e.L))
	}
	e := curd(true)
	if got := textOf(e, label.Date); got != "Use by 02 12 2026. Keep refrigerated at 5 °C or below." {
		t.Errorf("%q", got)
	}
	if got := textOf(e, label.Storage); !strings.HasPrefix(got, "Once opened") || strings.Contains(codes(e.L), "use-by-question") {
		t.Errorf("%q %s", got, codes(e.L))
	}
}

// Art 15: a language easily understood where the food is sold. FPackV s. 19:
// Germany has no lighter label for packs sold directly.
func TestArt15LanguageAndSaleMode(t *testing.T) {
	for _, c := range []struct{ place, lang, mode, want string }{
		{"eu", "it", "prepacked", "error:language"}, {"de", "fr", "prepacked", "error:language"}, {"de", "de-DE", "prepacked", ""},
		{"de", "de", "ppds", "warning:sale-mode"}, {"gb", "en", "ppds", ""},
	} {
		r := sink(t, kitchenSink, batchSink)
		r.Kitchen.Language, r.Kitchen.SaleMode = c.lang, c.mode
		_, l := Declare(r, r.Jars[0], rulesOf(t, c.place), draft.Options{})
		got := codes(l)
		if c.want != "" && !strings.Contains(got, c.want) || c.want == "" && (strings.Contains(got, ":language") || strings.Contains(got, ":sale-mode")) {
			t.Errorf("%+v: %s", c, got)
		}
	}
}

// Money as the language writes it (PAngV s. 5: per kilogram; the form is common
// practice, no source).
func TestMoneyInTheLanguage(t *testing.T) {
	for _, c := range []struct{ place, lang, price, per string }{
		{"de", "de", "6,50 €", "27,08 €/kg"}, {"fr", "fr", "6,50 €", "27,08 €/kg"}, {"gb", "en", "£6.50", "£27.08 per kg"}, {"ie", "en", "€6.50", "€27.08 per kg"},
		{"ni", "en", "£6.50", "£2.71 per 100 g"}, // SR 2004/368 Sch. 1, preserves per 100 g
	} {
		r := sink(t, kitchenSink, batchSink)
		r.Kitchen.Language = c.lang
		jar := cylinder(68, 60, 240)
		set := rulesOf(t, c.place)
		jar.Price = unit.Money{Minor: 650, Currency: set.Currency}
		got, _ := Declare(r, jar, set, draft.Options{})
		price, _ := got.Find(label.Price)
		per, _ := got.Find(label.UnitPrice)
		if strings.ReplaceAll(price.Text(), nbsp, " ") != c.price || strings.ReplaceAll(per.Text(), nbsp, " ") != c.per {
			t.Errorf("%s: %q %q", c.place, price.Text(), per.Text())
		}
	}
}

// Art 26(3): an origin that is given, and another of the primary ingredient.
func TestArt26Origin(t *testing.T) {
	for _, c := range []struct{ origin, fruit, says, hides, find string }{
		{"Kent", "Spain", "Origin: Kent\nStrawberries: from Spain", "", ""},
		{"Kent", "Kent", "Origin: Kent", "from", ""},
		{"Kent", "", "Origin: Kent", "from", "warning:primary-origin"},
		{"", "", "", "Origin", ""},
	} {
		r := batchA1(62)
		r.Batch.Origin, r.Batch.FruitOrigin = c.origin, c.fruit
		e := tester(t, "gb", "en", after, r, cylinder(40, 40, 340))
		e.origin()
		all := ""
		for _, b := range e.C.Blocks {
			all += b.Text() + "\n"
			if b.Min.Length < unit.MM(1.2) {
				t.Errorf("%s is %v high", b.Text(), b.Min.Length)
			}
		}
		if !strings.Contains(all, c.says) || c.hides != "" && strings.Contains(all, c.hides) || !strings.Contains(codes(e.L), c.find) {
			t.Errorf("%+v: %q %s", c, all, codes(e.L))
		}
	}
}
