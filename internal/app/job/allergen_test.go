package job_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/app/job"
	"jarmark/internal/give/facts"
	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/law/label"
)

// TestAllergenSuite: testdata/never holds batches that must never be called free
// of allergens, testdata/always some that must; each names its source, what the
// label must say or the finding that must stop it, and the place.
func TestAllergenSuite(t *testing.T) {
	env := builtin(t)
	for _, folder := range []string{"never", "always"} {
		files, err := filepath.Glob("../../../testdata/" + folder + "/allergen-*.toml")
		if err != nil || len(files) < 15 {
			t.Fatalf("%s: %d files, %v", folder, len(files), err)
		}
		for _, name := range files {
			t.Run(folder+"/"+filepath.Base(name), func(t *testing.T) { checkAllergens(t, env, name, folder == "always") })
		}
	}
}

func checkAllergens(t *testing.T, env *job.Env, name string, free bool) {
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitN(string(data), "\n", 4)
	source, ok := strings.CutPrefix(lines[0], "# Source: ")
	want, ok2 := strings.CutPrefix(lines[1], "# Want: ")
	place, ok3 := strings.CutPrefix(lines[2], "# Place: ")
	if !ok || !ok2 || !ok3 || len(source) < 8 {
		t.Fatal("no source, want and place in its first lines")
	}
	b := loadIn(env, place, string(data))
	f := b.Facts()
	if free {
		if !f.Evidence.None || len(f.Allergens) > 0 || !strings.Contains(f.AllergText, "none of the nine") || hasCode(b.Findings, "allergens-unknown") {
			t.Errorf("%q, unknown %v, %v", f.AllergText, f.Evidence.Unknown, b.Findings.Errors())
		}
		return
	}
	saidNowhere(t, b)
	for _, w := range strings.Fields(want) {
		w = strings.ReplaceAll(w, "_", " ")
		switch {
		case strings.Contains(w, "-"):
			if !slices.ContainsFunc(b.Findings, func(d diag.Diagnostic) bool {
				return d.Code == w && d.Severity == diag.Error && d.Pos.Line > 0 && d.Hint != ""
			}) {
				t.Errorf("no error %s with line and hint: %v", w, b.Findings)
			}
		case !slices.Contains(f.Allergens, w):
			t.Errorf("allergens %v, want %s", f.Allergens, w)
		case !strings.Contains(strings.ToLower(f.AllergText+f.IngredText), strings.ToLower(w)):
			t.Errorf("%q is not printed: %q, %q", w, f.AllergText, f.IngredText)
		case !slices.ContainsFunc(f.Evidence.Allergens, func(p facts.Proven) bool { return p.Name == w && len(p.From) > 0 }):
			t.Errorf("nothing says where %s comes from", w)
		}
	}
}

// saidNowhere: neither label, card nor code payload calls the food free.
func saidNowhere(t *testing.T, b *job.Batch) {
	t.Helper()
	if b.Facts().Evidence.None {
		t.Error("called free of allergens")
	}
	for _, c := range b.Contents {
		for _, text := range append(texts(c), c.QR.Payload) {
			low := strings.ToLower(text)
			for _, free := range []string{"none of", "no major", "no allergen", "keine allergene", "aucun allerg"} {
				if strings.Contains(low, free) {
					t.Errorf("says %q", text)
				}
			}
		}
	}
}

func texts(c *label.Content) (out []string) {
	for _, b := range c.Blocks {
		out = append(out, b.Text())
	}
	return out
}

func loadIn(env *job.Env, place, batch string) *job.Batch {
	kitchen := strings.Replace(keepingKitchen, `place = "us"`, `place = "`+place+`"`, 1)
	if place == "de" || place == "fr" {
		kitchen = "language = \"" + place + "\"\n" + kitchen
	}
	return env.Load(job.Input{Batch: job.Doc{Name: "b.toml", Data: []byte(batch)}, Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte(kitchen)}}, job.Choices{})
}

func hasCode(l diag.List, code string) bool {
	return slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == code })
}

// TestWhoConfirmedThatThereIsNone: an absence that rests on the maker's word is
// shown as that, where no table shows it.
func TestWhoConfirmedThatThereIsNone(t *testing.T) {
	env := builtin(t)
	text := pot([]string{"strawberries", "sugar", "grandpa's powder"}) + "allergens = []\n"
	f := loadIn(env, "us-or", text).Facts()
	if c := f.Evidence.Confirmed; !f.Evidence.None || len(c) != 1 || c[0].Fact != "grandpa's powder" || c[0].Path != "ingredient[2]" || c[0].How != "confirmed" {
		t.Errorf("%+v", f.Evidence)
	}
	f = loadIn(env, "us-or", pot([]string{"strawberries"})+"allergens = []\n").Facts()
	if len(f.Evidence.Confirmed) != 0 || !f.Evidence.None {
		t.Errorf("a table shows it: %+v", f.Evidence)
	}
}

// TestAddingNeverRemovesAnAllergen: whatever else goes into the pot, what was
// named stays named, and what was not proven free does not become free.
func TestAddingNeverRemovesAnAllergen(t *testing.T) {
	env := builtin(t)
	pool := []string{"strawberries", "sugar", "almond flour", "whey powder", "nutmeg", "grandpa's powder", "tahini", "coconut", "walnuts", "beer", "fish sauce",
		"white chocolate", "egg yolks", "cream of tartar", "shrimp paste", "soy sauce", "peanuts", "honey", "butternut squash", "chopped pecans", "lecithin"}
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfN(rapid.SampledFrom(pool), 1, 6).Draw(t, "ingredients")
		place := rapid.SampledFrom([]string{"us-or", "gb", "de"}).Draw(t, "place")
		at := rapid.IntRange(0, len(names)-1).Draw(t, "left out")
		fewer := loadIn(env, place, pot(slices.Delete(slices.Clone(names), at, at+1))).Facts()
		all := loadIn(env, place, pot(names)).Facts()
		for _, a := range fewer.Allergens {
			if !slices.Contains(all.Allergens, a) {
				t.Fatalf("%s went when %s was added to %v", a, names[at], names)
			}
		}
		if len(names) > 1 && all.Evidence.None && !fewer.Evidence.None {
			t.Fatalf("%v are called free, without %s they are not", names, names[at])
		}
	})
}

func pot(names []string) string {
	var b strings.Builder
	b.WriteString("name = \"Test jam\"\nkind = \"jam\"\nmade = 2026-06-14\n")
	for _, n := range names {
		b.WriteString("[[ingredient]]\nname = \"" + n + "\"\namount = \"100 g\"\n")
	}
	return b.String()
}
