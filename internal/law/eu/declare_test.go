package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	where "jarmark/internal/kit/place"
	"jarmark/internal/kit/source"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// kitchenSink and batchSink fill in every key a European rule reads, so that
// every finding has a place to point at.
const kitchenSink = `name = "Thornfield Lane Preserves"
address = ["14 Thornfield Lane", "Millbrook"]
place = "gb"
language = "en"
sale_mode = "prepacked"
also_handles = ["almonds", "milk", "lactose", "moon dust"]
`

const batchSink = `name = "Strawberry, apple and lavender extra jam"
kind = "jam"
made = 2026-11-25
best_before = 2027-11-25
lot = "K1"

[[ingredient]]
name = "strawberries"
amount = "1.2 kg"

[[ingredient]]
name = "apples"
amount = "300 g"

[[ingredient]]
name = "sugar"
amount = "1.5 kg"

[[ingredient]]
name = "butter"
amount = "10 g"

[[ingredient]]
name = "honey"
amount = "50 g"

[[ingredient]]
name = "dried apricots"
amount = "100 g"
allergens = ["tree nuts"]

[[ingredient]]
name = "malt vinegar"
amount = "20 g"

[[ingredient]]
name = "pectin"
amount = "20 g"
contains = ["dextrose", "citric acid", "pectin"]

[[ingredient]]
name = "water"
amount = "200 g"

[cook]
brix = 55
finished_pot = "3 kg"

[process]
method = "boiling water"
minutes = 10

[[fill]]
jar = "us8"
count = 10
sealed = 9
net = ["231 g", "229 g", "230 g"]
price = "5.00"

[[fill]]
jar = "us4"
count = 2
declared = "110 g"
`

func sink(t *testing.T, kitchen, notes string) *cook.Result {
	t.Helper()
	k, l := batch.ParseKitchen("kitchen.toml", []byte(kitchen), finder(t))
	b, m := batch.Parse("batch.toml", []byte(notes), k)
	if l = append(l, m...); l.HasErrors() {
		t.Fatal(l)
	}
	r, l := cook.Compute(b, k, pantry.Default())
	if r == nil {
		t.Fatal(l)
	}
	return r
}

func finder(t *testing.T) where.Finder {
	t.Helper()
	b, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	return b.Find
}

// euPlaces are the sets of the European table with their languages.
func euPlaces(b *place.Book) (out [][2]string) {
	for _, s := range b.List() {
		if p, _, _ := b.Find(s.ID); !p.US() {
			for _, lang := range s.Languages {
				out = append(out, [2]string{s.ID, lang})
			}
		}
	}
	return out
}

// Every European set and language declares the kitchen sink: each finding's
// path stands in the file it names, every required particular of Regulation
// (EU) 1169/2011 Art 9 is there, and no phrase is missing.
func TestEuropeanSets(t *testing.T) {
	book, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	places := euPlaces(book)
	if len(places) < 8 {
		t.Fatalf("only %v", places)
	}
	for _, p := range places {
		r := sink(t, strings.Replace(kitchenSink, `"en"`, `"`+p[1]+`"`, 1), batchSink)
		set, l := book.Place(p[0], after)
		if set == nil {
			t.Fatal(l)
		}
		for _, jar := range r.Jars {
			c, l := Declare(r, jar, set, draft.Options{})
			for _, k := range []label.Kind{label.Identity, label.Ingredients, label.Net, label.Date, label.Storage, label.Maker, label.Lot, label.Fruit} {
				if b, ok := c.Find(k); !ok || !b.Required || b.Text() == "" || strings.Contains(b.Text(), "[") {
					t.Errorf("%v %s: %s is %q", p, jar.Jar.Key, k, b.Text())
				}
			}
			if _, ok := c.Find(label.Allergens); ok {
				t.Errorf("%v: Contains beside a list", p)
			}
			// milk, barley and the maker's "tree nuts": cards and pages list them.
			if len(c.AllergenNames) != 3 || c.Keep.Sealed == "" || c.Keep.Opened == "" || !strings.Contains(c.QR.Payload, c.AllergenNames[0]) {
				t.Errorf("%v: allergens %v, keep %+v, code %q", p, c.AllergenNames, c.Keep, c.QR.Payload)
			}
			if c.Lang != p[1] {
				t.Errorf("%v: language %s", p, c.Lang)
			}
			resolve(t, r, l)
		}
	}
}

// resolve checks that every path a finding reports stands in its file.
func resolve(t *testing.T, r *cook.Result, l diag.List) {
	t.Helper()
	files := map[string]*source.File{"kitchen.toml": r.Kitchen.File, "batch.toml": r.Batch.File}
	for _, d := range l {
		if d.Path == "" {
			continue
		}
		f := files[d.File]
		if f == nil {
			t.Errorf("%s names the file %q", d.Code, d.File)
			continue
		}
		if _, ok := f.Entry(d.Path); !ok {
			t.Errorf("%s: no %s in %s", d.Code, d.Path, d.File)
		}
	}
}

// The British label of the kitchen sink, word for word.
func TestBritishLabel(t *testing.T) {
	book, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	r := sink(t, kitchenSink, strings.NewReplacer("brix = 55", "brix = 62.4", " and lavender extra", " and apricot", `"malt vinegar"`, `"lime juice"`, `allergens = ["tree nuts"]`, `allergens = ["sulphites"]`).Replace(batchSink))
	set, _ := book.Place("gb", after)
	c, l := Declare(r, r.Jars[0], set, draft.Options{})
	if l.HasErrors() {
		t.Fatal(l)
	}
	want := map[label.Kind]string{
		label.Identity:    "**Strawberry, apple and apricot jam**",
		label.Fruit:       "prepared with 53 g of fruit per 100 g",
		label.Sugar:       "total sugar content: 62 g per 100 g",
		label.Net:         "230 g",
		label.Date:        "Best before 25 11 2027",
		label.Lot:         "L K1",
		label.Maker:       "Thornfield Lane Preserves, 14 Thornfield Lane, Millbrook",
		label.Ingredients: "Ingredients: Sugar, Strawberries, Apples, Dried apricots (**sulphites**), Honey, Lime juice, Pectin (dextrose, acid: citric acid, gelling agent: pectin), Butter (**milk**)",
		label.Caution:     "Not suitable for infants under 12 months.",
	}
	for k, text := range want {
		if b, _ := c.Find(k); marked(b.Runs) != text {
			t.Errorf("%s: %q, want %q", k, marked(b.Runs), text)
		}
	}
}

// Every ingredient of the table and every name of Annex II has its words in
// every language.
func TestEveryIngredientHasWords(t *testing.T) {
	for _, row := range pantry.Default().Ingredients() {
		for _, lang := range []string{"de", "fr"} {
			if n, ok := row.Names(lang); !ok || n.Label == "" || n.Singular == "" || n.Stem == "" {
				t.Errorf("%s: no name of %s", lang, row.Key)
			}
		}
	}
	for _, s := range allergen.Default().Substances() {
		for _, id := range s.Annex2 {
			if id != allergen.Ask && !draft.Has(listPhrases, "eu.annex2."+id) {
				t.Errorf("annex2.%s is not asked of every language", id)
			}
		}
	}
}
