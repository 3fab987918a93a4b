package cook

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// noNaN walks a value and fails on a NaN or infinity.
func noNaN(t *rapid.T, v reflect.Value, at string) {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			t.Fatalf("%s is %g", at, f)
		}
	case reflect.Struct:
		for i := 0; i < v.NumField(); i++ {
			noNaN(t, v.Field(i), at+"."+v.Type().Field(i).Name)
		}
	case reflect.Slice:
		for i := 0; i < v.Len(); i++ {
			noNaN(t, v.Index(i), fmt.Sprintf("%s[%d]", at, i))
		}
	}
}

func number(t *rapid.T, name string) *float64 {
	if rapid.Bool().Draw(t, name+"?") {
		return nil
	}
	v := rapid.OneOf(rapid.Float64(), rapid.Float64Range(-10, 130), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0})).Draw(t, name)
	return &v
}

func anyBatch(t *rapid.T) *batch.Batch {
	words := []string{"strawberries", "sugar", "lemon juice", "pectin", "eggs", "unknown stuff", "", "water", "honey", "plum juice", "Sugar", "figs", "butter"}
	b := &batch.Batch{
		Name:    rapid.String().Draw(t, "name"),
		Product: rapid.SampledFrom([]batch.ProductType{batch.Jam, batch.Curd, batch.Butter, batch.Chutney, batch.Spread, batch.Syrup, ""}).Draw(t, "kind"),
		Made:    unit.Date{Year: 2026, Month: 6, Day: 14},
	}
	for i := rapid.IntRange(0, 7).Draw(t, "n"); i > 0; i-- {
		b.Ingredients = append(b.Ingredients, batch.Ingredient{
			Name: rapid.SampledFrom(words).Draw(t, "ingredient"),
			Amount: unit.Quantity{Text: "x", Dim: unit.Dimension(rapid.IntRange(0, 3).Draw(t, "dim")),
				Mass: unit.Mass(rapid.OneOf(rapid.Int64(), rapid.Int64Range(0, 3e12)).Draw(t, "mass")), Volume: unit.Volume(rapid.Int64().Draw(t, "volume")),
				Count: rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), 3})).Draw(t, "count")},
			Solids: rapid.OneOf(rapid.Float64Range(-1, 120), rapid.SampledFrom([]float64{math.NaN(), math.Inf(1)})).Draw(t, "solids"),
			Skip:   rapid.IntRange(0, 5).Draw(t, "skip") == 0,
		})
	}
	b.Cook = batch.Cook{Method: rapid.SampledFrom([]string{"", "long boil", "added pectin"}).Draw(t, "method"),
		TempC: number(t, "temp"), Brix: number(t, "brix"), BrixTempC: number(t, "brix temp"), PH: number(t, "ph"),
		FinishedPot: unit.Mass(rapid.OneOf(rapid.Int64(), rapid.Int64Range(0, 4e12)).Draw(t, "pot")), Skimmed: unit.Mass(rapid.OneOf(rapid.Int64(), rapid.Int64Range(0, 1e11)).Draw(t, "skimmed"))}
	b.Process = batch.Process{Method: rapid.SampledFrom([]string{"", "boiling water", "none", "freezer"}).Draw(t, "process"),
		Minutes: number(t, "minutes"), Altitude: unit.Length(rapid.Int64().Draw(t, "altitude")), Headspace: unit.Length(rapid.Int64().Draw(t, "headspace"))}
	for i := rapid.IntRange(0, 3).Draw(t, "fills"); i > 0; i-- {
		b.Fills = append(b.Fills, batch.Fill{Jar: rapid.SampledFrom([]string{"us8", "lug212", "nonsense"}).Draw(t, "jar"),
			Count: rapid.OneOf(rapid.Int(), rapid.IntRange(-1, 30)).Draw(t, "count"), Sealed: rapid.Int().Draw(t, "sealed"),
			Share: rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 1), rapid.Just(math.NaN())).Draw(t, "share"), PartJar: unit.Mass(rapid.Int64().Draw(t, "part"))})
	}
	b.Gifts = []batch.Gift{{Jars: rapid.Int().Draw(t, "gift")}}
	return b
}

