package cook

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// potWith is a jam of the ingredients ("name: amount"), processed as the demo.
func potWith(t *testing.T, p *pantry.Pantry, list ...string) (*Result, []string) {
	t.Helper()
	b := demo(t)
	b.Ingredients = nil
	for _, s := range list {
		name, amount, _ := strings.Cut(s, ": ")
		b.Ingredients = append(b.Ingredients, ing(t, name, amount, ""))
	}
	r, l := Compute(b, nil, p)
	var codes []string
	for _, d := range l {
		codes = append(codes, d.Code)
	}
	return r, codes
}

func ownFruit(name string, ph float64) pantry.Ingredient {
	return pantry.Ingredient{Name: name, Class: "fruit", FruitClassEU: "general", WaterG: 88, SolubleG: 10, OtherSolidsG: 2, SugarsG: 8, PHLow: 3.5, PHHigh: ph, Allergens: []string{}}
}

// USDA Guide 1: pH 4.6. Fruit up to it is acid; up to 4.8 (own reading) with 1 %
// of lemon juice; a trace is one only up to its share of the acid fruit.
func TestAcidFromBothSides(t *testing.T) {
	for _, c := range []struct {
		ph    float64
		lemon bool
		code  string
	}{{4.6, false, ""}, {4.61, false, "low-acid"}, {4.61, true, ""}, {4.8, true, ""}, {4.81, true, "low-acid"}} {
		list := []string{"testfruit: 1 kg", "sugar: 1 kg"}
		if c.lemon {
			list = append(list, "lemon juice: 25 g")
		}
		p := pantry.Default().With([]pantry.Ingredient{ownFruit("testfruit", c.ph)}, nil)
		if _, codes := potWith(t, p, list...); slices.Contains(codes, "low-acid") != (c.code != "") {
			t.Errorf("pH %g, lemon %v: %v", c.ph, c.lemon, codes)
		}
	}
	// acid-traces.csv: nuts up to 12 % of the acid fruit; with none of it the fruit is told of.
	for nuts, want := range map[string]bool{"120 g": false, "121 g": true} {
		_, codes := potWith(t, pantry.Default(), "plums: 1 kg", "sugar: 1 kg", "walnuts: "+nuts)
		if slices.Contains(codes, "acid-unknown") != want {
			t.Errorf("%s of walnuts: %v", nuts, codes)
		}
	}
	r, codes := potWith(t, pantry.Default().With([]pantry.Ingredient{ownFruit("testfruit", 5)}, nil), "testfruit: 1 kg", "sugar: 1 kg", "walnuts: 300 g")
	if !slices.Contains(codes, "low-acid") || slices.Contains(codes, "acid-unknown") {
		t.Errorf("a fruit of pH 5: %v %v", codes, r.Keeping.Reasons)
	}
	if _, codes := potWith(t, pantry.Default(), "water: 1 kg", "sugar: 1 kg", "pectin: 50 g"); !slices.Contains(codes, "acid-unknown") {
		t.Errorf("no fruit: %v", codes)
	}
}

// A pH read before the batch was made, or with paper above 4.0, is none.
func TestReadingsOfPHThatDoNotCount(t *testing.T) {
	for _, c := range []struct {
		set  func(*batch.Cook)
		code string
	}{
		{func(k *batch.Cook) { k.PHDate = unit.Date{Year: 2026, Month: 6, Day: 13} }, "bad-ph-date"},
		{func(k *batch.Cook) { k.PHDate = unit.Date{Year: 2026, Month: 6, Day: 14} }, ""},
		{func(k *batch.Cook) { k.PHMeter, *k.PH = "paper strips", 4.1 }, "ph-strips"},
		{func(k *batch.Cook) { k.PHMeter, *k.PH = "paper strips", 4.0 }, ""},
		{func(k *batch.Cook) { *k.PH = 11 }, "bad-ph"},
	} {
		b := demo(t)
		b.Cook.PH = f(3.4)
		c.set(&b.Cook)
		r, l := compute(t, b)
		if r.PHMeasured != (c.code == "") || c.code != "" && !has(l, c.code) {
			t.Errorf("%q: measured %v, %v", c.code, r.PHMeasured, l)
		}
		if c.code != "" && r.PHHigh == *b.Cook.PH {
			t.Errorf("%s: the reading is used", c.code)
		}
	}
}

