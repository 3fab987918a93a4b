package scale

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

func ing(t testing.TB, name, amount string) batch.Ingredient {
	t.Helper()
	q, err := unit.ParseQuantity(amount)
	if err != nil {
		t.Fatal(err)
	}
	return batch.Ingredient{Name: name, Amount: q, Solids: -1}
}

// berry is the berry jam of So Easy to Preserve, 5th ed. 2006, in its own
// measures: 9 cups crushed berries and 6 cups sugar, 7-8 half-pints.
func berry(t testing.TB) *batch.Batch {
	b := &batch.Batch{Name: "Berry jam", Product: batch.Jam, Ingredients: []batch.Ingredient{ing(t, "blackberries", "9 cups"), ing(t, "sugar", "6 cups")}}
	b.Ingredients[0].Form = "crushed"
	return b
}

func has(l diag.List, code string) bool {
	for _, d := range l {
		if d.Code == code {
			return true
		}
	}
	return false
}

func TestParse(t *testing.T) {
	tests := []struct {
		in, want, code string
	}{
		{"24 x 8 fl oz", "24:8 fl oz", ""},
		{"24 x 8 fl oz, 6 x 4 fl oz", "24:8 fl oz 6:4 fl oz", ""},
		{"24x8 oz; 6×212 ml", "24:8 oz 6:212 ml", ""},
		{"6 x pint, wide mouth, 3 * us4", "6:pint, wide mouth 3:us4", ""},
		{"12 x us8 and 3 x us4", "12:us8 3:us4", ""},
		{"", "", "bad-jars"}, {"8 fl oz", "", "bad-jars"}, {"many x us8", "", "bad-jars"}, {"0 x us8", "", "bad-jars"},
		{"3 x", "", "bad-jars"}, {"99999999999999999999 x us8", "", "bad-jars"}, {"please 3 x us8", "", "bad-jars"},
		{"2 x us8, 0 x us4", "2:us8", "bad-jars"}, {strings.Repeat("1 x us8,", 500), "", "bad-jars"},
	}
	for _, c := range tests {
		ws, l := Parse(c.in)
		var got []string
		for _, w := range ws {
			got = append(got, fmt.Sprintf("%d:%s", w.Count, w.Jar))
		}
		if strings.Join(got, " ") != c.want || has(l, "bad-jars") != (c.code != "") {
			t.Errorf("%.40q: %v %v, want %q", c.in, got, l, c.want)
		}
	}
}

// Twice the published berry jam: 16 half-pints need twice the cups, to the
// tolerance of the yield model (TestPublishedYields: 7.3 half-pints from 9 and
// 6 cups).
func TestScaleBerryJam(t *testing.T) {
	r, _ := cook.Compute(berry(t), &batch.Kitchen{Units: "us"}, nil)
	plan, l := Scale(r, []Want{{15, "8 fl oz"}}, nil)
	if plan == nil {
		t.Fatal(l)
	}
	if math.Abs(plan.Factor-15*302.0/2205) > 0.02 {
		t.Errorf("factor %.3f", plan.Factor)
	}
	if perGram := plan.Pot.ML() / plan.Input.Grams(); perGram < 3/1.35 || perGram > 3/1.05 { // three times its volume: common practice, no source
		t.Errorf("a pot of %.2f ml a gram", perGram)
	}
	if got := plan.Lines[0].Measure; got != "18 1/4 cups + 3 tbsp" && got != "18 1/2 cups" {
		t.Errorf("berries %q", got)
	}
	if got := plan.Lines[1].Measure; got != "12 1/4 cups + 1 tbsp" {
		t.Errorf("sugar %q", got)
	}
	if plan.Batches != 3 || !has(l, "large-batch") || !has(l, "large-pot") || has(l, "large-pectin-batch") {
		t.Errorf("%d batches, %v", plan.Batches, l)
	}
	for _, ln := range plan.Lines {
		t.Logf("%-14s %10s  %s", ln.Name, ln.Weight, ln.Measure)
	}
}

