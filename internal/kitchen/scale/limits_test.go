package scale

import (
	"math"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Amounts as a scale or a cupboard shows them, each step from both sides. 16
// tablespoons to the cup, 3 teaspoons to the tablespoon: NIST Handbook 44,
// Appendix C. The steps are ours.
func TestAmountsFromBothSides(t *testing.T) {
	for g, want := range map[float64]string{9.94: "9.9 g", 10: "10 g", 999: "999 g", 1000: "1000 g", 1002: "1000 g", 1003: "1005 g", 9994: "9995 g", 10_000: "10.00 kg", 12_345: "12.35 kg"} {
		if got := unit.Grams(g).OnScale(unit.Metric); got != want {
			t.Errorf("%g g: %s, want %s", g, got, want)
		}
	}
	for ml, want := range map[float64]string{9.94: "9.9 ml", 10: "10 ml", 49.4: "49 ml", 50: "50 ml", 50.6: "50 ml", 52: "50 ml", 53: "55 ml", 999: "1000 ml", 1000: "1 l", 1234: "1.23 l", 1236: "1.24 l"} {
		if got := metric(unit.ML(ml)); got != want {
			t.Errorf("%g ml: %s, want %s", ml, got, want)
		}
	}
	for _, c := range []struct {
		v    unit.Volume
		want string
	}{
		{unit.Cup / 4, "1/4 cup"}, {unit.Cup/4 - unit.Teaspoon/4, "1/4 cup"}, {unit.Cup/4 - unit.Teaspoon/4 - 1, "3 tbsp + 2 1/2 tsp"},
		{unit.Cup, "1 cup"}, {unit.Cup * 5 / 4, "1 1/4 cups"}, {unit.Cup + unit.Tablespoon, "1 cup + 1 tbsp"}, {20*unit.Cup + unit.Tablespoon, "20 cups"},
		{unit.Tablespoon, "1 tbsp"}, {unit.Tablespoon - unit.Teaspoon/4, "1 tbsp"}, {unit.Tablespoon - unit.Teaspoon/4 - 1, "2 3/4 tsp"}, {2*unit.Tablespoon + unit.Teaspoon/2, "2 tbsp + 1/2 tsp"},
		{unit.Teaspoon / 8, "1/8 tsp"}, {unit.Teaspoon / 17, "a pinch"}, {0, ""},
	} {
		if got := Cups(c.v); got != c.want {
			t.Errorf("%g ml: %s, want %s", c.v.ML(), got, c.want)
		}
	}
	for n, want := range map[float64]string{0.1: "1/4 eggs", 2.9: "3 eggs", 2.7: "2 3/4 eggs", 3: "3 eggs", 3.3: "3 1/2 eggs"} {
		if got := pieces(n, "eggs"); got != want {
			t.Errorf("%g: %s, want %s", n, got, want)
		}
	}
	if got := pieces(2, ""); got != "2" {
		t.Errorf("%q", got)
	}
	for _, c := range []struct {
		n, den int
		want   string
	}{{2, 4, "1/2"}, {4, 8, "1/2"}, {6, 8, "3/4"}, {9, 4, "2 1/4"}, {8, 4, "2"}, {0, 4, "0"}} {
		if got := fraction(c.n, c.den); got != c.want {
			t.Errorf("%d/%d: %s", c.n, c.den, got)
		}
	}
}

// An amount is said as it was written: counted, by measure, or of what was
// weighed the cups beside it (USDA SR28: 220 g of brown sugar, packed, to the cup).
func TestAmountsAsWritten(t *testing.T) {
	b := berry(t)
	b.Ingredients = append(b.Ingredients, ing(t, "lemons", "3 lemons"), ing(t, "brown sugar", "500 g"))
	b.Fills = []batch.Fill{{Jar: "us8", Count: 7, Sealed: 7}}
	r, _ := cook.Compute(b, &batch.Kitchen{Units: unit.US}, pantry.Default())
	plan := &Plan{Factor: 2, Pot: 3 * unit.Litre}
	for name, want := range map[string]string{"lemons": "6 lemons", "blackberries": "18 cups", "brown sugar": "4 1/2 cups + 1 tbsp"} {
		i := slices.IndexFunc(r.Lines, func(ln cook.Line) bool { return strings.Contains(ln.Name, strings.TrimSuffix(name, "s")) })
		if i < 0 {
			t.Fatalf("no %s in %v", name, r.Lines)
		}
		if got := plan.measure(r, r.Lines[i], 2*r.Lines[i].Mass, unit.US); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	third := &Plan{Factor: 1.0 / 3}
	lemon := r.Lines[slices.IndexFunc(r.Lines, func(ln cook.Line) bool { return ln.Key == "lemon" })]
	if got := third.measure(r, lemon, lemon.Mass/3, unit.US); got != "1 lemons" {
		t.Errorf("%q", got)
	}
	b.Ingredients = append(b.Ingredients, ing(t, "white sugar", "500 g"), ing(t, "ground cinnamon", "6 g")) // sugar by measure and by weight; 2.6 g of cinnamon to the teaspoon (USDA SR28)
	r, _ = cook.Compute(b, &batch.Kitchen{Units: unit.US}, pantry.Default())
	for _, ln := range r.Lines {
		want, asked := map[string]string{"sugar_white": "", "cinnamon": "1 tbsp + 1 1/2 tsp"}[ln.Key]
		if got := plan.measure(r, ln, 2*ln.Mass, unit.US); asked && got != want {
			t.Errorf("%s: %q, want %q", ln.Name, got, want)
		}
	}
	if got := plan.PotText(unit.Metric, 3) + ", " + plan.PotText(unit.US, 2); got != "3.000 l, 3.17 quarts" {
		t.Error(got)
	}
}

func TestListsOfJarsAtTheirLimits(t *testing.T) {
	if _, l := Parse("1 x " + strings.Repeat("a", 996)); l.HasErrors() {
		t.Errorf("1000 letters: %v", l)
	}
	if _, l := Parse("1 x " + strings.Repeat("a", 997)); !has(l, "bad-jars") {
		t.Error("1001 letters are taken")
	}
	if ws, l := Parse("10000 x us8"); len(ws) != 1 || l.HasErrors() {
		t.Errorf("%v %v", ws, l)
	}
	if ws, _ := Parse("10001 x us8"); len(ws) != 0 {
		t.Errorf("%v", ws)
	}
}

// planOf scales the berry jam to jars of 8 fl oz.
func planOf(t *testing.T, n int, set func(*batch.Batch)) (*Plan, *cook.Result, diag.List) {
	t.Helper()
	b := berry(t)
	b.Fills = []batch.Fill{{Jar: "us8", Count: 7, Sealed: 7}}
	if set != nil {
		set(b)
	}
	r, _ := cook.Compute(b, nil, pantry.Default())
	p, l := Scale(r, []Want{{n, "us8"}}, pantry.Default())
	if p == nil {
		t.Fatal(l)
	}
	return p, r, l
}

// Money scales with the recipe and is shared out by weight; what has no price
// is named, water is not.
func TestCostsOfAScaledBatch(t *testing.T) {
	usd := func(c int64) unit.Money { return unit.Money{Minor: c, Currency: "USD"} }
	p, _, l := planOf(t, 14, func(b *batch.Batch) {
		b.Ingredients = append(b.Ingredients, ing(t, "water", "1 cup"), ing(t, "lemon juice", "30 g"), ing(t, "cinnamon", "2 g"))
		b.Ingredients[0].Cost, b.Ingredients[1].Cost, b.Ingredients[3].Cost = usd(900), usd(1), unit.Money{Minor: 5, Currency: "EUR"}
	})
	want := int64(math.Round(900*p.Factor)) + int64(math.Round(p.Factor))
	if p.Cost.Minor != want || p.Cost.Currency != "USD" || strings.Join(p.Unpriced, ",") != "cinnamon" || !has(l, "cost-incomplete") {
		t.Errorf("%+v, want %d; unpriced %v", p.Cost, want, p.Unpriced)
	}
	if got := p.Lines[1].Cost; got != usd(int64(math.Round(p.Factor))) {
		t.Errorf("a cent becomes %+v", got)
	}
	if p.Batch.Ingredients[0].Cost.Minor != int64(math.Round(900*p.Factor)) {
		t.Errorf("%+v", p.Batch.Ingredients[0].Cost)
	}
	j := p.Jars[0]
	if share := float64(j.Cost.Minor) / float64(p.Cost.Minor); math.Abs(share-j.Fill.Grams()/p.Yield.Grams()) > 0.001 {
		t.Errorf("a jar costs %.3f of it", share)
	}
	if p, _, _ := planOf(t, 14, nil); p.Cost.Currency != "" || p.Unpriced != nil {
		t.Errorf("%+v %v", p.Cost, p.Unpriced)
	}
}

// Weighed jars of the size are believed over the computed fill; a scaled batch
// has its jars counted and none checked.
func TestScaledJars(t *testing.T) {
	p, _, _ := planOf(t, 14, func(b *batch.Batch) { b.Fills[0].Net = []unit.Mass{300 * unit.Gram, 310 * unit.Gram} })
	if j := p.Jars[0]; j.Fill != 305*unit.Gram || j.How != cook.Measured {
		t.Errorf("%+v", j)
	}
	if p, r, _ := planOf(t, 14, nil); p.Jars[0].How != cook.Estimated || p.Jars[0].Fill != r.FillMass(p.Jars[0].Jar) {
		t.Errorf("%+v", p.Jars[0])
	}
	if f := p.Batch.Fills[0]; f.Count != 14 || f.Sealed != -1 || f.Jar != "us8" {
		t.Errorf("%+v", f)
	}
}

// USDA AIB 539 (rev. 1994): one batch at a time. Sizes from both sides.
func TestAdviceFromBothSides(t *testing.T) {
	b := berry(t)
	r, _ := cook.Compute(b, nil, pantry.Default())
	for _, c := range []struct {
		factor  float64
		batches int
		code    string
	}{{1, 1, ""}, {1.01, 1, ""}, {1.02, 2, ""}, {1.25, 2, ""}, {1.26, 2, "large-batch"}, {2, 2, "large-batch"}, {2.01, 2, "large-batch"}, {2.02, 3, "large-batch"}, {0.25, 1, ""}, {0.24, 1, "small-batch"}} {
		p := &Plan{Factor: c.factor}
		var l diag.List
		p.advise(r, &l)
		if p.Batches != c.batches || (c.code != "") != (len(l) > 0) || c.code != "" && !has(l, c.code) {
			t.Errorf("%g times: %d batches, %v", c.factor, p.Batches, l)
		}
	}
	r.Batch.Product = batch.Chutney
	var l diag.List
	if (&Plan{Factor: 1.5}).advise(r, &l); has(l, "large-batch") {
		t.Error("chutney needs no set")
	}
	for _, litres := range []float64{12, 12.1} {
		var l diag.List
		(&Plan{Factor: 1, Pot: unit.ML(1000 * litres)}).advise(r, &l)
		if has(l, "large-pot") != (litres > 12) || litres > 12 && !strings.Contains(l[0].Message, "about 12 l") {
			t.Errorf("%g l: %v", litres, l)
		}
	}
	// The pot: foam times the weight at the density of its own syrup before the boil.
	p := &Plan{Factor: 2}
	p.pot(r)
	brix := 100 * r.Soluble.Grams() / (r.Input.Grams() - r.Insoluble.Grams())
	if want := foam * 2 * r.Input.Grams() / pantry.Density(brix, 20) * 1000; math.Abs(p.Pot.ML()-want) > 1 || p.Input.Grams() != 2*r.Input.Grams() {
		t.Errorf("%g ml, want %g", p.Pot.ML(), want)
	}
}

func TestATonneIsTooMuch(t *testing.T) {
	r := &cook.Result{Batch: berry(t), Input: unit.Mass(1e6) * unit.Gram}
	for f, want := range map[float64]bool{1: false, 1.0001: true} {
		var l diag.List
		p := &Plan{Factor: f}
		if p.scaled(r, &l); has(l, "too-much") != want {
			t.Errorf("%g tonnes: %v", f, l)
		}
	}
	var l diag.List
	if (&Plan{Factor: 1}).scaled(&cook.Result{Batch: berry(t)}, &l); !has(l, "too-much") {
		t.Error("nothing is scaled")
	}
}

// A jar whose headspace takes all its room is told, with its key.
func TestNoRoomInAJar(t *testing.T) {
	r, _ := cook.Compute(berry(t), nil, nil)
	p := pantry.Default().With(nil, []pantry.Jar{{Key: "thimble", Description: "thimble", Nominal: unit.ML(5), Brimful: unit.ML(5), Mouth: unit.MM(60)}})
	if _, l := Scale(r, []Want{{1, "thimble"}}, p); !has(l, "no-room-in-jar") {
		t.Errorf("%v", l)
	}
	if _, l := Scale(r, []Want{{1, "us8"}}, p); has(l, "no-room-in-jar") {
		t.Errorf("%v", l)
	}
}
