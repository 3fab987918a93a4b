package pantry

import (
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// ASHRAE Handbook Refrigeration, thermal properties of foods, after Choi and
// Okos 1986: the density of each component alone, in kg/m³, worked from the
// printed coefficients.
func TestMixDensityOfEachComponent(t *testing.T) {
	for _, c := range []struct {
		name   string
		s      Solids
		at0    float64
		at20   float64
		within float64
	}{
		{"water", Solids{Water: 3}, 997.18, 995.74, 0.01}, {"carbohydrate", Solids{Carbohydrate: 3}, 1599.1, 1592.89, 0.01},
		{"fibre", Solids{Fibre: 3}, 1311.5, 1304.18, 0.01}, {"protein", Solids{Protein: 3}, 1329.9, 1319.53, 0.01},
		{"fat", Solids{Fat: 3}, 925.59, 917.24, 0.01}, {"ash", Solids{Ash: 3}, 2423.8, 2418.19, 0.01},
	} {
		about(t, c.name+" at 0 °C", MixDensity(c.s, 0), c.at0, c.within)
		about(t, c.name+" at 20 °C", MixDensity(c.s, 20), c.at20, c.within)
	}
	both := MixDensity(Solids{Water: 50, Fat: 50}, 20)
	about(t, "half and half", both, 100/(50/995.74+50/917.24), 0.01)
	if MixDensity(Solids{}, 20) != 0 || MixDensity(Solids{Water: 1}, -300) != MixDensity(Solids{Water: 1}, -40) {
		t.Error("no food has a density, or the range has no end")
	}
}

// Norrish 1966: what has inverted lowers water activity; pure water is 1.
func TestWaterActivityAtItsEnds(t *testing.T) {
	if WaterActivity(0, 0) != 1 || WaterActivity(0, 1) != 1 || WaterActivity(-5, 0) != 1 {
		t.Error("pure water")
	}
	if a, b := WaterActivity(65, 0), WaterActivity(65, 0.5); !(b < a-0.005) || WaterActivity(65, 2) != WaterActivity(65, 1) {
		t.Errorf("%g, half inverted %g", a, b)
	}
}

// 12 oz counts as a pint, 24 oz as a quart (Kansas State University, You Asked
// It, 19 May 2022); a process of an unknown size fits no jar.
func TestMostJar(t *testing.T) {
	for words, ml := range map[string]float64{"half-pint": 260, "half-pint or pint": 520, "quart": 1010, "bucket": 0} {
		if got := (Process{Jar: words}).MostJar(); got != unit.ML(ml) {
			t.Errorf("%s: %g ml", words, got.ML())
		}
	}
}

// The tables' own rows, each read whole.
func TestFinishAndMethodAreFound(t *testing.T) {
	p := Default()
	for _, c := range []struct {
		kind, method, name string
		ok                 bool
	}{
		{"marmalade", "long boil", "long boil", true}, {"butter", "long boil", "fruit butter", true}, {"butter", "added pectin", "added pectin", true},
		{"jam", "added pectin", "added pectin", true}, {"jam", "", "", false}, {"curd", "", "curd", true}, {"relish", "long boil", "long boil", true},
	} {
		if b, ok := p.Boil(c.kind, c.method); ok != c.ok || b.Name != c.name {
			t.Errorf("%s %s: %+v %v", c.kind, c.method, b, ok)
		}
	}
	// The table of measures ends at 8000 ft with the USDA's 205 °F; above stands the computed one.
	for ft, f := range map[float64]float64{0: 220, 8000: 205} {
		tC := (f - 32) / 1.8
		alt := unit.Length(ft * float64(unit.Foot))
		if !p.Finished(tC, alt) || p.Finished(tC-1.2, alt) {
			t.Errorf("%g °F at %g ft", f, ft)
		}
	}
	if !p.Finished(BoilingPoint(10_000*unit.Foot)+8/1.8, 10_000*unit.Foot) || p.Finished(90, 10_000*unit.Foot) {
		t.Error("at 10 000 ft")
	}
}

// OIV Table I and ICUMSA reach from 10 to 30 °C, ends included; Brown from 40 to 80 °Brix.
func TestReadingsAtTheEndsOfTheTables(t *testing.T) {
	p := Default()
	for c, want := range map[float64]bool{10: true, 30: true, 9.99: false, 30.01: false} {
		if corr, ok := p.BrixTempCorrection(60, c); ok != want || !ok && corr != 0 {
			t.Errorf("%g °C: %g %v", c, corr, ok)
		}
	}
	if corr, ok := p.BrixTempCorrection(60, 20); !ok || corr != 0 {
		t.Errorf("at 20 °C %g", corr)
	}
	if _, ok := (&Pantry{}).BrixTempCorrection(60, 20); ok {
		t.Error("no table corrects")
	}
	if p.boiling[0] != (point{0, 0}) {
		t.Errorf("pure water boils %v above itself", p.boiling[0])
	}
	top := p.boiling[len(p.boiling)-1]
	if b, ok := p.BrixAtBoilingPoint(BoilingPoint(0)+top.y-1e-9, 0); !ok || math.Abs(b-top.x) > 0.01 {
		t.Errorf("the end of the table: %g %v", b, ok)
	}
	if b, ok := p.BrixAtBoilingPoint(BoilingPoint(0)+top.y+0.01, 0); ok || b != 0 {
		t.Errorf("beyond it: %g %v", b, ok)
	}
}

// "pepper" is asked about; words of its kind, of its form or of its amount
// settle it, at the sizes the table says.
func TestAmbiguousIsSettledByAmounts(t *testing.T) {
	a, ok := Default().Ambiguous("Pepper", "")
	if !ok || len(a.Choices) < 2 {
		t.Fatal("pepper is settled")
	}
	for _, c := range []struct{ name, form string }{{"pepper", "freshly ground"}, {"bell pepper", ""}, {"salt", ""}, {"peppers", "sweet"}} {
		if _, ok := Default().Ambiguous(c.name, c.form); ok {
			t.Errorf("%s %s is asked about", c.name, c.form)
		}
	}
	if _, ok := Default().Ambiguous("fresh pepper", ""); !ok {
		t.Error("a word of its state settles pepper")
	}
	by := Ambiguous{By: []string{"small", "large"}}
	for g, want := range map[float64]bool{0: false, 0.1: true, 15: true, 15.1: false, 29.9: false, 30: true} {
		if by.SettledBy(g, false) != want {
			t.Errorf("%g g: %v", g, !want)
		}
	}
	if (Ambiguous{By: []string{"large"}}).SettledBy(5, false) || (Ambiguous{By: []string{"small"}}).SettledBy(500, false) || by.SettledBy(5, true) || !(Ambiguous{By: []string{"count"}}).SettledBy(0, true) {
		t.Error("another amount settles it")
	}
}

// 21 CFR 101.30: single-strength grape juice has 16 °Brix. A juice has the
// fruit's sugar in the fruit's water, and no piece, fibre or refuse.
func TestJuiceOfAFruit(t *testing.T) {
	p := Default()
	fruit, _ := p.Ingredient("grapes")
	for _, words := range []string{"grape juice", "grapes"} {
		j, ok := p.Juice(words)
		if !ok || j.Class != "juice" || j.Name != "grape juice" {
			t.Fatalf("%s: %+v", words, j)
		}
		about(t, "soluble solids", j.SolubleG, 100*fruit.SolubleG/(fruit.WaterG+fruit.SolubleG), 1e-9)
		about(t, "water", j.WaterG+j.SolubleG, 100, 1e-9)
		if j.OtherSolidsG != 0 || j.PieceG != 0 || j.TspG != 0 || j.TbspG != 0 || j.FibreG != 0 || j.RefusePct != 0 || j.Cup2G != 0 {
			t.Errorf("%+v", j)
		}
		about(t, "a cup", j.CupG, Density(j.SolubleG, 20)*236.588/1000, 0.01)
	}
	if _, ok := p.Juice("onions"); ok {
		t.Error("an onion gives a fruit juice")
	}
	if g, ok := p.Ingredient("nothing juice"); ok || g.Key != "" {
		t.Errorf("%+v", g)
	}
}

// Own rows lie over the built-in ones: what they leave open comes from below.
func TestOwnRowsLieOver(t *testing.T) {
	base := Default()
	if base.With(nil, nil) != base {
		t.Error("nothing laid over makes another pantry")
	}
	p := base.With([]Ingredient{{Name: "Apricots, dried", WaterG: -1, SolubleG: 70, OtherSolidsG: -1, SugarsG: -1}}, nil)
	below, _ := base.Ingredient("dried apricots")
	g, ok := p.Ingredient("dried apricots")
	if !ok || !g.Own || g.SolubleG != 70 || g.SulphiteCheck != below.SulphiteCheck || !below.SulphiteCheck {
		t.Errorf("%+v", g)
	}
	q := base.With(nil, []Jar{{Key: "own", Nominal: unit.ML(200), Circumference: unit.MM(math.Pi * 70)}, {Key: "two", Nominal: unit.ML(200), Diameter: unit.MM(70)}})
	for _, key := range []string{"own", "two"} {
		j, ok := q.Jar(key)
		if !ok || !j.Measured || math.Abs(j.Diameter.MM()-70) > 0.01 || math.Abs(j.Circumference.MM()-70*math.Pi) > 0.01 {
			t.Errorf("%s: %+v", key, j)
		}
	}
	parts := []Part{{Name: "apple"}}
	if got := over(Ingredient{Contains: parts}, Ingredient{Contains: []Part{{Name: "pear"}}}).Contains; len(got) != 1 || got[0].Name != "apple" {
		t.Errorf("%v", got)
	}
	if got := over(Ingredient{}, Ingredient{Contains: parts}).Contains; len(got) != 1 {
		t.Errorf("%v", got)
	}
}

// Jars by the words of the trade; a litre is 1000 ml, and the brimful volume of
// the table is the middle of its range.
func TestJarsByTheWordsOfTheTrade(t *testing.T) {
	p := Default()
	one := p.With(nil, []Jar{{Key: "big", Description: "big", Nominal: unit.ML(1000), Brimful: unit.ML(1050), Mouth: unit.MM(60)}, {Key: "odd", Description: "odd", Nominal: 9 * unit.FluidOunce, Brimful: unit.ML(300), Mouth: unit.MM(60)}})
	for words, key := range map[string]string{"1 l": "big", "100 cl": "big", "1000 ml": "big", "9 oz": "odd", "half-pint": "us8", "8-ounce jars": "us8"} {
		if j, ok := one.Jar(words); !ok || j.Key != key {
			t.Errorf("%s: %q %v", words, j.Key, ok)
		}
	}
	tableOf("jars").each(func(r row) {
		j, _ := p.Jar(r.text("key"))
		about(t, j.Key, j.Brimful.ML(), (r.number("brimful_ml_low", 0)+r.number("brimful_ml_high", 0))/2, 0.01)
	})
	own := Jar{Measured: true, Brimful: unit.ML(250), Nominal: unit.ML(212), NamedBy: "fill", Mouth: unit.MM(50)}
	about(t, "a measured jar holds its brimful volume", own.FillVolume(0).ML(), 250, 0.01)
	about(t, "one nobody measured its name", Jar{Brimful: unit.ML(250), Nominal: unit.ML(212), NamedBy: "fill", Mouth: unit.MM(50)}.FillVolume(unit.Inch/4).ML(), 212, 0.01)
	about(t, "one named by its brim", Jar{Brimful: unit.ML(250), Nominal: unit.ML(212), NamedBy: "brimful", Mouth: unit.MM(50)}.FillVolume(0).ML(), 250, 0.01)
}

func TestWordsForAsBought(t *testing.T) {
	if rest, yes := AsBought("plums, with pits"); !yes || rest != "plums" {
		t.Errorf("%q %v", rest, yes)
	}
	for _, no := range []string{"plums", "plums with pitted dates", "bruttox"} {
		if rest, yes := AsBought(no); yes || rest != no {
			t.Errorf("%q %q %v", no, rest, yes)
		}
	}
	peel := Ingredient{Class: "fruit", RefusePct: 30, Refuse: "Peel and seeds"}
	core := Ingredient{Class: "fruit", RefusePct: 30, Refuse: "Core"}
	if peel.Whole("whole orange") || !core.Whole("whole pineapple") || core.Whole("pineapple") || (Ingredient{Class: "fruit", RefusePct: 19}).Whole("whole apple") || (Ingredient{Class: "spice", RefusePct: 30}).Whole("whole cloves") {
		t.Error("whole of what")
	}
}

// A word after a count is a piece of this food, or not: 1 clove of garlic, 1
// furlong of nothing.
func TestPiecesOfAFood(t *testing.T) {
	garlic, _ := Default().Ingredient("garlic")
	apples, _ := Default().Ingredient("apples")
	for piece, want := range map[string]bool{"clove": true, "cloves": true, "Zehe": true, "large": true, "": true, "furlong": false} {
		if ok, odd := garlic.CountsBy(piece, "garlic"); ok != want || !ok && odd != piece {
			t.Errorf("%s of garlic: %v %q", piece, ok, odd)
		}
	}
	if ok, _ := apples.CountsBy("medium apples", "apples"); !ok {
		t.Error("medium apples")
	}
	if m, ok := Default().Measure("pinch", garlic); !ok || m.ML != 0.308 {
		t.Errorf("%+v", m)
	}
	if _, ok := Default().Measure("furlong", garlic); ok {
		t.Error("a furlong is a measure")
	}
}

// Tables refuse what is no number, at their limits too; long words are cut, not
// looked through for ever.
func TestTablesAtTheirLimits(t *testing.T) {
	for s, want := range map[string]float64{"1000000000": 1e9, "-1000000000": -1e9, "": 7, "1000000001": 7, "x": 7, "NaN": 7} {
		tb := &table{name: "x", col: map[string]int{"v": 0}, rows: [][]string{{s}}}
		if got := (row{tb, 0}).number("v", 7); got != want || (tb.err != nil) != (want == 7 && s != "") {
			t.Errorf("%q: %g %v", s, got, tb.err)
		}
	}
	long := strings.Repeat("plum ", 100)
	if n := len(tokens(long)); n != 40 {
		t.Errorf("%d words of a long text", n)
	}
	if got := Default().Suggest("plumz"); len(got) == 0 || len(got) > 3 || got[0] != "plums" {
		t.Errorf("%v", got)
	}
	if got := Default().Suggest("qqqq"); len(got) != 0 {
		t.Errorf("%v", got)
	}
	if got := Default().SuggestRecipes("zzz"); len(got) != 0 {
		t.Errorf("%v", got)
	}
	if got := Default().SuggestRecipes("strawberry jam"); len(got) == 0 || !slices.ContainsFunc(got, func(s string) bool { return strings.Contains(s, "strawberr") }) {
		t.Errorf("%v", got)
	}
	for stem, want := range map[string]bool{"Ei": false, "Erd": true} {
		if _, _, ok := (Names{Label: "x1", Singular: "x2", Stem: stem}).Find(stem + "zeug"); ok != want {
			t.Errorf("a stem of %q: %v", stem, ok)
		}
	}
	if from, to, ok := (Names{Label: "plums"}).Find("plumssauce"); ok || from != 0 || to != 0 {
		t.Errorf("%d %d %v", from, to, ok)
	}
}

// Rows of boil.csv that say too little or too much are told by line.
func TestNeverRowsByKeyAndWord(t *testing.T) {
	p := Default()
	for _, c := range []struct {
		key, kind, text string
		want            bool
	}{{"", "", "pumpkin butter", true}, {"", "", "plum jam", false}, {"", "", "cream of tartar", false}, {"", "", "cream", true}, {"strawberry", "fruit", "strawberries", false}, {"", "meat", "", true}, {"", "sugar", "", false}} {
		if x, ok := p.Never(c.key, c.kind, c.text); ok != c.want {
			t.Errorf("%q: %v %+v", c.text, ok, x)
		}
	}
	for _, x := range p.never {
		for _, k := range x.Keys {
			if _, ok := p.Never(k, ""); !ok {
				t.Errorf("%s is not kept off the shelf", k)
			}
		}
		if len(x.Classes) > 0 {
			if _, ok := p.Never("", x.Classes[0]); !ok {
				t.Errorf("kind %s", x.Classes[0])
			}
		}
	}
	if len(p.UnsafeMethods()) < 5 {
		t.Errorf("%d unsafe methods", len(p.UnsafeMethods()))
	}
}
