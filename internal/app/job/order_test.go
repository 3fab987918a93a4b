package job_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"sort"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
)

// Grams of the units, exact, from NIST Handbook 44, Appendix C.
var gramsOf = map[string]float64{"g": 1, "kg": 1000, "oz": 28.349523125, "lb": 453.59237}

// TestDemoByHand works the demo's masses out by hand: weights with the factors
// of NIST Handbook 44, cups with the household weights of USDA SR28 (sugar,
// granulated 19335: 200 g; lemon juice 09152 and 09153: 244 g).
func TestDemoByHand(t *testing.T) {
	b := load(t, builtin(t), demoInput(t, demoBatches[0]), job.Choices{})
	want := []struct {
		name  string
		grams float64
	}{
		{"Sugar", 11 * 200},
		{"strawberries", 1500},
		{"rhubarb", 500},
		{"lemon juice", 244.0 / 4},
		{"pectin", 1.75 * 28.349523125},
	}
	f := b.Facts()
	if len(f.Ingred) != len(want) {
		t.Fatalf("%d ingredients", len(f.Ingred))
	}
	total := 0.0
	for _, w := range want {
		total += w.grams
	}
	at := -1
	for i, w := range want {
		if got := f.Ingred[i].Grams; math.Abs(got/w.grams-1) > 0.005 {
			t.Errorf("%s: %.1f g, by hand %.1f", w.name, got, w.grams)
		}
		if got := f.Ingred[i].Percent; math.Abs(got-100*w.grams/total) > 0.1 {
			t.Errorf("%s: %.1f %%, by hand %.1f", w.name, got, 100*w.grams/total)
		}
		next := strings.Index(f.IngredText, w.name)
		if next <= at {
			t.Errorf("%q stands out of order in %q", w.name, f.IngredText)
		}
		at = next
	}
}

// names are single ingredients without alias among themselves, each as a US
// label lists it.
var names = []string{"plums", "apricots", "rhubarb", "quinces", "sugar", "water", "gooseberries", "cranberries"}

// TestOrderOfAnyRecipe: whatever the amounts and units, the statement lists
// the ingredients in descending weight (21 CFR 101.4(a)(1)), sums what is
// written twice, and keeps the file's order where weights are equal.
func TestOrderOfAnyRecipe(t *testing.T) {
	env := builtin(t)
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 9).Draw(t, "n")
		var text strings.Builder
		text.WriteString("name = \"Plum jam\"\nkind = \"spread\"\nmade = 2026-09-01\n")
		mass, first := map[string]float64{}, map[string]int{}
		for i := range n {
			name := rapid.SampledFrom(names).Draw(t, "name")
			u := rapid.SampledFrom([]string{"g", "kg", "oz", "lb"}).Draw(t, "unit")
			tenths := rapid.IntRange(1, 400).Draw(t, "tenths")
			fmt.Fprintf(&text, "[[ingredient]]\nname = %q\namount = \"%d.%d %s\"\n", name, tenths/10, tenths%10, u)
			if _, ok := mass[name]; !ok {
				first[name] = i
			}
			mass[name] += float64(tenths) / 10 * gramsOf[u]
		}
		b := env.Load(job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte("name = \"A\"\naddress = [\"1 Lane\", \"Town, OR 97000\"]\nplace = \"us\"\n")}, Batch: job.Doc{Name: "b.toml", Data: []byte(text.String())}}, job.Choices{})
		var want []string
		for name := range mass {
			want = append(want, name)
		}
		sort.Slice(want, func(i, j int) bool {
			a, z := mass[want[i]], mass[want[j]]
			if math.Abs(a-z) > 1e-6 {
				return a > z
			}
			return first[want[i]] < first[want[j]]
		})
		statement := strings.TrimSuffix(strings.TrimPrefix(strings.ToLower(b.Facts().IngredText), "ingredients: "), ".")
		if got := strings.Split(statement, ", "); strings.Join(got, "|") != strings.Join(want, "|") {
			t.Fatalf("the label lists %q, by weight it is %q\n%s", got, want, text.String())
		}
	})
}