// The same substance from two ingredients is one, with both named; a maker's
// word for an absence counts where no table shows it.
func TestAllergensOfSeveralIngredients(t *testing.T) {
	p := pantry.Default().With([]pantry.Ingredient{{Name: "mystery mix", Class: "spice", WaterG: 10, SolubleG: 0, OtherSolidsG: 90}}, nil)
	r, _ := potWith(t, p, "plums: 1 kg", "butter: 5 g", "cream: 20 g", "mystery mix: 5 g", "honey: 50 g", "almonds: 20 g")
	a := r.Allergy()
	i := slices.IndexFunc(a.Found, func(f Found) bool { return f.ID == "milk" })
	if i < 0 {
		t.Fatalf("%+v", a.Found)
	}
	from := ""
	for _, e := range a.Found[i].From {
		from += e.Fact + ";"
	}
	if !strings.Contains(from, "butter") || !strings.Contains(from, "cream") {
		t.Errorf("milk from %s", from)
	}
	if a.None() || len(a.Honey) == 0 || a.Honey[0].How != Tabled {
		t.Errorf("%+v", a)
	}
	if names := strings.Join(a.Names(), ","); !strings.Contains(names, "milk") || !strings.Contains(names, "almond") {
		t.Errorf("%s", names)
	}
	if !(Allergy{}).None() || (Allergy{Unknown: []Unproven{{"x", ""}}}).None() || (Allergy{Words: []OwnWord{{"x", ""}}}).None() || (Allergy{Found: a.Found}).None() {
		t.Error("none is proven where something is open")
	}
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "plums", "1 kg", ""), ing(t, "house blend", "5 g", ""), ing(t, "pears", "100 g", "")}
	b.Ingredients[1].Allergens, b.Ingredients[2].Allergens = []string{}, []string{}
	r, _ = Compute(b, nil, pantry.Default())
	if c := r.Allergy().Confirmed; len(c) != 1 || c[0].Fact != "house blend" {
		t.Errorf("%+v", c)
	}
	if got := r.Allergy(); len(got.Unknown) != 0 {
		t.Errorf("%+v", got.Unknown)
	}
}

