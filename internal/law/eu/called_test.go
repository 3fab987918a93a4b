package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// Directive 2001/113/EC Art 2(1), (2): the fruit by any of its names. Aronia and
// Holunder stand without "-beere", brambles are blackberries: common practice, no source.
func TestFruitByItsOtherNames(t *testing.T) {
	for _, c := range []struct {
		set, lang, given string
		kind             batch.ProductType
		fruit            string
	}{
		{"de", "de", "Holunderkonfitüre", batch.Jam, "elderberry"},
		{"de", "de", "Aroniakonfitüre", batch.Jam, "aronia"},
		{"de", "de", "Cassiskonfitüre", batch.Jam, "blackcurrant"},
		{"de", "de", "Sanddornkonfitüre", batch.Jam, "sea_buckthorn"},
		{"gb", "en", "Bramble jam", batch.Jam, "blackberry"},
		{"gb", "en", "Dragonfruit jam", batch.Jam, "dragon_fruit"},
		{"gb", "en", "Sea-buckthorn jam", batch.Jam, "sea_buckthorn"},
	} {
		e := tester(t, c.set, c.lang, after, cooked(c.kind, c.given, 1000, 62, tableIn(t, c.fruit, 600)), cylinder(68, 60, 340))
		if e.identity(); textOf(e, label.Identity) != c.given {
			t.Errorf("%s: %q", c.given, textOf(e, label.Identity))
		}
	}
	for given, fruit := range map[string]string{"Bramble jam": "raspberry_red", "Holunderkonfitüre": "strawberry"} {
		set, lang := "gb", "en"
		if strings.Contains(given, "konf") {
			set, lang = "de", "de"
		}
		e := tester(t, set, lang, after, cooked(batch.Jam, given, 1000, 62, tableIn(t, fruit, 600)), cylinder(68, 60, 340))
		if e.identity(); textOf(e, label.Identity) == given {
			t.Errorf("%s of %s is kept", given, fruit)
		}
	}
}

// Regulation (EU) 1169/2011 Annex VII Part C: the category, whichever form of an
// additive's name the packet has.
func TestAdditiveInOneOrMany(t *testing.T) {
	for _, c := range []struct{ lang, name, want string }{
		{"fr", "carraghénanes", "gélifiant : carraghénane"}, {"fr", "mannitol", "édulcorant : mannitols"}, {"fr", "citrate de sodium", "correcteur d’acidité : citrates de sodium"},
		{"de", "Lecithin", "Emulgator: Lecithine"}, {"de", "Natriumcitrat", "Säureregulator: Natriumcitrate"}, {"de", "Apfelsäure", "Säuerungsmittel: Äpfelsäure"}, {"de", "Carotin", "Farbstoff: Carotine"},
		{"en", "sodium citrate", "Acidity regulator: sodium citrates"}, {"en", "E 440i", "Gelling agent: pectin"}, {"en", "sorbitol", "Sweetener: sorbitols"}, {"en", "apple pectin jelly", ""},
	} {
		set := map[string]string{"de": "de", "fr": "fr", "en": "eu"}[c.lang]
		e := tester(t, set, c.lang, after, cooked(batch.Jam, "x", 1000, 62, in{name: c.name, g: 5}), cylinder(68, 60, 340))
		got, _ := e.additive("ingredient[0]", c.name)
		if plain := strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(got); !strings.EqualFold(plain, c.want) {
			t.Errorf("%s %s: %q", c.lang, c.name, plain)
		}
	}
}

// Annex VII Part E: what is made of several things by its very name wants its list.
func TestCompoundByItsName(t *testing.T) {
	for _, c := range []struct {
		lang, name string
		want       bool
	}{
		{"en", "mango chutney", true}, {"en", "ginger biscuits", true}, {"en", "spruce cones", false}, {"de", "Nuss-Nougat-Creme", true}, {"de", "Quittenblüten", false}, {"fr", "pâte à tartiner", true}, {"fr", "gelée royale", false},
	} {
		set := map[string]string{"de": "de", "fr": "fr", "en": "gb"}[c.lang]
		e := tester(t, set, c.lang, after, cooked(batch.Spread, "x", 1000, 62, in{name: c.name, g: 50}), cylinder(68, 60, 340))
		e.list()
		if got := strings.Contains(codes(e.L), "compound-without-parts"); got != c.want {
			t.Errorf("%s: %v %s", c.name, got, codes(e.L))
		}
	}
	e := tester(t, "de", "de", after, cooked(batch.Spread, "x", 1000, 62, tableIn(t, "almond_paste", 100)), cylinder(68, 60, 340))
	if e.list(); !strings.Contains(codes(e.L), "error:compound-without-parts") {
		t.Errorf("marzipan: %s", codes(e.L))
	}
}