// TestPublishedRecipesAsFiles writes the published recipes (sources in
// testdata/published/published-yields.csv: USDA AIB 539, USDA Guide 7, NCHFP,
// state extensions) as batch files. Each is read without a doubt about an
// amount, and what goes into the pot is within 2.5 % of the reference's own
// sum. How many jars come of it is judged in internal/kitchen/cook.
func TestPublishedRecipesAsFiles(t *testing.T) {
	env := builtin(t)
	text := map[string]*strings.Builder{}
	for _, r := range csvRows(t, "recipes.csv") {
		if text[r["id"]] == nil {
			text[r["id"]] = &strings.Builder{}
			fmt.Fprintf(text[r["id"]], "name = %q\nkind = %q\nmade = 2026-06-14\n[cook]\nmethod = %q\n[[fill]]\njar = \"us8\"\n", r["id"]+" "+r["kind"], r["kind"], r["method"])
		}
		fmt.Fprintf(text[r["id"]], "[[ingredient]]\nname = %q\namount = %q\n", r["name"], r["amount"])
		if r["form"] != "" {
			fmt.Fprintf(text[r["id"]], "form = %q\n", r["form"])
		}
	}
	n := 0
	for _, y := range csvRows(t, "published-yields.csv") {
		if text[y["id"]] == nil || !strings.HasPrefix(y["use"], "test") {
			continue
		}
		n++
		b := env.Load(job.Input{Batch: job.Doc{Name: y["id"] + ".toml", Data: []byte(text[y["id"]].String())}}, job.Choices{})
		for _, d := range b.Findings {
			if d.Severity == diag.Error && strings.HasPrefix(d.Path, "ingredient") && d.Path != "ingredient" && strings.Contains(d.Path, "amount") {
				t.Errorf("%s: %s", y["id"], d.Message)
			}
		}
		in := 0.0
		for _, p := range b.Facts().Ingred {
			in += p.Grams
		}
		var want float64
		fmt.Sscan(y["mass_in_g"], &want)
		if math.Abs(in/want-1) > 0.025 {
			t.Errorf("%s %s: %.0f g go in, the reference has %.0f", y["id"], y["title"], in, want)
		}
	}
	if n < 16 {
		t.Errorf("only %d recipes", n)
	}
}

func csvRows(t *testing.T, name string) (out []map[string]string) {
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
	for _, r := range rows[1:] {
		m := map[string]string{}
		for i, c := range rows[0] {
			m[c] = r[i]
		}
		out = append(out, m)
	}
	return out
}

// TestLettersNoTypefaceHas: each is told with its place, nothing is printed,
// nothing panics; the PDF library does on runes past U+FFFF.
func TestLettersNoTypefaceHas(t *testing.T) {
	env := builtin(t)
	for _, c := range []struct{ what, word string }{
		{"emoji", "🍓"}, {"flag of two runes", "🇩🇪"}, {"joined emoji", "👩‍🍳"}, {"Han", "梅"}, {"Arabic", "مربى"},
		{"Hebrew", "ריבה"}, {"Devanagari", "जैम"}, {"private use", "\ue000"}, {"last rune", "\U0010fffd"}, {"music", "𝄞"},
		{"replacement", "\ufffd"},
	} {
		for _, path := range []string{"name", "serve", "ingredient", "gift"} {
			in := demoInput(t, demoBatches[0])
			in.Batch.Data = []byte(withWord(string(in.Batch.Data), path, c.word))
			b := env.Load(in, job.Choices{})
			files, found, err := env.Make(b, job.Choices{})
			if err != nil {
				t.Errorf("%s in %s: %v", c.what, path, err)
			}
			all := append(append(diag.List(nil), b.Findings...), found...)
			if len(files) > 0 || !placed(all) {
				t.Errorf("%s in %s: %d files, findings %v", c.what, path, len(files), errorsIn(all))
			}
		}
	}
}

// withWord puts a word into one of the demo's texts.
func withWord(batch, path, word string) string {
	// Not rhubarb itself: what the table knows prints in the table's words.
	batch = strings.Replace(batch, `name = "rhubarb"`, `name = "zedoary"`, 1)
	old := map[string]string{"name": `name = "Strawberry `, "serve": `serve = "Lovely `, "ingredient": `name = "zedoary`, "gift": `to = "Ottilie`}[path]
	return strings.Replace(batch, old, old+" "+word+" ", 1)
}

// placed: an error finding with a line.
func placed(l diag.List) bool {
	for _, d := range l {
		if d.Severity == diag.Error && d.Pos.Line > 0 && d.Hint != "" {
			return true
		}
	}
	return false
}