// Lot codes leave out what a preserve is, and what only joins words.
func TestLotsLeaveOutKindWords(t *testing.T) {
	day := unit.Date{Year: 2026, Month: 6, Day: 14}
	for name, want := range map[string]string{"A batch of my plum jam": "PL", "The pears in our butter": "PE", "No plum": "PL", "Jam": "", "Plum & the sloe": "PS", "with love": "LO"} {
		if got := strings.TrimPrefix(Lot(&batch.Batch{Name: name, Made: day}), "L26165"); strings.TrimPrefix(got, "-") != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
}

// Choi and Okos (ASHRAE) want each component: what is unknown of a solid is carbohydrate.
func TestSolidsOfAMixture(t *testing.T) {
	row := pantry.Ingredient{CarbG: 50, FibreG: 10, ProteinG: 5, FatG: 20}
	s := mixed(pantry.Solids{}, Line{Row: row, Mass: 100 * unit.Gram, Soluble: 60 * unit.Gram, Insoluble: 26 * unit.Gram})
	if got := fmt.Sprintf("%.1f %.1f %.1f %.1f %.1f", s.Carbohydrate, s.Fibre, s.Protein, s.Fat, s.Ash); got != "40.0 10.0 5.0 20.0 11.0" {
		t.Error(got)
	}
	s = mixed(pantry.Solids{}, Line{Row: pantry.Ingredient{CarbG: -1, FibreG: -1, ProteinG: -1, FatG: -1}, Mass: 100 * unit.Gram, Soluble: 60 * unit.Gram, Insoluble: 5 * unit.Gram})
	if s.Carbohydrate != 65 || s.Ash != 0 || s.Fat != 0 {
		t.Errorf("%+v", s)
	}
	s = mixed(pantry.Solids{}, Line{Row: pantry.Ingredient{CarbG: 0, FatG: 80}, Mass: 100 * unit.Gram, Insoluble: 82 * unit.Gram})
	if s.Carbohydrate != 0 || s.Fat != 80 || math.Abs(s.Ash-2) > 1e-9 {
		t.Errorf("%+v", s)
	}
}

// Jars: shares, words for differences, sizes without room, a long list of keys.
func TestJarsAtTheirLimits(t *testing.T) {
	b := demo(t)
	b.Fills = []batch.Fill{{Path: "fill[0]", Jar: "us8", Count: -1, Sealed: -1, Share: 3}, {Path: "fill[1]", Jar: "us8", Count: -1, Sealed: -1, Share: 1}}
	r, _ := compute(t, b)
	if got := float64(r.Jars[0].Count) / float64(max(1, r.Jars[1].Count)); got < 2.5 || got > 3.6 {
		t.Errorf("%d and %d jars", r.Jars[0].Count, r.Jars[1].Count)
	}
	b.Fills = []batch.Fill{{Path: "fill[0]", Jar: "us8", Count: -1, Sealed: -1, Headspace: 20 * unit.Inch}}
	if r, l := compute(t, b); r.Jars[0].Count != 0 || !has(l, "no-room-in-jar") {
		t.Errorf("%d jars without room", r.Jars[0].Count)
	}
	for off, want := range map[float64]string{0.3: "30 % more than", 1: "2 times", 2.4: "3 times", -0.3: "30 % less than"} {
		if got := against(off); got != want {
			t.Errorf("%g: %s", off, got)
		}
	}
	if came(Measured) != "weighed" || came(Estimated) != "computed" || jarCount(1) != "1 jar" || jarCount(2) != "2 jars" {
		t.Error("words")
	}
	var own []pantry.Jar
	for i := range mostJarKeys + 1 {
		own = append(own, pantry.Jar{Key: fmt.Sprintf("own%d", i), Nominal: unit.ML(200), Brimful: unit.ML(220), Mouth: unit.MM(50)})
	}
	builtIn := len(pantry.Default().Jars())
	for n, cut := range map[int]bool{0: false, mostJarKeys - builtIn: false, mostJarKeys + 1 - builtIn: true, mostJarKeys + 1: true} {
		c := &calc{p: pantry.Default().With(nil, own[:n])}
		if got := strings.HasSuffix(c.jarKeys(), "…"); got != cut {
			t.Errorf("%d own jars: %s", n, c.jarKeys())
		}
	}
	for want, j := range map[bool][]JarPlan{
		true:  {{How: Estimated}},
		false: {{How: Given}, {How: Estimated, Weighed: []unit.Mass{1}}, {How: Estimated, Declared: 1}, {How: Estimated, DeclText: "9 fl oz"}},
	} {
		for _, one := range j {
			if one.Planned() != want {
				t.Errorf("%+v: planned %v", one, !want)
			}
		}
	}
}

// A tested recipe is followed or not: each part at its least, something of the
// maker's own beside it.
func TestTestedRecipeFromBothSides(t *testing.T) {
	recipe, ok := pantry.Default().TestedRecipe("usda-blueberry-spice-jam")
	if !ok {
		t.Fatal("no recipe")
	}
	unlike := func(list ...string) string {
		b := demo(t)
		b.Ingredients = nil
		for _, s := range list {
			name, amount, _ := strings.Cut(s, ": ")
			b.Ingredients = append(b.Ingredients, ing(t, name, amount, ""))
		}
		r, _ := Compute(b, nil, pantry.Default())
		c := &calc{b: b, k: nobody(), p: pantry.Default(), r: r}
		c.sour = c.judgeAcid()
		return c.unlike(recipe)
	}
	whole := []string{"blueberries: 740 g", "sugar: 1100 g", "pectin: 50 g", "lemon juice: 15 g", "nutmeg: 1.1 g", "water: 177 g"}
	if why := unlike(whole...); why != "" {
		t.Errorf("the recipe itself: %s", why)
	}
	if why := unlike(append(whole[:len(whole):len(whole)], "house blend: 1 g")...); !strings.Contains(why, "house blend") {
		t.Errorf("an unknown food: %q", why)
	}
	if why := unlike(append(whole[:len(whole):len(whole)], "pumpkin: 100 g")...); !strings.Contains(why, "pumpkin") {
		t.Errorf("another food: %q", why)
	}
	if why := unlike(append(whole[:len(whole):len(whole)], "cinnamon: 1 g")...); why != "" {
		t.Errorf("a trace of a spice: %q", why)
	}
	acid := pantry.TestedRecipe{Products: []string{"jam"}, Main: []pantry.RecipePart{{Keys: []string{"plum"}, Grams: 1000}, {Keys: []string{"sugar_white"}, Grams: 1000}, {Keys: []string{"lemon_juice"}, Grams: 100}}}
	for lemon, bad := range map[string]bool{"84 g": true, "86 g": false} { // 0.85 of it
		b := demo(t)
		b.Ingredients = []batch.Ingredient{ing(t, "plums", "1000 g", ""), ing(t, "sugar", "1000 g", ""), ing(t, "lemon juice", lemon, "")}
		r, _ := Compute(b, nil, pantry.Default())
		c := &calc{b: b, k: nobody(), p: pantry.Default(), r: r}
		if why := c.unlike(acid); (why != "") != bad {
			t.Errorf("%s of lemon juice: %q", lemon, why)
		}
	}
	for plums, bad := range map[string]bool{"500 g": true, "800 g": false} { // 0.7 of it, by its share
		b := demo(t)
		b.Ingredients = []batch.Ingredient{ing(t, "plums", plums, ""), ing(t, "sugar", "1000 g", ""), ing(t, "lemon juice", "100 g", "")}
		r, _ := Compute(b, nil, pantry.Default())
		c := &calc{b: b, k: nobody(), p: pantry.Default(), r: r}
		if why := c.unlike(acid); (why != "") != bad {
			t.Errorf("%s of plums: %q", plums, why)
		}
	}
}

// The same ingredient twice: money of one currency adds up, of two does not.
func TestCostsOfOneIngredientTwice(t *testing.T) {
	for currency, want := range map[string]int64{"USD": 500, "EUR": 200} {
		b := demo(t)
		b.Ingredients = []batch.Ingredient{ing(t, "plums", "1 kg", ""), ing(t, "plums", "1 kg", "")}
		b.Ingredients[0].Cost, b.Ingredients[1].Cost = unit.Money{Minor: 200, Currency: "USD"}, unit.Money{Minor: 300, Currency: currency}
		if r, _ := Compute(b, nil, pantry.Default()); len(r.Lines) != 1 || r.Lines[0].Cost.Minor != want {
			t.Errorf("%s: %+v", currency, r.Lines[0].Cost)
		}
	}
	p := pantry.Default().With([]pantry.Ingredient{{Name: "house pectin", Class: "gelling", WaterG: 5, SolubleG: 80, OtherSolidsG: 15, Contains: []pantry.Part{{Name: "milk sugar"}}}}, nil)
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "house pectin", "50 g", "")}
	if r, _ := Compute(b, nil, p); len(r.Lines[0].Contains) != 1 {
		t.Errorf("%+v", r.Lines[0].Contains)
	}
	b.Ingredients[0].Contains = []pantry.Part{{Name: "dextrose"}, {Name: "pectin"}}
	if r, _ := Compute(b, nil, p); len(r.Lines[0].Contains) != 2 {
		t.Errorf("%+v", r.Lines[0].Contains)
	}
}