// Whatever is written: no panic, no NaN, masses conserve, percentages sum to
// 100, counts stay countable, and every finding has words.
func TestAnyBatch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBatch(t)
		r, l := Compute(b, nil, pantry.Default())
		if r.Yield.Mass+r.Evaporated+r.Skimmed != r.Input || r.Yield.Mass < 0 || r.Evaporated < 0 || r.Skimmed < 0 {
			t.Fatalf("masses: in %d, yield %d, evaporated %d, skimmed %d", r.Input, r.Yield.Mass, r.Evaporated, r.Skimmed)
		}
		sum := 0.0
		for _, ln := range r.Lines {
			sum += ln.Percent
			if ln.Mass < 0 || ln.Soluble < 0 || ln.Insoluble < 0 || ln.Soluble+ln.Insoluble > ln.Mass+10 {
				t.Fatalf("line %+v", ln)
			}
		}
		if r.Input > 0 && math.Abs(sum-100) > 1e-6 {
			t.Fatalf("percentages sum to %g", sum)
		}
		for _, j := range r.Jars {
			if j.Count < 0 || j.Count > mostJars || j.Sealed < 0 || j.Sealed > j.Count || j.Fill < 0 || j.Part < 0 {
				t.Fatalf("jar %+v", j)
			}
		}
		if r.Brix.Value < 0 || r.Brix.Value > 100 {
			t.Fatalf("%g °Brix", r.Brix.Value)
		}
		for _, ln := range r.Lines {
			noNaN(t, reflect.ValueOf(ln), "line")
		}
		noNaN(t, reflect.ValueOf(r.Jars), "jars")
		noNaN(t, reflect.ValueOf(r.Brix), "brix")
		noNaN(t, reflect.ValueOf(r.Keeping), "keeping")
		worded(t, l)
	})
}

func worded(t *rapid.T, l diag.List) {
	for _, d := range l {
		if d.Code == "" || d.Message == "" || d.Hint == "" {
			t.Fatalf("a finding without code, words or hint: %+v", d)
		}
	}
}

// The order of the tables in the file and the way an ingredient is split over
// several changes no mass.
func TestOrderAndSplitDoNotMatter(t *testing.T) {
	names := []string{"strawberries", "sugar", "lemon juice", "rhubarb", "honey"}
	rapid.Check(t, func(t *rapid.T) {
		var a, b []batch.Ingredient
		for i, n := range names {
			g := rapid.Int64Range(1, 2_000).Draw(t, "g")
			a = append(a, grammes(n, g))
			first := rapid.Int64Range(0, g).Draw(t, "split")
			for _, part := range []int64{first, g - first} {
				if part > 0 {
					at := rapid.IntRange(0, len(b)).Draw(t, fmt.Sprint("at", i))
					b = append(b[:at], append([]batch.Ingredient{grammes(n, part)}, b[at:]...)...)
				}
			}
		}
		ra, _ := Compute(&batch.Batch{Ingredients: a}, nil, nil)
		rb, _ := Compute(&batch.Batch{Ingredients: b}, nil, nil)
		if len(ra.Lines) != len(rb.Lines) || ra.Input != rb.Input || math.Abs(ra.Yield.Mass.Grams()-rb.Yield.Mass.Grams()) > 1e-6 {
			t.Fatalf("%d lines %v, split %d lines %v", len(ra.Lines), ra.Yield, len(rb.Lines), rb.Yield)
		}
		mass := map[string]unit.Mass{}
		for _, ln := range ra.Lines {
			mass[ln.Name] = ln.Mass
		}
		for _, ln := range rb.Lines {
			if mass[ln.Name] != ln.Mass {
				t.Fatalf("%s: %d and %d", ln.Name, mass[ln.Name], ln.Mass)
			}
		}
	})
}

func grammes(name string, g int64) batch.Ingredient {
	return batch.Ingredient{Name: name, Solids: -1, Amount: unit.Quantity{Text: fmt.Sprint(g, " g"), Dim: unit.ByMass, Mass: unit.Mass(g) * unit.Gram}}
}

func TestNilAndHuge(t *testing.T) {
	if r, l := Compute(nil, nil, nil); r == nil || !has(l, "no-ingredients") {
		t.Error("a nil batch")
	}
	b := &batch.Batch{Made: unit.Date{Year: 2026, Month: 1, Day: 1}}
	for range 10_000 {
		b.Ingredients = append(b.Ingredients, grammes("sugar", 999_000))
	}
	r, l := Compute(b, nil, nil)
	if r.Input > most || !has(l, "amount-too-large") {
		t.Errorf("ten thousand tonnes: %d", r.Input)
	}
	if len(l) > 20 {
		t.Errorf("%d findings say the same", len(l))
	}
}
