package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
)

// Words of Regulation (EC) 1924/2006 Annex, 2018/848 Art 30 and 828/2014 in the
// maker's own texts, in three languages; plain words pass.
func TestClaimsInOwnWords(t *testing.T) {
	for _, c := range []struct{ lang, words, want string }{
		{"en", "no added sugar", "warning:nutrition-claim error:added-sugar-claim"}, {"en", "High fibre", "warning:nutrition-claim"}, {"en", "organic", "warning:organic-claim"},
		{"en", "gluten-free", "note:gluten-claim"}, {"en", "good for you", "warning:health-claim"}, {"en", "nut free", "warning:free-from-claim"},
		{"de", "ohne Zuckerzusatz", "warning:nutrition-claim error:added-sugar-claim"}, {"de", "zuckerreduziert", "warning:nutrition-claim"}, {"de", "Bio", "warning:organic-claim"}, {"de", "glutenfrei", "note:gluten-claim"},
		{"fr", "sans sucres ajoutés", "warning:nutrition-claim error:added-sugar-claim"}, {"fr", "biologique", "warning:organic-claim"}, {"fr", "riche en vitamines", "warning:nutrition-claim"},
		{"en", "sweetened only with fruit juice", "error:purity-claim"}, {"de", "ausschließlich mit Apfelsaft gesüßt", "error:purity-claim"}, {"fr", "sucrée uniquement au jus de pomme", "error:purity-claim"},
		{"fr", "antioxydants", "warning:health-claim"}, {"de", "antioxidativ", "warning:health-claim"}, {"de", "Vitamin-C-Quelle", "warning:nutrition-claim"}, {"fr", "moins sucrée", "warning:nutrition-claim"}, {"fr", "vitaminée", "warning:nutrition-claim"},
		{"en", "PDO", "warning:certified-claim"}, {"de", "geschützte geographische Angabe", "warning:certified-claim"}, {"en", "Soil Association", "warning:certified-claim"},
		{"en", "made with love", ""}, {"de", "gesüßt mit Zucker", ""}, {"fr", "sucrée juste ce qu'il faut", ""}, {"en", "rich and dark", ""}, {"de", "mit Liebe gemacht", ""}, {"de", "Biene und Blüte", ""}, {"fr", "fait maison", ""},
	} {
		r := cooked(batch.Jam, "Strawberry jam", 1000, 62, tabled(t, "en", "strawberries", 500), in{key: "sugar_white", name: "sugar", g: 500, kind: "sweetener"})
		r.Batch.Label.Subtitle = c.words
		e := tester(t, "eu", c.lang, after, r, cylinder(68, 60, 340))
		e.closing()
		var got []string
		for _, d := range e.L {
			if strings.HasSuffix(d.Code, "-claim") {
				got = append(got, d.Severity.String()+":"+d.Code)
				if d.Path != "label.subtitle" || d.Cite == "" {
					t.Errorf("%s: %+v", c.words, d)
				}
			}
		}
		if s := strings.Join(got, " "); s != c.want {
			t.Errorf("%s %q: %s, want %s", c.lang, c.words, s, c.want)
		}
	}
}

// Without sugar in the pot "no added sugar" is no lie.
func TestNoAddedSugarWithoutSugar(t *testing.T) {
	r := cooked(batch.Spread, "Strawberry spread", 1000, 20, tabled(t, "en", "strawberries", 900))
	r.Batch.Story = "no added sugar"
	e := tester(t, "gb", "en", after, r, cylinder(68, 60, 340))
	e.closing()
	if s := codes(e.L); strings.Contains(s, "added-sugar-claim") || !strings.Contains(s, "warning:nutrition-claim") {
		t.Error(s)
	}
}

// Regulation (EC) 1333/2008 Annex II Part E 04.2.5.1 and 04.2.5.2, one additive
// at a time; the quotation stands in quotes/eu.toml.
func TestAdditivesOneByOne(t *testing.T) {
	berries, sugar := tabled(t, "en", "strawberries", 600), in{key: "sugar_white", name: "sugar", g: 500, kind: "sweetener"}
	const no, low = "error:ingredient-not-allowed", "warning:ingredient-doubtful"
	for words, want := range map[string][2]string{ // in jam, in extra jam
		"E 330": {}, "E 331": {}, "E 333": {}, "E 334": {}, "E 440": {}, "E 300": {}, "E 471": {}, "E 332": {no, no}, "E 341": {no, no}, "E 162": {"", no}, "E 406": {"", no}, "E 509": {"", no},
		"E 202": {low, low}, "E 211": {low, low}, "E 466": {no, no}, "potassium citrate": {no, no}, "agar": {"", no}, "E 422": {no, no}, "E 500": {no, no},
	} {
		for i, name := range []string{"Strawberry jam", "Strawberry extra jam"} {
			for _, set := range []string{"eu", "gb", "ni"} {
				e := tester(t, set, "en", after, cooked(batch.Jam, name, 1000, 62, berries, sugar, unknownIn(words, 3)), cylinder(68, 60, 340))
				e.judgeIngredients()
				if got := codes(e.L); got != want[i] {
					t.Errorf("%s in %s, %s: %q, want %q", words, name, set, got, want[i])
				}
			}
		}
	}
	// A preservative in a jam low in sugar, and a food no list governs.
	for _, c := range []lawCase{
		{name: "sorbate in a lean jam", set: "gb", given: "Reduced sugar strawberry jam", lang: "en", kind: batch.Jam, brix: 45, list: []in{berries, sugar, unknownIn("E 202", 1)}, not: "ingredient-doubtful"},
		{name: "a spread", set: "eu", given: "Strawberry spread", lang: "en", kind: batch.Spread, list: []in{berries, sugar, unknownIn("E 332", 1)}, not: "ingredient-not-allowed"},
		{name: "chestnut purée takes no color", set: "eu", given: "Sweetened chestnut purée", lang: "en", kind: batch.Spread, list: []in{unknownIn("chestnut", 600), sugar, unknownIn("E 150a", 1)}, find: no},
	} {
		c.run(t)
	}
}

// Northern Ireland's own text was read without the changes of 2026: it is told.
func TestNorthernIrelandTellsOfItsSugarLine(t *testing.T) {
	for name, told := range map[string]bool{"Strawberry jam": true, "Strawberry spread": false} {
		kind := map[bool]batch.ProductType{true: batch.Jam, false: batch.Spread}[told]
		e := tester(t, "ni", "en", after, cooked(kind, name, 1000, 62, tabled(t, "en", "strawberries", 500)), cylinder(68, 60, 340))
		e.closing()
		found := false
		for _, d := range e.L {
			found = found || d.Code == "beside-label" && strings.Contains(d.Cite, "SR 2018/78")
		}
		if found != told {
			t.Errorf("%s: %s", name, codes(e.L))
		}
	}
}
