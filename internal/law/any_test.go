package law

import (
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// testBook is every place with the code of both laws: a set that names what its
// law cannot do is found here.
var testBook = sync.OnceValues(Load)

func rulesOf(t testing.TB, id string) *place.Set {
	t.Helper()
	b, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	s, l := b.Place(id, unit.Date{Year: 2026, Month: 11, Day: 25})
	if s == nil {
		t.Fatal(l)
	}
	return s
}

// Every place reads, and asks nothing its law does not know.
func TestEverySetReads(t *testing.T) {
	b, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	if n := len(b.List()); n < 50 {
		t.Errorf("%d places", n)
	}
	for _, s := range b.List() {
		rulesOf(t, s.ID)
	}
}

// The sink holds every path a rule may report; a finding whose path is no
// place in it would point nowhere.
const (
	sinkBatch   = "testdata/sink-batch.toml"
	sinkKitchen = "testdata/sink-kitchen.toml"
)

func TestPathsResolve(t *testing.T) {
	read := func(name string) *source.File {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, l := source.Parse(name, data)
		if l.HasErrors() {
			t.Fatal(l)
		}
		return f
	}
	files := map[string]*source.File{"batch": read(sinkBatch), "kitchen": read(sinkKitchen)}
	kd, _ := os.ReadFile(sinkKitchen)
	bd, _ := os.ReadFile(sinkBatch)
	bk, _ := testBook()
	k, l := batch.ParseKitchen("kitchen", kd, bk.Find)
	if k == nil || l.HasErrors() {
		t.Fatal(l)
	}
	b, l := batch.Parse("batch", bd, k)
	if b == nil || l.HasErrors() {
		t.Fatal(l)
	}
	r, _ := cook.Compute(b, k, pantry.Default())
	seen := map[string]bool{}
	for _, sum := range bk.List() {
		id := sum.ID
		for _, gift := range []bool{false, true} {
			for _, jar := range r.Jars {
				c, found := Declare(r, jar, rulesOf(t, id), draft.Options{Gift: gift})
				for _, d := range found {
					seen[d.Code] = true
					f := files[d.File]
					if d.File == "" || d.Path == "" {
						continue
					}
					if f == nil {
						t.Errorf("%s: %s names the file %q", id, d.Code, d.File)
						continue
					}
					if _, ok := f.Entry(d.Path); !ok {
						t.Errorf("%s: %s points to %s of the %s, which is no place", id, d.Code, d.Path, d.File)
					}
				}
				for _, x := range c.Blocks {
					_, inBatch := files["batch"].Entry(x.Path)
					_, inKitchen := files["kitchen"].Entry(x.Path)
					if x.Path != "" && !inBatch && !inKitchen {
						t.Errorf("%s: block %s points to %s, which is no place", id, x.ID, x.Path)
					}
				}
			}
		}
	}
	if len(seen) < 15 {
		t.Errorf("the sink stirs up only %d kinds of finding", len(seen))
	}
}

// Whatever comes in, every set declares without a panic, block ids are unique,
// and the same input gives the same label.
func TestAnyBatchDeclares(t *testing.T) {
	bk, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		s, _ := bk.Place(rapid.SampledFrom(bk.List()).Draw(t, "place").ID, unit.Date{Year: 2026, Month: 11, Day: 25})
		r, jar := anyResult(t), anyJar(t)
		o := draft.Options{Gift: rapid.Bool().Draw(t, "gift")}
		c, l := Declare(r, jar, s, o)
		c2, l2 := Declare(r, jar, s, o)
		if len(c.Blocks) != len(c2.Blocks) || len(l) != len(l2) {
			t.Fatal("two runs differ")
		}
		ids := map[string]bool{}
		for i, b := range c.Blocks {
			if ids[b.ID] || b.Text() != c2.Blocks[i].Text() {
				t.Fatalf("block %q twice, or not the same twice", b.ID)
			}
			ids[b.ID] = true
			if b.Text() == "" || strings.Contains(b.Text(), "{") && strings.HasPrefix(s.ID, "us") {
				t.Fatalf("block %s says %q", b.ID, b.Text())
			}
		}
	})
	if c, l := Declare(nil, cook.JarPlan{}, nil, draft.Options{}); c != nil || !l.HasErrors() {
		t.Error("nothing declares")
	}
	if c, _ := Declare(&cook.Result{}, cook.JarPlan{}, rulesOf(t, "us-wv"), draft.Options{}); c == nil {
		t.Error("an empty result declares nothing")
	}
}