func TestPectinIsNotDoubled(t *testing.T) {
	b := berry(t)
	b.Ingredients = append(b.Ingredients, ing(t, "pectin", "1 box"))
	r, _ := cook.Compute(b, nil, nil)
	n := int(r.Yield.Mass/r.Jars[0].Fill) + 1
	if _, l := Scale(r, []Want{{2 * n, "us8"}}, nil); !has(l, "large-pectin-batch") {
		t.Errorf("doubled with pectin: %v", l)
	}
	if _, l := Scale(r, []Want{{n, "us8"}}, nil); has(l, "large-pectin-batch") || has(l, "large-batch") {
		t.Errorf("the recipe as it is: %v", l)
	}
}

func TestCosts(t *testing.T) {
	b := berry(t)
	b.Ingredients[1].Cost = unit.Money{Minor: 300, Currency: "USD"}
	r, _ := cook.Compute(b, nil, nil)
	plan, l := Scale(r, []Want{{6, "us8"}, {6, "us4"}}, nil)
	if plan == nil || !has(l, "cost-incomplete") {
		t.Fatal(l)
	}
	want := 300 * plan.Factor
	if math.Abs(float64(plan.Cost.Minor)-want) > 0.51 || plan.Cost.Currency != "USD" {
		t.Errorf("cost %v, want %.1f", plan.Cost, want)
	}
	sum := 6*plan.Jars[0].Cost.Minor + 6*plan.Jars[1].Cost.Minor
	if math.Abs(float64(sum-plan.Cost.Minor)) > 6 || plan.Jars[0].Cost.Minor < 19*plan.Jars[1].Cost.Minor/10 {
		t.Errorf("jars cost %v and %v of %v", plan.Jars[0].Cost, plan.Jars[1].Cost, plan.Cost)
	}
}

func TestFaults(t *testing.T) {
	empty, _ := cook.Compute(nil, nil, nil)
	r, _ := cook.Compute(berry(t), nil, nil)
	tests := []struct {
		name string
		r    *cook.Result
		want []Want
		code string
	}{
		{"nil", nil, []Want{{1, "us8"}}, "no-yield"},
		{"no yield", empty, []Want{{1, "us8"}}, "no-yield"},
		{"no jars", r, nil, "bad-jars"},
		{"unknown jar", r, []Want{{1, "bucket"}}, "unknown-jar"},
		{"negative", r, []Want{{-4, "us8"}}, "unknown-jar"},
		{"a tonne", r, []Want{{10_000, "us16"}}, "too-much"},
	}
	for _, c := range tests {
		if plan, l := Scale(c.r, c.want, nil); plan != nil || !has(l, c.code) {
			t.Errorf("%s: %v, want %s", c.name, l, c.code)
		}
	}
}

// The scaled recipe, computed again, fills those jars within 1 %, whatever the
// recipe, the rule of its yield and the jars.
func TestScaledRecipeFillsTheJars(t *testing.T) {
	p := pantry.Default()
	rapid.Check(t, func(t *rapid.T) {
		g := func(name string) unit.Quantity {
			return unit.Quantity{Text: "g", Dim: unit.ByMass, Mass: unit.Mass(rapid.Int64Range(100, 3000).Draw(t, name)) * unit.Gram}
		}
		b := &batch.Batch{Product: rapid.SampledFrom([]batch.ProductType{batch.Jam, batch.Jelly, batch.Butter, batch.Chutney, batch.Spread}).Draw(t, "kind")}
		for _, n := range []string{"strawberries", "sugar", "lemon juice", "apple juice"} {
			b.Ingredients = append(b.Ingredients, batch.Ingredient{Name: n, Amount: g(n), Solids: -1})
		}
		b.Ingredients = append(b.Ingredients, batch.Ingredient{Name: "brown sugar", Amount: unit.Quantity{Text: "cups", Dim: unit.ByVolume, Volume: unit.Volume(rapid.IntRange(1, 8).Draw(t, "cups")) * unit.Cup / 2}, Solids: -1})
		if rapid.Bool().Draw(t, "weighed") {
			b.Cook.FinishedPot, b.Cook.Skimmed = 2*unit.Kilogram, 40*unit.Gram
		}
		r, _ := cook.Compute(b, nil, p)
		var want []Want
		for i := rapid.IntRange(1, 3).Draw(t, "sizes"); i > 0; i-- {
			want = append(want, Want{rapid.IntRange(1, 48).Draw(t, "count"), rapid.SampledFrom([]string{"us4", "us8", "12 fl oz", "212 ml", "pint"}).Draw(t, "jar")})
		}
		plan, l := Scale(r, want, p)
		if plan == nil {
			t.Fatal(l)
		}
		again, _ := cook.Compute(plan.Batch, nil, p)
		jars := 0.0
		for _, j := range again.Jars {
			jars += float64(j.Count) * j.Fill.Grams()
		}
		if off := again.Yield.Mass.Grams()/jars - 1; math.Abs(off) > 0.01 || len(again.Jars) != len(want) {
			t.Fatalf("%v: the scaled pot gives %.0f g for %.0f g of jars (%s)", want, again.Yield.Mass.Grams(), jars, again.YieldRule)
		}
		exact := 0.0
		for _, ln := range plan.Lines {
			exact += ln.Mass.Grams()
		}
		if math.Abs(exact/plan.Input.Grams()-1) > 1e-6 || math.Abs(again.Input.Grams()/exact-1) > 1e-6 {
			t.Fatalf("lines %.3f g, input %s, recomputed %s", exact, plan.Input.Format("metric"), again.Input.Format("metric"))
		}
	})
}

