package job_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
)

// Honey, raw or cooked, is not for children under twelve months: clostridial
// spores survive a jam kettle (USDA FSIS and CDC infant botulism advice, from
// memory). Whatever the honey is called and however deep it lies, the label and
// the public record say so in the language of the place.
func TestHoneyWarnsForInfantsEverywhere(t *testing.T) {
	env := builtin(t)
	honeys := map[string]string{
		"plain":       `name = "honey"`,
		"own kind":    `name = "heather honey"`,
		"a part":      "name = \"house spice paste\"\ncontains = [\"cinnamon\", \"honey\"]\nallergens = []",
		"part of own": "name = \"house spice paste\"\ncontains = [\"cinnamon\", { name = \"clover honey\", allergen = \"\" }]\nallergens = []",
		"in brackets": "name = \"house spice paste (cinnamon, heather honey)\"\nallergens = []",
	}
	for place, want := range map[string]string{"us-or": "infants under one year", "gb": "infants under 12 months",
		"ie": "infants under 12 months", "de": "Säuglinge unter 12 Monaten", "fr": "nourrissons de moins de 12 mois"} {
		for how, lines := range honeys {
			b := loadIn(env, place, pot([]string{"strawberries", "sugar"})+"[[ingredient]]\n"+lines+"\namount = \"100 g\"\n[[fill]]\njar = \"8 fl oz\"\ncount = 4\nnet = [\"280 g\"]\n")
			if len(b.Contents) == 0 {
				t.Fatalf("%s, %s: no label: %v", place, how, b.Findings)
			}
			if all := strings.Join(texts(b.Contents[0]), "\n"); !strings.Contains(all, want) {
				t.Errorf("%s, %s: the label lacks %q:\n%s", place, how, want, all)
			}
			if page := recordOf(t, env, b); !strings.Contains(page, want) {
				t.Errorf("%s, %s: the record lacks %q", place, how, want)
			}
		}
		for _, no := range []string{"honeydew", "honeycrisp apples"} { // a melon and an apple
			b := loadIn(env, place, pot([]string{no, "sugar"}))
			for _, c := range b.Contents {
				if strings.Contains(strings.Join(texts(c), "\n"), want) {
					t.Errorf("%s: %s is called honey", place, no)
				}
			}
		}
	}
}

// TestPublishedRecipesLoadEverywhere: the 22 published recipes are sound as
// printed; no place may refuse one for a Brix that was only estimated.
func TestPublishedRecipesLoadEverywhere(t *testing.T) {
	env := builtin(t)
	files, err := filepath.Glob("../../../testdata/published/yields/*.toml")
	if err != nil || len(files) != 22 {
		t.Fatalf("%d recipes, %v", len(files), err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, place := range []string{"us-or", "gb", "de"} {
			b := loadIn(env, place, string(data))
			if b.Cooked == nil || len(b.Contents) == 0 {
				t.Fatalf("%s in %s: not computed: %v", filepath.Base(name), place, b.Findings)
			}
			for _, d := range b.Findings {
				text := strings.ToLower(d.Message)
				if d.Severity == diag.Error && (strings.Contains(text, "brix") || strings.Contains(text, "soluble solids") || strings.Contains(text, "estimate")) {
					t.Errorf("%s in %s: %s: %s", filepath.Base(name), place, d.Code, d.Message)
				}
			}
		}
	}
}

func recordOf(t *testing.T, env *job.Env, b *job.Batch) string {
	t.Helper()
	site, l := env.Site([]*job.Batch{b})
	if len(site.Pages) != 1 {
		t.Fatalf("no record: %v", l)
	}
	return string(site.Pages[0].Data)
}