func anyResult(t *rapid.T) *cook.Result {
	words := rapid.SampledFrom([]string{"", "Strawberry jam", "Fig & honey butter", "ß", "jelly", "Mixed jam with nuts", "*", "日本"})
	mass := rapid.SampledFrom([]unit.Mass{0, 1, unit.Gram, 1000 * unit.Gram, math.MaxInt64 / 100, math.MaxInt64, -5})
	rows := pantry.Default().Ingredients()
	r := &cook.Result{Lot: words.Draw(t, "lot"), Brix: cook.Reading{Value: rapid.SampledFrom([]float64{0, 64, 65, 99, math.NaN(), math.Inf(1), -1}).Draw(t, "brix"), How: cook.Measured},
		Keeping: cook.Keeping{Class: rapid.SampledFrom([]cook.Class{cook.Shelf, cook.ShelfShort, cook.Cold, cook.Freezer, cook.Refrigerator, "", "odd"}).Draw(t, "class"), OpenedDays: rapid.IntRange(-9, 999).Draw(t, "opened")}}
	if rapid.Bool().Draw(t, "batch") {
		r.Batch = &batch.Batch{Name: words.Draw(t, "name"), Product: rapid.SampledFrom([]batch.ProductType{"", batch.Jam, batch.Jelly, batch.Butter, batch.Marmalade, batch.Spread}).Draw(t, "kind"),
			Made: unit.Date{Year: 2026, Month: rapid.IntRange(0, 13).Draw(t, "month"), Day: 3}}
		r.BestBefore = r.Batch.Made.AddMonths(3)
	}
	if rapid.Bool().Draw(t, "kitchen") {
		r.Kitchen = &batch.Kitchen{Name: words.Draw(t, "maker"), Permit: words.Draw(t, "permit"), RecordURL: words.Draw(t, "url"), Language: words.Draw(t, "lang"),
			Programme: words.Draw(t, "programme"), AlsoHandles: []string{words.Draw(t, "also"), ""}}
	}
	for range rapid.IntRange(0, 5).Draw(t, "n") {
		row := rapid.SampledFrom(rows).Draw(t, "row")
		r.Lines = append(r.Lines, cook.Line{Name: row.Name, Key: row.Key, Row: row, Contains: row.Contains, Mass: mass.Draw(t, "mass"), Soluble: mass.Draw(t, "soluble"),
			Allergens: []string{words.Draw(t, "allergen")}, IsFruit: row.Class == "fruit", IsSweet: row.Class == "sweetener"})
	}
	return r
}

func anyJar(t *rapid.T) cook.JarPlan {
	mass := rapid.SampledFrom([]unit.Mass{0, 1, 283 * unit.Gram, 10 * unit.Ounce, math.MaxInt64 / 1000, -5})
	length := rapid.SampledFrom([]unit.Length{0, 1, 50 * unit.Millimetre, math.MaxInt64, -1})
	return cook.JarPlan{Jar: pantry.Jar{Panel: length.Draw(t, "panel"), Circumference: length.Draw(t, "around"), Height: length.Draw(t, "height")}, Count: rapid.Int().Draw(t, "count"), Sealed: rapid.Int().Draw(t, "sealed"),
		Declared: mass.Draw(t, "declared"), Fill: mass.Draw(t, "fill"), Weighed: rapid.SliceOfN(mass, 0, 4).Draw(t, "weighed"), Price: unit.Money{Minor: rapid.Int64().Draw(t, "price"), Currency: "USD"}}
}

// In the Union what is not liquid is sold by weight (Regulation 1169/2011 Art
// 23(1)).
func TestVolumeOfJamInTheUnion(t *testing.T) {
	_, l := Declare(&cook.Result{Batch: &batch.Batch{Name: "Strawberry jam", Product: batch.Jam}}, cook.JarPlan{DeclVolume: 250 * unit.Millilitre, DeclText: "250 ml"}, rulesOf(t, "eu"), draft.Options{})
	if !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "net-by-weight" }) {
		t.Error(l)
	}
}