// Kitchen measures read back as the volume they stand for: within half a
// tablespoon from a quarter cup up, half a half-teaspoon below.
func TestCupsReadBack(t *testing.T) {
	for v, want := range map[unit.Volume]string{
		unit.Cup: "1 cup", 3 * unit.Cup / 2: "1 1/2 cups", unit.Cup/4 + unit.Tablespoon: "1/4 cup + 1 tbsp",
		2 * unit.Tablespoon: "2 tbsp", unit.Tablespoon + unit.Teaspoon: "1 tbsp + 1 tsp", unit.Teaspoon / 2: "1/2 tsp",
		unit.Teaspoon / 100: "a pinch", 30 * unit.Cup: "30 cups",
	} {
		if got := Cups(v); got != want {
			t.Errorf("%.2f ml: %q, want %q", v.ML(), got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		v := unit.Volume(rapid.Int64Range(int64(unit.Teaspoon/8), int64(19*unit.Cup)).Draw(t, "v"))
		got, err := unit.ParseVolume(Cups(v))
		if err != nil {
			t.Fatalf("%q: %v", Cups(v), err)
		}
		tol := unit.Teaspoon/16 + 1
		switch {
		case v >= unit.Cup/4-unit.Teaspoon/4:
			tol = unit.Tablespoon/2 + 1
		case v >= unit.Tablespoon-unit.Teaspoon/4:
			tol = unit.Teaspoon/4 + 1
		}
		if d := max(got-v, v-got); d > tol {
			t.Fatalf("%.2f ml is written %q, %.2f ml", v.ML(), Cups(v), got.ML())
		}
	})
}

func TestWeightsAndPieces(t *testing.T) {
	for g, want := range map[float64]string{4.26: "4.3 g", 99.6: "100 g", 1234: "1235 g", 12345: "12.35 kg"} {
		if got := unit.Grams(g).OnScale(unit.Metric); got != want {
			t.Errorf("%g g: %q, want %q", g, got, want)
		}
	}
	b := &batch.Batch{Ingredients: []batch.Ingredient{ing(t, "lemons", "3"), ing(t, "sugar", "500 g"), ing(t, "water", "250 ml")}}
	r, _ := cook.Compute(b, &batch.Kitchen{Units: "metric"}, nil)
	plan, _ := Scale(r, []Want{{6, "212 ml"}}, nil)
	f := plan.Factor
	if want := pieces(3*f, ""); plan.Lines[0].Measure != want || plan.Lines[1].Measure != "" || !strings.HasSuffix(plan.Lines[2].Measure, " ml") {
		t.Errorf("factor %.2f: %+v", f, plan.Lines)
	}
}
