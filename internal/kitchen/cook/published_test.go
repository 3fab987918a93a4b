package cook

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Published recipes and their printed yields, with the source of each row in
// testdata/published/published-yields.csv (USDA AIB 539, USDA Guide 7, NCHFP,
// So Easy to Preserve, state extensions). recipes.csv has the same recipes in
// the measures of the source, where the source gives measures.
//
// How far this goes: the labels test (±20 %) and test-loose (±50 %) were set
// after the ratios had been seen; the losses of Y13-Y15 and the 55 °Brix of Y16
// are assumptions, the 55 fitted. So this shows that the model is plausible and
// stays where it was, not that it is accurate. Published yields are round and
// lean low. Run with -v for the table.
func TestPublishedYields(t *testing.T) {
	recipes := readCSV(t, "recipes.csv")
	var means = map[string][]float64{}
	for _, row := range readCSV(t, "published-yields.csv") {
		tol := map[string]float64{"test": 0.20, "test-loose": 0.50}[row["use"]]
		if tol == 0 {
			continue
		}
		b := published(t, row["id"], recipes)
		r, l := Compute(b, nil, pantry.Default())
		if l.HasErrors() {
			t.Errorf("%s: %v", row["id"], l)
			continue
		}
		mid := (num(t, row["published_low"]) + num(t, row["published_high"])) / 2
		jars := r.Yield.Mass.Grams() / r.Jars[0].Fill.Grams()
		ratio := jars / mid
		t.Logf("%s %-42s %-32s in %5.0f g out %5.0f g %5.1f Brix  %5.1f half-pints, published %s-%s, ratio %.2f (%s)",
			row["id"], row["title"], r.YieldRule, r.Input.Grams(), r.Yield.Mass.Grams(), r.Brix.Value, jars, row["published_low"], row["published_high"], ratio, row["use"])
		if math.Abs(ratio-1) > tol+0.005 {
			t.Errorf("%s %s: %.1f half-pints, published %s-%s (ratio %.2f, allowed ±%.0f %%)",
				row["id"], row["title"], jars, row["published_low"], row["published_high"], ratio, 100*tol)
		}
		// Row weights of the reference: the same recipe in grams, so that cup
		// weights and lookup are tested too.
		if in := num(t, row["mass_in_g"]); math.Abs(r.Input.Grams()/in-1) > 0.025 {
			t.Errorf("%s: %.0f g go in, the reference has %.0f", row["id"], r.Input.Grams(), in)
		}
		means[string(b.Product)+" "+b.Cook.Method] = append(means[string(b.Product)+" "+b.Cook.Method], ratio)
		means["all"] = append(means["all"], ratio)
	}
	for _, k := range []string{"jam long boil", "jam added pectin", "jelly added pectin", "all"} {
		t.Logf("mean ratio %-20s %.2f of %d", k, mean(means[k]), len(means[k]))
	}
	if len(means["all"]) != 16 {
		t.Errorf("%d recipes checked, want 16", len(means["all"]))
	}
	if m := mean(means["all"]); math.Abs(m-1) > 0.08 {
		t.Errorf("mean ratio %.2f", m)
	}
}

func published(t *testing.T, id string, recipes []map[string]string) *batch.Batch {
	b := &batch.Batch{Name: id, Made: unit.Date{Year: 2026, Month: 6, Day: 14}}
	for _, row := range recipes {
		if row["id"] != id {
			continue
		}
		b.Product, b.Cook.Method = batch.ProductType(row["kind"]), row["method"]
		b.Ingredients = append(b.Ingredients, ing(t, row["name"], row["amount"], row["form"]))
	}
	b.Fills = []batch.Fill{{Jar: "us8", Count: -1, Sealed: -1}}
	return b
}

func ing(t testing.TB, name, amount, form string) batch.Ingredient {
	t.Helper()
	q, err := unit.ParseQuantity(amount)
	if err != nil {
		t.Fatalf("%s %s: %v", name, amount, err)
	}
	return batch.Ingredient{Name: name, Amount: q, Form: form, Solids: -1}
}

func readCSV(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("../../../testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, c := range rows[0] {
			m[c] = r[i]
		}
		out = append(out, m)
	}
	return out
}

func num(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func mean(v []float64) float64 {
	s := 0.0
	for _, x := range v {
		s += x
	}
	return s / float64(max(1, len(v)))
}