// A marmalade counts pulp, peel and juice (Annex I), so whole oranges prove their
// weight; a jelly counts juice or extract, and the figure is said to be of the fruit.
func TestWholeFruitInMarmalade(t *testing.T) {
	for _, c := range []struct {
		kind batch.ProductType
		key  string
		want bool
	}{{batch.Marmalade, "orange", false}, {batch.Jelly, "quince", true}, {batch.Jam, "quince", false}} {
		e := tester(t, "eu", "en", after, cooked(c.kind, "x", 1000, 62, tableIn(t, c.key, 600)), cylinder(68, 60, 340))
		if e.judgeFruit(); strings.Contains(codes(e.L), "warning:jelly-counts-juice") != c.want {
			t.Errorf("%s of %s: %s", c.kind, c.key, codes(e.L))
		}
	}
}

// Implementing Regulation (EU) 2018/775 Art 1(1): places in the words of a label.
func TestOriginInWords(t *testing.T) {
	for _, c := range []struct {
		lang, subtitle string
		want           bool
	}{
		{"de", "aus Sachsen", true}, {"de", "Spreewälder Art", true}, {"de", "aus Omas Küche", false}, {"de", "aus reifen Früchten", false},
		{"fr", "de la Drôme", true}, {"fr", "du Quercy", true}, {"fr", "de la maison", false}, {"fr", "aux herbes de Provence", false},
		{"en", "from Perthshire", true}, {"en", "Moroccan style", true}, {"en", "from our garden", false}, {"en", "with Turkish delight", false},
	} {
		set := map[string]string{"de": "de", "fr": "fr", "en": "gb"}[c.lang]
		r := cooked(batch.Jam, "x", 1000, 62, tableIn(t, "strawberry", 600))
		r.Batch.Label.Subtitle = c.subtitle
		e := tester(t, set, c.lang, after, r, cylinder(68, 60, 340))
		if e.origin(); strings.Contains(codes(e.L), "primary-origin") != c.want {
			t.Errorf("%q: %s", c.subtitle, codes(e.L))
		}
	}
}

// What is claimed in three languages (Regulation (EC) 1924/2006 Annex): every form of
// a German adjective, an amount, "light" of a name.
func TestClaimsInThreeLanguages(t *testing.T) {
	for words, want := range map[string]bool{"zuckerfreier Genuss": true, "mit zuckerreduziertem Rezept": true, "nur 5 g Zucker": true, "Zéro sucre": true, "sans ajout de sucre": true, "sugarfree": true, "5 g sugars": true,
		"leicht herb": false, "500 g Zucker auf ein Kilo": false, "mit viel Liebe": false} {
		r := cooked(batch.Jam, "x", 1000, 62, tableIn(t, "strawberry", 600))
		r.Batch.Label.Words = words
		e := tester(t, "eu", "de", after, r, cylinder(68, 60, 340))
		if e.Wordings(); strings.Contains(codes(e.L), "nutrition-claim") != want {
			t.Errorf("%q: %s", words, codes(e.L))
		}
	}
	for name, want := range map[string]bool{"Light plum spread": true, "Light set plum jam": false, "Leichter Pflaumenaufstrich": true, "Leicht herbe Orangenmarmelade": false} {
		e := tester(t, "eu", "de", after, cooked(batch.Spread, name, 1000, 62, tableIn(t, "plum", 600)), cylinder(68, 60, 340))
		if e.Wordings(); strings.Contains(codes(e.L), "light-claim") != want {
			t.Errorf("%q: %s", name, codes(e.L))
		}
	}
}