// Unknown things in the cupboard are told where the kitchen file has them.
func TestUnknownSupplies(t *testing.T) {
	k, _ := batch.ParseKitchen("kitchen.toml", []byte("[supplies.lids]\n\"70-450 CX\" = 3\n[supplies.jars]\nus9 = 4\n"), nil)
	_, l := Compute(demo(t), k, pantry.Default())
	n := 0
	for _, d := range l {
		if d.Code == "unknown-supply" {
			n++
			if d.File != "kitchen.toml" {
				t.Errorf("%+v", d)
			}
		}
	}
	if n != 2 {
		t.Errorf("%d told", n)
	}
	if r, _ := Compute(demo(t), nil, pantry.Default()); r.Kitchen.Supplies.Tags != -1 || r.Kitchen.Supplies.Boxes != -1 || r.Kitchen.Supplies.Ribbon != -1 {
		t.Errorf("%+v", r.Kitchen.Supplies)
	}
}

// Readings that contradict the recipe are set aside, and no sugar is assumed in
// their place.
func TestRejectedReadings(t *testing.T) {
	for _, set := range []func(*batch.Batch){
		func(b *batch.Batch) { b.Cook.FinishedPot = 1 * unit.Kilogram },
		func(b *batch.Batch) { b.Cook.FinishedPot = 9 * unit.Kilogram },
		func(b *batch.Batch) { b.Cook.Brix = f(0.5) },
		func(b *batch.Batch) { b.Cook.Brix = f(30) },
		func(b *batch.Batch) { b.Cook.TempC = f(150) },
	} {
		b := demo(t)
		set(b)
		r, _ := compute(t, b)
		if r.Keeping.Class != Cold || r.Yield.How != Estimated || !strings.Contains(r.Keeping.Reasons[0].Fact, "can't be right") {
			t.Errorf("%s: %+v", r.YieldRule, r.Keeping.Reasons)
		}
	}
	b := demo(t)
	b.Ingredients = append(b.Ingredients, ing(t, "nobody knows it", "3 cups", ""))
	b.Cook.FinishedPot = 3 * unit.Kilogram
	if r, _ := Compute(b, nil, pantry.Default()); r.Yield.How != Measured || r.YieldRule != "weighed pot" || r.Yield.Mass != 3*unit.Kilogram {
		t.Errorf("an incomplete recipe is no reason against a scale: %+v %s", r.Yield, r.YieldRule)
	}
	if h := Learn([]*Result{{Yield: Amount{grams(100), Measured}, unweighed: 0}, {Yield: Amount{grams(100), Measured}, unweighed: 100}, {Yield: Amount{grams(110), Measured}, unweighed: 100}}); h.Pots != 2 {
		t.Errorf("%+v", h)
	}
}
