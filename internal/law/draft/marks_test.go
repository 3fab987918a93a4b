package draft

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Each thing is denied by itself and no two together; the longest thing is meant; behind
// "or" stands what is denied after one to three words.
func TestEachDeniedByItself(t *testing.T) {
	joined := place.JoinedWords()
	things := indexed([]string{"nuts", "milk", "celery", "gluten", "sea salt", "sea", "tree nuts"})
	for text, want := range map[string][]string{
		"without nuts, milk or celery":      {"without nuts", "without milk", "without celery"},
		"no nuts or milk x gluten or milk":  {"no nuts x gluten or milk", "no milk x gluten or milk", "no nuts or milk x gluten", "no nuts or milk x milk"},
		"no nuts or tree nuts, sea or milk": {"no nuts", "no tree nuts", "no sea", "no milk"},
	} {
		var got []string
		for _, s := range apart(Spaced(text), things, joining(joined))[1:] {
			got = append(got, strings.TrimSpace(s))
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: %q", text, got)
		}
	}
	for words, want := range map[string]string{"sea salt": "sea salt", "sea bass": "sea", "sea": "sea", "tree frogs": "", "tree": "", "milkfree": "milk", "dustfree": ""} {
		for _, order := range [][]string{{"sea salt", "sea", "tree nuts", "milk"}, {"sea", "sea salt", "tree nuts", "milk"}} {
			thing, n := thingAt(strings.Fields(words), indexed(order))
			if thing != want || n != len(strings.Fields(want)) {
				t.Errorf("%q: %q of %d words", words, thing, n)
			}
		}
	}
	for text, want := range map[string]string{"no fuss or pectin": "no pectin", "no fuss of any or pectin": "no pectin", "no fuss of any sort or pectin": "", "no or pectin": ""} {
		if got := strings.TrimSpace(strings.Join(second(Spaced(text), joined), "|")); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
	d := begun(t, "us", nil)
	if n := d.Set.Nutrition.Nutrients[0]; !slices.Contains(d.things()[strings.Fields(strings.ToLower(n))[0]], strings.ToLower(n)) {
		t.Errorf("%s may be denied", n)
	}
}

// What a form denies: one to three words of three letters and more, each once.
func TestNounsOfDenials(t *testing.T) {
	for _, x := range []struct{ text, form, want string }{
		{"no egg", "no {x}", "egg"}, {"no ox", "no {x}", ""}, {"no egg, no egg", "no {x}", "egg|egg no|egg no egg"}, {"no one two three four", "no {x}", "one|one two|one two three"},
		{"one two three four free", "{x} free", "four|three four|two three four"}, {"eggfree oxfree eggfree", "{x}free", "egg"}, {"free", "{x}free", ""}, {"of egg", "no {x}", ""},
		{"for people with egg allergies", "for people with {x} allergies", "egg"}, {"bei Mandelallergie", "bei {x}allergie", "mandel"},
	} {
		if got := strings.Join(deniedIn(x.text, []string{x.form}), "|"); got != x.want {
			t.Errorf("%q by %q: %q", x.text, x.form, got)
		}
	}
}

// A juice goes by its fruit; another food of two words by its whole name and its last.
func TestNamesAreOfTheWhole(t *testing.T) {
	for name, want := range map[string][]string{"juice": {"juice"}, "salted butter": {"salted butter", "butter"}, "fig peel": {"fig peel", "peel", "fig"}, "soy tea": {"soy tea"}} {
		got := slices.Compact(slices.Sorted(slices.Values(namesOf(cook.Line{Name: name}))))
		if want = slices.Sorted(slices.Values(want)); !slices.Equal(got, want) {
			t.Errorf("%s: %q", name, got)
		}
	}
}

// The longest claim is told, the first of two as long; a form may need no nutrient; what
// is said of one thing apart is a claim too; a phrase that means another thing is none.
func TestClaimsOfATable(t *testing.T) {
	d := begun(t, "us", nil)
	table := *d.Set.Nutrition
	table.Forms, table.Nutrients, table.GoodForms, table.GoodNutrients = []string{"diet", "low {n}"}, []string{"sugar", "salt"}, nil, nil
	table.Words, table.Unless = []string{"sugarless sort", "sugarless", "light", "spare"}, []string{"light of day"}
	d.Set.Nutrition = &table
	for text, want := range map[string]string{"our diet jam": "diet", "a sugarless sort": "sugarless sort", "light and spare": "light", "the light of day": "", "low salt": "low salt", "low pectin": "", "low": "", "a salt": ""} {
		if got := d.claim(ownText{text: text}); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
	if got := d.claim(ownText{text: "low pectin or sugar", apart: []string{"low pectin", "low sugar", "low jam"}}); got != "low sugar" {
		t.Errorf("apart: %q", got)
	}
	if glance(" x ", "a z") || !glance(" xa ", "a z") || glance(" zo ", "zoo") {
		t.Error("a text without the letters can't say the words")
	}
}

// Every quantity is held against the declared one, within three per cent of it, and a
// quantity of the other kind against none, nought too (21 CFR 101.7, from memory).
func TestHeldAgainstTheDeclared(t *testing.T) {
	mass, volume := func(g float64) unit.Quantity { return unit.Quantity{Dim: unit.ByMass, Mass: unit.Grams(g)} }, func(ml float64) unit.Quantity { return unit.Quantity{Dim: unit.ByVolume, Volume: unit.ML(ml)} }
	least := unit.Quantity{Dim: unit.ByMass, Mass: 1}
	drop := unit.Quantity{Dim: unit.ByVolume, Volume: 1}
	for name, x := range map[string]struct {
		net     unit.Mass
		fluid   unit.Volume
		nominal unit.Volume
		q       unit.Quantity
		want    bool
	}{
		"three per cent more": {100 * unit.Gram, 0, 0, mass(103), true}, "three less": {100 * unit.Gram, 0, 0, mass(97), true}, "more still": {100 * unit.Gram, 0, 0, mass(103.1), false},
		"no mass": {0, unit.ML(250), 0, mass(0), false}, "no volume": {100 * unit.Gram, 0, 0, volume(0), false}, "size of the jar": {100 * unit.Gram, 0, unit.ML(250), volume(250), true},
		"no size": {0, unit.ML(250), 0, volume(0), false}, "the least mass": {1, 0, 0, least, true}, "the least volume": {0, 1, 0, drop, true}, "the least jar": {100 * unit.Gram, 0, 1, drop, true},
	} {
		p := &Draft{NetMass: x.net, NetVolume: x.fluid, Jar: cook.JarPlan{Jar: pantry.Jar{Nominal: x.nominal}}}
		if got := p.declares(x.q); got != x.want {
			t.Errorf("%s: %v", name, got)
		}
	}
	for id, cite := range map[string]string{"us": "21 U.S.C. 343(a)(1), (e)(2)", "eu": "Regulation (EU) 1169/2011 Art 7, 23"} {
		for _, net := range [][2]int64{{int64(340 * unit.Gram), 0}, {1, 0}, {0, 1}} {
			d := begun(t, id, func(r *cook.Result, _ *cook.JarPlan) { r.Batch.Name = "Plum jam 340 g, 500 g" })
			d.NetMass, d.NetVolume, d.L = unit.Mass(net[0]), unit.Volume(net[1]), nil
			d.Wordings()
			i := slices.IndexFunc(d.L, func(f diag.Diagnostic) bool { return f.Code == "quantity-in-text" })
			if i < 0 || d.L[i].Cite != cite || net[0] > 1 && !strings.HasPrefix(d.L[i].Message, `"500 g"`) {
				t.Errorf("%s, %v: %+v", id, net, d.L)
			}
		}
	}
}

// A price is written from one coin on; one too large to reckon a tenth of a penny of is
// written in pounds.
func TestPriceOfACoin(t *testing.T) {
	d := begun(t, "us-or", func(r *cook.Result, j *cook.JarPlan) { j.Price = unit.Money{Minor: 1, Currency: "USD"} })
	d.NetVolume = 1
	if d.Price(); textOf(d, label.Price) != "1¢" || !strings.HasSuffix(textOf(d, label.UnitPrice), " per fl oz") {
		t.Errorf("%q %q", textOf(d, label.Price), textOf(d, label.UnitPrice))
	}
	d = begun(t, "ni", func(r *cook.Result, j *cook.JarPlan) { j.Price = unit.Money{Minor: 1 << 60, Currency: "GBP"} })
	d.NetMass = 100 * unit.Gram
	if d.Price(); textOf(d, label.UnitPrice) != "£11,529,215,046,068,469.76 per 100 g" {
		t.Errorf("%q", textOf(d, label.UnitPrice))
	}
}

// The code names one allergen as it names more; of one jar sealed a case holds one.
func TestOneOfAKind(t *testing.T) {
	d := begun(t, "eu", func(r *cook.Result, j *cook.JarPlan) {
		r.Batch.Label.Stamp, r.Batch.Label.Words, j.Sealed = "Batch of one", "from our tree", 1
	})
	d.C.AllergenNames = []string{"celery"}
	if words := d.plainWords(); !strings.HasSuffix(words, d.Say.Say("eu.contains")+"celery") {
		t.Errorf("%q", words)
	}
	if d.Net = "100 g"; d.caseHolds() != 1 {
		t.Errorf("a case of %d", d.caseHolds())
	}
	d.Extras()
	if textOf(d, label.Stamp) != "Batch of one" || textOf(d, label.Words) != "from our tree" {
		t.Errorf("%q, %q", textOf(d, label.Stamp), textOf(d, label.Words))
	}
	for _, k := range []label.Kind{label.To, label.From} {
		if b, ok := d.C.Find(k); !ok || len(b.Runs) != 1 || !b.Runs[0].Bold {
			t.Errorf("%s: %+v", k, b)
		}
	}
}

// A name is cut before its product or what joins it, a subtitle stands for what is behind;
// "İ" grows when it is made small, and no place moves by it.
func TestNamesCut(t *testing.T) {
	for name, want := range map[string][2]string{"Q & jam": {"Q", "& jam"}, "Fruit jam": {"Fruit", "jam"}, "Black currant jelly": {"Black currant", "jelly"}, "Plum fruit spread": {"Plum", "fruit spread"}} {
		if title, sub := split(name); [2]string{title, sub} != want {
			t.Errorf("%q: %q, %q", name, title, sub)
		}
	}
	if title, sub := display(&batch.Batch{Name: "Fig jam", Label: batch.Label{Subtitle: " our tree "}}); title != "Fig" || sub != "our tree" {
		t.Errorf("%q, %q", title, sub)
	}
	if from, to, ok := FindWord("İncir rum x", "rum", false); !ok || from != 7 || to != 10 {
		t.Errorf("%d-%d %v", from, to, ok)
	}
	rows := []place.Product{{ID: "jam", Types: []string{"jam"}}, {ID: "extra", Types: []string{"jam"}, ByName: true}}
	for want, x := range map[string]struct {
		kind batch.ProductType
		says bool
	}{"jam": {batch.Jam, false}, "extra": {batch.Jam, true}, "": {batch.Chutney, true}} {
		if p, ok := ProductOf(rows, &batch.Batch{Product: x.kind}, func(place.Product) bool { return x.says }); p.ID != want || ok != (want != "") {
			t.Errorf("%v: %q, %v", x, p.ID, ok)
		}
	}
}

// Who is allergic to what is in the jar must not be told that it is for them: any
// allergen by any of its names, in English and German.
func TestForTheAllergic(t *testing.T) {
	for _, id := range []string{"us-or", "eu"} {
		for text, want := range map[string]bool{"for people with almond allergies": true, "bei Mandelallergie": true, "für Mandelallergiker": true, "for people with walnut allergies": false, "for people with almond trees": false} {
			d := begun(t, id, func(r *cook.Result, _ *cook.JarPlan) {
				r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: text}}
			})
			d.Allergy.Found = cook.Stated([]string{"almonds"}, "").Found
			d.L = nil
			d.Wordings()
			d.L = slices.DeleteFunc(d.L, func(x diag.Diagnostic) bool { return x.Code == "says-absent-ingredient" }) // the batch has no plums
			if (len(d.L) == 1 && d.L[0].Code == "free-from-claim" && d.L[0].Severity == diag.Error) != want || !want && len(d.L) > 0 {
				t.Errorf("%s, %q: %v", id, text, d.L)
			}
		}
	}
}