// Implementing Regulation (EU) 2018/775 Art 3(2): beside a place in the name, the
// origin of the fruit is set at three quarters of its letters at least.
func TestOriginBesideTheName(t *testing.T) {
	for _, c := range []struct {
		name, origin, fruit string
		want                bool
	}{
		{"Tuscan fig jam", "Tuscany", "Turkey", true}, {"Tuscan fig jam", "", "Turkey", true}, {"Fig jam", "Tuscany", "Turkey", false}, {"Tuscan fig jam", "Tuscany", "Tuscany", false},
	} {
		r := cooked(batch.Jam, c.name, 1000, 62, tableIn(t, "fig_fresh", 600))
		r.Batch.Origin, r.Batch.FruitOrigin = c.origin, c.fruit
		e := tester(t, "eu", "en", after, r, cylinder(68, 60, 340))
		if e.origin(); strings.Contains(codes(e.L), "origin-beside-name") != c.want {
			t.Errorf("%+v: %s", c, codes(e.L))
		}
	}
}

// Directive 2001/113/EC Annex II (consolidated 18.11.2013, legalize-eu): what is allowed
// beside certain fruit alone. Vanillin is allowed in all.
func TestAnnexIIBesideCertainFruit(t *testing.T) {
	for _, c := range []struct {
		kind        batch.ProductType
		name, fruit string
		other       in
		allowed     bool
	}{
		{batch.Jam, "Strawberry jam", "strawberry", in{name: "beetroot juice", g: 20}, true},
		{batch.Jam, "Peach jam", "peach", in{name: "beetroot juice", g: 20}, false},
		{batch.Jam, "Extra strawberry jam", "strawberry", in{name: "red beetroot juice", g: 20}, false},
		{batch.Jelly, "Quince jelly", "quince", tableIn(t, "geranium", 3), true},
		{batch.Jelly, "Apple jelly", "apple", tableIn(t, "geranium", 3), false},
		{batch.Jam, "Peach jam", "peach", in{name: "orange oil", g: 1}, false},
		{batch.Marmalade, "Orange marmalade", "orange", in{name: "orange oil", g: 1}, true},
		{batch.Marmalade, "Orange marmalade", "orange", in{name: "beetroot juice", g: 20}, false},
		{batch.Jam, "Peach jam", "peach", in{name: "vanillin", g: 1}, true},
	} {
		e := tester(t, "eu", "en", after, cooked(c.kind, c.name, 1000, 62, tableIn(t, c.fruit, 600), c.other), cylinder(68, 60, 340))
		e.judgeIngredients()
		if got := !strings.Contains(codes(e.L), "ingredient-"); got != c.allowed {
			t.Errorf("%s with %s: %s", c.name, c.other.name, codes(e.L))
		}
	}
}

// Annex II no. 12 of Regulation (EU) 1169/2011: what is often sulphited is asked about,
// unless its name says that it is not.
func TestSulphitesByName(t *testing.T) {
	for name, want := range map[string]bool{"dried figs": true, "unsulphured dried figs": false, "pickled ginger": true, "sauerkraut": true, "white wine": true, "freeze dried raspberries": false, "potato flakes": true} {
		e := tester(t, "gb", "en", after, cooked(batch.Spread, "x", 1000, 62, in{name: name, g: 50}), cylinder(68, 60, 340))
		e.list()
		if got := strings.Contains(codes(e.L), "sulphites-unknown"); got != want {
			t.Errorf("%s: %v %s", name, got, codes(e.L))
		}
	}
}

// Annex VIII(4)(a): the words of a quantity as the language inflects them.
func TestQuantitiesInflected(t *testing.T) {
	for _, c := range []struct{ set, lang, name, key, want string }{
		{"de", "de", "Apfelaufstrich", "apple", "hergestellt aus 180 g Äpfeln je 100 g"}, {"fr", "fr", "Confit d’oignons", "onion", "préparé avec 180 g d’oignons pour 100 g"}, {"fr", "fr", "Chutney de tomates", "tomato", "préparé avec 180 g de tomates pour 100 g"},
	} {
		e := tester(t, c.set, c.lang, after, cooked(batch.Chutney, c.name, 1000, 40, tableIn(t, c.key, 1800)), cylinder(68, 60, 340))
		e.quid()
		if got := textOf(e, label.Statement); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}
